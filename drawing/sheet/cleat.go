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

// legName says what is drilled: a leg of an angle, or from which side a cleat is.
func (m *maker) legName(p *model.Part, leg model.Leg) string {
	switch {
	case p.Cleat == nil:
		return m.pass(string(leg))
	case leg == model.WallLeg:
		return m.say("through to the wall")
	}
	return m.say("up through the top")
}

// across says from where the holes of a leg are measured across the bar.
func (m *maker) across(p *model.Part, leg model.Leg) string {
	switch {
	case p.Cleat == nil:
		return m.say("y from heel")
	case leg == model.WallLeg:
		return m.say("y from top")
	}
	return m.say("y from wall")
}

// cleatSheets gives one sheet per distinct cleat; equal ones share it.
func cleatSheets(m *maker) []page {
	var out []page
	for _, p := range m.distinct(func(p *model.Part) bool { return p.Cleat != nil }) {
		out = append(out, m.of(p.ID).cleatSheet(p)...)
	}
	return out
}

// cleatSheet is all that it takes to make one batten: face and top in views that
// stand exactly below each other, the holes as tables, and what to know.
func (m *maker) cleatSheet(p *model.Part) []page {
	return m.barSheet(p, "cleat-"+stem(p.ID), fmt.Sprint(p.Mark), m.say("part drawing, wood"), m.sayf("%s, %s, planed", m.pass(p.Material), m.profile(p.Cleat)), m.cleatChapter(p))
}

// profile is the section of a cleat in the unit of the job.
func (m *maker) profile(c *model.CleatPart) string {
	return m.length(c.Wide) + " x " + m.length(c.High)
}

// cleatChapter gives a cleat at a scale.
func (m *maker) cleatChapter(p *model.Part) func(drawing.Scale) chapter {
	v := newBarView(m, p)
	section := []block{m.pictured(v.cleatSection(m.b.Design.Part(p.Cleat.Under)), topRight, drawing.Scale{Paper: 1, Real: 1}, drawing.Scale{Paper: 1, Real: 2})}
	var details []block
	for _, d := range v.ends() {
		details = append(details, m.pictured(d, topRight, drawing.Scale{Paper: 1, Real: 2}))
	}
	texts := m.barTable(p).blocks("cleat", m.say("Cleat"), m.lines)
	texts = append(texts, m.holeTables(p)...)
	texts = append(texts, notesBlock("notes", m.say("Notes"), m.cleatNotes(p)))
	return func(s drawing.Scale) chapter {
		if small(s) {
			return chapter{pictures: v.legs(s), beside: slices.Concat(section, details, texts)}
		}
		return chapter{pictures: v.legs(s), beside: slices.Concat(section, texts)}
	}
}

// ofCleat adds what a view of a cleat has and that of an angle has not: its height or
// its width, and where the grain runs.
func (v *barView) ofCleat(p picture, leg model.Leg) picture {
	length, deep := v.on.Length, v.deep(leg)
	p.ask = append(p.ask, dim.Linear{A: geom.V(length, 0), B: geom.V(length, -deep), Dir: dim.Vertical, Side: dim.RightOf})
	edge := v.m.say("top: carries the slab")
	if leg == model.SeatLeg {
		edge = v.m.say("back: to the wall")
	}
	p.ask = append(p.ask, dim.Note{At: geom.V(length*3/4, 0), Lines: []string{edge}, OnEdge: true})
	return p
}

