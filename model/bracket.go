package model

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Bracket is what carries a slab along a wall: a steel angle or a wooden cleat.
type Bracket interface {
	// On is where it is mounted.
	On() *Mounted
	// Pose is its own axes in the room: x along its upper back arris from the left
	// end, y towards the wall, z up from the seat.
	Pose() geom.Pose
	// Levels are the heights of its lower and its upper end above the floor.
	Levels() (low, high unit.Length)
	// Deep is how far its seat stands out from its back.
	Deep() unit.Length
	// Profile is its section as one asks for it.
	Profile() string
	// HeightOf is the height of a hole into the wall above the floor.
	HeightOf(BracketHole) unit.Length
	// grows is how far a slot may grow from the middle of its hole, which stands at
	// some distance from the back, towards the wall and towards the room.
	grows(h BracketHole, at unit.Length) (heel, toe unit.Length)
	// solid is the bracket with its holes, at its place.
	solid() geom.Solid
}

// Mounted is how a bracket runs along a wall and what it is drilled for.
type Mounted struct {
	Wall      *Wall
	Start     unit.Length // distance of its left end from the wall's left corner
	Length    unit.Length // overall, along its back
	Seat      unit.Length // height of the face that carries, above the floor
	Under     string      // slab that it carries
	Holes     []BracketHole
	Left      End
	Right     End
	Moved     []string // holes that had to give way, in words
	Unmatched []string // places where no hole was possible
}

// On gives the place itself.
func (m *Mounted) On() *Mounted { return m }

// In gives the holes of a leg.
func (m *Mounted) In(leg Leg) []BracketHole {
	var out []BracketHole
	for _, h := range m.Holes {
		if h.Leg == leg {
			out = append(out, h)
		}
	}
	return out
}

// Places are those of the holes of a leg along the bracket.
func (m *Mounted) Places(leg Leg) []unit.Length {
	var out []unit.Length
	for _, h := range m.In(leg) {
		out = append(out, h.X)
	}
	return out
}

// Bracket is the part as a bracket, nil if it is none.
func (p *Part) Bracket() Bracket {
	switch {
	case p.Angle != nil:
		return p.Angle
	case p.Cleat != nil:
		return p.Cleat
	}
	return nil
}

// build makes the body of a bracket, with its holes as they are now.
func (p *Part) build(name string) {
	b := Body{Name: name, Solid: p.Bracket().solid(), Material: p.Material, Density: stock.Steel, Colour: SteelColour}
	if p.Cleat != nil {
		b.Density, b.Colour = p.Cleat.Species.Density, woodColour(p.Cleat.Species)
	}
	p.Bodies = []Body{b}
}

// BracketsUnder gives the brackets that carry a slab.
func (d *Design) BracketsUnder(slab string) []*Part {
	var out []*Part
	for _, p := range d.Parts {
		if b := p.Bracket(); b != nil && b.On().Under == slab {
			out = append(out, p)
		}
	}
	return out
}

// End is how an end of an angle or a cleat is cut. Mitre is the angle off square in the
// plan of the horizontal leg, positive when the toe is longer than the heel.
type End struct {
	Mitre   unit.Angle
	SetBack unit.Length // from the corner of the room, or from the slab's front
}

// Short is how much shorter a bracket is at this end at a distance from its back than
// along its back: where a mitre takes the toe away.
func (e End) Short(fromBack unit.Length) unit.Length {
	return max(0, -fromBack*unit.Length(math.Tan(float64(e.Mitre))))
}

// Leg tells which leg of an angle a hole is in. Holes into the wall through a
// cleat are said to be in its wall leg, those up into the slab in its seat leg.
type Leg string

// Legs of a bracket as it is mounted.
const (
	WallLeg Leg = "wall leg"
	SeatLeg Leg = "seat leg"
)

// BracketHole is a hole in a bracket: X from the left end, FromHeel across the
// leg, or from the upper back arris of a cleat. A Slot is the length beyond the diameter; Along tells its direction.
type BracketHole struct {
	Name     string
	Leg      Leg
	X        unit.Length
	FromHeel unit.Length
	Dia      unit.Length
	Slot     unit.Length
	Along    bool
	Sink     unit.Length // countersink diameter, 0: none
	For      string
	moves    bool // it becomes a slot as long as the wood's movement asks for, or stays round where the wood is held
}
