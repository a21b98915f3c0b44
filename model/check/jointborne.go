package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/screw"
	"slabwright/model/calc/steelangle"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// A bearing counts for a joint when it lies within nearJoint of it, and may leave
// unborneShare thicknesses of its length free: choices of this project.
const (
	nearJoint    unit.Length = 100
	unborneShare             = 10
	jointLeg     unit.Length = 60
)

var borneRule = Rule{
	ID: "joint-bearing", Title: "A slab in two pieces is carried where it is parted",
	Basis: "the joint over a bearing: " + practice + "; both ends rest within 100 mm of it, and no stretch of it longer than 10 thicknesses is free, a free end counting double: choices of this project. Plates in its stead: EN 1993-1-1, S235, and withdrawal of screws EN 1995-1-1 equations 8.38 and 8.39, from memory. Glue on end grain carries nothing: order of the USDA Wood Handbook, chapter 10, from memory",
	Why:   "Where fibres end, nothing passes bending on: both ends hang out, a person on one of them makes a step, and cups stand askew across it.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil || len(p.Bodies) == 0 {
				continue
			}
			for i, e := range p.Slab.Edges {
				if q := s.Design.Part(e.To); e.Bound == model.ToPart && q != nil && q.Slab != nil {
					out = append(out, s.borne(seamOf(s.Design, p, q, i)))
				}
			}
		}
		return orNone(out, "No two slabs meet.")
	},
}

// parting is where two slabs meet.
type parting struct {
	p, q  *model.Part
	joint model.Joint
	at    geom.Line // from one end to the other, in the room
}

func seamOf(d *model.Design, p, q *model.Part, edge int) parting {
	e := p.Slab.Edges[edge]
	x := parting{p: p, q: q, at: geom.Through(p.Slab.Pose.Plan(e.Start), p.Slab.Pose.Plan(e.End))}
	joint, ok := d.JointOf(p.ID, q.ID)
	if !ok {
		joint.Kind = model.OpenJoint
		x.joint = joint
		return x
	}
	x.joint, x.at = joint, geom.Through(joint.Ends[0], joint.Ends[1])
	return x
}

func (x parting) names() []string { return []string{x.p.ID, x.q.ID} }

// ends tells whether the fibres of a slab end at the joint.
func (x parting) ends(p *model.Part) bool {
	along := geom.V(1, 0).Turn(p.Slab.Pose.Turn)
	return math.Abs(along.Cross(x.at.D.Unit())) > math.Sqrt2/2
}

// borne judges one joint.
func (s Site) borne(x parting) find.Finding {
	f := find.Finding{Parts: x.names(), At: at(x.at.P.Lerp(x.at.P.Add(x.at.D), 0.5).Up(x.p.Slab.Top))}
	for _, p := range []*model.Part{x.p, x.q} {
		if !x.ends(p) {
			f.Status = find.Pass
			f.Why = fmt.Sprintf("The joint of %s and %s parts no slab across its fibres: those of %s run along it. What each carries is worked out for itself, with what the joint passes on.", x.p.ID, x.q.ID, p.ID)
			return f
		}
	}
	free, slab := x.unborne(s.Design)
	most := unborneShare * min(x.p.Slab.Thickness, x.q.Slab.Thickness)
	f.At = at(x.at.P.Add(x.at.D.Unit().Mul(float64(free.from+free.to) / 2)).Up(x.p.Slab.Top))
	f.Measured, f.Required = mm(free.counts), limit(find.AtMost, most)
	f.Why = fmt.Sprintf("The fibres of %s and %s end at their joint. %s lies on nothing there from %.0f to %.0f mm along it", x.p.ID, x.q.ID, capital(slab.ID), float64(free.from), float64(free.to))
	if free.counts > free.to-free.from {
		f.Why += ", up to a free end, which counts double"
	}
	f.Why += "."
	if f = f.Judge(); f.Status == find.Pass {
		return f
	}
	switch x.joint.Kind {
	case model.PlateJoint:
		return s.plated(x, f)
	case model.GluedJoint:
		f.Why += " Glue on end grain does not carry it."
	case model.DowelJoint:
		f.Why += " Dowels keep both level and pass no bending on."
	default:
		f.Why += " An open joint passes nothing on."
	}
	f.Fix = s.bear(x, most)
	return f
}

// unborneStretch is a stretch of a joint under which a slab lies on nothing; a free
// end counts double.
type unborneStretch struct{ from, to, counts unit.Length }

// unborne is the longest such stretch, and of which slab.
func (x parting) unborne(d *model.Design) (unborneStretch, *model.Part) {
	best, of := longest(x.rests(d, x.p), x.at.D.Len()), x.p
	if other := longest(x.rests(d, x.q), x.at.D.Len()); other.counts > best.counts {
		return other, x.q
	}
	return best, of
}

