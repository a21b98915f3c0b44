package check

import (
	"fmt"
	"slices"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// contact is the overlap below which two parts are taken to touch: twice the
// grid of the kernel and the flattening of a round rod in its bore.
const contact = 0.06

var overlap = Rule{
	ID: "parts-overlap", Title: "No part stands in another",
	Basis: "geometry: signed distance of the solids",
	Why:   "Two parts that claim the same space cannot both be put in. Parts that bear on each other may touch.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		var nearest *find.Finding
		parts := s.Design.Parts
		for i, a := range parts {
			for _, b := range parts[i+1:] {
				if fits(a, b) || nearest != nil && a.Bounds().Gap(b.Bounds()) > unit.Length(nearest.Measured.Value) {
					continue // too far apart to be the closest two
				}
				gap, ok := partGap(a, b)
				if !ok {
					continue
				}
				f := find.Finding{Parts: []string{a.ID, b.ID}, At: at(mid(gap)), Measured: find.MM(gap.Distance), Required: find.LimitMM(find.AtLeast, 0.0)}
				f.Why = fmt.Sprintf("%s and %s are %.1f mm apart.", a.ID, b.ID, float64(gap.Distance))
				if gap.Distance < -contact {
					f.Why = fmt.Sprintf("%s stands in %s: they share a space %.1f mm wide in plan and %.1f mm high.", a.ID, b.ID, float64(gap.Plan), float64(gap.Height))
					f.Fix = []find.Fix{{Text: fmt.Sprintf("move, shorten or cut back %s or %s by that much", a.ID, b.ID)}}
					out = append(out, f.Judge())
					continue
				}
				if gap.Distance < contact && bears(a, b) {
					continue
				}
				if nearest == nil || f.Measured.Value < nearest.Measured.Value {
					nearest = &f
				}
			}
		}
		if len(out) == 0 && nearest != nil {
			nearest.Measured.Value = max(0, nearest.Measured.Value)
			nearest.Title = "No part stands in another; the closest two"
			out = append(out, nearest.Judge())
		}
		return out
	},
}

// partGap is the least signed distance of the bodies of two parts.
func partGap(a, b *model.Part) (geom.Gap3, bool) {
	var best geom.Gap3
	found := false
	for _, x := range a.Bodies {
		for _, y := range b.Bodies {
			if found && x.Solid.Bounds().Gap(y.Solid.Bounds()) > max(0, best.Distance) {
				continue
			}
			if g := geom.Clearance(x.Solid, y.Solid); g.Err == nil && (!found || g.Distance < best.Distance) {
				best, found = g, true
			}
		}
	}
	return best, found
}

// fits tells whether one part is made to sit inside the other: a rod in its
// bore.
func fits(a, b *model.Part) bool {
	return a.Rod != nil && a.Rod.Shelf == b.ID || b.Rod != nil && b.Rod.Shelf == a.ID
}

func bears(a, b *model.Part) bool {
	return slices.Contains(a.Bears, b.ID) || slices.Contains(b.Bears, a.ID)
}

func mid(g geom.Gap3) geom.Vec3 { return g.A.Add(g.B).Mul(0.5) }
