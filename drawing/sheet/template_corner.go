package sheet

import (
	"math"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	cornerArm    unit.Length = 250 // along both edges
	shortestArm  unit.Length = 200 // where a wide gap asks for room
	cornerNear   unit.Length = 200 // a slab's corner lies no further from that of its walls
	shortestEdge unit.Length = 60  // less is no corner to hold to anything
	outOfSquare  unit.Length = 1   // over the shorter edge: less is found with a try square
	sameAngle                = 0.05 * unit.Degree
	sameCourse               = 10 * unit.Degree
	flattest                 = 150 * unit.Degree
)

// slabCorner is a corner of a slab in a corner of the room.
type slabCorner struct {
	part         *model.Part
	before, next model.Edge
	room         model.Corner
	left, right  *model.Wall
	off          geom.Vec   // from the slab's corner to that of the walls, in the slab's axes
	angle        unit.Angle // of the slab
	also         []string   // other slabs with the same angle there
}

// cornerTemplates gives one template for every corner of the room that is not
// square and has slabs in it.
func cornerTemplates(m *maker, set *templateSet) {
	for _, c := range m.slabCorners() {
		short := min(c.before.End.Sub(c.before.Start).Len(), c.next.End.Sub(c.next.Start).Len())
		if short < shortestEdge {
			continue
		}
		if c.angle > flattest || c.angle < 180*unit.Degree-flattest {
			set.leave(m.sayf("Corner %s of %s, %s°: too flat or too sharp to hold to; mark it from its sizes.", c.room.Name, m.pass(c.part.ID), m.style.Number(c.angle.Degrees(), 1)))
			continue
		}
		if miss := short * unit.Length(math.Abs(math.Cos(float64(c.angle)))); miss < outOfSquare {
			set.leave(m.sayf("Corner %s of %s: square within %s over its shorter edge, a try square serves.", c.room.Name, m.pass(c.part.ID), m.length(outOfSquare)))
			continue
		}
		set.add(m.cornerTemplate(c))
	}
}

// slabCorners finds the corners, those of worktops before those of shelves;
// slabs whose angle is the same in a corner of the room share it.
func (m *maker) slabCorners() []slabCorner {
	var out []slabCorner
	for _, kind := range []model.Kind{model.KindSlab, model.KindShelf} {
		for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil && p.Kind == kind }) {
			for i := range p.Slab.Edges {
				if c, ok := m.slabCorner(p, i); ok {
					out = shared(out, c)
				}
			}
		}
	}
	return out
}

// shared adds a corner, or its slab to one that is the same.
func shared(list []slabCorner, c slabCorner) []slabCorner {
	for i := range list {
		o := &list[i]
		if o.room.Name == c.room.Name && math.Abs(float64(o.angle-c.angle)) < float64(sameAngle) {
			o.also = append(o.also, c.part.ID)
			return list
		}
	}
	return append(list, c)
}

// slabCorner is the corner at the end of an edge, when both edges there run
// along walls that meet beside it.
func (m *maker) slabCorner(p *model.Part, i int) (slabCorner, bool) {
	s := p.Slab
	c := slabCorner{part: p, before: s.Edges[i], next: s.Edges[(i+1)%len(s.Edges)]}
	if c.before.Bound != model.ToWall || c.next.Bound != model.ToWall {
		return c, false
	}
	u, v := c.arms()
	c.angle = unit.Angle(math.Atan2(math.Abs(u.Cross(v)), u.Dot(v)))
	best := cornerNear
	for _, w := range m.b.Room.Walls {
		at, ok := cornerBetween(w.Previous(), w, s.Top)
		if !ok || !alike(w.Previous(), s, u.Mul(-1)) || !alike(w, s, v) {
			continue
		}
		if off := s.Pose.Unplan(at).Sub(c.next.Start); off.Len() < best {
			best = off.Len()
			c.room, c.left, c.right, c.off = w.From, w.Previous(), w, off
		}
	}
	return c, best < cornerNear && u.Cross(v) > 0
}

