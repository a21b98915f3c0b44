package model_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// tape is a distance reading between two corners with the usual accuracy.
func tape(from, to string, l unit.Length) survey.Reading {
	return survey.Reading{ID: from + "-" + to, Points: []survey.Point{survey.Point(from), survey.Point(to)}, Length: l}
}

// studioPlan is the print studio, an invented room: a back wall with a niche,
// measured with a steel tape of class II.
func studioPlan() model.RoomPlan {
	p := model.RoomPlan{
		Base: [2]string{"B", "C"}, At: 745,
		Walls: []model.WallPlan{
			{Name: "left", From: "A", To: "B", Make: model.Stud, Studs: []unit.Length{210, 610, 1010}, StudsFrom: "B", Lean: 4, LeanOver: 700},
			{Name: "back left", From: "B", To: "C", Make: model.Brick, Bow: -3,
				Obstacles: []model.ObstaclePlan{{Name: "heating pipe", Kind: "pipe", From: "B", Start: 120, End: 180, Top: 650, Free: 40}}},
			{Name: "niche back", From: "D", To: "E", Make: model.Aerated,
				Obstacles: []model.ObstaclePlan{{Name: "drying rack", Kind: "rack", From: "E", Start: 20, End: 300, Bottom: 1250, Top: 2050, Depth: 230}}},
		},
		Floor: []model.FloorMark{{Corner: "A"}, {Corner: "H", Height: -6}},
		Readings: []survey.Reading{
			tape("A", "B", 1400), tape("B", "C", 912), tape("C", "D", 242), tape("D", "E", 784), tape("E", "F", 242),
			tape("F", "G", 675), tape("G", "H", 1391), tape("A", "H", 2389), tape("B", "G", 2372), tape("A", "G", 2764),
			tape("B", "H", 2754), tape("C", "F", 785), tape("C", "E", 818), tape("D", "F", 823), tape("A", "D", 1884),
		},
	}
	for i, bend := range []string{"", "in", "out", "in", "in", "out", "in", ""} {
		p.Corners = append(p.Corners, model.CornerPlan{Name: "ABCDEFGH"[i : i+1], Bend: bend})
	}
	return p
}

