package saw

import "slabwright/model/unit"

// Side is a long side of a sheet or part. Low is at y 0.
type Side string

// Sides.
const (
	NoSide Side = ""
	Low    Side = "low"
	High   Side = "high"
)

// Item is a rectangular part wanted Count times: Length along the grain, Width
// across it. Under MostValue the count is the most that may be made, 0 for any
// number. Turn lets the part lie across the grain. Edge asks for a natural edge
// on that side of the part, which may be turned by half a turn to get it. EndWidth
// is the width at the far end of a part that tapers, its low side straight; 0
// stands for Width.
type Item struct {
	ID            string
	Length, Width unit.Length
	Count         int
	Value         float64
	Turn          bool
	Edge          Side
	EndWidth      unit.Length
}

// Station is a point of an edge.
type Station struct{ At, Y unit.Length }

// Rect is an upright rectangle, its low left corner at X, Y.
type Rect struct{ X, Y, Length, Width unit.Length }

// Sheet is a stock of equal slabs: Count 0 is as many as wanted. Low and High
// give the edges where they are not straight, as stations from left to right;
// without stations they run at 0 and Width. Natural names the edges that are as
// the tree grew. A part keeps off KeepOut, and so does every saw cut.
type Sheet struct {
	ID            string
	Length, Width unit.Length
	Count         int
	Price         float64
	Low, High     []Station
	Natural       []Side
	KeepOut       []Rect
}

// Problem is what to cut from which sheets. Trim is taken off all four straight
// edges first. Stages bounds how often the direction of cutting changes, counting
// the first direction; 0 is free. A cut that only frees a part from waste beside
// it does not count. Offcuts smaller than Keep are not worth keeping.
type Problem struct {
	Kerf, Trim unit.Length
	Stages     int
	Aim        Aim
	Sheets     []Sheet
	Items      []Item
	Keep       struct{ Length, Width unit.Length }
}

// Placed is a part in a sheet. Length and Width are as it lies; Across says that
// it lies across the grain, Turned that it was turned by half a turn.
type Placed struct {
	Item string
	Rect
	Across, Turned bool
	Edge           Side // natural edge that it keeps, Low or High
}

// Layout is one sheet with its parts.
type Layout struct {
	Sheet   string
	Placed  []Placed
	Cuts    []Cut
	Offcuts []Rect // worth keeping
}

// Plan is a plan for sheets with the proved bound on the best one.
type Plan struct {
	Objective, Bound float64
	Found, Optimal   bool
	Layouts          []Layout
	Missing          []Missing
	Steps            int
}
