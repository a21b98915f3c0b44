package check_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// skewRoom is a room whose left wall meets its back wall at an angle, measured
// so well that its corners are exact. It is the shared part of a job file.
func skewRoom(theta float64) string {
	s, c := math.Sincos(theta * math.Pi / 180)
	at := map[string][2]float64{"A": {800 * c, -800 * s}, "B": {0, 0}, "C": {1600, 0}, "D": {1600, -800}}
	var readings strings.Builder
	for _, pair := range []string{"A-B", "B-C", "C-D", "A-D", "A-C", "B-D"} {
		p, q := at[pair[:1]], at[pair[2:]]
		fmt.Fprintf(&readings, "    - {between: %s, is: %.5f, sd: 0.01}\n", pair, math.Hypot(p[0]-q[0], p[1]-q[1]))
	}
	return `title: Trial
revision: A
surveyed: 2026-01-10
room:
  readings_at: 745
  corners: [A, B, C, D]
  closed: no
  walls:
    - {name: left, from: A, to: B, make: solid brick}
    - {name: back, from: B, to: C, make: solid brick}
    - {name: right, from: C, to: D, make: solid brick}
  readings:
` + readings.String() + "design: {preset: trial}\n"
}

// twoAngles sets two angles into the corner of the left and the back wall, with
// given distances of their ends from it.
func twoAngles(t *testing.T, r *model.Room, w1, w2 stock.AngleSection, s1, s2 unit.Length) *model.Design {
	t.Helper()
	build := func(front unit.Length) *model.Design {
		d := model.NewDesign("corner", r)
		d.Add("bench", model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(4, 4).Depth(400).SurfaceAt(745))
		d.Add("one", model.Angle(w1).Along(r.Wall("left")).Under("bench").SetBack(front, max(s1, 1e-6)))
		d.Add("two", model.Angle(w2).Along(r.Wall("back")).Under("bench").SetBack(max(s2, 1e-6), 300))
		d.Finish()
		return d
	}
	// A yard saws whole millimetres: the front end takes up what is over.
	d := build(50)
	start := d.Part("one").Angle.Start
	whole := unit.Length(math.Floor(float64(800-s1-start))) - 1
	return build(50 + 800 - s1 - whole - start)
}

// TestCornerCases runs ten worked corners through the rule, on rooms with those
// angles. Source: own computation with a polygon library (areas and distances of
// two rectangles), case C1 being the classic mistake of angles that are 100 mm
// shorter than their walls and centred.
func TestCornerCases(t *testing.T) {
	legs := map[unit.Length]stock.AngleSection{40: stock.L40x40x5, 50: stock.L50x50x6, 60: stock.L60x60x6, 80: stock.L80x80x8}
	for _, c := range []struct {
		id             string
		theta          float64
		s1, w1, s2, w2 unit.Length
		free           bool
		clear          float64    // where free
		box            [2]float64 // of the overlap, where not
		inRoom         bool       // both legs stay out of the other's wall
	}{
		{"C1", 90, 50, 60, 50, 60, false, 0, [2]float64{10, 10}, true},
		{"C2", 90, 60, 60, 0, 60, true, 0, [2]float64{}, true},
		{"C3", 90, 63, 60, 0, 60, true, 3, [2]float64{}, true},
		{"C4", 90, 63, 60, 63, 60, true, 4.2426, [2]float64{}, true},
		{"C5", 80, 65, 60, 65, 60, false, 0, [2]float64{6.505, 6.406}, true},
		{"C6", 88, 60, 60, 0, 60, false, 0, [2]float64{2.132, 60}, false},
		{"C7", 120, 30, 60, 30, 60, false, 0, [2]float64{6.962, 8.038}, true},
		{"C8", 135, 45, 60, 0, 60, true, 2.5736, [2]float64{}, true},
		{"C9", 70, 100, 50, 20, 80, false, 0, [2]float64{3.333, 9.157}, false},
		{"C10", 105, 20, 60, 55, 40, true, 2.2208, [2]float64{}, true},
	} {
		t.Run(c.id, func(t *testing.T) {
			j := readJob(t, c.id, skewRoom(c.theta))
			r, err := model.NewRoom(j.Room)
			if err != nil {
				t.Fatal(err)
			}
			d := twoAngles(t, r, legs[c.w1], legs[c.w2], c.s1, c.s2)
			var corner, room find.Finding
			for _, f := range check.Run(check.Site{Job: j, Room: r, Design: d}) {
				switch f.Rule {
				case "angles-in-corner":
					corner = f
				case "leaves-room":
					room = f
				}
			}
			if corner.Measured == nil {
				t.Fatalf("the rule says %q", corner.Why)
			}
			want := c.clear
			if !c.free {
				want = -min(c.box[0], c.box[1])
			}
			if got := corner.Measured.Value; math.Abs(got-want) > 0.02 {
				t.Errorf("measured %v, want %v: %s", got, want, corner.Why)
			}
			if says := strings.Contains(corner.Why, "overlap by"); says == c.free {
				t.Errorf("says %q", corner.Why)
			}
			if pass := corner.Status == find.Pass; pass != (c.free && c.clear >= 2) {
				t.Errorf("%s with a clearance of %v", corner.Status, c.clear)
			}
			if pass := room.Status == find.Pass; pass != c.inRoom {
				t.Errorf("leaves-room comes out as %s: %s", room.Status, room.Why)
			}
		})
	}
}

