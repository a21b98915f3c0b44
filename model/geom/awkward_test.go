package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// awkward draws numbers that users should not write but do.
func awkward(r *rand.Rand) unit.Length {
	odd := []float64{0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1e-300, 1e6, 1e6 + 1, -1e6, 1e9,
		0.0004, 0.0006, 0.001, -0.001, 1. / 3, 5, 6, 10, 40, 60, 100, 600, 1000}
	return unit.Length(odd[r.IntN(len(odd))])
}

// sane draws a size that makes sense, now and then one that does not.
func sane(r *rand.Rand, v unit.Length) unit.Length {
	if r.IntN(12) == 0 {
		return awkward(r)
	}
	return v
}

// Whatever the numbers are, a solid is built or carries a fault; nothing panics.
func TestAwkwardNumbers(t *testing.T) {
	r := rand.New(rand.NewPCG(56, 0))
	last := plank(1000, 600, 40).Solid()
	use := func(s Solid) {
		if s.Err() == nil {
			closed(t, s)
		}
		z := awkward(r)
		s.At(z)
		s.Cut(Through(V(awkward(r), z), V(awkward(r), awkward(r))))
		placed := s.Place(Pose{At: Vec3{awkward(r), awkward(r), z}, Turn: unit.Angle(awkward(r))})
		if placed.Err() == nil {
			placed.Bounds()
			Clearance(placed, last)
		}
		if s.Err() == nil {
			last = s
		}
	}
	for range 150 {
		slab := plank(sane(r, 1000), sane(r, 600), sane(r, 40))
		for i := range slab.Outline {
			e := &slab.Outline[i]
			e.EaseTop, e.EaseUnder, e.Lean = sane(r, 2), sane(r, 1), sane(r, 0)
			if r.IntN(10) == 0 {
				e.Over = []Vec{e.Path[0].Add(V(sane(r, 0), 0)), e.Path[1].Add(V(sane(r, 0), 0))}
			}
			if r.IntN(20) == 0 {
				e.Path = e.Path[:r.IntN(2)]
			}
		}
		slab.Cuts = []SlabCut{{Name: "c", Region: Circle(V(sane(r, 300), 300), sane(r, 10), sane(r, 0.05)), From: CutFrom(r.IntN(4)), Depth: sane(r, 10),
			Mouth: Bevel{sane(r, 2), sane(r, 2)}}}
		use(slab.Solid())
		bar := bar60()
		bar.SeatWidth, bar.Thickness, bar.Root, bar.Toe, bar.Length, bar.Chord = sane(r, 60), sane(r, 6), sane(r, 8), sane(r, 4), sane(r, 1000), sane(r, 0)
		bar.Start.Plan, bar.End.Slope = unit.Angle(sane(r, 0.3)), unit.Angle(sane(r, 0))
		bar.Holes = []BarHole{{X: sane(r, 500), FromHeel: sane(r, 30), Dia: sane(r, 8), Slot: sane(r, 0), SinkDia: sane(r, 12), SinkDepth: sane(r, 0)}}
		use(bar.Solid())
		use(Rod(Vec3{sane(r, 0), 0, sane(r, 5)}, Vec3{sane(r, 100), 50, 5}, sane(r, 6), sane(r, 0.1)))
		use(Cylinder(V(sane(r, 0), 0), sane(r, 10), sane(r, 0), sane(r, 50), sane(r, 0.1), "c"))
		use(Stacked("s", Layer{Rect(V(sane(r, 0), 0), V(sane(r, 10), 10)), sane(r, 0), sane(r, 10)}, Layer{Circle(V(0, 0), sane(r, 5), 0.1), sane(r, 10), sane(r, 20)}))
	}
	use(Slab{}.Solid())
	use(AngleBar{}.Solid())
	use(Slab{Outline: EdgesOf(Region{}), Top: 1}.Solid())
	use(Slab{Outline: EdgesOf(Rect(V(0, 0), V(3, 4))), Top: 1}.Solid())
}
