package geom

import (
	"fmt"
	"math"
	"testing"

	"slabwright/model/unit"
)

// naturalSlab has a natural front edge of n corners and 40 holes.
func naturalSlab(n int) Slab {
	s := plank(3000, 800, 45)
	front := &s.Outline[0]
	front.Path, front.Over = nil, nil
	for i := range n + 1 {
		x := 3000 * unit.Length(i) / unit.Length(n)
		y := unit.Length(-30 - 12*math.Sin(float64(i)/9) - 2*math.Sin(float64(i)*1.7))
		over := y + 8 + unit.Length(4*math.Sin(float64(i)/5))
		if i == 0 || i == n {
			y, over = 0, 0
		}
		front.Path, front.Over = append(front.Path, V(x, y)), append(front.Over, V(x, over))
	}
	for i := range 40 {
		at := V(100+70*unit.Length(i), 300+200*unit.Length(i%3))
		s.Cuts = append(s.Cuts, SlabCut{Name: fmt.Sprint("hole ", i), Region: Circle(at, 4, 0.05), From: CutFromUnder, Depth: 30,
			Mouth: Bevel{2, 2}})
	}
	return s
}

func BenchmarkNaturalSlab(b *testing.B) {
	s := naturalSlab(500)
	for b.Loop() {
		if len(s.Solid().Faces()) == 0 {
			b.Fatal(s.Solid().Err())
		}
	}
}

func BenchmarkNaturalSlabLayers(b *testing.B) {
	s := naturalSlab(500)
	for b.Loop() {
		if len(s.Solid().Layers()) == 0 {
			b.Fatal("no layers")
		}
	}
}

func BenchmarkNaturalSlabFootprint(b *testing.B) {
	s := naturalSlab(500).Solid()
	for b.Loop() {
		if s.Footprint().Empty() {
			b.Fatal("no footprint")
		}
	}
}

func BenchmarkAngle(b *testing.B) {
	bar := bar60()
	for i := range 10 {
		bar.Holes = append(bar.Holes, BarHole{Name: fmt.Sprint(i), Leg: BarLeg(i % 2), X: 50 + 100*unit.Length(i), FromHeel: 35, Dia: 6.5, SinkDia: 12})
	}
	for b.Loop() {
		if len(bar.Solid().Layers()) == 0 {
			b.Fatal("no layers")
		}
	}
}

func BenchmarkClearanceSlabs(b *testing.B) {
	one := naturalSlab(500).Solid()
	two := one.Place(Pose{At: Vec3{Y: 850}})
	one.Layers()
	for b.Loop() {
		two := two.Place(Pose{}) // not placed before
		if g := Clearance(one, two); g.Err != nil || g.Distance <= 0 {
			b.Fatal(g)
		}
	}
}

// Twenty parts as in a room: slabs, angles under them along three walls, rods.
func BenchmarkClearanceAllPairs(b *testing.B) {
	var parts []Solid
	slab := plank(2300, 700, 45)
	for i := range 8 {
		slab.Cuts = append(slab.Cuts, SlabCut{Name: fmt.Sprint(i), Region: Circle(V(100+200*unit.Length(i), 50), 4, 0.05), From: CutFromUnder, Depth: 20})
	}
	for i := range 4 {
		parts = append(parts, slab.Solid().Place(Pose{At: Vec3{Z: 700 + 300*unit.Length(i)}}))
		for j := range 4 {
			bar := bar60()
			bar.LegUp = i%2 == 1
			parts = append(parts, bar.Solid().Place(Pose{At: Vec3{X: 600 * unit.Length(j), Y: 700, Z: 700 + 300*unit.Length(i)}, Turn: unit.Angle(j%2) * 0.02}))
		}
	}
	for b.Loop() {
		for i := range parts {
			for j := range i {
				if g := Clearance(parts[i], parts[j]); g.Err != nil {
					b.Fatal(g.Err)
				}
			}
		}
	}
}
