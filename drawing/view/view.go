package view

import (
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
)

// Kind is what a line shows.
type Kind uint8

// The kinds of lines, in the order in which they win where they fall together
// (ISO 128-2: visible edges before hidden ones).
const (
	Cut     Kind = iota // outline of a cut face
	Visible             // edge or outline that is seen
	Hidden              // edge or outline behind something else
)

var kindNames = [...]string{"cut", "visible", "hidden"}

// String names the kind.
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return "unknown kind"
}

// Stroke is what the lines of a view have in common. Item is the index in the
// scene. Curved says that the line bounds or outlines a curved surface, such
// as a hole or a natural edge; Surface is the name of that surface, and empty
// for other lines.
type Stroke struct {
	Item    int
	Kind    Kind
	Curved  bool
	Surface string
}

// Segment is one straight line of a view.
type Segment struct {
	A, B geom.Vec
	Stroke
}

// CutArea is the face that a section cuts through an item, to be hatched. The
// loops have the material on their left: outlines run counter-clockwise, holes
// clockwise, so the even-odd rule fills them.
type CutArea struct {
	Item  int
	Loops [][]geom.Vec
}

// View holds the lines of a scene in true millimetres of the view plane,
// sorted by item and kind, and the areas cut by a section. Bounds is the box
// around all of them, zero if there are none.
type View struct {
	Segments []Segment
	Cuts     []CutArea
	Bounds   drawing.Rect
}

// Of draws a scene. Faces with coordinates that are no numbers or beyond a
// thousand kilometres are left out, as are smooth edges, where a curved surface runs into its neighbour.
func Of(s Scene, l Look) View {
	skin := project(s, l)
	var v View
	var lines []piece
	if l.cuts {
		skin, lines, v.Cuts = section(skin)
	}
	hide := newHider(s, skin)
	list := edges(skin)
	lines = slices.Grow(lines, len(list)+len(list)/4)
	for _, e := range list {
		lines = hide.split(lines, e, s.Items[e.stroke.Item])
	}
	lines = join(coincide(lines, s))
	v.Segments = make([]Segment, len(lines))
	for i, p := range lines {
		v.Segments[i] = p.segment()
	}
	v.Bounds = v.bounds()
	return v
}

func (v View) bounds() drawing.Rect {
	var r drawing.Rect
	first := true
	take := func(p geom.Vec) {
		if first {
			r, first = drawing.Rect{Min: p, Max: p}, false
		}
		r = r.Union(drawing.Rect{Min: p, Max: p})
	}
	for _, s := range v.Segments {
		take(s.A)
		take(s.B)
	}
	for _, c := range v.Cuts {
		for _, l := range c.Loops {
			for _, p := range l {
				take(p)
			}
		}
	}
	return r
}
