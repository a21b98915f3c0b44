package view

import (
	"cmp"
	"slices"
)

// axis picks a coordinate of a vertex.
type axis uint8

const (
	alongU axis = iota
	alongV
	alongW
)

func (x axis) of(p vertex) float64 {
	switch x {
	case alongU:
		return p.u
	case alongV:
		return p.v
	}
	return p.w
}

// at gives p with one coordinate set.
func (x axis) at(p vertex, c float64) vertex {
	switch x {
	case alongU:
		p.u = c
	case alongV:
		p.v = c
	case alongW:
		p.w = c
	}
	return p
}

// direction is the unit vector of the axis.
func (x axis) direction() vertex { return x.at(vertex{}, 1) }

// meet is the point at which the edge a-b crosses the plane where the
// coordinate is c. It is the same, bit for bit, for b-a.
func (x axis) meet(a, b vertex, c float64) vertex {
	if b.less(a) {
		a, b = b, a
	}
	ca, cb := x.of(a), x.of(b)
	switch c {
	case ca:
		return a
	case cb:
		return b
	}
	return x.at(a.lerp(b, (c-ca)/(cb-ca)), c)
}

// seam is an edge that a clip has made, in the direction of the clipped face.
type seam struct{ from, to vertex }

// clip keeps the part of a flat face with normal n whose coordinate is below c
// (or, with beyond, not below c). Points on the plane count as not below it:
// the two parts always add up to the whole. The loops follow the even-odd
// rule before and after.
func clip(loops [][]vertex, n vertex, x axis, c float64, beyond bool) (kept [][]vertex, seams []seam) {
	var chains [][]vertex
	for _, loop := range loops {
		whole, parts := clipLoop(loop, x, c, beyond)
		if whole {
			kept = append(kept, loop)
		}
		chains = append(chains, parts...)
	}
	if len(chains) == 0 {
		return kept, nil
	}
	// Along the seam, the k-th point where a chain leaves and the k-th where
	// one enters bound the same stretch of the face, since these stretches
	// do not overlap.
	along := n.cross(x.direction())
	leave, enter := make([]int, len(chains)), make([]int, len(chains))
	for i := range chains {
		leave[i], enter[i] = i, i
	}
	slices.SortStableFunc(leave, func(i, j int) int {
		return cmp.Compare(last(chains[i]).dot(along), last(chains[j]).dot(along))
	})
	slices.SortStableFunc(enter, func(i, j int) int {
		return cmp.Compare(chains[i][0].dot(along), chains[j][0].dot(along))
	})
	next := make([]int, len(chains))
	for k, i := range leave {
		next[i] = enter[k]
		if a, b := last(chains[i]), chains[enter[k]][0]; a != b {
			seams = append(seams, seam{a, b})
		}
	}
	done := make([]bool, len(chains))
	for i := range chains {
		var loop []vertex
		for j := i; !done[j]; j = next[j] {
			done[j] = true
			loop = append(loop, chains[j]...)
		}
		if loop = dropRepeats(loop); len(loop) > 2 {
			kept = append(kept, loop)
		}
	}
	return kept, seams
}

// clipLoop gives the chains of a loop that lie on the kept side, with their
// end points on the plane; whole if the loop does not cross the plane at all.
func clipLoop(loop []vertex, x axis, c float64, beyond bool) (whole bool, chains [][]vertex) {
	keeps := func(p vertex) bool { return (x.of(p) < c) != beyond }
	start := -1
	any := false
	for i, p := range loop {
		k := keeps(p)
		any = any || k
		if k && !keeps(loop[(i+len(loop)-1)%len(loop)]) {
			start = i
		}
	}
	if start < 0 {
		return any, nil
	}
	var chain []vertex
	prev := loop[(start+len(loop)-1)%len(loop)]
	for i := range loop {
		p := loop[(start+i)%len(loop)]
		switch before, now := keeps(prev), keeps(p); {
		case now && !before:
			chain = []vertex{x.meet(prev, p, c), p}
		case now:
			chain = append(chain, p)
		case before:
			chains = append(chains, append(chain, x.meet(prev, p, c)))
		}
		prev = p
	}
	return false, chains
}

func last(c []vertex) vertex { return c[len(c)-1] }

// dropRepeats leaves out points equal to the one before them.
func dropRepeats(loop []vertex) []vertex {
	out := loop[:0]
	for _, p := range loop {
		if len(out) == 0 || out[len(out)-1] != p {
			out = append(out, p)
		}
	}
	for len(out) > 1 && out[0] == last(out) {
		out = out[:len(out)-1]
	}
	return out
}
