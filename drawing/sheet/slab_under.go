package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// underChapter shows the underside as it lies when the slab has been turned over
// its long edge: left stays left, A comes to the bottom.
func (w *workpiece) underChapter() chapter {
	pic := picture{id: "underside", title: "Underside, turned over its long edge", view: w.look(view.Below(), -1), paint: w.usual(w.stage), style: w.wood()}
	left, right, ref := w.reference()
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, -v.Y) }
	pic.ask = []dim.Request{dim.Datum{A: at(left), B: at(right), Letter: "A"}}
	if ref > 0 {
		pic.ask = append(pic.ask, dim.Datum{A: at(left), B: at(w.corners[ref-1]), Letter: "B"})
	}
	pic.ask = append(pic.ask, w.work(model.UnderFace, -1)...)
	pic.extra = func(pl dim.Plate) []drawing.Item {
		return append(w.numbers(pl, -1), w.crosses(pl, model.UnderFace, -1)...)
	}
	pic.after = func(pl dim.Plate, t *taken) []drawing.Item {
		out := w.holeNumbers(pl, t, model.UnderFace, -1)
		t.take(out...)
		return append(out, w.grain(pl, t, -1)...)
	}
	c := chapter{name: "underside", title: "underside", pictures: []picture{pic}}
	c.beside = append(c.beside, w.holeTable(model.UnderFace).blocks("holes", "Blind holes from the underside, square from A and B", w.lines)...)
	c.beside = append(c.beside, w.detailBlocks(model.UnderFace)...)
	return c
}

// mostDimensioned is the number of blind holes up to which they are dimensioned
// in the view; more of them are numbered and stand in a table.
const mostDimensioned = 8

// drilled gives the blind holes of a face.
func (w *workpiece) drilled(face model.Face) []model.Feature {
	var out []model.Feature
	for _, f := range w.slab.Features {
		if f.Kind == model.Pilot && f.Face == face {
			out = append(out, f)
		}
	}
	return out
}

// rowOf is blind holes that belong together and stand in a line along A or
// square to it.
type rowOf struct {
	holes  []model.Feature
	across bool // the row runs square to A
}

// rows groups the blind holes of a face by what they belong to. It tells false
// when a group is no straight row, within what is printed: its holes need two
// figures each, which a table gives.
func (w *workpiece) rows(face model.Face) ([]rowOf, bool) {
	var out []rowOf
	place := map[string]int{}
	list := w.drilled(face)
	for _, f := range list {
		k, seen := place[f.For]
		if !seen {
			k = len(out)
			place[f.For] = k
			out = append(out, rowOf{})
		}
		out[k].holes = append(out[k].holes, f)
	}
	for i := range out {
		r := &out[i]
		level, upright := true, len(r.holes) > 1
		for _, h := range r.holes {
			level = level && w.length(h.At.Y) == w.length(r.holes[0].At.Y)
			upright = upright && w.length(h.At.X) == w.length(r.holes[0].At.X)
		}
		if !level && !upright {
			return nil, false
		}
		r.across = !level
	}
	return out, len(list) <= mostDimensioned
}

// pilots dimensions the rows of blind holes, where that can be done.
func (w *workpiece) pilots(face model.Face, flip unit.Length) []dim.Request {
	rows, ok := w.rows(face)
	if !ok {
		return nil
	}
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, v.Y*flip) }
	_, right, _ := w.reference()
	near := dim.Above
	if flip < 0 {
		near = dim.Below
	}
	var ask []dim.Request
	for _, r := range rows {
		first := r.holes[0]
		var pts []geom.Vec
		for _, h := range r.holes {
			pts = append(pts, at(h.At))
		}
		side, beside := dim.LeftOf, geom.V(0, 0)
		if first.At.X > right.X/2 {
			side, beside = dim.RightOf, geom.V(right.X, 0)
		}
		if r.across {
			ask = append(ask, row(beside, "A", dim.Vertical, side, pts...)...)
			ask = append(ask, row(geom.V(0, 0), "B", dim.Horizontal, near, pts[0])...)
		} else {
			ask = append(ask, row(geom.V(0, 0), "B", dim.Horizontal, near, pts...)...)
			ask = append(ask, dim.Linear{A: beside, B: pts[0], Dir: dim.Vertical, Side: side})
		}
		ask = append(ask, dim.Diameter{Centre: pts[0], Dia: first.Dia, Count: len(pts), Label: dim.Label{Suffix: serving(" × "+w.length(first.Depth)+" deep", first.For)}})
	}
	return ask
}

