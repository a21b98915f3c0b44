package sit

import (
	"math"

	"slabwright/model/calc/body"
	"slabwright/model/unit"
)

// Places in the body, for the path of the head: the hinge of the hip before the
// back and above the seat, and the forehead before the line of the trunk. From
// memory; the lengths between them are the person's.
const (
	hingeOff  unit.Length = 130
	hingeUp   unit.Length = 90
	forehead  unit.Length = 100
	overHead  unit.Length = 50 // movement over a standing head: common practice, no source
	headWidth unit.Length = 200
)

// RisingLean is how far somebody leans forward who stands up: from memory.
const RisingLean unit.Angle = 30 * unit.Degree

// Overhang is something above the surface before the sitter: a shelf, or what
// hangs on a wall. Edge is its front, in from the straight front; Low its
// underside above the floor under the seat.
type Overhang struct {
	Name, Part, Wall string
	Shelf            bool
	Edge, Low, High  unit.Length
}

// above finds what hangs over the worktop before the sitter.
func (s *Sitter) above(all []piece) {
	for _, p := range all {
		box := p.solid.Bounds()
		if !p.slab && (p.part != "" || p.wall == "") {
			continue // rods and angles belong to what they carry
		}
		if box.Min.Z < s.Slab.Slab.Top+1 || p.solid.Err() != nil {
			continue
		}
		edge := unit.Length(math.Inf(1))
		for _, x := range []unit.Length{-headWidth, 0, headWidth} {
			a, b := s.At(x, -unit.M), s.At(x, 2*unit.M)
			for _, span := range p.solid.Footprint().Inside(a, b) {
				edge = min(edge, -unit.M+3*unit.M*unit.Length(span[0]))
			}
		}
		if !math.IsInf(float64(edge), 1) {
			s.Over = append(s.Over, Overhang{Name: p.name, Part: p.part, Wall: p.wall, Shelf: p.slab, Edge: edge, Low: box.Min.Z - s.Floor, High: box.Max.Z - s.Floor})
		}
	}
}

// Head is where the top of the forehead is when the trunk leans forward: in
// from the straight front, above the floor.
func (s *Sitter) Head(lean unit.Angle) (in, up unit.Length) {
	l := float64(s.trunk())
	in = hingeOff + unit.Length(l*math.Sin(float64(lean))) + forehead - s.by[body.BellyDepth].Scant() - s.Bulge
	return in, s.SeatHeight() + hingeUp + unit.Length(l*math.Cos(float64(lean)))
}

// trunk is from the hinge of the hip to the top of the head.
func (s *Sitter) trunk() unit.Length {
	return s.by[body.Head].Ample() - s.by[body.Popliteal].Ample() - hingeUp
}

// LeanUnder is how far the trunk leans when the head is as low as a height;
// false if it is lower upright.
func (s *Sitter) LeanUnder(height unit.Length) (unit.Angle, bool) {
	c := float64((height - s.SeatHeight() - hingeUp) / s.trunk())
	if c >= 1 {
		return 0, false
	}
	return unit.Angle(math.Acos(max(c, 0))), true
}

// Standing is the height of the head standing in shoes, with a little movement.
func (s *Sitter) Standing() (unit.Length, bool) {
	st := s.Person.Stature
	if st == 0 && s.Told {
		return 0, false
	}
	if st == 0 {
		st = tallest[s.Person.Sex]
	}
	return st + s.Shoe + overHead, true
}

// tallest is the 95th percentile of stature, ANSUR II; of anybody that of men.
var tallest = map[string]unit.Length{"": 1870, "male": 1870, "female": 1740}

// shortest is the 5th percentile of stature; of anybody that of women.
var shortest = map[string]unit.Length{"": 1525, "male": 1648, "female": 1525}

// Arm is the shoulder of somebody who sits straight and how far the hand grips
// from there: the two reaches measured, forward past the front edge and
// overhead, put on one circle.
type Arm struct {
	In, Up, Reach unit.Length
}

// Hand gives the arm of a sitter, for the small where nobody is described.
func (s *Sitter) Hand() Arm {
	const grip unit.Length = 80 // from the fingertips to the grip, from memory
	st := s.Person.Stature
	if st == 0 {
		st = shortest[s.Person.Sex]
	}
	at := func(d body.Dimension) unit.Length { return s.by[d].Scant() }
	a := Arm{Up: at(body.Head) - (st - at(body.Shoulder)) + s.Shoe}
	a.Reach = at(body.Overhead) + s.Shoe - grip - a.Up
	a.In = at(body.GripReach) - s.Bulge - a.Reach
	return a
}

// At is how far in from the straight front the hand comes at a height; false if
// it does not come there at all.
func (a Arm) At(height unit.Length) (in unit.Length, ok bool) {
	up := float64(height - a.Up)
	r := float64(a.Reach)
	if math.Abs(up) > r {
		return 0, false
	}
	return a.In + unit.Length(math.Sqrt(r*r-up*up)), true
}
