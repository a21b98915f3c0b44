package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// cleatTemplates gives the top and the face of every distinct cleat that one sheet
// shows whole. Longer ones are drilled from figures.
func cleatTemplates(m *maker, set *templateSet) {
	room := templateRoom()
	whole := room.Width() - 2*aroundBar
	for _, p := range m.distinct(func(p *model.Part) bool { return p.Cleat != nil }) {
		switch c := p.Cleat; {
		case len(c.Holes) == 0:
		case c.Length > whole || c.Wide+c.High+2*aroundBar > room.Height():
			set.leave(m.sayf("Cleats longer than %s: drill them from the figures on their sheets.", m.length(unit.Length(math.Floor(float64(whole))))))
		default:
			set.add(m.cleatTemplate(p))
		}
	}
}

// cleatTemplate unfolds top and face about the upper front edge: x along the batten
// from end A, the top above the edge and the face below it, both seen from outside.
func (m *maker) cleatTemplate(p *model.Part) *template {
	c := p.Cleat
	t := &template{name: m.sayf("item %d, %s", p.Mark, m.pass(p.ID)),
		use: m.sayf("Fold along the upper front edge, stick it on top and face, punch the holes through it. %s", m.pieces(len(m.b.Design.Alike(p))))}
	t.shape = geom.Rect(geom.V(-aroundBar, -c.High-aroundBar), geom.V(c.Length+aroundBar, c.Wide+aroundBar))
	end := geom.V(c.Length, 0)
	t.lines = append(t.lines,
		drawing.Line(geom.V(0, 0), end, drawing.Dense.Centre()),
		drawing.Polyline{Points: []geom.Vec{{}, geom.V(0, c.Wide), geom.V(c.Length, c.Wide), end}, Pen: drawing.Dense.Outline()},
		drawing.Polyline{Points: []geom.Vec{{}, geom.V(0, -c.High), geom.V(c.Length, -c.High), end}, Pen: drawing.Dense.Outline()})
	for _, h := range c.Holes {
		at := geom.V(h.X, -h.FromHeel)
		if h.Leg == model.SeatLeg {
			at.Y = c.Wide - h.FromHeel
		}
		m.unfoldedHole(t, h, at)
	}
	t.labels = append(t.labels,
		note(geom.V(c.Length/2, 0), geom.V(0, 1), m.say("fold here; top; figures: from end A | from the wall")),
		note(geom.V(c.Length/2, 0), geom.V(0, -1), m.say("face to the room; figures: from end A | from the top")),
		label{lines: []string{m.say("END A")}, at: geom.V(0, 0), toward: geom.V(1, 0.4), upright: true, strong: true, reach: 25})
	return t
}
