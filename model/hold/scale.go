package hold

import (
	"slices"

	"slabwright/model/unit"
)

// scaled turns what the coarse mesh makes of a slab into what the fine one would,
// by what both make of a slab much like it.
func (b Slab) scaled(fine, coarse Slab) Slab {
	b.Cases = slices.Clone(b.Cases)
	b.Years *= unit.Length(ratio(float64(fine.Years), float64(coarse.Years)))
	b.First *= ratio(fine.First, coarse.First)
	of := func(measure func(Case) float64) float64 {
		x, _ := fine.Worst(measure)
		y, _ := coarse.Worst(measure)
		return ratio(measure(x), measure(y))
	}
	down := of(func(c Case) float64 { return float64(c.Lowest.Down) })
	up := of(func(c Case) float64 { return -float64(c.Highest.Down) })
	along := of(func(c Case) float64 { return c.Along.Value })
	across := of(func(c Case) float64 { return c.Across.Value })
	press := of(func(c Case) float64 { return c.Pressure.Value })
	for i := range b.Cases {
		c := &b.Cases[i]
		c.Lowest.Down *= unit.Length(down)
		c.Highest.Down *= unit.Length(up)
		c.Along.Value *= along
		c.Across.Value *= across
		c.Pressure.Value *= press
	}
	return b
}

func ratio(fine, coarse float64) float64 {
	if coarse == 0 || fine == 0 {
		return 1
	}
	return fine / coarse
}
