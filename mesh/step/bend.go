package step

import (
	"math"
	"slices"

	"slabwright/model/geom"
)

// bendIn replaces the facets of an arc by part of a cylinder.
func (h *hull) bendIn(c chain, f frame, a arc, uses map[int][]int) {
	low, okLow := h.beyond(c.low, a, c.facets, uses)
	high, okHigh := h.beyond(c.high, a, c.facets, uses)
	if !okLow || !okHigh {
		return
	}
	i := len(h.tubes)
	t := tube{at: f.space(a.centre, 0), dir: f.d, inside: a.turn < 0}
	t.radius[0], t.radius[1] = a.radius, a.radius
	for k, face := range [2]int{low, high} {
		n := h.flats[face].normal
		if math.Abs(n.Dot(f.d)) < leastSlope {
			return
		}
		rail := c.low
		if k == 1 {
			rail = c.high
		}
		// The plane of the rim passes through the corners there.
		on := func(p geom.Vec) geom.Vec3 {
			q := f.space(p, 0)
			return q.Add(f.d.Mul(h.nodes[rail[wrap(a.first, rail)]].Sub(q).Dot(n) / f.d.Dot(n)))
		}
		up := f.d.Mul(a.turn)
		if n.Dot(up) < 0 {
			n = n.Mul(-1)
		}
		t.rim[k] = rim{from: h.node(on(a.from), rail, a.first-1), to: h.node(on(a.to), rail, a.last+1), centre: on(a.centre), normal: n, edge: bend{i, k, true}}
	}
	h.trim(c, a, t)
	var lowDrop, highDrop []int
	for k := a.first; k <= a.last; k++ {
		lowDrop, highDrop = append(lowDrop, c.low[wrap(k, c.low)]), append(highDrop, c.high[wrap(k, c.high)])
	}
	slices.Reverse(lowDrop)
	h.flats[low].replace(lowDrop, t.rim[0].to, t.rim[0].from, t.rim[0].edge.back())
	h.flats[high].replace(highDrop, t.rim[1].from, t.rim[1].to, t.rim[1].edge)
	h.tubes = append(h.tubes, t)
}

// leastSlope is the sine of the least angle between a cylinder's axis and the
// plane that ends it.
const leastSlope = 0.1

func wrap(i int, rail []int) int { return (i%len(rail) + len(rail)) % len(rail) }

// node gives the node at a place: that of the rail if it is there already.
func (h *hull) node(p geom.Vec3, rail []int, i int) int {
	if n := rail[wrap(i, rail)]; h.nodes[n].Sub(p).Len() < roundness {
		return n
	}
	h.nodes = append(h.nodes, p)
	return len(h.nodes) - 1
}

// beyond is the one face across the rail along an arc; false if there are more
// or if something else uses its corners.
func (h *hull) beyond(rail []int, a arc, facets []int, uses map[int][]int) (face int, ok bool) {
	face = -1
	for k := a.first; k <= a.last; k++ {
		for _, f := range uses[rail[wrap(k, rail)]] {
			if slices.Contains(facets, f) {
				continue
			}
			if face >= 0 && f != face {
				return 0, false
			}
			face = f
		}
	}
	return face, face >= 0
}

// trim ends the facets before and after an arc where it begins and ends, and
// takes those between away.
func (h *hull) trim(c chain, a arc, t tube) {
	for k := a.first - 1; k <= a.last; k++ {
		q := &h.flats[c.facets[wrap(k, c.facets)]]
		var keep bool
		if k == a.first-1 {
			keep = h.move(q, c, a.first, t.rim[0].from, t.rim[1].from, a.first-1)
		} else if k == a.last {
			keep = h.move(q, c, a.last, t.rim[0].to, t.rim[1].to, a.last+1)
		}
		q.gone = !keep
	}
}

// move puts nodes in the place of the ruling at a corner; false if they are
// those of the ruling beyond already.
func (h *hull) move(q *flat, c chain, corner, low, high, beyond int) bool {
	if c.low[wrap(beyond, c.low)] == low {
		return false
	}
	for i := range q.loops[0] {
		switch s := &q.loops[0][i]; s.node {
		case c.low[wrap(corner, c.low)]:
			s.node = low
		case c.high[wrap(corner, c.high)]:
			s.node = high
		}
	}
	return true
}

// replace puts a bend from one node to another in the place of corners that
// follow each other in a loop, if there are any between the two.
func (f *flat) replace(drop []int, from, to int, b bend) {
	for k, l := range f.loops {
		if len(drop) == 0 {
			if at := l.find(from); at >= 0 && l.next(at) == to {
				l[at].bent, l[at].bend = true, b
			}
			continue
		}
		at := l.find(drop[0])
		if at < 0 {
			continue
		}
		rest := append(slices.Clone(l[at:]), l[:at]...)[len(drop):]
		out := loop{{from, true, b}}
		if len(rest) > 0 && rest[len(rest)-1].node == from {
			rest = rest[:len(rest)-1]
		}
		if len(rest) == 0 || rest[0].node != to {
			out = append(out, stop{node: to})
		}
		f.loops[k] = append(out, rest...)
		return
	}
}
