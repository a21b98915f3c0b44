package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// betweenTwo is the least distance of two pictures in a column.
const betweenTwo unit.Length = 7

// How far from a view its dimensions may stand.
const (
	widest      unit.Length = 60
	leastMargin unit.Length = 10
)

// smallest is the scale of pictures that do not even fit at it.
var smallest = drawing.Scales[len(drawing.Scales)-1]

// column lays pictures below each other in a room of the sheet, all at the
// largest scale of the series at which they fit, and gives that scale.
func (m *maker) column(room drawing.Rect, pictures ...picture) ([]drawing.Item, drawing.Scale) {
	var last stack
	for _, s := range drawing.Scales {
		if s.Paper > s.Real {
			continue
		}
		st, ok := m.stacked(room.Width(), room.Height(), s, pictures)
		if ok {
			return st.spread(room), s
		}
		last = st
	}
	return last.spread(room), smallest
}

// stack is pictures below each other: the places of their origins, the first
// picture at the top.
type stack struct {
	pictures []drawn
	box      []drawing.Rect // of each when its origin is at its place
	at       []geom.Vec
	w, h     unit.Length
	lacks    int // letterings that have no place of their own
}

// stacked draws pictures at a scale below each other, and tells whether they
// find room.
func (m *maker) stacked(w, h unit.Length, s drawing.Scale, pictures []picture) (stack, bool) {
	n := unit.Length(len(pictures))
	spareX, spareY := w, h-betweenTwo*(n-1)-titleRoom*n
	for _, p := range pictures {
		spareX = min(spareX, w-s.Of(p.view.Bounds.Width()))
		spareY -= s.Of(p.view.Bounds.Height())
	}
	if (spareX < 0 || spareY < 0) && s != smallest {
		return stack{}, false
	}
	if s != smallest && !m.rowsFit(w, h-betweenTwo*(n-1)-titleRoom*n, s, pictures) {
		return stack{}, false
	}
	var best stack
	fits := false
	// Generous margins first; then such that the whole fits for certain.
	for _, margin := range []geom.Vec{{X: spareX, Y: spareY}, {X: spareX, Y: spareY / n}, {X: spareX / 2, Y: spareY / (2 * n)}} {
		margin = geom.V(min(max(margin.X, leastMargin), widest), min(max(margin.Y, leastMargin), widest))
		st := stack{}
		for _, p := range pictures {
			st.add(m.draw(p, s, margin))
		}
		if good := st.w <= w && st.h <= h; !fits || good && st.lacks < best.lacks {
			best, fits = st, good
		}
		if fits && best.lacks == 0 {
			break
		}
	}
	return best, fits
}

// rowsFit tells whether pictures with their rows of dimensions find room below
// each other: soon found, before notes look for their places.
func (m *maker) rowsFit(w, h unit.Length, s drawing.Scale, pictures []picture) bool {
	for _, p := range pictures {
		all := dim.Extent(m.plate(p, s), ruled(p.ask))
		h -= all.Height()
		if all.Width() > w || h < 0 {
			return false
		}
	}
	return true
}

// add puts a picture below the others. Views of the same length stand exactly
// below each other, others middle to middle.
func (st *stack) add(d drawn) {
	at := geom.V(-d.body.Centre().X, -d.box.Max.Y)
	if len(st.pictures) > 0 {
		first := st.pictures[0]
		if abs(first.body.Min.X-d.body.Min.X) < 3 && abs(first.body.Max.X-d.body.Max.X) < 3 {
			at.X = st.at[0].X
		}
		at.Y = -st.h - betweenTwo - d.box.Max.Y
	}
	st.pictures, st.at = append(st.pictures, d), append(st.at, at)
	st.lacks += d.lacks()
	box := drawing.Rect{Min: d.box.Min.Add(at), Max: d.box.Max.Add(at)}
	st.box = append(st.box, box)
	all := st.bounds()
	st.w, st.h = all.Width(), all.Height()
}

func (st *stack) bounds() drawing.Rect {
	all := st.box[0]
	for _, b := range st.box[1:] {
		all = all.Union(b)
	}
	return all
}

// spread puts a stack into a room: in the middle, the spare height shared out
// above, below and between.
func (st *stack) spread(room drawing.Rect) []drawing.Item {
	var out []drawing.Item
	all := st.bounds()
	n := unit.Length(len(st.pictures))
	spare := max(0, room.Height()-st.h) / (n + 1)
	for i, d := range st.pictures {
		down := spare * unit.Length(i+1)
		by := geom.V(room.Centre().X-all.Centre().X, room.Max.Y-all.Max.Y-down)
		out = append(out, d.at(st.at[i].Add(by)))
	}
	return out
}
