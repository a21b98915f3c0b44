package model

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// drill places the anchors in the wall leg and the screws in the seat leg, and
// puts the pilot holes for the screws into the slab. What cannot be drilled is
// left out: the bar is still made.
func (p AnglePiece) drill(slab *Part, id string, bar *Part) (bad faults) {
	a := bar.Angle
	if p.anchors != nil {
		mark := p.anchorLine()
		if wrong := offFlat(a.Section, mark, p.anchors.Hole); wrong != "" {
			bad = bad.and(fault{what: "a hole for wall anchors " + wrong, line: p.anchorsLine})
		} else {
			p.anchor(bar, mark)
		}
	}
	if p.screws == nil {
		return bad
	}
	s := *p.screws
	line, wide := screwLine(a.Section), s.Hole
	switch {
	case !grainAlong(slab, a) && s.Moving:
		line = movingLine(a.Section, s.Hole)
		if a.LegUp {
			line = max(line, min(upTo(woodBehind(slab, a)+besidePilot+s.Pilot/2), a.Section.Leg-toeFactor*s.Hole-leastTravel))
		}
	case !grainAlong(slab, a):
		wide += s.Slot
	}
	if wrong := offFlat(a.Section, line, wide); wrong != "" {
		return bad.and(fault{what: "a hole for screws " + wrong, line: p.screwsLine})
	}
	return bad.and(p.screwUp(slab, id, bar, line)...)
}

// anchorLine is how far the wall fixings stand from the heel.
func (p AnglePiece) anchorLine() unit.Length {
	s := p.section
	a, ok := stock.AnchorThrough(p.anchors.Hole)
	if !p.anchors.NearHeel || p.legUp || !ok {
		return s.BackMark
	}
	return min(s.BackMark, upTo(s.Thickness+s.Root+a.Washer/2))
}

// offFlat says how a hole of a width across the leg, at a distance from the
// heel, leaves the flat of the leg between fillet and toe; "" if it does not.
func offFlat(s stock.AngleSection, line, wide unit.Length) string {
	low, high := s.Thickness+s.Root, s.Leg-s.Toe
	if line-wide/2 >= low && line+wide/2 <= high {
		return ""
	}
	return fmt.Sprintf("%s wide, %s from the heel of %s, leaves the flat of the leg, which is from %s to %s", inWords(wide), inWords(line), s.Name, plain(low), inWords(high))
}

// screwLine is how far the screws into the slab stand from the heel: near the
// toe, so that the gap at the wall leaves wood between screw and edge.
func screwLine(s stock.AngleSection) unit.Length { return max(s.BackMark, s.Leg-13) }

// movingLine is the line of screws whose slots run across the leg: in the middle
// of what the fillet and the steel that must be left at the toe allow, and no
// nearer to the heel than 30 mm, for the wood beside the screw.
func movingLine(s stock.AngleSection, hole unit.Length) unit.Length {
	low, high := s.Thickness+s.Root+hole/2, s.Leg-toeFactor*hole
	return max(round((low+high)/2), min(30, screwLine(s)))
}

// What a screw keeps off the edge of a slab, and what its slot needs towards the toe
// for a held row, whose wood hardly moves. Choices, no source.
const (
	besidePilot unit.Length = 21
	leastTravel unit.Length = 3
)

// woodBehind is how far the edge of a slab is from the heel of an angle, where it is
// furthest.
func woodBehind(slab *Part, a *AnglePart) unit.Length {
	outline, pose := slab.Outline(), a.Pose()
	var far unit.Length
	for _, share := range []unit.Length{0.1, 0.5, 0.9} {
		x := a.Length * share
		for _, span := range outline.Inside(pose.Plan(geom.V(x, 0)), pose.Plan(geom.V(x, -a.Section.Leg))) {
			far = max(far, a.Section.Leg*unit.Length(span[0]))
			break
		}
	}
	return far
}

// toeFactor is how far the round end of a slot stays from an edge of the steel,
// in hole diameters: EN 1993-1-8 table 3.3, from memory.
const toeFactor = 1.5

// grainAlong tells whether the slab's movement, which is across its grain
// (the grain runs along the slab's x), goes along the bracket.
func grainAlong(slab *Part, b Bracket) bool {
	turn := b.On().Wall.Chord().D.Angle() - slab.Slab.Pose.Turn
	return math.Abs(math.Sin(float64(turn))) > math.Sqrt2/2
}
