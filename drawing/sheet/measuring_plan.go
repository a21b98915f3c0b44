package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/job"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

const (
	sketchHigh unit.Length = 92 // of the sketch on the paper
	sketchEdge unit.Length = 13 // about the walls, for letters and numbers
	leastOff               = 6  // mm from a wall to the line of a width beside it, so that its number fits between
)

// sketch draws the room with its corners and the line of every reading under
// its number. It is no drawing to scale: the person draws the real room over it.
func (f *blanks) sketch(p job.Measures) {
	f.need(sketchHigh)
	s := newSketch(p, drawing.Rect{Min: geom.V(f.space().Min.X, f.y-sketchHigh), Max: geom.V(f.space().Max.X, f.y-1)})
	s.walls()
	s.lines()
	s.examples([]string{f.lang.Say("socket"), f.lang.Say("pipe"), f.lang.Say("sill")})
	f.put(s.items...)
	f.y -= sketchHigh
	f.note(f.lang.Say("No drawing to scale: correct the sketch where your room differs, and draw in doors, sockets, pipes and sills, as shown."))
}

// sketch is the plan of a room of which only the shape is known.
type sketch struct {
	job.Measures
	items []drawing.Item
	at    []geom.Vec // corners on the paper
	taken []drawing.Rect
	rays  [][2]geom.Vec // lines of the readings
}

func newSketch(p job.Measures, room drawing.Rect) *sketch {
	lo, hi := p.At[0], p.At[0]
	for _, c := range p.At {
		lo, hi = geom.V(min(lo.X, c.X), min(lo.Y, c.Y)), geom.V(max(hi.X, c.X), max(hi.Y, c.Y))
	}
	in := room.Grow(-sketchEdge)
	k := min(float64(in.Width()/(hi.X-lo.X)), float64(in.Height()/(hi.Y-lo.Y)))
	s := &sketch{Measures: p}
	mid := lo.Lerp(hi, 0.5)
	for _, c := range p.At {
		s.at = append(s.at, in.Centre().Add(c.Sub(mid).Mul(k)))
	}
	return s
}

// corner is the place of a corner by its name.
func (s *sketch) corner(name survey.Point) geom.Vec {
	for i, c := range s.Corners {
		if c == string(name) {
			return s.at[i]
		}
	}
	panic("there is no corner " + string(name))
}

// walls draws the walls, the letters of the corners and the names of the walls.
func (s *sketch) walls() {
	n := len(s.at)
	for i := range s.Walls {
		a, b := s.at[i], s.at[(i+1)%n]
		s.items = append(s.items, drawing.Line(a, b, drawing.Pen{Width: 0.7}))
		s.rays = append(s.rays, [2]geom.Vec{a, b})
	}
	for i, name := range s.Corners {
		s.letter(s.at[i].Add(s.outwards(i).Mul(5)), name, drawing.Large)
	}
}

// outwards points from a corner away from the room, halfway between its walls.
func (s *sketch) outwards(i int) geom.Vec {
	n := len(s.at)
	var out geom.Vec
	if s.Closed || i > 0 {
		out = out.Add(s.at[i].Sub(s.at[(i+n-1)%n]).Unit().Left())
	}
	if s.Closed || i < n-1 {
		out = out.Add(s.at[(i+1)%n].Sub(s.at[i]).Unit().Left())
	}
	return out.Unit()
}

// letter writes a bold text about a place and keeps others off it.
func (s *sketch) letter(at geom.Vec, text string, height unit.Length) {
	t := drawing.Write(at, text, height, drawing.Middle).Strong()
	s.items = append(s.items, t)
	s.taken = append(s.taken, textRoom(at, text, height))
}

// textRoom is the room that a bold text about a place takes.
func textRoom(at geom.Vec, text string, height unit.Length) drawing.Rect {
	w := drawing.Write(at, text, height, drawing.Middle).Strong().Width()
	return drawing.Rect{Min: geom.V(at.X-w/2-0.6, at.Y-height/2-0.6), Max: geom.V(at.X+w/2+0.6, at.Y+height/2+0.6)}
}

