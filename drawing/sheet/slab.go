package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// slabSheets gives the sheets of every slab: the top face with all that is
// needed to cut it out, the underside with its holes and grooves, and the edges
// that are bored.
func slabSheets(m *maker) []page {
	var out []page
	list := m.parts(func(p *model.Part) bool { return p.Slab != nil })
	count := map[int]int{}
	for _, p := range list {
		count[p.Mark]++
	}
	for _, p := range list {
		if n := count[p.Mark]; n > 0 {
			count[p.Mark] = 0 // equal slabs share their sheets
			out = append(out, m.slabPages(p, n)...)
		}
	}
	return out
}

func (m *maker) slabPages(p *model.Part, pieces int) []page {
	w := m.of(p.ID).workpiece(p)
	w.pieces = pieces
	list := []chapter{w.topChapter()}
	if w.worked(model.UnderFace) {
		list = append(list, w.underChapter())
	}
	if c, bored := w.edgeChapter(); bored {
		list = append(list, c)
	}
	title := fmt.Sprintf("%d  %s", p.Mark, m.pass(p.ID))
	if pieces > 1 {
		title += m.sayf(" (make %d)", pieces)
	}
	pages := m.pages("slab-"+stem(p.ID), title, list)
	for i := range pages {
		b := &pages[i].block
		b.DocumentType = m.say("part drawing, wood")
		b.Material = m.sayf("%s, t = %s", m.pass(p.Material), m.length(p.Slab.Thickness))
		b.Mass = m.kg(p.Mass())
		for k := range p.Slab.Edges {
			if w.betweenWalls(k) {
				b.Tolerance = m.sayf("wood ±%s, thickness ±%s, between walls +0/-%s", m.within(0.5), m.within(0.3), m.within(1))
			}
		}
	}
	m.alreadyCut(pages, p)
	return pages
}

// workpiece is a slab on its way to its sheets, in its own axes: x along the
// reference edge A from its left end B, y across, below 0.
type workpiece struct {
	*maker
	part    *model.Part
	slab    *model.SlabPart
	pieces  int // equal ones to be made
	solid   geom.Solid
	stage   *stage
	corners []geom.Vec // of the top face
	details []detail
}

// detail is a section at a large scale, named by a letter.
type detail struct {
	letter string
	key    string // what it shows; equal work shares a detail
	face   model.Face
	pic    picture
}

func (m *maker) workpiece(p *model.Part) *workpiece {
	w := &workpiece{maker: m, part: p, slab: p.Slab, stage: &stage{}}
	w.solid = own(p.Bodies[0].Solid, p.Slab.Pose)
	it := view.Item{ID: stem(p.ID), Title: p.ID, Mark: p.Mark, Role: view.Made, Faces: w.solid.Faces(), DropHidden: true}
	w.stage.add(it, p, nil)
	for i := range w.slab.Edges {
		top, _ := w.slab.Course(i)
		w.corners = append(w.corners, top[0])
	}
	w.findDetails()
	return w
}

// wood is the look of dimensions on the sheets of slabs.
func (m *maker) wood() dim.Style {
	s := dim.Wood
	if m.lines == drawing.Dense {
		s = s.Dense()
		s.First, s.Next = 8, 6 // a small sheet: never under 6
	}
	return s
}

// worked tells whether there is blind work in a face.
func (w *workpiece) worked(face model.Face) bool {
	for _, f := range w.slab.Features {
		if f.Kind != model.Bore && f.Face == face {
			return true
		}
	}
	return false
}

// betweenWalls tells whether an edge runs from a wall to a wall, so that it may
// come out shorter but never longer.
func (w *workpiece) betweenWalls(i int) bool {
	e, n := w.slab.Edges, len(w.slab.Edges)
	return w.part.Cut == nil && e[(i+n-1)%n].Bound == model.ToWall && e[(i+1)%n].Bound == model.ToWall && !e[i].Waney
}

// reference gives the ends of datum edge A, left and right.
func (w *workpiece) reference() (left, right geom.Vec, index int) {
	for i, e := range w.slab.Edges {
		if e.Reference {
			return w.corners[i], w.corners[(i+1)%len(w.corners)], i
		}
	}
	return w.corners[0], w.corners[1%len(w.corners)], 0
}

// look is the view of a face. The lines of the arrises are left out: they would
// only thicken the outline, and the details show them. flip is 1 from above and -1 from
// below, where y points the other way.
func (w *workpiece) look(l view.Look, flip unit.Length) view.View {
	scene := view.Scene{Items: append([]view.Item(nil), w.stage.scene.Items...)}
	for _, f := range w.slab.Features {
		if f.Kind == model.Bore {
			scene.Items[0].DropHidden = false // bores are seen dashed
		}
	}
	outline := w.slab.TopOutline()
	return w.withoutArrises(view.Of(scene, l), func(p geom.Vec) unit.Length { return -outline.DistanceTo(geom.V(p.X, p.Y*flip)) })
}

