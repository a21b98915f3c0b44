package plate

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// States of constant moment come out exactly, and so does their energy, also
// where a crooked outline with a hole cuts through the cells: the patch test.
func TestPatch(t *testing.T) {
	hole := geom.Circle(geom.V(310, 190), 45, 0.5)
	p := Plate{Outline: geom.Polygon(geom.V(0, 0), geom.V(611, 37), geom.V(543, 402), geom.V(203, 377), geom.V(-41, 290)).Minus(hole), Thick: 27, Wood: set, Grain: 0.4}
	s := solver(t, 37, []Link{{On: Spot{At: geom.V(100, 100)}, Stiffness: 1, Acts: Both}, {On: Spot{At: geom.V(400, 100)}, Stiffness: 1, Acts: Both}, {On: Spot{At: geom.V(200, 300)}, Stiffness: 1, Acts: Both}}, p)
	g := s.grids[0]
	a, b, c := 3e-6, -5e-6, 2e-6
	q, tr := p.Wood.inPlane(p.Grain), p.Wood.transverse(p.Grain)
	residual := make([]float64, 3*len(g.nodes))
	whole := make([]bool, len(g.nodes))
	for i := range whole {
		whole[i] = true
	}
	touched := make([]int, len(g.nodes))
	var energy, largest float64
	for i := range g.cells {
		cl := &g.cells[i]
		k := cl.stiffness(q, tr)
		var u [12]float64
		for n, node := range cl.node {
			x, y := g.nodes[node].x, g.nodes[node].y
			u[3*n], u[3*n+1], u[3*n+2] = (a*x*x+2*c*x*y+b*y*y)/2, a*x+c*y, c*x+b*y
			touched[node]++
			whole[node] = whole[node] && cl.wooden > 1-1e-9
		}
		for r := range 12 {
			f := 0.0
			for m := range 12 {
				f += k[r][m] * u[m]
			}
			energy += f * u[r] / 2
			largest = max(largest, math.Abs(f))
			residual[3*cl.node[r/3]+r%3] += f
		}
	}
	kappa := [3]float64{a, b, 2 * c}
	var density float64
	for i := range 3 {
		for j := range 3 {
			density += kappa[i] * q[i][j] * kappa[j] / 2
		}
	}
	near(t, "energy", energy, density*27*27*27/12*float64(p.Outline.Area()), 1e-5)
	inner := 0
	for n := range whole {
		if whole[n] && touched[n] == 4 {
			inner++
			for d := range 3 {
				if math.Abs(residual[3*n+d]) > 1e-9*largest {
					t.Fatalf("node %d is out of balance by %g", n, residual[3*n+d])
				}
			}
		}
	}
	if inner < 30 {
		t.Fatalf("only %d inner nodes were looked at", inner)
	}
}

// lawful checks one solution: forces only where they may be, in balance with
// the load.
func lawful(t *testing.T, s *Solver, r *Result, load float64) {
	t.Helper()
	var sum float64
	for i, l := range s.links {
		f := r.Force(i)
		switch {
		case f < 0:
			t.Errorf("link %d pulls with %g N", i, f)
		case f > 0 && math.Abs(f-l.k*(r.st.stretch[i]-l.slack)) > 1e-6*(1+f):
			t.Errorf("link %d: force %g does not fit its stretch %g", i, f, r.st.stretch[i])
		case f == 0 && r.st.stretch[i] > l.slack+1e-9:
			t.Errorf("link %d is pressed in by %g and does not carry", i, r.st.stretch[i]-l.slack)
		}
		sum += f
	}
	if math.Abs(sum-load) > 1e-6*load {
		t.Errorf("the links carry %g N of %g N", sum, load)
	}
}

