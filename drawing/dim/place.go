package dim

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Place dimensions a view. The items come in the order of the requests; the
// same input gives the same items.
func Place(p Plate, requests []Request) ([]drawing.Item, Report) {
	p = p.ready()
	l := &layout{p: &p, f: newField(p.region(), p.Frame.Grow(-p.Style.Lines.Narrow)), items: make([][]drawing.Item, len(requests))}
	l.f.readDrawn(p.Drawn)
	for _, k := range p.Kept {
		l.f.addBox(rectBox(k))
	}
	l.board = &board{p: &p, sides: p.mainSides()}
	l.rows(requests)
	l.through(requests)
	l.f.readDrawn(p.Added)
	for i, q := range requests {
		l.label(i, q)
	}
	s := &solver{f: l.f, labels: l.labels}
	s.run()
	l.finish(s)
	var out []drawing.Item
	for _, part := range l.items {
		out = append(out, part...)
	}
	return out, l.report
}

// region is the part of the paper that the grid of obstacles is laid over.
func (p *Plate) region() drawing.Rect {
	const around, most = 160, 1500
	r := p.Body.Grow(around)
	if p.Frame != limitless {
		r = p.Frame
	}
	c := p.Body.Centre()
	r.Min = geom.V(max(r.Min.X, c.X-most), max(r.Min.Y, c.Y-most))
	r.Max = geom.V(min(r.Max.X, c.X+most), min(r.Max.Y, c.Y+most))
	if r.Empty() {
		r = p.Body.Grow(around)
	}
	return r
}

// layout is a plate on its way to being dimensioned.
type layout struct {
	p      *Plate
	f      *field
	board  *board
	rulers []*ruler
	labels []*label
	items  [][]drawing.Item // by request
	report Report
}

func (l *layout) trouble(i int, text, why string) {
	l.report.Troubles = append(l.report.Troubles, Trouble{i, text, why})
}

// sound tells whether a request has points, all of them numbers that find
// place on a sheet.
func (l *layout) sound(q Request) bool {
	if q == nil {
		return false
	}
	pts := q.points()
	for _, v := range pts {
		if !finite(v) || !finite(l.p.at(v)) {
			return false
		}
	}
	return len(pts) > 0
}

// rows places the dimension lines outside the view.
func (l *layout) rows(requests []Request) {
	var entries []*entry
	for i, q := range requests {
		if !l.sound(q) {
			l.trouble(i, kindOf(q), NoSense)
			continue
		}
		var e *entry
		switch q := q.(type) {
		case Linear:
			e = l.p.linear(q)
		case Chain:
			e = l.p.chain(q)
		case Running:
			e = l.p.running(q)
		default:
			continue
		}
		if e == nil {
			l.trouble(i, kindOf(q), NoSense)
			continue
		}
		e.request = i
		for k := range e.texts {
			if !e.running || k != e.datum {
				e.texts[k] = l.p.figure(i, e.texts[k].lines[0])
			}
		}
		entries = append(entries, e)
	}
	l.board.assign(entries)
	s := &l.p.Style
	for _, side := range l.board.order() {
		for _, r := range l.board.settle(side, l.f) {
			l.give(r, s)
			l.labels = append(l.labels, r.figures(s)...)
		}
	}
}

func (l *layout) give(r *ruler, s *Style) {
	i := r.e.request
	l.rulers = append(l.rulers, r)
	items := r.draw(s)
	l.items[i] = append(l.items[i], items...)
	if !l.p.Frame.Holds(drawing.Bounds(items)) {
		l.trouble(i, r.e.texts[0].lines[0], OffPage)
	}
}

// through places the dimension lines that run through the view.
func (l *layout) through(requests []Request) {
	s := &l.p.Style
	for i, q := range requests {
		a, ok := q.(Across)
		if !ok || !l.sound(q) {
			continue
		}
		from, to := l.p.at(a.A), l.p.at(a.B)
		if a.A.Sub(a.B).Len() < same {
			l.trouble(i, kindOf(q), NoSense)
			continue
		}
		if readable(to.Sub(from)).Dot(to.Sub(from)) < 0 {
			from, to = to, from
		}
		e := &entry{request: i, dir: to.Sub(from).Unit(), pts: []geom.Vec{from, to}}
		e.u = []unit.Length{0, to.Sub(from).Len()}
		e.texts = []block{l.p.figure(i, a.Label.text(l.p.Format(a.B.Sub(a.A).Len())))}
		if crossedAtMiddle(a, requests) {
			e.lean = []unit.Length{-e.size() / 4}
		}
		r := &ruler{e: e, on: e.pts, small: []bool{e.small(0, s)}}
		r.lines, r.marks = terminate(r.on, r.small, s)
		r.enter(l.f)
		l.give(r, s)
		l.labels = append(l.labels, r.figures(s)...)
	}
}

// crossedAtMiddle tells whether another line through the view crosses one near
// its middle, as diagonals do: each then has its figures at its own place, far
// from the crossing.
func crossedAtMiddle(a Across, requests []Request) bool {
	d := a.B.Sub(a.A)
	for _, q := range requests {
		b, ok := q.(Across)
		if !ok || b == a {
			continue
		}
		from, to := b.A.Sub(a.A), b.B.Sub(a.A)
		s, t := d.Cross(from), d.Cross(to)
		if s*t >= 0 {
			continue // ends on one side of it, or along it
		}
		x := from.Lerp(to, s/(s-t))
		if share := x.Dot(d) / d.Dot(d); 0.35 < share && share < 0.65 {
			return true
		}
	}
	return false
}

// label gathers the places of a request that is lettering on a leader or in the
// view.
func (l *layout) label(i int, q Request) {
	if !l.sound(q) {
		return
	}
	var b *label
	switch q := q.(type) {
	case Angle:
		b = l.p.angle(i, q)
	case Datum:
		b = l.p.datum(i, q)
	case Level:
		b = l.p.level(i, q)
	case Caption:
		q.Lines = l.p.signed(i, q.Lines)
		b = l.p.caption(i, q)
	case Diameter:
		b = l.p.diameter(i, q)
	case Radius:
		b = l.p.radius(i, q)
	case Note:
		b = l.p.note(i, q)
	case Balloon:
		b = l.p.balloon(i, q, l.board.lanes())
	default:
		return
	}
	if b == nil || b.text.empty() {
		l.trouble(i, kindOf(q), NoSense)
		return
	}
	l.labels = append(l.labels, b)
}

// finish draws the labels where they came to stand and tells what cannot be read.
func (l *layout) finish(s *solver) {
	for _, r := range l.rulers {
		for i := range r.values {
			if r.values[i].struck(l.f) {
				l.trouble(r.e.request, r.e.texts[i].lines[0], NoRoom)
			}
		}
	}
	for i, b := range s.labels {
		items := b.draw(&l.p.Style)
		l.items[b.request] = append(l.items[b.request], items...)
		text := b.text.lines[0]
		switch {
		case !l.p.Frame.Holds(drawing.Bounds(items)):
			l.trouble(b.request, text, OffPage)
		case s.unreadable(i):
			l.trouble(b.request, text, NoRoom)
		}
	}
}
