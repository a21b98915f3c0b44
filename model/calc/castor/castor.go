// Package castor holds the statics of a table on four castors: when it tips, and
// what a castor must carry. Newton and millimetre; a stiff table on a firm floor.
package castor

import "slabwright/model/unit"

// Base is how the castors of a table stand: how far their line is set in from
// the edge of the top, and how far the centre of gravity is inside that line.
type Base struct{ SetIn, ToCentre unit.Length }

// Edge is the force straight down on the edge of the top at which the table
// begins to lift on the other side: weight times its arm over that of the edge.
// Castors that stand under the edge never let it tip: false.
func (b Base) Edge(weight float64) (force float64, tips bool) {
	if b.SetIn <= 0 {
		return 0, false
	}
	return weight * float64(b.ToCentre/b.SetIn), true
}

// Push is the level force at a height above the floor at which the table tips
// over castors that do not roll.
func (b Base) Push(weight float64, height unit.Length) float64 {
	return weight * float64(b.ToCentre/height)
}

// OnOne is what one castor must be made for: on an uneven floor three of four
// carry all (EN 12530 to 12533 rate castors so, from memory).
func OnOne(weight float64) float64 { return weight / 3 }
