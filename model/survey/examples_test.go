package survey_test

import (
	"math"
	"slices"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

type example struct {
	ID, Source string
	Start      map[survey.Point][2]unit.Length
	Fixed      []string
	Unknowns   []string
	Adjusted   map[survey.Point][2]float64
	Published  map[survey.Point][2]float64
	SD         []float64
	Qxx        [][]float64
	VTPV       float64
	DOF        int
	S0         float64
	Readings   []observation
}

// examples reads the published networks; the file names their sources.
func examples(t testing.TB) []example {
	var f struct{ Examples []example }
	load(t, "examples.json", &f)
	return f.Examples
}

// network takes the fixed coordinates of an example as its datum: given
// points, a base along x, or none.
func (e example) network() survey.Network {
	n := survey.Network{Start: map[survey.Point]geom.Vec{}}
	for p, at := range e.Start {
		n.Start[p] = geom.V(at[0], at[1])
	}
	if slices.Equal(e.Fixed, []string{"P3.x", "P3.y", "P4.y"}) {
		n.Base = [2]survey.Point{"P3", "P4"}
	} else {
		for _, f := range e.Fixed {
			if p, ok := f[:len(f)-2], f[len(f)-1] == 'x'; ok {
				at := e.Start[survey.Point(p)]
				n.Fixed = append(n.Fixed, survey.Coordinate{Point: survey.Point(p), At: geom.V(at[0], at[1])})
			}
		}
	}
	for _, o := range e.Readings {
		n.Readings = append(n.Readings, o.reading(false))
	}
	return n
}

func TestPublishedNetworks(t *testing.T) {
	list := examples(t)
	if len(list) != 6 {
		t.Fatalf("%d examples, want 6", len(list))
	}
	for _, e := range list {
		t.Run(e.ID, func(t *testing.T) {
			r := adjust(t, e.network())
			if r.DOF != e.DOF {
				t.Errorf("degrees of freedom %d, want %d", r.DOF, e.DOF)
			}
			near(t, "vTPv", r.VTPV, e.VTPV, 2e-6*e.VTPV)
			near(t, "s0", r.S0, e.S0, 2e-6*e.S0)
			for p, want := range e.Adjusted {
				got, _ := r.At(p)
				near(t, string(p)+".x", float64(got.X), want[0], 1e-6)
				near(t, string(p)+".y", float64(got.Y), want[1], 1e-6)
			}
			for p, want := range e.Published { // printed to 0.0001
				got, _ := r.At(p)
				near(t, string(p)+".x as published", float64(got.X), want[0], 0.000051)
				near(t, string(p)+".y as published", float64(got.Y), want[1], 0.000051)
			}
			for i, a := range e.Unknowns {
				ia, _ := coordinate(r, a)
				near(t, "sd of "+a, math.Sqrt(r.Covariance[ia][ia]), e.SD[i], 5.1e-8+1e-5*e.SD[i])
				for j, b := range e.Unknowns {
					ib, _ := coordinate(r, b)
					near(t, "covariance "+a+" "+b, r.Covariance[ia][ib], e.Qxx[i][j], 1e-6*e.SD[i]*e.SD[j])
				}
			}
			for i, o := range e.Readings {
				got := r.Readings[i]
				near(t, "residual", float64(got.Residual)+got.AngleResidual.Degrees(), o.V, 1.1e-7+1e-6*math.Abs(o.V))
				near(t, "redundancy", got.Redundancy, o.R, 1.1e-6)
				near(t, "w", got.W, *o.W, 1.1e-5+1e-4*math.Abs(*o.W))
			}
		})
	}
}

// Without any starting coordinates the readings themselves must lead to the
// same result.
func TestNetworksWithoutStart(t *testing.T) {
	for _, e := range examples(t) {
		if len(e.Fixed) < 4 {
			continue // nothing but the start tells such a net from its mirror image
		}
		n := e.network()
		n.Start = nil
		r := adjust(t, n)
		near(t, e.ID+" vTPv", r.VTPV, e.VTPV, 2e-6*e.VTPV)
	}
}

// A network with a free datum must tell the same about its shape as one with a
// fixed wall: lengths, residuals, redundancies, standard deviations of lengths.
func TestDatumDoesNotMatter(t *testing.T) {
	for _, room := range rooms(t)[:3] {
		held := room.network()
		floating := room.network()
		floating.Base = [2]survey.Point{}
		a, b := adjust(t, held), adjust(t, floating)
		near(t, room.ID+" vTPv", b.VTPV, a.VTPV, 1e-10*a.VTPV)
		for i := range a.Readings {
			p, q := a.Readings[i], b.Readings[i]
			near(t, room.ID+" residual", float64(q.Residual), float64(p.Residual), 1e-8)
			near(t, room.ID+" angle residual", float64(q.AngleResidual), float64(p.AngleResidual), 1e-10)
			near(t, room.ID+" redundancy", q.Redundancy, p.Redundancy, 1e-10)
			near(t, room.ID+" w", q.W, p.W, 1e-8)
		}
		for _, f := range room.Functionals {
			x, err := a.Foretell(f.reading(true))
			if err != nil {
				t.Fatal(err)
			}
			y, err := b.Foretell(f.reading(true))
			if err != nil {
				t.Fatal(err)
			}
			near(t, room.ID+" "+f.ID, float64(y.Length.Value), float64(x.Length.Value), 1e-8)
			near(t, room.ID+" sd "+f.ID, float64(y.Length.SD), float64(x.Length.SD), 1e-10)
			near(t, room.ID+" "+f.ID, float64(y.Angle), float64(x.Angle), 1e-10)
			near(t, room.ID+" sd "+f.ID, float64(y.AngleSD), float64(x.AngleSD), 1e-10)
		}
		trace := func(r *survey.Result) (sum float64) {
			for i := range r.Covariance {
				sum += r.Covariance[i][i]
			}
			return sum
		}
		if trace(b) >= trace(a) {
			t.Errorf("%s: the free datum has not the smallest trace: %g, fixed %g", room.ID, trace(b), trace(a))
		}
	}
}

// A length read twice must come out between its two readings: outside both, a
// sign is wrong somewhere. The lesson of a published network whose program had
// two sign slips (E6 holds its distances).
func TestDoubledReadingsHoldTheirValue(t *testing.T) {
	between := func(label string, r *survey.Result) {
		pairs := 0
		for i, a := range r.Readings {
			for _, b := range r.Readings[:i] {
				p, q := a.Reading.Points, b.Reading.Points
				if a.Reading.Kind != b.Reading.Kind || len(p) != 2 || !(p[0] == q[0] && p[1] == q[1] || p[0] == q[1] && p[1] == q[0]) {
					continue
				}
				pairs++
				got := float64(a.Reading.Length + a.Residual)
				lo, hi := min(a.Reading.Length, b.Reading.Length), max(a.Reading.Length, b.Reading.Length)
				if got < float64(lo)-1e-9 || got > float64(hi)+1e-9 {
					t.Errorf("%s: %v adjusted to %.6f, outside %v and %v", label, p, got, lo, hi)
				}
			}
		}
		if pairs < 4 {
			t.Errorf("%s: only %d doubled readings", label, pairs)
		}
	}
	for _, e := range examples(t) {
		if e.ID == "E6_quadrilateral_free_distances" {
			between(e.ID, adjust(t, e.network()))
		}
	}
	for _, room := range rooms(t)[:1] {
		n := room.network()
		for i, r := range n.Readings {
			if r.Kind == survey.Distance {
				r.ID += " again"
				r.Length += 1.5
				n.Readings[i].Length -= 1.5
				n.Readings = append(n.Readings, r)
			}
		}
		between(room.ID, adjust(t, n))
	}
}

// A rectangle a by b with both diagonals d has one reading to spare. The
// condition that ties the six is the state of self-stress of the braced
// rectangle: by the balance of forces at a corner -1 in the diagonals, a/d and
// b/d in the sides, squared and summed 4. So the redundancies are a quarter of
// the squares, and an error e in one diagonal leaves e/4 of itself in the
// diagonals and e/4 times a/d, b/d in the sides (closed form, first order).
func TestRectangleWithDiagonals(t *testing.T) {
	const a, b, e = 2400.0, 1000.0, 1.0
	const d = 2600.0
	n := survey.Network{Chain: []survey.Point{"A", "B", "C", "D"}, Closed: true, Base: [2]survey.Point{"A", "B"}}
	for _, r := range []struct {
		p, q survey.Point
		l    float64
	}{{"A", "B", a}, {"B", "C", b}, {"C", "D", a}, {"D", "A", b}, {"A", "C", d + e}, {"B", "D", d}} {
		n.Readings = append(n.Readings, survey.Reading{ID: string(r.p + r.q), Kind: survey.Distance, Points: []survey.Point{r.p, r.q}, Length: unit.Length(r.l), SD: 1.2})
	}
	r := adjust(t, n)
	want := []float64{a / d, b / d, a / d, b / d, -1, -1}
	for i, c := range want {
		near(t, n.Readings[i].ID+" redundancy", r.Readings[i].Redundancy, c*c/4, 2e-4)
		near(t, n.Readings[i].ID+" residual", float64(r.Readings[i].Residual), c*e/4, 2e-4)
	}
	if r.DOF != 1 {
		t.Errorf("%d readings to spare", r.DOF)
	}
	near(t, "vTPv", r.VTPV, e*e/4/(1.2*1.2), 2e-4)
	ab, err := r.Length("A", "B")
	if err != nil {
		t.Fatal(err)
	}
	near(t, "sd of a side as adjusted", float64(ab.SD), 1.2*math.Sqrt(1-a*a/d/d/4), 2e-4)
}
