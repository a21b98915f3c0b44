package stock

import "slabwright/model/unit"

// WallHold is what one anchor may carry in a kind of wall when no approval is at
// hand: a recommended load in service, the same in every direction, in newton,
// for plastic frame anchors of a drill diameter. Strongest is three times that of a rod set
// in resin, which hardly anything exceeds that does not go through the wall. Depth is how far it goes into
// firm wall, Edge and Spacing the least distances from an edge and from the next
// anchor.
type WallHold struct {
	Wall          string
	Drill         unit.Length
	Load          float64 // N, in service
	Strongest     float64 // N, in service: three times the order of what a rod set in resin carries there
	Depth         unit.Length
	Edge, Spacing unit.Length
	Source        string
	Status        Status
}

const wallHoldDoubt = "order of magnitude for plastic frame anchors and for rods M8 to M10 set in resin, from memory and no approval; edge and spacing: a plug maker's public technical page (2 and 4 depths in masonry, 1 and 2 in concrete)"

// wallHolds by the names of the kinds of wall in a job file.
var wallHolds = []WallHold{
	{"concrete", 8, 500, 15000, 50, 50, 100, wallHoldDoubt, Memory},
	{"concrete", 10, 1000, 15000, 50, 50, 100, wallHoldDoubt, Memory},
	{"solid brick", 8, 300, 4500, 50, 100, 200, wallHoldDoubt, Memory},
	{"solid brick", 10, 600, 4500, 50, 100, 200, wallHoldDoubt, Memory},
	{"hollow block", 8, 150, 1800, 50, 100, 200, wallHoldDoubt, Memory},
	{"hollow block", 10, 300, 1800, 50, 100, 200, wallHoldDoubt, Memory},
	{"aerated block", 8, 100, 2400, 50, 100, 200, wallHoldDoubt, Memory},
	{"aerated block", 10, 200, 2400, 50, 100, 200, wallHoldDoubt, Memory},
}

// WallHolds lists what anchors carry without an approval at hand.
func WallHolds() []WallHold { return append([]WallHold(nil), wallHolds...) }

// WallHoldOf is what an anchor of a drill diameter may carry in a kind of wall;
// false where that is not known.
func WallHoldOf(wall string, drill unit.Length) (WallHold, bool) {
	for _, h := range wallHolds {
		if h.Wall == wall && h.Drill == drill {
			return h, true
		}
	}
	return WallHold{}, false
}
