package model

import (
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// SlabPiece describes a slab of solid wood: a worktop, an infill, a shelf. It
// is an immutable value; every method gives a new one.
type SlabPiece struct {
	species     stock.Species
	thickness   unit.Length
	kind        Kind
	left, right Bounder
	backs       []Bounder
	sideGap     unit.Length
	backGap     unit.Length
	depth       unit.Length
	meets       string // slab whose back edge the front meets
	meetGap     unit.Length
	top         unit.Length
	topGiven    bool
	front       FrontEdge
	ease        unit.Length
	work        []work
	rods        *rods
	faults      faults
}

// Slab is a slab of a species and a finished thickness.
func Slab(s stock.Species, thickness unit.Length) SlabPiece {
	p := SlabPiece{species: s, thickness: thickness, kind: KindSlab}
	if !(thickness >= 10 && thickness <= 200) {
		p.faults = p.faults.and(faultf("a slab of thickness %.4g mm: 10 to 200 mm can be described", float64(thickness)))
	}
	return p
}

// Shelf is a slab that hangs above the worktop.
func Shelf(s stock.Species, thickness unit.Length) SlabPiece {
	p := Slab(s, thickness)
	p.kind = KindShelf
	return p
}

// Between gives the left and the right bound.
func (p SlabPiece) Between(left, right Bounder) SlabPiece {
	p.left, p.right = left, right
	return p
}

// Against gives what the back edge follows, left to right.
func (p SlabPiece) Against(backs ...Bounder) SlabPiece {
	p.backs = append([]Bounder(nil), backs...)
	return p
}

// Gaps keeps the sides and the back away from walls, for fitting and for the
// wood to move.
func (p SlabPiece) Gaps(sides, back unit.Length) SlabPiece {
	p.sideGap, p.backGap = sides, back
	return p.checked("gap", sides, 0, 100).checked("gap", back, 0, 100)
}

// Depth is the distance from the back edge to the straight front edge; a
// natural edge goes beyond it and nowhere behind.
func (p SlabPiece) Depth(d unit.Length) SlabPiece {
	p.depth = d
	return p.checked("depth", d, 50, 3000)
}

// Meeting lets the front edge run up to the back edge of a slab that is
// already in the design, with a joint gap: an infill in a recess.
func (p SlabPiece) Meeting(slab string, gap unit.Length) SlabPiece {
	p.meets, p.meetGap = slab, gap
	return p.checked("joint gap", gap, 0, 50)
}

// SurfaceAt puts the upper face at a height above the floor.
func (p SlabPiece) SurfaceAt(z unit.Length) SlabPiece {
	p.top, p.topGiven = z, true
	return p.checked("height", z, 0, 4000)
}

// UndersideAt puts the lower face at a height above the floor.
func (p SlabPiece) UndersideAt(z unit.Length) SlabPiece { return p.SurfaceAt(z + p.thickness) }

// Front says what the front edge is: a natural edge, or straight when not said.
func (p SlabPiece) Front(e FrontEdge) SlabPiece {
	p.front = e
	return p
}

// Eased takes the sharp arrises off every edge by a chamfer. A slab with a
// natural front keeps its sawn edges sharp: they meet the bark and lie against
// walls.
func (p SlabPiece) Eased(by unit.Length) SlabPiece {
	p.ease = by
	return p.checked("chamfer", by, 0, 20)
}

func (p SlabPiece) checked(what string, v, low, high unit.Length) SlabPiece {
	if !(v >= low && v <= high) {
		p.faults = p.faults.and(faultf("a %s of %.4g mm: %.4g to %.4g mm can be described", what, float64(v), float64(low), float64(high)))
	}
	return p
}

// work is a piece of wood work as described; it is placed when the slab's
// outline is known.
type work struct {
	Feature
	x, back unit.Length
	path    []geom.Vec
	line    string
}

// At is a place on a slab: x from the left end along the back edge, and the
// distance from the back edge.
type At struct{ X, Back unit.Length }

// Hole bores a round hole through the slab, such as one for cables.
func (p SlabPiece) Hole(name string, at At, dia unit.Length) SlabPiece {
	return p.with(work{Feature: Feature{Name: name, Kind: Through, Dia: dia}, x: at.X, back: at.Back})
}

// Groove cuts a groove along a path of places, from one face.
func (p SlabPiece) Groove(name string, face Face, width, depth unit.Length, path ...At) SlabPiece {
	w := work{Feature: Feature{Name: name, Kind: Groove, Face: face, Dia: width, Depth: depth}}
	for _, a := range path {
		w.path = append(w.path, geom.V(a.X, -a.Back))
	}
	if len(path) < 2 {
		p.faults = p.faults.and(faultf("groove %q: a groove runs through two places at least", name))
		return p
	}
	return p.with(w)
}

// Pocket cuts a rectangular pocket of a depth from one face; at is its left
// corner nearest the back edge, size is along the back edge and away from it.
func (p SlabPiece) Pocket(name string, face Face, at At, sizeX, sizeBack, depth unit.Length) SlabPiece {
	return p.with(work{Feature: Feature{Name: name, Kind: Pocket, Face: face, Depth: depth,
		Outline: geom.Rect(geom.V(at.X, -at.Back-sizeBack), geom.V(at.X+sizeX, -at.Back))}})
}

// CutOut takes a rectangle out of the slab, through its whole thickness: a
// notch round a pipe, an opening for a socket.
func (p SlabPiece) CutOut(name string, at At, sizeX, sizeBack unit.Length) SlabPiece {
	return p.with(work{Feature: Feature{Name: name, Kind: CutOut,
		Outline: geom.Rect(geom.V(at.X, -at.Back-sizeBack), geom.V(at.X+sizeX, -at.Back))}})
}

// Serving says what the last described work serves, for lists and sheets.
func (p SlabPiece) Serving(what string) SlabPiece {
	if n := len(p.work); n > 0 {
		p.work = append([]work(nil), p.work...)
		p.work[n-1].For = what
	}
	return p
}

func (p SlabPiece) with(w work) SlabPiece {
	w.line = callLine()
	p.work = append(p.work[:len(p.work):len(p.work)], w)
	return p
}
