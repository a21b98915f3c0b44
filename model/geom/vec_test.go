package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/unit"
)

// TestPose: turning and placing agree with the rotation formulas, and Unplan
// undoes Plan.
func TestPose(t *testing.T) {
	p := Pose{At: xyz(10, 20, 30), Turn: 90 * unit.Degree}
	near(t, "quarter turn", float64(p.Plan(V(1, 0)).Sub(V(10, 21)).Len()), 0, 1e-12)
	near(t, "in space", float64(p.Space(xyz(1, 0, 5)).Sub(xyz(10, 21, 35)).Len()), 0, 1e-12)
	r := rand.New(rand.NewPCG(47, 48))
	for range 100 {
		p, v := randomPose(r, 1000), randomVec(r, 1000)
		near(t, "there and back", float64(p.Unplan(p.Plan(v)).Sub(v).Len()), 0, 1e-9)
	}
}

// TestLine: distances along and beside a line, its shift and its meeting with
// another.
func TestLine(t *testing.T) {
	l := Through(V(1, 1), V(4, 5)) // a 3-4-5 triangle
	near(t, "left", float64(l.Side(V(-3, 4))), 5, 1e-12)
	near(t, "right", float64(l.Side(V(5, -2))), -5, 1e-12)
	near(t, "along", float64(l.Along(V(4, 5))), 5, 1e-12)
	near(t, "shifted", float64(l.Shift(5).Side(V(-3, 4))), 0, 1e-12)
	if p, ok := l.Meet(Through(V(0, 5), V(1, 5))); !ok || p.Sub(V(4, 5)).Len() > 1e-12 {
		t.Errorf("meeting at %v, %v", p, ok)
	}
	if p, ok := l.Meet(l.Shift(1)); ok {
		t.Errorf("parallel lines meet at %v", p)
	}
}

// TestVec: the zero vector has no direction but makes no trouble.
func TestVec(t *testing.T) {
	if (Vec{}).Unit() != (Vec{}) || (Vec3{}).Unit() != (Vec3{}) {
		t.Error("the zero vector got a direction")
	}
	near(t, "angle", V(-1, 1).Angle().Degrees(), 135, 1e-12)
	near(t, "turn", float64(V(2, 0).Turn(math.Pi/6).Sub(V(unit.Length(math.Sqrt(3)), 1)).Len()), 0, 1e-12)
	near(t, "cross", xyz(1, 0, 0).Cross(xyz(0, 1, 0)).Dot(xyz(0, 0, 1)), 1, 0)
}
