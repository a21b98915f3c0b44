package plate

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

const stiff = 1e6 // N/mm per mm of line: no support gives way

// Deflection at the centre of a simply supported isotropic plate, alpha q a4/D
// and alpha F a2/D, a the short side: S. Timoshenko, S. Woinowsky-Krieger,
// Theory of Plates and Shells, 2nd ed., Tables 8 and 23, recomputed by Navier's
// series with 301 and 1500 terms.
func TestSimplySupported(t *testing.T) {
	for _, c := range []struct {
		long                         unit.Length
		spread, across, along, point float64
	}{
		{1000, 0.004062, 0.04789, 0.04789, 0.011601},
		{1500, 0.007724, 0.08116, 0.04984, 0.015333},
		{2000, 0.010129, 0.10168, 0.04635, 0.016524},
		{3000, 0.012233, 0.11886, 0.04063, 0.016934},
	} {
		const a, h = 1000, 25
		s := solver(t, h, fourSides(c.long, a, a/h, stiff), top(isotropic, c.long, a, 20))
		d := 10000 * 20 * 20 * 20 / (12 * (1 - 0.09))
		mid := geom.V(c.long/2, a/2)
		r := solve(t, s, Case{Loads: []Load{s.Spread(0, 1e-3)}})
		near(t, "deflection under a spread load", float64(r.Deflection(0, mid)), c.spread*1e-3*math.Pow(a, 4)/d, 0.002)
		m := momentNear(r, mid, 20)
		near(t, "moment the short way", m[1], c.across*1e-3*a*a, 0.003)
		near(t, "moment the long way", m[0], c.along*1e-3*a*a, 0.003)
		tiny := geom.Rect(mid.Add(geom.V(-1, -1)), mid.Add(geom.V(1, 1)))
		r = solve(t, s, Case{Loads: []Load{{Region: tiny, Force: 1000}}})
		near(t, "deflection under a point load", float64(r.Deflection(0, mid)), c.point*1000*a*a/d, 0.002)
	}
}

// Roark's Formulas for Stress and Strain, 7th ed., Table 11.4 case 1a,
// y = alpha q b4/(E t3), b the short side, as printed (three figures, and 0.4 %
// off the series at a/b = 1.2).
func TestRoark(t *testing.T) {
	for ratio, alpha := range map[unit.Length]float64{1: 0.0444, 1.6: 0.0906, 2: 0.1110, 3: 0.1335, 4: 0.1400} {
		s := solver(t, 25, fourSides(1000*ratio, 1000, 40, stiff), top(isotropic, 1000*ratio, 1000, 20))
		r := solve(t, s, Case{Loads: []Load{s.Spread(0, 1e-3)}})
		near(t, "deflection", float64(r.Deflection(0, geom.V(500*ratio, 500))), alpha*1e-3*1e12/(10000*8000), 0.005)
	}
}

// Three sides simply supported, one free, isotropic: alpha q a4/D at the middle
// of the free edge, a its length; Timoshenko, Table 40, recomputed by Levy's
// series with 201 terms. The point load F there: alpha F a2/D, 3001 terms.
func TestThreeSides(t *testing.T) {
	for _, c := range []struct {
		depth               unit.Length
		free, middle, point float64
	}{{500, 0.007094, 0.003809, 0.0513}, {1000, 0.012852, 0.007931, 0.0583}, {2000, 0.015069, 0.011496, 0.0587}} {
		const a = 1000
		s := solver(t, 20, threeSides(a, c.depth, 0, 50, stiff, Both), top(isotropic, a, c.depth, 20))
		d := 10000 * 20 * 20 * 20 / (12 * (1 - 0.09))
		r := solve(t, s, Case{Loads: []Load{s.Spread(0, 1e-3)}})
		near(t, "free edge", float64(r.Deflection(0, geom.V(a/2, c.depth))), c.free*1e-3*math.Pow(a, 4)/d, 0.002)
		near(t, "middle", float64(r.Deflection(0, geom.V(a/2, c.depth/2))), c.middle*1e-3*math.Pow(a, 4)/d, 0.002)
		r = solve(t, s, Case{Loads: []Load{{Region: geom.Rect(geom.V(a/2-1, c.depth-1), geom.V(a/2+1, c.depth)), Force: 100}}})
		near(t, "point load", float64(r.Deflection(0, geom.V(a/2, c.depth))), c.point*100*a*a/d, 0.004)
	}
}

