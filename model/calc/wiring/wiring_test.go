package wiring

import (
	"math"
	"testing"

	"slabwright/model/unit"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// TestConductors: the greatest resistances of IEC 60228 lie 0 to 16 % above that
// of solid copper of the nominal section, 1/58 ohm mm2/m (IEC 60028), since
// strands are twisted and drawn thinner; the products of section and resistance
// fall for thicker strands.
func TestConductors(t *testing.T) {
	for _, c := range Conductors {
		solid := 1 / 58.0 / c.SquareMM
		if ratio := float64(c.Resistance) / solid; ratio < 1 || ratio > 1.16 {
			t.Errorf("%g mm2: %g times solid copper", c.SquareMM, ratio)
		}
	}
	near(t, "at 40 degrees C", float64(OhmPerMetre(0.0133).At(40)), 0.0133*1.0786, 1e-9)
}

// TestDropByHand: three runs worked by hand.
//
//  1. 24 V, 4.8 W/m, 3 m on 0.75 mm2, feed of 2 m: 14.4 W, 0.6 A;
//     feed 2 x 2 m x 0.026 ohm/m x 0.6 A = 0.0624 V.
//  2. 12 V, 9.6 W/m, 5 m, strip of 0.12 ohm/m: 48 W, 4 A; over the whole run
//     0.6 ohm x 4 A = 2.4 V, evenly drawn half of it, 1.2 V; fed at both ends
//     0.3 V.
//  3. 24 V, 14.4 W/m, 2.5 m on 1.5 mm2, feed of 6 m: 36 W, 1.5 A;
//     2 x 6 m x 0.0133 ohm/m x 1.5 A = 0.2394 V.
func TestDropByHand(t *testing.T) {
	one := Strip{Power: 4.8, Supply: 24}
	w, i := one.Draw(3000)
	near(t, "1 power", float64(w), 14.4, 1e-9)
	near(t, "1 current", float64(i), 0.6, 1e-9)
	near(t, "1 feed", float64(FeedDrop(0.026, 2000, i)), 0.0624, 1e-9)

	two := Strip{Power: 9.6, Supply: 12, Resistance: 0.12}
	w, i = two.Draw(5000)
	near(t, "2 power", float64(w), 48, 1e-9)
	near(t, "2 current", float64(i), 4, 1e-9)
	near(t, "2 one end", float64(two.Drop(5000, false)), 1.2, 1e-9)
	near(t, "2 both ends", float64(two.Drop(5000, true)), 0.3, 1e-9)

	three := Strip{Power: 14.4, Supply: 24}
	_, i = three.Draw(2500)
	near(t, "3 feed", float64(FeedDrop(0.0133, 6000, i)), 0.2394, 1e-9)
}

// TestDropBySteps: the closed form of the drop agrees with a ladder of a
// thousand lamps, each drawing its share.
func TestDropBySteps(t *testing.T) {
	s := Strip{Power: 9.6, Supply: 12, Resistance: 0.12}
	const n = 1000
	run := unit.Length(4321)
	_, total := s.Draw(run)
	piece := float64(s.Resistance.Over(run)) / n
	drop, mid := 0.0, 0.0
	for k := range n { // lamp k+1 hangs behind k+1 pieces; the last carries one lamp
		drop += piece * float64(total) * (n - float64(k) - 0.5) / n
	}
	for k := range n / 2 { // from both ends, half of the lamps each
		mid += piece * float64(total) * (n/2 - float64(k) - 0.5) / n
	}
	near(t, "one end", float64(s.Drop(run, false)), drop, 1e-9)
	near(t, "both ends", float64(s.Drop(run, true)), mid, 1e-9)
}

// TestCut: pitches are counted whole, with no piece lost to rounding.
func TestCut(t *testing.T) {
	for _, c := range []struct {
		pitch, room, run unit.Length
		pieces           int
	}{
		{50, 1520, 1500, 30}, {50, 1500, 1500, 30}, {50, 1499.9, 1450, 29}, {62.5, 1000, 1000, 16}, {100.0 / 3, 1000, 1000, 30}, {50, 49, 0, 0}, {0, 100, 0, 0},
	} {
		run, pieces := Strip{Pitch: c.pitch}.Cut(c.room)
		near(t, "run", float64(run), float64(c.run), 1e-6)
		if pieces != c.pieces {
			t.Errorf("%v in %v: %d pieces, want %d", c.pitch, c.room, pieces, c.pieces)
		}
	}
}

// TestSupplyAndFuse by hand: 48 W need 60 W at four fifths; 4 A need a fuse of
// 5 A, which wire that carries 3 A does not allow.
func TestDimmer(t *testing.T) {
	// 3.2 A fill four fifths of 4 A; a trace more wants the next; 16 A is all that
	// 20 A may carry.
	for load, want := range map[Ampere]Ampere{0.5: 2, 3.2: 4, 3.21: 5, 16: 20} {
		if got, ok := Dimmer(load); !ok || got != want {
			t.Errorf("%v A: a dimmer of %v A, want %v", load, got, want)
		}
	}
	if _, ok := Dimmer(16.01); ok {
		t.Error("a dimmer for more than 16 A")
	}
}

func TestSupplyAndFuse(t *testing.T) {
	if s, ok := Supply(48); !ok || s != 60 {
		t.Errorf("48 W: %v %v", s, ok)
	}
	if s, ok := Supply(48.1); !ok || s != 75 {
		t.Errorf("48.1 W: %v %v", s, ok)
	}
	if _, ok := Supply(300); ok {
		t.Error("300 W of one supply")
	}
	if f, ok := Fuse(4, 16); !ok || f != 5 {
		t.Errorf("4 A: fuse %v %v", f, ok)
	}
	if _, ok := Fuse(4, 3); ok {
		t.Error("a fuse of 5 A on wire for 3 A")
	}
	// 4 A over 6 m with 0.36 V: 2 x 6 x r x 1.0786 x 4 <= 0.36 wants r <= 0.00695 ohm/m: 4 mm2.
	if c, ok := Feed(4, 6000, 0.36); !ok || c.SquareMM != 4 {
		t.Errorf("feed: %v %v", c, ok)
	}
	// 0.6 A over 2 m with 0.72 V: 0.5 mm2 carries 1.5 A in a channel, fuse of 1 A.
	if c, ok := Feed(0.6, 2000, 0.72); !ok || c.SquareMM != 0.5 {
		t.Errorf("feed: %v %v", c, ok)
	}
}

// TestFill by hand: two cables of 7 mm in a groove of 20 x 18 mm take
// 2 x 38.485 of 360 mm2.
func TestFill(t *testing.T) {
	near(t, "fill", Fill(20, 18, []unit.Length{7, 7}), 0.21380, 1e-5)
	for n, want := range map[int]float64{1: 0.53, 2: 0.31, 3: 0.4, 9: 0.4} {
		near(t, "round", MostFillRound(n), want, 0)
	}
	if n, each := Passes(18, 12); n != 3 || each != 6 {
		t.Errorf("18 mm with a bit of 12: %d passes of %v", n, each)
	}
	if n, each := Passes(13, 20); n != 2 || each != 6.5 {
		t.Errorf("13 mm with a bit of 20: %d passes of %v", n, each)
	}
	if Bit(19) != 18 || Bit(5) != 0 {
		t.Error("bits")
	}
}