func newRoom(t testing.TB, p model.RoomPlan) *model.Room {
	t.Helper()
	r, err := model.NewRoom(p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// area is the signed area of the corners: negative when they run clockwise.
func area(r *model.Room) float64 {
	s := 0.0
	for i, c := range r.Corners {
		s += c.At.Cross(r.Corners[(i+1)%len(r.Corners)].At) / 2
	}
	return s
}

// TestStudioRoom holds the adjusted corners against circles drawn by hand. B is
// the origin, and since 912 + 785 + 675 = 2372 the points C, F and G lie on a
// line with it: G = (2372, 0). A lies 1400 from B and 2764 from G, so
// x = (1400^2 - 2764^2 + 2372^2) / 4744 = -11.2; H lies 1391 from G and 2754
// from B, so x = (2754^2 - 1391^2 + 2372^2) / 4744 = 2376.9.
func TestStudioRoom(t *testing.T) {
	r := newRoom(t, studioPlan())
	for _, c := range []struct {
		name string
		at   geom.Vec
	}{{"A", geom.V(-11.2, -1400)}, {"B", geom.V(0, 0)}, {"C", geom.V(912, 0)}, {"F", geom.V(1697, 0)}, {"G", geom.V(2372, 0)}, {"H", geom.V(2376.9, -1391)}} {
		got, ok := r.Corner(c.name)
		if off := got.At.Sub(c.at).Len(); !ok || off > 8 {
			t.Errorf("%s is at %v, want %v", c.name, got.At, c.at)
		}
	}
	// Every reading is met within what a tape misses.
	for _, rd := range studioPlan().Readings {
		a, _ := r.Corner(string(rd.Points[0]))
		b, _ := r.Corner(string(rd.Points[1]))
		near(t, rd.ID, float64(a.At.Sub(b.At).Len()), float64(rd.Length), 1.5)
	}
	// The niche lies behind the back wall, the room before it and clockwise.
	for _, n := range []string{"D", "E"} {
		c, _ := r.Corner(n)
		near(t, "depth of the niche at "+n, float64(c.At.Y), 242, 8)
	}
	if area(r) >= 0 {
		t.Errorf("area %v: corners run counter-clockwise", area(r))
	}
	// A rough right angle at every corner of the room, three of them at arrises.
	for i, want := range []float64{0, 90, 270, 90, 90, 270, 90, 0} {
		near(t, "angle at "+r.Corners[i].Name, r.Corners[i].Angle.Degrees(), want, 1.5)
	}
	near(t, "angle at B", r.Corners[1].Angle.Degrees(), 90+math.Asin(11.24/1400)*180/math.Pi, 0.4)
	for _, w := range r.Walls {
		if !(w.SD > 0.3 && w.SD < 2) {
			t.Errorf("wall %s is known to %.2f mm; a class II tape measures to about 1", w.Name, w.SD)
		}
	}
	if r.Survey.Redundancy != 2 || len(r.Survey.Readings) < 15 {
		t.Errorf("%d readings, %d to spare, want 2 of 15", len(r.Survey.Readings), r.Survey.Redundancy)
	}
	near(t, "what the rack keeps", float64(r.Wall("niche back").Length())-300, float64(r.Wall("niche back").Obstacles[0].Start), 1e-9)
}

// TestWallsFollowEachOther: neighbours, in open and in closed rooms.
func TestWallsFollowEachOther(t *testing.T) {
	r := newRoom(t, studioPlan())
	names := []string{"left", "back left", "C-D", "niche back", "E-F", "F-G", "G-H"}
	for i, w := range r.Walls {
		if w.Name != names[i] || w.Index != i {
			t.Errorf("wall %d is %s", i, w.Name)
		}
		if i > 0 && (w.Previous() != r.Walls[i-1] || r.Walls[i-1].Next() != w) {
			t.Errorf("%s does not follow %s", w.Name, r.Walls[i-1].Name)
		}
	}
	if r.Walls[0].Previous() != nil || r.Walls[6].Next() != nil || r.Wall("nowhere").Next() != nil {
		t.Error("an open end has a neighbour")
	}
	if w := r.Wall("C-D"); w.Make != model.UnknownWall {
		t.Errorf("a wall that nobody described is of %s", w.Make)
	}
}

// box is a closed room of 3000 x 2400 mm whose corners are square.
func box() []spot {
	return []spot{{"A", geom.V(0, -2400), "in"}, {"B", geom.V(0, 0), "in"}, {"C", geom.V(3000, 0), "in"}, {"D", geom.V(3000, -2400), "in"}}
}

func TestClosedRoom(t *testing.T) {
	r := roomAt(t, true, box(), model.WallPlan{Name: "front", From: "D", To: "A", Bow: 12}, model.WallPlan{Name: "back", From: "B", To: "C", Bow: -9})
	if len(r.Walls) != 4 || r.Wall("front").Next() != r.Walls[0] || r.Walls[0].Previous() != r.Wall("front") {
		t.Errorf("%d walls, front leads to %v", len(r.Walls), r.Wall("front").Next())
	}
	for _, c := range r.Corners {
		near(t, "angle at "+c.Name, c.Angle.Degrees(), 90, 0.01)
	}
	// The area under a parabola is two thirds of its height times its length.
	want := 3000*2400 - 2./3*12*3000 + 2./3*9*3000
	near(t, "area of the plan", float64(r.Plan(750).Area()), want, 0.02*3000)
}

// TestChimneyBreast stands 350 mm into the room.
func TestChimneyBreast(t *testing.T) {
	spots := []spot{{"A", geom.V(0, -2000), ""}, {"B", geom.V(0, 0), "in"}, {"C", geom.V(900, 0), "in"}, {"D", geom.V(900, -350), "out"},
		{"E", geom.V(2100, -350), "out"}, {"F", geom.V(2100, 0), "in"}, {"G", geom.V(3000, 0), "in"}, {"H", geom.V(3000, -2000), ""}}
	r := roomAt(t, false, spots)
	for i, want := range []float64{0, 90, 90, 270, 270, 90, 90, 0} {
		near(t, "angle at "+r.Corners[i].Name, r.Corners[i].Angle.Degrees(), want, 0.01)
	}
	plan := r.Plan(750)
	for at, in := range map[geom.Vec]bool{geom.V(1500, -100): false, geom.V(1500, -400): true, geom.V(500, -100): true, geom.V(2500, -100): true, geom.V(-10, -100): false} {
		if plan.Contains(at) != in {
			t.Errorf("%v in the room: %v", at, !in)
		}
	}
	// A straight line over the whole back passes in front of the breast.
	d := model.NewDesign("bench", r)
	p := d.Add("bench", good(r).Between(r.Wall("A-B"), r.Wall("G-H")).Against(r.Straight("B", "G")))
	if p == nil || math.Abs(float64(p.Slab.Pose.At.Y+354)) > 0.01 {
		t.Errorf("%v; back edge at %v, want 350 + 4 before the back wall", d.Faults(), p)
	}
}

// TestObstaclesCountFromEitherCorner and claim a free margin around them. A
// window is an opening in the wall: nothing of it stands into the room but the
// sill, which is an obstacle of its own.
func TestObstaclesCountFromEitherCorner(t *testing.T) {
	walls := threeWalls()
	walls[1].Obstacles = []model.ObstaclePlan{
		{Name: "window", Kind: "window", From: "B", Start: 300, End: 1100, Bottom: 900, Top: 2000},
		{Name: "sill", Kind: "sill", From: "C", Start: 450, End: 1350, Bottom: 870, Top: 900, Depth: 180, Free: 15},
	}
	walls[2].Studs, walls[2].StudsFrom = []unit.Length{100, 700}, "D"
	r := roomAt(t, false, alcove(90, 90), walls...)
	o := r.Wall("back").Obstacles
	for i, want := range [][2]float64{{300, 1100}, {250, 1150}} {
		near(t, o[i].Name+" start", float64(o[i].Start), want[0], 0.01)
		near(t, o[i].Name+" end", float64(o[i].End), want[1], 0.01)
	}
	start, end, bottom, top := o[1].Keep()
	for i, got := range []unit.Length{start, end, bottom, top} {
		near(t, "what the sill keeps", float64(got), []float64{235, 1165, 855, 915}[i], 0.01)
	}
	for i, want := range []geom.Box{{Min: geom.Vec3{X: 300, Y: -1, Z: 900}, Max: geom.Vec3{X: 1100, Y: 0, Z: 2000}}, {Min: geom.Vec3{X: 250, Y: -180, Z: 870}, Max: geom.Vec3{X: 1150, Y: 0, Z: 900}}} {
		b := o[i].Solid().Bounds()
		if b.Min.Sub(want.Min).Len() > 0.01 || b.Max.Sub(want.Max).Len() > 0.01 {
			t.Errorf("%s takes %v, want %v", o[i].Name, b, want)
		}
	}
	if s := r.Wall("right").Studs; len(s) != 2 || math.Abs(float64(s[0]-500)) > 0.01 || math.Abs(float64(s[1]-1100)) > 0.01 {
		t.Errorf("studs at %v, want 500 and 1100 from C", s)
	}
}

// TestLeanAndBow at several heights. Readings are at 750. The back wall leans
// back by 10 per 1000 and bulges by 6; the left wall leans in by 5 per 1000 and
// is 8 hollow. A parabola is three quarters of its height at a quarter of its
// length.
func TestLeanAndBow(t *testing.T) {
	walls := threeWalls()
	walls[1].Lean, walls[1].LeanOver, walls[1].Bow = 10, 1000, 6
	walls[0].Lean, walls[0].LeanOver, walls[0].Bow = -5, 1000, -8
	r := roomAt(t, false, alcove(90, 90), walls...)
	back, left := r.Wall("back"), r.Wall("left")
	for z, y := range map[unit.Length]float64{0: -7.5, 750: 0, 1250: 5, 2750: 20} {
		near(t, "back wall at its left corner", float64(back.Face(z)[0].Y), y, 1e-6)
		near(t, "middle of the back wall", faceAt(back, z, 800), y-6, 0.02)
		near(t, "quarter of the back wall", faceAt(back, z, 400), y-4.5, 0.02)
		near(t, "front of the left wall", float64(left.Face(z)[0].X), (float64(z)-750)*5/1000, 1e-6)
	}
	// The hull is on the side of the room of everything between two heights.
	near(t, "hull below", float64(back.Hull(0, 750).P.Y), -7.5-6, 1e-6)
	near(t, "hull above", float64(back.Hull(750, 1250).P.Y), 0-6, 1e-6)
	near(t, "hull of a hollow wall", float64(left.Hull(750, 1250).P.X), 2.5, 1e-6)
	for _, z := range []unit.Length{0, 700, 1500} {
		plan := r.Plan(z)
		for _, w := range r.Walls {
			for _, v := range w.Face(z) {
				if s := w.Chord().Along(v); s < 50 || s > w.Length()-50 {
					continue // in the corners walls that lean meet elsewhere
				}
				if d := between([]geom.Vec{v, v}, plan.Loops()[0], false, true); d > 0.02 {
					t.Errorf("at %v the face of %s is %v mm off the plan", z, w.Name, d)
				}
			}
		}
	}
}

// faceAt is the y of a wall's face at some x.
func faceAt(w *model.Wall, z unit.Length, x float64) float64 {
	f := w.Face(z)
	i := slices.IndexFunc(f, func(v geom.Vec) bool { return float64(v.X) >= x })
	a, b := f[i-1], f[i]
	return float64(a.Y) + (x-float64(a.X))*float64((b.Y-a.Y)/(b.X-a.X))
}

// TestAnotherBase lays another wall along x; the room is the same, turned.
func TestAnotherBase(t *testing.T) {
	p := studioPlan()
	usual := newRoom(t, p)
	p.Base = [2]string{"G", "H"}
	r := newRoom(t, p)
	g, _ := r.Corner("G")
	h, _ := r.Corner("H")
	if g.At.Len() > 1e-6 || math.Abs(float64(h.At.Y)) > 1e-6 || h.At.X < 1300 {
		t.Errorf("G at %v, H at %v", g.At, h.At)
	}
	if area(r) >= 0 {
		t.Error("corners run counter-clockwise")
	}
	for i, a := range r.Corners {
		for j, b := range r.Corners[:i] {
			near(t, "distance "+a.Name+b.Name, float64(a.At.Sub(b.At).Len()), float64(usual.Corners[i].At.Sub(usual.Corners[j].At).Len()), 1e-3)
		}
	}
}

// TestRoomsThatCannotBe: every error says what is missing or wrong, and where.
func TestRoomsThatCannotBe(t *testing.T) {
	narrow := []spot{{"A", geom.V(0, -2000), ""}, {"B", geom.V(0, 0), "in"}, {"C", geom.V(500, 0), "in"}, {"D", geom.V(500, -2000), ""}}
	bulging := []model.WallPlan{{From: "A", To: "B", Bow: 290}, {From: "C", To: "D", Bow: 290}}
	for _, c := range []struct {
		name   string
		change func(*model.RoomPlan)
		says   []string
	}{
		{"no diagonal", func(p *model.RoomPlan) { p.Readings = p.Readings[:3] }, []string{"A hangs free", "measure A to D or A to C"}},
		{"a wall not measured", func(p *model.RoomPlan) { p.Readings = slices.Delete(p.Readings, 2, 3) }, []string{"D hangs free", "measure A to D or B to D"}},
		{"unknown base", func(p *model.RoomPlan) { p.Base = [2]string{"B", "X"} }, []string{"base wall", "X"}},
		{"reading of an unknown corner", func(p *model.RoomPlan) { p.Readings = append(p.Readings, tape("A", "X", 5)) }, []string{`"A-X"`, `no corner "X"`}},
		{"told the wrong way", func(p *model.RoomPlan) {
			p.Corners[2].Bend = "out"
			p.Readings = append(p.Readings, survey.Reading{ID: "protractor", Kind: survey.Angle, Points: []survey.Point{"B", "C", "D"}, Angle: 90 * unit.Degree})
		}, []string{"C"}},
		{"bend", func(p *model.RoomPlan) {
			p.Corners[1].Bend = "left"
			p.Corners[1].Pos = model.Pos{File: "job.yaml", Line: 4, Column: 9}
		}, []string{`job.yaml:4:9: corner "B": a bend is in or out, not "left"`}},
		{"corner twice", func(p *model.RoomPlan) { p.Corners[3].Name, p.Walls = "A", nil }, []string{"A is listed twice"}},
		{"one corner", func(p *model.RoomPlan) { *p = model.RoomPlan{Corners: p.Corners[:1]} }, []string{""}},
		{"nothing at all", func(p *model.RoomPlan) { *p = model.RoomPlan{} }, []string{""}},
		{"wall of unknown corner", func(p *model.RoomPlan) { p.Walls[1].To = "X" }, []string{`wall "back": there is no corner "X"`}},
		{"wall right to left", func(p *model.RoomPlan) { p.Walls[1].From, p.Walls[1].To = "C", "B" }, []string{`wall "back": C and B are no neighbours, left to right`}},
		{"two walls of a name", func(p *model.RoomPlan) { p.Walls[1].Name = "left" }, []string{`there are two walls "left"`}},
		{"bow", func(p *model.RoomPlan) { p.Walls[1].Bow = unit.Length(math.Inf(1)) }, []string{`wall "back": a bow of more than a kilometre, up to 300 mm either way`}},
		{"no bow", func(p *model.RoomPlan) { p.Walls[1].Bow = nan }, []string{`wall "back": a bow of no number`}},
		{"lean", func(p *model.RoomPlan) { p.Walls[1].Lean, p.Walls[1].LeanOver = 500, 1000 }, []string{`wall "back": a lean of 500 mm over 1000 mm of height`}},
		{"lean over nothing", func(p *model.RoomPlan) { p.Walls[1].Lean = 5 }, []string{`a lean of 5 mm over 0 mm`}},
		{"studs", func(p *model.RoomPlan) { p.Walls[1].Studs = []unit.Length{nan} }, []string{`wall "back": a stud at no number`}},
		{"studs from elsewhere", func(p *model.RoomPlan) { p.Walls[1].StudsFrom = "D" }, []string{`studs are counted from B or C, not from "D"`}},
		{"obstacle from elsewhere", func(p *model.RoomPlan) {
			p.Walls[1].Obstacles = []model.ObstaclePlan{{Name: "pipe", From: "A", End: 5, Top: 5}}
		}, []string{`pipe on wall "back": counted from B or C, not from "A"`}},
		{"obstacle backwards", func(p *model.RoomPlan) {
			p.Walls[1].Obstacles = []model.ObstaclePlan{{Name: "pipe", Start: 9, End: 5, Top: 5}}
		}, []string{`pipe on wall "back": from 9 mm to 5 mm along the wall`}},
		{"obstacle upside down", func(p *model.RoomPlan) {
			p.Walls[1].Obstacles = []model.ObstaclePlan{{Name: "pipe", End: 5, Bottom: nan, Top: 5}}
		}, []string{`pipe on wall "back": from no number to 5 mm above the floor`}},
		{"obstacle without depth", func(p *model.RoomPlan) {
			p.Walls[1].Obstacles = []model.ObstaclePlan{{Name: "pipe", End: 5, Top: 5, Depth: nan}}
		}, []string{`pipe on wall "back": no number deep`}},
		{"floor", func(p *model.RoomPlan) { p.Floor = []model.FloorMark{{Corner: "A", Height: nan}} }, []string{`floor at corner "A": a height of no number`}},
		{"floor elsewhere", func(p *model.RoomPlan) { p.Floor = []model.FloorMark{{Corner: "E"}} }, []string{`floor: there is no corner "E"`}},
		{"height of the readings", func(p *model.RoomPlan) { p.At = nan }, []string{"readings at no number"}},
		{"walls that cross", func(p *model.RoomPlan) { *p = planOf(false, narrow, bulging...) }, []string{"its walls cross each other"}},
	} {
		p := planOf(false, alcove(90, 90), threeWalls()...)
		p.Readings = []survey.Reading{tape("A", "B", 1200), tape("B", "C", 1600), tape("C", "D", 1200), tape("A", "C", 2000), tape("B", "D", 2000), tape("A", "D", 1600)}
		if c.name == "a wall not measured" {
			p.Readings = []survey.Reading{tape("A", "B", 1200), tape("B", "C", 1600), tape("C", "D", 1200), tape("A", "C", 2000)}
		}
		c.change(&p)
		r, err := model.NewRoom(p)
		if err == nil {
			t.Errorf("%s: no error, %v", c.name, r.Corners)
			continue
		}
		for _, s := range c.says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("%s: want %q in\n\t%v", c.name, s, err)
			}
		}
	}
}

