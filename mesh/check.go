package mesh

import (
	"errors"
	"fmt"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Report is what Check found.
type Report struct {
	Parts      int         // pieces that hang together by edges
	InsideOut  int         // pieces with negative volume: closed hollows inside the material
	Volume     unit.Volume // signed, hollows taken off
	OpenEdges  int         // sides whose opposite is missing or not the only one
	Repeated   int         // triangles over the same three corners as an earlier one
	Collapsed  int         // triangles with two corners in one vertex
	OutOfRange int         // triangles whose corners or facet do not exist
}

// Err is nil for a mesh that is closed, repeats nothing and encloses a positive
// volume; otherwise it says everything that is wrong.
func (r Report) Err() error {
	var errs []error
	say := func(n int, what string) {
		if n > 0 {
			errs = append(errs, fmt.Errorf("mesh: %d %s", n, what))
		}
	}
	say(r.OutOfRange, "triangles point at missing vertices or facets")
	say(r.OpenEdges, "sides have no single opposite: the mesh is not closed")
	say(r.Repeated, "triangles are repeated")
	say(r.Collapsed, "triangles have two corners in one vertex")
	if len(errs) == 0 && !(r.Volume > 0) {
		errs = append(errs, fmt.Errorf("mesh: volume %g mm3 is not positive", float64(r.Volume)))
	}
	return errors.Join(errs...)
}

// Check looks whether the mesh bounds a body: every directed edge exactly once
// and its opposite exactly once, no triangle twice, positive volume. It looks
// at how triangles hang together, not whether they cut through each other.
func Check(m Mesh) Report {
	r := topology(m.Triangles, len(m.Vertices), func(i int) bool {
		return i < len(m.FacetOf) && m.FacetOf[i] >= 0 && int(m.FacetOf[i]) < len(m.Facets)
	})
	if r.OutOfRange > 0 {
		return r
	}
	pieces := pieces(m.Triangles)
	mid := m.Bounds()
	origin := mid.Min.Add(mid.Max).Mul(0.5)
	volumes := make(map[int32]float64)
	var order []int32
	for i := range m.Triangles {
		p := pieces.root(int32(i))
		if _, ok := volumes[p]; !ok {
			order = append(order, p)
		}
		volumes[p] += tetrahedron(origin, m, i)
	}
	r.Parts = len(order)
	for _, p := range order {
		if volumes[p] < 0 {
			r.InsideOut++
		}
	}
	r.Volume = m.Volume()
	return r
}

// tetrahedron is the signed volume in mm3 between triangle i and a point.
func tetrahedron(o geom.Vec3, m Mesh, i int) float64 {
	a, b, c := m.corners(i)
	return a.Sub(o).Dot(b.Sub(o).Cross(c.Sub(o))) / 6
}

// topology judges triangles over n vertices; known tells whether the facet of a
// triangle exists.
func topology(tris [][3]int32, n int, known func(int) bool) Report {
	var r Report
	uses := make(map[[2]int32]int32, 3*len(tris))
	seen := make(map[[3]int32]bool, len(tris))
	for i, t := range tris {
		if min(t[0], t[1], t[2]) < 0 || int(max(t[0], t[1], t[2])) >= n || !known(i) {
			r.OutOfRange++
			continue
		}
		if t[0] == t[1] || t[1] == t[2] || t[2] == t[0] {
			r.Collapsed++
		}
		lo, hi := min(t[0], t[1], t[2]), max(t[0], t[1], t[2])
		key := [3]int32{lo, t[0] ^ t[1] ^ t[2] ^ lo ^ hi, hi}
		if seen[key] {
			r.Repeated++
		}
		seen[key] = true
		for k := range 3 {
			uses[[2]int32{t[k], t[(k+1)%3]}]++
		}
	}
	if r.OutOfRange > 0 {
		return r
	}
	for _, t := range tris {
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			if uses[[2]int32{a, b}] != 1 || uses[[2]int32{b, a}] != 1 {
				r.OpenEdges++
			}
		}
	}
	return r
}

// pieces groups triangles that share an edge.
func pieces(tris [][3]int32) groups {
	g := newGroups(len(tris))
	first := make(map[[2]int32]int32, 2*len(tris))
	for i, t := range tris {
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			key := [2]int32{min(a, b), max(a, b)}
			if j, ok := first[key]; ok {
				g.join(int32(i), j)
			} else {
				first[key] = int32(i)
			}
		}
	}
	return g
}
