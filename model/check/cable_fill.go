package check

import (
	"fmt"
	"math"

	"slabwright/model/find"
	"slabwright/model/wire"
)

var cableFill = Rule{
	ID: "cable-fill", Title: "Holes and grooves are not overfilled",
	Basis: "grooves up to 45 %: " + practice + "; holes up to 53 % with one cable, 31 % with two, 40 % with more: NFPA 70 chapter 9 table 1, for conduit",
	Why:   "Cables that are packed tightly get warm and cannot be drawn out again without damage.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, c := range s.wires.Channels {
			f := find.Finding{Title: "Fill of " + c.Feature, Parts: []string{c.Slab}}
			f.Why = fmt.Sprintf("%s of %s holds %s.", capital(c.Feature), c.Slab, list(c.Cables))
			f.Measured = &find.Quantity{Value: 100 * c.Fill, Unit: "%"}
			f.Required = &find.Limit{Value: 100 * c.Most, Relation: find.AtMost, Unit: "%"}
			f = f.Judge()
			if f.Status == find.Fail {
				ratio := c.Fill / c.Most
				switch c.Kind {
				case wire.InSlot:
					f.Fix = []find.Fix{hint("cut the slot %.0f mm wider", math.Ceil(float64(c.Width)*(ratio-1)))}
				case wire.InGroove:
					f.Fix = []find.Fix{hint("cut the groove %.0f mm wide", math.Ceil(float64(c.Width)*ratio))}
				default:
					f.Fix = []find.Fix{hint("bore the hole %.0f mm wide", math.Ceil(float64(c.Width)*math.Sqrt(ratio)))}
				}
			}
			out = append(out, f)
		}
		return orNone(out, "No cable lies in a hole or a groove.")
	},
}
