package check

import (
	"fmt"

	"slabwright/model/find"
)

var cableLength = Rule{
	ID: "cable-length", Title: "Cables are long enough, also for the table that rolls",
	Basis: "a tenth more than the way, 300 mm at least, and a loop for a table rolled right out: " + practice,
	Why:   "A lead that ends a hand short lies across the knees or is joined where nobody sees it; one without a loop is torn out by the table.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, r := range s.wires.Runs {
			if !r.Found {
				continue
			}
			f := find.Finding{Title: "Length of " + r.Cable.Name, Status: find.Pass, Line: r.Cable.Pos.String(), At: at(midway(r.Points))}
			f.Why = fmt.Sprintf("%s needs %.2f m with slack; cut it to length.", capital(r.Cable.Name), float64(r.Needed)/1000)
			if r.Loop > 0 {
				f.Why += fmt.Sprintf(" %.2f m of it hang as a loop to the table.", float64(r.Loop)/1000)
			}
			if r.Cable.Stock > 0 {
				f.Why = fmt.Sprintf("%s needs %.2f m with slack and has %.2f m.", capital(r.Cable.Name), float64(r.Needed)/1000, float64(r.Cable.Stock)/1000)
				f.Measured, f.Required = mm(r.Cable.Stock), limit(find.AtLeast, r.Needed)
				f = f.Judge()
				if f.Status == find.Fail {
					f.Fix = []find.Fix{hint("take one that is %.1f m long", float64(up(r.Needed)+99)/1000), hint("or move the device nearer by %s mm", wholeMM(up(r.Needed-r.Cable.Stock)))}
				}
			}
			out = append(out, f)
		}
		return orNone(out, "There are no cables in the job.")
	},
}
