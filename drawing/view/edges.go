package view

import (
	"math"
	"slices"
)

// Two faces whose normals differ by less than levelAngle are one plane, and a
// curved surface that meets its neighbour at less than smoothAngle runs into
// it: neither leaves an edge worth drawing. Curved surfaces are made of facets
// a few degrees apart.
const (
	levelAngle  = 0.001              // rad
	smoothAngle = 20 * math.Pi / 180 // rad
)

// edge is an edge to draw.
type edge struct {
	a, b   vertex
	stroke Stroke // without its kind
}

// meeting is an edge with the faces that share it. Where bodies of one item
// touch there are more than two; the first two are of one body.
type meeting struct {
	a, b  vertex
	faces [2]int
	n     int
}

// edges gives all edges to draw, each once, in the order of the faces: the
// borders of surfaces, and the outlines of those that turn away from the
// viewer.
func edges(skin []face) []edge {
	var out []edge
	for len(skin) > 0 {
		n := 1
		for n < len(skin) && skin[n].item == skin[0].item {
			n++
		}
		list := meet(skin[:n])
		out = slices.Grow(out, len(list))
		for _, m := range list {
			if e, ok := m.edge(skin); ok {
				out = append(out, e)
			}
		}
		skin = skin[n:]
	}
	return out
}

// meet finds the edges of the faces of one item.
func meet(skin []face) []meeting {
	sides := 0
	for _, f := range skin {
		for _, loop := range f.loops {
			sides += len(loop)
		}
	}
	list := make([]meeting, 0, sides/2)
	index := make(map[[6]uint64]int32, sides/2)
	for i := range skin {
		f := &skin[i]
		for _, loop := range f.loops {
			for k, a := range loop {
				b := loop[(k+1)%len(loop)]
				if b.less(a) {
					a, b = b, a
				}
				key := keyOf(a, b)
				at, seen := index[key]
				if !seen {
					at = int32(len(list))
					index[key] = at
					list = append(list, meeting{a: a, b: b})
				}
				if m := &list[at]; m.n < 2 {
					m.faces[m.n] = i
					m.n++
				}
			}
		}
	}
	return list
}

// keyOf gives equal keys to equal points; adding 0 turns -0 into 0.
func keyOf(a, b vertex) [6]uint64 {
	return [6]uint64{
		math.Float64bits(a.u + 0), math.Float64bits(a.v + 0), math.Float64bits(a.w + 0),
		math.Float64bits(b.u + 0), math.Float64bits(b.v + 0), math.Float64bits(b.w + 0),
	}
}

// edge gives the edge to draw, if there is one.
func (m *meeting) edge(skin []face) (edge, bool) {
	f := &skin[m.faces[0]]
	e := edge{m.a, m.b, f.stroke(Visible)}
	if m.n == 1 {
		return e, true
	}
	g := &skin[m.faces[1]]
	if !f.curved && g.curved {
		e.stroke = g.stroke(Visible)
	}
	return e, worth(f, g)
}

// worth tells whether the edge between two faces is drawn.
func worth(f, g *face) bool {
	if f.facing() != g.facing() {
		return true
	}
	if f.surface == g.surface {
		return false
	}
	least := levelAngle
	if f.curved || g.curved {
		least = smoothAngle
	}
	return f.n.dot(g.n) < math.Cos(least)
}

// stroke is how lines of the face are drawn.
func (f *face) stroke(k Kind) Stroke {
	s := Stroke{Item: f.item, Kind: k, Curved: f.curved}
	if f.curved {
		s.Surface = f.surface
	}
	return s
}