// withoutArrises leaves out the lines beside the outline that the eased arrises
// make; depth is how far a point lies inside the outline.
func (w *workpiece) withoutArrises(v view.View, depth func(geom.Vec) unit.Length) view.View {
	var widest unit.Length
	for _, e := range w.slab.Edges {
		widest = max(widest, e.Ease)
	}
	if widest == 0 {
		return v
	}
	keep := v.Segments[:0]
	for _, s := range v.Segments {
		a, b := depth(s.A), depth(s.B)
		if s.Curved || max(a, b) > 1.5*widest || max(a, b) < 0.05 {
			keep = append(keep, s)
		}
	}
	v.Segments = keep
	return v
}

// onPaper gives where points of the slab lie on a plate; flip as in look.
func onPaper(pl dim.Plate, flip unit.Length) func(geom.Vec) geom.Vec {
	return func(v geom.Vec) geom.Vec {
		return pl.Origin.Add(geom.V(pl.Scale.Of(v.X), pl.Scale.Of(v.Y*flip)))
	}
}

// fromPaper is the reverse of onPaper.
func fromPaper(pl dim.Plate, flip unit.Length) func(geom.Vec) geom.Vec {
	return func(p geom.Vec) geom.Vec {
		v := p.Sub(pl.Origin).Mul(float64(pl.Scale.Real) / float64(pl.Scale.Paper))
		return geom.V(v.X, v.Y*flip)
	}
}

// numbers writes the number of every corner outside the corner, where nothing
// else stands and no figure is so near that both read as one.
func (w *workpiece) numbers(pl dim.Plate, t *taken, flip unit.Length) []drawing.Item {
	const off, apart = 4.2, 2.5
	at, n := onPaper(pl, flip), len(w.corners)
	outline := w.slab.TopOutline().Union(w.slab.UnderOutline())
	outside := func(r drawing.Rect) bool { return !outline.Contains(fromPaper(pl, flip)(r.Centre())) }
	lone := func(r drawing.Rect) bool {
		return outside(r) && !slices.ContainsFunc(t.boxes, r.Grow(apart).Meets)
	}
	var out []drawing.Item
	for i, c := range w.corners {
		to := w.corners[(i+1)%n].Sub(c).Unit()
		from := w.corners[(i+n-1)%n].Sub(c).Unit()
		away := to.Sub(from).Unit().Left() // the outline runs clockwise: outside is on the left
		near := at(c).Add(geom.V(away.X, away.Y*flip).Mul(off))
		text := drawing.Write(near, w.slab.Corners[i], drawing.Standard, drawing.Middle).Strong()
		for _, q := range []struct {
			reach unit.Length
			fits  func(drawing.Rect) bool
		}{{11, lone}, {11, outside}, {18, outside}, {28, outside}} {
			room := drawing.Rect{Min: near, Max: near}.Grow(q.reach)
			if r, ok := t.nearest(room, near, text.Width(), text.Height, 0.5, q.fits); ok {
				text.At = r.Centre()
				break
			}
		}
		t.take(text)
		out = append(out, text)
	}
	return out
}

// signs writes what looks for a free spot on a face: the numbers of corners and
// holes, and the grain.
func (w *workpiece) signs(pl dim.Plate, t *taken, face model.Face, flip unit.Length) []drawing.Item {
	out := w.numbers(pl, t, flip)
	out = append(out, w.holeNumbers(pl, t, face, flip)...)
	return append(out, w.grain(pl, t, flip)...)
}

// grain puts the arrow along the fibre where nothing else stands, as near to the
// middle of the face as it can.
func (w *workpiece) grain(pl dim.Plate, t *taken, flip unit.Length) []drawing.Item {
	at := onPaper(pl, flip)
	outline := w.slab.TopOutline()
	back := fromPaper(pl, flip)
	within := func(r drawing.Rect) bool {
		for _, c := range r.Corners() {
			if !outline.Contains(back(c)) {
				return false
			}
		}
		return true
	}
	least := drawing.TextWidth(w.say("grain"), drawing.Small) + 1
	for _, long := range []unit.Length{30, 22, 15} {
		long = max(long, least)
		if r, ok := t.spot(pl.Body, at(outline.Centroid()), long, 5.5, 1, within); ok {
			return w.grainArrow(r)
		}
	}
	below := drawing.Rect{Min: pl.Body.Min.Sub(geom.V(0, 60)), Max: pl.Body.Max}
	anywhere := func(drawing.Rect) bool { return true }
	if r, ok := t.spot(below, pl.Body.Centre(), max(22, least), 5.5, 1.5, anywhere); ok {
		return w.grainArrow(r)
	}
	return nil
}

func (w *workpiece) grainArrow(r drawing.Rect) []drawing.Item {
	pen := w.lines.Outline()
	y := r.Min.Y + 1
	a, b := geom.V(r.Min.X, y), geom.V(r.Max.X, y)
	return []drawing.Item{
		drawing.Line(a.Add(geom.V(1, 0)), b.Sub(geom.V(1, 0)), pen),
		drawing.Mark{Kind: drawing.Arrow, At: a, Dir: geom.V(-1, 0), Pen: pen},
		drawing.Mark{Kind: drawing.Arrow, At: b, Dir: geom.V(1, 0), Pen: pen},
		drawing.Write(geom.V(r.Centre().X, y+1.5), w.say("grain"), drawing.Small, drawing.Centre),
	}
}
