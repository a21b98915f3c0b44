package geom_test

import (
	"fmt"

	"slabwright/model/geom"
)

// A worktop with a notch for a pipe and a hole for cables.
func ExampleRegion_Minus() {
	top := geom.Rect(geom.V(0, 0), geom.V(2400, 600)).
		Minus(geom.Rect(geom.V(0, 500), geom.V(80, 600)), geom.Circle(geom.V(1200, 520), 30, 0.02))
	fmt.Printf("%.0f mm2, %d loops, fault: %v\n", top.Area(), len(top.Loops()), top.Err())
	// Output: 1429173 mm2, 2 loops, fault: <nil>
}

// How near a leg may come: the inset rounds the inner corner, so that nothing
// of it is closer than asked.
func ExampleRegion_Grow() {
	ell := geom.Rect(geom.V(0, 0), geom.V(100, 100)).Minus(geom.Rect(geom.V(50, 50), geom.V(100, 100)))
	in := ell.Grow(-20, 0.01)
	fmt.Printf("%.1f mm2, inner corner %.2f mm away\n", in.Area(), in.DistanceTo(geom.V(50, 50)))
	// Output: 1185.7 mm2, inner corner 20.00 mm away
}

// Two parts that overlap by three millimetres.
func ExampleRegion_Gap() {
	a, b := geom.Rect(geom.V(0, 0), geom.V(100, 100)), geom.Rect(geom.V(97, 20), geom.V(200, 80))
	g := a.Gap(b)
	fmt.Println(g.Distance, g.A)
	// Output: -3 {98.5 50}
}

// What a beam covers of a line behind it.
func ExampleRegion_Inside() {
	beam := geom.Rect(geom.V(40, -10), geom.V(60, 10))
	fmt.Println(beam.Inside(geom.V(0, 0), geom.V(100, 0)))
	// Output: [[0.4 0.6]]
}

// The cells of a board and an inlay fit together edge by edge.
func ExampleSubdivide() {
	c := geom.Subdivide(geom.Rect(geom.V(0, 0), geom.V(10, 10)), geom.Rect(geom.V(4, 0), geom.V(6, 3)))
	fmt.Println(c.Select(func(in []bool) bool { return in[0] && !in[1] }).Loops())
	fmt.Println(c.Select(func(in []bool) bool { return in[1] }).Loops())
	// Output:
	// [[{0 0} {4 0} {4 3} {6 3} {6 0} {10 0} {10 10} {0 10}]]
	// [[{4 0} {6 0} {6 3} {4 3}]]
}
