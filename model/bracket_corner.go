package model

import (
	"math"

	"slabwright/model/calc/corner"
	"slabwright/model/unit"
)

// cornerEnds gives the set-backs of a bracket in the corners that its run reaches,
// by a gap; elsewhere its ends stay back as free ends do.
func (d *Design) cornerEnds(r run, b Bracket, gap, free unit.Length) (left, right unit.Length) {
	left, right = free, free
	if r.leftCorner {
		left = d.cornerSetBack(b, gap, free, true)
	}
	if r.rightCorner {
		right = d.cornerSetBack(b, gap, free, false)
	}
	return left, right
}

// cornerSetBack gives how far a bracket stays back from the corner of the room
// at its left or right end: clear, by a gap, of the other wall and of the brackets
// that already run there.
func (d *Design) cornerSetBack(b Bracket, clear, free unit.Length, atLeft bool) unit.Length {
	a := b.On()
	left, right := a.Wall, a.Wall.Next()
	neighbour := right
	if atLeft {
		left, right = a.Wall.Previous(), a.Wall
		neighbour = left
	}
	theta := CornerAngle(left, right)
	reach := reachOf(b)
	least, err := corner.Start(theta, reach)
	if err != nil {
		return free
	}
	gap := clear
	if theta < straightOn {
		low, high := b.Levels()
		gap = (clear + neighbour.bulgeNear(atLeft, 2*reach, low, high)) / unit.Length(math.Sin(float64(theta)))
	}
	least += gap
	for _, q := range d.Parts {
		o := q.Bracket()
		if o == nil || o.On().Wall != neighbour || !beside(o, b) {
			continue
		}
		set, ok := SetBackFrom(o, neighbour, atLeft)
		if !ok {
			continue
		}
		if s, err := corner.Butt(theta, corner.Leg{SetBack: set, Width: reachOf(o)}, reach, clear); err == nil {
			least = max(least, s)
		}
	}
	return least
}

// straightOn is the corner angle from which on the next wall is no longer one
// to keep clear of: it only leads on.
const straightOn = 150 * unit.Degree

// reachOf is how far a seat comes out from the wall's chord: its width, and where
// the wall bulges or leans the distance at which the bracket's back stands off.
func reachOf(b Bracket) unit.Length {
	return b.Deep() - b.On().Wall.Chord().Side(b.On().Wall.Hull(b.Levels()).P)
}

// bulgeNear is how far a wall comes into the room, beyond its chord, within a
// distance of its right or left corner and between two heights.
func (w *Wall) bulgeNear(right bool, within, z0, z1 unit.Length) unit.Length {
	lean := unit.Length(-min(w.Lean*float64(z0-w.room.At), w.Lean*float64(z1-w.room.At)))
	t := min(within/w.Length(), 0.5)
	return max(0, lean+4*max(0, w.Bow)*t*(1-t))
}

// CornerAngle is the angle inside the room between two neighbouring walls, less
// twice its standard deviation where the survey gives one: the bound that asks
// for more room.
func CornerAngle(left, right *Wall) unit.Angle {
	c := left.To
	return c.Angle - 2*c.AngleSD
}

// SetBackFrom is the distance of a bracket's end from the wall's left or right
// corner; ok is false when the end is nowhere near that corner.
func SetBackFrom(b Bracket, w *Wall, right bool) (unit.Length, bool) {
	a := b.On()
	s := a.Start
	if right {
		s = w.Length() - a.Start - a.Length
	}
	return s, s < 4*b.Deep()
}

// beside tells whether two brackets are at the same height somewhere.
func beside(a, b Bracket) bool {
	low, high := a.Levels()
	from, to := b.Levels()
	return low < to && from < high
}

// mitre cuts an end of an angle along the middle of its corner and gives its
// set-back, measured along the heel: half the gap to either side of that line, what
// the wall bulges, and what the corner's angle may be off over the width of the leg.
// In a corner that only leads on the end stays square.
func (p AnglePiece) mitre(a *AnglePart, atLeft bool, square unit.Length) unit.Length {
	c, neighbour, end := a.Wall.To, a.Wall.Next(), &a.Right
	if atLeft {
		c, neighbour, end = a.Wall.From, a.Wall.Previous(), &a.Left
	}
	if c.Angle >= straightOn {
		return square
	}
	half := float64(c.Angle) / 2
	end.Mitre = unit.Angle(half - math.Pi/2)
	low, high := a.Levels()
	off := reachOf(a) - a.Section.Leg // of the heel, from the wall's chord
	middle := (p.clear/2 + off*unit.Length(math.Cos(half)) + a.Section.Leg*unit.Length(c.AngleSD)) / unit.Length(math.Sin(half))
	wall := (p.clear/2 + neighbour.bulgeNear(atLeft, 2*a.Section.Leg, low, high)) / unit.Length(math.Sin(2*half))
	return max(middle, wall)
}
