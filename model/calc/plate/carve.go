package plate

import (
	"cmp"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Cut is wood taken out of one face of a plate.
type Cut struct {
	Region geom.Region
	Depth  unit.Length
}

// Carved gives what cuts leave of a plate, disjoint. The face beside a cut
// carries nothing either: the stress that went round the cut needs about its
// depth to come back. So every cut counts as wider by its depth on either side;
// against CalculiX solids, along and across the grain, grooves of 20 to 120 mm
// and up to half the thickness come out within 7 %, deeper ones too soft.
func Carved(thick unit.Length, cuts []Cut) []Thinner {
	deep := slices.Clone(cuts)
	slices.SortStableFunc(deep, func(a, b Cut) int { return cmp.Compare(b.Depth, a.Depth) })
	var done geom.Region
	var out []Thinner
	for _, c := range deep {
		whole := c.Region.Grow(c.Depth, 1)
		if r := whole.Minus(done); !r.Empty() && c.Depth < thick {
			out = append(out, Thinner{r, thick - c.Depth})
		}
		done = done.Union(whole)
	}
	return out
}