// tabled tells whether the blind holes of a face are numbered and stand in a
// table.
func (w *workpiece) tabled(face model.Face) bool {
	_, ok := w.rows(face)
	return !ok
}

// holeName names a blind hole on the sheet.
func holeName(i int) string { return fmt.Sprintf("P%d", i+1) }

// holeTable lists the blind holes of a face when they are not dimensioned in the
// view.
func (w *workpiece) holeTable(face model.Face) table {
	t := table{heads: []string{"hole", "x from B", "y from A", "Ø", "deep", "for"}, right: []bool{false, true, true, true, true, false}}
	if !w.tabled(face) {
		return t
	}
	for i, f := range w.drilled(face) {
		t.rows = append(t.rows, []string{holeName(i), w.length(f.At.X), w.length(-f.At.Y), w.length(f.Dia), w.length(f.Depth), f.Name})
	}
	return t
}

// holeNumbers writes the numbers of the table beside the holes, where nothing
// else stands.
func (w *workpiece) holeNumbers(pl dim.Plate, t *taken, face model.Face, flip unit.Length) []drawing.Item {
	if !w.tabled(face) {
		return nil
	}
	at := onPaper(pl, flip)
	var out []drawing.Item
	for i, f := range w.drilled(face) {
		text := drawing.Write(geom.Vec{}, holeName(i), drawing.Small, drawing.Middle)
		q := text.Quad()
		h, wide := q[2].Y-q[0].Y, text.Width()
		near := at(f.At)
		room := drawing.Rect{Min: near.Sub(geom.V(14, 10)), Max: near.Add(geom.V(14, 10))}
		inside := func(r drawing.Rect) bool { return pl.Body.Holds(r) }
		spot, ok := t.nearest(room, near, wide, h, 0.4, inside)
		if !ok {
			spot, ok = t.nearest(room, near, wide, h, 0.2, func(drawing.Rect) bool { return true })
		}
		if !ok {
			continue
		}
		text.At = spot.Centre().Sub(geom.V(0, (q[0].Y+q[2].Y)/2))
		t.take(text)
		out = append(out, text)
	}
	return out
}

// crosses marks the middle of every hole seen on a face, and the centre line of
// every groove.
func (w *workpiece) crosses(pl dim.Plate, face model.Face, flip unit.Length) []drawing.Item {
	at := onPaper(pl, flip)
	pen := w.lines.Fine()
	var out []drawing.Item
	for _, f := range w.slab.Features {
		switch {
		case f.Kind == model.Through || f.Kind == model.Pilot && f.Face == face:
			c, r := at(f.At), max(1.3, pl.Scale.Of(f.Dia/2)+1.5)
			out = append(out, drawing.Line(c.Sub(geom.V(r, 0)), c.Add(geom.V(r, 0)), pen), drawing.Line(c.Sub(geom.V(0, r)), c.Add(geom.V(0, r)), pen))
		case f.Kind == model.Groove && f.Face == face:
			line := mapped(f.Path, at)
			out = append(out, drawing.Polyline{Points: line, Pen: w.lines.Centre()})
		}
	}
	return out
}

// grooves gives the centre line of every groove of a face by running dimensions
// from A and B, and its size.
func (w *workpiece) grooves(face model.Face, flip unit.Length) []dim.Request {
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, v.Y*flip) }
	_, right, _ := w.reference()
	var ask []dim.Request
	for _, f := range w.slab.Features {
		if f.Kind != model.Groove || f.Face != face || len(f.Path) < 2 {
			continue
		}
		var xs, ys []geom.Vec
		long := unit.Length(0)
		for i, p := range f.Path {
			xs = append(xs, at(p))
			if i > 0 {
				long += p.Sub(f.Path[i-1]).Len()
			}
			if i == 0 || w.length(p.Y) != w.length(f.Path[0].Y) {
				ys = append(ys, at(p))
			}
		}
		ask = append(ask, row(geom.V(0, 0), "B", dim.Horizontal, dim.Auto, xs...)...)
		ask = append(ask, row(geom.V(right.X, 0), "A", dim.Vertical, dim.RightOf, ys...)...)
		lines := []string{
			"groove " + f.Name + w.see(grooveKey(f)),
			fmt.Sprintf("%s wide, %s deep, %s long", w.length(f.Dia), w.length(f.Depth), w.length(long)),
		}
		ask = append(ask, dim.Note{At: at(f.Path[0].Lerp(f.Path[1], 0.35)), Lines: lines})
	}
	return ask
}
