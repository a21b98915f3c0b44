package view

import (
	"fmt"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// ell is an angle section 60 x 60 x 6 of some length along x, leg down, heel at
// the origin side.
func ell(x0, y0, z0, length unit.Length) Item {
	flange := geom.Layer{Region: geom.Rect(geom.V(x0, y0), geom.V(x0+length, y0+60)), Z0: z0 + 54, Z1: z0 + 60}
	leg := geom.Layer{Region: geom.Rect(geom.V(x0, y0+54), geom.V(x0+length, y0+60)), Z0: z0, Z1: z0 + 54}
	return Item{Faces: geom.Stacked("angle", flange, leg).Faces()}
}

// desk is a whole desk: a slab with a natural edge of 300 stations and 100
// holes, on angles and frames, with shelves, walls and a zone: 20 items.
func desk() Scene {
	s := scene(
		Item{Title: "slab", Faces: natural(300, 100).Faces()},
		ell(0, 640, 640, 2400),
	)
	for i := range 8 {
		x := unit.Length(20 + i*300)
		s.Items = append(s.Items, boxAt(x, 60, 640, x+40, 640, 700))
	}
	for i := range 6 {
		x := unit.Length(100 + i*350)
		s.Items = append(s.Items, boxAt(x, 350, 1100+unit.Length(i)*30, x+340, 640, 1130+unit.Length(i)*30))
	}
	wall := boxAt(-100, 700, 0, 2500, 800, 2500)
	wall.Role = Wall
	side := boxAt(-100, -800, 0, 0, 700, 2500)
	side.Role = Wall
	pipe := Item{Role: Obstacle, Faces: geom.Cylinder(geom.V(2300, 660), 15, 0, 2400, 0.05, "pipe").Faces()}
	zone := boxAt(800, -300, 0, 1600, 400, 640)
	zone.Role = Zone
	s.Items = append(s.Items, wall, side, pipe, zone)
	return s
}

func BenchmarkDesk(b *testing.B) {
	s := desk()
	for _, l := range []Look{
		Plan(), Below(), Front(), FromLeft(), Isometric(),
		Section(geom.Through(geom.V(1000, 0), geom.V(1000, 700))), PlanAt(720),
	} {
		b.Run(fmt.Sprint(l), func(b *testing.B) {
			for b.Loop() {
				Of(s, l)
			}
		})
	}
}
