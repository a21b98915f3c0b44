package motion

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Pose is where a part is: its own axes tilted about its x (the long edge), then
// rolled about y (the short edge), then turned about the vertical, then moved.
type Pose struct {
	At               geom.Vec3
	Turn, Roll, Tilt unit.Angle
}

// Way is one of the six ways in which a part can move.
type Way int

// The ways.
const (
	X Way = iota
	Y
	Z
	Turn
	Roll
	Tilt
	ways
)

// coords are a pose as six plain numbers, millimetres and radians.
type coords [ways]float64

func (p Pose) coords() coords {
	return coords{float64(p.At.X), float64(p.At.Y), float64(p.At.Z), float64(p.Turn), float64(p.Roll), float64(p.Tilt)}
}

func (c coords) pose() Pose {
	return Pose{vec{c[X], c[Y], c[Z]}.out(), unit.Angle(c[Turn]), unit.Angle(c[Roll]), unit.Angle(c[Tilt])}
}

func (c coords) lerp(d coords, t float64) coords {
	for i := range c {
		c[i] += (d[i] - c[i]) * t
	}
	return c
}

// turned is the rotation of a pose, row by row.
type turned [3]vec

func (c coords) rotation() turned {
	sa, ca := math.Sincos(c[Turn])
	sb, cb := math.Sincos(c[Roll])
	sc, cc := math.Sincos(c[Tilt])
	return turned{
		{ca * cb, ca*sb*sc - sa*cc, ca*sb*cc + sa*sc},
		{sa * cb, sa*sb*sc + ca*cc, sa*sb*cc - ca*sc},
		{-sb, cb * sc, cb * cc},
	}
}

func (r turned) of(v vec) vec { return vec{r[0].dot(v), r[1].dot(v), r[2].dot(v)} }

// Space takes a place from the part's own axes to the room's.
func (p Pose) Space(v geom.Vec3) geom.Vec3 {
	return p.coords().rotation().of(of(v)).add(of(p.At)).out()
}
