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

// movementSheets show the worktops from above as they move over the year: the
// line that stands still, the screws that hold it and those that go with the
// wood, and the gaps of the dry and the damp season.
func movementSheets(m *maker) []page {
	tops := m.worktops()
	if len(tops) == 0 {
		return nil
	}
	pg := m.new("movement", m.say("Movement plan: how the wood swells and shrinks"))
	pg.block.DocumentType = m.say("arrangement")
	return m.withNotes(pg, m.movementShot(tops), m.movementNotes, "movement-tables", m.say("Movement: screws and slots"))
}

func (m *maker) movementShot(tops []*model.Part) shot {
	level := planLevel(tops)
	s := &stage{}
	s.addParts(tops...)
	w := m.planWindow(tops)
	v := window(view.Of(s.scene, view.PlanAt(level+1)), w, func(st view.Stroke) bool { return st.Kind != view.Hidden })
	p := shot{picture: picture{id: "movement", title: m.say("Worktops from above; slots are shown larger than they are"), view: v, paint: m.usual(s), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := append(m.planWalls(pl, level, w), m.angleOutlines(pl))
		for _, t := range tops {
			out = append(out, m.stillLine(pl, t))
		}
		return out
	}
	for _, t := range tops {
		p.ask = append(p.ask, m.movementDims(t)...)
	}
	for _, t := range tops {
		p.rings = append(p.rings, ring{id: "movement-number-" + stem(t.ID), number: fmt.Sprint(t.Mark), places: spread(t.Outline().Loops()[0])})
	}
	p.tags = m.cornerTags(w)
	return p
}

// angleOutlines draws the brackets under the worktops, dashed.
func (m *maker) angleOutlines(pl dim.Plate) drawing.Item {
	g := drawing.Group{ID: "movement-steel", Title: m.say("brackets below")}
	for _, p := range m.parts(func(p *model.Part) bool { return m.carriesTop(p) }) {
		for _, l := range outlines(p.Footprint()) {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Hidden()))
		}
	}
	return g
}

// carriesTop tells whether a part is a bracket under a worktop.
func (m *maker) carriesTop(p *model.Part) bool {
	if p.Bracket() == nil {
		return false
	}
	slab := m.b.Design.Part(p.Bracket().On().Under)
	return slab != nil && slab.Kind == model.KindSlab
}

// movementOf is how a slab moves; a slab of a design is always found.
func (m *maker) movementOf(p *model.Part) model.Movement {
	v, err := m.b.Design.Movement(p.ID)
	if err != nil {
		panic(err)
	}
	return v
}

// Signs of screws on the movement plan, on paper.
const (
	heldSign  unit.Length = 0.9
	slotSign  unit.Length = 2.4 // from middle to middle of its round ends
	slotWidth unit.Length = 1.1
)

// stillLine draws the line of a slab that stands still, the screws in round
// holes as full circles and the others as slots that lie as they move.
func (m *maker) stillLine(pl dim.Plate, p *model.Part) drawing.Item {
	g := drawing.Group{ID: "movement-hold-" + stem(p.ID), Title: m.sayf("what holds %s", p.ID)}
	v := m.movementOf(p)
	sp := p.Slab
	at := func(own geom.Vec) geom.Vec { return paperAt(pl, sp.Pose.Plan(own)) }
	if v.Held.By != model.ByNone {
		low, high := sp.TopOutline().Bounds()
		line := geom.V(low.X, v.Held.At.Y)
		for _, span := range sp.TopOutline().Inside(line, geom.V(high.X, v.Held.At.Y)) {
			long := high.X - low.X
			a, b := geom.V(low.X+long*unit.Length(span[0]), v.Held.At.Y), geom.V(low.X+long*unit.Length(span[1]), v.Held.At.Y)
			g.Items = append(g.Items, drawing.Line(at(a), at(b), m.lines.Centre()))
		}
	}
	for _, s := range v.Screws {
		c := at(s.At)
		if s.Hole.Slot == 0 {
			g.Items = append(g.Items, drawing.Mark{Kind: drawing.Dot, At: c, Dir: geom.V(1, 0), Size: 2 * heldSign})
			continue
		}
		way := s.Through.Bracket().On().Wall.Chord().D.Unit()
		if !s.Hole.Along {
			way = way.Left()
		}
		half := way.Mul(float64(slotSign / 2))
		for _, l := range geom.Slot(c.Sub(half), c.Add(half), slotWidth, 0.02).Loops() {
			g.Items = append(g.Items, drawing.Outline(l, m.lines.Fine()))
		}
	}
	return g
}