// TestOrderOfTheCorners: distances cannot tell a room from its mirror image, so
// the order of the corners does. Where a reading with a sense contradicts it,
// the error tells how to list them.
func TestOrderOfTheCorners(t *testing.T) {
	p := planOf(false, alcove(80, 100))
	if r := newRoom(t, p); area(r) >= 0 {
		t.Error("left to right is not clockwise")
	}
	slices.Reverse(p.Corners)
	if r := newRoom(t, p); area(r) >= 0 {
		t.Error("listed the other way round, the mirror image is not clockwise")
	}
	for i := range p.Corners {
		p.Corners[i].Bend = ""
	}
	p.Readings = append(p.Readings, survey.Reading{ID: "angle at B", Kind: survey.Angle, Points: []survey.Point{"A", "B", "C"}, Angle: 80 * unit.Degree})
	if _, err := model.NewRoom(p); err == nil || !strings.Contains(err.Error(), "list the corners from left to right") {
		t.Errorf("an angle to the left of the walls: %v", err)
	}
	// Of two shapes that fit equally well the tool asks for a bend or a reading.
	p = planOf(false, []spot{{"A", geom.V(0, -1000), ""}, {"B", geom.V(0, 0), ""}, {"C", geom.V(900, 0), ""}, {"D", geom.V(900, 250), ""}, {"E", geom.V(1700, 250), ""}})
	p.Readings = []survey.Reading{tape("A", "B", 1000), tape("B", "C", 900), tape("C", "D", 250), tape("D", "E", 800), tape("A", "C", 1345.4), tape("C", "E", 838.2), tape("B", "D", 934.1)}
	_, err := model.NewRoom(p)
	if err == nil || !strings.Contains(err.Error(), "inside or an outside corner") || !strings.Contains(err.Error(), "measure A to E or A to D") {
		t.Errorf("two shapes: %v", err)
	}
	for i, bend := range []string{"", "in", "out", "in", ""} {
		p.Corners[i].Bend = bend
	}
	r := newRoom(t, p)
	if d, _ := r.Corner("D"); d.At.Y < 200 {
		t.Errorf("told the bends, D is at %v", d.At)
	}
}

