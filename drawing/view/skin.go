package view

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// edgeOn is the sine of the angle between a face and the view below which the
// face counts as seen edge-on: two metres of it cover two micrometres.
const edgeOn = 1e-6

// onPlane is how near to a cutting plane a point counts as on it, in mm. It
// only takes up rounding of the turned coordinates.
const onPlane = 1e-7

// farthest is the greatest coordinate taken to be meant, in mm: a thousand
// kilometres.
const farthest = 1e9

// vertex is a point in the axes of a look: u right, v up, w to the viewer.
type vertex struct{ u, v, w float64 }

func (a vertex) sub(b vertex) vertex  { return vertex{a.u - b.u, a.v - b.v, a.w - b.w} }
func (a vertex) dot(b vertex) float64 { return a.u*b.u + a.v*b.v + a.w*b.w }
func (a vertex) cross(b vertex) vertex {
	return vertex{a.v*b.w - a.w*b.v, a.w*b.u - a.u*b.w, a.u*b.v - a.v*b.u}
}
func (a vertex) lerp(b vertex, t float64) vertex {
	return vertex{a.u + (b.u-a.u)*t, a.v + (b.v-a.v)*t, a.w + (b.w-a.w)*t}
}

// flat is the point as drawn; adding 0 turns -0 into 0.
func (a vertex) flat() geom.Vec { return geom.V(unit.Length(a.u+0), unit.Length(a.v+0)) }

// drawn is the length of a line as drawn.
func drawn(a, b vertex) float64 { return math.Hypot(b.u-a.u, b.v-a.v) }

// less orders points, so that an edge is computed alike from both its faces.
func (a vertex) less(b vertex) bool {
	if a.u != b.u {
		return a.u < b.u
	}
	if a.v != b.v {
		return a.v < b.v
	}
	return a.w < b.w
}

// face is a face in the axes of a look. Its loops follow the even-odd rule in
// any order, so that a cut face may fall into several pieces.
type face struct {
	loops   [][]vertex
	n       vertex // outward unit normal
	item    int
	surface string
	curved  bool
}

// front tells whether the face is seen from outside.
func (f *face) front() bool { return f.facing() > 0 }

// facing is 1 for faces turned to the viewer, 0 for those seen edge-on and -1
// for those turned away.
func (f *face) facing() int {
	switch {
	case f.n.w > edgeOn:
		return 1
	case f.n.w < -edgeOn:
		return -1
	}
	return 0
}

// project turns all faces of the scene into the axes of the look. Points that
// are the same in the room stay the same, bit for bit.
func project(s Scene, l Look) []face {
	faces, corners := 0, 0
	for _, it := range s.Items {
		faces += len(it.Faces)
		for _, f := range it.Faces {
			for _, loop := range f.Loops {
				corners += len(loop)
			}
		}
	}
	out := make([]face, 0, faces)
	room := make([]vertex, corners)
	for i, it := range s.Items {
		for _, f := range it.Faces {
			g := face{item: i, surface: f.Surface, curved: f.Curved, loops: make([][]vertex, 0, len(f.Loops))}
			for _, loop := range f.Loops {
				if len(loop) < 3 {
					continue
				}
				var h []vertex
				h, room = room[:len(loop):len(loop)], room[len(loop):]
				for k, p := range loop {
					q := p.Sub(l.origin)
					h[k] = vertex{q.Dot(l.right), q.Dot(l.up), q.Dot(l.out)}
				}
				g.loops = append(g.loops, h)
			}
			if g.square() {
				out = append(out, g)
			}
		}
	}
	return out
}

// square sets the normal of a face from its loops; false if the face has no
// area or coordinates that are no numbers or out of all reason.
func (f *face) square() bool {
	var n vertex
	for _, loop := range f.loops {
		for _, p := range loop {
			if !(max(math.Abs(p.u), math.Abs(p.v), math.Abs(p.w)) < farthest) {
				return false
			}
		}
		for i := 1; i+1 < len(loop); i++ {
			c := loop[i].sub(loop[0]).cross(loop[i+1].sub(loop[0]))
			n.u, n.v, n.w = n.u+c.u, n.v+c.v, n.w+c.w
		}
	}
	size := math.Sqrt(n.dot(n))
	if size == 0 {
		return false
	}
	f.n = vertex{n.u / size, n.v / size, n.w / size}
	return true
}
