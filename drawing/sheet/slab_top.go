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

// topChapter shows the top face: the outline with sides, diagonals and angles,
// the natural edge at its stations, and the work that is done from above.
func (w *workpiece) topChapter() chapter {
	pic := picture{id: "top-face", title: w.say("Top face, visible side"), view: w.look(view.Plan(), 1), paint: w.usual(w.stage), style: w.wood()}
	pic.ask = append(w.outlineDims(), w.natural()...)
	pic.ask = append(pic.ask, w.work(model.TopFace, 1)...)
	pic.extra = func(pl dim.Plate) []drawing.Item {
		return append(w.squareSigns(pl, 1), w.crosses(pl, model.TopFace, 1)...)
	}
	pic.after = func(pl dim.Plate, t *taken) []drawing.Item { return w.signs(pl, t, model.TopFace, 1) }
	c := chapter{name: "top", title: w.say("top face"), pictures: []picture{pic}}
	c.beside = append(c.beside, w.edgeTable().blocks("edges", w.say("Edges"), w.lines)...)
	c.beside = append(c.beside, w.cornerTable().blocks("corners", w.say("Corners of the top face, square from A and B"), w.lines)...)
	c.beside = append(c.beside, w.stationTable().blocks("stations", w.say("Natural edge: widths from A"), w.lines)...)
	c.beside = append(c.beside, w.holeTable(model.TopFace).blocks("holes-top", w.say("Holes in the top face"), w.lines)...)
	c.beside = append(c.beside, w.workBlocks(model.TopFace)...)
	c.beside = append(c.beside, w.detailBlocks(model.TopFace)...)
	c.beside = append(c.beside, notesBlock("make", w.say("How to make it"), w.makeNotes()), notesBlock("act", w.say("Before you act"), w.cautions()))
	return c
}

// outlineDims gives all straight sides, both diagonals of a quadrilateral, the
// angles at the ends of the reference edge and the datum signs.
func (w *workpiece) outlineDims() []dim.Request {
	var ask []dim.Request
	n := len(w.corners)
	for i, e := range w.slab.Edges {
		a, b := w.corners[i], w.corners[(i+1)%n]
		var l dim.Label
		if w.betweenWalls(i) {
			l.Tolerance = w.shorter()
		}
		l.Reference = e.Waney // from corner to corner, not to be cut
		ask = append(ask, dim.Linear{A: a, B: b, Dir: dim.Aligned, Side: sideOf(a, b), Label: l})
	}
	left, right, ref := w.reference()
	ask = append(ask, dim.Datum{A: left, B: right, Letter: "A"})
	if before := w.corners[(ref+n-1)%n]; ref > 0 {
		ask = append(ask, dim.Datum{A: before, B: left, Letter: "B"})
	}
	if n == 4 {
		ask = append(ask, dim.Across{A: w.corners[0], B: w.corners[2]}, dim.Across{A: w.corners[1], B: w.corners[3]})
	}
	return append(ask, w.squareness()...)
}

// sideOf is the side of the view on which an edge from a to b lies; outlines run
// clockwise.
func sideOf(a, b geom.Vec) dim.Side {
	out := b.Sub(a).Left()
	switch {
	case abs(out.X) > abs(out.Y) && out.X < 0:
		return dim.LeftOf
	case abs(out.X) > abs(out.Y):
		return dim.RightOf
	case out.Y < 0:
		return dim.Below
	}
	return dim.Above
}

// squareness gives how far the ends of the sides stand off the square through
// the ends of the reference edge.
func (w *workpiece) squareness() []dim.Request {
	var ask []dim.Request
	for _, q := range w.squares() {
		if abs(q.off) >= printed {
			ask = append(ask, dim.Linear{A: q.end, B: geom.V(q.vertex.X, q.end.Y), Dir: dim.Horizontal, Side: dim.Below})
		}
	}
	return ask
}

// printed is the least length that does not print as nothing.
const printed unit.Length = 0.05

// square is an end of the reference edge with the side that begins there.
type square struct {
	vertex, along, end geom.Vec
	off                unit.Length // of the side's far end, from the square
}

