package model

import (
	"math"

	"slabwright/model/calc/corner"
	"slabwright/model/unit"
)

// cornerSetBack gives how far an angle stays back from the corner of the room
// at its left or right end: clear, by the piece's gap, of the other wall and of
// the angles that already run there.
func (p AnglePiece) cornerSetBack(d *Design, a *AnglePart, atLeft bool) unit.Length {
	left, right := a.Wall, a.Wall.Next()
	neighbour := right
	if atLeft {
		left, right = a.Wall.Previous(), a.Wall
		neighbour = left
	}
	theta := CornerAngle(left, right)
	reach := a.Reach()
	least, err := corner.Start(theta, reach)
	if err != nil {
		return p.freeEnd
	}
	gap := p.clear
	if theta < straightOn {
		low, high := a.Levels()
		gap = (p.clear + neighbour.bulgeNear(atLeft, 2*reach, low, high)) / unit.Length(math.Sin(float64(theta)))
	}
	least += gap
	for _, q := range d.Parts {
		if q.Angle == nil || q.Angle.Wall != neighbour || !q.Angle.beside(a) {
			continue
		}
		set, ok := q.Angle.SetBackFrom(neighbour, atLeft)
		if !ok {
			continue
		}
		if s, err := corner.Butt(theta, corner.Leg{SetBack: set, Width: q.Angle.Reach()}, reach, p.clear); err == nil {
			least = max(least, s)
		}
	}
	return least
}

// straightOn is the corner angle from which on the next wall is no longer one
// to keep clear of: it only leads on.
const straightOn = 150 * unit.Degree

// Reach is how far the seat leg comes out from the wall's chord: its width, and
// where the wall bulges or leans the distance at which the heel stands off.
func (a *AnglePart) Reach() unit.Length {
	return a.Section.Leg - a.Wall.Chord().Side(a.Wall.Hull(a.Levels()).P)
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

// SetBackFrom is the distance of the angle's end from the wall's left or right
// corner; ok is false when the end is nowhere near that corner.
func (a *AnglePart) SetBackFrom(w *Wall, right bool) (unit.Length, bool) {
	s := a.Start
	if right {
		s = w.Length() - a.Start - a.Length
	}
	return s, s < 4*a.Section.Leg
}

// beside tells whether two angles are at the same height somewhere.
func (a *AnglePart) beside(b *AnglePart) bool {
	low, high := a.Levels()
	from, to := b.Levels()
	return low < to && from < high
}
