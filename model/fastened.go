package model

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Anchors are the wall fixings of a bracket: diameter of the hole in it,
// largest pitch, distance of the first from each end, and how far they keep off
// an outside corner of the wall where there is room. In an angle they sit on the back mark
// of the leg; those of a leg that hangs down pull less when they are near the
// heel, as near as their washers allow. In a cleat they sit at half its
// height, or so far below its top that the slab does not split it there.
type Anchors struct {
	Hole, Pitch, End unit.Length
	OffArris         unit.Length
	NearHeel         bool
}

// Screws are the wood screws up into the slab: hole diameter in the bracket, slot
// length beyond the diameter (across the grain the wood moves), largest pitch,
// distance from each end, pilot diameter and how far the screw goes into the
// wood. Moving ones need no Slot: the row that holds the slab gets round holes,
// every other hole a slot as long as the wood moves there over the year.
type Screws struct {
	Hole, Slot, Pitch, End unit.Length
	Pilot, Into            unit.Length
	Moving                 bool
}

// within checks what was asked for.
func (a Anchors) within(f faults) faults {
	return f.within("hole of the wall anchors", a.Hole, 2, 40).
		within("pitch of the wall anchors", a.Pitch, 50, 5000).
		within("distance of the wall anchors from the ends", a.End, 20, 2000)
}

// within checks what was asked for.
func (s Screws) within(f faults) faults {
	return f.within("hole of the screws in the bracket", s.Hole, 2, 40).
		within("slot of the screws", s.Slot, 0, 100).
		within("pitch of the screws", s.Pitch, 50, 5000).
		within("distance of the screws from the ends", s.End, 20, 2000).
		within("pilot hole of the screws", s.Pilot, 1, 30).
		within("depth of the screws in the wood", s.Into, 5, 190)
}

// fastened is how a bracket is held on its wall and holds its slab.
type fastened struct {
	anchors     *Anchors
	anchorsLine string
	screws      *Screws
	screwsLine  string
}

// anchor places the wall anchors on a line at a distance from the upper back arris.
func (p fastened) anchor(bar *Part, line unit.Length) {
	b := bar.Bracket()
	m := b.On()
	for i, x := range bar.drilled(WallLeg, func() []unit.Length { return p.anchorPlaces(b, line) }) {
		m.Holes = append(m.Holes, BracketHole{Name: fmt.Sprintf("W%d", i+1), Leg: WallLeg, X: x, FromHeel: line, Dia: p.anchors.Hole, For: "wall anchor"})
	}
}

// screwUp places the screws on a line at a distance from the back, and their pilot
// holes in the slab. Screws that miss its wood are left out.
func (p fastened) screwUp(slab *Part, id string, bar *Part, line unit.Length) faults {
	s, b := *p.screws, bar.Bracket()
	m := b.On()
	wrong := func(format string, args ...any) faults {
		return faults{{what: fmt.Sprintf(format, args...), line: p.screwsLine}}
	}
	switch {
	case s.Moving && s.Slot > 0:
		return wrong("the screws of %q have a slot of %s and are Moving: only one of them can decide how long their slots are", id, inWords(s.Slot))
	case s.Into >= slab.Slab.Thickness:
		return wrong("screws %s into the wood come out at the top of %q, which is %s thick", inWords(s.Into), slab.ID, inWords(slab.Slab.Thickness))
	}
	wood := slab.Slab.freeOf(1)
	n, missed := 0, 0
	for _, x := range bar.drilled(SeatLeg, func() []unit.Length { return p.screwPlaces(m) }) {
		at := slab.Slab.Pose.Unplan(b.Pose().Plan(geom.V(x, -line)))
		hole := geom.Circle(at, s.Pilot/2, chord)
		if !hole.Minus(wood).Empty() {
			missed++
			continue
		}
		n++
		name := fmt.Sprintf("S%d", n)
		m.Holes = append(m.Holes, BracketHole{Name: name, Leg: SeatLeg, X: x, FromHeel: line, Dia: s.Hole, Slot: s.Slot, Along: grainAlong(slab, b), For: fmt.Sprintf("screw into %s", slab.ID), moves: s.Moving})
		slab.Slab.Features = append(slab.Slab.Features, Feature{
			Name: id + " " + name, Kind: Pilot, Face: UnderFace, At: at, Dia: s.Pilot, Depth: s.Into,
			Outline: hole, For: id, Line: p.screwsLine,
		})
	}
	if missed > 0 {
		return wrong("%d of the screws of %q miss %q: they stand %s from its back, where the slab has no wood; make the gap smaller or the bracket wider", missed, id, slab.ID, inWords(line))
	}
	return nil
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
func (p fastened) offArris(a *Mounted) []unit.Length {
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

// anchorPlaces gives the places of the wall anchors along a bracket, whose holes
// stand on a line at a distance from its upper back arris: at every
// stud of a stud wall, otherwise evenly; a place in a keep-out moves to the
// nearest free one, and is given up when there is none within half a pitch.
func (p fastened) anchorPlaces(b Bracket, line unit.Length) []unit.Length {
	a := b.On()
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
	z := b.HeightOf(BracketHole{Leg: WallLeg, FromHeel: line})
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
func (p fastened) nearEnd() unit.Length { return max(p.anchors.End/2, 20) }

// yield moves a place out of keep-outs, to the nearer side first, and not next
// to an anchor that is there already.
func (p fastened) yield(a *Mounted, x, z unit.Length, others []unit.Length) (unit.Length, bool) {
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
func blocking(a *Mounted, x, z unit.Length) string {
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
// beside an anchor moves along the bracket until it is clear; when that leaves
// two further apart than the pitch, there is one screw more.
func (p fastened) screwPlaces(a *Mounted) []unit.Length {
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
func (p fastened) clearOfAnchors(a *Mounted, want, anchors []unit.Length) []unit.Length {
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
