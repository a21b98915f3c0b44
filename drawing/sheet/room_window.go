package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// paperAt is where a point of a view lies on the paper.
func paperAt(pl dim.Plate, v geom.Vec) geom.Vec {
	return pl.Origin.Add(geom.V(pl.Scale.Of(v.X), pl.Scale.Of(v.Y)))
}

// paperChain is paperAt for a chain of points.
func paperChain(pl dim.Plate, pts []geom.Vec) []geom.Vec {
	return mapped(pts, func(v geom.Vec) geom.Vec { return paperAt(pl, v) })
}

// window gives the part of a view inside a rectangle, without the items that
// are not wanted.
func window(v view.View, r drawing.Rect, want func(view.Stroke) bool) view.View {
	out := view.View{Bounds: r}
	for _, s := range v.Segments {
		if !want(s.Stroke) {
			continue
		}
		if a, b, ok := clipLine(r, s.A, s.B); ok {
			s.A, s.B = a, b
			out.Segments = append(out.Segments, s)
		}
	}
	frame := geom.Rect(r.Min, r.Max)
	for _, c := range v.Cuts {
		if !want(view.Stroke{Item: c.Item, Kind: view.Cut}) {
			continue
		}
		c.Loops = loopsRegion(c.Loops).Intersect(frame).Loops()
		if len(c.Loops) > 0 {
			out.Cuts = append(out.Cuts, c)
		}
	}
	return out
}

// loopsRegion is the region inside loops, outlines counter-clockwise and holes
// clockwise.
func loopsRegion(loops [][]geom.Vec) geom.Region {
	var solid, holes []geom.Region
	for _, l := range loops {
		if turns(l) > 0 {
			solid = append(solid, geom.Polygon(l...))
		} else {
			holes = append(holes, geom.Polygon(l...))
		}
	}
	return geom.UnionAll(solid...).Minus(holes...)
}

// clipLine gives the part of a line inside a rectangle (Liang and Barsky, ACM
// Transactions on Graphics 3(1), 1984).
func clipLine(r drawing.Rect, a, b geom.Vec) (geom.Vec, geom.Vec, bool) {
	d := b.Sub(a)
	t0, t1 := 0.0, 1.0
	for _, e := range [...][2]unit.Length{
		{-d.X, a.X - r.Min.X}, {d.X, r.Max.X - a.X}, {-d.Y, a.Y - r.Min.Y}, {d.Y, r.Max.Y - a.Y},
	} {
		p, q := float64(e[0]), float64(e[1])
		switch {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	if t0 >= t1 {
		return a, b, false
	}
	return a.Lerp(b, t0), a.Lerp(b, t1), true
}
