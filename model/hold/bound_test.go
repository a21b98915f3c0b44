package hold

import (
	"math"
	"testing"

	"slabwright/model/calc/steelangle"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// TestTipSagIsInTheSupports: the strips on which a slab rests give way at their
// toe as the handbook's cantilever does, P L3 / 3 E I, so that the sag of the toe
// is in the plate's deflection and nothing is to be added for it.
func TestTipSagIsInTheSupports(t *testing.T) {
	s := stock.L60x60x6
	arm := float64(s.Leg - s.Thickness)
	const width, load = 40., 10. // mm, N/mm
	k := cantilever([]float64{arm}, steelModulus*width*math.Pow(float64(s.Thickness), 3)/12)
	got, want := load*width/k[0][0], load*arm*arm*arm/3/(210000*18)
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("strip sinks by %v, want %v", got, want)
	}
	if tip := steelangle.TipSag(shapeOf(s), load, s.Leg); math.Abs(float64(tip)-want) > 1e-9 {
		t.Errorf("TipSag %v, want %v", tip, want)
	}
}

// TestBound: a stress that comes nearer to its limit in proportion to the side of
// the cells, f (1 - c h), is taken to that limit or a little higher; one that
// comes down is never taken lower.
func TestBound(t *testing.T) {
	const limit, c = 5.0, 0.1
	for h := 1.0; h > 0.3; h /= math.Sqrt2 {
		before, now := limit*(1-c*h), limit*(1-c*h/math.Sqrt2)
		if got := now * bound(movedBy(before, now)); got < limit || got > 1.02*limit {
			t.Errorf("h %v: %v, want %v", h, got, limit)
		}
	}
	if got := bound(movedBy(5, 4.5)); got < 1 {
		t.Errorf("a falling stress is taken lower: %v", got)
	}
	if got := bound(0.009); got != 1 {
		t.Errorf("a stress that stands still is changed: %v", got)
	}
}

// TestSteelComesOnTop: what is printed as sinking holds the sag of the steel.
func TestSteelComesOnTop(t *testing.T) {
	c := Case{Lowest: Point{Down: 3}, Steel: 0.5}
	if c.Sinks() != unit.Length(3.5) {
		t.Error(c.Sinks())
	}
}
