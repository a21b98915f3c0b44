package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// loadSheets show what the worktops carry: what every bracket has to take,
// where a person stands worst, and how the slab then sinks. Shelves stand in the
// tables.
func loadSheets(m *maker) []page {
	tops := m.worktops()
	if len(tops) == 0 {
		return nil
	}
	pg := m.new("loads", m.say("Load and support plan"))
	pg.block.DocumentType = m.say("arrangement")
	return m.withNotes(pg, m.loadShot(tops), m.loadNotes, "loads-tables", m.say("Loads and supports"))
}

func (m *maker) statics() *hold.Statics { return hold.Of(m.b.Design, m.b.Job) }

func (m *maker) loadShot(tops []*model.Part) shot {
	level := planLevel(tops)
	s := &stage{}
	s.addParts(tops...)
	w := m.planWindow(tops)
	v := window(view.Of(s.scene, view.PlanAt(level+1)), w, func(st view.Stroke) bool { return st.Kind != view.Hidden })
	p := shot{picture: picture{id: "loads", title: m.say("Worktops from above; lines of equal sinking, a person at the cross"), view: v, paint: m.usual(s), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := append(m.planWalls(pl, level, w), m.carrierOutlines(pl))
		for _, t := range tops {
			if b, ok := m.statics().Of(t.ID); ok && b.Trouble == "" {
				out = append(out, m.sinking(pl, b))
			}
		}
		return out
	}
	for _, t := range tops {
		p.ask = append(p.ask, m.loadDims(t)...)
	}
	p.tags = m.cornerTags(w)
	return p
}

// carrierOutlines draws brackets and legs under the worktops, dashed.
func (m *maker) carrierOutlines(pl dim.Plate) drawing.Item {
	g := drawing.Group{ID: "loads-carriers", Title: m.say("carriers below")}
	for _, p := range m.parts(func(p *model.Part) bool { return m.carriesTop(p) || p.Post != nil }) {
		for _, l := range outlines(p.Footprint()) {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Hidden()))
		}
	}
	return g
}

// footSize is the place on which a person stands, 100 x 100 mm.
const footSize unit.Length = 100

// sinking draws lines of equal sinking, the deepest in a wide line, and a cross
// where the person stands.
func (m *maker) sinking(pl dim.Plate, b hold.Slab) drawing.Item {
	g := drawing.Group{ID: "loads-sinking-" + stem(b.Part), Title: m.sayf("how %s sinks", b.Part)}
	for i, c := range b.Contours {
		pen := m.lines.Fine()
		if i == len(b.Contours)-1 {
			pen = m.lines.Outline()
		}
		for _, l := range c.Lines {
			g.Items = append(g.Items, drawing.Polyline{Points: paperChain(pl, l), Pen: pen})
		}
	}
	if _, ok := b.Case(hold.PersonSinks); ok {
		h := footSize / 2
		for _, d := range []geom.Vec{geom.V(h, h), geom.V(h, -h)} {
			g.Items = append(g.Items, drawing.Line(paperAt(pl, b.Standing.Sub(d)), paperAt(pl, b.Standing.Add(d)), m.lines.Outline()))
		}
	}
	return g
}

// loadDims names the lines, the person and what every carrier takes.
func (m *maker) loadDims(p *model.Part) []dim.Request {
	var ask []dim.Request
	for _, l := range p.Outline().Loops()[:1] {
		ask = append(ask, dim.Caption{Loop: l, Lines: []string{m.pass(p.ID)}})
	}
	b, ok := m.statics().Of(p.ID)
	if !ok || b.Trouble != "" {
		return ask
	}
	if c, ok := b.Case(hold.PersonSinks); ok {
		ask = append(ask, dim.Note{At: b.Standing, Lines: []string{m.say("person worst here:"), m.sayf("sinks by %s", m.sinks(c.Sinks()))}})
	}
	for i, c := range b.Contours {
		ask = append(ask, dim.Note{At: labelPlace(c, i), Lines: []string{m.sinks(c.Down)}, OnEdge: true})
	}
	for _, c := range b.Carried() {
		ask = append(ask, dim.Note{At: m.carrierPlace(c), Lines: []string{m.sayf("%s: %s kN", m.pass(c.Carrier), m.kilonewtons(c.Force))}, OnEdge: true})
	}
	return ask
}

// labelPlace is on the longest of a contour's lines, further along from one
// contour to the next.
func labelPlace(c hold.Contour, i int) geom.Vec {
	longest := slices.MaxFunc(c.Lines, func(a, b []geom.Vec) int { return len(a) - len(b) })
	return longest[(len(longest)-1)*(i+1)/(mostLabels+1)]
}

