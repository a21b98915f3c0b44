package model

import (
	"fmt"
	"math"
	"slices"

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
			for i, x := range bar.drilled(WallLeg, p.anchorPlaces) {
				a.Holes = append(a.Holes, SteelHole{Name: fmt.Sprintf("W%d", i+1), Leg: WallLeg, X: x, FromHeel: mark, Dia: p.anchors.Hole, For: "wall anchor"})
			}
		}
	}
	if p.screws == nil {
		return bad
	}
	s := *p.screws
	if s.Moving && s.Slot > 0 {
		return bad.and(fault{what: fmt.Sprintf("the screws of %q have a slot of %s and are Moving: only one of them can decide how long their slots are", id, inWords(s.Slot)), line: p.screwsLine})
	}
	along, line, wide := grainAlong(slab, a), screwLine(a.Section), s.Hole
	switch {
	case !along && s.Moving:
		line = movingLine(a.Section, s.Hole)
	case !along:
		wide += s.Slot
	}
	if wrong := offFlat(a.Section, line, wide); wrong != "" {
		return bad.and(fault{what: "a hole for screws " + wrong, line: p.screwsLine})
	}
	if s.Into >= slab.Slab.Thickness {
		return bad.and(fault{what: fmt.Sprintf("screws %s into the wood come out at the top of %q, which is %s thick", inWords(s.Into), slab.ID, inWords(slab.Slab.Thickness)), line: p.screwsLine})
	}
	wood := slab.Slab.freeOf(1)
	first := len(a.Holes)
	missed := 0
	for _, x := range bar.drilled(SeatLeg, p.screwPlaces) {
		at := slab.Slab.Pose.Unplan(a.Pose().Plan(geom.V(x, -line)))
		hole := geom.Circle(at, s.Pilot/2, chord)
		if !hole.Minus(wood).Empty() {
			missed++
			continue
		}
		name := fmt.Sprintf("S%d", len(a.Holes)-first+1)
		a.Holes = append(a.Holes, SteelHole{Name: name, Leg: SeatLeg, X: x, FromHeel: line, Dia: s.Hole, Slot: s.Slot, Along: along, For: fmt.Sprintf("screw into %s", slab.ID), moves: s.Moving})
		slab.Slab.Features = append(slab.Slab.Features, Feature{
			Name: id + " " + name, Kind: Pilot, Face: UnderFace, At: at, Dia: s.Pilot, Depth: s.Into,
			Outline: hole, For: id, Line: p.screwsLine,
		})
	}
	if missed > 0 {
		bad = bad.and(fault{what: fmt.Sprintf("%d of the screws of %q miss %q: they stand %s from the heel, where the slab has no wood; make the gap smaller or the section wider", missed, id, slab.ID, inWords(line)), line: p.screwsLine})
	}
	return bad
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

// toeFactor is how far the round end of a slot stays from an edge of the steel,
// in hole diameters: EN 1993-1-8 table 3.3, from memory.
const toeFactor = 1.5

// grainAlong tells whether the slab's movement, which is across its grain
// (the grain runs along the slab's x), goes along the angle.
func grainAlong(slab *Part, a *AnglePart) bool {
	turn := a.Wall.Chord().D.Angle() - slab.Slab.Pose.Turn
	return math.Abs(math.Sin(float64(turn))) > math.Sqrt2/2
}

// Two holes of a kind stay closest apart; a piece shorter than short has room
// for one only.
const (
	closest unit.Length = 50
	short   unit.Length = 90
)

// even spreads places over a length: equal steps no longer than pitch, the
// first and the last at the end distance, or nearer to the ends where two
// would stand too close.
func even(length, end, pitch unit.Length) []unit.Length {
	if length < short {
		return []unit.Length{round(length / 2)}
	}
	end = min(end, (length-closest)/2)
	return spaced(end, length-end, pitch)
}

// spaced spreads places from one to another in equal steps no longer than pitch.
func spaced(from, to, pitch unit.Length) []unit.Length {
	n := int(math.Ceil(float64((to-from)/pitch) - 1e-9))
	n = max(n, 1)
	out := make([]unit.Length, n+1)
	for i := range out {
		out[i] = round(from + (to-from)*unit.Length(i)/unit.Length(n))
	}
	return out
}

// offArris spreads the anchors of a bar that begins or ends at an outside corner
// of its wall: the first keeps off it, as far as two that stand well apart leave
// it room.
func (p AnglePiece) offArris(a *AnglePart) []unit.Length {
	const wellApart = 2 * closest
	end := p.anchors.End
	from, to := end, a.Length-end
	w := a.Wall
	if w.From.Angle > 180*unit.Degree {
		from = max(from, min(p.anchors.OffArris-a.Start, to-wellApart))
	}
	if w.To.Angle > 180*unit.Degree {
		to = min(to, max(w.Length()-p.anchors.OffArris-a.Start, from+wellApart))
	}
	if from == end && to == a.Length-end {
		return even(a.Length, end, p.anchors.Pitch)
	}
	return spaced(from, to, p.anchors.Pitch)
}

// round gives whole millimetres: nobody drills steel to a tenth.
func round(l unit.Length) unit.Length { return unit.Length(math.Round(float64(l))) }