// movementDims says at every edge what its gap becomes, or how far it goes
// where nothing is before it, and where the still line is.
func (m *maker) movementDims(p *model.Part) []dim.Request {
	v := m.movementOf(p)
	sp := p.Slab
	var ask []dim.Request
	for _, e := range v.Edges {
		lines := []string{m.sayf("%s edge: %s out, %s in", m.pass(e.Name), m.length(e.Out), m.length(e.In))}
		if e.Bound == model.ToWall || e.Bound == model.ToPart {
			lines = []string{
				m.sayf("%s: gap %s", m.pass(e.Name), m.length(e.Gap)),
				m.sayf("damp %s, dry %s", m.length(e.Gap-e.Out), m.length(e.Gap+e.In)),
			}
		}
		ask = append(ask, dim.Note{At: sp.Pose.Plan(e.Start.Lerp(e.End, 0.15)), Lines: lines, OnEdge: true})
	}
	if v.Held.By != model.ByNone && v.Held.At.Y < -1 {
		length, _ := sp.Blank()
		x := length * 0.7
		ask = append(ask, dim.Across{A: sp.Pose.Plan(geom.V(x, 0)), B: sp.Pose.Plan(geom.V(x, v.Held.At.Y))})
	}
	for _, l := range p.Outline().Loops()[:1] {
		ask = append(ask, dim.Caption{Loop: l, Lines: []string{m.pass(p.ID)}})
	}
	return ask
}

// movementNotes sets the slots and the year beside the plan.
func (m *maker) movementNotes(f *flow) {
	slots := grid{pitch: 5, heads: m.heads("bracket", "holes for its screws"), right: []bool{false, false}}
	var year string
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		v := m.movementOf(p)
		year = m.sayf("The wood has %s %% moisture when it is fitted, %s %% in the dry season and %s %% in the damp one.", m.content(v.Fitting), m.content(v.Dry), m.content(v.Damp))
		if len(v.Untold) > 0 {
			year += " " + m.sayf("Assumed, because nobody told: %s.", strings.Join(m.passEach(v.Untold), ", "))
		}
		slots.rows = append(slots.rows, m.slotRows(v)...)
	}
	if len(slots.rows) > 0 {
		f.grid("movement-slots", m.say("Screws: round holes hold, slots let go"), slots)
	}
	f.text("movement-year", "", year,
		m.say("Chain line: stands still. Full dot: screw in a round hole, tight. Slot: wide washer, driven tight and turned back a quarter; look again after the first winter."))
}

// slotRows has a row for every bracket: its holes of one size together.
func (m *maker) slotRows(v model.Movement) [][]string {
	var out [][]string
	for i, s := range v.Screws {
		size := m.holeSize(s.Hole)
		if i == 0 || v.Screws[i-1].Through != s.Through {
			out = append(out, []string{m.pass(s.Through.ID), s.Hole.Name + " " + size})
			continue
		}
		row := out[len(out)-1]
		if m.holeSize(v.Screws[i-1].Hole) == size {
			row[1] = strings.TrimSuffix(row[1], " "+size) + ", " + s.Hole.Name + " " + size
			continue
		}
		row[1] += "; " + s.Hole.Name + " " + size
	}
	return out
}
