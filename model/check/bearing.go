package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// leastSeat is the width of wood that must lie on a seat leg.
const leastSeat unit.Length = 25

var seatRule = Rule{
	ID: "bearing", Title: "The slab lies on its bracket", Fit: true,
	Basis: "25 mm of bearing at least: " + practice,
	Why:   "A gap at the wall is taken from the bearing: on a narrow seat the slab slips off or crushes at the arris. A slab with neither angle, cleat nor rod is not carried.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			carriers := carriersOf(s.Design, p)
			for _, a := range carriers {
				if a.Bracket() != nil {
					out = append(out, s.seat(p, a))
				}
			}
			if len(carriers) == 0 {
				out = append(out, find.Finding{
					Parts: []string{p.ID}, Why: "Neither an angle nor a cleat, rod or table leg carries " + p.ID + ".",
					Measured: &find.Quantity{Value: 0, Unit: "supports"}, Required: &find.Limit{Value: 1, Relation: find.AtLeast, Unit: "supports"},
					Fix: []find.Fix{hint("add an angle along one of its walls")},
				}.Judge())
			}
		}
		return out
	},
}

// carriersOf gives the angles, cleats, rods and table legs that carry a slab.
func carriersOf(d *model.Design, slab *model.Part) []*model.Part {
	var out []*model.Part
	for _, p := range d.Parts {
		if b := p.Bracket(); b != nil && b.On().Under == slab.ID || p.Post != nil && p.Post.Under == slab.ID || p.Rod != nil && p.Rod.Shelf == slab.ID {
			out = append(out, p)
		}
	}
	return out
}

// seatOf is the flat of a seat seen from above. With the wall leg of an angle up the
// root fillet and the rounded toe carry nothing.
func seatOf(b model.Bracket) (region geom.Region, near, far unit.Length) {
	near, far = 0, b.Deep()
	if a, ok := b.(*model.AnglePart); ok && a.LegUp {
		near, far = a.Section.Thickness+a.Section.Root, a.Section.Leg-a.Section.Toe
	}
	left, right, long := b.On().Left, b.On().Right, b.On().Length
	return geom.Polygon(geom.V(left.Short(far), -far), geom.V(long-right.Short(far), -far), geom.V(long-right.Short(near), -near), geom.V(left.Short(near), -near)).Place(b.Pose()), near, far
}

// flatOf is the underside of a slab seen from above, less its eased edges and
// what is cut out of it from below. Pilot holes are too small to count.
func flatOf(slab *model.Part) geom.Region {
	sp := slab.Slab
	out := sp.UnderOutline()
	var gone []geom.Region
	for _, e := range sp.Edges {
		if e.Ease > 0 {
			gone = append(gone, geom.Strip([]geom.Vec{e.Start, e.End}, 2*e.Ease, 0.05))
		}
	}
	for _, f := range sp.Features {
		below := f.Face == model.UnderFace && (f.Kind == model.Groove || f.Kind == model.Pocket)
		if below || f.Kind == model.Through || f.Kind == model.CutOut {
			gone = append(gone, f.Mouth())
		}
	}
	return out.Minus(gone...).Place(sp.Pose)
}

// seat measures how deep the wood lies on the seat, square to the wall, every few
// centimetres from half its width inside one end of the bracket to the same at the
// other.
func (s Site) seat(slab, part *model.Part) find.Finding {
	b := part.Bracket()
	a := b.On()
	pose, wood := b.Pose(), flatOf(slab)
	_, near, far := seatOf(b)
	least := far - near
	where := pose.Plan(geom.V(a.Length/2, 0))
	from, to := b.Deep()/2, a.Length-b.Deep()/2
	n := max(2, int(math.Ceil(float64((to-from)/50))))
	for i := range n + 1 {
		x := from + (to-from)*unit.Length(i)/unit.Length(n)
		heel, toe := pose.Plan(geom.V(x, -near)), pose.Plan(geom.V(x, -far))
		var lies unit.Length
		for _, span := range wood.Inside(heel, toe) {
			lies += (far - near) * unit.Length(span[1]-span[0])
		}
		if lies < least-0.005 {
			least, where = lies, heel
		}
	}
	f := find.Finding{
		Parts: []string{slab.ID, part.ID}, Walls: []string{a.Wall.Name}, At: at(where.Up(a.Seat)),
		Why:      fmt.Sprintf("%s lies %.1f mm deep on %s (%s) where it lies least.", capital(slab.ID), float64(least), part.ID, b.Profile()),
		Measured: mm(least), Required: limit(find.AtLeast, leastSeat),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = s.seatFixes(slab, part, up(leastSeat-least))
	}
	return f
}

// seatFixes proposes a smaller gap at that wall, as far as it may be, and a
// wider bracket.
func (s Site) seatFixes(slab, part *model.Part, lack unit.Length) []find.Fix {
	var out []find.Fix
	a := part.Bracket().On()
	g, ok := gapTo(slab, a.Wall)
	if least, _ := leastAt(s.movement(slab), g.edge); ok && g.edge.Gap-lack >= least {
		out = append(out, s.set(hint("make the gap at the wall %s %.0f mm smaller: %.1f mm", a.Wall.Name, float64(lack), float64(g.edge.Gap-lack)), gapParameter(g.edge), g.edge.Gap, g.edge.Gap-lack))
	}
	text := "take an angle with a leg %.0f mm wider"
	if part.Cleat != nil {
		text = "take a cleat %.0f mm wider"
	}
	if len(out) > 0 {
		text = "or " + text
	}
	return append(out, hint(text, float64(lack)))
}