// rests are the stretches of a joint near which a slab rests on something.
func (x parting) rests(d *model.Design, p *model.Part) [][2]unit.Length {
	strip := geom.Strip([]geom.Vec{x.at.P, x.at.P.Add(x.at.D)}, 2*nearJoint, 1).Intersect(flatOf(p))
	var out [][2]unit.Length
	for _, c := range carriersOf(d, p) {
		for _, piece := range bearingOf(p, c).Intersect(strip).Pieces() {
			out = append(out, x.over(piece))
		}
	}
	return out
}

// over is from where to where along the joint something is.
func (x parting) over(r geom.Region) [2]unit.Length {
	low, high := span(r, x.at.D.Unit())
	from := float64(x.at.P.Dot(x.at.D.Unit()))
	return [2]unit.Length{unit.Length(low - from), unit.Length(high - from)}
}

// bearingOf is where a slab rests on a carrier, seen from above.
func bearingOf(p, c *model.Part) geom.Region {
	switch {
	case c.Bracket() != nil:
		seat, _, _ := seatOf(c.Bracket())
		return seat
	case c.Post != nil:
		return geom.Circle(c.Post.Middle, c.Post.Dia/2, 1)
	}
	for _, f := range p.Slab.Features {
		if f.Kind == model.Bore && f.For == c.ID {
			e := p.Slab.Edges[f.Edge]
			in := e.End.Sub(e.Start).Unit().Left().Mul(-float64(f.Depth))
			return geom.Strip([]geom.Vec{f.At, f.At.Add(in)}, f.Dia, 1).Place(p.Slab.Pose)
		}
	}
	return geom.Region{}
}

// longest is the longest stretch of a joint of some length that is free.
func longest(rests [][2]unit.Length, length unit.Length) unborneStretch {
	slices.SortFunc(rests, func(a, b [2]unit.Length) int { return cmp.Compare(a[0], b[0]) })
	best := unborneStretch{}
	see := func(from, to, times unit.Length) {
		if counts := times * (to - from); counts > best.counts {
			best = unborneStretch{from, to, counts}
		}
	}
	if len(rests) == 0 {
		return unborneStretch{0, length, 2 * length}
	}
	see(0, rests[0][0], 2)
	reached := rests[0][1]
	for _, r := range rests[1:] {
		see(reached, r[0], 1)
		reached = max(reached, r[1])
	}
	see(reached, length, 2)
	return best
}

// bear says where table legs make a joint borne, and whether plates do in their
// stead.
func (s Site) bear(x parting, most unit.Length) []find.Fix {
	var out []find.Fix
	var legs []string
	enough := true
	for _, p := range []*model.Part{x.p, x.q} {
		places, ok := s.legsAlong(x, p, most)
		enough = enough && ok
		for _, at := range places {
			legs = append(legs, fmt.Sprintf("under %s, %s", p.ID, placeOn(at)))
		}
	}
	if enough && len(legs) > 0 {
		out = append(out, hint("stand table legs beside the joint: %s", strings.Join(legs, "; ")))
	}
	if used, _, ok := s.platesUsed(x, func(p *model.Part) (hold.Slab, bool) {
		b := hold.Joined(s.Design, s.Job, p.ID, model.PlateJoint)
		return b, b.Trouble == ""
	}); ok && used.share() <= 1 && x.joint.Slab != "" {
		out = append(out, hint("join them by %s: these then use %.0f %% of what they bear (set joint to %s)", joints[model.PlateJoint], 100*used.share(), model.PlateJoint))
	}
	if out == nil {
		out = []find.Fix{hint("part the slab over a bracket, or make it in one piece: neither table legs nor steel plates do it here")}
	}
	return out
}

// legsAlong are places for legs under a slab that leave no stretch of a joint free
// for too long, told from its left end and its back edge.
func (s Site) legsAlong(x parting, p *model.Part, most unit.Length) ([]geom.Vec, bool) {
	rests := x.rests(s.Design, p)
	var out []geom.Vec
	for range 4 {
		free := longest(slices.Clone(rests), x.at.D.Len())
		if free.counts <= most {
			return out, true
		}
		at := (free.from + free.to) / 2
		switch { // as far from the other bearing as may be, and never at the very end
		case free.from == 0 && free.to < x.at.D.Len():
			at = max(jointLeg, free.to-most-jointLeg/2+1)
		case free.to == x.at.D.Len():
			at = min(free.to-jointLeg, free.from+most+jointLeg/2-1)
		}
		in := x.at.D.Unit().Left().Mul(float64(jointLeg))
		mid := x.at.P.Add(x.at.D.Unit().Mul(float64(at)))
		own := p.Slab.Pose.Unplan(mid.Add(in))
		if !p.Slab.UnderOutline().Contains(own) {
			own = p.Slab.Pose.Unplan(mid.Sub(in))
		}
		own = geom.V(unit.Length(math.Round(float64(own.X))), unit.Length(math.Round(float64(own.Y))))
		top := geom.Circle(own, jointLeg/2, 1)
		if !top.Minus(p.Slab.UnderOutline()).Empty() || s.keptFree(top.Place(p.Slab.Pose), p) {
			return nil, false
		}
		out = append(out, geom.V(own.X, -own.Y))
		rests = append(rests, x.over(top.Place(p.Slab.Pose)))
	}
	return nil, false
}

