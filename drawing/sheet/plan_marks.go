package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// markDrop is how far in front of the front edge the lower end of a section
// mark lies, in the room.
const markDrop unit.Length = 130

// sectionMarks draws both ends of every cutting plane, with the letter and an
// arrow the way one looks (ISO 128-3).
func (m *maker) sectionMarks(pl dim.Plate, w drawing.Rect) []drawing.Item {
	var out []drawing.Item
	for _, c := range m.cuttings() {
		d := c.line.D
		low := paperAt(pl, c.at(m.frontOf(c)-markDrop))
		top := low
		for _, e := range w.Grow(20).Corners() {
			if a := e.Sub(c.line.P).Dot(d); a > top.Sub(paperAt(pl, c.line.P)).Dot(d)*float64(pl.Scale.Real)/float64(pl.Scale.Paper) {
				top = paperAt(pl, c.line.P.Add(d.Mul(a)))
			}
		}
		g := drawing.Group{ID: "mark-" + stem(c.letter), Title: m.sayf("section %s", c.letter)}
		for _, end := range []struct {
			at  geom.Vec
			dir float64
		}{{low, 1}, {top, -1}} {
			g.Items = append(g.Items, m.planeEnd(end.at, d.Mul(end.dir), d.Left(), c.letter)...)
		}
		out = append(out, g)
	}
	return out
}

// planeEnd is one end of a cutting plane: a wide stroke of 6 mm, an arrow that
// points at it, the letter behind the arrow.
func (m *maker) planeEnd(at, in, look geom.Vec, letter string) []drawing.Item {
	const stroke, shaft = 6, 7
	h := drawing.Large
	if m.lines == drawing.Dense {
		h = drawing.Standard
	}
	inner := at.Add(in.Mul(stroke))
	tail := at.Sub(look.Mul(shaft))
	return []drawing.Item{
		drawing.Line(at, inner, drawing.Pen{Width: m.lines.Wide}),
		drawing.Line(tail, at, m.lines.Fine()),
		drawing.Mark{Kind: drawing.Arrow, At: at, Dir: look, Size: 3, Pen: m.lines.Fine()},
		drawing.Write(tail.Sub(look.Mul(3.5)), letter, h, drawing.Middle).Strong(),
	}
}

// planObstacles draws what is on the walls, and what is hidden in them, as
// neighbours.
func (m *maker) planObstacles(pl dim.Plate, w drawing.Rect) drawing.Item {
	g := drawing.Group{ID: "plan-obstacles", Title: m.say("obstacles")}
	frame := geom.Rect(w.Min, w.Max)
	for _, wall := range m.b.Room.Walls {
		for _, o := range wall.Obstacles {
			for _, l := range obstaclePlan(o).Intersect(frame).Loops() {
				g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Adjacent()))
			}
		}
	}
	return g
}

// obstaclePlan is the place of an obstacle on the floor plan; what is hidden in
// the wall is shown 40 mm deep behind its face.
func obstaclePlan(o model.Obstacle) geom.Region {
	if o.Depth > 0 {
		return o.Solid().Footprint()
	}
	l := o.Wall.Chord()
	u, out := l.D.Unit(), l.D.Unit().Left().Mul(40)
	a, b := l.P.Add(u.Mul(float64(o.Start))), l.P.Add(u.Mul(float64(o.End)))
	return geom.Polygon(a, b, b.Add(out), a.Add(out))
}

// wallAt is the wall whose face passes a place, nil if there is none.
func (m *maker) wallAt(p geom.Vec, z unit.Length) *model.Wall {
	for _, w := range m.b.Room.Walls {
		l := w.LineAt(z)
		if s := l.Along(p); abs(l.Side(p)) < abs(w.Bow)+1 && s > -1 && s < l.D.Len()+1 {
			return w
		}
	}
	return nil
}
