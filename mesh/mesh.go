// Package mesh turns exact solids into closed triangle meshes and judges them.
//
// Vertices stay float64 and are welded by exact equality, so a mesh is as exact
// as the faces it came from; Single rounds it to the float32 numbers of the
// file formats without opening it. Lengths are millimetres, z is up. The
// formats themselves are adapters in the folders below, all with the same
// shape: Write(w, Scene) error.
package mesh

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Facet tells what a group of triangles belongs to: one flat face of a solid,
// or one freely shaped surface.
type Facet struct {
	Surface string    // name of the surface, as in geom.Face
	Curved  bool      // shading normals are shared with neighbours of the same Surface
	Normal  geom.Vec3 // outward unit normal of a flat facet; zero when not flat
}

// Mesh is a triangle mesh, counter-clockwise seen from outside. FacetOf gives
// for every triangle its index into Facets.
type Mesh struct {
	Vertices  []geom.Vec3
	Triangles [][3]int32
	FacetOf   []int32
	Facets    []Facet
}

// Volume is the signed volume enclosed by a closed mesh; exact to float64
// rounding, as the sum of tetrahedra about the middle of the mesh.
func (m Mesh) Volume() unit.Volume {
	box := m.Bounds()
	mid := box.Min.Add(box.Max).Mul(0.5)
	sum := 0.0
	for i := range m.Triangles {
		a, b, c := m.corners(i)
		sum += a.Sub(mid).Dot(b.Sub(mid).Cross(c.Sub(mid)))
	}
	return unit.Volume(sum / 6)
}

// Bounds is the smallest axis-parallel box around the vertices; the zero box
// for an empty mesh.
func (m Mesh) Bounds() geom.Box {
	if len(m.Vertices) == 0 {
		return geom.Box{}
	}
	box := geom.Box{Min: m.Vertices[0], Max: m.Vertices[0]}
	for _, v := range m.Vertices[1:] {
		box.Min = geom.Vec3{X: min(box.Min.X, v.X), Y: min(box.Min.Y, v.Y), Z: min(box.Min.Z, v.Z)}
		box.Max = geom.Vec3{X: max(box.Max.X, v.X), Y: max(box.Max.Y, v.Y), Z: max(box.Max.Z, v.Z)}
	}
	return box
}

// Placed takes the mesh from the part's own axes to the room's.
func (m Mesh) Placed(p geom.Pose) Mesh {
	out := m
	out.Vertices = make([]geom.Vec3, len(m.Vertices))
	for i, v := range m.Vertices {
		out.Vertices[i] = p.Space(v)
	}
	out.Facets = make([]Facet, len(m.Facets))
	for i, f := range m.Facets {
		f.Normal = f.Normal.Flat().Turn(p.Turn).Up(f.Normal.Z)
		out.Facets[i] = f
	}
	return out
}

// Join puts several meshes side by side into one; nothing is welded.
func Join(meshes ...Mesh) Mesh {
	if len(meshes) == 1 {
		return meshes[0]
	}
	var out Mesh
	for _, m := range meshes {
		v0, f0 := int32(len(out.Vertices)), int32(len(out.Facets))
		out.Vertices = append(out.Vertices, m.Vertices...)
		out.Facets = append(out.Facets, m.Facets...)
		for i, t := range m.Triangles {
			out.Triangles = append(out.Triangles, [3]int32{t[0] + v0, t[1] + v0, t[2] + v0})
			out.FacetOf = append(out.FacetOf, m.FacetOf[i]+f0)
		}
	}
	return out
}

// corners gives the three corners of triangle i.
func (m Mesh) corners(i int) (a, b, c geom.Vec3) {
	t := m.Triangles[i]
	return m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
}

// finite tells whether all three coordinates are real numbers.
func finite(v geom.Vec3) bool {
	s := float64(v.X) + float64(v.Y) + float64(v.Z)
	return !math.IsNaN(s) && !math.IsInf(s, 0)
}
