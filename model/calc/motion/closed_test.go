package motion

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// passage/testdata/geometry.yaml: closed forms for long panels, each found again by a
// second method. The planner must find a way 0.1 mm below the longest panel and
// prove that there is none 0.1 mm above.

func planRect(t testing.TB, name string, x0, x1, y0, y1 unit.Length) Body {
	return must(t)(PlanSection(name, []geom.Vec{geom.V(x0, y0), geom.V(x1, y0), geom.V(x1, y1), geom.V(x0, y1)}))
}

func planPose(x, y unit.Length, deg float64) Pose {
	return Pose{At: geom.Vec3{X: x, Y: y}, Turn: unit.Angle(deg) * unit.Degree}
}

// corridor is a right-angled corner: the part comes up a way a wide and leaves to
// the right on one b wide.
func corridor(t testing.TB, a, b, length, width unit.Length) Problem {
	const long = 4000
	to := planPose(a+length/2+50, b/2, 0)
	return Problem{
		Part: []Body{planRect(t, "panel", -length/2, length/2, -width/2, width/2)},
		Fixed: []Body{
			planRect(t, "left", -500, 0, -long, b+500), planRect(t, "far", -500, long, b, b+500),
			planRect(t, "near", a, long, -long, 0),
		},
		From: planPose(a/2, -length/2-50, 90), To: &to, Ways: []Way{X, Y, Turn},
		Low: planPose(-100, -long/2, -5), High: planPose(long, b+100, 95), Looks: 200_000,
	}
}

func TestCorridorCorner(t *testing.T) {
	for _, c := range []struct {
		id            string
		a, b, w, want unit.Length
	}{
		{"G1", 900, 1100, 0.01, 2823.7021 - 0.0202}, // a rod: w takes off 2 w at 45 degrees, less askew
		{"G4b", 1000, 1000, 60, 2708.4271},
	} {
		for _, by := range []unit.Length{-0.1, 0.1} {
			p := corridor(t, c.a, c.b, c.want+by, c.w)
			a := Search(p)
			t.Logf("%s %.4f: %s after %d looks", c.id, float64(c.want+by), a.Verdict, a.Looks)
			if want := map[bool]Verdict{true: Found, false: NoWay}[by < 0]; a.Verdict != want {
				t.Errorf("%s at %.4f: %s, want %s", c.id, float64(c.want+by), a.Verdict, want)
			}
			if a.Verdict == Found {
				holds(t, c.id, p, a)
			}
		}
	}
}

// Swinging a panel in plan between two walls asks for its diagonal; the demo of
// the table is the 7-24-25 triangle.
func TestSwingInPlan(t *testing.T) {
	for _, by := range []unit.Length{-0.1, 0.1} {
		w := 2500 + by
		to := planPose(w/2, 0, 90)
		p := Problem{
			Part:  []Body{planRect(t, "panel", -1200, 1200, -350, 350)},
			Fixed: []Body{planRect(t, "left", -500, 0, -5000, 5000), planRect(t, "right", w, w+500, -5000, 5000)},
			From:  planPose(w/2, 0, 0), To: &to, Ways: []Way{X, Y, Turn}, Low: planPose(-50, -100, -10), High: planPose(w+50, 100, 100), Looks: 100_000,
		}
		a := Search(p)
		t.Logf("G9 %v: %s after %d looks", w, a.Verdict, a.Looks)
		if want := map[bool]Verdict{true: Found, false: NoWay}[by > 0]; a.Verdict != want {
			t.Errorf("2400 x 700 between walls %v apart: %s, want %s", w, a.Verdict, want)
		}
	}
}

// Tilting in between two walls: G6, L 2400 t 60 needs 2400.7499; G7 is the same
// read the other way.
func TestTiltIn(t *testing.T) {
	for _, by := range []unit.Length{-0.1, 0.1} {
		a := Search(turning(t, 2400, 60, 2400.7499+by))
		t.Logf("G6 %v: %s after %d looks", by, a.Verdict, a.Looks)
		if want := map[bool]Verdict{true: Found, false: NoWay}[by > 0]; a.Verdict != want {
			t.Errorf("2400 x 60 with %+.1f mm: %s, want %s", float64(by), a.Verdict, want)
		}
	}
	if got := math.Hypot(2400, 60); math.Abs(got-2400.7499) > 1e-4 {
		t.Errorf("closed form %v", got)
	}
}
