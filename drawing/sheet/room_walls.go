package sheet

import (
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// wallPen draws the face of a cut wall: one step wider than outlines, so that
// the room stands out from what is in it.
func (m *maker) wallPen() drawing.Pen {
	if m.lines == drawing.Dense {
		return drawing.Pen{Width: 0.5}
	}
	return drawing.Pen{Width: 0.7}
}

// strip is how much of a wall the sheets of the room show behind its face.
func (m *maker) strip() unit.Length {
	if m.lines == drawing.Dense {
		return 50
	}
	return 70
}

// wallStrip is the strip behind a wall's face, mitred with its neighbours.
func (m *maker) wallStrip(w *model.Wall, z unit.Length) geom.Region {
	outer := w.LineAt(z).Shift(m.strip())
	a, b := outer.P, outer.P.Add(outer.D)
	for _, n := range []*model.Wall{w.Previous(), w.Next()} {
		if n == nil {
			continue
		}
		p, ok := n.LineAt(z).Shift(m.strip()).Meet(outer)
		switch {
		case !ok:
		case n == w.Previous():
			a = p
		default:
			b = p
		}
	}
	return geom.Polygon(append(w.Face(z), b, a)...)
}

// planWalls draws the walls cut at a height, as far as a window shows them: a
// hatched strip behind every face, without an outer line, for nobody measured
// how thick a wall is. Where the window cuts a wall off stands a break line.
func (m *maker) planWalls(pl dim.Plate, z unit.Length, w drawing.Rect) []drawing.Item {
	r := m.b.Room
	frame := geom.Rect(w.Min, w.Max)
	var out, breaks []drawing.Item
	for _, wall := range r.Walls {
		strip := m.wallStrip(wall, z).Intersect(frame)
		if strip.Empty() {
			continue
		}
		var loops [][]geom.Vec
		for _, l := range strip.Loops() {
			loops = append(loops, paperChain(pl, l))
		}
		out = append(out, drawing.Group{ID: "plan-wall-" + stem(wall.Name), Title: m.sayf("wall %s", m.pass(wall.Name)), Items: []drawing.Item{drawing.Hatch{Loops: loops, Pattern: drawing.Pattern{Material: wallHatch(wall.Make), Width: m.lines.Narrow}}}})
		breaks = append(breaks, m.breaks(pl, strip, w)...)
	}
	for _, chain := range m.faces(z, w) {
		out = append(out, drawing.Polyline{Points: paperChain(pl, chain), Pen: m.wallPen()})
	}
	return append(out, breaks...)
}

// faces gives the faces of the walls at a height inside a window, joined where
// they meet.
func (m *maker) faces(z unit.Length, w drawing.Rect) [][]geom.Vec {
	r := m.b.Room
	var chains [][]geom.Vec
	for _, loop := range r.Plan(z).Loops() {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			if !m.onWall(a.Lerp(b, 0.5), z) {
				continue
			}
			p, q, ok := clipLine(w, a, b)
			if !ok {
				continue
			}
			if n := len(chains); n > 0 && chains[n-1][len(chains[n-1])-1].Sub(p).Len() < 0.01 {
				chains[n-1] = append(chains[n-1], q)
				continue
			}
			chains = append(chains, []geom.Vec{p, q})
		}
	}
	return chains
}

// onWall tells whether a place lies on the face of a surveyed wall, not on the
// imagined rest of an open room.
func (m *maker) onWall(p geom.Vec, z unit.Length) bool {
	for _, w := range m.b.Room.Walls {
		l := w.LineAt(z)
		if s := l.Along(p); abs(l.Side(p)) < abs(w.Bow)+1 && s > -1 && s < l.D.Len()+1 {
			return true
		}
	}
	return false
}

// breaks draws the break lines where a window cuts a wall off.
func (m *maker) breaks(pl dim.Plate, strip geom.Region, w drawing.Rect) []drawing.Item {
	c := w.Grow(-0.5).Corners()
	var out []drawing.Item
	for i, a := range c {
		b := c[(i+1)%len(c)]
		for _, s := range strip.Inside(a, b) {
			p, q := paperAt(pl, a.Lerp(b, s[0])), paperAt(pl, a.Lerp(b, s[1]))
			d := q.Sub(p).Unit()
			if q.Sub(p).Len() > 1 {
				out = append(out, drawing.Line(p.Sub(d.Mul(1.5)), q.Add(d.Mul(1.5)), m.lines.Break()))
			}
		}
	}
	return out
}

// upright is where a vertical section cuts the walls: stretches of its line
// with the wall cut there, and the faces that bound the room.
type upright struct {
	strips []cutWall
	faces  []unit.Length
}

type cutWall struct {
	from, to unit.Length
	wall     *model.Wall
}

