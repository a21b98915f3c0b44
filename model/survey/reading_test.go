package survey_test

import (
	"math"
	"strings"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

func TestBadReadings(t *testing.T) {
	nan, inf := unit.Length(math.NaN()), unit.Length(math.Inf(1))
	type R = survey.Reading
	type P = []survey.Point
	for want, r := range map[string]R{
		"unknown kind of reading 99":             {Kind: 99},
		"a distance names 2 points, not 1":       {Points: P{"A"}, Length: 5},
		"a distance needs different points":      {Points: P{"A", "A"}, Length: 5},
		"there is no corner \"Q\"":               {Points: P{"A", "Q"}, Length: 5},
		"a distance of 0 mm is not a length":     {Points: P{"A", "B"}},
		"a distance of NaN mm is not a length":   {Points: P{"A", "B"}, Length: nan},
		"a distance of +Inf mm is not a length":  {Points: P{"A", "B"}, Length: inf},
		"a distance of -3 mm is not a length":    {Points: P{"A", "B"}, Length: -3},
		"an angle of 400 degrees is not between": {Kind: survey.Interior, Points: P{"B"}, Angle: 400 * unit.Degree},
		"A is not a corner between two walls":    {Kind: survey.Interior, Points: P{"A"}, Angle: 1},
		"marks at 600 and 800 mm can't be 1500":  {Kind: survey.SquareOff, Points: P{"A", "B", "C"}, A: 600, B: 800, Length: 1500},
		"the marks at 0 and 800 mm are not":      {Kind: survey.SquareOff, Points: P{"A", "B", "C"}, B: 800, Length: 700},
		"the depth of NaN mm is not a length":    {Kind: survey.Width, Points: P{"B", "C"}, A: nan, Length: 2000},
		"there are no walls on both sides of":    {Kind: survey.Width, Points: P{"A", "B"}, A: 5, Length: 2000},
		"a width names 2 points, not 4":          {Kind: survey.Width, Points: P{"A", "B", "C", "D"}, Length: 2000},
		"the standard deviation is not a number": {Points: P{"A", "B"}, Length: 5, SD: nan},
		"a bow of NaN mm is not a length":        {Kind: survey.Bow, Points: P{"A", "B"}, Length: nan},
	} {
		r.ID, r.Where = "x1", "job.yaml:7:3"
		p := problem(t, box(r), survey.BadReading)
		if !strings.Contains(p.Error(), want) || !strings.HasPrefix(p.Error(), `job.yaml:7:3: reading "x1": `) {
			t.Errorf("want %q, got %v", want, p)
		}
	}
}

func TestBadNetworks(t *testing.T) {
	for want, change := range map[string]func(*survey.Network){
		"A is listed twice":           func(n *survey.Network) { n.Chain[3] = "A" },
		"a corner has no name":        func(n *survey.Network) { n.Chain[3] = "" },
		"two readings have this name": func(n *survey.Network) { n.Readings[0].ID = n.Readings[1].ID },
		"the base wall from":          func(n *survey.Network) { n.Base[0] = "Q" },
		"which is no corner":          func(n *survey.Network) { n.Turns = map[survey.Point]survey.Turn{"Q": survey.Inside} },
		"nothing to adjust":           func(n *survey.Network) { n.Readings = nil },
		"the accuracy of the tools":   func(n *survey.Network) { n.Accuracy.Touch = -1 },
		"needs three corners":         func(n *survey.Network) { n.Chain, n.Readings, n.Closed = n.Chain[:2], n.Readings[:1], true },
		"starting coordinates of A": func(n *survey.Network) {
			n.Start = map[survey.Point]geom.Vec{"A": geom.V(unit.Length(math.NaN()), 0)}
		},
		"coordinates given for A": func(n *survey.Network) {
			n.Fixed = []survey.Coordinate{{Point: "A", At: geom.V(0, unit.Length(math.Inf(1)))}}
		},
	} {
		n := box()
		change(&n)
		if p := problem(t, n, survey.BadReading); !strings.Contains(p.Error(), want) {
			t.Errorf("want %q, got %v", want, p)
		}
	}
	problem(t, survey.Network{}, survey.BadReading)
}

// Class II at 3 m with hook: 0.3 + 0.2*3 + 0.2 = 1.1 mm permissible error, at
// 1.846 m 0.9 mm (directive 2014/32/EU, annex X); with two ends of 0.5 mm and
// 0.8 mm for the corner the standard deviations of the synthetic rooms follow.
func TestAccuracyOfTools(t *testing.T) {
	for _, c := range []struct {
		a    survey.Accuracy
		l    unit.Length
		want float64
	}{
		{survey.Accuracy{}, 3000, math.Sqrt(1.1*1.1/3 + 2*0.25 + 0.64)},
		{survey.Accuracy{}, 1846, math.Sqrt(0.9*0.9/3 + 2*0.25 + 0.64)},
		{survey.Accuracy{NoHook: true}, 3000, math.Sqrt(0.9*0.9/3 + 2*0.25 + 0.64)},
		{survey.Accuracy{Tool: survey.TapeI}, 3000, math.Sqrt(0.5*0.5/3 + 2*0.25 + 0.64)},
		{survey.Accuracy{Tool: survey.TapeIII}, 3001, math.Sqrt(2.5*2.5/3 + 2*0.25 + 0.64)},
		{survey.Accuracy{Touch: 0.3, Corner: 0.1}, 500, math.Sqrt(0.7*0.7/3 + 2*0.09 + 0.01)},
		{survey.Accuracy{Tool: survey.Laser}, 3000, math.Hypot(1, 1)},
		{survey.Accuracy{Tool: survey.Laser}, 8000, math.Hypot(1.15, 1)},
	} {
		near(t, "standard deviation", float64(c.a.Length(c.l)), c.want, 1e-12)
	}
	// The synthetic rooms print their standard deviations to 0.01 mm.
	for _, room := range rooms(t) {
		for _, o := range room.Readings {
			if o.Kind == "dist" {
				near(t, room.ID+" "+o.ID, float64(survey.Usual.Length(unit.Length(o.Value))), o.Sigma, 0.0051)
			}
		}
	}
}

func TestReadingWithoutSDTakesTheTool(t *testing.T) {
	n := box(
		survey.Reading{ID: "345", Kind: survey.SquareOff, Points: []survey.Point{"A", "B", "C"}, A: 600, B: 800, Length: 1001},
		survey.Reading{ID: "angle", Kind: survey.Interior, Points: []survey.Point{"C"}, Angle: 90 * unit.Degree},
		survey.Reading{ID: "width", Kind: survey.Width, Points: []survey.Point{"B", "C"}, A: 900, Length: 2000},
		survey.Reading{ID: "own", Points: []survey.Point{"A", "C"}, Length: 2332, SD: 7},
		survey.Reading{ID: "bow", Kind: survey.Bow, Points: []survey.Point{"B", "C"}, Length: -3},
	)
	n.Accuracy = survey.Accuracy{SquareOff: 2.5}
	r := adjust(t, n)
	for i, want := range []unit.Length{n.Accuracy.Length(1200), n.Accuracy.Length(2000), n.Accuracy.Length(1200), 2.5, 0, n.Accuracy.Length(2000), 7, 0.7} {
		near(t, r.Readings[i].Reading.ID, float64(r.Readings[i].Reading.SD), float64(want), 0)
	}
	near(t, "protractor", r.Readings[4].Reading.AngleSD.Degrees(), 0.2, 1e-12)
	for _, a := range n.Accuracy.Assumptions() {
		if a.What == "" || a.Source == "" {
			t.Errorf("assumption without source: %+v", a)
		}
	}
}

// An alcove whose left wall bulges by 6 mm at its middle: every reading is made
// from the truth by hand, and the bow must come back out of the widths.
func TestBowedWall(t *testing.T) {
	// B (0,0), C (2000,0), A (0,-1200), D (2000,-1200); the left wall stands 6 mm
	// into the room at y -600.
	bulge := func(y float64) float64 { s := y / 1200; return 4 * 6 * s * (1 - s) }
	width := func(id string, depth float64) survey.Reading {
		return survey.Reading{ID: id, Kind: survey.Width, Points: []survey.Point{"B", "C"}, A: unit.Length(depth), Length: unit.Length(2000 - bulge(depth))}
	}
	mark := math.Hypot(800-bulge(600), 600) // marks 600 mm along A-B and 800 mm along B-C
	n := box(append(dist("A", "D", 2000),
		survey.Reading{ID: "A-C", Points: []survey.Point{"A", "C"}, Length: unit.Length(math.Hypot(2000, 1200))},
		survey.Reading{ID: "B-D", Points: []survey.Point{"B", "D"}, Length: unit.Length(math.Hypot(2000, 1200))},
		width("front", 1100), width("middle", 600), width("back", 100),
		survey.Reading{ID: "345", Kind: survey.SquareOff, Points: []survey.Point{"A", "B", "C"}, A: 600, B: 800, Length: unit.Length(mark)},
		survey.Reading{ID: "bow", Kind: survey.Bow, Points: []survey.Point{"A", "B"}, Length: 6},
	)...)
	r := adjust(t, n)
	near(t, "vTPv", r.VTPV, 0, 1e-12)
	if len(r.Bows) != 1 || r.Bows[0].From != "A" || r.Bows[0].To != "B" {
		t.Fatalf("bows %+v", r.Bows)
	}
	near(t, "bow", float64(r.Bows[0].Bow.Value), 6, 1e-9)
	if sd := r.Bows[0].Bow.SD; sd >= 0.7 || sd <= 0.3 {
		t.Errorf("bow known to %.2f mm, the reading alone to 0.7", sd)
	}
	got, err := r.Foretell(survey.Reading{Kind: survey.Width, Points: []survey.Point{"B", "C"}, A: 300})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "width foretold", float64(got.Length.Value), 2000-bulge(300), 1e-9)
	// Named the other way round the wall is still the same wall.
	for i, rd := range n.Readings {
		if rd.Kind == survey.Bow {
			n.Readings[i].Points = []survey.Point{"B", "A"}
		}
	}
	near(t, "bow named backwards", float64(adjust(t, n).Bows[0].Bow.Value), 6, 1e-9)
}

