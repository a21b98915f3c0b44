package drawing_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Heights of letters after ISO 3098-1 (table for type B, read in a teaching
// page: 1.8, 2.5, 3.5, 5, 7, 10, 14, 20).
func TestLetteringHeights(t *testing.T) {
	series := []unit.Length{1.8, 2.5, 3.5, 5, 7, 10, 14, 20}
	for _, h := range []unit.Length{drawing.Small, drawing.Standard, drawing.Large, drawing.Huge} {
		if !slices.Contains(series, h) {
			t.Errorf("height %v is not in the series", h)
		}
		q := drawing.Write(geom.V(0, 0), "H", h, drawing.Left).Quad()
		if got := q[3].Sub(q[0]).Len(); math.Abs(float64(got-h)) > 1e-9 {
			t.Errorf("capital H is %v high, want %v", got, h)
		}
	}
}

// The cap height of DejaVu Sans is 1493 of 2048 units (measured in the font
// with another program: 0.729 em).
func TestCapRatio(t *testing.T) {
	for _, bold := range []bool{false, true} {
		if got := drawing.CapRatio(bold); math.Abs(got-0.729) > 0.0005 {
			t.Errorf("cap height %v em, want 0.729", got)
		}
	}
}

// Columns of figures line up: all digits are as wide as each other.
func TestDigitsAreTabular(t *testing.T) {
	want := drawing.TextWidth("0", 3.5)
	for _, d := range "123456789" {
		if got := drawing.TextWidth(string(d), 3.5); got != want {
			t.Errorf("digit %c is %v wide, 0 is %v", d, got, want)
		}
	}
}

func TestUnprintable(t *testing.T) {
	for s, want := range map[string]string{
		"Ø60 ±0.5° m² m³ × ≤ ≥ ½ ⌀ äöüß – „“ … → č ł": "",
		"two\nlines": "\n", "木": "木", "tab\t\ttab": "\t", "e\u0301": "\u0301", "שלום": "שלום", "a\u00adb": "\u00ad",
	} {
		if got := string(drawing.Unprintable(s)); got != want {
			t.Errorf("Unprintable(%q) = %q, want %q", s, got, want)
		}
	}
}

func TestStart(t *testing.T) {
	const h = 3.5
	w := drawing.TextWidth("abc", h)
	at := geom.V(100, 50)
	for align, want := range map[drawing.Align]geom.Vec{
		drawing.Left: at, drawing.Centre: at.Add(geom.V(-w/2, 0)), drawing.Right: at.Add(geom.V(-w, 0)),
		drawing.MiddleLeft: at.Add(geom.V(0, -h/2)), drawing.TopRight: at.Add(geom.V(-w, -h)),
	} {
		if got := drawing.Write(at, "abc", h, align).Start(); got != want {
			t.Errorf("%v starts at %v, want %v", align, got, want)
		}
	}
	// Turned a quarter, the text runs up and its top looks to the left.
	up := drawing.Write(at, "abc", h, drawing.TopRight).Along(90 * unit.Degree)
	if got := up.Start().Sub(at.Add(geom.V(h, -w))).Len(); got > 1e-9 {
		t.Errorf("turned text starts %v off", got)
	}
}

// The box holds the ink: descenders below, accents above.
func TestQuadHoldsInk(t *testing.T) {
	for _, s := range []string{"H", "g", "Äg", "–", "½"} {
		q := drawing.Write(geom.V(0, 0), s, 10, drawing.Left).Quad()
		low, high := q[0].Y, q[3].Y
		var lowest, highest unit.Length = 100, -100
		for _, r := range s {
			for _, c := range drawing.Letter(r, false) {
				for _, b := range c.Bends {
					lowest, highest = min(lowest, 10*b.End.Y), max(highest, 10*b.End.Y)
				}
			}
		}
		if low > lowest+1e-6 || high < highest-1e-6 || low < lowest-0.05 || high > highest+0.05 {
			t.Errorf("%q: box %v..%v, ink %v..%v", s, low, high, lowest, highest)
		}
	}
}

func TestWrapAndFit(t *testing.T) {
	const text = "the slab is put in from above and pushed back"
	lines := drawing.Wrap(text, 2.5, 40)
	if len(lines) < 2 || strings.Join(lines, " ") != text {
		t.Fatalf("wrapped to %q", lines)
	}
	for _, l := range lines {
		if drawing.TextWidth(l, 2.5) > 40 {
			t.Errorf("line %q is too wide", l)
		}
	}
	if got := drawing.Wrap("incompressible", 5, 3); len(got) != 1 {
		t.Errorf("a single word must stay whole: %q", got)
	}
	short := drawing.Fit(text, 2.5, 40)
	if drawing.TextWidth(short, 2.5) > 40 || !strings.HasSuffix(short, "…") || len(short) < 10 {
		t.Errorf("fitted to %q", short)
	}
}
