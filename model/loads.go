package model

import "slabwright/model/unit"

// Loads is what the slabs have to carry, as far as the person told; zero values
// are not said. Package hold fills them in and names what it assumed.
type Loads struct {
	Person  unit.Mass // the heaviest who may stand or sit anywhere on a worktop
	Step    float64   // how much more than their weight a person presses when climbing up, as a factor
	Worktop float64   // kg/m2, spread over worktops for years
	Shelf   float64   // kg/m2, spread over shelves for years
	Things  []Thing   // at fixed places
	Service int       // service class of EN 1995-1-1: 1 heated room, 2 unheated, 3 outside
	Grade   string    // strength class of the timber, if somebody graded it
	Pos     Pos
}

// Thing stands or is clamped on a slab: a monitor, a clamp arm. Reach is how far
// its weight hangs in front of its foot (behind it, when negative).
type Thing struct {
	Name  string
	On    string      // id of the slab
	Along unit.Length // of the middle of its foot, from the left end of the slab's back edge
	Back  unit.Length // of the middle of its foot, from the back edge
	Mass  unit.Mass
	Reach unit.Length
	Pos   Pos
}