const mostLabels = 6

// carrierPlace is in the middle of a carrier, on the edge of its leg.
func (m *maker) carrierPlace(c hold.Carried) geom.Vec {
	p := m.b.Design.Part(c.Carrier)
	b := p.Bracket()
	if b == nil {
		return p.Centroid().Flat()
	}
	return b.Pose().Plan(geom.V(b.On().Length/2, -b.Deep()))
}

func (m *maker) kilonewtons(n float64) string { return m.style.Number(n/1000, 2) }

// sinks writes a deflection; small ones are too small for fractions of an inch.
func (m *maker) sinks(l unit.Length) string {
	if l < 3 {
		return m.fine(l)
	}
	return m.length(l)
}

// loadNotes sets what is assumed, what the slabs do and what the carriers take.
func (m *maker) loadNotes(f *flow) {
	s := m.statics()
	l := s.Loads
	f.grid("loads-assumed", m.say("Loads taken"), grid{pitch: 5, heads: m.heads("load // on a slab", "size // of a load"), right: []bool{false, true}, rows: [][]string{
		{m.say("person on 100 x 100 mm, anywhere"), m.kg(l.Person)},
		{m.say("climbing up, times its weight"), m.style.Number(l.Step, 2)},
		{m.say("on worktops, for years"), m.sayf("%s kg/m²", m.style.Number(l.Worktop, 0))},
		{m.say("on shelves, for years"), m.sayf("%s kg/m²", m.style.Number(l.Shelf, 0))},
		{m.say("strength class of the wood"), l.Grade},
		{m.say("service class"), fmt.Sprint(l.Service)},
	}})
	f.grid("loads-slabs", m.say("What the slabs do"), m.slabRows(s))
	f.grid("loads-runs", m.say("What every carrier has to take at most"), m.carrierRows(s))
	f.text("loads-cautions", "",
		m.say("Sinks: how far, of how much is allowed. Along and across the grain: share of the design strength; above 100 % across it takes a piece without crack, pith or knots, see report.md."),
		m.sayf("Forces are with partial factors %s and %s and need not come at the same time. Slabs rest on supports that only push; screws as drawn hold down. Anchors are chosen by their approval, in that wall.", m.style.Number(1.35, 2), m.style.Number(1.5, 2)),
		m.say("An estimate and no certificate. A load test before anybody stands on it; nobody jumps on it. Local codes come first."))
}

func (m *maker) slabRows(s *hold.Statics) grid {
	t := grid{pitch: 5, heads: m.heads("slab", "sinks in years", "sinks under a person", "along // the grain", "across // the grain", "Hz"), right: []bool{false, true, true, true, true, true}}
	for _, b := range s.Slabs {
		if b.Trouble != "" {
			t.rows = append(t.rows, []string{b.Part, m.say("not known"), "", "", "", ""})
			continue
		}
		person := "–"
		if c, ok := b.Case(hold.PersonSinks); ok {
			person = m.ofAllowed(c.Sinks(), check.SagUnderPerson(b))
		}
		t.rows = append(t.rows, []string{m.pass(b.Part), m.ofAllowed(b.Years, check.SagInYears(b)), person,
			m.used(b, func(c hold.Case) hold.Peak { return c.Along }), m.used(b, func(c hold.Case) hold.Peak { return c.Across }), m.style.Number(b.First, 0)})
	}
	return t
}

// ofAllowed writes a deflection with what is allowed of it.
func (m *maker) ofAllowed(l, allowed unit.Length) string {
	return m.sayf("%s of %s", m.sinks(l), m.sinks(allowed))
}

// used is the largest share of a strength in all design cases, in percent.
func (m *maker) used(b hold.Slab, of func(hold.Case) hold.Peak) string {
	var most float64
	for _, c := range b.Cases {
		if c.Design {
			most = max(most, of(c).Used())
		}
	}
	return m.style.Number(100*most, 0) + " %"
}

func (m *maker) carrierRows(s *hold.Statics) grid {
	t := grid{pitch: 5, heads: m.heads("carrier", "kN", "N/mm", "screw, kN"), right: []bool{false, true, true, true}}
	for _, b := range s.Slabs {
		for _, c := range b.Carried() {
			t.rows = append(t.rows, []string{m.pass(c.Carrier), m.kilonewtons(c.Force), m.style.Number(c.PerMM, 1), m.kilonewtons(c.Pull)})
		}
	}
	return t
}