// anchorPlaces gives the places of the wall anchors along the angle: at every
// stud of a stud wall, otherwise evenly; a place in a keep-out moves to the
// nearest free one, and is given up when there is none within half a pitch.
func (p AnglePiece) anchorPlaces(a *AnglePart) []unit.Length {
	want := p.offArris(a)
	if len(a.Wall.Studs) > 0 {
		want = nil
		for _, s := range a.Wall.Studs {
			x := round(s - a.Start)
			if x >= p.nearEnd() && x <= a.Length-p.nearEnd() && apart(x, want, 3*p.anchors.Hole) {
				want = append(want, x)
			}
		}
	}
	z := a.Seat - p.anchorLine()
	if a.LegUp {
		z = a.Seat - a.Section.Thickness + p.anchorLine()
	}
	var out, covered []unit.Length
	for _, x := range want {
		if blocking(a, x, z) == "" {
			out = append(out, x)
		} else {
			covered = append(covered, x)
		}
	}
	for _, x := range covered {
		y, ok := p.yield(a, x, z, out)
		if !ok {
			a.Unmatched = append(a.Unmatched, fmt.Sprintf("no place for an anchor near %.0f mm from the left end: %s", float64(x), blocking(a, x, z)))
			continue
		}
		a.Moved = append(a.Moved, fmt.Sprintf("anchor moved from %.0f to %.0f mm from the left end: %s", float64(x), float64(y), blocking(a, x, z)))
		out = append(out, y)
	}
	slices.Sort(out)
	return out
}

// nearEnd is how near to the end of the bar an anchor may be that has to give
// way.
func (p AnglePiece) nearEnd() unit.Length { return max(p.anchors.End/2, 20) }

// yield moves a place out of keep-outs, to the nearer side first, and not next
// to an anchor that is there already.
func (p AnglePiece) yield(a *AnglePart, x, z unit.Length, others []unit.Length) (unit.Length, bool) {
	if len(a.Wall.Studs) > 0 {
		return x, false // a stud is where it is
	}
	low, high := p.nearEnd(), a.Length-p.nearEnd()
	for step := unit.Length(1); step <= p.anchors.Pitch/2; step++ {
		for _, y := range []unit.Length{x - step, x + step} {
			if y >= low && y <= high && blocking(a, y, z) == "" && apart(y, others, max(50, 3*p.anchors.Hole)) {
				return y, true
			}
		}
	}
	return x, false
}

// apart tells whether a place is at least some distance from all others.
func apart(x unit.Length, others []unit.Length, least unit.Length) bool {
	for _, o := range others {
		if abs(o-x) < least {
			return false
		}
	}
	return true
}

// blocking names the keep-out that covers a place on the wall, "" if none.
func blocking(a *AnglePart, x, z unit.Length) string {
	for _, o := range a.Wall.Obstacles {
		start, end, bottom, top := o.Keep()
		if s := a.Start + x; s > start && s < end && z > bottom && z < top {
			return o.Name
		}
	}
	return ""
}

// driver is how far a screw stays from the nearest anchor, so that a drill and
// a driver find room.
const driver unit.Length = 25

// screwPlaces are spread evenly from end distance to end distance. A place
// beside an anchor moves along the angle until it is clear; when that leaves
// two further apart than the pitch, there is one screw more.
func (p AnglePiece) screwPlaces(a *AnglePart) []unit.Length {
	var anchors []unit.Length
	for _, h := range a.Holes {
		anchors = append(anchors, h.X)
	}
	pitch := p.screws.Pitch
	places := p.clearOfAnchors(a, even(a.Length, p.screws.End, pitch), anchors)
	for more := 1; more <= 4 && widest(places) > p.screws.Pitch; more++ {
		pitch = (a.Length - 2*p.screws.End) / unit.Length(len(places))
		if pitch < 3*p.screws.Hole+p.screws.longest() {
			break
		}
		places = p.clearOfAnchors(a, even(a.Length, p.screws.End, pitch), anchors)
	}
	return places
}

// longest is the slot for which room is kept: those of moving screws are not
// known before the whole desk is.
func (s Screws) longest() unit.Length {
	if s.Moving {
		return 16
	}
	return s.Slot
}

// clearOfAnchors moves places away from anchors and gives up those for which
// there is no room.
func (p AnglePiece) clearOfAnchors(a *AnglePart, want, anchors []unit.Length) []unit.Length {
	var out []unit.Length
	low := p.screws.End
	if a.Length < 2*low+closest {
		low = driver
	}
	high := a.Length - low
	between := 2*p.screws.Hole + p.screws.longest()
	for _, x := range want {
		for step := unit.Length(0); step <= 2*driver; step++ {
			y, ok := x, false
			for _, y = range []unit.Length{x - step, x + step} {
				if ok = y >= low && y <= high && apart(y, anchors, driver) && apart(y, out, between); ok {
					break
				}
			}
			if ok {
				out = append(out, y)
				break
			}
		}
	}
	slices.Sort(out)
	return out
}

// widest is the largest distance between neighbouring places.
func widest(places []unit.Length) unit.Length {
	var w unit.Length
	for i := 1; i < len(places); i++ {
		w = max(w, places[i]-places[i-1])
	}
	return w
}

func abs(l unit.Length) unit.Length { return unit.Length(math.Abs(float64(l))) }