// TestCornerHints sets two angles as the hints of a clash say, in corners of many
// angles and with unequal legs, and wants the clash gone.
func TestCornerHints(t *testing.T) {
	sections := []stock.AngleSection{stock.L40x40x5, stock.L60x60x6, stock.L80x80x8}
	for i, theta := range []float64{62, 75, 88, 90, 97, 110, 128, 145} {
		w1, w2 := sections[i%3], sections[(i/2)%3]
		j := readJob(t, "hints", skewRoom(theta))
		r, err := model.NewRoom(j.Room)
		if err != nil {
			t.Fatal(err)
		}
		rule := func(d *model.Design) find.Finding {
			for _, f := range check.Run(check.Site{Job: j, Room: r, Design: d}) {
				if f.Rule == "angles-in-corner" {
					return f
				}
			}
			t.Fatal("the rule says nothing")
			return find.Finding{}
		}
		bad := rule(twoAngles(t, r, w1, w2, 5, 5))
		if bad.Status != find.Fail || len(bad.Fix) != 2 {
			t.Fatalf("%v degrees: %s with %d hints", theta, bad.Status, len(bad.Fix))
		}
		var both, own, butt float64
		var corner, two, one string
		if _, err := fmt.Sscanf(bad.Fix[0].Text, "set both back %f mm from corner %1s", &both, &corner); err != nil {
			t.Fatal(bad.Fix[0].Text)
		}
		if _, err := fmt.Sscanf(bad.Fix[1].Text, "or let %s start %f mm from the corner and end %s %f mm before it", &two, &own, &one, &butt); err != nil {
			t.Fatal(bad.Fix[1].Text)
		}
		for _, set := range [][2]unit.Length{{unit.Length(both), unit.Length(both)}, {unit.Length(butt), unit.Length(own)}} {
			if f := rule(twoAngles(t, r, w1, w2, set[0], set[1])); f.Status != find.Pass {
				t.Errorf("%v degrees, legs %v and %v, set back %v: %s", theta, w1.Leg, w2.Leg, set, f.Why)
			}
			if f := rule(twoAngles(t, r, w1, w2, set[0]-1, set[1]-1)); f.Status != find.Fail {
				t.Errorf("%v degrees: %v is not the least whole millimetre", theta, set)
			}
		}
	}
}

// TestArris looks at an outside corner, that of the studio's recess: two legs set
// back 3.5 and 3.0 mm from a corner of nearly 270 degrees are the diagonal
// of 3.5 x 3.0 mm apart; run past it by 20 mm more, both overlap by 16.5 x 17 mm.
func TestArris(t *testing.T) {
	data, err := os.ReadFile("../../presets/studio/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s := siteOf(t, readJob(t, "studio", string(data)))
	back, niche := s.Design.Part("angle back left").Angle, s.Design.Part("angle niche left").Angle
	a, _ := model.SetBackFrom(back, back.Wall, true)
	b, _ := model.SetBackFrom(niche, niche.Wall, false)
	look := func() find.Finding {
		for _, f := range check.Run(s) {
			if f.Rule == "angles-in-corner" && slices.Equal(f.Parts, []string{"angle back left", "angle niche left"}) {
				return f
			}
		}
		t.Fatal("the rule says nothing of that corner")
		return find.Finding{}
	}
	if f := look(); math.Abs(f.Measured.Value-math.Hypot(float64(a), float64(b))) > 0.1 {
		t.Errorf("set back %v and %v: %s", a, b, f.Why)
	}
	back.Length += 20
	niche.Start -= 20
	if f := look(); math.Abs(f.Measured.Value+min(20-float64(a), 20-float64(b))) > 0.4 || f.Status != "fail" {
		t.Errorf("20 mm too far: %s: %s", f.Status, f.Why)
	}
}
