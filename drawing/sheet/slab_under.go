package sheet

import (
	"fmt"
	"strings"

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
	pic := picture{id: "underside", title: w.say("Underside, turned over its long edge"), view: w.look(view.Below(), -1), paint: w.usual(w.stage), style: w.wood()}
	left, right, ref := w.reference()
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, -v.Y) }
	pic.ask = []dim.Request{dim.Datum{A: at(left), B: at(right), Letter: "A"}}
	if ref > 0 {
		pic.ask = append(pic.ask, dim.Datum{A: at(left), B: at(w.corners[ref-1]), Letter: "B"})
	}
	pic.ask = append(pic.ask, w.work(model.UnderFace, -1)...)
	pic.extra = func(pl dim.Plate) []drawing.Item { return w.crosses(pl, model.UnderFace, -1) }
	pic.after = func(pl dim.Plate, t *taken) []drawing.Item { return w.signs(pl, t, model.UnderFace, -1) }
	c := chapter{name: "underside", title: w.say("underside"), pictures: []picture{pic}}
	c.beside = append(c.beside, w.holeTable(model.UnderFace).blocks("holes", w.say("Blind holes from the underside, square from A and B"), w.lines)...)
	c.beside = append(c.beside, w.workBlocks(model.UnderFace)...)
	c.beside = append(c.beside, w.detailBlocks(model.UnderFace)...)
	return c
}

// mostDimensioned is the number of blind holes of a row that are dimensioned in
// the view.
const mostDimensioned = 12

// drilled gives the blind holes of a face, grouped by what they belong to: the
// rows that are dimensioned in the view, and the holes that are numbered and
// stand in a table.
func (w *workpiece) drilled(face model.Face) (rows [][]model.Feature, rest []model.Feature) {
	var groups [][]model.Feature
	place := map[string]int{}
	for _, f := range w.slab.Features {
		if f.Kind != model.Pilot || f.Face != face {
			continue
		}
		k, seen := place[f.For]
		if !seen {
			k = len(groups)
			place[f.For] = k
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], f)
	}
	for _, g := range groups {
		if (w.level(g) || w.upright(g)) && len(g) <= mostDimensioned {
			rows = append(rows, g)
		} else {
			rest = append(rest, g...)
		}
	}
	return rows, rest
}

// level tells whether holes share one distance from A, as printed; a row that
// is a little askew needs two figures for every hole, which a table gives.
func (w *workpiece) level(row []model.Feature) bool {
	for _, h := range row {
		if w.length(h.At.Y) != w.length(row[0].At.Y) {
			return false
		}
	}
	return sameHole(row)
}

// upright tells whether holes share one distance from B, as printed.
func (w *workpiece) upright(row []model.Feature) bool {
	for _, h := range row {
		if w.length(h.At.X) != w.length(row[0].At.X) {
			return false
		}
	}
	return sameHole(row)
}

func sameHole(row []model.Feature) bool {
	for _, h := range row {
		if h.Dia != row[0].Dia || h.Depth != row[0].Depth {
			return false
		}
	}
	return true
}

// pilots dimensions the straight rows of blind holes: one distance for the row,
// running dimensions along it.
func (w *workpiece) pilots(face model.Face, flip unit.Length) []dim.Request {
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, v.Y*flip) }
	_, right, _ := w.reference()
	near := dim.Above
	if flip < 0 {
		near = dim.Below
	}
	var ask []dim.Request
	rows, _ := w.drilled(face)
	for _, r := range rows {
		var pts []geom.Vec
		for _, h := range r {
			pts = append(pts, at(h.At))
		}
		if w.level(r) {
			ask = append(ask, fromB(geom.V(0, 0), near, pts...)...)
			last := pts[len(pts)-1]
			ask = append(ask, dim.Linear{A: geom.V(right.X, 0), B: last, Dir: dim.Vertical, Side: dim.RightOf})
		} else {
			side, beside := dim.LeftOf, geom.V(0, 0)
			if r[0].At.X > right.X/2 {
				side, beside = dim.RightOf, geom.V(right.X, 0)
			}
			ask = append(ask, fromA(beside, side, flip, pts...)...)
			ask = append(ask, fromB(geom.V(0, 0), near, pts[0])...)
		}
		size := dim.Label{Suffix: " × " + w.serving(w.sayf("%s deep", w.length(r[0].Depth)), r[0].For)}
		ask = append(ask, dim.Diameter{Centre: pts[len(pts)/2], Dia: r[0].Dia, Count: len(pts), Label: size})
	}
	return ask
}

// holeName names a blind hole on the sheet.
func holeName(i int) string { return fmt.Sprintf("P%d", i+1) }

// holeTable lists the blind holes of a face that are not dimensioned in the
// view.
func (w *workpiece) holeTable(face model.Face) table {
	t := table{heads: w.heads("hole", "x from B", "y from A", "Ø", "deep", "for"), right: []bool{false, true, true, true, true, false}}
	_, rest := w.drilled(face)
	for i, f := range rest {
		t.rows = append(t.rows, []string{holeName(i), w.length(f.At.X), w.length(-f.At.Y), w.length(f.Dia), w.length(f.Depth), w.holding(f)})
	}
	return t
}

// holeNumbers writes the numbers of the table beside the holes, where nothing
// else stands.
func (w *workpiece) holeNumbers(pl dim.Plate, t *taken, face model.Face, flip unit.Length) []drawing.Item {
	_, rest := w.drilled(face)
	at := onPaper(pl, flip)
	var out []drawing.Item
	for i, f := range rest {
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
		ask = append(ask, fromB(geom.V(0, 0), dim.Auto, xs...)...)
		ask = append(ask, w.fromNearEnd(flip, ys...)...)
		lines := w.workName(w.sayf("groove %s", w.pass(f.Name)))
		lines[len(lines)-1] += w.see(grooveKey(f))
		lines = append(lines, w.sayf("%s wide, %s deep, %s long", w.length(f.Dia), w.length(f.Depth), w.length(long)))
		if f.Lid != (model.Lid{}) {
			lines = append(lines, w.sayf("rebate for the lid %s wide, %s deep", w.length(f.Lid.Width), w.length(f.Lid.Thick)))
		}
		ask = append(ask, dim.Note{At: at(f.Path[0].Lerp(f.Path[1], 0.35)), Lines: lines})
	}
	return ask
}

// holding says what a pilot hole is for: the bracket and its hole.
func (w *workpiece) holding(f model.Feature) string {
	if hole, ok := strings.CutPrefix(f.Name, f.For+" "); ok {
		return w.pass(f.For) + " " + hole
	}
	return w.pass(f.Name)
}
