// Package sample makes parts for tests that need a whole scene.
package sample

import (
	"fmt"
	"math"
	"testing"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Front makes the lower and the upper course of a natural front edge of n
// corners, from left to right, on the grid of a micrometre.
func Front(n int, length unit.Length) (under, over []geom.Vec) {
	grid := func(l float64) unit.Length { return unit.Length(math.Round(l*1000) / 1000) }
	for i := range n {
		x := float64(length) * float64(i) / float64(n-1)
		y := 25*math.Sin(x/310) + 7*math.Sin(x/43+1)
		under = append(under, geom.V(grid(x), grid(y)))
		over = append(over, geom.V(grid(x), grid(y+14+5*math.Sin(x/170))))
	}
	return under, over
}

// Slab is a worktop 45 mm thick with a natural front edge of n corners, an eased
// back arris, k round holes and a pocket.
func Slab(n, k int, length unit.Length) geom.Solid {
	const deep = 780
	under, over := Front(n, length)
	left, right := geom.V(0, deep), geom.V(length, deep)
	s := geom.Slab{Top: 45, Outline: []geom.SlabEdge{
		{Name: "front", Path: under, Over: over},
		{Name: "right", Path: []geom.Vec{under[n-1], right}},
		{Name: "back", Path: []geom.Vec{right, left}, EaseTop: 2},
		{Name: "left", Path: []geom.Vec{left, under[0]}},
	}}
	for i := range k {
		c := geom.V(length*unit.Length(i+1)/unit.Length(k+1), unit.Length(200+110*(i%4)))
		cut := geom.SlabCut{Name: fmt.Sprintf("hole %d", i+1), Region: geom.Circle(c, 9, 0.05), From: geom.CutThrough}
		if i%3 == 1 {
			cut.From, cut.Depth = geom.CutFromUnder, 20
		}
		s.Cuts = append(s.Cuts, cut)
	}
	s.Cuts = append(s.Cuts, geom.SlabCut{Name: "pocket", Region: geom.Rect(geom.V(150, 60), geom.V(260, 140)), From: geom.CutFromUnder, Depth: 12})
	return s.Solid()
}

// Angle is a bar of L 50 x 50 x 6 with two crooked ends and a hole every 200 mm
// in both legs, those in the wall leg countersunk.
func Angle(length unit.Length) geom.Solid {
	b := geom.AngleBar{SeatWidth: 50, WallWidth: 50, Thickness: 6, Root: 7, Toe: 3.5, Length: length,
		Start: geom.BarEnd{Plan: 0.04, Slope: -0.02}, End: geom.BarEnd{Plan: -0.7}}
	for x := unit.Length(100); x < length-100; x += 200 {
		b.Holes = append(b.Holes,
			geom.BarHole{Name: fmt.Sprintf("W%g", float64(x)), Leg: geom.WallLeg, X: x, FromHeel: 28, Dia: 9, SinkDia: 14},
			geom.BarHole{Name: fmt.Sprintf("S%g", float64(x)), Leg: geom.SeatLeg, X: x + 30, FromHeel: 30, Dia: 6, Slot: 10})
	}
	return b.Solid()
}

// Bench is a scene of n parts that keep clear of each other: a slab, then rods
// and angles in turn, all turned and far from the origin.
func Bench(t testing.TB, n int) mesh.Scene {
	t.Helper()
	s := mesh.Scene{Title: "bench"}
	add := func(name string, solid geom.Solid, c mesh.Color, metal bool, at geom.Vec3, turn unit.Angle) {
		if err := solid.Err(); err != nil {
			t.Fatal(err)
		}
		m, err := mesh.FromFaces(solid.Place(geom.Pose{At: at, Turn: turn}).Faces())
		if err != nil {
			t.Fatal(err)
		}
		s.Objects = append(s.Objects, mesh.Object{Name: name, ID: fmt.Sprintf("P%02d", len(s.Objects)+1),
			Color: c, Metal: metal, Roughness: 0.6, Meshes: []mesh.Mesh{m}})
	}
	add("top <ash & oak>", Slab(200, 12, 2300), mesh.Color{R: 0xb5, G: 0x7a, B: 0x45}, false, geom.Vec3{X: 1200, Y: 400, Z: 700}, 0.02)
	for i := 1; i < n; i++ {
		at := geom.Vec3{X: 1300.125, Y: 1400 + 100*unit.Length(i), Z: 694}
		if i%2 == 1 {
			add(fmt.Sprintf("Winkel Wand %d", i), Angle(1000+37.5*unit.Length(i)), mesh.Color{R: 0x55, G: 0x58, B: 0x5c}, true, at, 0.01*unit.Angle(i))
		} else {
			add(fmt.Sprintf("rod %d", i), geom.Cylinder(geom.V(0, 0), 8, 0, 200, 0.05, "rod"), mesh.Color{R: 0x90, G: 0x90, B: 0x94}, true, at, 0)
		}
	}
	return s
}

// Volume is the volume of all parts in mm3, hollows taken off.
func Volume(s mesh.Scene) float64 {
	sum := 0.0
	for _, o := range s.Objects {
		sum += float64(o.Mesh().Volume())
	}
	return sum
}
