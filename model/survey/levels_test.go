package survey_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// The levelling net of E. M. Mikhail and F. Ackermann, Observations and Least
// Squares, table 7-1, weights 1/km, A = 800.000 m (metres read as millimetres).
// The input is published; the results are our own, the book's were not seen.
func TestLevelsOfATextbook(t *testing.T) {
	n := survey.LevelNet{Datum: "A", Height: 800}
	for _, r := range []struct {
		from, to survey.Point
		dh, km   float64
	}{
		{"A", "B", 25.42, 18.1}, {"B", "C", 10.34, 9.4}, {"C", "A", -35.2, 14.2}, {"B", "D", -15.54, 17.6},
		{"D", "E", 21.32, 13.5}, {"E", "C", 4.82, 9.9}, {"E", "A", -31.02, 13.8}, {"C", "D", -26.11, 14.0},
	} {
		n.Rises = append(n.Rises, survey.Rise{From: r.from, To: r.to, Rise: unit.Length(r.dh), SD: unit.Length(math.Sqrt(r.km))})
	}
	l, err := survey.AdjustLevels(n)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		name       survey.Point
		height, q2 float64
	}{{"A", 800, 0}, {"B", 825.220624, 8.060035}, {"C", 835.53543, 6.447872}, {"D", 809.533928, 9.989736}, {"E", 830.846029, 7.238952}} {
		if l.Points[i].Name != want.name {
			t.Errorf("point %d is %s", i, l.Points[i].Name)
		}
		near(t, "height of "+string(want.name), float64(l.Points[i].Height.Value), want.height, 1e-6)
		near(t, "sd of "+string(want.name), float64(l.Points[i].Height.SD), math.Sqrt(want.q2), 1e-6)
	}
	sum := 0.0
	for i, want := range []float64{0.554694, 0.403736, 0.545924, 0.54874, 0.471456, 0.453813, 0.475438, 0.546198} {
		near(t, "redundancy", l.Rises[i].Redundancy, want, 1e-6)
		sum += l.Rises[i].Redundancy
	}
	for i, want := range []float64{-0.199376, -0.025194, -0.33543, -0.146696, -0.0079, -0.130598, 0.173971, 0.108498} {
		near(t, "residual", float64(l.Rises[i].Residual), want, 1e-6)
	}
	near(t, "sum of redundancies", sum, 4, 1e-9)
	near(t, "vTPv", l.Test.Sum, 0.016171369, 1e-9)
	near(t, "s0 squared", l.S0*l.S0, 0.0040428423, 1e-9)
	if l.Test.DOF != 4 || l.Test.Answer != survey.Agree {
		t.Errorf("test %+v", l.Test)
	}
}

// A floor read once round: the closing error shows, and a slip in it.
func TestFloorRound(t *testing.T) {
	n := survey.LevelNet{Datum: "A", Rises: []survey.Rise{
		{ID: "A-B", From: "A", To: "B", Rise: -3, SD: 1}, {ID: "B-C", From: "B", To: "C", Rise: -4, SD: 1},
		{ID: "C-D", From: "C", To: "D", Rise: 2, SD: 1}, {ID: "D-A", From: "D", To: "A", Rise: 5, SD: 1},
	}}
	l, err := survey.AdjustLevels(n)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{0, -3, -7, -5} {
		near(t, "height", float64(l.Points[i].Height.Value), want, 1e-9)
	}
	near(t, "redundancy in a loop of four", l.Rises[0].Redundancy, 0.25, 1e-9)
	near(t, "least error", float64(l.Rises[0].Least), 2*4.1321, 1e-3)
	n.Rises[2].Rise = 22
	if l, err = survey.AdjustLevels(n); err != nil || l.Test.Answer != survey.Disagree {
		t.Errorf("a slip of 20 mm passes: %+v, %v", l, err)
	}
	for _, r := range l.Rises {
		near(t, "all four explain it alike", math.Abs(r.W), 10, 1e-9)
	}
	n.Rises = n.Rises[:3]
	if l, err = survey.AdjustLevels(n); err != nil || l.Test.Answer != survey.NothingChecks || l.Rises[0].Checked || l.Rises[0].Least != 0 {
		t.Errorf("an open run is checked: %+v, %v", l, err)
	}
	near(t, "usual deviation over 2 m", float64(survey.Accuracy{}.Rise(2000)), math.Sqrt(2*0.25+1), 1e-12)
}