// arms point from the corner along both edges.
func (c slabCorner) arms() (u, v geom.Vec) {
	return c.before.Start.Sub(c.before.End).Unit(), c.next.End.Sub(c.next.Start).Unit()
}

// alike tells whether a wall runs as a direction in the axes of a slab does.
func alike(w *model.Wall, s *model.SlabPart, dir geom.Vec) bool {
	d := w.Chord().D.Turn(-s.Pose.Turn).Unit()
	return d.Dot(dir) > math.Cos(float64(sameCourse))
}

// cornerTemplate is a triangle with both edges, the walls beside them and the
// gaps; the slab's corner is its origin.
func (m *maker) cornerTemplate(c slabCorner) *template {
	s := c.part.Slab
	u, v := c.arms()
	arm := min(cornerArm, max(shortestArm, templateRoom().Width()-c.off.Len()-wallBand-6))
	a := u.Mul(float64(min(arm, c.before.End.Sub(c.before.Start).Len())))
	b := v.Mul(float64(min(arm, c.next.End.Sub(c.next.Start).Len())))
	by := geom.Vec{}.Sub(c.next.Start)
	left := upTo(shiftedBy(reversed(ownFace(c.left, s, s.Top)), by), u, a.Len()+unit.Length(-c.off.Dot(u)))
	right := upTo(shiftedBy(ownFace(c.right, s, s.Top), by), v, b.Len()+unit.Length(-c.off.Dot(v)))

	t := &template{name: m.sayf("%s, corner %s", m.pass(c.part.ID), c.room.Name)}
	t.use = m.sayf("Walls %s and %s. First proves the survey, then marks the slab.", m.pass(c.left.Name), m.pass(c.right.Name))
	if len(c.also) > 0 {
		t.use += " " + m.sayf("Same angle: %s.", strings.Join(m.passEach(c.also), ", "))
	}
	outward := func(chain []geom.Vec, along geom.Vec, back geom.Vec) geom.Vec {
		return chain[len(chain)-1].Add(back.Mul(float64(wallBand + 0.5))).Add(along)
	}
	tip := c.off.Sub(u.Add(v).Unit().Mul(float64(wallBand+0.5) / math.Sin(float64(c.angle)/2)))
	t.shape = geom.Polygon(tip, outward(left, u, u.Left().Mul(-1)), a.Add(u.Mul(3)), b.Add(v.Mul(3)), outward(right, v, v.Left()))

	t.lines = append(wallLines(reversed(left)), wallLines(right)...)
	t.lines = append(t.lines, drawing.Polyline{Points: []geom.Vec{a, {}, b}, Pen: drawing.Dense.Outline()},
		drawing.Polyline{Points: []geom.Vec{left[len(left)-1], a, b, right[len(right)-1]}, Pen: drawing.Dense.Fine()})
	t.lines = append(t.lines, c.chords(left, right)...)
	m.cornerLabels(t, c, a, b, left, right)
	return t
}

// chords are the straight lines between the corners of the room where the walls
// are not straight: the angle is measured between them.
func (c slabCorner) chords(left, right []geom.Vec) []drawing.Item {
	var out []drawing.Item
	pen := drawing.Dense.Centre()
	turn := func(w *model.Wall) geom.Vec { return w.Chord().D.Turn(-c.part.Slab.Pose.Turn).Unit() }
	if c.left.Bow != 0 {
		out = append(out, drawing.Line(left[0], left[0].Sub(turn(c.left).Mul(float64(left[len(left)-1].Sub(left[0]).Len()))), pen))
	}
	if c.right.Bow != 0 {
		out = append(out, drawing.Line(right[0], right[0].Add(turn(c.right).Mul(float64(right[len(right)-1].Sub(right[0]).Len()))), pen))
	}
	return out
}
