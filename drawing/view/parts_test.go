package view

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// All expected lines in this file are counted and measured by hand from the
// sizes of the parts.

func TestBracketUnderSlab(t *testing.T) {
	slab := boxAt(0, 0, 700, 1000, 600, 740)
	s := scene(slab, boxAt(200, 100, 640, 260, 600, 700)) // flush with the slab's back
	v := Of(s, Plan())
	wantLines(t, v, 0, Visible, 4, 3200)
	wantLines(t, v, 1, Hidden, 3, 500+60+500) // its back edge lies under the slab's
	wantLines(t, v, 1, Visible, 0, 0)
	if !has(pick(v, 1, Hidden), geom.V(200, 100), geom.V(260, 100)) {
		t.Error("no hidden front edge of the bracket")
	}
	v = Of(s, Below())
	wantLines(t, v, 1, Visible, 4, 1120) // before the slab
	wantLines(t, v, 1, Hidden, 0, 0)
	wantLines(t, v, 0, Visible, 5, 3200-60) // its back edge is in two pieces
	if !has(pick(v, 1, Visible), geom.V(200, -600), geom.V(260, -600)) {
		t.Error("from below the back edge of the bracket is not at the bottom")
	}
	v = Of(s, Front())
	wantLines(t, v, 1, Visible, 3, 60+60+60) // its upper edge is the slab's lower one
	v = Of(s.DropHidden(Made), Plan())
	wantLines(t, v, 1, Hidden, 0, 0)
	v = Of(s.SeeThrough(Made), Plan())
	wantLines(t, v, 1, Visible, 3, 1060)
}

func TestFlushBoxes(t *testing.T) {
	// One on the other, all sides flush: one joint line in front.
	v := Of(scene(boxAt(0, 0, 0, 100, 50, 20), boxAt(0, 0, 20, 100, 50, 60)), Front())
	if n, l := len(v.Segments), total(v.Segments); n != 7 || l != 2*60+3*100 {
		t.Errorf("%d lines of %v mm: %v", n, l, v.Segments)
	}
	// Side by side, with a micrometre between them as rounding leaves it.
	v = Of(scene(boxAt(0, 0, 0, 100, 50, 20), boxAt(100.001, 0, 0, 200, 50, 20), boxAt(50, 10, -40, 150, 40, 0)), Plan())
	if got := pick(v, 2, Visible); len(got) > 0 {
		t.Errorf("seen through a joint: %v", got)
	}
	wantLines(t, v, 2, Hidden, 4, 260)
	// A lower box peeps out by a micrometre: its line is the upper one's.
	v = Of(scene(boxAt(0, 0, 20, 100, 50, 40), boxAt(0, -0.001, 0, 100, 50, 20)), Plan())
	if len(v.Segments) != 4 {
		t.Errorf("%d lines of two boxes a micrometre apart, want 4: %v", len(v.Segments), v.Segments)
	}
	// A joint that runs out on the edge of a board behind it.
	v = Of(scene(boxAt(0, 0, 0, 50, 20, 80), boxAt(50, 0, 0, 100, 20, 80), boxAt(0, 20, 0, 100, 40, 80)), Plan())
	if l := total(v.Segments); math.Abs(l-(2*40+3*100+20)) > 1e-9 {
		t.Errorf("lines of %v mm, want 400: %v", l, v.Segments)
	}
}

// What is thinner than a line is drawn as one.
func TestThinBox(t *testing.T) {
	v := Of(scene(boxAt(0, 0, 0, 100, 0.005, 20)), Plan())
	wantLines(t, v, 0, Visible, 1, 100)
}

func TestSplitFaces(t *testing.T) {
	// A front in two halves of one surface: the split is not drawn, and a
	// line right behind it is hidden.
	p := func(x, z unit.Length) geom.Vec3 { return geom.Vec3{X: x, Z: z} }
	half := func(x0, x1 unit.Length) geom.Face {
		return geom.Face{
			Loops:  [][]geom.Vec3{{p(x0, 0), p(x1, 0), p(x1, 100), p(x0, 100)}},
			Normal: geom.Vec3{Y: -1}, Surface: "front",
		}
	}
	front := Item{Faces: []geom.Face{half(0, 50), half(50, 100)}}
	v := Of(scene(front, boxAt(50, 10, 20, 80, 20, 40)), Front())
	wantLines(t, v, 0, Visible, 4, 400)
	wantLines(t, v, 1, Visible, 0, 0)
	wantLines(t, v, 1, Hidden, 4, 100)
	// From behind, an open skin shows its border and hides nothing.
	v = Of(scene(front, boxAt(20, -20, 20, 40, -10, 40)), Facing(geom.Through(geom.V(100, 0), geom.V(0, 0))))
	wantLines(t, v, 0, Visible, 4, 400)
	wantLines(t, v, 1, Visible, 4, 80)
}

