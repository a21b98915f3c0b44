package cut

import "slabwright/model/unit"

// Cut is one saw cut right across the piece that lies on the saw. Rip runs along
// the grain. From and To are the ends of the edge of the kerf that is nearer to
// the reference edge; the kerf lies beyond it.
type Cut struct {
	Rip     bool
	Piece   Rect        // what lies on the saw
	At      unit.Length // of that edge, from the sheet's origin
	Setting unit.Length // fence or track: from the reference edge of the piece
	Frees   string      // what falls off, finished; "" for a piece that is cut on
}
