package render_test

import (
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/render"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// BenchmarkSVG draws one crowded A3 sheet.
func BenchmarkSVG(b *testing.B) {
	s := crowded(1)
	for b.Loop() {
		if _, err := render.SVG(s); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPDF draws a set of 20 crowded A3 sheets; the time per sheet is
// reported as well.
func BenchmarkPDF(b *testing.B) {
	var sheets []drawing.Sheet
	for i := range 20 {
		sheets = append(sheets, crowded(i+1))
	}
	for b.Loop() {
		if _, err := render.PDF(sheets, render.Meta{Title: "set"}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N*len(sheets)), "ms/sheet")
}

// crowded is the demonstration sheet with forty more dimensions.
func crowded(number int) drawing.Sheet {
	s := demo(drawing.A3, number)
	room := drawing.Free(drawing.A3)[0]
	for i := range 40 {
		a := room.Min.Add(geom.V(210, unit.Length(4+5*i)))
		s.Add(size(a, a.Add(geom.V(120, 0)), -4, "1234 ±0.5")...)
	}
	return s
}
