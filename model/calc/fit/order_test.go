package fit

import (
	"math"
	"testing"

	"slabwright/model/unit"
)

// mean is the mean of the normal distribution function between two values:
// [x F(x) + f(x)] over their distance.
func mean(lo, hi float64) float64 {
	g := func(x float64) float64 { return x*cdf(x) + math.Exp(-x*x/2)/math.Sqrt(2*math.Pi) }
	return (g(hi) - g(lo)) / (hi - lo)
}

// TestOrderInClosedForm: play normal with mean 6 and spread 1, shop +0/-2
// evenly spread. A size s delivers s-2 to s; it jams with the mean of the
// distribution between.
func TestOrderInClosedForm(t *testing.T) {
	c := solve(t, two(5, 0.6, 5, 0.8, 0))
	o, err := c.Order(Want{Size: 2364, Tolerance: Tolerance{Minus: 2}})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range o.Curve {
		longer := float64(p.Size) - 2364
		near(t, "jams", p.Jams, mean(longer-2-6, longer-6), 0.005)
		// Both gaps are 2 + (play - longer)/2; 6 is passed when play > 8 + longer.
		near(t, "too wide", p.Wide, 1-mean(8+longer-2-6, 8+longer-6), 0.005)
	}
	// 2365 shows too wide with 1 - mean(1, 3) = 0.042, 2366 with 0.0042; 2368
	// jams with 0.0042, 2369 with 0.042. The middle of 2365 is the size drawn.
	if !o.Good || o.Size != 2366 || o.From != 2366 || o.To != 2368 {
		t.Errorf("order %+v, good from %v to %v", o.Point, o.From, o.To)
	}
	// Where the choice is wide, the middle of what is delivered is the size drawn.
	c = solve(t, two(4, 0.3, 4, 0.4, 0))
	if o, err = c.Order(Want{Size: 2364, Tolerance: Tolerance{Minus: 2}}); err != nil || !o.Good || o.Size != 2365 {
		t.Errorf("order %+v, %v: want 2365", o.Point, err)
	}
}

// TestOrderNormalAndScale: limits of a normal shop error are three standard
// deviations from its middle, and the two rules differ by Scale: variances add.
func TestOrderNormalAndScale(t *testing.T) {
	c := solve(t, two(5, 0.6, 5, 0.8, 0))
	o, err := c.Order(Want{Size: 1000, Tolerance: Tolerance{Plus: 6, Minus: 6, Normal: true, Scale: 0.5}})
	if err != nil {
		t.Fatal(err)
	}
	sd := math.Sqrt(1 + 4 + 0.25)
	for _, p := range o.Curve {
		near(t, "jams", p.Jams, cdf((float64(p.Size)-1000-6)/sd), 0.006)
	}
	if o.Good {
		t.Errorf("order %+v: a shop so loose has no good size here", o.Point)
	}
	if o.Jams > 0.01 || o.Curve[0].Size >= o.Size {
		t.Errorf("order %+v: want the longest that does not jam", o.Point)
	}
	if next := cdf((float64(o.Size) + 1 - 1000 - 6) / sd); next < 0.009 {
		t.Errorf("order %v: one longer would jam with %v only", o.Size, next)
	}
}

// TestOrderFallsWithRisk: the surer it must be, the narrower the choice; a
// tighter shop widens it.
func TestOrderFallsWithRisk(t *testing.T) {
	c := solve(t, two(5, 0.6, 5, 0.8, 0))
	span := func(sure float64, either unit.Length) unit.Length {
		o, err := c.Order(Want{Size: 1000, Tolerance: Tolerance{Plus: either, Minus: either}, Sure: sure})
		if err != nil {
			t.Fatal(err)
		}
		if !o.Good {
			return -1
		}
		return o.To - o.From
	}
	if !(span(0.9, 1) > span(0.99, 1) && span(0.99, 0.1) >= span(0.99, 1) && span(0.99, 1) > span(0.99, 2.5)) {
		t.Errorf("spans %v %v %v %v", span(0.9, 1), span(0.99, 0.1), span(0.99, 1), span(0.99, 2.5))
	}
}

func TestCurveIsWhole(t *testing.T) {
	c := solve(t, two(5, 0.6, 5, 0.8, 0))
	o, err := c.Order(Want{Size: 999.4, Tolerance: Tolerance{Minus: 2}})
	if err != nil {
		t.Fatal(err)
	}
	first, last := o.Curve[0], o.Curve[len(o.Curve)-1]
	if first.Jams > 0.001 || first.Wide < 0.9 || last.Jams < 0.99 || last.Wide > 0.001 {
		t.Errorf("the curve goes from %+v to %+v", first, last)
	}
	for i, p := range o.Curve[1:] {
		q := o.Curve[i]
		if p.Size != q.Size+1 || p.Size != unit.Length(math.Round(float64(p.Size))) || p.Jams < q.Jams || p.Wide > q.Wide {
			t.Errorf("%+v after %+v", p, q)
		}
	}
}

func TestBadOrders(t *testing.T) {
	c := solve(t, two(5, 0.6, 5, 0.8, 0))
	for _, w := range []Want{
		{Size: unit.Length(math.NaN())}, {Size: 1000, Tolerance: Tolerance{Minus: -1}},
		{Size: 1000, Tolerance: Tolerance{Plus: unit.Length(math.Inf(1))}}, {Size: 1000, Sure: 1}, {Size: 1000, Sure: 0.2},
	} {
		if o, err := c.Order(w); err == nil {
			t.Errorf("%+v gives %+v", w, o.Point)
		}
	}
}
