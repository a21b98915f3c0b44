package sheet

import (
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// sectionSheets cuts through every seat and through every worktop that no
// seat's section meets. Beside the section stands, true to size or half of it,
// how the slab sits on the wall.
func sectionSheets(m *maker) []page {
	var out []page
	for _, c := range m.cuttings() {
		out = append(out, m.sectionPages(c)...)
	}
	return out
}

func (m *maker) sectionPages(c cutting) []page {
	pg := m.new("section-"+stem(c.name), m.cutTitle(c))
	pg.block.DocumentType = m.say("section")
	free := drawing.Free(m.size)
	left, right := free[0], free[0]
	narrow := len(free) == 1 || free[1].Width() < leastColumn // upright sheets
	if !narrow {                                              // the column beside the title block, and what is above it
		left = drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X, free[0].Max.Y)}
		right.Min.X = left.Max.X + 4
	}
	if narrow {
		pg, _ = m.pictures(pg, m.sectionShot(c))
	} else {
		h := m.hang([]drawing.Rect{left}, m.sectionShot(c))
		pg.sheet.Add(h.items...)
		pg.sheet.Scale = h.scale.String()
	}
	pages := []page{pg}
	more := func() {
		pg := m.new("detail-"+stem(c.name), m.sayf("%s, on the wall", m.cutTitle(c)))
		pg.block.DocumentType = m.say("detail")
		pages = append(pages, pg)
	}
	f := m.down(right).onto(free[0])
	m.sitting(f, c)
	d, ok := m.detailShot(c)
	if narrow && (ok || len(f.items) > 0) {
		more()
	}
	for i, items := range f.pages() {
		if i > 0 {
			more()
		}
		pages[len(pages)-1].sheet.Add(items...)
	}
	if !ok {
		return pages
	}
	scales := []drawing.Scale{{Paper: 1, Real: 1}, {Paper: 1, Real: 2}, {Paper: 1, Real: 5}}
	h := m.hangAt(scales, []drawing.Rect{f.room}, []shot{d})
	if !h.fits {
		more()
		h = m.hangAt(append(scales, roomScales[1:]...), whole(m.size), []shot{d})
	}
	last := &pages[len(pages)-1].sheet
	last.Add(h.items...)
	if len(pages) > 1 {
		last.Scale = h.scale.String()
	}
	return pages
}

// sectioned is a section as it is cut, before anything is said about it.
type sectioned struct {
	shot
	stage  *stage
	walls  upright
	window drawing.Rect
	front  unit.Length
	floor  unit.Length
}

// sectioned cuts a section: what is cut in wide lines and hatched, what lies
// beyond in narrow ones, hidden lines left out.
func (m *maker) sectioned(c cutting) sectioned {
	s := &stage{elevation: true}
	s.addParts(m.parts(func(p *model.Part) bool { return p.RollOut == nil && p.Rod == nil || c.meets(p) })...)
	s.addWalls(m, 6*unit.M)
	s.addObstacles(m.b.Room)
	front := m.frontOf(c)
	walls := m.uprightWalls(c.line, front-3*unit.M, 3*unit.M)
	w := m.sectionWindow(c, walls, front)
	look := view.Section(c.line)
	v := window(view.Of(s.scene, look), w, func(st view.Stroke) bool {
		if s.walls[st.Item] != nil && s.scene.Items[st.Item].Role == view.Wall {
			return st.Kind == view.Visible
		}
		return st.Kind != view.Hidden
	})
	v = m.endless(s, v, look)
	v.Cuts = slices.DeleteFunc(v.Cuts, func(a view.CutArea) bool { return s.parts[a.Item] == nil })
	p := shot{picture: picture{id: "section", title: m.cutTitle(c), view: v, paint: m.cutPaint(s, c.line), style: m.joinery()}}
	return sectioned{shot: p, stage: s, walls: walls, window: w, front: front, floor: m.b.Room.FloorAt(c.at(front))}
}

// sectionShot is the section with the people who sit there and its sizes.
func (m *maker) sectionShot(c cutting) shot {
	s := m.sectioned(c)
	p := s.shot
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := append(s.walls.draw(m, pl, s.window, s.floor), m.floor(pl, s.window, s.floor))
		return append(out, m.legOutlines(pl, c, s.walls)...)
	}
	p.under = func(pl dim.Plate) []drawing.Item {
		return append(m.legFills(pl, c, s.walls), m.figures(pl, c)...)
	}
	p.ask = m.sectionDims(c, s.walls, s.front, s.window)
	p.rings = m.cutRings(s.stage, p.view, s.window)
	return p
}

