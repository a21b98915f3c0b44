package stock

import "slabwright/model/unit"

// Screw is a wood screw from below through the steel into the slab. Hole is
// the round hole in the steel; a slot is as wide as the hole. Pilot is the hole
// in hardwood, on the core of the thread. Head is the least diameter of the
// head or washer that must bridge hole or slot.
type Screw struct {
	Name       string
	Diameter   unit.Length // of the thread
	Head       unit.Length // diameter of a pan or washer head
	HeadHeight unit.Length
	Hole       unit.Length // in the steel
	Pilot      unit.Length // in hardwood
	Source     string
	Status     Status
}

const screwPractice = "common sizes of wood screws with a wide flat head, hardwood pilot about 0.7 d, hole d + 0.5 to 1; no source"

// The wood screws that hold a slab on an angle.
var (
	Screw5 = Screw{"screw 5", 5, 11, 3, 5.5, 3.5, screwPractice, Practice}
	Screw6 = Screw{"screw 6", 6, 13, 3.5, 7, 4, screwPractice, Practice}
)

// Screws lists the wood screws, thin ones first.
func Screws() []Screw { return []Screw{Screw5, Screw6} }

// Anchor is a plug or frame anchor that holds an angle on the wall. Drill is
// the hole in the wall, Bolt the screw that goes into it, Hole the hole in the
// steel, Washer the diameter that must lie flat on the leg, Head how far head and
// washer stand out of it. What it carries
// stands in the approval of the anchor that is bought, and nowhere here.
type Anchor struct {
	Name   string
	Drill  unit.Length
	Bolt   unit.Length
	Hole   unit.Length
	Washer unit.Length
	Head   unit.Length
	Source string
	Status Status
}

const anchorPractice = "common pairs of plug and screw, hole of the ISO 273 medium series or d + 1, hexagon head of 0.7 d with its washer; from memory"

// The wall anchors.
var (
	Anchor8  = Anchor{"anchor 8", 8, 6, 7, 13, 6, anchorPractice, Memory}
	Anchor10 = Anchor{"anchor 10", 10, 8, 9, 17, 7, anchorPractice, Memory}
)

// Anchors lists the wall anchors, thin ones first.
func Anchors() []Anchor { return []Anchor{Anchor8, Anchor10} }

// AnchorThrough is the largest wall anchor whose screw passes a hole in the
// steel; false when there is none. What it carries stands in the approval of the
// one that is bought.
func AnchorThrough(hole unit.Length) (anchor Anchor, ok bool) {
	for _, a := range Anchors() {
		if a.Hole <= hole {
			anchor, ok = a, true
		}
	}
	return anchor, ok
}

// ScrewThrough is the thickest wood screw that passes a hole in the steel; false
// when there is none.
func ScrewThrough(hole unit.Length) (screw Screw, ok bool) {
	for _, s := range Screws() {
		if s.Hole <= hole {
			screw, ok = s, true
		}
	}
	return screw, ok
}
