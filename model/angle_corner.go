package model

import (
	"slabwright/model/calc/corner"
	"slabwright/model/unit"
)

// cornerSetBack gives how far the angle stays back from the corner between two
// walls: clear of the other wall, and clear of the angle that already runs
// there, by the piece's gap. atLeft tells whether it is the angle's left end.
func (p AnglePiece) cornerSetBack(d *Design, left, right *Wall, atLeft bool, seat unit.Length) unit.Length {
	theta := CornerAngle(left, right)
	reach := p.section.Leg + standoff(p.wall, seat-p.section.Leg, seat)
	least, err := corner.Start(theta, reach)
	if err != nil {
		return p.freeEnd
	}
	least += p.clear
	neighbour := right
	if atLeft {
		neighbour = left
	}
	for _, q := range d.Parts {
		if q.Angle == nil || q.Angle.Wall != neighbour || !sameLevel(q.Angle, seat, p.section.Leg) {
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

// Reach is how far the seat leg comes out from the wall's chord: its width, and
// where the wall bulges or leans the distance at which the heel stands off.
func (a *AnglePart) Reach() unit.Length {
	return a.Section.Leg + standoff(a.Wall, a.Seat-a.Section.Leg, a.Seat)
}

func standoff(w *Wall, z0, z1 unit.Length) unit.Length { return -w.Chord().Side(w.Hull(z0, z1).P) }

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

// sameLevel tells whether an angle and a leg under another seat can meet: their
// heights overlap.
func sameLevel(a *AnglePart, seat, leg unit.Length) bool {
	return abs(a.Seat-seat) < max(leg, a.Section.Leg)
}
