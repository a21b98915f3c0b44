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
const contact unit.Length = 0.06

var overlap = Rule{
	ID: "parts-overlap", Title: "No part stands in another", Fit: true,
	Basis: "geometry: signed distance of the solids",
	Why:   "Two parts that claim the same space cannot both be put in. Parts that bear on each other may touch.",
	Run: func(s Site) []find.Finding {
		out := unbuilt(s.Design)
		var nearest *find.Finding
		parts := s.Design.Parts
		for i, a := range parts {
			for _, b := range parts[i+1:] {
				most := farthest
				if nearest != nil {
					most = unit.Length(nearest.Measured.Value)
				}
				if fits(a, b) || s.apart(a, b) >= most {
					continue // a rod in its bore; or too far apart to be the closest two
				}
				gap, ok := s.shapes.gap(a, b)
				if !ok || gap.Distance >= -contact && gap.Distance < contact && bears(a, b) {
					continue
				}
				f := find.Finding{Parts: []string{a.ID, b.ID}, At: at(mid(gap)), Measured: mm(gap.Distance), Required: limit(find.AtLeast, 0.0)}
				if gap.Distance < -contact {
					out = append(out, inside(f, a, b, gap))
					continue
				}
				f.Measured.Value = max(0, f.Measured.Value)
				f.Why = fmt.Sprintf("The closest two, %s and %s, are %.1f mm apart.", a.ID, b.ID, f.Measured.Value)
				if nearest == nil || f.Measured.Value < nearest.Measured.Value {
					nearest = &f
				}
			}
		}
		switch {
		case len(out) > 0:
		case nearest != nil:
			out = append(out, nearest.Judge())
		default:
			out = append(out, find.Finding{Status: find.Pass, Why: "No two parts come near each other, but for those that bear on each other."})
		}
		return out
	},
}

// inside says how two parts share a space. To come clear one must move by the
// smaller of its width and its height.
func inside(f find.Finding, a, b *model.Part, gap geom.Gap3) find.Finding {
	f.Why = fmt.Sprintf("%s and %s claim the same space, %.1f mm wide seen from above and %.1f mm high.", capital(a.ID), b.ID, float64(gap.Plan), float64(gap.Height))
	if a.Bracket() != nil && b.Bracket() != nil {
		f.Fix = []find.Fix{hint("set %s or %s further back, by %.0f mm; how far from the corner it must be stands with the rule angles-in-corner", a.ID, b.ID, float64(up(gap.Plan)))}
		return f.Judge()
	}
	way := "sideways"
	if gap.Height < gap.Plan {
		way = "up or down"
	}
	f.Fix = []find.Fix{hint("move %s or %s %s by %.0f mm, or make one of them that much smaller", a.ID, b.ID, way, float64(up(-gap.Distance)))}
	return f.Judge()
}

// apart is a lower bound of the distance of two parts, from the boxes around
// them.
func (s Site) apart(a, b *model.Part) unit.Length {
	if len(a.Bodies) == 0 || len(b.Bodies) == 0 {
		return farthest
	}
	p, q := s.shapes[a]().bounds, s.shapes[b]().bounds
	if bears(a, b) && min(p.Max.Z, q.Max.Z)-max(p.Min.Z, q.Min.Z) < contact {
		return farthest // one lies on the other, as it is meant to
	}
	return p.Gap(q)
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