func TestSlabWithHole(t *testing.T) {
	r := geom.Rect(geom.V(0, 0), geom.V(400, 300)).Minus(geom.Circle(geom.V(100, 150), 20, 0.02))
	s := scene(Item{Faces: geom.Prism(r, 700, 740, "edge").Faces()})
	round := float64(r.Perimeter()) - 1400

	var closed []Line
	v := Of(s, Plan())
	for _, l := range v.Lines() {
		if l.Closed {
			closed = append(closed, l)
		}
	}
	if len(v.Lines()) != 2 || len(closed) != 2 {
		t.Fatalf("%d lines, %d closed, want outline and hole", len(v.Lines()), len(closed))
	}
	var ring []Segment
	for _, g := range v.Segments {
		if g.Curved {
			ring = append(ring, g)
		}
	}
	if math.Abs(total(ring)-round) > 1e-6 || math.Abs(total(v.Segments)-1400-round) > 1e-6 {
		t.Errorf("hole line of %v mm, want %v", total(ring), round)
	}
	if !closed[1].Curved || closed[1].Surface == "" || closed[0].Curved {
		t.Errorf("curved lines not told apart: %v, %v", closed[0].Stroke, closed[1].Stroke)
	}

	v = Of(s, Front()) // the hole: two hidden lines
	wantLines(t, v, 0, Visible, 4, 880)
	wantLines(t, v, 0, Hidden, 2, 80)
	hidden := pick(v, 0, Hidden)
	if w := math.Abs(float64(hidden[0].A.X - hidden[1].A.X)); math.Abs(w-40) > 0.05 {
		t.Errorf("hole of 40 mm drawn %.3f wide", w)
	}

	// Through the hole one sees what lies below.
	s.Items = append(s.Items, boxAt(100, 0, 600, 101, 300, 650))
	v = Of(s, Plan())
	if got := total(pick(v, 1, Visible)); math.Abs(got-80) > 0.1 {
		t.Errorf("%v mm of the bar seen through a hole of 40 mm", got)
	}
}

func TestAngle(t *testing.T) {
	s := scene(ell(0, 0, 0, 500)) // flange on top, leg at the back
	v := Of(s, Plan())
	wantLines(t, v, 0, Visible, 4, 1120)
	wantLines(t, v, 0, Hidden, 1, 500)
	v = Of(s, Front())
	wantLines(t, v, 0, Visible, 5, 1000+120+500) // lower edge of the flange
	wantLines(t, v, 0, Hidden, 0, 0)
	v = Of(s, FromLeft())
	wantLines(t, v, 0, Visible, 6, 240)
	wantLines(t, v, 0, Hidden, 0, 0)
	v = Of(s, Facing(geom.Through(geom.V(500, 0), geom.V(0, 0)))) // from behind
	wantLines(t, v, 0, Hidden, 1, 500)
}

// A bar along y with a flat top that runs into a rounded front arris.
func TestSmoothEdges(t *testing.T) {
	p := []geom.Vec{geom.V(0, 0), geom.V(50, 0), geom.V(50, 30), geom.V(10, 30)}
	labels := []string{"underside", "back", "top"}
	for i := 1.0; i <= 4; i++ {
		t := unit.Angle((90 + 22.5*i) * math.Pi / 180)
		p = append(p, geom.V(10, 20).Add(geom.V(10, 0).Turn(t)))
		labels = append(labels, "round")
	}
	labels = append(labels, "front")
	at := func(v geom.Vec, y unit.Length) geom.Vec3 { return geom.Vec3{X: v.X, Y: y, Z: v.Y} }
	var near, far []geom.Vec3
	var faces []geom.Face
	for i, a := range p {
		b := p[(i+1)%len(p)]
		near = append(near, at(a, 0))
		far = append([]geom.Vec3{at(a, 200)}, far...)
		faces = append(faces, geom.Face{
			Loops:   [][]geom.Vec3{{at(a, 0), at(a, 200), at(b, 200), at(b, 0)}},
			Surface: labels[i], Curved: labels[i] == "round",
		})
	}
	faces = append([]geom.Face{{Loops: [][]geom.Vec3{near}, Surface: "end 1"}, {Loops: [][]geom.Vec3{far}, Surface: "end 2"}}, faces...)
	v := Of(scene(Item{Faces: faces}), Plan())
	wantLines(t, v, 0, Visible, 6, 500) // no line along where the round begins; its ends are lines of their own
	wantLines(t, v, 0, Hidden, 0, 0)
	for _, l := range pick(v, 0, Visible) {
		if round := l.A.X <= 10 && l.B.X <= 10; l.Curved != round || (l.Surface == "round") != round {
			t.Errorf("%+v", l)
		}
	}
	// Seen from the front and above, the round has an outline: where it turns
	// away from the viewer. From there the top cannot be told from it.
	v = Of(scene(Item{Faces: faces}), Axonometric(-math.Pi/2, -0.3))
	outline := 0
	for _, s := range pick(v, 0, Visible) {
		if s.Curved && math.Abs(float64(s.B.Sub(s.A).Len())-200) < 1e-9 {
			outline++
		}
	}
	if outline != 1 {
		t.Errorf("%d outlines of the round, want 1", outline)
	}
}

