package sdf

import (
	"errors"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// hole is a mesh without the flat faces of a natural edge. The arrises run so
// that the outside lies to their right.
type hole struct {
	mesh         mesh.Mesh // vertices complete, triangles only those that stay
	surface      string
	lower, upper []int32 // the arrises as vertices
}

// cutOut takes the flat faces of the edge out of the mesh and finds the arrises
// in their rim.
func cutOut(m mesh.Mesh, e Edge) (hole, error) {
	h := hole{surface: e.Surface, mesh: mesh.Mesh{Vertices: m.Vertices, Facets: m.Facets}}
	sides := make(map[[2]int32]bool)
	var order [][2]int32
	for i, t := range m.Triangles {
		if !e.owns(m.Facets[m.FacetOf[i]]) {
			h.mesh.Triangles = append(h.mesh.Triangles, t)
			h.mesh.FacetOf = append(h.mesh.FacetOf, m.FacetOf[i])
			continue
		}
		for k := range 3 {
			s := [2]int32{t[k], t[(k+1)%3]}
			sides[s] = true
			order = append(order, s)
		}
	}
	if len(order) == 0 {
		return hole{}, errors.New("no face of the mesh is called so")
	}
	next := make(map[int32]int32)
	var start int32
	for _, s := range order {
		if !sides[[2]int32{s[1], s[0]}] {
			next[s[0]], start = s[1], s[0]
		}
	}
	round := []int32{start}
	for v := next[start]; v != start && len(round) <= len(next); v = next[v] {
		round = append(round, v)
	}
	if len(round) != len(next) {
		return hole{}, errors.New("its faces are not one strip with two ends")
	}
	return h, h.arrises(round)
}

// arrises divides the rim, once around and seen from outside counter-clockwise,
// into the two arrises.
func (h *hole) arrises(round []int32) error {
	z := func(v int32) unit.Length { return h.mesh.Vertices[v].Z }
	low, high := z(round[0]), z(round[0])
	for _, v := range round {
		low, high = min(low, z(v)), max(high, z(v))
	}
	if !(high-low >= 1) {
		return errors.New("its faces are less than 1 mm high")
	}
	n := len(round)
	for i := range round {
		if z(round[i]) == low && z(round[(i+n-1)%n]) != low { // the lower arris starts here
			round = append(append([]int32{}, round[i:]...), round[:i]...)
			break
		}
	}
	half := n / 2
	h.lower, h.upper = round[:half], reversed(round[half:])
	for i := range half {
		if n%2 == 1 || half < 2 || z(h.lower[i]) != low || z(h.upper[i]) != high {
			return errors.New("its faces do not end in two level arrises with the same number of corners")
		}
	}
	return nil
}

// places are the vertices themselves.
func (h hole) places(ids []int32) []geom.Vec3 {
	out := make([]geom.Vec3, len(ids))
	for i, v := range ids {
		out[i] = h.mesh.Vertices[v]
	}
	return out
}

func reversed[T any](s []T) []T {
	out := make([]T, len(s))
	for i, v := range s {
		out[len(s)-1-i] = v
	}
	return out
}

// fill closes the hole with a net and gives the whole mesh.
func (h hole) fill(n net) mesh.Mesh {
	out := mesh.Mesh{
		Vertices:  append([]geom.Vec3{}, h.mesh.Vertices...),
		Triangles: append([][3]int32{}, h.mesh.Triangles...),
		FacetOf:   append([]int32{}, h.mesh.FacetOf...),
		Facets:    append(append([]mesh.Facet{}, h.mesh.Facets...), mesh.Facet{Surface: h.surface, Curved: true}),
	}
	ids := h.number(n, &out)
	split(&out, rimPoints(h, n, ids))
	facet := int32(len(out.Facets) - 1)
	for c := range ids[1:] {
		for j := range ids[c][1:] {
			q := [4]int32{ids[c][j], ids[c+1][j], ids[c+1][j+1], ids[c][j+1]}
			p := func(k int) geom.Vec3 { return out.Vertices[q[k]] }
			a := 1
			if cutsUp(p(0), p(1), p(2), p(3)) {
				a = 0
			}
			out.Triangles = append(out.Triangles,
				[3]int32{q[a], q[a+1], q[a+2]}, [3]int32{q[a+2], q[(a+3)%4], q[a]})
			out.FacetOf = append(out.FacetOf, facet, facet)
		}
	}
	return out
}

// number gives every point of the net its vertex: the corners of the arrises
// have theirs already.
func (h hole) number(n net, out *mesh.Mesh) [][]int32 {
	ids := make([][]int32, len(n.points))
	for c, column := range n.points {
		ids[c] = make([]int32, len(column))
		for j := range column {
			ids[c][j] = -1
		}
	}
	top := len(n.points[0]) - 1
	for i, c := range n.from {
		ids[c][0], ids[c][top] = h.lower[i], h.upper[i]
	}
	for c, column := range n.points {
		for j, p := range column {
			if ids[c][j] < 0 {
				ids[c][j] = int32(len(out.Vertices))
				out.Vertices = append(out.Vertices, p)
			}
		}
	}
	return ids
}

// rimPoints gives the vertices that the net puts on each side of the rim, keyed
// by the side as the neighbouring face runs along it, in that order.
func rimPoints(h hole, n net, ids [][]int32) map[[2]int32][]int32 {
	out := make(map[[2]int32][]int32)
	top, last := len(ids[0])-1, len(ids)-1
	for i := range n.from[1:] {
		var below, above []int32
		for c := n.from[i] + 1; c < n.from[i+1]; c++ {
			below, above = append(below, ids[c][0]), append(above, ids[c][top])
		}
		out[[2]int32{h.lower[i+1], h.lower[i]}] = reversed(below)
		out[[2]int32{h.upper[i], h.upper[i+1]}] = above
	}
	out[[2]int32{ids[0][0], ids[0][top]}] = ids[0][1:top]
	out[[2]int32{ids[last][top], ids[last][0]}] = reversed(ids[last][1:top])
	return out
}

// split cuts the triangles along the rim so that they have the new vertices on
// their straight sides as corners.
func split(m *mesh.Mesh, points map[[2]int32][]int32) {
	for i := 0; i < len(m.Triangles); i++ {
		t := m.Triangles[i]
		for k := range 3 {
			a, b, c := t[k], t[(k+1)%3], t[(k+2)%3]
			on := points[[2]int32{a, b}]
			if len(on) == 0 {
				continue
			}
			// the first piece replaces the triangle, the others come behind and
			// are looked at in their turn
			m.Triangles[i] = [3]int32{a, on[0], c}
			for x, v := range on {
				end := b
				if x+1 < len(on) {
					end = on[x+1]
				}
				m.Triangles = append(m.Triangles, [3]int32{v, end, c})
				m.FacetOf = append(m.FacetOf, m.FacetOf[i])
			}
			i-- // its other sides may be on the rim too
			break
		}
	}
}
