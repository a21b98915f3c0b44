package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// planSheets shows the worktops from above, cut over their surface: walls cut
// and hatched, angles and the roll-out table dashed below, shelves above as
// adjacent outlines.
func planSheets(m *maker) []page {
	tops := m.worktops()
	if len(tops) == 0 {
		return nil
	}
	pg := m.new("plan", m.say("Plan, cut above the worktop"))
	pg.block.DocumentType = m.say("arrangement")
	return m.withNotes(pg, m.planShot(tops), func(f *flow) { m.planNotes(f, tops) }, "widths", m.say("Clear widths at the worktop"))
}

// planLevel is the height of the highest worktop: the plan is cut over it.
func planLevel(tops []*model.Part) unit.Length {
	level := tops[0].Slab.Top
	for _, t := range tops {
		level = max(level, t.Slab.Top)
	}
	return level
}

// beyond is how much of the room is shown in front of the worktops.
const beyond unit.Length = 190

// planWindow is the part of the room that the plan shows: the worktops, what
// lies around them, and no more of long walls than needed.
func (m *maker) planWindow(tops []*model.Part) drawing.Rect {
	var w drawing.Rect
	for i, p := range m.parts(func(p *model.Part) bool { return p.Kind != model.KindRod }) {
		b := p.Bounds()
		box := drawing.Rect{Min: b.Min.Flat(), Max: b.Max.Flat()}
		if i == 0 {
			w = box
		}
		w = w.Union(box)
	}
	for _, z := range m.b.Design.Zones {
		lo, hi := z.Plan.Bounds()
		w = w.Union(drawing.Rect{Min: geom.V(w.Min.X, lo.Y), Max: geom.V(w.Max.X, hi.Y)})
	}
	front := w.Min.Y
	w = w.Grow(beyond)
	o := m.origin().At
	w = w.Union(drawing.Rect{Min: o, Max: o})
	room := m.outer(planLevel(tops))
	if r := m.b.Room; !r.Closed { // an open room goes on where nobody measured: both its walls are cut off
		ends := max(r.Corners[0].At.Y, r.Corners[len(r.Corners)-1].At.Y)
		room.Min.Y = min(ends, front)
	}
	return drawing.Rect{Min: geom.V(max(w.Min.X, room.Min.X), max(w.Min.Y, room.Min.Y)), Max: geom.V(min(w.Max.X, room.Max.X), min(w.Max.Y, room.Max.Y))}
}

// outer is the box around the corners of the room with the strips of its walls.
func (m *maker) outer(z unit.Length) drawing.Rect {
	var w drawing.Rect
	for i, c := range m.b.Room.Corners {
		p := drawing.Rect{Min: c.At, Max: c.At}
		if i == 0 {
			w = p
		}
		w = w.Union(p)
	}
	return w.Grow(m.strip() + 10)
}

func (m *maker) planShot(tops []*model.Part) shot {
	level := planLevel(tops)
	s := &stage{}
	s.addParts(m.parts(func(p *model.Part) bool { return p.Bounds().Min.Z < level })...)
	w := m.planWindow(tops)
	v := window(view.Of(s.scene, view.PlanAt(level+1)), w, func(st view.Stroke) bool { return st.Kind != view.Hidden })
	p := shot{picture: picture{id: "plan", title: m.say("Plan, cut above the worktop"), view: v, paint: m.usual(s), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := m.planWalls(pl, level, w)
		return append(out, m.below(pl, level), m.above(pl, level), m.planObstacles(pl, w))
	}
	p.marks = m.sectionMarks(w)
	p.ask = m.planDims(tops, w)
	p.rings = m.planRings(level)
	p.tags = m.cornerTags(w)
	p.flags = m.planFlags()
	return p
}

// below draws what lies under the worktops, dashed.
func (m *maker) below(pl dim.Plate, level unit.Length) drawing.Item {
	g := drawing.Group{ID: "plan-below", Title: m.say("below the worktops")}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Bracket() != nil || p.RollOut != nil || p.Post != nil }) {
		if p.Bounds().Max.Z > level {
			continue
		}
		for _, l := range outlines(p.Footprint()) {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Hidden()))
		}
	}
	return g
}

// above draws the shelves over the cut as neighbours.
func (m *maker) above(pl dim.Plate, level unit.Length) drawing.Item {
	g := drawing.Group{ID: "plan-above", Title: m.say("above the worktops")}
	for _, p := range m.shelves(level) {
		for _, l := range p.Outline().Loops() {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Adjacent()))
		}
	}
	return g
}

// shelves are the shelves over a height, one of those that hang above each
// other.
func (m *maker) shelves(level unit.Length) []*model.Part {
	var out []*model.Part
	for _, p := range m.parts(func(p *model.Part) bool { return p.Kind == model.KindShelf && p.Bounds().Min.Z > level }) {
		twin := false
		for _, q := range out {
			twin = twin || q.Outline().Xor(p.Outline()).Area() < 0.02*p.Outline().Area()
		}
		if !twin {
			out = append(out, p)
		}
	}
	return out
}