// TestOneWall is enough for a shelf: the room is taken to be 4 m deep before it.
func TestOneWall(t *testing.T) {
	r := newRoom(t, model.RoomPlan{Corners: []model.CornerPlan{{Name: "A"}, {Name: "B"}}, Readings: []survey.Reading{tape("A", "B", 2000)}})
	near(t, "area of the plan", float64(r.Plan(1000).Area()), (4000+2000+4000)*4000, 1)
	w := r.Wall("A-B")
	d := model.NewDesign("hall", r)
	p := d.Add("shelf", hungOn(w))
	sound(t, d)
	if n := len(d.Parts); n != 5 {
		t.Errorf("%d parts, want a shelf and four rods at most 400 apart on 1200", n)
	}
	near(t, "area of the shelf", float64(p.Outline().Area()), 1400*200, 1)
}

// hungOn is a shelf of 1400 x 200 on the middle of a wall of 2000.
func hungOn(w *model.Wall) model.SlabPiece {
	return model.Shelf(stock.Ash, 40).Between(w.Mark(300), w.MarkFromRight(300)).Against(w).Gaps(0, 2).Depth(200).SurfaceAt(1400).
		OnRods(model.Rods{Dia: 16, InWall: 100, InShelf: 120, Pitch: 400, End: 100})
}
