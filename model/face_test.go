package model_test

import (
	"math"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// nook is three walls of 800, 1600 and 800 at right angles, B the origin.
func nook() model.RoomPlan {
	p := model.RoomPlan{At: 745, Walls: []model.WallPlan{{Name: "left", From: "A", To: "B"}, {Name: "back", From: "B", To: "C"}, {Name: "right", From: "C", To: "D"}}}
	for _, c := range []string{"A", "B", "C", "D"} {
		p.Corners = append(p.Corners, model.CornerPlan{Name: c})
	}
	for _, d := range []struct {
		a, b survey.Point
		is   unit.Length
	}{{"A", "B", 800}, {"B", "C", 1600}, {"C", "D", 800}, {"A", "D", 1600}, {"A", "C", 1788.85}, {"B", "D", 1788.85}} {
		p.Readings = append(p.Readings, survey.Reading{ID: string(d.a + "-" + d.b), Kind: survey.Distance, Points: []survey.Point{d.a, d.b}, Length: d.is})
	}
	return p
}

// Readings of an even bow, a parabola through both corners, give it back; its
// spread is that of one reading over the root of the summed squares of
// 4t(1-t), least squares in one unknown (closed form). They count from the
// right corner.
func TestBowFromStations(t *testing.T) {
	p := nook()
	var sum float64
	for _, along := range []unit.Length{200, 500, 800, 1300} {
		f := 4 * float64(along/1600) * (1 - float64(along/1600))
		sum += f * f
		p.Walls[1].Stations = append(p.Walls[1].Stations, model.Station{Along: 1600 - along, Off: unit.Length(6 * f)})
	}
	p.Walls[1].StudsFrom = "C"
	r := newRoom(t, p)
	face := r.Survey.Faces[0]
	if math.Abs(float64(r.Wall("back").Bow-6)) > 1e-6 || math.Abs(float64(face.Bow.SD)-0.7/math.Sqrt(sum)) > 1e-6 {
		t.Errorf("bow %v, %v", r.Wall("back").Bow, face.Bow)
	}
	if face.Uneven != "" || face.Stations != 4 {
		t.Errorf("%+v", face)
	}
	p.Walls[1].Stations[3].Off += 8
	if u := newRoom(t, p).Survey.Faces[0].Uneven; !strings.Contains(u, "no even bow: at 300 mm from C it was read 11.7 mm") {
		t.Errorf("a lump is told as %q", u)
	}
}

// The lean is the slope of the plumb readings: those of a line give it back,
// with the spread of a regression line (closed form), and the wall moves by it.
func TestLeanFromPlumb(t *testing.T) {
	p := nook()
	for _, z := range []unit.Length{100, 700, 1900} {
		p.Walls[0].Plumbs = append(p.Walls[0].Plumbs, survey.Plumb{Height: z, Back: 30 + z/200})
	}
	r := newRoom(t, p)
	face := r.Survey.Faces[0]
	spread := math.Sqrt(800*800 + 200*200 + 1000*1000) // off the mean height of 900
	if w := r.Wall("left"); math.Abs(w.Lean-0.005) > 1e-9 || math.Abs(float64(face.Lean.SD)-700/spread) > 1e-6 {
		t.Errorf("lean %v, %+v", w.Lean, face.Lean)
	}
	if got := r.Wall("left").LineAt(1745).P.Sub(r.Wall("left").LineAt(745).P).Len(); math.Abs(float64(got)-5) > 1e-6 {
		t.Errorf("a metre further up the wall is %.3f mm further back", float64(got))
	}
	p.Walls[0].Plumbs[1].Back += 6
	if face := newRoom(t, p).Survey.Faces[0]; face.NotPlane == "" {
		t.Errorf("a wall bowed upwards passes as %+v", face)
	}
}

// The floor before a wall counts where it was read, from either corner.
func TestFloorBeforeAWall(t *testing.T) {
	p := nook()
	p.Floor = []model.FloorMark{{Corner: "B"}, {Corner: "C", Height: -4}, {Wall: "back", Along: 400, Before: 600, Height: -9, SD: 0.4}}
	for _, from := range []string{"B", "C"} {
		x := unit.Length(400)
		if p.Walls[1].StudsFrom = from; from == "C" {
			x = 1200
		}
		r := newRoom(t, p)
		at := r.Wall("back").From.At.Add(geom.V(x, -600))
		if h := r.FloorAt(at); math.Abs(float64(h)+9) > 1e-6 {
			t.Errorf("from %s: the floor there is at %v", from, h)
		}
		l := r.Survey.Levels[2]
		if l.Name != "600 before back at 400" || math.Abs(float64(l.Height.Value)+9) > 1e-9 || math.Abs(float64(l.Height.SD)-0.4) > 1e-9 {
			t.Errorf("%+v", l)
		}
	}
}

// What the readings of a face cannot tell is an error with its wall, never a
// room without it.
func TestBadFaces(t *testing.T) {
	for want, change := range map[string]func(*model.RoomPlan){
		`wall "back": no station tells anything of the bow`: func(p *model.RoomPlan) { p.Walls[1].Stations = []model.Station{{Along: 0, Off: 3}} },
		`wall "left": lean needs plumb readings`:            func(p *model.RoomPlan) { p.Walls[0].Plumbs = []survey.Plumb{{Height: 5, Back: 3}} },
		`there is no wall "roof"`:                           func(p *model.RoomPlan) { p.Floor = []model.FloorMark{{Wall: "roof"}} },
	} {
		p := nook()
		change(&p)
		if r, err := model.NewRoom(p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q, got %v, %v", want, r, err)
		}
	}
}
