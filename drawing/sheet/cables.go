package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

// cableSheets shows the ways of all cables from above, with the schedules of
// cables and channels, and the lights with their feeds.
func cableSheets(m *maker) []page {
	w := m.b.Job.Wiring
	tops := m.worktops()
	if len(w.Cables)+len(w.Lights) == 0 || len(tops) == 0 {
		return nil
	}
	plan := wire.Of(m.b.Design, w)
	pg := m.new("cables", m.say("Cables, seen from above"))
	pg.block.DocumentType = m.say("wiring plan")
	out := m.withNotes(pg, m.cableShot(tops, plan), m.cableKey, "cables-key", m.say("Cables, seen from above"))
	return append(out, m.cableSchedule(plan)...)
}

// cableSchedule lists cables, channels and lights.
func (m *maker) cableSchedule(plan wire.Plan) []page {
	f := newListing(m, "cable-schedule", m.say("Cables and lights"))
	f.table(m.say("Cables"), m.cableTable(plan), asIs)
	if len(plan.Channels) > 0 {
		f.table(m.say("Holes and grooves with cables in them"), m.channelTable(plan), asIs)
	}
	f.notes(m.say("Before you act"), []string{
		m.say("Cables are clipped under the slab along the steel and lie behind the knees. Sizes and places of holes and grooves: channel plans of the slabs."),
		m.say("Mains: fixed wiring by a licensed electrician to the local code, power off and tested before work, no joints in closed wood. Mains keeps 50 mm from other cables and shares no channel with them."),
	})
	m.lights(f, plan)
	return f.pages(m.say("wiring plan"))
}

// cableShot is the room from above with everything thin but the cables.
func (m *maker) cableShot(tops []*model.Part, plan wire.Plan) shot {
	level := planLevel(tops)
	s := &stage{}
	s.addParts(m.parts(func(p *model.Part) bool { return p.Slab != nil && p.Bounds().Min.Z < level })...)
	w := m.planWindow(tops)
	v := window(view.Of(s.scene, view.PlanAt(level+1)), w, func(st view.Stroke) bool { return st.Kind != view.Hidden })
	p := shot{picture: picture{id: "cables", title: m.say("Cables, seen from above"), view: v, paint: m.faint(s), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := m.planWalls(pl, level, w)
		out = append(out, m.below(pl, level), m.above(pl, level), m.planObstacles(pl, w), m.underGrooves(pl))
		return append(out, m.ways(pl, plan)...)
	}
	for i, r := range plan.Runs {
		if r.Found {
			p.rings = append(p.rings, ring{id: "cable-number-" + fmt.Sprint(i+1), number: m.cableNumber(i), places: overWay(r), inside: true})
		}
	}
	for _, d := range m.b.Job.Wiring.Devices {
		if at, ok := deviceAt(d.Name, plan); ok {
			p.tags = append(p.tags, tag{d.Name, at})
		}
	}
	return p
}

// faint draws what is seen with narrow lines: cables are the wide ones.
func (m *maker) faint(s *stage) paint {
	p := m.usual(s)
	pen := p.pen
	p.pen = func(st view.Stroke) (drawing.Pen, bool) {
		l, drawn := pen(st)
		l.Width = m.lines.Narrow
		return l, drawn
	}
	return p
}

func (m *maker) cableNumber(i int) string { return m.sayf("c%d", i+1) }

// cablePen tells the classes of cables apart without colour.
func (m *maker) cablePen(c model.CableClass) drawing.Pen {
	dash := map[model.CableClass]drawing.Dash{model.Mains: drawing.LongDashDot, model.LowVoltage: drawing.Dashed, model.Data: drawing.Dotted}
	return drawing.Pen{Width: m.lines.Wide, Dash: dash[c]}
}

// ways draws each cable, and a filled square where it ends.
func (m *maker) ways(pl dim.Plate, plan wire.Plan) []drawing.Item {
	const half unit.Length = 1
	var out []drawing.Item
	for i, r := range plan.Runs {
		if !r.Found {
			continue
		}
		g := drawing.Group{ID: "cable-" + stem(r.Cable.Name), Title: m.cableNumber(i) + " " + r.Cable.Name}
		var pts []geom.Vec
		for _, p := range r.Points {
			if q := paperAt(pl, p.Flat()); len(pts) == 0 || q.Sub(pts[len(pts)-1]).Len() > 0.05 {
				pts = append(pts, q)
			}
		}
		if len(pts) > 1 {
			g.Items = append(g.Items, drawing.Polyline{Points: pts, Pen: m.cablePen(r.Cable.Class)})
		}
		for _, end := range [2]geom.Vec{pts[0], pts[len(pts)-1]} {
			box := drawing.Box(end.X-half, end.Y-half, 2*half, 2*half)
			g.Items = append(g.Items, drawing.Area{Loops: [][]geom.Vec{box.Corners()}})
		}
		out = append(out, g)
	}
	return out
}

// underGrooves draws the grooves in the undersides, dashed.
func (m *maker) underGrooves(pl dim.Plate) drawing.Item {
	g := drawing.Group{ID: "cables-grooves", Title: m.say("grooves")}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		for _, f := range p.Slab.Features {
			if f.Kind != model.Groove || f.Face != model.UnderFace {
				continue
			}
			for _, l := range f.Mouth().Place(p.Slab.Pose).Loops() {
				g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Hidden()))
			}
		}
	}
	return g
}

