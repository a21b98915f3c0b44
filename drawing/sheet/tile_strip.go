package sheet

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// templateStrip finishes a sheet of templates: a narrow strip takes the place
// of frame and title block, which would leave little of a small sheet. It has
// the gauges of both directions.
func (m *maker) templateStrip(number, names, parts string) func(drawing.Sheet, drawing.Block) drawing.Sheet {
	return func(s drawing.Sheet, b drawing.Block) drawing.Sheet {
		left, right, low := templatePaper.Space().Min.X, printable.Max.X, printable.Min.Y
		fine := drawing.Dense.Fine()
		items := []drawing.Item{drawing.Line(geom.V(printable.Min.X, low+stripHeight-1.5), geom.V(right, low+stripHeight-1.5), fine)}
		head := drawing.Write(geom.V(left, low+9.6), number+"   "+s.Scale, drawing.Standard, drawing.Left).Strong()
		sheetNo := inStrip(drawing.Write(geom.V(right, low+9.6), b.Number+"   "+m.sayf("sheet %d of %d", s.Number, s.Of), drawing.Standard, drawing.Right))
		room := right - left - head.Width() - sheetNo.Width() - 10
		items = append(items, head, sheetNo)
		if s.Stamp != "" {
			stamp := drawing.Write(geom.V(right-sheetNo.Width()-5, low+10), s.Stamp, drawing.Small, drawing.Right).Strong()
			stamp.Ink = drawing.White
			box := drawing.Box(stamp.At.X-stamp.Width()-1.5, low+8.9, stamp.Width()+3, 4.6)
			items = append(items, drawing.Area{Loops: [][]geom.Vec{box.Corners()}, Ink: drawing.Red}, stamp)
			room -= box.Width() + 3
		}
		what := inStrip(drawing.Write(geom.V(left+head.Width()+5, low+9.6), drawing.Fit(names, drawing.Standard, room), drawing.Standard, drawing.Left))
		items = append(items, what)

		items = append(items, levelGauge(geom.V(left, low))...)
		text := left + 119
		about := b.Owner
		if b.Revision != "" {
			about += m.sayf(", revision %s", b.Revision)
		}
		if b.Surveyed != "" {
			about += m.sayf(", survey of %s", b.Surveyed)
		}
		about += ". " + m.sayf("Tiles %s", parts)
		items = append(items,
			drawing.Write(geom.V(text, low+5), drawing.Fit(about, drawing.Small, right-text), drawing.Small, drawing.Left),
			drawing.Write(geom.V(text, low+0.6), m.say("Print at 100 %, never fit to page. Measure both bars: 100 mm."), drawing.Small, drawing.Left).Strong())
		s.Items = append(append([]drawing.Item{}, s.Items...),
			drawing.Group{ID: "sheet-block", Title: m.say("title"), Items: items},
			drawing.Group{ID: "sheet-frame", Title: m.say("upright gauge"), Items: standingGauge(geom.V(printable.Min.X, 62))})
		return s
	}
}

// gaugeLength stands beside the bars for checking a print, in every language and unit.
const gaugeLength = "100 mm"

// inStrip writes a text smaller whose accents would touch the line over the
// strip.
func inStrip(t drawing.Text) drawing.Text {
	if drawing.Bounds([]drawing.Item{t}).Max.Y > printable.Min.Y+stripHeight-1.8 {
		t.Height = drawing.Small
	}
	return t
}

// levelGauge is a bar of 100 mm with a stroke every 10 and its length.
func levelGauge(start geom.Vec) []drawing.Item {
	items := gaugeBar(start, geom.V(1, 0), geom.V(0, 1))
	return append(items, drawing.Write(start.Add(geom.V(102, 0)), gaugeLength, drawing.Small, drawing.Left).Strong())
}

func standingGauge(start geom.Vec) []drawing.Item {
	items := gaugeBar(start, geom.V(0, 1), geom.V(1, 0))
	return append(items, drawing.Write(start.Add(geom.V(2.9, 102)), gaugeLength, drawing.Small, drawing.Left).Strong().Along(90*unit.Degree))
}

func gaugeBar(start, along, tick geom.Vec) []drawing.Item {
	pen := drawing.Dense.Fine()
	items := []drawing.Item{drawing.Line(start, start.Add(along.Mul(100)), drawing.Normal.Outline())}
	for i := range 11 {
		h := 1.2
		if i%10 == 0 {
			h = 3
		}
		p := start.Add(along.Mul(float64(10 * i)))
		items = append(items, drawing.Line(p, p.Add(tick.Mul(h)), pen))
	}
	return items
}
