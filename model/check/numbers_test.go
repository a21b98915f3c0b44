package check_test

import (
	"math"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/stock"
)

// TestAngleMasses holds modelled bars against the masses per metre of EN 10056-1
// as in public section tables, copied here by hand.
func TestAngleMasses(t *testing.T) {
	for _, c := range []struct {
		section stock.AngleSection
		kg      float64 // per metre
	}{
		{stock.L30x30x3, 1.36}, {stock.L40x40x5, 2.97}, {stock.L50x50x5, 3.77}, {stock.L50x50x6, 4.47},
		{stock.L60x60x6, 5.42}, {stock.L60x60x8, 7.09}, {stock.L70x70x7, 7.38}, {stock.L100x100x10, 15.0},
	} {
		s := siteOf(t, readJob(t, c.section.Name, skewRoom(90)))
		d := model.NewDesign("bar", s.Room)
		d.Add("bench", model.Slab(stock.Ash, 45).Between(s.Room.Wall("left"), s.Room.Wall("right")).Against(s.Room.Wall("back")).Gaps(4, 4).Depth(400).SurfaceAt(745))
		d.Add("bar", model.Angle(c.section).Along(s.Room.Wall("back")).Under("bench").SetBack(300, 300))
		d.Finish()
		bar := d.Part("bar")
		if got := float64(bar.Mass()) / float64(bar.Angle.Length) * 1000; math.Abs(got/c.kg-1) > 0.01 {
			t.Errorf("%s: %.3f kg/m, want %.2f", c.section.Name, got, c.kg)
		}
		for _, f := range check.Run(check.Site{Room: s.Room, Design: d}) {
			if f.Rule == "mass" && f.Measured.Unit == "%" && f.Status != find.Pass {
				t.Errorf("%s: %s", c.section.Name, f.Why)
			}
		}
	}
}

// TestSlabMass: a board of European ash, 1592 x 600 x 45 mm, at 700 kg/m3 (trade
// density at 12 % moisture) weighs 1.592 * 0.6 * 0.045 * 700 = 30.09 kg, and its
// centre of gravity is in its middle.
func TestSlabMass(t *testing.T) {
	for _, f := range findingsOf(t, readJob(t, "mass", skewRoom(90)+"offers: {currency: none}\n"), "mass") {
		if f.Title != "Weight of bench" {
			continue
		}
		if math.Abs(f.Measured.Value-30.09) > 0.02 {
			t.Errorf("%v kg", f.Measured.Value)
		}
		if a := f.At; math.Abs(a[0]-800) > 0.5 || math.Abs(a[1]+304) > 0.5 || math.Abs(a[2]-722.5) > 0.2 {
			t.Errorf("centre of gravity at %v", *a)
		}
		return
	}
	t.Error("nothing is said of the bench")
}

// TestThighs holds what the rule asks for against the printed fits to ANSUR II,
// worked by hand: the thigh above the floor is a + b x stature, then 20 mm to
// move and the shoe.
//
//	woman 1910: -41.16 + 0.36674 * 1910 = 659.3, + 25 shoe as told + 20 = 704.3
//	man 1800:   -26.36 + 0.36250 * 1800 = 626.1, + 25 + 20 = 671.1
//	anybody:    661 (95th percentile of men, printed), + 25 + 20 = 706
//
// Elbows: woman 61.60 + 0.34328 * 1910 + 25 = 742.3; man 9.30 + 0.37897 * 1800 + 25 = 716.4.
func TestThighs(t *testing.T) {
	for _, c := range []struct {
		people       string
		thigh, elbow float64
	}{
		{"people: [{name: she, stature: 1910, sex: female, shoe: 25}]\n", 704.3, 742.3},
		{"people: [{name: he, stature: 1800, sex: male}]\n", 671.1, 716.4},
		{"", 706, 0},
	} {
		job := strings.Replace(skewRoom(90), "design: {preset: trial}", c.people+"design: {preset: trial, parameters: {seat_at: 800, surface: 760}}", 1)
		j := readJob(t, c.people, job)
		for _, f := range findingsOf(t, j, "leg-room") {
			if strings.HasPrefix(f.Title, "Room for thighs") && math.Abs(f.Required.Value-c.thigh) > 0.6 {
				t.Errorf("%q asks for %v, want %v", c.people, f.Required.Value, c.thigh)
			}
		}
		for _, f := range findingsOf(t, j, "elbow-height") {
			if c.elbow > 0 && math.Abs(760-f.Measured.Value-c.elbow) > 0.6 {
				t.Errorf("%q has elbows at %v, want %v", c.people, 760-f.Measured.Value, c.elbow)
			}
		}
	}
}

// TestScenario is a print studio's bench at 745 mm: with a slab of 45 mm the wood
// ends at 700 mm and a leg of 50 mm at 650 mm. Somebody of 1910 mm and 96 kg
// needs about 700 mm, so the finding must name what is in her way, say of the
// steel that none is, and propose what clears her.
func TestScenario(t *testing.T) {
	text := strings.Replace(skewRoom(90), "design: {preset: trial}", `people: [{name: printmaker, stature: 1910, sex: female, mass: 96 kg, shoe: 25}]
design: {preset: trial, parameters: {seat_at: 800, surface: 745, depth: 700}}`, 1)
	for _, f := range findingsOf(t, readJob(t, "scenario", text), "leg-room") {
		if f.Status != find.Fail {
			continue
		}
		if math.Abs(f.Required.Value-700) > 10 || f.Measured.Value != 700 {
			t.Errorf("needs %v, has %v", f.Required.Value, f.Measured.Value)
		}
		for _, want := range []string{"in the way: bench at 700 mm", "No steel is over this place", "(650 mm)"} {
			if !strings.Contains(f.Why, want) {
				t.Errorf("does not say %q: %s", want, f.Why)
			}
		}
		if len(f.Fix) < 2 || f.Fix[0].Parameter != "surface" || f.Fix[1].Parameter != "thickness" {
			t.Errorf("proposes %+v", f.Fix)
		}
		return
	}
	t.Error("nothing stands in her way")
}
