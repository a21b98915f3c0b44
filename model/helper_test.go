package model_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// spot is a corner at a known place.
type spot struct {
	name string
	at   geom.Vec
	bend string
}

// planOf measures the distances between all corners without error. The second
// wall must lie along x with its left end at the origin, as NewRoom lays it.
func planOf(closed bool, spots []spot, walls ...model.WallPlan) model.RoomPlan {
	p := model.RoomPlan{Closed: closed, At: 750, Walls: walls}
	for i, s := range spots {
		p.Corners = append(p.Corners, model.CornerPlan{Name: s.name, Bend: s.bend})
		for _, q := range spots[:i] {
			p.Readings = append(p.Readings, survey.Reading{ID: q.name + s.name, Points: []survey.Point{survey.Point(q.name), survey.Point(s.name)}, Length: q.at.Sub(s.at).Len(), SD: 0.001})
		}
	}
	return p
}

// roomAt is a room whose corners are known.
func roomAt(t testing.TB, closed bool, spots []spot, walls ...model.WallPlan) *model.Room {
	t.Helper()
	r, err := model.NewRoom(planOf(closed, spots, walls...))
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range spots {
		if r.Corners[i].At.Sub(s.at).Len() > 0.01 {
			t.Fatalf("corner %s at %v, want %v", s.name, r.Corners[i].At, s.at)
		}
	}
	return r
}

// alcove is an open room of three walls with corners of so many degrees. The
// left wall is 1200 long, the back 1600, the right 1200.
func alcove(left, right float64) []spot {
	b, c := geom.V(0, 0), geom.V(1600, 0)
	a := b.Add(geom.V(1200, 0).Turn(unit.Angle(-left) * unit.Degree))
	d := c.Add(geom.V(-1200, 0).Turn(unit.Angle(right) * unit.Degree))
	return []spot{{"A", a, ""}, {"B", b, "in"}, {"C", c, "in"}, {"D", d, ""}}
}

// threeWalls names the walls of an alcove.
func threeWalls() []model.WallPlan {
	return []model.WallPlan{
		{Name: "left", From: "A", To: "B", Make: model.Brick},
		{Name: "back", From: "B", To: "C", Make: model.Brick},
		{Name: "right", From: "C", To: "D", Make: model.Brick},
	}
}

// crooked is a random room with a niche in its back wall; its walls are up to
// 8 degrees off square, lean and bow.
func crooked(r *rand.Rand) ([]spot, []model.WallPlan) {
	within := func(lo, hi float64) unit.Length { return unit.Length(lo + (hi-lo)*r.Float64()) }
	names, bends := "ABCDEFGH", []string{"", "in", "out", "in", "in", "out", "in", ""}
	walls := []string{"left", "back left", "niche left", "niche back", "niche right", "back right", "right"}
	heading := []float64{90, 0, 90, 0, -90, 0, -90}
	long := []unit.Length{within(1000, 1500), within(500, 1200), within(180, 400), within(500, 1000), within(180, 400), within(500, 1200), within(1000, 1500)}
	at := make([]geom.Vec, 8)
	for i := range long {
		if i != 1 {
			heading[i] += float64(within(-8, 8))
		}
		at[i+1] = at[i].Add(geom.V(long[i], 0).Turn(unit.Angle(heading[i]) * unit.Degree))
	}
	var spots []spot
	var plans []model.WallPlan
	for i, v := range at {
		spots = append(spots, spot{names[i : i+1], v.Sub(at[1]), bends[i]})
	}
	for i, w := range walls {
		plans = append(plans, model.WallPlan{Name: w, From: names[i : i+1], To: names[i+1 : i+2], Make: model.Brick,
			Bow: within(-6, 6), Lean: within(-8, 8), LeanOver: 700})
	}
	return spots, plans
}

// toSegment is the distance of a point from a segment.
func toSegment(p, a, b geom.Vec) float64 {
	d := b.Sub(a)
	t := min(1, max(0, p.Sub(a).Dot(d)/d.Dot(d)))
	return float64(p.Sub(a.Add(d.Mul(t))).Len())
}

// between is the distance of two polylines that do not cross; loops are closed.
func between(a, b []geom.Vec, aClosed, bClosed bool) float64 {
	least := math.Inf(1)
	one := func(points, line []geom.Vec, closed bool) {
		n := len(line)
		if !closed {
			n--
		}
		for _, p := range points {
			for i := range n {
				least = min(least, toSegment(p, line[i], line[(i+1)%len(line)]))
			}
		}
	}
	one(a, b, bClosed)
	one(b, a, aClosed)
	return least
}

// within tells whether a point lies inside a loop, by counting crossings.
func within(p geom.Vec, loop []geom.Vec) bool {
	in := false
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// near complains when a number is not what it should be.
func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, tolerance)
	}
}

// sound complains about faults of a finished design.
func sound(t testing.TB, d *model.Design) {
	t.Helper()
	d.Finish()
	for _, f := range d.Faults() {
		t.Errorf("%s %v: %s", f.Line, f.Parts, f.Why)
	}
}

func length(x float64) unit.Length { return unit.Length(x) }
