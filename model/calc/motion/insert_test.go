package motion

import (
	"math"
	"os"
	"testing"

	"github.com/goccy/go-yaml"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// testdata/insert.yaml: nine sections with verdicts that formulas and a lattice
// search agree on, and the gaps at which a swing and a turn just work.

type insertFile struct {
	Cases []struct {
		ID, What, Verdict string
		Part              struct{ Length, Thickness unit.Length }
		Obstacles         [][][2]unit.Length
		Start, Goal       [3]float64
		TranslationOnly   struct{ Path bool } `yaml:"translation_only"`
		WithRotation      struct{ Path bool } `yaml:"with_rotation"`
	}
	Turning []struct {
		B      unit.Length `yaml:"b"`
		T      unit.Length
		W      unit.Length `yaml:"W"`
		Needed float64     `yaml:"needed_width_sampled"`
		Turn   bool        `yaml:"turn_down_possible"`
	} `yaml:"turning_between_walls"`
	Swing []struct {
		D    unit.Length
		T    unit.Length
		F    unit.Length `yaml:"F"`
		HMin float64     `yaml:"H_min"`
	} `yaml:"swing_in_min_shelf_height"`
}

func readYAML(t *testing.T, name string, into any) {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if err := yaml.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
}

func must(t testing.TB) func(Body, error) Body {
	return func(b Body, err error) Body {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
}

// side is a rectangle in a side section.
func side(t testing.TB, name string, u0, u1, v0, v1 unit.Length) Body {
	return must(t)(SideSection(name, []geom.Vec{geom.V(u0, v0), geom.V(u1, v0), geom.V(u1, v1), geom.V(u0, v1)}))
}

func sidePose(u, v, tilt float64) Pose {
	return Pose{At: geom.Vec3{Y: unit.Length(u), Z: unit.Length(v)}, Tilt: unit.Angle(tilt) * unit.Degree}
}

// holds follows a way that was found and fails the test when it collides.
func holds(t *testing.T, what string, p Problem, a Answer) {
	t.Helper()
	if len(a.Way) == 0 || a.Way[0] != p.From {
		t.Errorf("%s: the way does not start where it should", what)
		return
	}
	if p.To != nil && a.Way[len(a.Way)-1] != *p.To {
		t.Errorf("%s: the way does not end where it should", what)
	}
	if tight := Follow(p.Part, p.Fixed, a.Way, 1); tight.Gap < -touch {
		t.Errorf("%s: the way collides with %s by %.3f mm", what, tight.Near, float64(-tight.Gap))
	}
}

func TestSectionsGoInAsPublished(t *testing.T) {
	var f insertFile
	readYAML(t, "insert.yaml", &f)
	if len(f.Cases) < 9 {
		t.Fatal("cases are missing")
	}
	for _, c := range f.Cases {
		p := Problem{From: sidePose(c.Goal[0], c.Goal[1], c.Goal[2])}
		to := sidePose(c.Start[0], c.Start[1], c.Start[2])
		p.To = &to
		p.Part = []Body{side(t, "panel", -c.Part.Length/2, c.Part.Length/2, -c.Part.Thickness/2, c.Part.Thickness/2)}
		for _, o := range c.Obstacles {
			var pts []geom.Vec
			for _, v := range o {
				pts = append(pts, geom.V(v[0], v[1]))
			}
			p.Fixed = append(p.Fixed, must(t)(SideSection("obstacle", pts)))
		}
		p.Low, p.High = sidePose(-200, -800, -100), sidePose(3500, 1800, 100)
		for _, run := range []struct {
			ways []Way
			can  bool
		}{{[]Way{Y, Z}, c.TranslationOnly.Path}, {[]Way{Y, Z, Tilt}, c.WithRotation.Path}} {
			if c.Start[2] != c.Goal[2] && len(run.ways) == 2 {
				continue
			}
			p.Ways = run.ways
			a := Search(p)
			t.Logf("%s %v: %s after %d looks, %d poses", c.ID, run.ways, a.Verdict, a.Looks, len(a.Way))
			want := NoWay
			if run.can {
				want = Found
			}
			if a.Verdict != want {
				t.Errorf("%s (%s) with %v: %s, want %s", c.ID, c.What, run.ways, a.Verdict, want)
			}
			if a.Verdict == Found {
				holds(t, c.ID, p, a)
			}
		}
	}
}

// Between two walls a panel turns flat only where its diagonal fits.
func TestTurningFlatNeedsTheDiagonal(t *testing.T) {
	var f insertFile
	readYAML(t, "insert.yaml", &f)
	for _, c := range f.Turning {
		a := Search(turning(t, c.B, c.T, c.W))
		t.Logf("%v between %v: %s after %d looks", c.B, c.W, a.Verdict, a.Looks)
		if want := map[bool]Verdict{true: Found, false: NoWay}[c.Turn]; a.Verdict != want {
			t.Errorf("%v x %v between walls %v apart: %s, want %s", c.B, c.T, c.W, a.Verdict, want)
		}
		if math.Abs(math.Hypot(float64(c.B), float64(c.T))-c.Needed) > 1e-4 {
			t.Errorf("diagonal of %v x %v is not %v", c.B, c.T, c.Needed)
		}
	}
}

func turning(t testing.TB, b, thick, w unit.Length) Problem {
	to := sidePose(float64(w/2), 0, 60)
	return Problem{
		Part:  []Body{side(t, "panel", -b/2, b/2, -thick/2, thick/2)},
		Fixed: []Body{side(t, "left", -300, 0, -5000, 5000), side(t, "right", w, w+300, -5000, 5000)},
		From:  sidePose(float64(w/2), 0, 0), To: &to, Ways: []Way{Y, Z, Tilt},
		Low: sidePose(-100, -500, -80), High: sidePose(float64(w+100), 500, 80), Looks: 60_000,
	}
}

// A shelf as deep as the panel, a rack below, a wall in front: the least height
// under the shelf at which the panel swings in, to 0.1 mm.
func TestSwingingInUnderAShelf(t *testing.T) {
	var f insertFile
	readYAML(t, "insert.yaml", &f)
	for _, c := range f.Swing[:4] { // the others are of the same kind
		for _, by := range []float64{-0.1, 0.1} {
			h := unit.Length(c.HMin + by)
			to := sidePose(float64(c.D+c.F/2), 700, 90)
			p := Problem{
				Part: []Body{side(t, "panel", -c.D/2, c.D/2, -c.T/2, c.T/2)},
				Fixed: []Body{side(t, "wall", -300, 0, -4000, 4000), side(t, "rack", 0, c.D, -700, 0), side(t, "shelf", 0, c.D, h, h+300),
					side(t, "opposite", c.D+c.F, c.D+c.F+300, -4000, 4000)},
				From: sidePose(float64(c.D/2), float64(c.T/2), 0), To: &to, Ways: []Way{Y, Z, Tilt},
				Low: sidePose(-100, -1500, -10), High: sidePose(float64(c.D+c.F+100), 2000, 100), Looks: 100_000,
			}
			a := Search(p)
			t.Logf("%v under %.2f: %s after %d looks", c, float64(h), a.Verdict, a.Looks)
			if want := map[bool]Verdict{true: Found, false: NoWay}[by > 0]; a.Verdict != want {
				t.Errorf("%+v, shelf at %.2f: %s, want %s", c, float64(h), a.Verdict, want)
			}
			if a.Verdict == Found {
				holds(t, "swing", p, a)
			}
		}
	}
}