// Orthotropic tops of wood, thin plates: Navier's series on four sides and
// Levy's with one side free (Huber, Lekhnitskii), converged.
func TestWoodenTops(t *testing.T) {
	type top3 struct{ a, b, t unit.Length }
	a, b := top3{2300, 900, 45}, top3{1600, 700, 30}
	for _, c := range []struct {
		name          string
		top           top3
		four          bool
		force         float64 // on 100 x 100 mm, 0: 500 N/m2 everywhere
		middle, front float64 // mm
		mx, my        float64 // N
	}{
		{"Navier a spread", a, true, 0, 0.45464, 0, 76.2017, 32.3705},
		{"Navier a patch", a, true, 1000, 1.24014, 0, 594.88, 162.948},
		{"Navier b spread", b, true, 0, 0.47717, 0, 48.4470, 16.7845},
		{"Navier b patch", b, true, 1000, 2.35496, 0, 557.869, 145.131},
		{"Levy a spread", a, false, 0, 1.214068, 2.024368, 0, 19.7461},
		{"Levy a patch", a, false, 1000, 2.719256, 7.026956, 0, 0},
		{"Levy b spread", b, false, 0, 1.048654, 1.683436, 0, 10.0082},
	} {
		h := c.top.b / 45
		links := fourSides(c.top.a, c.top.b, 45, stiff)
		mid, front := geom.V(c.top.a/2, c.top.b/2), geom.V(c.top.a/2, c.top.b)
		under := mid
		if !c.four {
			links, under = threeSides(c.top.a, c.top.b, 0, 45, stiff, Both), front.Sub(geom.V(0, 50))
		}
		s := solver(t, h, links, top(set.rigid(), c.top.a, c.top.b, c.top.t))
		load := s.Spread(0, 5e-4)
		if c.force > 0 {
			load = Load{Region: geom.Rect(under.Sub(geom.V(50, 50)), under.Add(geom.V(50, 50))), Force: c.force}
		}
		r := solve(t, s, Case{Loads: []Load{load}})
		near(t, c.name+": middle", float64(r.Deflection(0, mid)), c.middle, 0.002)
		if c.front > 0 {
			near(t, c.name+": front", float64(r.Deflection(0, front)), c.front, 0.002)
		}
		m := momentNear(r, mid, 0.8*h)
		allowed := 0.005
		if c.force > 0 {
			allowed = 0.015 // the peak under the patch lies between the middles of the cells
		}
		if c.mx > 0 {
			near(t, c.name+": moment along", m[0], c.mx, allowed)
		}
		if c.my > 0 {
			near(t, c.name+": moment across", m[1], c.my, allowed)
		}
	}
}

// The grain may run any way: turned by 90 degrees, the top with its sides
// exchanged is the same.
func TestGrainTurns(t *testing.T) {
	along := solver(t, 30, threeSides(1500, 600, 0, 20, stiff, Both), top(set, 1500, 600, 30))
	var turned []Link
	for _, l := range threeSides(1500, 600, 0, 20, stiff, Both) {
		l.On.At = geom.V(-l.On.At.Y, l.On.At.X)
		turned = append(turned, l)
	}
	p := Plate{Outline: geom.Rect(geom.V(-600, 0), geom.V(0, 1500)), Thick: 30, Wood: set, Grain: 90 * unit.Degree}
	over := solver(t, 30, turned, p)
	a := solve(t, along, Case{Weight: 1})
	b := solve(t, over, Case{Weight: 1})
	near(t, "front", float64(b.Deflection(0, geom.V(-600, 750))), float64(a.Deflection(0, geom.V(750, 600))), 1e-6)
	ma, mb := momentNear(a, geom.V(750, 300), 30), momentNear(b, geom.V(-300, 750), 30)
	near(t, "moment along the grain", mb[0], ma[0], 1e-6)
	near(t, "moment across it", mb[1], ma[1], 1e-6)
}

