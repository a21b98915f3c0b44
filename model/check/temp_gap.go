package check

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

type gap3 struct {
	Distance, Plan, Height unit.Length
	A, B                   geom.Vec3
}

func clearance(a, b geom.Solid) gap3 {
	best := gap3{Distance: 1e9}
	ba, bb := a.Bounds(), b.Bounds()
	far := max(ba.Min.X-bb.Max.X, bb.Min.X-ba.Max.X, ba.Min.Y-bb.Max.Y, bb.Min.Y-ba.Max.Y, ba.Min.Z-bb.Max.Z, bb.Min.Z-ba.Max.Z)
	if far > 300 {
		return gap3{Distance: far, A: ba.Min, B: bb.Min}
	}
	for _, la := range a.Layers() {
		for _, lb := range b.Layers() {
			g := la.Region.Gap(lb.Region)
			h := max(la.Z0-lb.Z1, lb.Z0-la.Z1)
			var d unit.Length
			switch {
			case g.Distance > 0 && h > 0:
				d = unit.Length(math.Hypot(float64(g.Distance), float64(h)))
			default:
				d = max(g.Distance, h)
			}
			if d < best.Distance {
				best = gap3{d, g.Distance, h, g.A.Up(la.Z0), g.B.Up(lb.Z0)}
			}
		}
	}
	return best
}
