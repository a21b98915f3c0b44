package corner_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"slabwright/model/calc/corner"
	"slabwright/model/unit"
)

// table holds reference values; the file names their source.
type table struct {
	Table []struct {
		Theta     float64 `json:"theta"`
		Sym       float64 `json:"sym_factor"`
		SymGap    float64 `json:"sym_gap_factor"`
		OneSided  float64 `json:"one_sided_factor"`
		Start     float64 `json:"other_leg_may_start_at_factor"`
		SymG0     float64 `json:"s_sym_w60_g0"`
		SymG3     float64 `json:"s_sym_w60_g3"`
		OneSideG0 float64 `json:"s_one_w60_g0"`
		OneSideG3 float64 `json:"s_one_w60_g3"`
	} `json:"table"`
	Cases []struct {
		ID             string
		Theta          float64
		S1, W1, S2, W2 unit.Length
		Free           bool
		Area           float64     `json:"overlap_area_mm2"`
		Box            *[2]float64 `json:"overlap_bbox_mm"`
		Clearance      float64     `json:"clearance_shapely"`
		OwnWall        bool        `json:"own_wall_ok"`
	} `json:"cases"`
}

func load(t *testing.T) (out table) {
	t.Helper()
	b, err := os.ReadFile("testdata/corner.json")
	if err == nil {
		err = json.Unmarshal(b, &out)
	}
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6f, want %.6f within %g", what, got, want, tol)
	}
}

// must gives the value of a call that may not fail here.
func must(t *testing.T) func(unit.Length, error) float64 {
	return func(l unit.Length, err error) float64 {
		t.Helper()
		if err != nil {
			t.Error(err)
		}
		return float64(l)
	}
}

func TestSetBackTable(t *testing.T) {
	rows := load(t).Table
	if len(rows) != 18 {
		t.Fatalf("%d rows, want 18", len(rows))
	}
	for _, r := range rows {
		th, name := unit.Angle(r.Theta)*unit.Degree, fmt.Sprintf("%g degrees ", r.Theta)
		v := must(t)
		start := v(corner.Start(th, 60))
		through := corner.Leg{SetBack: unit.Length(start), Width: 60}
		near(t, name+"alike", v(corner.Alike(th, 60, 60, 0)), r.SymG0, 0.005)
		near(t, name+"alike, 3 mm", v(corner.Alike(th, 60, 60, 3)), r.SymG3, 0.005)
		near(t, name+"alike factor", v(corner.Alike(th, 1000, 1000, 0))/1000, r.Sym, 5e-6)
		near(t, name+"gap factor", (v(corner.Alike(th, 60, 60, 3))-v(corner.Alike(th, 60, 60, 0)))/3, r.SymGap, 5e-6)
		near(t, name+"butt", v(corner.Butt(th, through, 60, 0)), r.OneSideG0, 0.005)
		near(t, name+"butt, 3 mm", v(corner.Butt(th, through, 60, 3)), r.OneSideG3, 0.005)
		near(t, name+"butt factor", v(corner.Butt(th, through, 60, 0))/60, r.OneSided, 5e-6)
		near(t, name+"start", start/60, r.Start, 5e-6)
	}
}

func TestCases(t *testing.T) {
	cases := load(t).Cases
	if len(cases) != 10 {
		t.Fatalf("%d cases, want 10", len(cases))
	}
	for _, c := range cases {
		got, err := corner.Check(unit.Angle(c.Theta)*unit.Degree, corner.Leg{SetBack: c.S1, Width: c.W1}, corner.Leg{SetBack: c.S2, Width: c.W2})
		if err != nil {
			t.Errorf("%s: %v", c.ID, err)
			continue
		}
		if got.Free != c.Free {
			t.Errorf("%s: free %v, want %v", c.ID, got.Free, c.Free)
		}
		if own := got.ClearWall[0] && got.ClearWall[1]; own != c.OwnWall {
			t.Errorf("%s: clear of the walls %v, want %v", c.ID, own, c.OwnWall)
		}
		box := [2]float64{}
		if c.Box != nil {
			box = *c.Box
		}
		near(t, c.ID+" overlap", float64(got.Overlap), c.Area, 0.00006)
		near(t, c.ID+" clearance", float64(got.Clearance), c.Clearance, 0.00006)
		near(t, c.ID+" extent in x", float64(got.Box[0]), box[0], 0.0006)
		near(t, c.ID+" extent in y", float64(got.Box[1]), box[1], 0.0006)
	}
}

