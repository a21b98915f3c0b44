package check

import (
	"fmt"

	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

var chairRoom = Rule{
	ID: "chair-room", Title: "Legs stay free when the chair turns",
	Basis: fmt.Sprintf("legs from the ANSUR II regressions; chair 50 mm to each side and turned by 30 degrees: %s", practice),
	Why:   "Nobody sits still and straight. Who turns to a shelf or gets up sideways sweeps thighs, knees and feet past legs, brackets, screw heads, castors and cables that are clear of them straight ahead.",
	Run:   func(s Site) []find.Finding { return s.eachSitter(s.turns) },
}

func (s Site) turns(x *sit.Sitter) []find.Finding {
	f := about("Room to turn for", x)
	f.Required = limit(find.AtLeast, unit.Length(0))
	f.Assumed = []find.Assumption{
		rests("top of the thigh", x, 1), rests("hips", x, 7), rests("belly to knee", x, 8),
		{What: fmt.Sprintf("shoe %.0f mm, %.0f mm to move the thigh, feet slid forward by %.0f mm", float64(x.Shoe), float64(body.OverThigh.Value), float64(body.LegStretch.Value)), Source: body.LegStretch.Source},
		{What: "chair turns about a post 205 mm before its back", Source: "seats 400 to 420 mm deep: DGUV Information 209-069; " + practice},
	}
	var nearest *sit.Thing
	var inside, beside, feet []string
	for i, t := range x.Things {
		switch {
		case t.Distance >= 0:
			beside = append(beside, fmt.Sprintf("%s (%s, %.0f mm)", t.Name, t.Box, float64(t.Distance)))
		case t.Box == sit.Foot:
			feet = append(feet, fmt.Sprintf("%s (by %.0f mm)", t.Name, float64(up(-t.Distance))))
		default:
			inside = append(inside, fmt.Sprintf("%s (%s, by %.0f mm)", t.Name, t.Box, float64(up(-t.Distance))))
			involve(&f, t.Part, t.Wall)
		}
		if nearest == nil && t.Box != sit.Foot {
			nearest = &x.Things[i]
		}
	}
	if nearest == nil {
		f.Status, f.Required = find.Pass, nil
		f.Why = fmt.Sprintf("Nothing is within %.0f mm of thighs, knees and shins, the chair moved to both sides and turned.", float64(sit.Near))
	} else {
		involve(&f, nearest.Part, nearest.Wall)
		f.Measured, f.At = mm(nearest.Distance), at(nearest.At)
		f = f.Judge()
		f.Why = "When the chair moves and turns, nothing meets thighs, knees or shins."
		if inside != nil {
			f.Status = find.Warn
			f.Why = fmt.Sprintf("When the chair moves and turns, legs meet %s.", list(inside))
			f.Fix = s.unmet(x, *nearest)
		}
	}
	if beside != nil {
		f.Why += fmt.Sprintf(" Near, but clear: %s.", list(beside[:min(3, len(beside))]))
	}
	if feet != nil {
		f.Why += fmt.Sprintf(" Feet slid far forward meet %s; they are drawn back without a thought.", list(feet))
	}
	f.Why += nobodyTold(x)
	return []find.Finding{f}
}

// unmet proposes how the first thing that reaches in leaves.
func (s Site) unmet(x *sit.Sitter, t sit.Thing) []find.Fix {
	by := up(-t.Distance)
	right, _ := x.From(t.At.Flat())
	switch {
	case t.Part == x.Slab.ID:
		return []find.Fix{hint("raise the surface by %.0f mm or take the slab that much thinner over the legs", float64(by))}
	case t.Part == "" && t.Wall == "":
		return []find.Fix{hint("lead %s %.0f mm further away, or let it into a groove", t.Name, float64(by))}
	}
	return []find.Fix{hint("sit %.0f mm further to the %s, or keep %s that much further away", float64(by), leftOrRight(-right), t.Name)}
}
