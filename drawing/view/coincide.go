package view

import (
	"cmp"
	"math"
	"slices"
)

const (
	// coincident is the distance at which two lines are drawn as one, in mm.
	coincident = 0.01
	// straight is how far a point may lie off a line to be left out of it.
	straight = 1e-5
)

// piece is a straight line to draw.
type piece struct {
	a, b   vertex
	stroke Stroke
}

func (p piece) segment() Segment { return Segment{p.a.flat(), p.b.flat(), p.stroke} }

// coincide leaves out the stretches of lines that fall together with a line of
// more weight: cut before visible before hidden, things drawn over the rest
// last; then by role, then the nearer one. The pieces left keep their order.
func coincide(lines []piece, s Scene) []piece {
	if len(lines) == 0 {
		return nil
	}
	order := make([]int, len(lines))
	b := boxOf(lines[0].a, lines[0].b)
	for i, p := range lines {
		order[i] = i
		b = b.union(boxOf(p.a, p.b))
	}
	slices.SortStableFunc(order, func(i, j int) int { return weigh(lines[i], lines[j], s) })
	g := newGrid(b, len(lines))
	kept, from := make([]piece, 0, len(lines)), make([]int, 0, len(lines))
	var taken, free []span
	for _, i := range order {
		p := lines[i]
		size := drawn(p.a, p.b)
		taken = taken[:0]
		g.near(p.a, p.b, func(id int32) bool {
			taken = p.together(taken, kept[id], size)
			return true
		})
		taken = settle(taken, speck/size)
		free = minus(free[:0], whole, taken)
		for kept = stretches(kept, edge(p), p.stroke.Kind, free); len(from) < len(kept); {
			q := kept[len(from)]
			from = append(from, i)
			g.addLine(q.a, q.b)
		}
	}
	place := make([]int, len(kept))
	for i := range place {
		place[i] = i
	}
	slices.SortStableFunc(place, func(i, j int) int { return cmp.Compare(from[i], from[j]) })
	out := make([]piece, len(kept))
	for i, k := range place {
		out[i] = kept[k]
	}
	return out
}

func weigh(p, q piece, s Scene) int {
	over := func(p piece) int {
		if s.Items[p.stroke.Item].Role.over() {
			return 1
		}
		return 0
	}
	return cmp.Or(
		cmp.Compare(over(p), over(q)),
		cmp.Compare(p.stroke.Kind, q.stroke.Kind),
		cmp.Compare(s.Items[p.stroke.Item].Role, s.Items[q.stroke.Item].Role),
		-cmp.Compare(math.Round((p.a.w+p.b.w)/flush), math.Round((q.a.w+q.b.w)/flush)),
	)
}

// together appends the stretch of p, of that size, along which q is the same
// line.
func (p piece) together(out []span, q piece, size float64) []span {
	if !boxOf(p.a, p.b).meets(boxOf(q.a, q.b).grow(coincident)) {
		return out
	}
	du, dv := (p.b.u-p.a.u)/size, (p.b.v-p.a.v)/size
	at := func(c vertex) (along, off float64) {
		u, v := c.u-p.a.u, c.v-p.a.v
		return (du*u + dv*v) / size, du*v - dv*u
	}
	ta, oa := at(q.a)
	tb, ob := at(q.b)
	if ta > tb {
		ta, oa, tb, ob = tb, ob, ta, oa
	}
	lo, hi := max(ta, 0), min(tb, 1)
	if lo >= hi {
		return out
	}
	slope := (ob - oa) / (tb - ta)
	if math.Abs(oa+slope*(lo-ta)) > coincident || math.Abs(oa+slope*(hi-ta)) > coincident {
		return out
	}
	return append(out, span{lo, hi})
}
