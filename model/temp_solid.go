package model

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

func (a *AnglePart) solid() geom.Solid {
	s := a.Section
	seat := geom.Rect(geom.V(0, -s.Leg), geom.V(a.Length, 0))
	wall := geom.Rect(geom.V(0, -s.Thickness), geom.V(a.Length, 0))
	return geom.Stacked("angle", geom.Layer{Region: seat, Z0: -s.Thickness, Z1: 0}, geom.Layer{Region: wall, Z0: -s.Leg, Z1: 0}).Place(a.Pose())
}

func rodSolid(a, b geom.Vec3, r, chord unit.Length) geom.Solid {
	return geom.Prism(geom.Strip([]geom.Vec{a.Flat(), b.Flat()}, 2*r, chord), a.Z-r, a.Z+r, "rod")
}