// uprightWalls cuts the walls along a line between two places on it.
func (m *maker) uprightWalls(plane geom.Line, from, to unit.Length) upright {
	r := m.b.Room
	d := plane.D.Unit()
	a, b := plane.P.Add(d.Mul(float64(from))), plane.P.Add(d.Mul(float64(to)))
	var u upright
	at := func(t float64) unit.Length { return from + (to-from)*unit.Length(t) }
	for _, w := range r.Walls {
		for _, s := range m.wallStrip(w, r.At).Inside(a, b) {
			if at(s[1])-at(s[0]) > 1 {
				u.strips = append(u.strips, cutWall{at(s[0]), at(s[1]), w})
			}
		}
	}
	for _, s := range r.Plan(r.At).Inside(a, b) {
		for _, t := range s {
			if x := at(t); m.onWall(plane.P.Add(d.Mul(float64(x))), r.At) {
				u.faces = append(u.faces, x)
			}
		}
	}
	return u
}

// draw draws the cut walls from the floor to the upper end of a window.
func (u upright) draw(m *maker, pl dim.Plate, w drawing.Rect, floor unit.Length) []drawing.Item {
	var out []drawing.Item
	for _, s := range u.strips {
		from, to := max(s.from, w.Min.X), min(s.to, w.Max.X)
		if to <= from {
			continue
		}
		box := drawing.Rect{Min: geom.V(from, max(floor, w.Min.Y)), Max: geom.V(to, w.Max.Y)}
		out = append(out, drawing.Hatch{Loops: [][]geom.Vec{paperChain(pl, box.Corners())}, Pattern: drawing.Pattern{Material: wallHatch(s.wall.Make), Width: m.lines.Narrow}})
		p, q := paperAt(pl, geom.V(from, w.Max.Y)), paperAt(pl, geom.V(to, w.Max.Y))
		out = append(out, drawing.Line(p.Sub(geom.V(1.5, 0)), q.Add(geom.V(1.5, 0)), m.lines.Break()))
	}
	for _, x := range u.faces {
		if x >= w.Min.X && x <= w.Max.X {
			out = append(out, drawing.Line(paperAt(pl, geom.V(x, max(floor, w.Min.Y))), paperAt(pl, geom.V(x, w.Max.Y)), m.wallPen()))
		}
	}
	return out
}

// endless takes the lines out of a view where the walls of an open room end:
// the room goes on there.
func (m *maker) endless(s *stage, v view.View, look view.Look) view.View {
	r := m.b.Room
	if r.Closed {
		return v
	}
	var ends []unit.Length
	for _, e := range []struct {
		w  *model.Wall
		at geom.Vec
	}{{r.Walls[0], r.Walls[0].From.At}, {r.Walls[len(r.Walls)-1], r.Walls[len(r.Walls)-1].To.At}} {
		out := e.w.Chord().D.Unit().Left().Mul(float64(wallThickness)) // as the stage draws them
		ends = append(ends, look.Project(e.at.Up(0)).X, look.Project(e.at.Add(out).Up(0)).X)
	}
	v.Segments = slices.DeleteFunc(v.Segments, func(g view.Segment) bool {
		if s.scene.Items[g.Item].Role != view.Wall {
			return false
		}
		return slices.ContainsFunc(ends, func(x unit.Length) bool { return abs(g.A.X-x) < 1 && abs(g.B.X-x) < 1 })
	})
	return v
}

// floor draws the floor across a window at a height.
func (m *maker) floor(pl dim.Plate, w drawing.Rect, z unit.Length) drawing.Item {
	return drawing.Line(paperAt(pl, geom.V(w.Min.X, z)), paperAt(pl, geom.V(w.Max.X, z)), m.wallPen())
}

// makes lists the makes of the walls once each, in the order of the walls.
func makes(walls []*model.Wall) []model.WallMake {
	var out []model.WallMake
	seen := map[model.WallMake]bool{}
	for _, w := range walls {
		if !seen[w.Make] {
			seen[w.Make] = true
			out = append(out, w.Make)
		}
	}
	return out
}

// hatchKey explains the hatches of the walls: a sample and its name, one below
// the other or beside each other as the width allows. It gives the height taken.
func (m *maker) hatchKey(id string, at geom.Vec, room unit.Length, walls []*model.Wall) (drawing.Item, unit.Length) {
	const w, h, pitch = unit.Length(12), unit.Length(4.5), unit.Length(6)
	x, y := at.X, at.Y-h
	var items []drawing.Item
	for _, k := range makes(walls) {
		name := m.pass(string(k))
		text := drawing.TextWidth(name, drawing.Small)
		if x > at.X && x+w+2+text > at.X+room {
			x, y = at.X, y-pitch
		}
		box := drawing.Box(x, y, w, h).Corners()
		items = append(items, drawing.Hatch{Loops: [][]geom.Vec{box}, Pattern: drawing.Pattern{Material: wallHatch(k), Width: m.lines.Narrow}},
			drawing.Outline(box, m.lines.Fine()),
			drawing.Write(geom.V(x+w+2, y+h/2), name, drawing.Small, drawing.MiddleLeft))
		x += w + 2 + text + 6
	}
	return drawing.Group{ID: id, Title: m.say("hatches of the walls"), Items: items}, at.Y - y + pitch - h
}
