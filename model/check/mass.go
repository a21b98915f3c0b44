package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// liftAlone is what one person lifts close to the body; two lift two thirds of
// the sum, three a half (HSE L23, from memory).
const liftAlone unit.Mass = 25

// tableTolerance is how far the mass of a modelled bar may be off the table's.
const tableTolerance = 1 // percent

var massRule = Rule{
	ID: "mass", Title: "What everything weighs",
	Basis: "volumes of the solids, mean density of the species at 12 % moisture, steel 7850 kg/m3; masses of angles per metre: EN 10056-1; lifting: HSE L23, from memory",
	Why:   "Whoever lifts it wants to know before letting go of the van's floor, and where its centre of gravity is. A bar that weighs something else than the table says was drawn, or typed in, with a wrong size.",
	Run: func(s Site) []find.Finding {
		out := unbuilt(s.Design)
		var total unit.Mass
		var centre geom.Vec3
		for _, p := range s.Design.Parts {
			if len(p.Bodies) == 0 {
				continue
			}
			m := p.Mass()
			total += m
			centre = centre.Add(p.Centroid().Mul(float64(m)))
			if p.Rod == nil {
				out = append(out, weight(p, m))
			}
		}
		for _, shelf := range s.Design.Parts {
			if f, ok := rodWeight(s.Design, shelf); ok {
				out = append(out, f)
			}
		}
		if total > 0 {
			out = append(out, whole(total, centre.Mul(1/float64(total))))
		}
		if f, ok := barMass(s.Design); ok {
			out = append(out, f)
		}
		return out
	},
}

func kg(m unit.Mass) *find.Quantity { return &find.Quantity{Value: float64(m), Unit: "kg"} }

// weight tells what a part weighs and who lifts it.
func weight(p *model.Part, m unit.Mass) find.Finding {
	f := find.Finding{Title: "Weight of " + p.ID, Parts: []string{p.ID}, At: at(p.Centroid()), Measured: kg(m), Required: &find.Limit{Value: float64(liftAlone), Relation: find.AtMost, Unit: "kg"}}.Judge()
	f.Why = fmt.Sprintf("%s weighs %.1f kg, its centre of gravity is %s.", capital(p.ID), float64(m), place(p))
	if f.Status == find.Fail {
		f.Status = find.Note
		f.Why += " " + fmt.Sprintf("To lift it: %s.", hands(m)) + " " + "Props under it before anybody lets go; fingers stay out from between slab and bearings."
	}
	if p.Slab != nil || p.RollOut != nil || p.Cleat != nil {
		f.Assumed = []find.Assumption{{What: "mean density of the species at 12 % moisture; a slab may weigh a tenth more or less", Source: p.Material + ": " + sourceOf(p)}}
	}
	return f
}

// rodWeight tells what the rods of a shelf weigh together.
func rodWeight(d *model.Design, shelf *model.Part) (find.Finding, bool) {
	f := find.Finding{Status: find.Pass, Title: "Weight of the rods of " + shelf.ID}
	var m unit.Mass
	var centre geom.Vec3
	for _, p := range carriersOf(d, shelf) {
		if p.Rod != nil {
			f.Parts = append(f.Parts, p.ID)
			m += p.Mass()
			centre = centre.Add(p.Centroid().Mul(float64(p.Mass())))
		}
	}
	if m == 0 {
		return f, false
	}
	f.At, f.Measured = at(centre.Mul(1/float64(m))), kg(m)
	f.Why = fmt.Sprintf("The %s of %s weigh %.1f kg together.", count(len(f.Parts), "rod", "rods"), shelf.ID, float64(m))
	return f, true
}

func sourceOf(p *model.Part) string {
	if p.Slab != nil {
		return p.Slab.Species.Source
	}
	if p.Cleat != nil {
		return p.Cleat.Species.Source
	}
	if s, err := stock.SpeciesByName(p.Material); err == nil {
		return s.Source
	}
	return practice
}

// place says where the centre of gravity is, as one measures it on the part.
func place(p *model.Part) string {
	c := p.Centroid()
	switch {
	case p.Slab != nil:
		o := p.Slab.Pose.Unplan(c.Flat())
		return fmt.Sprintf("%.0f mm from the left end of the back edge and %.0f mm from that edge", float64(o.X), -float64(o.Y))
	case p.Bracket() != nil:
		return fmt.Sprintf("%.0f mm from the left end", float64(p.Bracket().Pose().Unplan(c.Flat()).X))
	}
	return fmt.Sprintf("%.0f mm above the floor", float64(c.Z))
}

func whole(total unit.Mass, c geom.Vec3) find.Finding {
	return find.Finding{
		Status: find.Note, Title: "Weight of everything", At: at(c), Measured: kg(total),
		Why: fmt.Sprintf("All parts together weigh %.1f kg; their common centre of gravity is %.0f mm above the floor.", float64(total), float64(c.Z)),
	}
}

// hands says who lifts a mass: 25 kg alone, 2/3 of the sum by two, half of the
// sum by three.
func hands(m unit.Mass) string {
	switch {
	case m <= 2*liftAlone*2/3:
		return "two people"
	case m <= 3*liftAlone/2:
		return "three people"
	}
	return "more than the 37 kg that three people lift by the rule, so more hands, a lifting aid, or one end at a time on props"
}

// barMass holds the mass per metre of every angle, with its holes filled again,
// against the table; it reports the one that is furthest off.
func barMass(d *model.Design) (find.Finding, bool) {
	worst, found := 0.0, false
	var f find.Finding
	for _, p := range d.Parts {
		if p.Angle == nil || len(p.Bodies) == 0 || p.Angle.Section.Mass <= 0 {
			continue
		}
		modelled, table := perMetre(p), float64(p.Angle.Section.Mass)
		off := 100 * math.Abs(modelled/table-1)
		if found && off <= worst {
			continue
		}
		worst, found = off, true
		f = find.Finding{
			Title: "Mass of the steel against the table", Parts: []string{p.ID},
			Why:      fmt.Sprintf("%s is drawn at %.2f kg per metre before drilling; the table gives %s %.2f.", capital(p.ID), modelled, p.Angle.Section.Name, table),
			Measured: &find.Quantity{Value: off, Unit: "%"}, Required: &find.Limit{Value: tableTolerance, Relation: find.AtMost, Unit: "%"},
			Assumed: []find.Assumption{{What: fmt.Sprintf("steel of %.0f kg/m3", float64(stock.Steel)), Source: p.Angle.Section.Source}},
		}.Judge()
	}
	if f.Status == find.Fail {
		f.Fix = []find.Fix{hint("look up legs, thickness, root and toe radius of the section again: one of them, or its mass, is not that of the table")}
	}
	return f, found
}

// perMetre is the mass of a bar per metre without its holes, in kilograms.
func perMetre(p *model.Part) float64 {
	a := p.Angle
	v := float64(p.Volume())
	for _, h := range a.Holes {
		v += float64(a.Section.Thickness) * (math.Pi/4*float64(h.Dia*h.Dia) + float64(h.Dia*h.Slot))
	}
	tan := func(e model.End) float64 { return math.Tan(float64(e.Mitre)) }
	mean := float64(a.Length) + (tan(a.Left)+tan(a.Right))*float64(rolledOf(a.Section).Section().Centroid) // of mitred bars
	return float64(stock.Steel.Mass(unit.Volume(v))) / mean * 1000
}
