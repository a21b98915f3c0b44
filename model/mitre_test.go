package model_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
)

// Mitred angles share the corner: both are cut at 45 degrees, half the gap of 4 mm to
// either side of the middle, 2/sin 45 = 2.83 mm along the heel; the back wall, which
// bulges by 2 mm, and what the corner may be off take a little more.
func ExampleAnglePiece_Mitred() {
	room := measured()
	d := topped(room)
	for _, wall := range []string{"back", "right"} {
		p := d.Add("angle "+wall, model.Angle(stock.L50x50x6).Along(room.Wall(wall)).Under("worktop").ClearOf(4).Mitred())
		a := p.Angle
		fmt.Printf("%s: %s, mitres %.1f and %.1f degrees\n", p.ID, a.Title(), a.Left.Mitre.Degrees(), a.Right.Mitre.Degrees())
	}
	// Output:
	// angle back: L50x50x6 x 1590.0, mitres -45.0 and -45.0 degrees
	// angle right: L50x50x6 x 563.0, mitres -45.0 and 0.0 degrees
}

// TestMitredAnglesLeaveTheirGap: in corners of many angles two mitred bars are as far
// apart as asked for, and more by no more than both bars are rounded down and keep off the walls; and
// the solids are as far apart as they are seen from above.
func TestMitredAnglesLeaveTheirGap(t *testing.T) {
	for _, theta := range []float64{70, 85, 90, 95, 110, 130} {
		r := roomAt(t, false, alcove(theta, theta), threeWalls()...)
		d := model.NewDesign("desk", r)
		d.Add("desk", good(r))
		for _, w := range []string{"left", "back", "right"} {
			d.Add("angle "+w, model.Angle(stock.L50x50x6).Along(r.Wall(w)).Under("desk").ClearOf(4).Mitred())
		}
		d.Finish()
		for _, f := range d.Faults() {
			t.Fatalf("%.0f degrees: %s", theta, f.Why)
		}
		for _, w := range []string{"left", "right"} {
			a, b := d.Part("angle back"), d.Part("angle "+w)
			gap := a.Footprint().Gap(b.Footprint()).Distance
			if gap < 3.99 || gap > 6 {
				t.Errorf("%.0f degrees, back and %s: %.2f mm apart, asked for 4", theta, w, gap)
			}
			if g := geom.Clearance(a.Bodies[0].Solid, b.Bodies[0].Solid); math.Abs(float64(g.Distance-gap)) > 0.05 {
				t.Errorf("%.0f degrees, back and %s: the solids are %.2f mm apart, seen from above %.2f", theta, w, g.Distance, gap)
			}
		}
	}
}

// TestMitredAndShorterContradict is a mistake of the description.
func TestMitredAndShorterContradict(t *testing.T) {
	room := measured()
	d := topped(room)
	d.Add("angle", model.Angle(stock.L50x50x6).Along(room.Wall("back")).Under("worktop").Mitred().ShorterBy(50))
	if f := d.Faults(); len(f) != 1 || !strings.Contains(f[0].Why, "is Mitred and has a ShorterBy") {
		t.Errorf("%v", f)
	}
}