func TestBadRises(t *testing.T) {
	nan := unit.Length(math.NaN())
	for want, n := range map[string]survey.LevelNet{
		`job.yaml:9: reading "x": a rise needs two different`: {Datum: "A", Rises: []survey.Rise{{ID: "x", From: "A", To: "A", Where: "job.yaml:9"}}},
		"a rise of NaN mm":                          {Datum: "A", Rises: []survey.Rise{{From: "A", To: "B", Rise: nan}}},
		"the standard deviation":                    {Datum: "A", Rises: []survey.Rise{{From: "A", To: "B", SD: -1}}},
		"no rise ties the height of C to that of A": {Datum: "A", Rises: []survey.Rise{{From: "A", To: "B"}, {From: "C", To: "D"}}},
		"the height of A is not a length":           {Datum: "A", Height: nan},
	} {
		_, err := survey.AdjustLevels(n)
		var p *survey.Problem
		if !errors.As(err, &p) || !strings.Contains(p.Error(), want) {
			t.Errorf("want %q, got %v", want, err)
		}
	}
	if l, err := survey.AdjustLevels(survey.LevelNet{Datum: "A", Height: 5}); err != nil || len(l.Points) != 1 || l.Points[0].Height.Value != 5 {
		t.Errorf("a datum alone: %+v, %v", l, err)
	}
}

// Stations on an exact parabola of 6 mm over 2 m: y = 4 h s (1-s).
func TestBowOfStations(t *testing.T) {
	station := func(x, off unit.Length) survey.Station { return survey.Station{Along: x, Off: off, SD: 0.7} }
	fit, err := survey.FitBow(2000, []survey.Station{station(500, 4.5), station(1000, 6), station(1500, 4.5)}, survey.Accuracy{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "bow", float64(fit.Bow.Value), 6, 1e-12)
	// Weights of the stations: 0.75, 1, 0.75; sd = 0.7 / sqrt(sum of squares).
	near(t, "sd of the bow", float64(fit.Bow.SD), 0.7/math.Sqrt(0.75*0.75+1+0.75*0.75), 1e-12)
	if fit.Test.DOF != 2 || fit.Test.Answer != survey.Agree {
		t.Errorf("test %+v", fit.Test)
	}
	// One reading in the middle is the bow itself.
	fit, err = survey.FitBow(2000, []survey.Station{station(1000, -4)}, survey.Accuracy{})
	near(t, "bow of one station", float64(fit.Bow.Value), -4, 1e-12)
	near(t, "its sd", float64(fit.Bow.SD), 0.7, 1e-12)
	if err != nil || fit.Test.Answer != survey.NothingChecks {
		t.Errorf("%+v, %v", fit, err)
	}
	// A wall shaped like an S is no parabola, and the fit says so.
	fit, err = survey.FitBow(2000, []survey.Station{station(500, 5), station(1000, 0), station(1500, -5)}, survey.Accuracy{})
	if err != nil || fit.Test.Answer != survey.Disagree || math.Abs(float64(fit.Residuals[fit.Worst])) < 4.9 {
		t.Errorf("%+v, %v", fit, err)
	}
	for _, bad := range [][]survey.Station{{}, {station(0, 1)}, {station(2001, 1)}, {station(unit.Length(math.NaN()), 1)}} {
		if _, err := survey.FitBow(2000, bad, survey.Accuracy{}); err == nil {
			t.Errorf("%v: no error", bad)
		}
	}
	if _, err := survey.FitBow(unit.Length(math.NaN()), []survey.Station{station(1, 1)}, survey.Accuracy{}); err == nil {
		t.Error("a wall without length has a bow")
	}
}

func TestLeanOfPlumbReadings(t *testing.T) {
	// 4 mm back over 700 mm, each end read to 0.7 mm: 5.71 mm per metre, give or
	// take 0.7 sqrt 2 / 0.7.
	fit, err := survey.FitLean([]survey.Plumb{{Height: 100, Back: 0}, {Height: 800, Back: 4}}, survey.Accuracy{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "lean", float64(fit.PerMetre.Value), 4/0.7, 1e-12)
	near(t, "sd of the lean", float64(fit.PerMetre.SD), math.Sqrt2, 1e-12)
	if fit.Test.Answer != survey.NothingChecks {
		t.Errorf("test %+v", fit.Test)
	}
	fit, err = survey.FitLean([]survey.Plumb{{Height: 0}, {Height: 500, Back: 8, SD: 0.5}, {Height: 1000}}, survey.Accuracy{})
	if err != nil || fit.Test.Answer != survey.Disagree {
		t.Errorf("a wall bowed upwards: %+v, %v", fit, err)
	}
	near(t, "no lean", float64(fit.PerMetre.Value), 0, 1e-12)
	for _, bad := range [][]survey.Plumb{{}, {{Height: 5}}, {{Height: 5}, {Height: 5, Back: 3}}, {{Height: unit.Length(math.NaN())}, {Height: 5}}} {
		if _, err := survey.FitLean(bad, survey.Accuracy{}); err == nil {
			t.Errorf("%v: no error", bad)
		}
	}
}