// sectionWindow shows the worktop, the person before it, what hangs above and
// the wall behind.
func (m *maker) sectionWindow(c cutting, walls upright, front unit.Length) drawing.Rect {
	w := drawing.Rect{Min: geom.V(front-70, -40), Max: geom.V(m.strip(), c.slab.Slab.Top+300)}
	for _, x := range walls.faces {
		if x > front/2 {
			w.Max.X = x + m.strip()
			break
		}
	}
	for _, z := range c.zones {
		if from, _, ok := c.along(z.Plan); ok {
			w.Min.X = min(w.Min.X, from-240)
		}
	}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		if b := p.Bounds(); len(p.Outline().Inside(c.at(w.Min.X), c.at(w.Max.X))) > 0 {
			w.Max.Y = max(w.Max.Y, b.Max.Z+120)
		}
	}
	for _, f := range m.sitters(c) {
		w.Max.Y = max(w.Max.Y, f.head+40)
	}
	if top := m.b.Room.Ceiling; top > 0 {
		w.Max.Y = min(w.Max.Y, top)
	}
	return w
}

// frontOf is where the foremost worktop begins that a section cuts.
func (m *maker) frontOf(c cutting) unit.Length {
	front := min(c.slab.Slab.Front().Start.Y, c.slab.Slab.Front().End.Y)
	if c.seat != nil {
		return front
	}
	for _, p := range m.worktops() {
		if from, _, ok := c.along(p.Outline()); ok {
			front = min(front, from)
		}
	}
	return front
}

// at is the place in the room at a distance along the line of a cutting.
func (c cutting) at(x unit.Length) geom.Vec { return c.line.P.Add(c.line.D.Unit().Mul(float64(x))) }

// along is where the line of a cutting enters and leaves a region.
func (c cutting) along(r geom.Region) (from, to unit.Length, ok bool) {
	const far = 5 * unit.M
	spans := r.Inside(c.at(-far), c.at(far))
	if len(spans) == 0 {
		return 0, 0, false
	}
	return -far + 2*far*unit.Length(spans[0][0]), -far + 2*far*unit.Length(spans[len(spans)-1][1]), true
}

// meets tells whether a cutting goes through a part.
func (c cutting) meets(p *model.Part) bool {
	_, _, ok := c.along(p.Footprint())
	return ok
}

// cutPaint draws what is cut in wide lines, and what lies beyond in narrow
// ones. Wood shows its fibres as the plane meets them.
func (m *maker) cutPaint(s *stage, plane geom.Line) paint {
	p := m.usual(s)
	p.pen = func(st view.Stroke) (drawing.Pen, bool) {
		switch it := s.scene.Items[st.Item]; {
		case it.Role == view.Obstacle || it.Role == view.Ghost || it.Role == view.Zone:
			return m.lines.Adjacent(), true
		case st.Kind == view.Cut:
			return m.lines.Outline(), true
		}
		return m.lines.Fine(), st.Kind == view.Visible
	}
	p.hatch = func(i int) drawing.Pattern {
		q := s.parts[i]
		turn := unit.Angle(0)
		switch {
		case q != nil && q.Slab != nil:
			turn = q.Slab.Pose.Turn
		case q != nil && q.Cleat != nil:
			turn = q.Cleat.Pose().Turn
		default:
			return s.pattern(i)
		}
		fibre := geom.V(1, 0).Turn(turn)
		if math.Abs(fibre.Dot(plane.D.Unit())) > math.Sqrt2/2 {
			return drawing.Pattern{Material: drawing.LongGrain}
		}
		return s.pattern(i)
	}
	return p
}

// cutRings numbers the parts that a view shows, on what is cut of them or on
// their visible lines.
func (m *maker) cutRings(s *stage, v view.View, w drawing.Rect) []ring {
	var out []ring
	for i, p := range s.parts {
		if p == nil {
			continue
		}
		r := ring{id: "number-" + stem(p.ID), number: number(p)}
		for _, c := range v.Cuts {
			if c.Item == i {
				for _, l := range c.Loops {
					r.places = append(r.places, spread(l)...)
				}
			}
		}
		if len(r.places) == 0 {
			r.places = seen(v, i)
		}
		r.places = slices.DeleteFunc(r.places, func(p geom.Vec) bool { return !w.Grow(-2).Holds(drawing.Rect{Min: p, Max: p}) })
		if len(r.places) > 0 {
			out = append(out, r)
		}
	}
	return out
}

// seen gives places on the longer lines of an item.
func seen(v view.View, item int) []geom.Vec {
	var longest unit.Length
	for _, g := range v.Segments {
		if g.Item == item && g.Kind != view.Hidden {
			longest = max(longest, g.B.Sub(g.A).Len())
		}
	}
	var out []geom.Vec
	for _, g := range v.Segments {
		if g.Item == item && g.Kind != view.Hidden && g.B.Sub(g.A).Len() > longest/2 {
			out = append(out, g.A.Lerp(g.B, 0.5), g.A.Lerp(g.B, 0.25), g.A.Lerp(g.B, 0.75))
		}
	}
	return out
}
