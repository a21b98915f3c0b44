package step

import (
	"math"
	"slices"

	"slabwright/model/geom"
)

// ring is a closed chain that goes all the way round a circle.
type ring struct {
	chain
	tube
	f    frame
	ends [2]end // what lies beyond its two rails
}

// end is the loop of a flat face that is nothing but the rail, or the rail of
// another ring.
type end struct {
	face, loop int
	other      *ring
	rail       int
}

// leastFacets is how many facets a whole circle has at least.
const leastFacets = 8

// ringOf recognises a closed chain as a cylinder or cone.
func (h *hull) ringOf(c chain) (ring, bool) {
	r := ring{chain: c}
	if !c.closed || len(c.facets) < leastFacets {
		return r, false
	}
	var centre [2]geom.Vec3
	for k, rail := range r.rails() {
		for _, n := range rail {
			centre[k] = centre[k].Add(h.nodes[n])
		}
		centre[k] = centre[k].Mul(1 / float64(len(rail)))
	}
	r.at, r.dir = centre[0], centre[1].Sub(centre[0]).Unit()
	if r.dir == (geom.Vec3{}) {
		return r, false
	}
	r.f = frameOf(r.at, r.dir)
	var shape [2]regular
	for k, rail := range r.rails() {
		var pts []geom.Vec
		for _, n := range rail {
			if math.Abs(h.nodes[n].Sub(centre[k]).Dot(r.dir)) > 1e-6 {
				return r, false
			}
			pts = append(pts, r.f.flat(h.nodes[n]))
		}
		var ok bool
		if shape[k], ok = circle(pts); !ok {
			return r, false
		}
	}
	r.inside = shape[0].turn < 0
	r.radius[0], r.radius[1] = round(shape[0].radius), round(shape[1].radius)
	// Slopes run square to the sides: the wider rail is no circle of its own.
	if wider := shape[1].apothem - shape[0].apothem; wider > 0 {
		r.radius[1] = round(shape[0].radius + wider)
	} else {
		r.radius[0] = round(shape[1].radius - wider)
	}
	for k := range 2 {
		r.rim[k] = rim{from: -1, to: -1, centre: centre[k], normal: r.dir.Mul(shape[0].turn)}
	}
	return r, true
}

func (c chain) rails() [2][]int { return [2][]int{c.low, c.high} }

// meeting keeps the rings beyond both of whose rails lies a loop of a flat face
// or another ring that is kept.
func (h *hull) meeting(rings []ring, uses map[int][]int) []*ring {
	var kept []*ring
	for i := range rings {
		kept = append(kept, &rings[i])
	}
	for {
		n := len(kept)
		kept = slices.DeleteFunc(kept, func(r *ring) bool {
			for k, rail := range r.rails() {
				var ok bool
				if r.ends[k], ok = h.beyondRail(r, rail, kept, uses); !ok {
					return true
				}
			}
			return false
		})
		if len(kept) == n {
			return kept
		}
	}
}

// beyondRail finds what alone uses a rail besides the ring itself.
func (h *hull) beyondRail(r *ring, rail []int, kept []*ring, uses map[int][]int) (end, bool) {
	for _, o := range kept {
		for k, other := range o.rails() {
			if o != r && len(other) == len(rail) && slices.Contains(other, rail[0]) && h.only(rail, uses, r.facets, o.facets) {
				return end{other: o, rail: k}, true
			}
		}
	}
	face := -1
	for _, f := range uses[rail[0]] {
		if !slices.Contains(r.facets, f) {
			face = f
		}
	}
	if face < 0 || !h.only(rail, uses, r.facets, []int{face}) {
		return end{}, false
	}
	for k, l := range h.flats[face].loops {
		if len(l) == len(rail) && l.find(rail[0]) >= 0 {
			return end{face: face, loop: k}, true
		}
	}
	return end{}, false
}

// only tells whether no other faces than those given use the nodes of a rail.
func (h *hull) only(rail []int, uses map[int][]int, a, b []int) bool {
	for _, n := range rail {
		for _, f := range uses[n] {
			if !slices.Contains(a, f) && !slices.Contains(b, f) {
				return false
			}
		}
	}
	return true
}

// turn puts a tube in the place of a ring. Where it meets a ring that has been
// turned already, both share the circle.
func (h *hull) turn(r *ring) {
	i := len(h.tubes)
	for k := range 2 {
		m, e := &r.rim[k], r.ends[k]
		if e.other != nil && e.other.rim[e.rail].from >= 0 {
			o := e.other.rim[e.rail]
			m.from, m.to, m.edge = o.from, o.to, o.edge
			r.radius[k] = e.other.radius[e.rail]
			if e.rail == k { // both rails are low or both high: one runs the other way round
				m.edge = o.edge.back()
			}
			continue
		}
		n := len(h.nodes)
		h.nodes = append(h.nodes, m.centre.Add(r.f.u.Mul(float64(r.radius[k]))))
		m.from, m.to, m.edge = n, n, bend{i, k, true}
		if e.other == nil {
			h.flats[e.face].loops[e.loop] = loop{{n, true, bend{i, k, k == 1}}}
		}
	}
	for _, q := range r.facets {
		h.flats[q].gone = true
	}
	h.tubes = append(h.tubes, r.tube)
}