// Wherever the load stands, and whatever the guess was: the laws of contact
// hold, and the answer is the same.
func TestContactLaws(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	base := strip(1600, 700, 3, 16, 30, Push)
	for n := range 12 {
		at := geom.V(unit.Length(100+rng.Float64()*1400), unit.Length(100+rng.Float64()*500))
		links := append([]Link(nil), base...)
		var first *Result
		for range 3 {
			for i := range links {
				links[i].Starts = links[i].Starts || rng.IntN(2) == 0
			}
			s := solver(t, 50, links, top(set, 1600, 700, 30))
			r := solve(t, s, Case{Weight: 1, Loads: []Load{{Region: geom.Rect(at.Sub(geom.V(50, 50)), at.Add(geom.V(50, 50))), Force: 1000}}})
			lawful(t, s, r, 1000+float64(s.Mass(0))*Gravity)
			if first == nil {
				first = r
			} else if d := r.Deflection(0, at) - first.Deflection(0, at); math.Abs(float64(d)) > 1e-6 {
				t.Errorf("place %d: another first guess moves the answer by %g", n, d)
			}
		}
	}
}

// A stiff board on three lines of supports: lever laws. Two lines at 200 and
// 800 mm of 1000, load F at the end: the far line would have to pull, so the
// board tips; a screw there that pulls carries F (200 / 600), the near line
// F (800 / 600).
func TestLever(t *testing.T) {
	near1 := line(geom.V(800, 0), geom.V(800, 100), 4, 100, Push)
	far := line(geom.V(200, 0), geom.V(200, 100), 4, 100, Push)
	board := top(set, 1000, 100, 60)
	board.Wood.Density = 0
	load := Case{Loads: []Load{{Region: geom.Rect(geom.V(990, 0), geom.V(1010, 100)), Force: 300}}}
	s := solver(t, 25, append(near1, far...), board)
	if _, err := s.Solve(load, nil); !errors.Is(err, ErrTips) {
		t.Errorf("a board without anything that holds it down tips over: %v", err)
	}
	screw := Link{On: Spot{At: geom.V(200, 50)}, Stiffness: 2000, Acts: Pull}
	s = solver(t, 25, append(append(near1, far...), screw), board)
	r := solve(t, s, load)
	pull := r.Force(10)
	// The load lies on the last 10 mm: 995.
	near(t, "pull of the screw", pull, 300*195.0/600, 1e-6)
	var push float64
	for i := range near1 {
		push += r.Force(i)
	}
	near(t, "push of the near line", push, 300*795.0/600, 1e-6)
}

// A leg that yields: its point and the plate on it share the force, and the leg
// bends by the flexibility of a cantilever.
func TestLeg(t *testing.T) {
	a := Assembly{Plates: []Plate{top(set, 600, 300, 40)}}
	for i, at := range []geom.Vec{geom.V(50, 50), geom.V(550, 50), geom.V(50, 250), geom.V(550, 250)} {
		a.Bodies = append(a.Bodies, Body{Stiffness: [][]float64{{500}}})
		a.Links = append(a.Links, Link{On: Spot{At: at}, Ground: Ground{Body: i + 1}, Stiffness: 2000, Starts: true})
	}
	s, err := New(a, 30)
	if err != nil {
		t.Fatal(err)
	}
	r := solve(t, s, Case{Loads: []Load{s.Spread(0, 1e-3)}})
	want := 180.0 / 4 * (1.0/500 + 1.0/2000)
	near(t, "deflection over a leg", float64(r.Deflection(0, geom.V(50, 50))), want, 1e-9)
	near(t, "force on a leg", r.Force(2), 45, 1e-9)
}

