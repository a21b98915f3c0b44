package sheet

import (
	"math"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// cornerLabels says what the lines are and how to use them.
func (m *maker) cornerLabels(t *template, c slabCorner, a, b geom.Vec, left, right []geom.Vec) {
	u, v := a.Unit(), b.Unit()
	dots := min(200, a.Len()-10, b.Len()-10)
	p, q := u.Mul(float64(dots)), v.Mul(float64(dots))
	t.lines = append(t.lines, drawing.Mark{Kind: drawing.Dot, At: p, Size: 1.6}, drawing.Mark{Kind: drawing.Dot, At: q, Size: 1.6})
	radius := min(40, dots/2)
	arc := drawing.Arc{Radius: radius, From: u.Angle(), Sweep: c.angle, Pen: drawing.Dense.Fine()}
	t.lines = append(t.lines, arc)
	mid := u.Add(v).Unit()
	deg := func(x unit.Angle) string { return m.style.Number(x.Degrees(), 2) + "°" }
	t.labels = append(t.labels, note(mid.Mul(float64(radius)), mid, m.sayf("slab %s", deg(c.angle))))
	for _, k := range []struct {
		dir  geom.Vec
		in   geom.Vec
		wall []geom.Vec
		edge model.Edge
		name string
	}{{u, u.Left(), left, c.before, c.left.Name}, {v, v.Left().Mul(-1), right, c.next, c.right.Name}} {
		for _, d := range []unit.Length{15, dots} {
			at := k.dir.Mul(float64(d))
			t.labels = append(t.labels, edgeNote(at, k.dir, k.in, m.sayf("gap %s", m.length(distanceTo(k.wall, at)))))
		}
		text := m.sayf("%s edge; beyond: wall %s", m.pass(k.edge.Name), m.pass(k.name))
		if k.edge.Reference {
			text = m.sayf("%s edge (reference); beyond: wall %s", m.pass(k.edge.Name), m.pass(k.name))
		}
		t.labels = append(t.labels, edgeNote(k.dir.Mul(float64(dots)*0.55), k.dir, k.in, text))
	}
	t.labels = append(t.labels, label{lines: m.cornerSteps(c, p.Sub(q).Len(), deg), at: mid.Mul(float64(radius) + 36), toward: geom.V(mid.X, 0.3*mid.Y), reach: 60})
}

// edgeNote stands beside an edge and reads along it.
func edgeNote(at, along, in geom.Vec, line string) label {
	l := note(at, in, line)
	l.reach = 40
	l.upright = math.Abs(float64(along.Y)) > math.Abs(float64(along.X))
	return l
}

// cornerSteps are what to know and to do, in short lines.
func (m *maker) cornerSteps(c slabCorner, dots unit.Length, deg func(unit.Angle) string) []string {
	walls := m.sayf("Walls %s.", deg(c.room.Angle))
	if sd := c.room.AngleSD; sd > 0 {
		walls = m.sayf("Walls %s ±%s (2 sd).", deg(c.room.Angle), deg(2*sd))
	}
	out := []string{m.sayf("Seen from above, at the surface, %s up.", m.length(c.part.Slab.Top)) + " " + walls,
		m.sayf("Taped well, the two dots are %s apart.", m.length(dots)),
		m.say("1  Cut along the walls, push it into the corner."),
		m.sayf("2  Daylight over %s: measure the room again.", m.named(m.length(2))),
		m.say("3  Cut along the slab's edges and the slope."),
		m.say("4  Mark the slab with it, this side up.")}
	if c.left.Bow != 0 || c.right.Bow != 0 {
		out = append(out, m.say("Dash-dot: straight from corner to corner."))
	}
	if len(c.also) > 0 {
		out = append(out, m.sayf("Same angle: %s.", strings.Join(m.passEach(c.also), ", ")))
	}
	return out
}
