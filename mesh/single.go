package mesh

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Single is a mesh in the float32 numbers of the file formats. Vertices count
// from Origin.
type Single struct {
	Origin    geom.Vec3
	Vertices  [][3]float32
	Triangles [][3]int32
	FacetOf   []int32
	Facets    []Facet
}

// Middle is the centre of the bounds in whole millimetres: an origin from which
// float32 keeps any part up to four metres to 1e-4 mm, and which float32 itself
// keeps exactly.
func (m Mesh) Middle() geom.Vec3 {
	box := m.Bounds()
	mid := box.Min.Add(box.Max).Mul(0.5)
	whole := func(l unit.Length) unit.Length { return unit.Length(math.Round(float64(l))) }
	return geom.Vec3{X: whole(mid.X), Y: whole(mid.Y), Z: whole(mid.Z)}
}

// Single rounds the vertices, counted from origin, to float32. An edge whose
// ends round to one point is collapsed and its two triangles dropped. Vertices
// without a common edge that would come to lie in one point (walls of less than
// a rounding step, bodies touching in an edge) are set one step apart. A
// closed mesh stays closed, also for readers that weld by position.
func (m Mesh) Single(origin geom.Vec3) Single {
	s := Single{Origin: origin, Facets: m.Facets}
	at := make([][3]float32, len(m.Vertices))
	for i, v := range m.Vertices {
		d := v.Sub(origin)
		at[i] = [3]float32{float32(d.X), float32(d.Y), float32(d.Z)}
	}
	merged := newGroups(len(m.Vertices))
	for _, t := range m.Triangles {
		for k := range 3 {
			if a, b := t[k], t[(k+1)%3]; at[a] == at[b] {
				merged.join(a, b)
			}
		}
	}
	s.collapse(m, merged)
	if n := len(s.Triangles); n < len(m.Triangles) && (n == 0 || openEdges(s.Triangles, len(at)) > openEdges(m.Triangles, len(at))) {
		s.collapse(m, newGroups(len(at))) // it would pinch the mesh or lose it: keep all vertices apart
	}
	s.renumber(at)
	return s
}

// openEdges counts the sides without a single opposite.
func openEdges(tris [][3]int32, vertices int) int {
	return topology(tris, vertices, func(int) bool { return true }).OpenEdges
}

// collapse takes the triangles over the merged vertices, without those that
// vanish.
func (s *Single) collapse(m Mesh, merged groups) {
	s.Triangles = make([][3]int32, 0, len(m.Triangles))
	s.FacetOf = make([]int32, 0, len(m.Triangles))
	for i, t := range m.Triangles {
		t = [3]int32{merged.root(t[0]), merged.root(t[1]), merged.root(t[2])}
		if t[0] != t[1] && t[1] != t[2] && t[2] != t[0] {
			s.Triangles = append(s.Triangles, t)
			s.FacetOf = append(s.FacetOf, m.FacetOf[i])
		}
	}
}

// renumber keeps the vertices in use, each in a place of its own.
func (s *Single) renumber(at [][3]float32) {
	number := make([]int32, len(at)) // new number plus one
	taken := make(map[[3]float32]bool, len(at))
	for i := range s.Triangles {
		for k, v := range s.Triangles[i] {
			if number[v] == 0 {
				p := free(at[v], taken)
				taken[p] = true
				s.Vertices = append(s.Vertices, p)
				number[v] = int32(len(s.Vertices))
			}
			s.Triangles[i][k] = number[v] - 1
		}
	}
}

// free gives the point itself or, when it is taken, the first free one along an
// axis, in rounding steps of its largest coordinate.
func free(p [3]float32, taken map[[3]float32]bool) [3]float32 {
	if !taken[p] {
		return p
	}
	size := float32(1)
	for _, x := range p {
		size = max(size, x, -x)
	}
	step := math.Nextafter32(size, 2*size) - size
	for n := float32(1); ; n++ {
		for axis := range 3 {
			for _, way := range [2]float32{1, -1} {
				q := p
				q[axis] += way * n * step
				if !taken[q] {
					return q
				}
			}
		}
	}
}

// Normal is the outward unit normal of triangle i: that of its flat facet, else
// its own; up for a triangle without an area.
func (s Single) Normal(i int) [3]float32 {
	n := s.Facets[s.FacetOf[i]].Normal
	if n == (geom.Vec3{}) {
		n = s.area(i).Unit()
	}
	if n == (geom.Vec3{}) {
		n.Z = 1
	}
	return [3]float32{float32(n.X), float32(n.Y), float32(n.Z)}
}

// area is twice the area vector of triangle i.
func (s Single) area(i int) geom.Vec3 {
	t := s.Triangles[i]
	a, b, c := s.Corner(t[0]), s.Corner(t[1]), s.Corner(t[2])
	return b.Sub(a).Cross(c.Sub(a))
}

// Corner is a vertex, counted from Origin, as a vector.
func (s Single) Corner(v int32) geom.Vec3 {
	p := s.Vertices[v]
	return geom.Vec3{X: unit.Length(p[0]), Y: unit.Length(p[1]), Z: unit.Length(p[2])}
}
