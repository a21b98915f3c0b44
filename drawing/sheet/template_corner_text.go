package sheet

import (
	"fmt"
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
	t.labels = append(t.labels, note(mid.Mul(float64(radius)), mid, "slab %s", deg(c.angle)))
	for _, k := range []struct {
		dir  geom.Vec
		in   geom.Vec
		wall []geom.Vec
		edge model.Edge
		name string
	}{{u, u.Left(), left, c.before, c.left.Name}, {v, v.Left().Mul(-1), right, c.next, c.right.Name}} {
		for _, d := range []unit.Length{15, dots} {
			at := k.dir.Mul(float64(d))
			t.labels = append(t.labels, edgeNote(at, k.dir, k.in, "gap %s", m.length(distanceTo(k.wall, at))))
		}
		text := k.edge.Name + " edge"
		if k.edge.Reference {
			text += " (reference)"
		}
		t.labels = append(t.labels, edgeNote(k.dir.Mul(float64(dots)*0.55), k.dir, k.in, "%s; beyond: wall %s", text, k.name))
	}
	t.labels = append(t.labels, label{lines: m.cornerSteps(c, p.Sub(q).Len(), deg), at: mid.Mul(float64(radius) + 36), toward: geom.V(mid.X, 0.3*mid.Y), reach: 60})
}

// edgeNote stands beside an edge and reads along it.
func edgeNote(at, along, in geom.Vec, format string, args ...any) label {
	l := note(at, in, format, args...)
	l.reach = 40
	l.upright = math.Abs(float64(along.Y)) > math.Abs(float64(along.X))
	return l
}

// cornerSteps are what to know and to do, in short lines.
func (m *maker) cornerSteps(c slabCorner, dots unit.Length, deg func(unit.Angle) string) []string {
	walls := "Walls " + deg(c.room.Angle)
	if sd := c.room.AngleSD; sd > 0 {
		walls += " ±" + deg(2*sd) + " (2 sd)"
	}
	out := []string{fmt.Sprintf("Seen from above, at the surface, %s up. %s.", m.length(c.part.Slab.Top), walls),
		fmt.Sprintf("Taped well, the two dots are %s apart.", m.length(dots)),
		"1  Cut along the walls, push it into the corner.",
		"2  Daylight over 2 mm: measure the room again.",
		"3  Cut along the slab's edges and the slope.",
		"4  Mark the slab with it, this side up."}
	if c.left.Bow != 0 || c.right.Bow != 0 {
		out = append(out, "Dash-dot: straight from corner to corner.")
	}
	if len(c.also) > 0 {
		out = append(out, "Same angle: "+strings.Join(c.also, ", ")+".")
	}
	return out
}
