package gltf

import (
	"math"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// shaded is a mesh split so that every vertex has one shading normal.
type shaded struct {
	place, normal [][3]float32
	index         []uint32
}

// corners splits the vertices between flat facets, which shade flat; triangles
// of a curved surface share the mean normal of that surface at each vertex,
// weighted by the angle of each corner.
func corners(m mesh.Single) shaded {
	sheets := sheetOf(m)
	mean := make(map[[2]int32]geom.Vec3)
	for i, t := range m.Triangles {
		if m.Facets[m.FacetOf[i]].Curved {
			n := vec(m.Normal(i))
			for k := range 3 {
				key := [2]int32{t[k], sheets[m.FacetOf[i]]}
				mean[key] = mean[key].Add(n.Mul(angle(m, t, k)))
			}
		}
	}
	var out shaded
	number := make(map[[2]int32]uint32)
	for i, t := range m.Triangles {
		curved := m.Facets[m.FacetOf[i]].Curved
		for k := range 3 {
			key := [2]int32{t[k], sheets[m.FacetOf[i]]}
			id, ok := number[key]
			if !ok {
				id = uint32(len(out.place))
				number[key] = id
				n := m.Normal(i)
				if u := mean[key].Unit(); curved && u != (geom.Vec3{}) {
					n = [3]float32{float32(u.X), float32(u.Y), float32(u.Z)}
				}
				out.place = append(out.place, m.Vertices[t[k]])
				out.normal = append(out.normal, n)
			}
			out.index = append(out.index, id)
		}
	}
	return out
}

// sheetOf numbers the shading sheets: each flat facet is its own, curved facets
// of one surface are one together.
func sheetOf(m mesh.Single) []int32 {
	sheets := make([]int32, len(m.Facets))
	first := make(map[string]int32)
	for i, f := range m.Facets {
		sheets[i] = int32(i)
		if !f.Curved {
			continue
		}
		if s, ok := first[f.Surface]; ok {
			sheets[i] = s
		} else {
			first[f.Surface] = int32(i)
		}
	}
	return sheets
}

// angle is the angle in radians at corner k of a triangle.
func angle(m mesh.Single, t [3]int32, k int) float64 {
	a := m.Corner(t[k])
	u, v := m.Corner(t[(k+1)%3]).Sub(a), m.Corner(t[(k+2)%3]).Sub(a)
	return math.Atan2(float64(u.Cross(v).Len()), u.Dot(v))
}

func vec(n [3]float32) geom.Vec3 {
	return geom.Vec3{X: unit.Length(n[0]), Y: unit.Length(n[1]), Z: unit.Length(n[2])}
}