// lines draws the readings with their numbers: walls outside them, the others
// on their lines, which they interrupt.
func (s *sketch) lines() {
	type open struct {
		ray    [2]geom.Vec
		number int
	}
	var free, walls []open
	for i, r := range s.Readings {
		ray, wall := s.ray(r)
		if wall {
			walls = append(walls, open{ray, i + 1})
			continue
		}
		s.rays = append(s.rays, ray)
		free = append(free, open{ray, i + 1})
	}
	slices.SortStableFunc(walls, func(a, b open) int { // a short wall takes what a long one leaves
		return cmp.Compare(b.ray[1].Sub(b.ray[0]).Len(), a.ray[1].Sub(a.ray[0]).Len())
	})
	for _, o := range walls {
		s.beside(o.ray, fmt.Sprint(o.number))
	}
	for _, o := range free {
		s.onLine(o.ray, fmt.Sprint(o.number))
	}
}

// beside writes the number of a wall outside it, or inside where there is more
// room.
func (s *sketch) beside(ray [2]geom.Vec, text string) {
	out := ray[1].Sub(ray[0]).Unit().Left()
	best, room := geom.Vec{}, math.Inf(-1)
	for _, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
		for _, off := range []float64{4.2, -4.2, 8, 12} {
			at := ray[0].Lerp(ray[1], t).Add(out.Mul(off))
			d := min(s.room(ray, textRoom(at, text, drawing.Standard)), 1) // more is of no use
			if d > room+1e-9 {
				best, room = at, d
			}
		}
	}
	s.letter(best, text, drawing.Standard)
}

// ray is the line of a reading on the sketch, and whether it runs along a wall.
func (s *sketch) ray(r job.Measure) ([2]geom.Vec, bool) {
	p := r.Points
	n := len(s.Corners)
	k := s.scale()
	switch r.Kind {
	case survey.Width:
		base := s.corner(p[1]).Sub(s.corner(p[0])).Unit()
		down := base.Left().Mul(-max(float64(r.A)*k, leastOff*float64(1+s.nearer(r))))
		return [2]geom.Vec{s.corner(p[0]).Add(down), s.corner(p[1]).Add(down)}, false
	case survey.SquareOff:
		m := s.corner(p[1])
		return [2]geom.Vec{m.Add(s.corner(p[0]).Sub(m).Unit().Mul(float64(r.A) * k)), m.Add(s.corner(p[2]).Sub(m).Unit().Mul(float64(r.B) * k))}, false
	case survey.Offset:
		a, u := s.corner(p[1]), s.corner(p[2]).Sub(s.corner(p[1])).Unit()
		return [2]geom.Vec{s.corner(p[0]), a.Add(u.Mul(u.Dot(s.corner(p[0]).Sub(a))))}, false
	}
	a, b := s.corner(p[0]), s.corner(p[1])
	for i := range s.Walls {
		if s.at[i] == a && s.at[(i+1)%n] == b {
			return [2]geom.Vec{a, b}, true
		}
	}
	return [2]geom.Vec{a, b}, false
}

// nearer counts the widths before the same wall that lie nearer to it.
func (s *sketch) nearer(r job.Measure) int {
	n := 0
	for _, o := range s.Readings {
		if o.Kind == survey.Width && slices.Equal(o.Points, r.Points) && o.A < r.A {
			n++
		}
	}
	return n
}

