package mesh

import (
	"errors"
	"fmt"
	"math"

	"slabwright/model/geom"
)

// FromFaces triangulates the skin of a solid into a closed mesh. Vertices are
// welded where all their bits agree, so the volume is that of the faces.
// Inside each flat face the triangulation is Delaunay: a triangle lower than
// SliverBound appears only where the face itself is that narrow.
//
// Where a solid touches itself along an edge or in a point, the vertices there
// are kept apart, each with its own body of material; they share their place.
//
// The error names the face and the place when faces are not flat polygons that
// close up with each other; that is a fault of the solid, not of its user.
func FromFaces(faces []geom.Face) (Mesh, error) {
	if len(faces) == 0 {
		return Mesh{}, errors.New("mesh: solid without faces")
	}
	var m Mesh
	index := make(map[geom.Vec3]int32)
	for i, f := range faces {
		tris, err := triangulate(f)
		if err != nil {
			return Mesh{}, fmt.Errorf("mesh: face %d (%s): %w", i, f.Surface, err)
		}
		var ids []int32
		for _, loop := range f.Loops {
			for _, v := range loop {
				id, ok := index[v]
				if !ok {
					id = int32(len(m.Vertices))
					index[v] = id
					m.Vertices = append(m.Vertices, v)
				}
				ids = append(ids, id)
			}
		}
		for _, t := range tris {
			m.Triangles = append(m.Triangles, [3]int32{ids[t[0]], ids[t[1]], ids[t[2]]})
			m.FacetOf = append(m.FacetOf, int32(i))
		}
		m.Facets = append(m.Facets, Facet{Surface: f.Surface, Curved: f.Curved, Normal: f.Normal})
	}
	if err := m.detach(); err != nil {
		return Mesh{}, err
	}
	return m, nil
}

// triangulate cuts a flat face into triangles over its vertices, numbered
// through all loops in order.
func triangulate(f geom.Face) ([][3]int32, error) {
	var space []geom.Vec3
	for _, loop := range f.Loops {
		if len(loop) < 3 {
			return nil, fmt.Errorf("a loop of %d corners", len(loop))
		}
		for _, v := range loop {
			if !finite(v) {
				return nil, errors.New("a corner is not a real number")
			}
			space = append(space, v)
		}
	}
	if len(f.Loops) == 0 {
		return nil, errors.New("no outline")
	}
	normal := newell(f.Loops[0])
	if normal.Dot(f.Normal) <= 0 {
		return nil, errors.New("the outline runs against the outward normal")
	}
	flat := projection(normal)
	loops := make([][]geom.Vec, len(f.Loops))
	plane := make([]geom.Vec, 0, len(space))
	for i, loop := range f.Loops {
		for _, v := range loop {
			plane = append(plane, flat(v))
		}
		loops[i] = plane[len(plane)-len(loop):]
	}
	tris := geom.TriangulateLoops(loops)
	if len(tris) == 0 {
		return nil, errors.New("no triangles fill it")
	}
	fan := make([][3]int32, len(tris))
	for i, t := range tris {
		fan[i] = [3]int32{int32(t[0]), int32(t[1]), int32(t[2])}
	}
	return delaunay(space, plane, fan), nil
}

// newell is the area vector of a loop (twice the area along its normal), sound
// for any polygon, however many of its corners lie on a line.
func newell(loop []geom.Vec3) geom.Vec3 {
	var n geom.Vec3
	for i := range loop {
		a, b := loop[i].Sub(loop[0]), loop[(i+1)%len(loop)].Sub(loop[0])
		n = n.Add(a.Cross(b))
	}
	return n
}

// projection drops the coordinate that the normal is nearest to and orders the
// other two so that the outline stays counter-clockwise. No coordinate is
// changed, so orientation in the plane is as exact as the corners.
func projection(n geom.Vec3) func(geom.Vec3) geom.Vec {
	x, y, z := math.Abs(float64(n.X)), math.Abs(float64(n.Y)), math.Abs(float64(n.Z))
	switch {
	case z >= x && z >= y && n.Z > 0:
		return func(v geom.Vec3) geom.Vec { return geom.V(v.X, v.Y) }
	case z >= x && z >= y:
		return func(v geom.Vec3) geom.Vec { return geom.V(v.Y, v.X) }
	case x >= y && n.X > 0:
		return func(v geom.Vec3) geom.Vec { return geom.V(v.Y, v.Z) }
	case x >= y:
		return func(v geom.Vec3) geom.Vec { return geom.V(v.Z, v.Y) }
	case n.Y > 0:
		return func(v geom.Vec3) geom.Vec { return geom.V(v.Z, v.X) }
	default:
		return func(v geom.Vec3) geom.Vec { return geom.V(v.X, v.Z) }
	}
}