// At a square arris two legs without set-back touch in a point; one that runs
// past by the other's width covers its end; both doing so share a square.
func TestSquareArris(t *testing.T) {
	th := 270 * unit.Degree
	for _, c := range []struct {
		s1, s2 unit.Length
		free   bool
		area   unit.Area
	}{{0, 0, true, 0}, {-60, 0, true, 0}, {-60, -60, false, 3600}, {-20, -30, false, 600}} {
		got, err := corner.Check(th, corner.Leg{SetBack: c.s1, Width: 60}, corner.Leg{SetBack: c.s2, Width: 60})
		if err != nil || got.Free != c.free || math.Abs(float64(got.Overlap-c.area)) > 1e-6 || got.ClearWall != [2]bool{true, true} {
			t.Errorf("%v, %v: %+v, %v", c.s1, c.s2, got, err)
		}
	}
	v := must(t)
	near(t, "past the arris", v(corner.Butt(th, corner.Leg{SetBack: 0, Width: 60}, 60, 0)), -60, 0)
	near(t, "3 mm apart", v(corner.Butt(th, corner.Leg{SetBack: 0, Width: 60}, 60, 3)), 3, 1e-6)
	near(t, "3 mm below, past the arris", v(corner.Butt(th, corner.Leg{SetBack: 3, Width: 60}, 60, 3)), -60, 0)
	near(t, "alike, 3 mm", v(corner.Alike(th, 60, 60, 3)), 3/math.Sqrt2, 1e-12)
	near(t, "flat wall", v(corner.Alike(180*unit.Degree, 60, 40, 3)), 1.5, 1e-12)
}

func TestBadInput(t *testing.T) {
	nan := math.NaN()
	ok := corner.Leg{SetBack: 50, Width: 60}
	for _, c := range []struct {
		theta unit.Angle
		leg   corner.Leg
	}{
		{0, ok}, {unit.Angle(nan), ok}, {unit.Angle(math.Inf(1)), ok}, {359 * unit.Degree, ok}, {-90 * unit.Degree, ok},
		{90 * unit.Degree, corner.Leg{SetBack: 0, Width: 0}}, {90 * unit.Degree, corner.Leg{SetBack: 0, Width: -5}},
		{90 * unit.Degree, corner.Leg{SetBack: unit.Length(nan), Width: 60}}, {90 * unit.Degree, corner.Leg{SetBack: 0, Width: unit.Length(math.Inf(1))}},
	} {
		if _, err := corner.Check(c.theta, c.leg, ok); err == nil {
			t.Errorf("Check(%v, %v): no error", c.theta, c.leg)
		}
		if _, err := corner.Butt(c.theta, c.leg, 60, 3); err == nil {
			t.Errorf("Butt(%v, %v): no error", c.theta, c.leg)
		}
	}
	if _, err := corner.Alike(90*unit.Degree, 60, 60, -1); err == nil {
		t.Error("Alike with clearance -1: no error")
	}
	if _, err := corner.Start(90*unit.Degree, unit.Length(nan)); err == nil {
		t.Error("Start of no width: no error")
	}
}

// The classic mistake: each angle 100 mm shorter than its wall and centred, so
// 50 mm back at each end.
func ExampleCheck() {
	leg := corner.Leg{SetBack: 50, Width: 60}
	c, _ := corner.Check(90*unit.Degree, leg, leg)
	need, _ := corner.Alike(90*unit.Degree, 60, 60, 3)
	fmt.Printf("free %v, overlap %.0f mm2; set back %.1f mm each for 3 mm of air\n", c.Free, c.Overlap, need)
	// Output: free false, overlap 100 mm2; set back 62.1 mm each for 3 mm of air
}

func BenchmarkCheck(b *testing.B) {
	for b.Loop() {
		corner.Check(88*unit.Degree, corner.Leg{SetBack: 50, Width: 60}, corner.Leg{SetBack: 50, Width: 60})
	}
}