// examples shows how a socket, a pipe and a sill are drawn, on the first walls
// that are long enough.
func (s *sketch) examples(names []string) {
	all := len(names)
	for i := range s.Walls {
		a, b := s.at[i], s.at[(i+1)%len(s.at)]
		if long := b.Sub(a).Len(); long < 40 || len(names) == 0 {
			continue
		}
		u, out := b.Sub(a).Unit(), b.Sub(a).Unit().Left()
		at := a.Lerp(b, 0.25)
		w := drawing.TextWidth(names[0], drawing.Small)
		label := at.Add(out.Mul(math.Abs(float64(out.X))*float64(w/2) + 2.8))
		if s.room([2]geom.Vec{a, b}, textRoom(label, names[0], drawing.Small)) < 0 {
			continue
		}
		s.items = append(s.items, drawing.Write(label, names[0], drawing.Small, drawing.Middle), symbol(all-len(names), at, u))
		s.taken = append(s.taken, textRoom(label, names[0], drawing.Small))
		names = names[1:]
	}
}

// symbol is a sign on the room's side of a wall: a box, a round pipe, a board.
func symbol(which int, at, along geom.Vec) drawing.Item {
	in := along.Left().Mul(-1)
	pen := drawing.Normal.Outline()
	half, deep := along.Mul(2), in.Mul(1.6)
	switch which {
	case 1:
		return drawing.Circle{Centre: at.Add(in.Mul(1.2)), Radius: 1.2, Pen: pen}
	case 2:
		half, deep = along.Mul(7), in.Mul(1)
	}
	return drawing.Outline([]geom.Vec{at.Sub(half), at.Add(half), at.Add(half).Add(deep), at.Sub(half).Add(deep)}, pen)
}

// scale is how many millimetres of paper a millimetre of the room takes.
func (s *sketch) scale() float64 {
	return float64(s.at[1].Sub(s.at[0]).Len() / s.At[1].Sub(s.At[0]).Len())
}

// onLine draws a line with its number in a gap, where the number is furthest
// from all other lines and numbers.
func (s *sketch) onLine(ray [2]geom.Vec, text string) {
	pen := drawing.Normal.Fine()
	best, room := 0.5, math.Inf(-1)
	for k := 2; k <= 38; k++ {
		t := float64(k) / 40
		if d := s.room(ray, textRoom(ray[0].Lerp(ray[1], t), text, drawing.Small)); d > room+1e-9 {
			best, room = t, d
		}
	}
	at := ray[0].Lerp(ray[1], best)
	u := ray[1].Sub(ray[0]).Unit()
	box := textRoom(at, text, drawing.Small)
	gap := math.Abs(float64(u.X))*float64(box.Width()/2) + math.Abs(float64(u.Y))*float64(box.Height()/2) + 0.4
	s.items = append(s.items, drawing.Line(ray[0], at.Sub(u.Mul(gap)), pen), drawing.Line(at.Add(u.Mul(gap)), ray[1], pen))
	s.letter(at, text, drawing.Small)
}

// room is how far a box is from the lines of all other readings, the walls and
// what is written, at least; below 0 where it touches.
func (s *sketch) room(own [2]geom.Vec, box drawing.Rect) float64 {
	least := math.Inf(1)
	for _, r := range s.rays {
		if r != own {
			least = min(least, boxToLine(box, r))
		}
	}
	for _, b := range s.taken {
		dx := max(float64(b.Min.X-box.Max.X), float64(box.Min.X-b.Max.X))
		dy := max(float64(b.Min.Y-box.Max.Y), float64(box.Min.Y-b.Max.Y))
		least = min(least, max(dx, dy))
	}
	return least
}

// boxToLine is about how far a box is from a line, below 0 where it crosses it.
func boxToLine(b drawing.Rect, l [2]geom.Vec) float64 {
	c, u := b.Centre(), l[1].Sub(l[0]).Unit()
	along := math.Min(math.Max(u.Dot(c.Sub(l[0])), 0), float64(l[1].Sub(l[0]).Len()))
	near := l[0].Add(u.Mul(along))
	d := c.Sub(near)
	far := float64(d.Len())
	if far < 1e-9 {
		return -1
	}
	v := d.Unit()
	return far - math.Abs(float64(v.X))*float64(b.Width()/2) - math.Abs(float64(v.Y))*float64(b.Height()/2)
}
