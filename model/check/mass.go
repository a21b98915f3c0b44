package check

import (
	"fmt"
	"math"

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
			n := people(m)
			c := p.Centroid()
			out = append(out, find.Finding{
				Status: find.Note, Parts: []string{p.ID}, At: at(c),
				Title:    fmt.Sprintf("%s takes %d people", p.ID, n),
				Why:      fmt.Sprintf("%s weighs %.1f kg: %d people, and props before anybody lets go. Fingers stay out from between slab and steel.", p.ID, float64(m), n),
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

// people gives how many share a lift: 25 kg alone, 2/3 of the sum by two, half
// of the sum by three and more.
func people(m unit.Mass) int {
	switch {
	case m <= liftAlone:
		return 1
	case m <= 2*liftAlone*2/3:
		return 2
	}
	return max(3, int(math.Ceil(float64(m/(liftAlone/2)))))
}
