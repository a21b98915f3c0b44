package view

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

func TestCube(t *testing.T) {
	cube := scene(boxAt(0, 0, 0, 100, 100, 100))
	for _, l := range []Look{
		Plan(), Below(), Front(), FromLeft(), FromRight(),
		Facing(geom.Through(geom.V(0, 0), geom.V(0, 5))),
	} {
		v := Of(cube, l)
		wantLines(t, v, 0, Visible, 4, 400)
		wantLines(t, v, 0, Hidden, 0, 0)
	}
	// A cube in isometry: nine edges seen, three hidden, each foreshortened by
	// the square root of 2/3 (ISO 5456-3; plain trigonometry).
	edge := 100 * math.Sqrt(2.0/3)
	v := Of(cube, Isometric())
	wantLines(t, v, 0, Visible, 9, 9*edge)
	wantLines(t, v, 0, Hidden, 3, 3*edge)
	// Turned by 30 degrees and raised by 20 the same nine and three, the edges
	// along each axis foreshortened by the sine of its angle with the view.
	turn, tilt := 30*math.Pi/180, 20*math.Pi/180
	sum := 0.0
	for _, along := range []float64{math.Sin(turn) * math.Cos(tilt), math.Cos(turn) * math.Cos(tilt), math.Sin(tilt)} {
		sum += 100 * math.Sqrt(1-along*along)
	}
	v = Of(cube, Axonometric(unit.Angle(turn), unit.Angle(tilt)))
	wantLines(t, v, 0, Visible, 9, 3*sum)
	wantLines(t, v, 0, Hidden, 3, sum)
}
