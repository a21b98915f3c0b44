package check

import (
	"fmt"

	"slabwright/model/bring"
	"slabwright/model/calc/lift"
	"slabwright/model/find"
)

var liftingRule = Rule{
	ID: "lifting", Title: "Hands for every slab",
	Basis: lift.Source + "; held 350 mm in front of the ankles, from trestles of 750 mm: " + practice,
	Why:   "A slab that two could carry on a lawn is not set on an angle at arm's length by two. Backs and fingers go when somebody lets go first.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, l := range bring.LiftsOf(s.Design) {
			out = append(out, liftOf(l))
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "There is no slab to lift."})
		}
		return out
	},
}

// liftOf judges one slab: the team by its mass, and the share of each by the
// lifting equation.
func liftOf(l bring.Lift) find.Finding {
	f := find.Finding{
		Title: "Lifting " + l.Part.ID, Parts: []string{l.Part.ID}, At: at(l.Part.Centroid()),
		Measured: kg(l.Share), Required: &find.Limit{Value: float64(l.Recommended), Relation: find.AtMost, Unit: "kg"},
		Assumed: []find.Assumption{
			{What: "grown men used to it, each 25 kg close to the body; on dry, level floor, standing, no more than once in five minutes", Source: lift.Source},
			{What: "not for kneeling under the desk nor for stairs: the equation is not made for these", Source: lift.Source},
		},
	}.Judge()
	team := fmt.Sprintf("one person lifts it, %.1f kg,", float64(l.Share))
	if l.People > 1 {
		team = fmt.Sprintf("%d people lift it, %.1f kg each,", l.People, float64(l.Share))
	}
	f.Why = fmt.Sprintf("%s weighs %.0f kg: %s from trestles to %.0f mm above the floor. Take it %s.", capital(l.Part.ID), float64(l.Mass), team, float64(l.To), l.Grip)
	if !l.Enough {
		f.Why = fmt.Sprintf("%s weighs %.0f kg, more than the %.0f kg that four people lift by the rule: use a lift table or props and set one end at a time. Take it %s.", capital(l.Part.ID), float64(l.Mass), float64(lift.Team(lift.Alone, lift.Alone, lift.Alone, lift.Alone)), l.Grip)
	}
	if !l.Enough {
		f.Status, f.Required, f.Margin, f.Measured = find.Note, nil, nil, kg(l.Mass)
		f.Fix = []find.Fix{hint("a lift table, or pieces of no more than %.0f kg", float64(lift.Team(lift.Alone, lift.Alone)))}
		return f
	}
	switch index := lift.Index(l.Share, l.Recommended); {
	case l.Recommended == 0:
		f.Status, f.Required, f.Margin = find.Note, nil, nil
		f.Why += " That is out of reach of the lifting equation: stand on a firm platform, or use a lift."
	case f.Status == find.Fail:
		f.Status = find.Note
		f.Why += fmt.Sprintf(" The lifting equation recommends %.1f kg for one person there: the share is %.1f times that.", float64(l.Recommended), index)
		f.Fix = []find.Fix{hint("%d people at %.1f kg each would keep it, or a lift table, or one end at a time on props", sharers(l), float64(l.Recommended))}
	default:
		f.Why += fmt.Sprintf(" The lifting equation recommends %.1f kg for one person there.", float64(l.Recommended))
	}
	return f
}

// sharers is how many people keep each share below what is recommended.
func sharers(l bring.Lift) int {
	n := 1
	for float64(l.Mass)/float64(n) > float64(l.Recommended) {
		n++
	}
	return n
}
