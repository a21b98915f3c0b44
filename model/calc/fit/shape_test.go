package fit

import (
	"math"
	"testing"

	"slabwright/model/unit"
)

// TestShapeOfAMadeRoom is room R3 of testdata/rooms.yaml: its side walls lean
// the same way, so that the clear width is 10 mm less than the least width.
func TestShapeOfAMadeRoom(t *testing.T) {
	m := readMade(t)
	c := m.Cases[0]
	var left, right []Reach
	for _, y := range c.Stations {
		l, r, _, _ := m.walls(c.Room, y)
		left = append(left, Reach{unit.Length(y), unit.Length(l)})
		right = append(right, Reach{unit.Length(y), unit.Length(r)})
	}
	s, err := ShapeOf(left, right)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "clear", float64(s.Clear), c.Clear.At, 0.002)
	near(t, "least width", float64(s.Narrow), 1846.283, 0.002) // by hand from the corners
	if s.Form != Trapezoid {
		t.Errorf("%s: 16 mm of open joints are more than 8", s.Form)
	}
	near(t, "open joints", float64(s.Open), 1853.059-c.Clear.At, 0.003) // width at the front less the clear one
	// 10.0295/805.85 and 17.128/810.47: 0.01679 rad together.
	near(t, "turn", float64(s.Turn), 0.01679, 0.0001)
	near(t, "wedge behind", float64(s.TurnOpen), 31.0, 0.1)
}

// TestTurnedRectangle: between parallel walls that run askew a rectangle as wide
// as they stand apart, turned as told, touches both and nothing else.
func TestTurnedRectangle(t *testing.T) {
	for _, k := range []float64{0.03, -0.03} {
		wall := func(x float64) []Reach {
			return []Reach{{0, unit.Length(x)}, {400, unit.Length(x + 400*k)}, {800, unit.Length(x + 800*k)}}
		}
		s, err := ShapeOf(wall(0), wall(1000))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "clear", float64(s.Clear), 1000-800*math.Abs(k), 1e-9)
		near(t, "least width", float64(s.Narrow), 1000, 1e-9)
		// Turned so, the rectangle's way to the front runs along the walls.
		front := unit.Angle(-math.Pi/2) + s.Turn
		near(t, "way to the front", math.Cos(float64(front))/-math.Sin(float64(front)), k, 1e-9)
	}
}

func TestFormsOfShapes(t *testing.T) {
	for _, c := range []struct {
		name string
		mid  unit.Length // of the right wall
		out  unit.Length // of its front end
		want Form
	}{
		{"square", 1000, 1000, Rectangle},
		{"7 mm wider in front", 1003.5, 1007, Rectangle},
		{"9 mm wider in front", 1004.5, 1009, Trapezoid},
		{"bow of 3", 997, 1000, Rectangle},
		{"bow of 5", 995, 1000, Scribe},
		{"hollow of 5", 1005, 1000, Scribe},
	} {
		s, err := ShapeOf([]Reach{{0, 0}, {600, 0}}, []Reach{{0, 1000}, {300, c.mid}, {600, c.out}})
		if err != nil || s.Form != c.want {
			t.Errorf("%s: %s, %v; want %s", c.name, s.Form, err, c.want)
		}
	}
	if _, err := ShapeOf([]Reach{{0, 0}}, nil); err == nil {
		t.Error("a wall without places has a shape")
	}
	if _, err := ShapeOf([]Reach{{0, 0}, {1, unit.Length(math.NaN())}}, []Reach{{0, 9}, {1, 9}}); err == nil {
		t.Error("a wall that is nowhere has a shape")
	}
}

// TestOverWood by hand: bow 3, 0.2 degrees over 700 (2.44), spread 0.6 twice,
// 2 for the saw.
func TestOverWood(t *testing.T) {
	near(t, "over-wood", float64(OverWood(3, 700, 0.2*unit.Degree, 0.6)), 3+2.4435+1.2+2, 0.001)
	near(t, "hollow wall", float64(OverWood(-3, 700, 0, 0)), 2, 0)
}