// Two boards side by side, one loaded: a firm joint shares the load, a loose
// one with more play than the boards bend shares none of it, and a little play
// comes off the difference.
func TestJoint(t *testing.T) {
	boards := func(stiffness float64, play unit.Length) (loaded, other unit.Length) {
		a := Assembly{Plates: []Plate{top(set, 1200, 200, 30), top(set, 1200, 200, 30)}}
		for p := range 2 {
			for _, l := range append(line(geom.V(0, 0), geom.V(0, 200), 8, 1e4, Both), line(geom.V(1200, 0), geom.V(1200, 200), 8, 1e4, Both)...) {
				l.On.Plate = p
				a.Links = append(a.Links, l)
			}
		}
		for x := unit.Length(50); x < 1200; x += 50 {
			for _, acts := range []Acts{Push, Pull} {
				a.Links = append(a.Links, Link{On: Spot{At: geom.V(x, 200)}, Ground: Ground{Other: &Spot{Plate: 1, At: geom.V(x, 0)}}, Stiffness: stiffness, Slack: play, Acts: acts})
			}
		}
		s, err := New(a, 40)
		if err != nil {
			t.Fatal(err)
		}
		r := solve(t, s, Case{Loads: []Load{s.Spread(0, 1e-3)}})
		return r.Deflection(0, geom.V(600, 200)), r.Deflection(1, geom.V(600, 0))
	}
	alone, none := boards(1e4, 100)
	if math.Abs(float64(none)) > 1e-9 {
		t.Errorf("a joint with 100 mm of play moves the neighbour by %g", none)
	}
	a, b := boards(1e5, 0)
	near(t, "neighbour at a firm joint", float64(b), float64(a), 0.01)
	near(t, "a firm joint shares", float64(a+b), float64(alone), 0.1)
	a, b = boards(1e5, 0.1)
	near(t, "play", float64(a-b), 0.1, 0.1)
}

// A beam with a groove across its span: both parts bend about their own
// middles, M / E I integrated by hand.
func TestGroove(t *testing.T) {
	w := set.rigid()
	w.Poisson = 0
	p := top(w, 1000, 200, 40)
	p.Thinner = []Thinner{{geom.Rect(geom.V(480, 0), geom.V(520, 200)), 20}}
	ends := append(line(geom.V(0, 0), geom.V(0, 200), 8, stiff, Both), line(geom.V(1000, 0), geom.V(1000, 200), 8, stiff, Both)...)
	s := solver(t, 25, ends, p)
	r := solve(t, s, Case{Loads: []Load{{Region: geom.Rect(geom.V(499, 0), geom.V(501, 200)), Force: 400}}})
	i1, i2 := 200.0*40*40*40/12, 200.0*20*20*20/12
	// M = F x / 2, and x / 2 for a unit load, over both halves.
	want := 400.0 / 6 / 11000 * (480*480*480/i1 + (500*500*500-480*480*480)/i2)
	near(t, "middle", float64(r.Deflection(0, geom.V(500, 100))), want, 0.005)
	for _, smp := range r.Samples(0) {
		if in := smp.At.X > 480 && smp.At.X < 520; in != (smp.Thick == 20) {
			t.Errorf("thickness %v at x = %v", smp.Thick, smp.At.X)
		}
	}
}

// A deep pocket within a shallow groove: nothing counts twice, and both are
// wider by their depths.
func TestCarved(t *testing.T) {
	groove := Cut{geom.Rect(geom.V(0, 100), geom.V(1000, 120)), 10}
	pocket := Cut{geom.Rect(geom.V(500, 90), geom.V(560, 130)), 25}
	left := Carved(40, []Cut{groove, pocket})
	if len(left) != 2 || left[0].Thick != 15 || left[1].Thick != 30 {
		t.Fatalf("left: %v", left)
	}
	if both := left[0].Region.Intersect(left[1].Region); both.Area() > 1 {
		t.Errorf("%v mm2 count twice", both.Area())
	}
	// What runs out of the plate takes nothing away from it.
	p := top(set, 1000, 110, 40)
	p.Thinner = []Thinner{{geom.Rect(geom.V(0, 100), geom.V(1000, 200)), 10}}
	near(t, "mass", float64(solver(t, 40, fourSides(1000, 110, 5, stiff), p).Mass(0)), 700e-9*1000*(100*40+10*10), 1e-9)
	near(t, "width of the groove", float64(left[1].Region.Intersect(geom.Rect(geom.V(100, 0), geom.V(200, 300))).Area())/100, 40, 1e-9)
}