// keptFree tells whether nothing may stand at a place under a slab.
func (s Site) keptFree(foot geom.Region, p *model.Part) bool {
	return slices.ContainsFunc(s.Design.Zones, func(z model.Zone) bool {
		return z.Floor < p.Slab.Top-p.Slab.Thickness && !z.Plan.Intersect(foot).Empty()
	})
}

// plateUse is what the plate of a joint that is used most takes.
type plateUse struct {
	steel, pull, takes float64 // N/mm2; N
	at                 geom.Vec
	of                 hold.Case
}

func (u plateUse) share() float64 { return math.Max(u.steel/steelangle.Yield, u.pull/u.takes) }

// platesUsed finds the plate that is used most, with a person on either slab.
func (s Site) platesUsed(x parting, slab func(*model.Part) (hold.Slab, bool)) (most plateUse, why string, ok bool) {
	most.takes = 1
	for _, p := range []*model.Part{x.p, x.q} {
		b, known := slab(p)
		if !known {
			return most, fmt.Sprintf("what %s carries cannot be computed: %s", p.ID, b.Trouble), false
		}
		for _, c := range b.Cases {
			for _, seam := range c.Seams {
				if !c.Design || !x.is(seam.Joint) {
					continue
				}
				for _, t := range seam.Passed {
					if u := usedBy(seam.Joint, t, c, b.Class, min(x.p.Slab.Thickness, x.q.Slab.Thickness)); !ok || u.share() > most.share() {
						most, ok = u, true
					}
				}
			}
		}
	}
	return most, "nothing passes its plates", ok
}

func (x parting) is(j model.Joint) bool {
	return j.Slab == x.p.ID && j.To == x.q.ID || j.Slab == x.q.ID && j.To == x.p.ID
}

// usedBy is what one plate takes: it bends between its nearer screws, and the two
// screws of a side hold that moment as a couple.
func usedBy(j model.Joint, t hold.Passed, c hold.Case, wood stock.Class, thick unit.Length) plateUse {
	_, size := j.PlateScrews()
	w := float64(model.PlateWide-size-1) * math.Pow(float64(j.Dia), 2) / 6
	near, far := float64(j.Near()), float64(j.Far())
	into := min(thick-woodOverPilot, 30)
	return plateUse{
		steel: t.Bends(j) / w,
		pull:  (t.Moment + t.Shear*far) / (far - near),
		takes: screw.Screw{Thread: size, Core: coreOf * size}.Withdrawal(into, wood.DensityLow) * c.KMod / woodGamma,
		at:    t.At, of: c,
	}
}

// plated judges the plates of a joint that lies over no bearing.
func (s Site) plated(x parting, f find.Finding) find.Finding {
	st := s.statics()
	used, why, ok := s.platesUsed(x, func(p *model.Part) (hold.Slab, bool) {
		b, known := st.Of(p.ID)
		return b, known && b.Trouble == ""
	})
	if !ok {
		u := unknown(why+".", hint("mend that first"))
		u.Parts, u.At = f.Parts, f.At
		return u
	}
	most := f.Required.Value
	f.Why += fmt.Sprintf(" Steel plates carry it: the one that is used most, %s, bends to %.0f N/mm2 and pulls %.0f N on a screw that takes %.0f N.", on(x.p, used.at), used.steel, used.pull, used.takes)
	b, _ := st.Of(x.p.ID)
	f.At, f.Assumed = at(used.at.Up(x.p.Slab.Top)), loadsAssumed(st, b, []string{"lies", "person", "step", "service_class", "grade"})
	f.Measured, f.Required = &find.Quantity{Value: round3(100 * used.share()), Unit: "%"}, &find.Limit{Value: 100, Relation: find.AtMost, Unit: "%"}
	if f = f.Judge(); f.Status == find.Fail {
		f.Fix = s.bear(x, unit.Length(most))
	}
	return f
}