// cleatSection is the section of a cleat, seen from end A, so that the wall is on the
// left, with the lines of its holes and the slab that lies on it.
func (v *barView) cleatSection(slab *model.Part) picture {
	c := v.c
	p := picture{id: "profile", title: v.m.say("Section, seen from end A"), paint: v.m.usual(v.stage), style: v.m.steelStyle()}
	p.view = view.Of(v.stage.scene, view.Section(geom.Line{P: geom.V(v.clearOfHoles(), 0), D: geom.V(0, -1)}))
	pose := c.Pose()
	edge := unit.Length(0) // of the slab, off the wall
	for _, span := range slab.Outline().Inside(pose.Plan(geom.V(v.clearOfHoles(), 0)), pose.Plan(geom.V(v.clearOfHoles(), -c.Wide))) {
		edge = c.Wide * unit.Length(span[0])
		break
	}
	p.extra = func(pl dim.Plate) []drawing.Item {
		at := func(x, y unit.Length) geom.Vec { return paperAt(pl, geom.V(x, y)) }
		g := v.m.lines
		const past unit.Length = 9 // of wall and slab beyond the cleat, on paper
		out := []drawing.Item{
			drawing.Line(at(0, -c.High).Sub(geom.V(0, 0.7)), at(0, -c.High).Sub(geom.V(0, past)), g.Adjacent()),
			drawing.Write(at(0, -c.High).Add(geom.V(-1.5, -past)), v.m.say("wall"), drawing.Small, drawing.Right),
			drawing.Line(at(edge, 0).Add(geom.V(0, 0.7)), at(edge, 0).Add(geom.V(0, past)), g.Adjacent()),
			drawing.Line(at(c.Wide, 0).Add(geom.V(0.7, 0)), at(c.Wide, 0).Add(geom.V(past+6, 0)), g.Adjacent()),
			drawing.Write(at(c.Wide, 0).Add(geom.V(4, 1.2)), v.m.say("slab"), drawing.Small, drawing.Left),
		}
		for _, y := range v.lines(model.WallLeg) {
			out = append(out, drawing.Line(at(0, -y).Sub(geom.V(2.5, 0)), at(c.Wide, -y).Add(geom.V(2.5, 0)), g.Centre()))
		}
		for _, y := range v.lines(model.SeatLeg) {
			out = append(out, drawing.Line(at(y, -c.High).Sub(geom.V(0, 2.5)), at(y, 0).Add(geom.V(0, 2.5)), g.Centre()))
		}
		return out
	}
	p.ask = []dim.Request{
		dim.Linear{A: geom.V(0, -c.High), B: geom.V(c.Wide, -c.High), Dir: dim.Horizontal, Side: dim.Below},
		dim.Linear{A: geom.V(0, 0), B: geom.V(0, -c.High), Dir: dim.Vertical, Side: dim.LeftOf},
	}
	for _, y := range v.lines(model.WallLeg) {
		p.ask = append(p.ask, dim.Linear{A: geom.V(0, 0), B: geom.V(0, -y), Dir: dim.Vertical, Side: dim.LeftOf, Label: dim.Label{Suffix: " W"}})
	}
	for _, y := range v.lines(model.SeatLeg) {
		p.ask = append(p.ask, dim.Linear{A: geom.V(0, -c.High), B: geom.V(y, -c.High), Dir: dim.Horizontal, Side: dim.Below, Label: dim.Label{Suffix: " S"}})
	}
	return p
}

// cleatNotes are what must not go wrong with a cleat.
func (m *maker) cleatNotes(p *model.Part) []string {
	c := p.Cleat
	mark := m.sayf("A is the left end as seen from the room. Mark it, the top and item no. %d on the batten.", p.Mark)
	if cut := p.Cut; cut != nil {
		out := []string{m.sayf("Already cut on %s: do not cut. The length is the one measured on the batten.", cut.On), mark}
		if cut.WallHoles == nil || cut.ScrewHoles == nil {
			out = append(out, m.say("Holes that are not there yet: drill them as drawn."))
		}
		return append(out, m.passEach(c.Moved)...)
	}
	out := []string{
		mark,
		m.say("The grain runs along the batten: straight, no knot at an edge or at a hole. The best edge is the top."),
		m.sayf("It goes between fixed ends: length %s %s.", m.length(c.Length), m.shorter()),
		m.say("Drill the holes into the wall square to the face, those for the screws square to the top, both before mounting; they must not meet."),
	}
	for _, h := range c.Holes {
		if h.Slot > 0 {
			out = append(out, m.say("Slots: two holes and what is between them sawn out; across = from the wall to the room, along = with the batten. The slab moves in them; keep their direction."))
			break
		}
	}
	out = append(out, m.passEach(c.Moved)...)
	for _, s := range c.Unmatched {
		out = append(out, capital(m.pass(s))+".")
	}
	return append(out, m.sayf("Chamfer the front edge below by %s, so that no splinter stands out; the end that meets a wall is slightly undercut.", m.length(2)))
}