func TestOffsetSign(t *testing.T) {
	// D stands 242 mm behind the line from B to G: on its left, so below 0.
	n := studio()
	n.Readings = append(n.Readings, survey.Reading{ID: "depth", Kind: survey.Offset, Points: []survey.Point{"D", "B", "G"}, Length: -242})
	if r := adjust(t, n); math.Abs(float64(r.Readings[15].Residual)) > 3 {
		t.Errorf("residual %.1f", r.Readings[15].Residual)
	}
}

func TestForetell(t *testing.T) {
	room := rooms(t)[0]
	r := adjust(t, room.network())
	// A second reading of known weight: the variance falls by the rank-one
	// formula (g Q g)^2 / (s^2 + g Q g), whatever its value.
	ask := survey.Reading{Kind: survey.Width, Points: []survey.Point{"B", "C"}, A: 700}
	before, err := r.Foretell(ask)
	if err != nil {
		t.Fatal(err)
	}
	n := room.network()
	ask.ID, ask.Length, ask.SD = "w700", before.Length.Value, 1.2
	n.Readings = append(n.Readings, ask)
	after, err := adjust(t, n).Foretell(ask)
	if err != nil {
		t.Fatal(err)
	}
	v := float64(before.Length.SD * before.Length.SD)
	near(t, "variance after one more reading", float64(after.Length.SD*after.Length.SD), v-v*v/(1.2*1.2+v), 1e-9)

	angle, err := r.Foretell(survey.Reading{Kind: survey.Interior, Points: []survey.Point{"A"}})
	if err != nil {
		t.Fatal(err)
	}
	sum := angle.Angle
	for _, p := range []survey.Point{"B", "C", "D"} {
		a, err := r.Foretell(survey.Reading{Kind: survey.Interior, Points: []survey.Point{p}})
		if err != nil {
			t.Fatal(err)
		}
		sum += a.Angle
	}
	near(t, "sum of the angles of four corners", sum.Degrees(), 360, 1e-9)

	for _, bad := range []survey.Reading{
		{Kind: survey.Distance, Points: []survey.Point{"A", "Q"}}, {Kind: survey.Distance, Points: []survey.Point{"A"}},
		{Kind: survey.Distance, Points: []survey.Point{"A", "A"}}, {Kind: 77}, {Kind: survey.Bow, Points: []survey.Point{"A", "B"}},
	} {
		if _, err := r.Foretell(bad); err == nil {
			t.Errorf("%+v: no error", bad)
		}
	}
	if _, ok := r.At("Q"); ok {
		t.Error("Q has a place")
	}
}

