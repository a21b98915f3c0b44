package wiring

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// grid is a network of m x n places with some links missing.
func grid(r *rand.Rand, m, n int, pitch unit.Length) Network {
	var net Network
	for y := range n {
		for x := range m {
			net.Places = append(net.Places, geom.Vec3{X: pitch * unit.Length(x), Y: pitch * unit.Length(y)})
		}
	}
	link := func(a, b int) {
		if r.Float64() < 0.8 {
			net.Links = append(net.Links, Link{A: a, B: b})
		}
	}
	for y := range n {
		for x := range m {
			i := y*m + x
			if x+1 < m {
				link(i, i+1)
			}
			if y+1 < n {
				link(i, i+m)
			}
			if x+1 < m && y+1 < n && r.Float64() < 0.3 {
				link(i, i+m+1)
			}
		}
	}
	return net
}

// brute tries every way that passes no link twice and gives the shortest one
// whose bends have room.
func brute(n Network, from, to int, radius unit.Length) (best unit.Length, ok bool) {
	best = unit.Length(math.Inf(1))
	used := make([]bool, len(n.Links))
	var walk func(places []int)
	walk = func(places []int) {
		at := places[len(places)-1]
		if at == to && len(places) > 1 {
			if l, fits := measure(n, places, radius); fits && l < best {
				best, ok = l, true
			}
			return
		}
		for i, l := range n.Links {
			next := l.B
			if l.B == at {
				next = l.A
			} else if l.A != at {
				continue
			}
			if !used[i] {
				used[i] = true
				walk(append(places, next))
				used[i] = false
			}
		}
	}
	walk([]int{from})
	return best, ok
}

// measure lays a cable through places: straight pieces between round bends,
// every piece as long as the bends leave it.
func measure(n Network, places []int, radius unit.Length) (unit.Length, bool) {
	var length unit.Length
	room := make([]unit.Length, len(places)) // what the bend at a place takes of both sides
	for i := 1; i+1 < len(places); i++ {
		a, b, c := n.Places[places[i-1]], n.Places[places[i]], n.Places[places[i+1]]
		cos := b.Sub(a).Unit().Dot(c.Sub(b).Unit())
		if cos < -1+1e-12 {
			return 0, false
		}
		angle := math.Acos(min(1, cos))
		room[i] = radius * unit.Length(math.Tan(angle/2))
		length += radius * unit.Length(angle)
	}
	for i := 1; i < len(places); i++ {
		left := n.Places[places[i]].Sub(n.Places[places[i-1]]).Len() - room[i-1] - room[i]
		if left < -1e-9 {
			return 0, false
		}
		length += left
	}
	return length, true
}

// TestShortestAgainstAllWays: over 300 small grids with gaps the way found is
// as long as the best of all ways, and there is one exactly when there is one.
func TestShortestAgainstAllWays(t *testing.T) {
	found, none, detour := 0, 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 7))
		n := grid(r, 3+int(seed%2), 3, 40)
		radius := unit.Length([]float64{0, 15, 21, 35, 45}[seed%5])
		from, to := 0, len(n.Places)-1
		got, ok := Shortest(n, from, to, radius, func(int) bool { return true })
		want, exists := brute(n, from, to, radius)
		if ok != exists {
			t.Errorf("seed %d: way found %v, exists %v", seed, ok, exists)
			continue
		}
		if !ok {
			none++
			continue
		}
		found++
		if math.Abs(float64(got.Length-want)) > 1e-6 {
			t.Errorf("seed %d: %.3f mm, best of all %.3f", seed, float64(got.Length), float64(want))
		}
		if l, fits := measure(n, got.Places, radius); !fits || math.Abs(float64(l-got.Length)) > 1e-6 {
			t.Errorf("seed %d: says %.3f mm, measures %.3f, bends fit: %v", seed, float64(got.Length), float64(l), fits)
		}
		if free, _ := brute(n, from, to, 0); radius > 0 && want > free {
			detour++
		}
	}
	if found < 100 || none < 20 {
		t.Errorf("%d found, %d without a way (%d longer for their bends): the grids test little", found, none, detour)
	}
}

// TestClosedLinks: a link that is closed is not used.
func TestClosedLinks(t *testing.T) {
	n := Network{Places: []geom.Vec3{{}, {X: 100}, {Y: 300}, {X: 100, Y: 300}}, Links: []Link{{A: 0, B: 1}, {A: 0, B: 2}, {A: 2, B: 3}, {A: 3, B: 1}}}
	w, ok := Shortest(n, 0, 1, 10, func(i int) bool { return i != 0 })
	if !ok || !slices.Equal(w.Links, []int{1, 2, 3}) {
		t.Fatalf("%v %v", w, ok)
	}
	// Two bends of 90 degrees: 700 mm less 2 x (2 - pi/2) x 10.
	near(t, "length", float64(w.Length), 700-2*(2-math.Pi/2)*10, 1e-9)
	if _, ok := Shortest(n, 0, 1, 60, func(i int) bool { return i != 0 }); ok {
		t.Error("bends of 60 mm radius in a link of 100 mm")
	}
}

// TestSpareRoom: a short link in the open takes wider bends than it is long.
func TestSpareRoom(t *testing.T) {
	n := Network{Places: []geom.Vec3{{}, {X: 200}, {X: 200, Z: 45}, {X: 400, Z: 45}}, Links: []Link{{A: 0, B: 1}, {A: 1, B: 2}, {A: 2, B: 3}}}
	all := func(int) bool { return true }
	if _, ok := Shortest(n, 0, 3, 28, all); ok {
		t.Error("two bends of 28 mm in a hole of 45 mm")
	}
	n.Links[1].Spare = 20
	if w, ok := Shortest(n, 0, 3, 28, all); !ok || w.Length < 400 || w.Length > 445 {
		t.Errorf("%v %v", w, ok)
	}
}

func BenchmarkShortest(b *testing.B) {
	n := grid(rand.New(rand.NewPCG(1, 2)), 40, 25, 50)
	for b.Loop() {
		if _, ok := Shortest(n, 0, len(n.Places)-1, 20, func(int) bool { return true }); !ok {
			b.Fatal("no way")
		}
	}
}
