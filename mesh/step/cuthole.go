package step

import (
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// cutHole is a round hole that other cuts run into: its facets stand all round
// but reach from different heights to different heights. Seen along its axis
// the facets are the sides of a regular polygon, some of them divided where the
// side of another cut arrives.
type cutHole struct {
	f      frame
	facets []int         // in order
	lines  map[int][]int // nodes of the ruling before each facet, from low to high
	pts    []geom.Vec    // and its place
	centre geom.Vec
	radius unit.Length
	turn   float64
}

// cutHoles finds them among the facets that are still there and puts a part of
// a cylinder between every two places where a side of another cut arrives.
func (h *hull) cutHoles(faces []geom.Face) {
	groups := map[string][]int{}
	var order []string
	for i, f := range faces {
		if f.Curved && !h.flats[i].gone && len(h.flats[i].loops) == 1 {
			if groups[f.Surface] == nil {
				order = append(order, f.Surface)
			}
			groups[f.Surface] = append(groups[f.Surface], i)
		}
	}
	for _, name := range order {
		if c, ok := h.cutHole(groups[name]); ok {
			h.bendAll(c)
		}
	}
}

// cutHole strings the facets of a surface into a ring.
func (h *hull) cutHole(group []int) (cutHole, bool) {
	var c cutHole
	if len(group) < leastFacets {
		return c, false
	}
	d := h.flats[group[0]].normal.Cross(h.flats[group[1]].normal).Unit()
	if d == (geom.Vec3{}) {
		return c, false
	}
	c.f = frameOf(h.nodes[h.flats[group[0]].loops[0][0].node], d)
	after := map[geom.Vec]int{} // the facet that starts at a place
	for _, i := range group {
		from, _, ok := h.ends(c.f, i)
		if !ok {
			return c, false
		}
		after[from] = i
	}
	if len(after) != len(group) {
		return c, false
	}
	for at := group[0]; ; {
		from, to, _ := h.ends(c.f, at)
		c.facets, c.pts = append(c.facets, at), append(c.pts, from)
		next, ok := after[to]
		if !ok || len(c.facets) > len(group) {
			return c, false
		}
		if at = next; at == group[0] {
			break
		}
	}
	if len(c.facets) != len(group) {
		return c, false
	}
	return c, h.shape(&c)
}

// grid is finer than that of the kernel.
func onGrid(p geom.Vec) geom.Vec {
	return geom.V(unit.Length(math.Round(float64(p.X)*1e5)/1e5), unit.Length(math.Round(float64(p.Y)*1e5)/1e5))
}

// ends are the places, seen along the axis, from which to which the low side of
// a facet runs; false if the facet does not stand along the axis.
func (h *hull) ends(f frame, i int) (from, to geom.Vec, ok bool) {
	l := h.flats[i].loops[0]
	low := 0
	for k, s := range l {
		if f.along(h.nodes[s.node]) < f.along(h.nodes[l[low].node])-1e-6 {
			low = k
		}
	}
	from = onGrid(f.flat(h.nodes[l[low].node]))
	to = onGrid(f.flat(h.nodes[l.next(low)]))
	if from == to { // the low side runs up to this corner
		to = from
		from = onGrid(f.flat(h.nodes[l[(low+len(l)-1)%len(l)].node]))
	}
	for _, s := range l {
		if p := onGrid(f.flat(h.nodes[s.node])); p != from && p != to {
			return from, to, false
		}
	}
	return from, to, from != to
}

// shape recognises the circle by the corners that are none of a division.
func (h *hull) shape(c *cutHole) bool {
	n := len(c.pts)
	var corners []geom.Vec
	for i, p := range c.pts {
		if !c.divided(i) {
			corners = append(corners, p)
		}
	}
	if len(corners) < leastFacets || len(corners) == n {
		return false
	}
	r, ok := circle(corners)
	if !ok {
		return false
	}
	for _, p := range corners {
		c.centre = c.centre.Add(p)
	}
	c.centre, c.radius, c.turn = c.centre.Mul(1/float64(len(corners))), round(r.radius), r.turn
	return true
}

// divided tells whether the sides before and after a place are in line.
func (c *cutHole) divided(i int) bool {
	n := len(c.pts)
	a, b := c.pts[i].Sub(c.pts[(i+n-1)%n]), c.pts[(i+1)%n].Sub(c.pts[i])
	return math.Abs(math.Atan2(a.Cross(b), a.Dot(b))) < 10*evenTurn
}

// bendAll moves the divisions onto the circle, along the sides that arrive
// there, and puts tubes between them; nothing happens if one is not clear.
func (h *hull) bendAll(c cutHole) {
	uses := h.uses()
	n := len(c.pts)
	var breaks []int
	moved := map[int]geom.Vec3{}
	for i := range n {
		if !c.divided(i) {
			continue
		}
		breaks = append(breaks, i)
		to, ok := h.arrival(c, i, uses)
		if !ok {
			return
		}
		for _, k := range h.line(c, i) {
			moved[k] = c.f.space(to, c.f.along(h.nodes[k]))
		}
	}
	var tubes []tube
	var lows, highs []int
	for k, from := range breaks {
		to := breaks[(k+1)%len(breaks)]
		if to <= from {
			to += n
		}
		t, low, high, ok := h.between(c, from, to, uses)
		if !ok {
			return
		}
		tubes, lows, highs = append(tubes, t), append(lows, low), append(highs, high)
	}
	for k, p := range moved {
		h.nodes[k] = p
	}
	for k, t := range tubes {
		i := len(h.tubes)
		for m := range t.rim {
			t.rim[m].edge = bend{i, m, true}
		}
		from, to := breaks[k], breaks[(k+1)%len(breaks)]
		if to <= from {
			to += n
		}
		var low, high []int
		for j := from + 1; j < to; j++ {
			l := h.line(c, j%n)
			low, high = append(low, l[0]), append(high, l[len(l)-1])
		}
		slices.Reverse(low)
		h.flats[lows[k]].replace(low, t.rim[0].to, t.rim[0].from, t.rim[0].edge.back())
		h.flats[highs[k]].replace(high, t.rim[1].from, t.rim[1].to, t.rim[1].edge)
		h.tubes = append(h.tubes, t)
	}
	for _, q := range c.facets {
		h.flats[q].gone = true
	}
}

// line is the nodes of the facets on the ruling at a place, from low to high.
func (h *hull) line(c cutHole, i int) []int {
	n := len(c.facets)
	var out []int
	for _, q := range [2]int{c.facets[(i+n-1)%n], c.facets[i]} {
		for _, s := range h.flats[q].loops[0] {
			if onGrid(c.f.flat(h.nodes[s.node])) == c.pts[i] && !slices.Contains(out, s.node) {
				out = append(out, s.node)
			}
		}
	}
	slices.SortFunc(out, func(a, b int) int { return compare(c.f.along(h.nodes[a]), c.f.along(h.nodes[b])) })
	return out
}

func compare(a, b unit.Length) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// arrival is where the side of another cut meets the circle.
func (h *hull) arrival(c cutHole, i int, uses map[int][]int) (geom.Vec, bool) {
	p := c.pts[i]
	l := h.line(c, i)
	for k := range l[1:] {
		for _, q := range uses[l[k]] {
			n := h.flats[q].normal
			if slices.Contains(c.facets, q) || !slices.Contains(uses[l[k+1]], q) || math.Abs(n.Dot(c.f.d)) > 1e-9 {
				continue
			}
			along := geom.V(unit.Length(n.Dot(c.f.u)), unit.Length(n.Dot(c.f.v))).Left()
			foot := geom.Line{P: p, D: along}
			near := p.Add(along.Mul(float64(foot.Along(c.centre))))
			half := float64(c.radius*c.radius) - math.Pow(float64(near.Sub(c.centre).Len()), 2)
			if half <= 0 {
				return p, false
			}
			d := along.Mul(math.Sqrt(half))
			a, b := near.Add(d), near.Sub(d)
			if a.Sub(p).Len() > b.Sub(p).Len() {
				a = b
			}
			return a, a.Sub(p).Len() < 1
		}
	}
	return p, false
}

// between is the tube from one division to the next, and the faces beyond its
// rims.
func (h *hull) between(c cutHole, from, to int, uses map[int][]int) (t tube, low, high int, ok bool) {
	n := len(c.pts)
	span := func(k int) []int { // the nodes of a facet's own ruling, of those at its end
		q := h.flats[c.facets[k%n]].loops[0]
		at := k
		if k == to-1 {
			at = to
		}
		return slices.DeleteFunc(h.line(c, at%n), func(m int) bool { return q.find(m) < 0 })
	}
	first, last := slices.DeleteFunc(h.line(c, from%n), func(m int) bool { return h.flats[c.facets[from%n]].loops[0].find(m) < 0 }), span(to-1)
	var rails [2][]int
	for k := from; k < to; k++ {
		if k > from {
			l := h.line(c, k%n)
			if len(l) != 2 {
				return t, 0, 0, false
			}
			rails[0], rails[1] = append(rails[0], l[0]), append(rails[1], l[1])
		}
	}
	var beyond [2]int
	for m, pair := range [2][2]int{{first[0], last[0]}, {first[len(first)-1], last[len(last)-1]}} {
		face := -1
		for _, node := range append([]int{pair[0], pair[1]}, rails[m]...) {
			on := uses[node]
			if face >= 0 && !slices.Contains(on, face) {
				return t, 0, 0, false
			}
			for _, q := range on {
				if face < 0 && !slices.Contains(c.facets, q) && math.Abs(h.flats[q].normal.Dot(c.f.d)) > 1-1e-9 {
					face = q
				}
			}
		}
		if face < 0 {
			return t, 0, 0, false
		}
		beyond[m] = face
		z := c.f.along(h.nodes[pair[0]])
		t.rim[m] = rim{from: pair[0], to: pair[1], centre: c.f.space(c.centre, z), normal: c.f.d.Mul(c.turn)}
	}
	t.at, t.dir, t.inside = t.rim[0].centre, c.f.d, c.turn < 0
	t.radius = [2]unit.Length{c.radius, c.radius}
	t.up, t.down = last[1:len(last)-1], slices.Clone(first[1:len(first)-1])
	slices.Reverse(t.down)
	return t, beyond[0], beyond[1], true
}
