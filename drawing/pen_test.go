package drawing_test

import (
	"math"
	"slices"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Line widths of ISO 128-2 (series found in two teaching pages), wide to narrow
// at least 2:1 but for rounding in the series (0.35 : 0.18).
func TestLineWidths(t *testing.T) {
	series := []unit.Length{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2}
	for _, g := range []drawing.LineGroup{drawing.Normal, drawing.Dense} {
		for _, w := range []unit.Length{g.Wide, g.Narrow, g.Letter} {
			if !slices.Contains(series, w) {
				t.Errorf("width %v is not in the series", w)
			}
		}
		if g.Wide/g.Narrow < 1.94 {
			t.Errorf("wide %v and narrow %v are too alike", g.Wide, g.Narrow)
		}
	}
	if drawing.Normal.Wide != 0.5 || drawing.Normal.Narrow != 0.25 {
		t.Error("the normal group is 0.5 and 0.25") // from memory
	}
}

// Elements of interrupted lines in line widths (ISO 128-2, from memory): dot
// 0.5, gap 3, dash 12, long dash 24.
func TestDashElements(t *testing.T) {
	const d = 0.25
	for _, c := range []struct {
		pen      drawing.Pen
		dash     float64
		rest     []float64
		shortest unit.Length // from here on a line has at least two dashes
	}{
		{drawing.Normal.Hidden(), 12, []float64{3}, 2.3},
		{drawing.Normal.Centre(), 24, []float64{3, 0.5, 3}, 4.7},
		{drawing.Normal.Adjacent(), 24, []float64{3, 0.5, 3, 0.5, 3}, 5.6},
	} {
		for l := c.shortest; l < 300; l += 3.7 {
			s := plot(drawing.Line(geom.V(0, 0), geom.V(l, 0), c.pen)).lines[0]
			if len(s.Dashes) != 1+len(c.rest) {
				t.Fatalf("%v, %v long: dashes %v", c.pen.Dash, l, s.Dashes)
			}
			period := 0.0
			for i, v := range s.Dashes {
				period += float64(v)
				if i > 0 && math.Abs(float64(v)-c.rest[i-1]*d) > 1e-12 {
					t.Errorf("%v: gap or dot %v", c.pen.Dash, v)
				}
			}
			// Whole periods and one more dash: the line ends in a full dash.
			n := (float64(l) - float64(s.Dashes[0])) / period
			if math.Abs(n-math.Round(n)) > 1e-9 || n < 0.5 {
				t.Errorf("%v, %v long: %v periods", c.pen.Dash, l, n)
			}
			if stretch := float64(s.Dashes[0]) / (c.dash * d); l > 40 && (stretch < 0.7 || stretch > 1.4) {
				t.Errorf("%v, %v long: dash stretched by %v", c.pen.Dash, l, stretch)
			}
		}
	}
}

// A dashed outline has a dash on both sides of each corner; a dashed circle has
// no seam.
func TestDashesMeetAtCorners(t *testing.T) {
	square := drawing.Box(0, 0, 40, 25).Corners()
	k := plot(drawing.Outline(square, drawing.Normal.Hidden()))
	if len(k.lines) != 4 {
		t.Fatalf("%d runs, want 4", len(k.lines))
	}
	for _, l := range k.lines {
		if len(l.chain) != 2 || l.closed {
			t.Errorf("run %v", l.chain)
		}
	}
	var circle []geom.Vec
	for i := range 72 {
		circle = append(circle, geom.V(20, 0).Turn(unit.Angle(i)*5*unit.Degree))
	}
	whole := plot(drawing.Outline(circle, drawing.Normal.Hidden())).lines
	if len(whole) != 1 || !whole[0].closed {
		t.Fatalf("a smooth loop falls into %d runs", len(whole))
	}
	round := 72 * 2 * 20 * math.Sin(2.5*math.Pi/180)
	n := round / float64(whole[0].Dashes[0]+whole[0].Dashes[1])
	if math.Abs(n-math.Round(n)) > 1e-9 {
		t.Errorf("%v periods around a loop", n)
	}
}

// Break lines keep their ends and stay near their course.
func TestBreakLines(t *testing.T) {
	a, b := geom.V(10, 10), geom.V(150, 60)
	axis := geom.Through(a, b)
	for pen, reach := range map[drawing.Pen]unit.Length{drawing.Normal.Break(): 2.1, drawing.Normal.Wavy(): 1} {
		c := plot(drawing.Line(a, b, pen)).lines[0].chain
		if c[0] != a || c[len(c)-1] != b || len(c) < 6 {
			t.Errorf("%v: from %v to %v in %d steps", pen.Dash, c[0], c[len(c)-1], len(c))
		}
		var far unit.Length
		for _, p := range c {
			far = max(far, unit.Length(math.Abs(float64(axis.Side(p)))))
		}
		if far > reach || far < reach/3 {
			t.Errorf("%v strays by %v", pen.Dash, far)
		}
	}
}

// Terminators of ISO 129-1: the arrow is three times as long as wide; the
// oblique stroke rises from lower left to upper right, 2.5 long (Austrian
// school book on steelwork); the origin circle has 3 mm (from memory).
func TestMarks(t *testing.T) {
	f := &fills{}
	drawing.Plot(drawing.Sheet{Items: []drawing.Item{drawing.Mark{Kind: drawing.Arrow, At: geom.V(5, 5), Dir: geom.V(7, 0)}}}, f)
	tri := f.loops[0]
	long, wide := tri[0].Sub(tri[1].Lerp(tri[2], 0.5)).Len(), tri[1].Sub(tri[2]).Len()
	if tri[0] != geom.V(5, 5) || math.Abs(float64(long-3*wide)) > 1e-9 || long != drawing.ArrowLength {
		t.Errorf("arrow at %v, %v long, %v wide", tri[0], long, wide)
	}
	pen := drawing.Normal.Fine()
	c := plot(drawing.Mark{Kind: drawing.Oblique, At: geom.V(0, 0), Dir: geom.V(1, 0), Pen: pen}).lines[0].chain
	if d := c[1].Sub(c[0]); math.Abs(float64(d.Len()-2.5)) > 1e-9 || math.Abs(d.Angle().Degrees()-45) > 1e-9 {
		t.Errorf("oblique stroke %v", d)
	}
	if r := plot(drawing.Mark{Kind: drawing.Origin, Pen: pen}).arcs[0].radius; r != 1.5 {
		t.Errorf("origin circle of radius %v", r)
	}
}

type fills struct {
	ink
	loops [][]geom.Vec
}

func (f *fills) Fill(loops [][]geom.Vec, _ drawing.Ink) { f.loops = append(f.loops, loops...) }