func (w *workpiece) squares() []square {
	left, right, ref := w.reference()
	n := len(w.corners)
	var out []square
	for _, q := range []square{{vertex: left, along: right, end: w.corners[(ref+n-1)%n]}, {vertex: right, along: left, end: w.corners[(ref+2)%n]}} {
		if side := w.slabSide(q.vertex, q.end); side {
			q.off = q.end.X - q.vertex.X
			out = append(out, q)
		}
	}
	return out
}

// slabSide tells whether an edge runs away from the reference edge rather than
// on beside it.
func (w *workpiece) slabSide(from, to geom.Vec) bool {
	return abs(to.Y-from.Y) > abs(to.X-from.X)
}

// squareSigns marks the corners at the reference edge that are square.
func (w *workpiece) squareSigns(pl dim.Plate, flip unit.Length) []drawing.Item {
	const size = 3.5
	at := onPaper(pl, flip)
	var out []drawing.Item
	for _, q := range w.squares() {
		if abs(q.off) < printed {
			v, a, b := at(q.vertex), at(q.along).Sub(at(q.vertex)).Unit().Mul(size), at(q.end).Sub(at(q.vertex)).Unit().Mul(size)
			out = append(out, drawing.Polyline{Points: []geom.Vec{v.Add(a), v.Add(a).Add(b), v.Add(b)}, Pen: w.lines.Fine()})
		}
	}
	return out
}

// workName is the name of a cut in lines that find room on a view.
func (w *workpiece) workName(name string) []string {
	h := w.wood().Height
	return nameLines(name, h, 16*h, 2)
}

// work gives holes, cut-outs and pockets of a face by running dimensions from A
// and B, and their sizes. Pilots and grooves have schemes of their own.
func (w *workpiece) work(face model.Face, flip unit.Length) []dim.Request {
	var ask []dim.Request
	var xs, ys []geom.Vec
	at := func(v geom.Vec) geom.Vec { return geom.V(v.X, v.Y*flip) }
	named := map[string]bool{}
	for _, f := range w.slab.Features {
		through := f.Kind == model.Through || f.Kind == model.CutOut
		switch {
		case through && face == model.UnderFace, !through && f.Face != face:
			continue // holes through the slab are dimensioned once, from above
		case f.Kind == model.Through:
			xs, ys = append(xs, at(f.At)), append(ys, at(f.At))
			if key := fmt.Sprint(f.Dia, f.For); !named[key] {
				named[key] = true
				ask = append(ask, dim.Diameter{Centre: at(f.At), Dia: f.Dia, Count: w.count(f), Label: dim.Label{Suffix: " " + w.serving(w.say("through"), f.For)}})
			}
		case f.Kind == model.CutOut || f.Kind == model.Pocket:
			lo, hi := f.Outline.Bounds()
			xs, ys = append(xs, at(lo), at(hi)), append(ys, at(lo), at(hi))
			depth := w.say("through")
			if f.Kind == model.Pocket {
				depth = w.sayf("%s deep", w.length(f.Depth))
			}
			ask = append(ask, dim.Note{At: at(f.Outline.Centroid()), Lines: append(w.workName(w.pass(string(f.Kind))+" "+w.pass(f.Name)), w.serving(depth, f.For))})
		}
	}
	ask = append(ask, w.pilots(face, flip)...)
	ask = append(ask, w.grooves(face, flip)...)
	near := dim.Above
	if flip < 0 {
		near = dim.Below
	}
	ask = append(ask, fromB(geom.V(0, 0), near, xs...)...)
	return append(ask, w.fromNearEnd(flip, ys...)...)
}

// serving adds what a piece of work is for.
func (m *maker) serving(text, what string) string {
	if what == "" {
		return text
	}
	return text + ", " + m.pass(what)
}

// count is how many holes are like this one.
func (w *workpiece) count(f model.Feature) int {
	n := 0
	for _, g := range w.slab.Features {
		if g.Kind == f.Kind && g.Dia == f.Dia && g.For == f.For {
			n++
		}
	}
	return n
}