// FuzzAdjust feeds networks of any readings, names and numbers: it may refuse
// them, it may not panic or hand out numbers that are none.
func FuzzAdjust(f *testing.F) {
	f.Add([]byte{0, 0, 1, 12, 0, 1, 2, 20, 0, 2, 3, 12, 0, 0, 2, 23, 0, 1, 3, 23, 0, 0, 3, 20}, false)
	f.Add([]byte{0, 0, 1, 36, 0, 1, 2, 28, 0, 2, 3, 36, 0, 3, 0, 28, 0, 0, 2, 45, 2, 1, 1, 90}, true)
	f.Add([]byte{3, 0, 1, 10, 4, 1, 2, 20, 5, 2, 3, 0, 6, 0, 1, 2, 1, 2, 3, 200}, false)
	f.Add([]byte{0, 0, 1, 10, 0, 1, 2, 10, 0, 2, 3, 10, 0, 0, 2, 20, 0, 1, 3, 20, 0, 0, 3, 30}, false)
	names := []survey.Point{"A", "B", "C", "D", "E"}
	f.Fuzz(func(t *testing.T, data []byte, closed bool) {
		n := survey.Network{Chain: names[:4], Closed: closed, Base: [2]survey.Point{"B", "C"}}
		for i := 0; i+3 < len(data) && i < 80; i += 4 {
			kind := survey.Kind(data[i] % 8)
			p, q, v := names[data[i+1]%5], names[data[i+2]%5], float64(data[i+3])
			r := survey.Reading{Kind: kind, Points: []survey.Point{p, q}, Length: unit.Length(100 * v), Angle: unit.Angle(2*v) * unit.Degree, A: 600, B: 800}
			switch kind {
			case survey.Interior:
				r.Points = []survey.Point{p}
			case survey.Angle, survey.SquareOff, survey.Offset:
				r.Points = append(r.Points, names[(data[i+1]+data[i+2])%4])
			}
			if kind == survey.SquareOff {
				r.Length = unit.Length(400 + 4*v)
			}
			n.Readings = append(n.Readings, r)
		}
		res, err := survey.Adjust(n)
		if err != nil {
			if err.Error() == "" {
				t.Error("trouble without a word")
			}
			return
		}
		judgeFuzzed(t, res)
		for _, p := range res.Points {
			for _, v := range []unit.Length{p.At.X, p.At.Y, p.SDX, p.SDY} {
				if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
					t.Errorf("%+v", p)
				}
			}
		}
	})
}

// judgeFuzzed judges whatever was adjusted: no number may be none, and nothing
// may be said where nothing checks.
func judgeFuzzed(t *testing.T, res *survey.Result) {
	res.OutOfSight()
	v := res.Judge(survey.Options{})
	for _, j := range v.Readings {
		for _, x := range []float64{j.W, float64(j.Least), float64(j.LeastAngle), float64(j.Sway), float64(j.Damage)} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%+v", j)
			}
		}
	}
	if v.Test.Answer == survey.NothingChecks && (v.Test.P != 0 || len(v.Suspects) > 0) {
		t.Errorf("unchecked, and yet %+v", v)
	}
	for _, c := range v.Next {
		if math.IsNaN(float64(c.Worst)) || math.IsNaN(float64(c.Damage)) || math.IsNaN(float64(c.Expected.Length.Value)) {
			t.Errorf("%+v", c)
		}
	}
}