// A rolled angle with its root fillet and toe radii, wall leg hanging down.
func TestRolledAngle(t *testing.T) {
	bar := geom.AngleBar{SeatWidth: 60, WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 500}.Solid()
	s := scene(Item{Faces: bar.Faces()})
	v := Of(s, Plan())
	wantLines(t, v, 0, Visible, 4, 1120)
	// The inside of the wall leg is seen edge-on where fillet and toe run
	// into it.
	wantLines(t, v, 0, Hidden, 1, 500)
	if !has(pick(v, 0, Hidden), geom.V(0, -6), geom.V(500, -6)) {
		t.Errorf("hidden lines %v", pick(v, 0, Hidden))
	}
	v = Of(s, Front()) // both toes end in a line, the fillet does not
	wantLines(t, v, 0, Hidden, 0, 0)
	across := 0
	for _, l := range pick(v, 0, Visible) {
		if l.A.Y == l.B.Y {
			across++
		}
	}
	if across != 3 {
		t.Errorf("%d lines along the bar, want heel, seat leg and lower edge", across)
	}
	v = Of(s, Section(geom.Through(geom.V(250, 0), geom.V(250, 10))))
	section := float64(geom.AngleBar{SeatWidth: 60, WallWidth: 60, Thickness: 6, Root: 8, Toe: 4, Length: 500}.SectionArea())
	if got := area(v.Cuts[0].Loops); math.Abs(got-section) > 1e-3*section {
		t.Errorf("section of %v mm2, want %v", got, section)
	}
}

func TestRolesOverAll(t *testing.T) {
	knees := boxAt(100, -100, 0, 500, 400, 650)
	knees.Role = Zone
	s := scene(boxAt(0, 0, 700, 600, 600, 740), knees, boxAt(200, 100, 0, 300, 200, 100))
	v := Of(s, Plan())
	wantLines(t, v, 1, Visible, 4, 1800) // although under the slab
	wantLines(t, v, 1, Hidden, 0, 0)
	wantLines(t, v, 2, Hidden, 4, 400)
	v = Of(scene(knees, boxAt(100, -100, 0, 500, 400, 10)), Plan())
	wantLines(t, v, 0, Visible, 0, 0) // the part's lines win over the zone's
	wantLines(t, v, 1, Visible, 4, 1800)
	v = Of(scene(knees, boxAt(100, -100, 0, 500, 400, 10), boxAt(0, -200, 700, 600, 600, 740)), Plan())
	wantLines(t, v, 0, Visible, 0, 0) // even its hidden lines
	wantLines(t, v, 1, Hidden, 4, 1800)
	wall := boxAt(0, 600, 0, 600, 700, 2500)
	wall.Role = Wall
	v = Of(scene(wall, boxAt(0, 0, 700, 600, 600, 740)), Plan())
	wantLines(t, v, 1, Visible, 4, 2400) // the part's back edge wins over the wall's line
	wantLines(t, v, 0, Visible, 3, 800)
	// A visible line of anything wins over a hidden one of a part.
	step := Item{Role: Obstacle, Faces: append(boxAt(0, 0, 100, 50, 100, 120).Faces, boxAt(50, 0, 100, 100, 100, 110).Faces...)}
	v = Of(scene(boxAt(50, 20, 0, 80, 40, 10), step), Plan())
	wantLines(t, v, 0, Hidden, 3, 80)
	wantLines(t, v, 1, Visible, 5, 500)
	for _, r := range []Role{Made, Wall, Obstacle, Zone, Ghost} {
		if r.String() == Role(99).String() {
			t.Errorf("role %d has no name", r)
		}
	}
}
