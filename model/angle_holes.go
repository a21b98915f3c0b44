package model

import (
	"fmt"
	"math"
	"sort"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// drill places the anchors in the wall leg and the screws in the seat leg, and
// puts the pilot holes for the screws into the slab.
func (p AnglePiece) drill(d *Design, slab *Part, id string, a *AnglePart) {
	mark := a.Section.BackMark
	if p.anchors != nil {
		for i, x := range p.anchorPlaces(a) {
			a.Holes = append(a.Holes, SteelHole{Name: fmt.Sprintf("W%d", i+1), Leg: WallLeg, X: x, FromHeel: mark, Dia: p.anchors.Hole, For: "wall anchor"})
		}
	}
	if p.screws != nil {
		s := *p.screws
		along := grainAlong(slab, a)
		line := screwLine(a.Section)
		for i, x := range p.screwPlaces(a) {
			a.Holes = append(a.Holes, SteelHole{Name: fmt.Sprintf("S%d", i+1), Leg: SeatLeg, X: x, FromHeel: line, Dia: s.Hole, Slot: s.Slot, Along: along, For: "screw into " + slab.ID})
			at := slab.Slab.Pose.Unplan(a.Pose().Plan(geom.V(x, -line)))
			slab.Slab.Features = append(slab.Slab.Features, Feature{
				Name: fmt.Sprintf("%s %s%d", id, "S", i+1), Kind: Pilot, Face: UnderFace, At: at, Dia: s.Pilot, Depth: s.Into,
				Outline: geom.Circle(at, s.Pilot/2, chord), For: id,
			})
		}
	}
}

// screwLine is how far the screws into the slab stand from the heel: near the
// toe, so that the gap at the wall leaves wood between screw and edge.
func screwLine(s stock.AngleSection) unit.Length { return max(s.BackMark, s.Leg-13) }

// grainAlong tells whether the slab's movement, which is across its grain
// (the grain runs along the slab's x), goes along the angle.
func grainAlong(slab *Part, a *AnglePart) bool {
	turn := a.Wall.Chord().D.Angle() - slab.Slab.Pose.Turn
	return math.Abs(math.Sin(float64(turn))) > math.Sqrt2/2
}

// even spreads places over a length: equal steps no longer than pitch, the
// first and the last at the end distance.
func even(length, end, pitch unit.Length) []unit.Length {
	if length <= 2*end {
		return []unit.Length{length / 2}
	}
	n := int(math.Ceil(float64((length-2*end)/pitch) - 1e-9))
	n = max(n, 1)
	out := make([]unit.Length, n+1)
	for i := range out {
		out[i] = round((end + (length-2*end)*unit.Length(i)/unit.Length(n)))
	}
	return out
}

// round gives whole millimetres: nobody drills steel to a tenth.
func round(l unit.Length) unit.Length { return unit.Length(math.Round(float64(l))) }

// anchorPlaces gives the places of the wall anchors along the angle: at every
// stud of a stud wall, otherwise evenly; a place in a keep-out moves to the
// nearest free one, and is given up when there is none within half a pitch.
func (p AnglePiece) anchorPlaces(a *AnglePart) []unit.Length {
	want := even(a.Length, p.anchors.End, p.anchors.Pitch)
	if len(a.Wall.Studs) > 0 {
		want = nil
		for _, s := range a.Wall.Studs {
			if x := s - a.Start; x >= p.anchors.End/2 && x <= a.Length-p.anchors.End/2 {
				want = append(want, round(x))
			}
		}
	}
	z := a.Seat - a.Section.BackMark
	if a.LegUp {
		z = a.Seat - a.Section.Thickness + a.Section.BackMark
	}
	var out []unit.Length
	for _, x := range want {
		y, ok := p.yield(a, x, z)
		switch {
		case !ok:
			a.Unmatched = append(a.Unmatched, fmt.Sprintf("no place for an anchor near %.0f mm from the left end: %s", float64(x), blocking(a, x, z)))
		case y != x:
			a.Moved = append(a.Moved, fmt.Sprintf("anchor moved from %.0f to %.0f mm from the left end: %s", float64(x), float64(y), blocking(a, x, z)))
			out = append(out, y)
		default:
			out = append(out, x)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i] < out[j] })
	return out
}

// yield moves a place out of keep-outs, to the nearer side first.
func (p AnglePiece) yield(a *AnglePart, x, z unit.Length) (unit.Length, bool) {
	if blocking(a, x, z) == "" {
		return x, true
	}
	if len(a.Wall.Studs) > 0 {
		return x, false // a stud is where it is
	}
	low, high := p.anchors.End/2, a.Length-p.anchors.End/2
	for step := unit.Length(1); step <= p.anchors.Pitch/2; step++ {
		for _, y := range []unit.Length{x - step, x + step} {
			if y >= low && y <= high && blocking(a, y, z) == "" {
				return y, true
			}
		}
	}
	return x, false
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

// screwPlaces lie midway between the anchors, so that a drill and a driver
// find room, and at the end distance from the ends.
func (p AnglePiece) screwPlaces(a *AnglePart) []unit.Length {
	places := even(a.Length, p.screws.End, p.screws.Pitch)
	for i, x := range places {
		for _, h := range a.Holes {
			if h.Leg == WallLeg && abs(h.X-x) < 25 {
				step := unit.Length(25)
				if h.X > x && x > p.screws.End || x > a.Length-p.screws.End-25 {
					step = -25
				}
				places[i] = h.X + step
			}
		}
	}
	return places
}

func abs(l unit.Length) unit.Length { return unit.Length(math.Abs(float64(l))) }
