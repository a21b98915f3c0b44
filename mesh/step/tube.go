package step

import (
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// tube is a round face: all of a cylinder or cone between two rims, or the part
// of a cylinder between two lines along it.
type tube struct {
	at, dir geom.Vec3      // of the axis; dir is a unit vector from rim 0 to rim 1
	radius  [2]unit.Length // at the two rims; equal for a cylinder
	rim     [2]rim
	inside  bool // a hole: the material lies outside
	// Nodes on the lines between the rims, up from the end of rim 0 and down to
	// its start, where something else ends.
	up, down []int
}

// rim is where a tube ends: an arc from one node to another about a centre in a
// plane, counter-clockwise about its normal. Both rims run the same way.
type rim struct {
	from, to       int // the same node for a whole circle
	centre, normal geom.Vec3
	edge           bend // which curved edge it is: its own, or that of the tube it meets there
}

// edge is one edge in the boundary of a face.
type edge struct {
	bent bool
	bend bend
	line pair
}

// boundary is the outline of a round face, counter-clockwise seen from outside.
// A tube that goes all round has a seam, which the outline passes both ways.
func (t tube) boundary() []edge {
	a, b := t.rim[0], t.rim[1]
	out := []edge{{bent: true, bend: a.edge}}
	out = append(out, lines(a.to, t.up, b.to)...)
	out = append(out, edge{bent: true, bend: b.edge.back()})
	return append(out, lines(b.from, t.down, a.from)...)
}

func lines(from int, over []int, to int) []edge {
	var out []edge
	for _, n := range append(slices.Clone(over), to) {
		out = append(out, edge{line: pair{from, n}})
		from = n
	}
	return out
}

// back is the edge the other way.
func (b bend) back() bend { return bend{b.tube, b.rim, !b.forward} }
