package dim

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// arrowHalf is half the width that an arrow takes, in parts of its length: less
// than at its widest, since lettering stands off its point as well.
const arrowHalf = 0.12

// ruler is a dimension line in its place, with its terminators.
type ruler struct {
	e      *entry
	on     []geom.Vec // stations on the line
	lines  []line     // dimension line
	marks  []drawing.Mark
	items  []drawing.Item // running values with the ends of their extension lines
	values []box          // of running values
	origin []box          // of the circle at the datum
	small  []bool         // links with terminators outside
}

func newRuler(e *entry, s *Style) *ruler {
	r := &ruler{e: e, on: make([]geom.Vec, len(e.u))}
	for i := range e.u {
		r.on[i] = e.on(i)
	}
	if e.running {
		r.runningMarks(s)
		r.letter(s)
		return r
	}
	r.small = make([]bool, len(e.u)-1)
	for i := range r.small {
		r.small[i] = e.small(i, s)
	}
	r.lines, r.marks = terminate(r.on, r.small, s)
	return r
}

// terminate draws a dimension line through its stations in reading direction:
// arrows inside each link that has room for them, otherwise from outside, a
// dot where there is room on neither side (ISO 129-1).
func terminate(on []geom.Vec, small []bool, s *Style) ([]line, []drawing.Mark) {
	last := len(on) - 1
	from, to := on[0], on[last]
	dir := to.Sub(from).Unit()
	var marks []drawing.Mark
	mark := func(k drawing.MarkKind, at, way geom.Vec) {
		size := s.EndSize
		if k == drawing.Dot {
			size = drawing.DotSize
		}
		marks = append(marks, drawing.Mark{Kind: k, At: at, Dir: way, Size: size, Pen: s.Lines.Fine()})
	}
	for i, q := range on {
		if s.End == drawing.Oblique {
			mark(drawing.Oblique, q, dir)
			continue
		}
		before := i > 0 && !small[i-1] || i == 0 && small[0]
		after := i < last && !small[i] || i == last && small[last-1]
		if before {
			mark(s.End, q, dir)
		}
		if after {
			mark(s.End, q, dir.Mul(-1))
		}
		if !before && !after {
			mark(drawing.Dot, q, dir)
		}
	}
	if small[0] {
		from = from.Sub(dir.Mul(float64(s.EndSize + tail)))
	}
	if small[last-1] {
		to = to.Add(dir.Mul(float64(s.EndSize + tail)))
	}
	return []line{newLine(from, to, s.Lines.Narrow/2, ruled)}, marks
}

// runningMarks puts the origin circle on the datum and on each station a
// terminator that points away from it.
func (r *ruler) runningMarks(s *Style) {
	e := r.e
	last := len(e.u) - 1
	origin := r.on[e.datum]
	pen := s.Lines.Fine()
	r.marks = append(r.marks, drawing.Mark{Kind: drawing.Origin, At: origin, Dir: e.dir, Pen: pen})
	r.origin = append(r.origin, newBox(origin, e.dir, 2*originR, 2*originR))
	for i, q := range r.on {
		m := drawing.Mark{Kind: s.End, At: q, Dir: e.dir, Size: s.EndSize, Pen: pen}
		switch {
		case i == e.datum:
			continue
		case s.End != drawing.Oblique && e.crowded(i, s):
			m.Kind, m.Size = drawing.Dot, drawing.DotSize
		case s.End != drawing.Oblique && i < e.datum:
			m.Dir = e.dir.Mul(-1)
		}
		r.marks = append(r.marks, m)
	}
	arm := func(to geom.Vec) {
		way := to.Sub(origin)
		if way.Len() > originR {
			r.lines = append(r.lines, newLine(origin.Add(way.Unit().Mul(float64(originR))), to, s.Lines.Narrow/2, ruled))
		}
	}
	arm(r.on[0])
	arm(r.on[last])
}

// letter writes running dimensions at the ends of their extension lines.
func (r *ruler) letter(s *Style) {
	e := r.e
	dir := readable(e.out)
	for i, q := range r.on {
		start := q.Add(e.out.Mul(float64(s.Past)))
		end := start
		if e.fan.jog > 0 {
			end = e.dir.Mul(float64(e.fan.x[i])).Add(e.out.Mul(float64(e.dist + s.Past + e.fan.jog)))
			r.lines = append(r.lines, newLine(start, end, s.Lines.Narrow/2, reach))
		}
		b := newBlock(e.fan.height, e.texts[i].lines[0])
		mid := end.Add(e.out.Mul(float64(fanStart + b.width/2)))
		at := mid.Sub(dir.Mul(float64(b.width / 2))).Sub(dir.Left().Mul(float64(b.height / 2)))
		r.items = append(r.items, b.items(at, dir)...)
		r.values = append(r.values, b.box(at, dir))
	}
}

// enter makes the ruler part of what is fixed on the paper.
func (r *ruler) enter(f *field) {
	for _, l := range r.lines {
		f.addLine(l)
	}
	for _, m := range r.marks {
		switch d := m.Dir.Unit().Mul(float64(m.Size)); m.Kind {
		case drawing.Oblique:
			h := d.Turn(45 * unit.Degree).Mul(0.5)
			f.addLine(newLine(m.At.Sub(h), m.At.Add(h), m.Pen.Width/2, ruled))
		case drawing.Arrow, drawing.OpenArrow:
			f.addLine(newLine(m.At, m.At.Sub(d), arrowHalf*m.Size, ruled))
		}
	}
	for _, b := range append(r.origin, r.values...) {
		f.addBox(b)
	}
}

// draw gives the items of the ruler without its figures.
func (r *ruler) draw(s *Style) []drawing.Item {
	var out []drawing.Item
	for _, l := range r.lines {
		out = append(out, drawing.Line(l.a, l.b, s.Lines.Fine()))
	}
	for _, m := range r.marks {
		out = append(out, m)
	}
	return append(out, r.items...)
}