// A grid that lies askew to a plate gives the same plate: every cell on the
// outline is cut. Turned by 30 degrees, Levy's case stays within 0.5 %.
func TestCutCells(t *testing.T) {
	pose := geom.Pose{Turn: 30 * unit.Degree}
	links := threeSides(2300, 900, 0, 60, stiff, Both)
	for i := range links {
		links[i].On.At = pose.Plan(links[i].On.At)
	}
	p := top(set.rigid(), 2300, 900, 45)
	p.Outline, p.Grain = p.Outline.Place(pose), pose.Turn
	s := solver(t, 18, links, p)
	r := solve(t, s, Case{Loads: []Load{s.Spread(0, 5e-4)}})
	near(t, "front", float64(r.Deflection(0, pose.Plan(geom.V(1150, 900)))), 2.024368, 0.005)
	near(t, "middle", float64(r.Deflection(0, pose.Plan(geom.V(1150, 450)))), 1.214068, 0.005)
}

// Simple span of 1800 mm, 250 wide, 40 thick, 0.5 N/mm: 5 q L4/(384 E I) =
// 4.6598 mm, any handbook; transverse shear adds q L2/(8 kappa G A).
func TestBeam(t *testing.T) {
	w := set
	w.Poisson = 0
	ends := append(line(geom.V(0, 0), geom.V(0, 250), 10, stiff, Both), line(geom.V(1800, 0), geom.V(1800, 250), 10, stiff, Both)...)
	mid := geom.V(900, 125)
	for _, c := range []struct {
		wood Wood
		want float64
	}{{w.rigid(), 4.6598}, {w, 4.6598 + 0.5*1800*1800/(8*shearFactor*690*250*40)}} {
		s := solver(t, 25, ends, top(c.wood, 1800, 250, 40))
		r := solve(t, s, Case{Loads: []Load{{Force: 900}}})
		near(t, "middle of the span", float64(r.Deflection(0, mid)), c.want, 0.002)
		along, _, _ := Sample{Moment: momentNear(r, mid, 30), Thick: 40}.Stress()
		near(t, "stress", along, 202500/(250.0*40*40/6), 0.005)
	}
}

// Lowest frequency of a simply supported orthotropic plate: pi/2 sqrt((Dx/a4 +
// 2 H/(a2 b2) + Dy/b4)/(rho t)), S. Lekhnitskii, Anisotropic Plates.
func TestFrequency(t *testing.T) {
	const a, b, th = 2300.0, 900.0, 45.0
	s := solver(t, 25, fourSides(a, b, 36, stiff), top(set.rigid(), a, b, th))
	got, err := s.Frequency(solve(t, s, Case{Weight: 1}))
	if err != nil {
		t.Fatal(err)
	}
	dx, dy, h := 84597758.6, 5768029.0, 12959627.5
	want := math.Pi / 2 * math.Sqrt((dx/math.Pow(a, 4)+2*h/(a*a*b*b)+dy/math.Pow(b, 4))/(700e-12*th))
	near(t, "frequency", got, want, 0.002)
}

// The error of a converging element of this order falls with h2.
func TestConvergence(t *testing.T) {
	var last float64
	for _, h := range []unit.Length{90, 45, 22.5} {
		s := solver(t, h, fourSides(2300, 900, 200, stiff), top(set.rigid(), 2300, 900, 45))
		r := solve(t, s, Case{Loads: []Load{s.Spread(0, 5e-4)}})
		e := math.Abs(float64(r.Deflection(0, geom.V(1150, 450))) - 0.45464)
		t.Logf("h = %v: error %.2e", h, e/0.45464)
		if last > 0 && e > last/3 {
			t.Errorf("halving the cells takes the error from %g to %g: it should fall to a quarter", last, e)
		}
		last = e
	}
}
