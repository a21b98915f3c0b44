package dim

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// board100 is a rectangle 100 x 50 at 1:1 with its lower left corner at 0, 0.
func board100(style Style) Plate {
	body := drawing.Box(0, 0, 100, 50)
	return Plate{Body: body, Drawn: []drawing.Item{drawing.Outline(body.Corners(), style.Lines.Outline())}, Style: style}
}

// drawnItems sorts items by what they are.
type drawnItems struct {
	lines []drawing.Polyline
	marks []drawing.Mark
	texts []drawing.Text
	rings []drawing.Circle
}

func sortOut(items []drawing.Item) (d drawnItems) {
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Polyline:
			d.lines = append(d.lines, x)
		case drawing.Mark:
			d.marks = append(d.marks, x)
		case drawing.Text:
			d.texts = append(d.texts, x)
		case drawing.Circle:
			d.rings = append(d.rings, x)
		}
	}
	return d
}

// placed places requests on a board and wants no trouble.
func placed(t *testing.T, p Plate, q ...Request) drawnItems {
	t.Helper()
	items, rep := Place(p, q)
	if !rep.Clean() {
		t.Errorf("troubles: %v", rep.Troubles)
	}
	return sortOut(items)
}

// level gives the heights of horizontal lines, and their lengths.
func (d drawnItems) level() (y, long []unit.Length) {
	for _, l := range d.lines {
		if a, b := l.Points[0], l.Points[len(l.Points)-1]; len(l.Points) == 2 && a.Y == b.Y {
			y, long = append(y, a.Y), append(long, abs(b.X-a.X))
		}
	}
	return y, long
}

func near(a, b unit.Length) bool { return abs(a-b) < 1e-6 }

// Distances of dimension lines: first 10 from the outline, next 8; shortest
// inside. Extension lines: narrow, 8 line widths beyond (2.0 at 0.25), with a
// gap of up to 2 at the feature. Sources: 10 and 8 from teaching texts on
// dimensioning after ISO 129; shortest inside from a UK text; 8 widths from
// memory of ISO 129-1:2018, confirmed by no text.
func TestRowsStandOffByTheStandard(t *testing.T) {
	parallel := []Request{
		Linear{A: geom.V(0, 0), B: geom.V(90, 0), Side: Below},
		Linear{A: geom.V(0, 0), B: geom.V(30, 0), Side: Below},
		Linear{A: geom.V(0, 0), B: geom.V(60, 0), Side: Below},
	}
	d := placed(t, board100(Wood), parallel...)
	y, long := d.level()
	for i, want := range map[unit.Length]unit.Length{30: -10, 60: -18, 90: -26} {
		if k := slices.Index(long, i); k < 0 || !near(y[k], want) {
			t.Errorf("line of length %v: heights %v, lengths %v, want at %v", i, y, long, want)
		}
	}
	found := 0
	for _, l := range d.lines {
		a, b := l.Points[0], l.Points[1]
		if l.Pen.Width != drawing.Normal.Narrow || l.Pen.Dash != drawing.Solid {
			t.Errorf("pen %v", l.Pen)
		}
		if a.X != b.X {
			continue
		}
		found++
		if !near(a.Y, -1.5) {
			t.Errorf("extension line starts at %v, want 1.5 off the outline", a)
		}
		if past := -8*0.25 - b.Y; !near(past, 10) && !near(past, 18) && !near(past, 26) {
			t.Errorf("extension line ends at %v, want 2 beyond a dimension line", b)
		}
	}
	if found != 4 { // the common one at x = 0 is drawn once
		t.Errorf("%d extension lines, want 4", found)
	}
}

// Figures of stacked lines are staggered (UK teaching text on dimensioning).
func TestStackedFiguresAreStaggered(t *testing.T) {
	d := placed(t, board100(Wood),
		Linear{A: geom.V(30, 0), B: geom.V(70, 0), Side: Below},
		Linear{A: geom.V(20, 0), B: geom.V(80, 0), Side: Below},
		Linear{A: geom.V(0, 0), B: geom.V(100, 0), Side: Below})
	for i, x := range d.texts[1:] {
		a, b := quadBox(x.Quad()), quadBox(d.texts[i].Quad())
		if a.min.X < b.max.X && b.min.X < a.max.X {
			t.Errorf("%q stands over %q", x.String, d.texts[i].String)
		}
	}
}