// overWay gives places in the middle of the longer pieces of a way.
func overWay(r wire.Run) []geom.Vec {
	var out []geom.Vec
	for i := range r.Pieces {
		a, b := r.Points[i].Flat(), r.Points[i+1].Flat()
		if n := int(b.Sub(a).Len() / 100); n > 0 {
			for k := range n {
				out = append(out, a.Lerp(b, (float64(k)+0.5)/float64(n)))
			}
		}
	}
	if out == nil {
		out = []geom.Vec{r.Points[0].Flat()}
	}
	return out
}

// deviceAt finds the place of a device at an end of a cable.
func deviceAt(name string, plan wire.Plan) (geom.Vec, bool) {
	for _, r := range plan.Runs {
		if r.Found && r.Cable.From == name {
			return r.Points[0].Flat(), true
		}
		if r.Found && r.Cable.To == name {
			return r.Points[len(r.Points)-1].Flat(), true
		}
	}
	return geom.Vec{}, false
}

func (m *maker) cableTable(plan wire.Plan) table {
	t := table{heads: m.heads("no.", "cable", "class // of a cable", "from", "to", "through", "length with slack"), right: []bool{false, false, false, false, false, false, true}}
	for i, r := range plan.Runs {
		length, through := m.say("no way"), "-"
		if r.Found {
			length = m.length(roundUp(r.Needed))
			if names := channelNames(r); len(names) > 0 {
				through = strings.Join(m.passEach(names), ", ")
			}
		}
		t.rows = append(t.rows, []string{m.cableNumber(i), m.sayf("%s Ø%s", m.cableName(r), m.fine(r.Cable.Dia)), m.pass(string(r.Cable.Class)), r.Cable.From, r.Cable.To, through, length})
	}
	return t
}

// roundUp goes to full centimetres, as cable is cut.
func roundUp(l unit.Length) unit.Length { return 10 * unit.Length(math.Ceil(float64(l)/10)) }

func (m *maker) channelTable(plan wire.Plan) table {
	t := table{heads: m.heads("hole or groove", "in // a part", "width", "depth", "fill", "at most"), right: []bool{false, false, true, true, true, true}}
	for _, x := range plan.Channels {
		t.rows = append(t.rows, []string{m.pass(x.Feature), m.pass(x.Slab), m.fine(x.Width), m.fine(x.Depth), m.style.Number(100*x.Fill, 0) + " %", m.style.Number(100*x.Most, 0) + " %"})
	}
	return t
}

// cableName is the name of a cable; feeds are named by the planner.
func (m *maker) cableName(r wire.Run) string {
	switch {
	case r.Feeds == "":
		return r.Cable.Name
	case r.ToDimmer:
		return m.sayf("lead to the dimmer of %s", r.Feeds)
	}
	if strings.HasPrefix(r.Cable.Name, "second") {
		return m.sayf("second feed of %s", r.Feeds)
	}
	return m.sayf("feed of %s", r.Feeds)
}

func channelNames(r wire.Run) []string {
	var out []string
	for _, p := range r.Pieces {
		if p.Feature != "" && !slices.Contains(out, p.Feature) {
			out = append(out, p.Feature)
		}
	}
	return out
}

// cableKey shows the line of each class.
func (m *maker) cableKey(f *flow) {
	const pitch, sample = 5, 18
	at := f.corner()
	var items []drawing.Item
	for i, c := range model.CableClasses {
		y := at.Y - 3 - unit.Length(i)*pitch
		items = append(items, drawing.Line(geom.V(at.X, y), geom.V(at.X+sample, y), m.cablePen(c)),
			drawing.Write(geom.V(at.X+sample+3, y-drawing.Small/2), m.pass(string(c)), drawing.Small, drawing.Left))
	}
	f.put("cables-key", m.say("Lines"), items, 3*pitch+3)
	f.text("cables-notes", "", m.say("Numbers in rings: cable schedule. Dashed: grooves and steel below. Double-dotted: shelves above."))
}
