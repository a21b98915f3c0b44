package render_test

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"time"

	"slabwright/drawing"
	"slabwright/drawing/render"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

func mustPDF(t testing.TB, sheets ...drawing.Sheet) []byte {
	t.Helper()
	b, err := render.PDF(sheets, render.Meta{Title: "Print bench – č", Creator: "slabwright"})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func mustSVG(t testing.TB, s drawing.Sheet) []byte {
	t.Helper()
	b, err := render.SVG(s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// set is the demonstration sheet in all sizes.
func set() []drawing.Sheet {
	var sheets []drawing.Sheet
	for i, size := range []drawing.Size{drawing.A4, drawing.A3, drawing.A2, drawing.A1} {
		sheets = append(sheets, demo(size, i+1))
	}
	return sheets
}

// The demonstration sheet uses every kind of item without a text in the way of
// anything.
func TestDemoIsReadable(t *testing.T) {
	for _, c := range drawing.Overlaps(demo(drawing.A3, 1)) {
		t.Error(c)
	}
}

// The same sheets give the same bytes, at another time of day too.
func TestSameBytes(t *testing.T) {
	t.Parallel()
	p, s := mustPDF(t, set()...), mustSVG(t, demo(drawing.A3, 1))
	time.Sleep(1100 * time.Millisecond) // the time of day in a PDF has whole seconds
	if !bytes.Equal(p, mustPDF(t, set()...)) {
		t.Error("two PDFs of the same sheets differ")
	}
	if !bytes.Equal(s, mustSVG(t, demo(drawing.A3, 1))) {
		t.Error("two SVGs of the same sheet differ")
	}
}

// Sheets may be drawn side by side.
func TestConcurrent(t *testing.T) {
	want := mustPDF(t, demo(drawing.A4, 1))
	for range 4 {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			if !bytes.Equal(want, mustPDF(t, demo(drawing.A4, 1))) {
				t.Error("a PDF written beside others differs")
			}
		})
	}
}

// What cannot be drawn is refused in words, never drawn as an empty box.
func TestRefusals(t *testing.T) {
	lacking := drawing.Sheet{Name: "01-x", Size: drawing.A4, Items: []drawing.Item{drawing.Write(geom.V(30, 30), "木", 3.5, drawing.Left)}}
	if _, err := render.SVG(lacking); err == nil || !strings.Contains(err.Error(), "木") {
		t.Errorf("SVG: %v", err)
	}
	if _, err := render.PDF([]drawing.Sheet{lacking}, render.Meta{}); err == nil || !strings.Contains(err.Error(), "木") {
		t.Errorf("PDF: %v", err)
	}
	nan := drawing.Line(geom.V(unit.Length(math.NaN()), 0), geom.V(1, 1), drawing.Normal.Fine())
	if _, err := render.PDF([]drawing.Sheet{{Size: drawing.A4, Items: []drawing.Item{nan}}}, render.Meta{}); err == nil {
		t.Error("PDF draws what is no number")
	}
	if _, err := render.PDF(nil, render.Meta{}); err == nil {
		t.Error("PDF makes a document without pages")
	}
}

// Points without length, texts without ink and empty loops do no harm.
func TestDegenerate(t *testing.T) {
	p := geom.V(50, 50)
	hidden := drawing.Normal.Hidden()
	s := drawing.Sheet{Name: "x", Size: drawing.A4, Items: []drawing.Item{
		drawing.Polyline{Pen: hidden}, drawing.Line(p, p, hidden), drawing.Line(p, p, drawing.Normal.Fine()),
		drawing.Outline([]geom.Vec{p, p, p}, drawing.Normal.Wavy()), drawing.Area{}, drawing.Area{Loops: [][]geom.Vec{{}, {p}}},
		drawing.Hatch{}, drawing.Hatch{Loops: [][]geom.Vec{{p, p, p}}}, drawing.Circle{Centre: p, Pen: hidden},
		drawing.Circle{Centre: p, Radius: -3, Pen: hidden}, drawing.Arc{Centre: p, Radius: 5, Pen: hidden},
		drawing.Arc{Centre: p, Radius: 5, Sweep: 100, Pen: hidden}, drawing.Arc{Centre: p, Radius: 5, Sweep: -1, Pen: hidden},
		drawing.Write(p, "", 3.5, drawing.Middle), drawing.Write(p, "   ", 3.5, drawing.Middle), drawing.Mark{At: p},
		drawing.Group{ID: "empty"},
	}}
	mustSVG(t, s)
	mustPDF(t, s)
}
