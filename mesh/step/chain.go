package step

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// chain is a strip of facets, each a flat quadrilateral that shares a ruling
// with the next: facet i lies between the rulings i and i+1, and its outline
// runs low[i], low[i+1], high[i+1], high[i].
type chain struct {
	facets    []int
	low, high []int // nodes at the ends of the rulings
	closed    bool  // the last ruling is the first one
}

// chains strings the facets of each surface together. Surfaces that are no
// plain strips are left alone.
func (h *hull) chains(faces []geom.Face) []chain {
	quad := func(i int) bool { return len(h.flats[i].loops) == 1 && len(h.flats[i].loops[0]) == 4 }
	beside := map[pair]int{} // the quadrilateral to the left of a line, plus one
	for i := range h.flats {
		if quad(i) {
			for _, s := range h.flats[i].loops[0].sides() {
				beside[s] = i + 1
			}
		}
	}
	// over gives the quadrilateral of the same surface across side k of another.
	over := func(i, k int) (int, int, bool) {
		s := h.flats[i].loops[0].sides()[k]
		j := beside[pair{s[1], s[0]}] - 1
		if j < 0 || faces[j].Surface != faces[i].Surface {
			return 0, 0, false
		}
		for m, t := range h.flats[j].loops[0].sides() {
			if t == (pair{s[1], s[0]}) {
				return j, m, true
			}
		}
		return 0, 0, false
	}
	seen := make([]bool, len(h.flats))
	var out []chain
	for i := range h.flats {
		if seen[i] || !quad(i) || !faces[i].Curved {
			continue
		}
		// The side over which the strip goes on; the ruling behind is opposite.
		at, k := i, -1
		for side := range 4 {
			if _, _, ok := over(i, side); ok {
				k = side
				break
			}
		}
		if k < 0 {
			continue
		}
		first, back, closed := at, (k+2)%4, false
		for { // back to the start of the strip
			j, m, ok := over(first, back)
			if !ok {
				break
			}
			if j == i {
				closed = true
				break
			}
			first, back = j, (m+2)%4
		}
		if closed {
			first, back = at, (k+2)%4
		}
		c := chain{closed: closed}
		for f, b := first, back; ; {
			seen[f] = true
			n := h.flats[f].loops[0]
			// The ruling behind runs from high to low, then the outline goes on along low.
			c.facets = append(c.facets, f)
			c.high, c.low = append(c.high, n[b].node), append(c.low, n[(b+1)%4].node)
			j, m, ok := over(f, (b+2)%4)
			if !ok || j == first {
				if !closed {
					c.low, c.high = append(c.low, n[(b+2)%4].node), append(c.high, n[(b+3)%4].node)
				}
				break
			}
			f, b = j, m
		}
		if h.strip(c) {
			out = append(out, c)
		}
	}
	return out
}

// strip tells whether the facets have no other neighbours of their own surface
// than those in the chain, which would make it a net.
func (h *hull) strip(c chain) bool {
	rails := map[pair]bool{}
	for i := range c.facets {
		j := (i + 1) % len(c.low)
		rails[pair{c.low[i], c.low[j]}] = true
		rails[pair{c.high[j], c.high[i]}] = true
	}
	for r := range rails {
		if rails[pair{r[1], r[0]}] {
			return false
		}
	}
	return len(c.facets) > 1
}

// frame looks at a chain along its rulings.
type frame struct {
	o, u, v, d geom.Vec3
}

func (f frame) flat(p geom.Vec3) geom.Vec {
	q := p.Sub(f.o)
	return geom.V(unit.Length(q.Dot(f.u)), unit.Length(q.Dot(f.v)))
}

// space takes a place back, at a distance along the rulings.
func (f frame) space(p geom.Vec, along unit.Length) geom.Vec3 {
	return f.o.Add(f.u.Mul(float64(p.X))).Add(f.v.Mul(float64(p.Y))).Add(f.d.Mul(float64(along)))
}

func (f frame) along(p geom.Vec3) unit.Length { return unit.Length(p.Sub(f.o).Dot(f.d)) }

// sameDirection is how far the sine of the angle between parallel rulings may
// be from 0: places are rounded to a micrometre.
const sameDirection = 1e-6

// along gives the frame of a chain whose rulings are parallel.
func (h *hull) parallel(c chain) (frame, bool) {
	d := h.nodes[c.high[0]].Sub(h.nodes[c.low[0]]).Unit()
	for i := range c.low {
		e := h.nodes[c.high[i]].Sub(h.nodes[c.low[i]]).Unit()
		if float64(d.Cross(e).Len()) > sameDirection || d.Dot(e) < 0 {
			return frame{}, false
		}
	}
	return frameOf(h.nodes[c.low[0]], d), true
}

func frameOf(o, d geom.Vec3) frame {
	u := geom.Vec3{Z: 1}
	if math.Abs(float64(d.Z)) > 0.9 {
		u = geom.Vec3{X: 1}
	}
	u = u.Sub(d.Mul(u.Dot(d))).Unit()
	return frame{o, u, d.Cross(u), d}
}
