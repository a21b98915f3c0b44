package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// wavy is a smooth closed outline of n corners, about 2 m x 1 m.
func wavy(n int, phase float64) Region {
	var pts []Vec
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		k := 1 + 0.1*math.Sin(7*a+phase) + 0.05*math.Sin(19*a)
		pts = append(pts, V(unit.Length(1000*k*math.Cos(a)), unit.Length(500*k*math.Sin(a))))
	}
	return Polygon(pts...)
}

// slab is a worktop of about 1700 corners: a wavy front and 50 round holes.
func slab() (outline Region, holes []Region) {
	pts := []Vec{V(2400, 0), V(2400, 700), V(0, 700), V(0, 0)}
	for i := 1; i < 96; i++ {
		x := float64(i) * 25
		pts = append(pts, V(unit.Length(x), unit.Length(-30*math.Sin(x/150))))
	}
	for i := range 50 {
		holes = append(holes, Circle(V(unit.Length(80+i%10*245), unit.Length(80+i/10*130)), 20, 0.1))
	}
	return Polygon(pts...), holes
}

func BenchmarkUnion500(b *testing.B) {
	p, q := wavy(500, 0), wavy(500, 1).Place(Pose{At: V(120, 40).Up(0)})
	for b.Loop() {
		p.Union(q)
	}
}

func BenchmarkMinus50Holes(b *testing.B) {
	outline, holes := slab()
	for b.Loop() {
		outline.Minus(holes...)
	}
}

func BenchmarkSubdivide50Holes(b *testing.B) {
	outline, holes := slab()
	for b.Loop() {
		Subdivide(append(holes, outline)...).Select(func(m []bool) bool { return m[50] }).Loops()
	}
}

func BenchmarkGrow500(b *testing.B) {
	p := wavy(500, 0)
	for b.Loop() {
		p.Grow(20, 0.02)
	}
}

func BenchmarkShrink500(b *testing.B) {
	p := wavy(500, 0)
	for b.Loop() {
		p.Grow(-20, 0.02)
	}
}

// BenchmarkGrowStar has many acute corners, whose rounds overlap.
func BenchmarkGrowStar(b *testing.B) {
	p := star(rand.New(rand.NewPCG(1, 1)), V(0, 0), 500, 1000)
	for b.Loop() {
		p.Grow(20, 0.02)
	}
}

// BenchmarkShrinkRounds shrinks the star back, so that all points of a round
// come together in one.
func BenchmarkShrinkRounds(b *testing.B) {
	p := star(rand.New(rand.NewPCG(1, 1)), V(0, 0), 40, 100).Grow(8, 0.02)
	b.Log(len(p.pieces[0][0]))
	for b.Loop() {
		p.Grow(-8, 0.02)
	}
}

func BenchmarkTriangles1700(b *testing.B) {
	outline, holes := slab()
	p := outline.Minus(holes...)
	for b.Loop() {
		p.Triangles()
	}
}

func BenchmarkTriangulateLoops1700(b *testing.B) {
	outline, holes := slab()
	p := outline.Minus(holes...).Loops()
	for b.Loop() {
		TriangulateLoops(p)
	}
}

func BenchmarkGap(b *testing.B) {
	outline, holes := slab()
	p := outline.Minus(holes...)
	q := wavy(500, 0).Place(Pose{At: V(1200, 1300).Up(0)})
	for b.Loop() {
		p.Gap(q)
	}
}

func BenchmarkRect(b *testing.B) {
	for b.Loop() {
		Rect(V(0, 0), V(10, 10))
	}
}

func BenchmarkBoard(b *testing.B) {
	var all []Region
	for i := range 60 {
		for j := range 60 {
			p := V(unit.Length(20*i), unit.Length(20*j))
			all = append(all, Rect(p, p.Add(V(10, 10))))
		}
	}
	for b.Loop() {
		UnionAll(all...)
	}
}
