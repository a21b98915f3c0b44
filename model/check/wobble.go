package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/hold"
)

// stillFrom is the frequency above which a floor needs no further look, Hz.
const stillFrom = 8

var wobbleRule = Rule{
	ID: "wobble", Title: "Whether the slab wobbles",
	Basis: "lowest natural frequency, with what lies there most of the time, at least 8 Hz: EN 1995-1-1 7.3.3 asks it of floors, from memory; for desks a yardstick, no source",
	Why:   "Below about 8 Hz typing and walking by make a slab swing visibly, with a monitor on it more so.",
	Run: func(s Site) []find.Finding {
		return s.eachSlab([]string{"lies", "grade"}, func(p *model.Part, b hold.Slab) []find.Finding {
			f := find.Finding{
				Measured: &find.Quantity{Value: round3(b.First), Unit: "Hz"}, Required: &find.Limit{Value: stillFrom, Relation: find.AtLeast, Unit: "Hz"},
				Why: fmt.Sprintf("%s swings at %.1f Hz by itself.", capital(b.Part), b.First),
			}.Judge()
			if f.Status == find.Fail {
				f.Fix = s.remedies(p, hold.Wanted{Of: hold.Swinging, Used: func(b hold.Slab) float64 { return stillFrom / b.First }}, func(b hold.Slab) string {
					return fmt.Sprintf("it then swings at %.1f Hz", b.First)
				})
			}
			return []find.Finding{f}
		})
	},
}
