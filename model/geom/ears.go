package geom

import (
	"math"
	"slices"
)

// clipEars triangulates loops by cutting off corner after corner. It is the
// way out for loops so thin or so bent that rounding makes them cross: it
// takes the best corner there is, good or not, and so always comes to an end
// with a closed set of triangles.
func clipEars(loops [][]Vec) [][3]int {
	var at []Vec
	var rings [][]int
	for _, loop := range loops {
		var ring []int
		for _, v := range loop {
			ring = append(ring, len(at))
			at = append(at, v)
		}
		rings = append(rings, ring)
	}
	ring := joinRings(at, rings)
	rate := func(i int) float64 { return earQuality(at, ring, (i+len(ring))%len(ring)) }
	quality := make([]float64, len(ring))
	for i := range ring {
		quality[i] = rate(i)
	}
	var out [][3]int
	for len(ring) > 3 {
		best := maxIndex(quality)
		if quality[best] <= blocked { // cutting may have cleared some
			for i := range ring {
				quality[i] = rate(i)
			}
			best = maxIndex(quality)
		}
		out = append(out, ear(ring, best))
		ring, quality = slices.Delete(ring, best, best+1), slices.Delete(quality, best, best+1)
		for _, i := range [2]int{best + len(ring) - 1, best} {
			quality[i%len(ring)] = rate(i)
		}
	}
	if len(ring) == 3 {
		out = append(out, ear(ring, 1))
	}
	return out
}

func maxIndex(xs []float64) int {
	best := 0
	for i, x := range xs {
		if x > xs[best] {
			best = i
		}
	}
	return best
}

func ear(ring []int, i int) [3]int {
	n := len(ring)
	return [3]int{ring[(i+n-1)%n], ring[i], ring[(i+1)%n]}
}

// joinRings links the holes to the outline by the shortest cuts.
func joinRings(at []Vec, rings [][]int) []int {
	ring, rest := rings[0], slices.Clone(rings[1:])
	for len(rest) > 0 {
		near := math.Inf(1)
		var hole, from, to int
		for h, r := range rest {
			for j, b := range r {
				for i, a := range ring {
					if d := float64(at[a].Sub(at[b]).Len()); d < near {
						near, hole, from, to = d, h, i, j
					}
				}
			}
		}
		r := rest[hole]
		loop := append(slices.Clone(r[to:]), r[:to+1]...)
		ring = slices.Insert(slices.Clone(ring), from+1, append(loop, ring[from])...)
		rest = slices.Delete(rest, hole, hole+1)
	}
	return ring
}

// blocked is worse than any height of a corner.
const blocked = -1e8

// earQuality is the height of the corner over its base, in millimetres; blocked
// or less if cutting it off would cross other corners.
func earQuality(at []Vec, ring []int, i int) float64 {
	e := ear(ring, i)
	a, b, c := at[e[0]], at[e[1]], at[e[2]]
	h := b.Sub(a).Cross(c.Sub(b)) / max(float64(c.Sub(a).Len()), 1e-9)
	for _, k := range ring {
		p := at[k]
		if p == a || p == b || p == c {
			continue
		}
		if b.Sub(a).Cross(p.Sub(a)) >= 0 && c.Sub(b).Cross(p.Sub(b)) >= 0 && a.Sub(c).Cross(p.Sub(c)) >= 0 {
			return blocked + min(h, 0)
		}
	}
	return h
}
