package geom

import "slices"

// partition is the plane cut up by segments that meet in end points only.
// Edge e is a pair of half-edges: 2e runs from its lower-left end to its
// upper-right end, 2e+1 back. Faces lie to the left of half-edges; face 0 is
// the unbounded one.
type partition struct {
	pts    []pt    // vertices, sorted
	from   []int32 // vertex where each half-edge starts
	fan    []int32 // half-edges leaving each vertex, counter-clockwise from straight down
	fanAt  []int32 // where a vertex's part of fan starts; one entry more than vertices
	slot   []int32 // where a half-edge stands in fan
	deltas []step  // what crossing an edge from right to left of 2e changes
	stepAt []int32 // where an edge's part of deltas starts; one entry more than edges
	face   []int32 // face left of each half-edge
	owners int
	wind   []int32 // winding number of every owner, face by face
}

type step struct{ owner, delta int32 }

// arrange builds the partition made by the segments of a number of owners.
func arrange(segs []seg, owners int) *partition {
	p := &partition{owners: owners}
	p.merge(planarize(segs))
	p.sortFans()
	p.findFaces()
	return p
}

// merge makes one edge of all coincident segments and drops edges across
// which no winding number changes.
func (p *partition) merge(segs []seg) {
	for i, s := range segs {
		if s.b.before(s.a) {
			segs[i].a, segs[i].b, segs[i].delta = s.b, s.a, -s.delta
		}
	}
	slices.SortFunc(segs, func(s, t seg) int {
		if c := compare(s.a, t.a); c != 0 {
			return c
		}
		if c := compare(s.b, t.b); c != 0 {
			return c
		}
		return int(s.owner) - int(t.owner)
	})
	var ends []pt
	for i := 0; i < len(segs); {
		first, begin := segs[i], len(p.deltas)
		for i < len(segs) && segs[i].a == first.a && segs[i].b == first.b {
			d := step{owner: segs[i].owner}
			for ; i < len(segs) && segs[i].a == first.a && segs[i].b == first.b && segs[i].owner == d.owner; i++ {
				d.delta += segs[i].delta
			}
			if d.delta != 0 {
				p.deltas = append(p.deltas, d)
			}
		}
		if len(p.deltas) > begin {
			p.stepAt = append(p.stepAt, int32(begin))
			ends = append(ends, first.a, first.b)
		}
	}
	p.stepAt = append(p.stepAt, int32(len(p.deltas)))
	p.pts = slices.Clone(ends)
	slices.SortFunc(p.pts, compare)
	p.pts = slices.Compact(p.pts)
	p.from = make([]int32, len(ends))
	for h, e := range ends {
		i, _ := slices.BinarySearchFunc(p.pts, e, compare)
		p.from[h] = int32(i)
	}
}

func (p *partition) end(h int32) pt { return p.pts[p.from[h^1]] }

// sortFans orders the half-edges around every vertex.
func (p *partition) sortFans() {
	p.fanAt = make([]int32, len(p.pts)+1)
	for _, v := range p.from {
		p.fanAt[v+1]++
	}
	for v := range p.pts {
		p.fanAt[v+1] += p.fanAt[v]
	}
	fill := slices.Clone(p.fanAt)
	p.fan = make([]int32, len(p.from))
	for h, v := range p.from {
		p.fan[fill[v]] = int32(h)
		fill[v]++
	}
	p.slot = make([]int32, len(p.from))
	for v := range p.pts {
		fan := p.fan[p.fanAt[v]:p.fanAt[v+1]]
		slices.SortFunc(fan, func(g, h int32) int {
			// Even half-edges run to the right or straight up: they come first.
			if side := g&1 - h&1; side != 0 {
				return int(side)
			}
			switch o := orient(p.pts[v], p.end(g), p.end(h)); {
			case o > 0:
				return -1
			case o < 0:
				return 1
			}
			return 0
		})
		for i, h := range fan {
			p.slot[h] = p.fanAt[v] + int32(i)
		}
	}
}

// clockwise is the half-edge after h going clockwise around its start.
func (p *partition) clockwise(h int32) int32 {
	v := p.from[h]
	if i := p.slot[h]; i > p.fanAt[v] {
		return p.fan[i-1]
	}
	return p.fan[p.fanAt[v+1]-1]
}

// findFaces numbers the faces and carries the winding numbers from the
// unbounded face across all edges. A new connected part is met at its lowest
// vertex in sorted order; the face it lies in belongs to a part met earlier.
func (p *partition) findFaces() {
	p.face = make([]int32, len(p.from))
	for h := range p.face {
		p.face[h] = -1
	}
	p.wind = make([]int32, p.owners)
	var stack []int32
	for v := range p.pts {
		// The highest half-edge of the fan has the outside on its left.
		outer := p.fan[p.fanAt[v+1]-1]
		if p.face[outer] >= 0 {
			continue
		}
		stack = append(stack[:0], outer)
		p.walk(outer, p.faceAround(int32(v)))
		for len(stack) > 0 {
			h := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for g := h; ; {
				if p.face[g^1] < 0 {
					p.walk(g^1, p.across(g))
					stack = append(stack, g^1)
				}
				if g = p.clockwise(g ^ 1); g == h {
					break
				}
			}
		}
	}
}

// walk gives all half-edges of one boundary cycle their face.
func (p *partition) walk(h, face int32) {
	for g := h; p.face[g] < 0; g = p.clockwise(g ^ 1) {
		p.face[g] = face
	}
}

// across makes the face on the other side of h.
func (p *partition) across(h int32) int32 {
	n := int32(len(p.wind) / p.owners)
	f := int(p.face[h])
	p.wind = append(p.wind, p.wind[f*p.owners:(f+1)*p.owners]...)
	sign := int32(1)
	if h&1 == 0 {
		sign = -1
	}
	for _, d := range p.deltas[p.stepAt[h/2]:p.stepAt[h/2+1]] {
		p.wind[int(n)*p.owners+int(d.owner)] += sign * d.delta
	}
	return n
}

// faceAround finds the face just to the left of a vertex, by the nearest edge
// a ray to the left meets, a hair above the vertex.
func (p *partition) faceAround(v int32) int32 {
	at := p.pts[v]
	var nearest [2]pt
	face, found := int32(0), false
	for e := 0; 2*e < len(p.from) && p.from[2*e] < v; e++ {
		lo, hi, right := p.pts[p.from[2*e]], p.pts[p.from[2*e+1]], int32(2*e+1)
		if lo.y > hi.y {
			lo, hi, right = hi, lo, int32(2*e)
		}
		if lo.y > at.y || at.y >= hi.y || orient(lo, hi, at) >= 0 {
			continue
		}
		if e := [2]pt{lo, hi}; !found || rightOf(e, nearest) {
			nearest, face, found = e, p.face[right], true
		}
	}
	return face
}

// rightOf tells which of two upward edges that share a height and do not cross
// is further right there.
func rightOf(e, f [2]pt) bool {
	if e[0].y < f[0].y {
		return orient(e[0], e[1], f[0]) > 0
	}
	if o := orient(f[0], f[1], e[0]); o != 0 {
		return o < 0
	}
	return orient(f[0], f[1], e[1]) < 0
}
