package check

import (
	"fmt"

	"slabwright/model/find"
	"slabwright/model/unit"
)

// liftAlone is what one person lifts close to the body; two lift two thirds of
// the sum, three a half (HSE L23, from memory).
const liftAlone unit.Mass = 25

var massRule = Rule{
	ID: "mass", Title: "What every part weighs",
	Basis: "volumes of the solids, mean density of the species at 12 % moisture, steel 7850 kg/m3; lifting figures: HSE L23, from memory",
	Why:   "Whoever lifts it wants to know before letting go of the van's floor.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		var total unit.Mass
		for _, p := range s.Design.Parts {
			m := p.Mass()
			total += m
			if m <= liftAlone {
				continue
			}
			out = append(out, find.Finding{
				Status: find.Note, Parts: []string{p.ID}, At: at(p.Centroid()),
				Title:    "Lifting " + p.ID,
				Why:      fmt.Sprintf("%s weighs %.1f kg: %s. Props under it before anybody lets go; fingers stay out from between slab and steel.", p.ID, float64(m), hands(m)),
				Measured: &find.Quantity{Value: round3(float64(m)), Unit: "kg"},
				Assumed:  []find.Assumption{{What: "mean density of the species; a slab may weigh a tenth more or less", Source: p.Material}},
			})
		}
		out = append(out, find.Finding{
			Status: find.Note, Title: "What all parts weigh together",
			Why:      fmt.Sprintf("All parts together weigh %.1f kg.", float64(total)),
			Measured: &find.Quantity{Value: round3(float64(total)), Unit: "kg"},
		})
		return out
	},
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
	return "more than the 37 kg that three people lift by the rule; more hands, a lifting aid, or one end at a time on props"
}
