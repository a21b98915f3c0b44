package survey_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// problem expects trouble of a kind.
func problem(t *testing.T, n survey.Network, want survey.Trouble) *survey.Problem {
	t.Helper()
	r, err := survey.Adjust(n)
	var p *survey.Problem
	if !errors.As(err, &p) || p.Trouble != want {
		t.Fatalf("got %v, %v; want trouble %d", r, err, want)
	}
	return p
}

// box is three walls with a corner angle of 90 degrees: 1200, 2000, 1200.
func box(more ...survey.Reading) survey.Network {
	return survey.Network{
		Chain:    []survey.Point{"A", "B", "C", "D"},
		Base:     [2]survey.Point{"B", "C"},
		Readings: append(dist("A", "B", 1200, "B", "C", 2000, "C", "D", 1200), more...),
	}
}

func TestAlcoveIsTakenToHaveInsideCorners(t *testing.T) {
	n := box(dist("A", "C", 2332, "B", "D", 2332)...)
	r := adjust(t, n)
	a, _ := r.At("A")
	d, _ := r.At("D")
	if a.Y > -1190 || d.Y > -1190 || !slices.Equal(r.Assumed, []survey.Point{"B", "C"}) {
		t.Errorf("A %v, D %v, assumed %v", a, d, r.Assumed)
	}
	// The same lengths round a breast, when the corners are told.
	n.Turns = map[survey.Point]survey.Turn{"B": survey.Outside, "C": survey.Outside}
	r = adjust(t, n)
	a, _ = r.At("A")
	d, _ = r.At("D")
	if a.Y < 1190 || d.Y < 1190 || len(r.Assumed) > 0 {
		t.Errorf("breast: A %v, D %v, assumed %v", a, d, r.Assumed)
	}
	// One of each.
	n.Turns = map[survey.Point]survey.Turn{"B": survey.Inside, "C": survey.Outside}
	r = adjust(t, n)
	a, _ = r.At("A")
	d, _ = r.At("D")
	if a.Y > -1190 || d.Y < 1190 {
		t.Errorf("step: A %v, D %v", a, d)
	}
}

// A diagonal or an angle that decides needs no word from anybody.
func TestReadingsDecideTheTurn(t *testing.T) {
	n := box(dist("A", "C", 2332, "B", "D", 2332, "A", "D", 3124)...) // across a step:
	problem(t, n, survey.TwoShapes)                                   // to the left or to the right?
	n.Turns = map[survey.Point]survey.Turn{"B": survey.Inside}
	r := adjust(t, n)
	if d, _ := r.At("D"); d.Y < 1190 {
		t.Errorf("D %v", d)
	}
	r = adjust(t, box(
		survey.Reading{ID: "b", Kind: survey.Interior, Points: []survey.Point{"B"}, Angle: 270 * unit.Degree},
		survey.Reading{ID: "c", Kind: survey.Interior, Points: []survey.Point{"C"}, Angle: 269 * unit.Degree},
	))
	a, _ := r.At("A")
	d, _ := r.At("D")
	if a.Y < 1190 || d.Y < 1190 || len(r.Assumed) > 0 {
		t.Errorf("breast by protractor: A %v, D %v", a, d)
	}
}

func TestTwoShapesAsksForTheTurn(t *testing.T) {
	// A niche of which nothing tells whether it goes in or comes out.
	n := studio()
	n.Readings = append(n.Readings[:len(n.Readings)-1], dist("B", "D", 942)...) // in place of A-D
	p := problem(t, n, survey.TwoShapes)
	for _, c := range []survey.Point{"C", "D", "E", "F"} {
		if !slices.Contains(p.Points, c) {
			t.Errorf("corner %s is not named: %v", c, p)
		}
	}
	if len(p.Measure) == 0 || !strings.Contains(p.Error(), "inside or an outside corner") {
		t.Errorf("no way out: %v", p)
	}
	// One word about one corner settles it, either way.
	for turn, side := range map[survey.Turn]float64{survey.Outside: 1, survey.Inside: -1} {
		n.Turns = map[survey.Point]survey.Turn{"C": turn}
		r := adjust(t, n)
		if d, _ := r.At("D"); float64(d.Y)*side < 200 {
			t.Errorf("C %s: D at %v", turn, d)
		}
	}
}

func TestWrongTurnIsTold(t *testing.T) {
	n := studio()
	n.Turns = map[survey.Point]survey.Turn{"D": survey.Outside}
	p := problem(t, n, survey.WrongTurn)
	if !slices.Equal(p.Points, []survey.Point{"D"}) || !strings.Contains(p.Error(), "D is told to be an outside corner, but the readings make it an inside one") {
		t.Errorf("%v: %v", p.Points, p)
	}
}

