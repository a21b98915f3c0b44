package model

import (
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
	depthGiven  bool
	meets       string // slab whose back edge the front meets
	meetGap     unit.Length
	top         unit.Length
	topGiven    bool
	front       FrontEdge
	ease        unit.Length
	work        []work
	rods        *Rods
	rodsLine    string
	faults      faults
}

// Slab is a slab of a species and a finished thickness.
func Slab(s stock.Species, thickness unit.Length) SlabPiece {
	p := SlabPiece{species: s, thickness: thickness, kind: KindSlab}
	p.faults = p.faults.wood(s)
	return p.checked("thickness of the slab", thickness, 10, 200)
}

// wood notes a species that is none.
func (f faults) wood(s stock.Species) faults {
	if s.Name != "" && s.Density > 0 {
		return f
	}
	return f.and(faultf("a wood without name or density: take a species such as stock.Ash"))
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
	return p.checked("gap at the sides", sides, 0, 100).checked("gap at the back", back, 0, 100)
}

// Depth is the distance from the back edge to the straight front edge; a
// natural edge goes beyond it and nowhere behind.
func (p SlabPiece) Depth(d unit.Length) SlabPiece {
	p.depth, p.depthGiven = d, true
	return p.checked("depth of the slab", d, 50, 3000)
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
	return p.checked("height of the surface", z, 0, 4000)
}

// UndersideAt puts the lower face at a height above the floor.
func (p SlabPiece) UndersideAt(z unit.Length) SlabPiece { return p.SurfaceAt(z + p.thickness) }

// Front says what the front edge is: a natural edge, or straight when not said.
func (p SlabPiece) Front(e FrontEdge) SlabPiece {
	p.front = e
	p.faults = p.faults.and(e.faults...)
	return p
}

// Eased takes the sharp arrises off every edge by a chamfer. A slab with a
// natural front keeps its sawn edges sharp: they meet the bark and lie against
// walls.
func (p SlabPiece) Eased(by unit.Length) SlabPiece {
	p.ease = by
	return p.checked("chamfer", by, 0, min(20, p.thickness/2))
}

func (p SlabPiece) checked(what string, v, low, high unit.Length) SlabPiece {
	p.faults = p.faults.within(what, v, low, high)
	return p
}
