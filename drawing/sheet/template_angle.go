package sheet

import (
	"fmt"
	"math"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// aroundBar is the paper beyond the ends and toes of a bar.
const aroundBar unit.Length = 3

// angleTemplates gives the unfolded outer faces of every distinct angle that
// one sheet shows whole. Longer bars are drilled from figures.
func angleTemplates(m *maker, set *templateSet) {
	room := templateRoom()
	whole := room.Width() - 2*aroundBar
	for _, p := range m.distinct(func(p *model.Part) bool { return p.Angle != nil }) {
		switch a := p.Angle; {
		case len(a.Holes) == 0:
		case a.Length > whole || 2*(a.Section.Leg+aroundBar) > room.Height():
			set.leave(m.sayf("Angles longer than %s: taped paper is less true than a tape from end A. Drill them from the figures on their sheets, then mark the wall through the bar.", m.length(unit.Length(math.Floor(float64(whole))))))
		default:
			set.add(m.angleTemplate(p))
		}
	}
}

// angleTemplate unfolds the outer faces about the heel: x along the bar from
// end A, y from the heel, the seat leg below it when the wall leg hangs down.
// The bar is seen from outside: from above, from below when the wall leg stands.
func (m *maker) angleTemplate(p *model.Part) *template {
	a := p.Angle
	t := &template{name: m.sayf("item %d, %s", p.Mark, m.pass(p.ID)),
		use: m.sayf("Fold along the heel, glue it round the outside of the bar, punch the holes through it. %s", m.pieces(len(m.b.Design.Alike(p))))}
	t.shape = geom.Rect(geom.V(-aroundBar, -a.Section.Leg-aroundBar), geom.V(a.Length+aroundBar, a.Section.Leg+aroundBar))
	seat := unit.Length(-1)
	if a.LegUp {
		seat = 1
	}
	tan := func(x unit.Angle) unit.Length { return a.Section.Leg * unit.Length(math.Tan(float64(x))) }
	toe, end := seat*a.Section.Leg, geom.V(a.Length, 0)
	t.lines = append(t.lines,
		drawing.Line(geom.V(0, 0), end, drawing.Dense.Centre()),
		drawing.Polyline{Points: []geom.Vec{{}, geom.V(-tan(a.Left.Mitre), toe), geom.V(a.Length+tan(a.Right.Mitre), toe), end}, Pen: drawing.Dense.Outline()},
		drawing.Polyline{Points: []geom.Vec{{}, geom.V(0, -toe), geom.V(a.Length, -toe), end}, Pen: drawing.Dense.Outline()})
	for _, h := range a.Holes {
		side := seat
		if h.Leg == model.WallLeg {
			side = -seat
		}
		m.unfoldedHole(t, h, geom.V(h.X, side*h.FromHeel))
	}
	leg := m.say("heel: fold here; seat leg, carrying face")
	if a.LegUp {
		leg = m.say("heel: fold here; seat leg, face below")
	}
	t.labels = append(t.labels,
		note(geom.V(a.Length/2, 0), geom.V(0, seat), leg),
		note(geom.V(a.Length/2, 0), geom.V(0, -seat), m.say("wall leg, face to the wall; figures: from end A | from the heel")),
		label{lines: []string{m.say("END A")}, at: geom.V(0, 0), toward: geom.V(1, 0.4), upright: true, strong: true, reach: 25})
	return t
}

// pieces says how many bars a template serves.
func (m *maker) pieces(n int) string {
	if n == 1 {
		return m.say("One piece.")
	}
	return m.sayf("%d pieces.", n)
}

// unfoldedHole draws a hole or slot with its cross, name and place.
func (m *maker) unfoldedHole(t *template, h model.BracketHole, c geom.Vec) {
	along := geom.V(0, 1)
	if h.Along {
		along = geom.V(1, 0)
	}
	half := along.Mul(float64(h.Slot / 2))
	if h.Slot > 0 {
		for _, l := range geom.Slot(c.Sub(half), c.Add(half), h.Dia, 0.01).Loops() {
			t.lines = append(t.lines, drawing.Outline(l, drawing.Dense.Outline()))
		}
	} else {
		t.lines = append(t.lines, drawing.Circle{Centre: c, Radius: h.Dia / 2, Pen: drawing.Dense.Outline()})
	}
	r := h.Dia/2 + h.Slot/2 + 2
	for _, d := range []geom.Vec{geom.V(r, 0), geom.V(0, r)} {
		t.lines = append(t.lines, drawing.Line(c.Sub(d), c.Add(d), drawing.Pen{Width: 0.13}))
	}
	t.labels = append(t.labels, label{lines: []string{fmt.Sprintf("%s %s", h.Name, m.holeSize(h)), fmt.Sprintf("%s | %s", m.length(h.X), m.length(h.FromHeel))},
		at: c.Add(geom.V(r, 0)), toward: geom.V(1, 1), reach: 14})
}
