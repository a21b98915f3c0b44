package motion

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

func block(t testing.TB, name string, x0, x1, y0, y1, z0, z1 unit.Length) Body {
	return must(t)(Prism(name, []geom.Vec{geom.V(x0, y0), geom.V(x1, y0), geom.V(x1, y1), geom.V(x0, y1)}, z0, z1))
}

// chest is a slab between two walls, a back, a floor and a lid, with a lip before
// it that is so high above the floor.
func chest(t testing.TB, play, lip unit.Length) Problem {
	all := Pose{At: geom.Vec3{X: 1500, Y: 2000, Z: 1500}, Turn: math.Pi, Roll: math.Pi / 2, Tilt: math.Pi}
	low := Pose{At: geom.Vec3{X: -1500, Y: -2000, Z: -1500}, Turn: -math.Pi, Roll: -math.Pi / 2, Tilt: -math.Pi}
	return Problem{
		Part: []Body{block(t, "slab", -725, 725, -270, 270, -20, 20)},
		Fixed: []Body{
			block(t, "left", -1000, -729, -2000, 1000, -1500, 1500), block(t, "right", 729, 1000, -2000, 1000, -1500, 1500),
			block(t, "back", -1000, 1000, 274, 600, -1500, 1500), block(t, "seat", -1000, 1000, -280, 600, -220, -20),
			block(t, "lid", -1000, 1000, -280, 600, 20+play, 300), block(t, "lip", -1000, 1000, -320, -274, -300, -20+lip),
		},
		Out: geom.Vec3{Y: -1}, Beyond: 290, Ways: []Way{X, Y, Z, Turn, Roll, Tilt}, Low: low, High: all, Looks: 60_000,
	}
}

// A chest is shut when its lip stands higher than the slab can be tilted over it,
// whatever it is turned about; with a lip lower than the play, lifting is enough.
func TestChest(t *testing.T) {
	for _, ways := range [][]Way{{Y, Z, Tilt}, {X, Y, Z, Roll}, {X, Y, Z, Turn}} {
		p := chest(t, 20, 60)
		p.Ways = ways
		if a := Search(p); a.Verdict != NoWay || !a.Bounded {
			t.Errorf("%v: %s after %d looks, want no way, shut in by the bodies", ways, a.Verdict, a.Looks)
		}
	}
	p := chest(t, 30, 25)
	p.Ways = []Way{X, Y, Z, Tilt}
	a := Search(p)
	if a.Verdict != Found {
		t.Fatalf("%s after %d looks", a.Verdict, a.Looks)
	}
	holds(t, "over the lip", p, a)
	end := newPosed(p.Part)
	end.to(a.Way[len(a.Way)-1].coords())
	if end.beyond(of(p.Out), float64(p.Beyond)) < 0 {
		t.Error("the way ends inside")
	}
}

// TestAFreeBoxIsFree draws poses from boxes that are judged free or shut and
// measures them one by one.
func TestJudgedBoxesAreWhatTheyAreCalled(t *testing.T) {
	p := chest(t, 30, 25)
	rnd := rand.New(rand.NewPCG(3, 1))
	part := newPosed(p.Part)
	seen := map[state]int{}
	for range 4000 {
		mid := coords{2 * rnd.NormFloat64(), 3 * rnd.NormFloat64(), 15 + 8*rnd.NormFloat64(), 0.002 * rnd.NormFloat64(), 0.002 * rnd.NormFloat64(), 0.01 * rnd.NormFloat64()}
		size := math.Exp(5*rnd.Float64() - 2) // of the box, millimetres
		half := coords{size, size, size, size / 500, size / 500, size / 300}
		sway := swayOf(mid, half)
		part.to(mid)
		j := part.judge(p.Fixed, &sway, reach(p.Part).move(half), 0, math.MaxFloat64)
		seen[j.state]++
		if j.state == open {
			continue
		}
		for range 20 {
			q := mid
			for w := range q {
				q[w] += half[w] * (2*rnd.Float64() - 1)
			}
			part.to(q)
			gap := part.closest(p.Fixed, far).gap
			if j.state == free && gap < -touch || j.state == shut && gap >= 0 {
				t.Fatalf("a box round %v with halves %v is called %v, but %v has a gap of %.3f", mid, half, j.state, q, gap)
			}
		}
	}
	if seen[free] < 200 || seen[shut] < 200 {
		t.Errorf("%v: too few of a kind to tell anything", seen)
	}
}

func BenchmarkChest(b *testing.B) {
	for b.Loop() {
		p := chest(b, 20, 60)
		p.Ways = []Way{Y, Z, Tilt}
		Search(p)
	}
}
