package passage

import (
	"math"
	"os"
	"testing"

	"github.com/goccy/go-yaml"

	"slabwright/model/unit"
)

// testdata/geometry.yaml: cases whose closed form and brute force agree.
func TestPublishedCases(t *testing.T) {
	data, err := os.ReadFile("testdata/geometry.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var f struct {
		Cases []struct {
			ID, Fn string
			In     map[string]float64
			Out    float64
			Tol    float64
		}
	}
	if err := yaml.Unmarshal(data, &f); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, c := range f.Cases {
		in := func(k string) unit.Length { return unit.Length(c.In[k]) }
		var got unit.Length
		switch c.Fn {
		case "corner_rod":
			got = RoundCorner(in("a"), in("b"), 0)
		case "stair_clear":
			got = StairHeight(in("H"), unit.Angle(c.In["deg"])*unit.Degree)
		case "longest_in_rect":
			got = longest(in("q"), in("A"), in("B"))
		default:
			continue
		}
		seen++
		if math.Abs(float64(got)-c.Out) > c.Tol {
			t.Errorf("%s %s: %.4f, want %.4f", c.ID, c.Fn, float64(got), c.Out)
		}
	}
	if seen != 4 {
		t.Errorf("%d cases", seen)
	}
	// G4b of the same collection: a = b = 1000, w 60
	if got := RoundCorner(1000, 1000, 60); math.Abs(float64(got)-2708.4271) > 0.01 {
		t.Errorf("G4b: %v", got)
	}
}

// longest finds by bisection the longest panel that still fits.
func longest(q, a, b unit.Length) unit.Length {
	lo, hi := unit.Length(0), 2*(a+b)
	for range 100 {
		if mid := (lo + hi) / 2; Askew(mid, q, a, b) >= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// Turning the rectangle in small steps must agree with the closed form.
func TestAskewAgainstTurning(t *testing.T) {
	for _, c := range [][4]float64{{2588, 400, 2500, 1500}, {2589.5, 400, 2500, 1500}, {820, 45, 760, 400}, {820, 45, 760, 340}, {700, 45, 760, 1980}, {1000, 900, 950, 940}} {
		p, q, a, b := c[0], c[1], c[2], c[3]
		fits := false
		for k := range 90001 {
			s, co := math.Sincos(float64(k) * math.Pi / 2 / 90000)
			if p*co+q*s <= a && p*s+q*co <= b {
				fits = true
			}
		}
		if got := Askew(unit.Length(p), unit.Length(q), unit.Length(a), unit.Length(b)) >= 0; got != fits {
			t.Errorf("%v: %v, turning says %v", c, got, fits)
		}
	}
}

func TestInBox(t *testing.T) {
	for _, c := range []struct {
		thing, box [3]unit.Length
		want       unit.Length
	}{
		{[3]unit.Length{2000, 600, 45}, [3]unit.Length{2100, 1000, 700}, 100},
		{[3]unit.Length{600, 45, 2000}, [3]unit.Length{1000, 700, 2100}, 100},
		{[3]unit.Length{2000, 600, 45}, [3]unit.Length{1100, 1400, 2000}, 0},
	} {
		if got := InBox(c.thing, c.box); math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("%v in %v: %v, want %v", c.thing, c.box, got, c.want)
		}
	}
	if InBox([3]unit.Length{2380, 800, 45}, [3]unit.Length{1100, 1400, 2000}) < 0 {
		t.Error("2380 goes into a lift of 1400 x 2000 at a slant")
	}
	if InBox([3]unit.Length{2600, 800, 45}, [3]unit.Length{1100, 1400, 2000}) >= 0 {
		t.Error("2600 does not go into a lift whose diagonal is 2441")
	}
}
