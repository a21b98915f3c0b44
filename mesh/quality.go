package mesh

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// SliverBound is the altitude below which a triangle counts as a sliver.
// FromFaces makes one only where the face has an edge shorter than about this,
// or a corner nearer than about this to one of its other edges.
const SliverBound = unit.Micrometre

// Quality tells how thin the triangles of a mesh are.
type Quality struct {
	Lowest  unit.Length // smallest altitude of any triangle
	Surface string      // surface that triangle lies in
	At      geom.Vec3   // its middle
	Slivers int         // triangles with an altitude below SliverBound
}

// Measure finds the thinnest triangle of a mesh without loose indices and counts
// the slivers.
func Measure(m Mesh) Quality {
	q := Quality{Lowest: unit.Length(math.Inf(1))}
	for i := range m.Triangles {
		a, b, c := m.corners(i)
		h := altitude(a, b, c)
		if h < SliverBound {
			q.Slivers++
		}
		if h < q.Lowest {
			q.Lowest = h
			q.Surface = m.Facets[m.FacetOf[i]].Surface
			q.At = a.Add(b).Add(c).Mul(1.0 / 3)
		}
	}
	return q
}

// altitude is the smallest of a triangle's three altitudes.
func altitude(a, b, c geom.Vec3) unit.Length {
	u, v, w := b.Sub(a), c.Sub(a), c.Sub(b)
	long := max(u.Len(), v.Len(), w.Len())
	if long == 0 {
		return 0
	}
	return unit.Length(float64(u.Cross(v).Len()) / float64(long))
}
