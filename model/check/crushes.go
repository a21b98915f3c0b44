package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/hold"
)

var pressureRule = Rule{
	ID: "bearing-pressure", Title: "Whether the wood is crushed on its bearings",
	Basis: "EN 1995-1-1 6.1.5 with k_c,90 = 1 and the contact longer inwards, along the grain, by its own length and 30 mm at most, f_c,90 of EN 338:2016; a bearing is taken in strips of a third of the leg: the pressure at the toe is an average over its strip",
	Why:   "A loose slab does not lie on the whole leg but on its toe, and near a person on a short piece of it. Crushed fibres stay crushed, the slab then rocks.",
	Run: func(s Site) []find.Finding {
		return s.eachSlab([]string{"lies", "person", "step", "service_class", "grade"}, func(p *model.Part, b hold.Slab) []find.Finding {
			worst := func(b hold.Slab) hold.Case {
				c, _ := b.Worst(func(c hold.Case) float64 {
					if !c.Design {
						return 0
					}
					return c.Pressure.Used()
				})
				return c
			}
			c := worst(b)
			f := find.Finding{
				At: onTop(p, c.Pressure.At), Measured: newton(c.Pressure.Value), Required: strength(c.Pressure.Strength),
				Why: fmt.Sprintf("%s is pressed with %.2f N/mm2 where it bears most, %s, with %s.", capital(b.Part), c.Pressure.Value, on(p, c.Pressure.At), s.loadedBy(p, c)),
			}.Judge()
			if f.Status == find.Fail {
				f.Fix = s.remedies(p, hold.Wanted{Of: hold.Strength, Used: func(b hold.Slab) float64 { return worst(b).Pressure.Used() }}, func(b hold.Slab) string {
					return fmt.Sprintf("%.2f N/mm2 are left", worst(b).Pressure.Value)
				})
			}
			return []find.Finding{f}
		})
	},
}
