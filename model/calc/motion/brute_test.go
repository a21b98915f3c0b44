package motion

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// TestAgreesWithALattice holds 500 small random sections against a plain search
// over a lattice of poses, which shares no code with the planner: sides that
// cross, or one inside the other, tell a collision. What the planner calls a way
// is followed in steps of 1 mm; it must never say "no way" where the lattice
// finds one.
func TestAgreesWithALattice(t *testing.T) {
	const seed, cases = 7, 500
	rnd := rand.New(rand.NewPCG(seed, 1))
	count := map[Verdict]int{}
	lattice := 0
	for n := range cases {
		c := randomCase(rnd)
		a := Search(c.problem(t))
		count[a.Verdict]++
		if a.Verdict == Found {
			for _, q := range followed(a.Way) {
				if name := c.collides(q); name >= 0 {
					t.Fatalf("seed %d case %d: the way meets obstacle %d at %v", seed, n, name, q)
				}
			}
			continue
		}
		if c.lattice() {
			lattice++
			if a.Verdict == NoWay {
				t.Errorf("seed %d case %d: no way, but the lattice finds one: %+v", seed, n, c)
			}
		}
	}
	t.Logf("%v; the lattice finds %d of those given up", count, lattice)
	if count[Found] < cases/5 || count[NoWay] < cases/5 || count[GaveUp] > cases/20 {
		t.Errorf("verdicts %v: too few of a kind to tell anything", count)
	}
}

const wide = 600 // of the random rooms

type rect struct{ u, v, half, thick, turn float64 }

type randomSection struct {
	part     rect
	obs      []rect
	from, to [3]float64
}

func randomCase(rnd *rand.Rand) randomSection {
	for {
		c := randomSection{part: rect{half: 220 + 90*rnd.Float64(), thick: 15 + 35*rnd.Float64()}}
		for range 5 + rnd.IntN(6) {
			c.obs = append(c.obs, rect{wide * rnd.Float64(), wide * rnd.Float64(), 40 + 110*rnd.Float64(), 10 + 50*rnd.Float64(), math.Pi * rnd.Float64()})
		}
		place := func() [3]float64 {
			return [3]float64{50 + (wide-100)*rnd.Float64(), 50 + (wide-100)*rnd.Float64(), math.Pi * (rnd.Float64() - 0.5)}
		}
		c.from, c.to = place(), place()
		if c.collides(c.from) < 0 && c.collides(c.to) < 0 {
			return c
		}
	}
}

func (c randomSection) problem(t *testing.T) Problem {
	body := func(name string, r rect) Body {
		var pts []geom.Vec
		for _, p := range r.corners() {
			pts = append(pts, geom.V(unit.Length(p[0]), unit.Length(p[1])))
		}
		return must(t)(SideSection(name, pts))
	}
	p := Problem{Part: []Body{body("part", c.part)}, From: sideAt(c.from), Ways: []Way{Y, Z, Tilt}, Low: Pose{Tilt: -math.Pi}, High: Pose{Tilt: math.Pi, At: geom.Vec3{Y: wide, Z: wide}}, Looks: 6000}
	to := sideAt(c.to)
	p.To = &to
	for _, o := range c.obs {
		p.Fixed = append(p.Fixed, body("obstacle", o))
	}
	for _, w := range [][4]unit.Length{{-200, 0, -200, wide + 200}, {wide, wide + 200, -200, wide + 200}, {-200, wide + 200, -200, 0}, {-200, wide + 200, wide, wide + 200}} {
		p.Fixed = append(p.Fixed, side(t, "wall", w[0], w[1], w[2], w[3]))
	}
	return p
}

func sideAt(q [3]float64) Pose {
	return Pose{At: geom.Vec3{Y: unit.Length(q[0]), Z: unit.Length(q[1])}, Tilt: unit.Angle(q[2])}
}

// followed gives the poses of a way, no corner moving more than 1 mm at a time.
func followed(way []Pose) [][3]float64 {
	var out [][3]float64
	for i := 1; i < len(way); i++ {
		a, b := plainPose(way[i-1]), plainPose(way[i])
		n := int(math.Ceil(math.Hypot(b[0]-a[0], b[1]-a[1])+350*math.Abs(b[2]-a[2]))) + 1
		for k := range n + 1 {
			f := float64(k) / float64(n)
			out = append(out, [3]float64{a[0] + f*(b[0]-a[0]), a[1] + f*(b[1]-a[1]), a[2] + f*(b[2]-a[2])})
		}
	}
	return out
}

