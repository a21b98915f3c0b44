package wiring

import (
	"math"

	"slabwright/model/unit"
)

// Fill is the part of a rectangular channel that cables of given diameters
// take.
func Fill(width, depth unit.Length, cables []unit.Length) float64 {
	var sum float64
	for _, d := range cables {
		sum += math.Pi / 4 * float64(d*d)
	}
	return sum / float64(width*depth)
}

// MostFill is how full a channel with a lid may be (common practice, no
// source); MostFillRound gives the same for round holes: 53 % for one cable,
// 31 % for two, 40 % for more (NFPA 70, chapter 9, table 1).
const MostFill = 0.45

// MostFillRound is how full a round hole may be with a number of cables.
func MostFillRound(cables int) float64 {
	switch cables {
	case 0, 1:
		return 0.53
	case 2:
		return 0.31
	}
	return 0.40
}

// Passes is in how many passes a router makes a groove: each no deeper than
// half the diameter of the bit (common practice, no source), all alike.
func Passes(depth, bit unit.Length) (passes int, each unit.Length) {
	passes = int(math.Ceil(float64(depth/(bit/2)) - 1e-9))
	return passes, depth / unit.Length(passes)
}

// Bits are usual diameters of straight router bits (common practice, no source).
var Bits = []unit.Length{6, 8, 10, 12, 14, 16, 18, 20}

// Bit is the largest usual bit no wider than a groove, 0 if there is none.
func Bit(width unit.Length) unit.Length {
	var best unit.Length
	for _, b := range Bits {
		if b <= width+1e-9 {
			best = b
		}
	}
	return best
}

// Least bend radii of cables, in diameters: laid once or moving all the time
// (DIN VDE 0298-3 for flexible cables up to 12 mm, from memory).
const (
	BendLaid   = 4
	BendMoving = 5
)
