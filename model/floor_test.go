package model_test

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// floorOf is a room of 3000 x 2400 mm with marks at its corners.
func floorOf(t *testing.T, marks map[string]unit.Length) *model.Room {
	p := planOf(true, box())
	for _, c := range []string{"A", "B", "C", "D"} {
		if h, ok := marks[c]; ok {
			p.Floor = append(p.Floor, model.FloorMark{Corner: c, Height: h})
		}
	}
	return newRoom(t, p)
}

// TestFloorBetweenMarks: the cases that FloorAt documents, with planes put up by
// hand. A (0, -2400), B (0, 0), C (3000, 0), D (3000, -2400).
func TestFloorBetweenMarks(t *testing.T) {
	type at map[geom.Vec]float64
	for _, c := range []struct {
		name  string
		marks map[string]unit.Length
		want  at
	}{
		{"no mark", nil, at{geom.V(10, 10): 0}},
		{"one mark: level", map[string]unit.Length{"C": -7}, at{geom.V(0, 0): -7, geom.V(9000, 0): -7}},
		{"two marks: linear along, level across, no further than the marks", map[string]unit.Length{"A": 0, "D": -6},
			at{geom.V(0, -2400): 0, geom.V(1500, -2400): -3, geom.V(1500, 0): -3, geom.V(2000, -900): -4, geom.V(4000, 0): -6, geom.V(-500, 0): 0}},
		// 10 mm over 3000 to the right, 4 mm over 2400 to the back.
		{"three marks: the plane through them", map[string]unit.Length{"A": 0, "B": 4, "D": 10}, at{geom.V(1500, -1200): 7, geom.V(0, -600): 3, geom.V(600, -1800): 3}},
		{"four marks in a plane", map[string]unit.Length{"A": 0, "B": 4, "C": 14, "D": 10}, at{geom.V(2000, -800): 2000*10./3000 + 1600*4./2400, geom.V(3000, 0): 14}},
		// Twisted: the plane is level at 3, all corners miss it by 3 either way; in
		// the middle they cancel, at the corners they are met.
		{"a twisted floor", map[string]unit.Length{"A": 0, "B": 6, "C": 0, "D": 6}, at{geom.V(1500, -1200): 3, geom.V(0, 0): 6, geom.V(3000, 0): 0, geom.V(0, -2400): 0, geom.V(1500, 0): 3}},
	} {
		r := floorOf(t, c.marks)
		for p, want := range c.want {
			near(t, c.name, float64(r.FloorAt(p)), want, 0.002)
		}
	}
}

// TestFloorHasNoSteps: a millimetre further on the floor is hardly higher, and
// it never leaves the range of its marks.
func TestFloorHasNoSteps(t *testing.T) {
	r := floorOf(t, map[string]unit.Length{"A": -8, "B": 5, "C": 0, "D": 12})
	last := math.NaN()
	for x := unit.Length(-1000); x < 5000; x++ {
		h := float64(r.FloorAt(geom.V(x, -x/2)))
		if h < -8 || h > 12 || math.Abs(h-last) > 0.05 {
			t.Fatalf("at %v the floor is at %v, a millimetre before at %v", x, h, last)
		}
		last = h
	}
}

// TestRowOfMarks: marks along a wall that is not quite straight tell nothing of
// the slope into the room.
func TestRowOfMarks(t *testing.T) {
	p := planOf(false, []spot{{"A", geom.V(-1000, 0), ""}, {"B", geom.V(0, 0), ""}, {"C", geom.V(1000, -20), ""}})
	p.Floor = []model.FloorMark{{Corner: "A"}, {Corner: "B", Height: 5}, {Corner: "C", Height: 4}}
	r := newRoom(t, p)
	if h := r.FloorAt(geom.V(0, -3000)); h < 0 || h > 5 {
		t.Errorf("three metres into the room the floor is at %v", h)
	}
	near(t, "at a mark", float64(r.FloorAt(geom.V(0, 0))), 5, 1e-6)
}