func plainPose(p Pose) [3]float64 {
	return [3]float64{float64(p.At.Y), float64(p.At.Z), float64(p.Tilt)}
}

func (r rect) corners() [4][2]float64 {
	s, c := math.Sincos(r.turn)
	var out [4][2]float64
	for i, k := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		x, y := k[0]*r.half, k[1]*r.thick
		out[i] = [2]float64{r.u + x*c - y*s, r.v + x*s + y*c}
	}
	return out
}

// holds tells whether a place is inside, by more than a hundredth of a millimetre.
func (r rect) holds(p [2]float64) bool {
	s, c := math.Sincos(-r.turn)
	x, y := p[0]-r.u, p[1]-r.v
	x, y = x*c-y*s, x*s+y*c
	return math.Abs(x) < r.half-touch && math.Abs(y) < r.thick-touch
}

// collides gives the first obstacle that the part meets, the walls last, -1: none.
func (c randomSection) collides(q [3]float64) int {
	part := rect{q[0], q[1], c.part.half, c.part.thick, q[2]}
	pc := part.corners()
	for _, p := range pc {
		if min(p[0], p[1], wide-p[0], wide-p[1]) < -touch {
			return len(c.obs)
		}
	}
	for i, o := range c.obs {
		if math.Hypot(o.u-part.u, o.v-part.v) > math.Hypot(o.half, o.thick)+math.Hypot(part.half, part.thick) {
			continue
		}
		oc := o.corners()
		for k := range 4 {
			if o.holds(pc[k]) || part.holds(oc[k]) {
				return i
			}
			for m := range 4 {
				if crosses(pc[k], pc[(k+1)%4], oc[m], oc[(m+1)%4]) {
					return i
				}
			}
		}
	}
	return -1
}

func crosses(a, b, c, d [2]float64) bool {
	side := func(p, q, r [2]float64) float64 {
		return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0]) // times the length of pq
	}
	s1, s2, s3, s4 := side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
	return s1*s2 < 0 && s3*s4 < 0 &&
		min(math.Abs(s1), math.Abs(s2)) > touch*math.Hypot(b[0]-a[0], b[1]-a[1]) &&
		min(math.Abs(s3), math.Abs(s4)) > touch*math.Hypot(d[0]-c[0], d[1]-c[1])
}

// lattice looks for a way over poses 25 mm and 10 degrees apart; from one to the
// next it goes in steps under 3 mm.
func (c randomSection) lattice() bool {
	const step, angles = 25.0, 36
	type node [3]int
	pose := func(n node) [3]float64 {
		return [3]float64{float64(n[0]) * step, float64(n[1]) * step, float64(n[2]) * 2 * math.Pi / angles}
	}
	clear := func(a, b [3]float64) bool {
		n := int((math.Hypot(b[0]-a[0], b[1]-a[1])+300*math.Abs(b[2]-a[2]))/3) + 1
		for k := range n + 1 {
			f := float64(k) / float64(n)
			if c.collides([3]float64{a[0] + f*(b[0]-a[0]), a[1] + f*(b[1]-a[1]), a[2] + f*(b[2]-a[2])}) >= 0 {
				return false
			}
		}
		return true
	}
	near := func(q [3]float64) []node {
		var out []node
		for _, i := range []int{0, 1} {
			for _, j := range []int{0, 1} {
				for _, k := range []int{0, 1} {
					n := node{int(q[0]/step) + i, int(q[1]/step) + j, int(math.Floor(q[2]/(2*math.Pi/angles))) + k}
					if clear(q, pose(n)) {
						out = append(out, n)
					}
				}
			}
		}
		return out
	}
	goal := map[node]bool{}
	for _, n := range near(c.to) {
		goal[n] = true
	}
	seen := map[node]bool{}
	front := near(c.from)
	for len(front) > 0 && len(goal) > 0 {
		n := front[len(front)-1]
		front = front[:len(front)-1]
		if goal[n] {
			return true
		}
		if seen[n] {
			continue
		}
		seen[n] = true
		for i := range 3 {
			for _, by := range []int{-1, 1} {
				m := n
				m[i] += by
				if m[2] < -angles/2 || m[2] > angles/2 || seen[m] || c.collides(pose(m)) >= 0 || !clear(pose(n), pose(m)) {
					continue
				}
				front = append(front, m)
			}
		}
	}
	return false
}
