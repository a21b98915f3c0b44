package motion

import "math"

// posed is the moving part in one pose; its slices are used again for the next.
type posed struct {
	own    []Body
	bodies []Body
}

func newPosed(own []Body) *posed {
	p := &posed{own: own, bodies: make([]Body, len(own))}
	for i, b := range own {
		p.bodies[i] = Body{Name: b.Name, Slack: b.Slack, points: make([]vec, len(b.points)), normals: make([]vec, len(b.normals)), edges: make([]vec, len(b.edges))}
	}
	return p
}

func (p *posed) to(c coords) {
	r, at := c.rotation(), vec{c[X], c[Y], c[Z]}
	for i := range p.own {
		from, b := &p.own[i], &p.bodies[i]
		for k, v := range from.points {
			b.points[k] = r.of(v).add(at)
		}
		for k, v := range from.normals {
			b.normals[k] = r.of(v)
		}
		for k, v := range from.edges {
			b.edges[k] = r.of(v)
		}
		b.box = boxOf(b.points).widened(from.wide)
	}
}

// near is the closest pair: how far they are apart (negative: how far one must
// be moved to come clear), and which they are.
type near struct {
	gap        float64 // at most the true distance; exact where they overlap
	own, fixed int     // bodies; -1 if there are none
	slack      float64
}

// closest measures the part as it is posed against everything fixed. Distances
// above far are not looked into.
func (p *posed) closest(fixed []Body, far float64) near {
	best := near{far, -1, -1, 0}
	for i := range p.bodies {
		a := &p.bodies[i]
		for j := range fixed {
			b := &fixed[j]
			if a.box.gap(b.box) >= best.gap {
				continue
			}
			if s, _ := separation(a, b, best.gap); s < best.gap {
				best = near{s, i, j, float64(a.Slack + b.Slack)}
			}
		}
	}
	return best
}

// separation is the largest separation of two convex bodies along the normals of
// their faces and the common normals of their edges: the exact depth when they
// overlap, no more than their distance when they do not. It stops at enough. The
// direction is that of the largest separation found.
func separation(a, b *Body, enough float64) (float64, vec) {
	best, along := math.Inf(-1), vec{}
	for k, n := range b.normals {
		lo, hi := span(a.points, n)
		if s := max(b.spans[k][0]-hi, lo-b.spans[k][1]); s > best {
			best, along = s, n
			if best >= enough {
				return best, along
			}
		}
	}
	apart := func(n vec) bool {
		lo, hi := span(a.points, n)
		l, h := span(b.points, n)
		if s := max(l-hi, lo-h); s > best {
			best, along = s, n
		}
		return best >= enough
	}
	for _, n := range a.normals {
		if apart(n) {
			return best, along
		}
	}
	for _, e := range a.edges {
		for _, f := range b.edges {
			if n, ok := e.cross(f).unit(); ok && apart(n) {
				return best, along
			}
		}
	}
	return best, along
}
