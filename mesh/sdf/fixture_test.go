package sdf

import (
	"testing"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/testdata/sample"
)

const (
	thick = 45 * unit.MM
	deep  = 700 * unit.MM
)

// front makes the two arrises of a natural front edge, both ending in one
// upright line at either end: a hard twist.
func front(n int, length unit.Length) (lower, upper []geom.Vec3) {
	under, over := sample.Front(n, length)
	over[0].Y, over[n-1].Y = under[0].Y, under[n-1].Y
	for i := range under {
		lower, upper = append(lower, under[i].Up(0)), append(upper, over[i].Up(thick))
	}
	return lower, upper
}

// slab is a worktop with such a front.
func slab(t testing.TB, lower, upper []geom.Vec3) mesh.Mesh {
	t.Helper()
	first, last := lower[0].Flat(), lower[len(lower)-1].Flat()
	left, right := geom.V(first.X, deep), geom.V(last.X, deep)
	solid := geom.Slab{Top: thick, Outline: []geom.SlabEdge{
		{Name: "front", Path: flat(lower), Over: flat(upper)},
		{Name: "right", Path: []geom.Vec{last, right}},
		{Name: "back", Path: []geom.Vec{right, left}},
		{Name: "left", Path: []geom.Vec{left, first}},
	}}.Solid()
	if err := solid.Err(); err != nil {
		t.Fatal(err)
	}
	m, err := mesh.FromFaces(solid.Faces())
	if err != nil {
		t.Fatal(err)
	}
	return m
}
