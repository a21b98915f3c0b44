package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// clipped gives what of the lines, circles, arcs and marks lies in a window.
// Curves that leave it become chains true to a hundredth of a millimetre.
func clipped(items []drawing.Item, window drawing.Rect) []drawing.Item {
	var out []drawing.Item
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Polyline:
			out = append(out, clipChain(x, window)...)
		case drawing.Circle:
			if window.Holds(drawing.Bounds([]drawing.Item{x})) {
				out = append(out, x)
				continue
			}
			pts := arcPoints(x.Centre, x.Radius, 0, 2*math.Pi)
			out = append(out, clipChain(drawing.Polyline{Points: pts, Pen: x.Pen}, window)...)
		case drawing.Arc:
			pts := arcPoints(x.Centre, x.Radius, x.From, x.Sweep)
			out = append(out, clipChain(drawing.Polyline{Points: pts, Pen: x.Pen}, window)...)
		case drawing.Mark:
			if window.Holds(drawing.Rect{Min: x.At, Max: x.At}) {
				out = append(out, x)
			}
		}
	}
	return out
}

func arcPoints(c geom.Vec, r unit.Length, from, sweep unit.Angle) []geom.Vec {
	const sag = 0.01
	step := 2 * math.Acos(1-math.Min(1, sag/math.Max(float64(r), sag)))
	n := max(4, int(math.Ceil(math.Abs(float64(sweep))/step)))
	pts := make([]geom.Vec, n+1)
	for i := range pts {
		pts[i] = c.Add(geom.V(r, 0).Turn(from + sweep*unit.Angle(i)/unit.Angle(n)))
	}
	return pts
}

// clipChain gives the pieces of a chain inside a window.
func clipChain(x drawing.Polyline, window drawing.Rect) []drawing.Item {
	pts := x.Points
	if x.Closed {
		whole := true
		for _, p := range pts {
			whole = whole && window.Holds(drawing.Rect{Min: p, Max: p})
		}
		if whole {
			return []drawing.Item{x}
		}
		pts = append(pts[:len(pts):len(pts)], pts[0])
	}
	var out []drawing.Item
	var chain []geom.Vec
	flush := func() {
		if len(chain) > 1 {
			out = append(out, drawing.Polyline{Points: chain, Pen: x.Pen})
		}
		chain = nil
	}
	for i := 1; i < len(pts); i++ {
		a, b, ok := clipLine(window, pts[i-1], pts[i])
		if !ok {
			flush()
			continue
		}
		if len(chain) == 0 || a.Sub(chain[len(chain)-1]).Len() > 1e-6 {
			flush()
			chain = []geom.Vec{a}
		}
		chain = append(chain, b)
	}
	flush()
	return out
}