func TestHangsFreeNamesCornerAndReading(t *testing.T) {
	// Nothing holds A and D sideways.
	p := problem(t, box(), survey.HangsFree)
	if !slices.Contains(p.Points, "A") && !slices.Contains(p.Points, "D") || len(p.Measure) == 0 {
		t.Errorf("%v", p)
	}
	// One diagonal holds A; D still hangs, and the other diagonal would hold it.
	p = problem(t, box(dist("A", "C", 2332)...), survey.HangsFree)
	if p.Points[0] != "D" || !strings.Contains(p.Error(), "D hangs free") {
		t.Errorf("%v", p)
	}
	for _, m := range p.Measure {
		if !slices.Contains(m[:], "D") {
			t.Errorf("measuring %v does not hold D", m)
		}
	}
	// 3-4-5 marks in both corners hold them.
	adjust(t, box(
		survey.Reading{ID: "345 B", Kind: survey.SquareOff, Points: []survey.Point{"A", "B", "C"}, A: 600, B: 800, Length: 1001},
		survey.Reading{ID: "345 C", Kind: survey.SquareOff, Points: []survey.Point{"B", "C", "D"}, A: 800, B: 600, Length: 999},
	))
}

// Walls that can't meet (a diagonal longer than two walls together) are still
// adjusted; the residuals tell.
func TestContradictionShowsInResiduals(t *testing.T) {
	n := survey.Network{
		Chain:    []survey.Point{"A", "B", "C", "D"},
		Closed:   true,
		Base:     [2]survey.Point{"A", "B"},
		Readings: dist("A", "B", 2000, "B", "C", 1500, "C", "D", 2000, "D", "A", 1500, "A", "C", 3600, "B", "D", 2500),
	}
	r := adjust(t, n)
	worst := 0.0
	for _, o := range r.Readings {
		worst = max(worst, math.Abs(float64(o.Residual)))
	}
	if worst < 50 || r.S0 < 20 {
		t.Errorf("worst residual %.1f, s0 %.1f", worst, r.S0)
	}
}

func TestGlobalMirrorRunsClockwise(t *testing.T) {
	// Distances alone can't tell a room from its mirror image; the order of the
	// corners does.
	for _, p := range plans() {
		if !p.closed {
			continue
		}
		r := adjust(t, p.measure(0, nil))
		area := 0.0
		for i, a := range r.Points {
			area += a.At.Cross(r.Points[(i+1)%len(r.Points)].At) / 2
		}
		if area >= 0 {
			t.Errorf("%s runs counter-clockwise", p.name)
		}
	}
}

// A square inside corner told to be an outside one: some shape with such a
// corner is always there, but it misses the readings by decimetres. The corner
// is named, not the readings, which are those of a rectangle of 700 by 1460
// (Pythagoras).
func TestWrongTurnIsNoSlip(t *testing.T) {
	walls := dist("A", "B", 700, "B", "C", 1460, "C", "D", 700, "A", "D", 1460)
	across := dist("A", "C", 1619, "B", "D", 1619)
	square := survey.Reading{ID: "square", Kind: survey.SquareOff, Points: []survey.Point{"A", "B", "C"}, A: 600, B: 800, Length: 1000}
	angle := survey.Reading{ID: "angle", Kind: survey.Angle, Points: []survey.Point{"A", "B", "C"}, Angle: 90 * unit.Degree}
	in, out := survey.Inside, survey.Outside
	for _, c := range []struct {
		more  []survey.Reading
		turns map[survey.Point]survey.Turn
		wrong []survey.Point
	}{
		{nil, map[survey.Point]survey.Turn{"B": out}, []survey.Point{"B"}},
		{nil, map[survey.Point]survey.Turn{"B": out, "C": in}, []survey.Point{"B"}},
		{nil, map[survey.Point]survey.Turn{"C": out}, []survey.Point{"C"}},
		{[]survey.Reading{square}, map[survey.Point]survey.Turn{"B": out, "C": in}, []survey.Point{"B"}},
		{[]survey.Reading{angle}, map[survey.Point]survey.Turn{"C": out}, []survey.Point{"C"}},
		{[]survey.Reading{angle}, map[survey.Point]survey.Turn{"B": out, "C": out}, []survey.Point{"B", "C"}},
	} {
		for _, closed := range []bool{false, true} {
			n := survey.Network{Chain: []survey.Point{"A", "B", "C", "D"}, Closed: closed, Base: [2]survey.Point{"B", "C"}, Turns: c.turns}
			n.Readings = append(append(append(n.Readings, walls...), across...), c.more...)
			p := problem(t, n, survey.WrongTurn)
			if !slices.Equal(p.Points, c.wrong) || !strings.Contains(p.Why, "an inside one, 90 degrees wide") {
				t.Errorf("%v, closed %v: %v: %v", c.turns, closed, p.Points, p)
			}
			n.Turns = map[survey.Point]survey.Turn{"B": in, "C": in}
			if r, err := survey.Adjust(n); err != nil || r.VTPV > 0.1 {
				t.Errorf("told rightly: %v, %v", r, err)
			}
		}
	}
}
