package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// readDrawn enters what is already on the paper.
func (f *field) readDrawn(items []drawing.Item) {
	var rest []drawing.Item
	var walk func(items []drawing.Item)
	walk = func(items []drawing.Item) {
		for _, it := range items {
			switch x := it.(type) {
			case drawing.Group:
				walk(x.Items)
			case drawing.Hatch:
				f.addArea(x.Loops, false)
			default:
				rest = append(rest, it)
			}
		}
	}
	walk(items)
	drawing.Plot(drawing.Sheet{Items: rest}, reader{f})
}

func (f *field) addArea(loops [][]geom.Vec, dark bool) {
	var pts []geom.Vec
	for _, l := range loops {
		pts = append(pts, l...)
	}
	if len(pts) > 0 {
		f.areas = append(f.areas, area{loops, around(pts), dark})
	}
}

// around is the smallest rectangle around points; there must be one.
func around(pts []geom.Vec) drawing.Rect {
	r := drawing.Rect{Min: pts[0], Max: pts[0]}
	for _, p := range pts[1:] {
		r = r.Union(drawing.Rect{Min: p, Max: p})
	}
	return r
}

// reader turns strokes, fills and texts into obstacles.
type reader struct{ f *field }

func (reader) Begin(string, string) {}
func (reader) End()                 {}

func (r reader) Lines(chains [][]geom.Vec, closed bool, s drawing.Stroke) {
	for _, c := range chains {
		for i := 1; i < len(c); i++ {
			r.f.addLine(newLine(c[i-1], c[i], s.Width/2, edge))
		}
		if closed && len(c) > 2 {
			r.f.addLine(newLine(c[len(c)-1], c[0], s.Width/2, edge))
		}
	}
}

func (r reader) Arc(c geom.Vec, radius unit.Length, from, sweep unit.Angle, s drawing.Stroke) {
	r.Lines([][]geom.Vec{arcChain(c, radius, from, sweep)}, false, s)
}

func (r reader) Fill(loops [][]geom.Vec, ink drawing.Ink) {
	r.f.addArea(loops, ink.Darkness() >= 0.5)
}

func (r reader) Write(t drawing.Text) {
	if b := quadBox(t.Quad()); b.hw > 0 && b.hh > 0 {
		r.f.addBox(b)
	}
}

// arcChain is an arc as a chain of lines, true to 0.05 mm.
func arcChain(c geom.Vec, radius unit.Length, from, sweep unit.Angle) []geom.Vec {
	const sag = 0.05
	step := 2 * math.Acos(1-math.Min(0.5, sag/math.Max(float64(radius), sag)))
	n := max(1, int(math.Ceil(math.Abs(float64(sweep))/step)))
	pts := make([]geom.Vec, n+1)
	for i := range pts {
		pts[i] = c.Add(geom.V(radius, 0).Turn(from + sweep*unit.Angle(i)/unit.Angle(n)))
	}
	return pts
}