// Parallel dimensions from a common origin need no extension line that crosses
// a dimension line (no_crossing: UK teaching text on dimensioning).
func TestNestedRowsDoNotCross(t *testing.T) {
	var want []Request
	for i := range 6 {
		x := unit.Length(15 * (i + 1))
		want = append(want, Linear{A: geom.V(0, 0), B: geom.V(x, 0)}, Linear{A: geom.V(100-x, 50), B: geom.V(100, 50)})
	}
	d := placed(t, board100(Wood), want...)
	for _, l := range d.lines {
		for _, m := range d.lines {
			a, b := newLine(l.Points[0], l.Points[1], 0, reach), newLine(m.Points[0], m.Points[1], 0, ruled)
			if a.a.X != a.b.X || b.a.Y != b.b.Y {
				continue
			}
			if x := a.a.X; x > b.min.X+0.01 && x < b.max.X-0.01 && a.min.Y < b.a.Y-0.01 && a.max.Y > b.a.Y+0.01 {
				t.Errorf("extension line %v crosses dimension line %v", l.Points, m.Points)
			}
		}
	}
}

// Figures stand over the middle of their line, about 1 off it, and are read
// from below or from the right (memory of ISO 129-1:2018, high confidence).
func TestFiguresOverTheirLine(t *testing.T) {
	for _, c := range []struct {
		q    Linear
		turn unit.Angle
		mid  geom.Vec // of the line
	}{
		{Linear{A: geom.V(0, 0), B: geom.V(100, 0), Side: Below}, 0, geom.V(50, -10)},
		{Linear{A: geom.V(0, 50), B: geom.V(100, 50), Side: Above}, 0, geom.V(50, 60)},
		{Linear{A: geom.V(0, 0), B: geom.V(0, 50), Dir: Vertical, Side: LeftOf}, 90 * unit.Degree, geom.V(-10, 25)},
		{Linear{A: geom.V(100, 50), B: geom.V(100, 0), Dir: Vertical, Side: RightOf}, 90 * unit.Degree, geom.V(110, 25)},
	} {
		d := placed(t, board100(Wood), c.q)
		if len(d.texts) != 1 {
			t.Fatalf("%v: %d texts", c.q, len(d.texts))
		}
		x := d.texts[0]
		if math.Abs(float64(x.Turn-c.turn)) > 1e-9 {
			t.Errorf("%v: turned by %v degrees", c.q, x.Turn.Degrees())
		}
		q := x.Quad()
		foot := q[0].Lerp(q[1], 0.5).Sub(c.mid)
		up := geom.V(1, 0).Turn(c.turn).Left()
		if side, off := up.Cross(foot), foot.Dot(up); math.Abs(side) > 0.01 || off < 0.8 || off > 1.3 {
			t.Errorf("%v: figures %.2f aside of the middle and %.2f over the line", c.q, side, off)
		}
	}
}

// Lettering along any direction never stands on its head.
func TestReadable(t *testing.T) {
	for deg := -180; deg <= 180; deg++ {
		got := readable(polar(1, unit.Angle(deg)*unit.Degree)).Angle().Degrees()
		if got < -80.01 || got > 100.01 {
			t.Errorf("%d degrees reads at %.1f", deg, got)
		}
	}
}

// Terminators: filled arrows 3 long on joinery, strokes 2.5 long at 45 degrees,
// lower left to upper right in reading direction, on steelwork (Austrian school
// book on steelwork drawings).
func TestTerminators(t *testing.T) {
	want := Linear{A: geom.V(0, 0), B: geom.V(0, 50), Dir: Vertical, Side: LeftOf}
	d := placed(t, board100(Wood), want)
	for _, m := range d.marks {
		out := m.At.Sub(geom.V(-10, 25)) // away from the middle
		if m.Kind != drawing.Arrow || m.Size != 3 || m.Dir.Dot(out) <= 0 {
			t.Errorf("wood: %+v", m)
		}
	}
	d = placed(t, board100(Steel), want)
	for _, m := range d.marks {
		if m.Kind != drawing.Oblique || m.Size != 2.5 || !near(m.Dir.X, 0) || m.Dir.Y <= 0 {
			t.Errorf("steel: %+v, want the reading direction, upwards", m)
		}
	}
	if len(d.marks) != 2 {
		t.Errorf("%d marks", len(d.marks))
	}
}

