package step

import (
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// findRounds puts true round faces in the place of facets: whole cylinders and
// cones, and arcs of cylinders. What it does not recognise for sure stays as
// the kernel made it, flat facets.
func (h *hull) findRounds(faces []geom.Face) {
	uses := h.uses()
	var open []chain
	var rings []ring
	for _, c := range h.chains(faces) {
		if r, ok := h.ringOf(c); ok {
			rings = append(rings, r)
		} else {
			open = append(open, c)
		}
	}
	for _, r := range h.meeting(rings, uses) {
		h.turn(r)
	}
	h.cutHoles(faces)
	for _, c := range open {
		f, ok := h.parallel(c)
		if !ok || h.flats[c.facets[0]].gone {
			continue
		}
		pts := make([]geom.Vec, len(c.low))
		for i, n := range c.low {
			pts[i] = f.flat(h.nodes[n])
		}
		arcs := arcsOf(pts, c.closed)
		slices.Reverse(arcs) // the last first: places in the chain then stay valid
		for _, a := range arcs {
			h.bendIn(c, f, a, uses)
		}
	}
}

// uses tells which flat faces have a node.
func (h *hull) uses() map[int][]int {
	out := map[int][]int{}
	for i, f := range h.flats {
		for _, l := range f.loops {
			for _, s := range l {
				n := s.node
				if have := out[n]; len(have) == 0 || have[len(have)-1] != i {
					out[n] = append(have, i)
				}
			}
		}
	}
	return out
}

// roundness is how far places may lie off the circle that is recognised in
// them: the kernel's grid of a micrometre shows twice.
const roundness unit.Length = 0.004

// regular is a regular polygon.
type regular struct {
	radius  unit.Length // of the circle with its area
	apothem unit.Length // from the middle to its sides
	turn    float64     // +1 if it runs counter-clockwise, else -1
}

func circle(pts []geom.Vec) (regular, bool) {
	var mid geom.Vec
	var area float64
	for i, p := range pts {
		mid = mid.Add(p)
		area += p.Cross(pts[(i+1)%len(pts)]) / 2
	}
	n := float64(len(pts))
	mid = mid.Mul(1 / n)
	reach, side := pts[0].Sub(mid).Len(), pts[1].Sub(pts[0]).Len()
	for i, p := range pts {
		if off(p.Sub(mid).Len(), reach) || off(pts[(i+1)%len(pts)].Sub(p).Len(), side) {
			return regular{}, false
		}
	}
	r := math.Sqrt(math.Abs(area) / math.Pi)
	k := math.Sqrt(math.Pi / n / math.Tan(math.Pi/n)) // of the apothem to that radius
	return regular{unit.Length(r), unit.Length(r * k), math.Copysign(1, area)}, r > 0
}

func off(a, b unit.Length) bool { return math.Abs(float64(a-b)) > float64(roundness) }

// round goes to the micrometre of the kernel's grid.
func round(l unit.Length) unit.Length { return unit.Length(math.Round(float64(l)*1e3) / 1e3) }
