package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// TestGrowByHand: Steiner's formula for convex shapes, area + perimeter d +
// pi d^2, and insets that can be worked out by hand.
func TestGrowByHand(t *testing.T) {
	sq := Rect(V(0, 0), V(100, 100))
	ell := sq.Minus(Rect(V(50, 50), V(100, 100)))
	frame := sq.Minus(Rect(V(20, 20), V(80, 80)))
	// Part of a 4 mm wide mouth that is 3 mm off both of its corners.
	mouth := 4*3 - 2*(math.Sqrt(5)+4.5*math.Asin(2.0/3))
	round := func(r float64) float64 { return math.Pi * r * r }
	for _, c := range []struct {
		name         string
		r            Region
		d            unit.Length
		area         float64
		pieces, loop int
	}{
		{"square out", sq, 20, 10000 + 400*20 + round(20), 1, 1},
		{"square in", sq, -20, 3600, 1, 1},
		{"square gone", sq, -50, 0, 0, 0},
		{"square almost gone", sq, -49.999, 0.002 * 0.002, 1, 1},
		{"ell out", ell, 10, 7500 + 400*10 + 5*round(10)/4 - 100, 1, 1},
		// The inner corner at (50, 50) is rounded; a bevel would come within
		// 14.142 mm of it.
		{"ell in", ell, -20, 10*60 + 10*50 + 20*20 - round(20)/4, 1, 1},
		{"frame out", frame, 5, 10000 + 400*5 + round(5) - 50*50, 1, 2},
		{"frame filled", frame, 30, 10000 + 400*30 + round(30), 1, 1},
		{"frame in", frame, -5, 90*90 - (60*60 + 240*5 + round(5)), 1, 2},
		{"frame but for its corners", frame, -10, 400 - round(10), 4, 4},
		{"frame gone", frame, -14.15, 0, 0, 0},
		{"dumb-bell falls apart", UnionAll(Rect(V(0, 0), V(20, 20)), Rect(V(20, 8), V(40, 12)), Rect(V(40, 0), V(60, 20))), -3, 2*14*14 + 2*mouth, 2, 2},
		{"unmoved", sq, 0, 10000, 1, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := c.r.Grow(c.d, 0.001)
			checkRegion(t, g)
			near(t, "area", float64(g.Area()), c.area, 0.0015*float64(g.Perimeter())+1e-5)
			if len(g.Pieces()) != c.pieces || len(g.Loops()) != c.loop {
				t.Errorf("%d pieces, %d loops, want %d, %d", len(g.Pieces()), len(g.Loops()), c.pieces, c.loop)
			}
		})
	}
}

// TestGrowDistance measures what Grow promises on random regions: every corner
// of the result lies at the asked distance, no nearer and at most the chord
// error further out, and sampled points are on the right side.
func TestGrowDistance(t *testing.T) {
	const chord, step = 0.05, 0.002
	r := rand.New(rand.NewPCG(7, 8))
	for i := range 1200 {
		f := families[i%len(families)]
		if f.name == "huge" || f.name == "micro" {
			continue
		}
		a := f.make(r)
		if a.Empty() {
			continue
		}
		d := unit.Length(0.1 + 30*r.Float64())
		t.Run(fmt.Sprint(f.name, i), func(t *testing.T) {
			out, in := a.Grow(d, chord), a.Grow(-d, chord)
			checkRegion(t, out)
			checkRegion(t, in)
			for _, l := range out.Loops() {
				for _, v := range l {
					if x := a.DistanceTo(v); x < d-step || x > d+chord+step {
						t.Fatalf("grown by %v: corner %v at %v", d, v, x)
					}
				}
			}
			for _, l := range in.Loops() {
				for _, v := range l {
					if x := -a.DistanceTo(v); x < d-step || x > d+chord+step {
						t.Fatalf("shrunk by %v: corner %v at %v", d, v, x)
					}
				}
			}
			lo, hi := out.Bounds()
			for range 20 {
				p := lo.Add(V(unit.Length(r.Float64())*(hi.X-lo.X), unit.Length(r.Float64())*(hi.Y-lo.Y)))
				x := a.DistanceTo(p)
				if x < d-step && !out.Contains(p) || x > d+chord+step && out.Contains(p) {
					t.Fatalf("grown by %v: %v at %v wrong", d, p, x)
				}
				if -x > d+chord+step && !in.Contains(p) || -x < d-step && in.Contains(p) {
					t.Fatalf("shrunk by %v: %v at %v wrong", d, p, -x)
				}
			}
		})
	}
}

// TestGrowAndShrink: growing and shrinking back contains the region, shrinking
// and growing back is contained in it, but for chord errors.
func TestGrowAndShrink(t *testing.T) {
	const chord = 0.02
	r := rand.New(rand.NewPCG(9, 10))
	for i := range 120 {
		a := []func(*rand.Rand) Region{holed, squares}[i%2](r)
		d := unit.Length(0.5 + 8*r.Float64())
		closed, opened := a.Grow(d, chord).Grow(-d, chord), a.Grow(-d, chord).Grow(d, chord)
		// What is a chord error away from the boundary must come back.
		if lost := a.Grow(-2*chord, chord).Minus(closed); !lost.Empty() {
			t.Fatalf("%d: %v is lost when closed by %v", i, lost.Loops(), d)
		}
		if won := opened.Minus(a.Grow(2*chord, chord)); !won.Empty() {
			t.Fatalf("%d: %v is won when opened by %v", i, won.Loops(), d)
		}
	}
}