// Where a line is too short the arrows point in from outside; a dot stands
// between two short links of a chain (teaching texts after ISO 129).
func TestTightLinks(t *testing.T) {
	d := placed(t, board100(Wood), Linear{A: geom.V(40, 0), B: geom.V(44, 0), Side: Below})
	if len(d.marks) != 2 {
		t.Fatalf("%d marks", len(d.marks))
	}
	for _, m := range d.marks {
		if in := geom.V(42, -10).Sub(m.At); m.Kind != drawing.Arrow || m.Dir.Dot(in) <= 0 {
			t.Errorf("%+v does not point in from outside", m)
		}
	}
	d = placed(t, board100(Wood), Chain{Points: []geom.Vec{{X: 40}, {X: 44}, {X: 48}, {X: 90}}, Side: Below})
	kinds := map[unit.Length][]drawing.MarkKind{}
	for _, m := range d.marks {
		kinds[m.At.X] = append(kinds[m.At.X], m.Kind)
	}
	if k := kinds[44]; len(k) != 1 || k[0] != drawing.Dot {
		t.Errorf("between short links: %v, want one dot", k)
	}
	for _, x := range []unit.Length{40, 48, 90} {
		if k := kinds[x]; len(k) != 1 || k[0] != drawing.Arrow {
			t.Errorf("at %v: %v, want one arrow", x, k)
		}
	}
}

// Running dimensions: one line, a circle at the datum, an arrow away from it
// at each feature, values turned along their extension lines (teaching text;
// the circle of 3 mm from memory).
func TestRunning(t *testing.T) {
	d := placed(t, board100(Wood), Running{
		Datum: geom.V(0, 0), From: "A", Side: Below,
		Points: []geom.Vec{{X: 80, Y: 20}, {X: 25, Y: 30}, {X: 50, Y: 10}},
	})
	var values []string
	for _, x := range d.texts {
		values = append(values, x.String)
		if math.Abs(x.Turn.Degrees()-90) > 1e-9 {
			t.Errorf("%q turned by %v", x.String, x.Turn.Degrees())
		}
	}
	if got := strings.Join(values, ", "); got != "0 A, 25, 50, 80" {
		t.Errorf("values %s", got)
	}
	arrows := 0
	for _, m := range d.marks {
		switch m.Kind {
		case drawing.Origin:
			if m.At != geom.V(0, -10) || drawing.OriginSize != 3 {
				t.Errorf("origin %+v", m)
			}
		case drawing.Arrow:
			arrows++
			if m.Dir.X <= 0 {
				t.Errorf("arrow %+v points to the datum", m)
			}
		}
	}
	if arrows != 3 {
		t.Errorf("%d arrows, want 3", arrows)
	}
}

// What is written: value, tolerance, brackets for reference sizes, Ø and R
// before the value (memory of ISO 129-1:2018, high confidence).
func TestWhatIsWritten(t *testing.T) {
	comma := func(l unit.Length) string { return unit.Style{Decimal: ','}.Length(l) }
	for _, c := range []struct {
		q    Request
		want string
	}{
		{Linear{A: geom.V(0, 0), B: geom.V(30, 40)}, "30"},
		{Linear{A: geom.V(0, 0), B: geom.V(30, 40), Dir: Vertical}, "40"},
		{Linear{A: geom.V(0, 0), B: geom.V(30, 40), Dir: Aligned}, "50"},
		{Linear{A: geom.V(12.25, 0), B: geom.V(0, 40)}, "12,3"},
		{Linear{A: geom.V(0, 0), B: geom.V(80, 0), Label: Label{Tolerance: "+0/-2"}}, "80 +0/-2"},
		{Linear{A: geom.V(0, 0), B: geom.V(80, 0), Label: Label{Reference: true}}, "(80)"},
		{Linear{A: geom.V(0, 0), B: geom.V(80, 0), Label: Label{Text: "check", Prefix: "~", Suffix: "*"}}, "~check*"},
		{Across{A: geom.V(60, 0), B: geom.V(0, 80)}, "100"},
		{Angle{Vertex: geom.V(0, 0), A: geom.V(50, 0), B: geom.V(40, 40)}, "45°"},
		{Angle{Vertex: geom.V(0, 0), A: geom.V(0, 50), B: geom.V(50, 0)}, "90°"},
		{Diameter{Centre: geom.V(50, 25), Dia: 13, Count: 4}, "4 × Ø13"},
		{Diameter{Centre: geom.V(50, 25), Dia: 13, Count: 1}, "Ø13"},
		{Radius{Centre: geom.V(50, 25), R: 20, Sweep: 1}, "R20"},
		{Level{At: geom.V(0, 50), Value: 735}, "+735"},
		{Level{At: geom.V(0, 50), Value: -20}, "-20"},
		{Level{At: geom.V(0, 0), Value: 0}, "±0"},
		{Balloon{At: geom.V(50, 25), Number: "7"}, "7"},
		{Datum{A: geom.V(0, 0), B: geom.V(100, 0), Letter: "A"}, "A"},
	} {
		p := board100(Wood)
		p.Format = comma
		d := placed(t, p, c.q)
		if len(d.texts) != 1 || d.texts[0].String != c.want {
			t.Errorf("%T%+v writes %v, want %q", c.q, c.q, d.texts, c.want)
		}
	}
}
