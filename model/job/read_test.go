package job

import (
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/calc/moisture"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// testPresets have every kind of parameter; studio asks for walls.
var testPresets = []model.Preset{
	model.NewPreset("bench", "a bench", func(model.Site, struct{}) *model.Design { return nil }),
	model.NewPreset("studio", "a bench into a niche", func(model.Site, studioParams) *model.Design { return nil },
		model.Need{Wall: "left", Help: "left wall, from its front end to the back"},
		model.Need{Wall: "right", Help: "right wall, from the back to its front end"}),
}

type studioParams struct {
	Surface unit.Length `is:"745" min:"600" max:"1100" help:"surface above the floor"`
	Depth   unit.Length `is:"780" min:"400" max:"1000" help:"depth of the bench"`
	Rods    int         `is:"4" min:"2" max:"12" help:"hidden rods of the shelf"`
	Lit     bool        `is:"no" help:"light under the shelf"`
	Lights  string      `is:"none" of:"none under over" help:"where the light is"`
}

func readStudio(t testing.TB) ([]byte, model.Job) {
	data, err := os.ReadFile("testdata/studio.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := Read("job.yaml", data, testPresets)
	if len(mistakes) > 0 {
		t.Fatalf("mistakes in a good file:\n%s", Text(mistakes))
	}
	return data, j
}

func equal(t *testing.T, what string, got, want any) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%s:\n got %+v\nwant %+v", what, got, want)
	}
}

func TestReadHead(t *testing.T) {
	_, j := readStudio(t)
	equal(t, "head", []string{j.Title, j.Revision, j.Surveyed, j.Author}, []string{"Print bench", "A", "2026-09-12", "M. Example"})
	equal(t, "show", j.Show, model.Show{Paper: "A3", Unit: "mm", Decimal: ",", Projection: "third", Language: "en", Natural: 0.5})
	at := func(line, column int) model.Pos { return model.Pos{File: "job.yaml", Line: line, Column: column} }
	equal(t, "people", j.People, []model.Person{{Name: "printmaker", Stature: 1910, Sex: "female", Mass: 96, Shoe: 25, Pos: at(63, 5)}})
	equal(t, "preset", j.Preset, "studio")
	equal(t, "settings", j.Settings, map[string]model.Setting{
		"surface": {Text: "755", Length: 755, Pos: at(85, 25)},
		"depth":   {Text: "29 1/2 in", Length: 749.3, Pos: at(85, 37)},
		"rods":    {Text: "3", Number: 3, Pos: at(85, 54)},
		"lit":     {Text: "yes", Flag: true, Pos: at(85, 62)},
		"lights":  {Text: "under", Pos: at(85, 75)},
	})
}

func TestReadRoom(t *testing.T) {
	_, j := readStudio(t)
	r := j.Room
	equal(t, "heights", []unit.Length{r.At, r.Ceiling}, []unit.Length{745, 2450})
	equal(t, "base", r.Base, [2]string{"B", "C"})
	equal(t, "third corner", r.Corners[2], model.CornerPlan{Name: "C", Bend: "out", Pos: model.Pos{File: "job.yaml", Line: 11, Column: 11}})
	equal(t, "floor", []unit.Length{r.Floor[0].Height, r.Floor[1].Height}, []unit.Length{0, -6})
	var names []string
	for _, w := range r.Walls {
		names = append(names, w.Name)
	}
	equal(t, "walls in the order of the corners, those left out too", names, []string{"left", "back left", "C-D", "niche back", "E-F", "back right", "right"})
	left := r.Walls[0]
	left.Pos = model.Pos{}
	equal(t, "left wall", left, model.WallPlan{Name: "left", From: "A", To: "B", Make: model.Stud, Lean: 4, LeanOver: 700, Studs: []unit.Length{210, 610, 1010}, StudsFrom: "B"})
	right := r.Walls[5]
	equal(t, "bow read at places", right.Stations, []model.Station{{Along: 200, Off: 1}, {Along: 400, Off: 2, SD: 0.5}})
	equal(t, "plumb readings", right.Plumbs, []survey.Plumb{{Height: 100, Back: 20}, {Height: 1800, Back: 26, SD: 1}})
	floor := r.Floor[2]
	floor.Pos = model.Pos{}
	equal(t, "floor before a wall", floor, model.FloorMark{Wall: "back left", Along: 400, Before: 600, Height: -3})
	equal(t, "make of a wall left out", r.Walls[2].Make, model.UnknownWall)
	rack := r.Walls[3].Obstacles[0]
	rack.Pos = model.Pos{}
	equal(t, "rack up to the ceiling", rack, model.ObstaclePlan{Name: "rack", Kind: "rack", From: "D", End: 784, Bottom: 1250, Top: 2450, Depth: 230})
}

func TestReadReadings(t *testing.T) {
	_, j := readStudio(t)
	got := map[string]survey.Reading{}
	var ids []string
	for _, r := range j.Room.Readings {
		got[r.ID] = r
		ids = append(ids, r.ID)
	}
	if len(ids) != 24 || ids[1] != "B-C" {
		t.Errorf("readings %v", ids)
	}
	for _, want := range []survey.Reading{
		{ID: "B-C", Kind: survey.Distance, Points: []survey.Point{"B", "C"}, Length: 912, Where: "job.yaml:39"},
		{ID: "A-H", Kind: survey.Distance, Points: []survey.Point{"A", "H"}, Length: 2389, SD: survey.Accuracy{Tool: survey.Laser}.Length(2389), Where: "job.yaml:45"},
		{ID: "A-H (2)", Kind: survey.Distance, Points: []survey.Point{"A", "H"}, Length: 2391, SD: 1.5, Where: "job.yaml:46"},
		{ID: "B-G (2)", Kind: survey.Distance, Points: []survey.Point{"B", "G"}, Length: 2371, Where: "job.yaml:47"},
		{ID: "B-G (3)", Kind: survey.Distance, Points: []survey.Point{"B", "G"}, Length: 2372.5, SD: survey.Accuracy{Tool: survey.Laser}.Length(2372.5), Where: "job.yaml:47"},
		{ID: "angle A-B-C (2)", Kind: survey.Angle, Points: []survey.Point{"A", "B", "C"}, Angle: 90 * unit.Degree, Where: "job.yaml:48"},
		{ID: "angle A-B-C", Kind: survey.Angle, Points: []survey.Point{"A", "B", "C"}, Angle: 90.1 * unit.Degree, Where: "job.yaml:48"},
		// named from right to left, it is the same angle inside the room
		{ID: "angle E-D-C", Kind: survey.Angle, Points: []survey.Point{"C", "D", "E"}, Angle: 90.2 * unit.Degree, AngleSD: 0.3 * unit.Degree, Where: "job.yaml:49"},
		{ID: "square A-B-C", Kind: survey.SquareOff, Points: []survey.Point{"A", "B", "C"}, A: 600, B: 800, Length: 1001, Where: "job.yaml:50"},
		// behind the line is away from the room, where the survey counts negative
		{ID: "offset D from B-C", Kind: survey.Offset, Points: []survey.Point{"D", "B", "C"}, Length: -242, Where: "job.yaml:51"},
		{ID: "width A-B to G-H at 400 mm", Kind: survey.Width, Points: []survey.Point{"B", "C", "A", "B", "G", "H"}, A: 400, Length: 2375, Where: "job.yaml:52"},
	} {
		equal(t, want.ID, got[want.ID], want)
	}
}

func TestReadMarket(t *testing.T) {
	_, j := readStudio(t)
	o := j.Offers
	equal(t, "kerf", []unit.Length{o.KerfWood, o.KerfSteel}, []unit.Length{4, 2.5})
	s := o.Slabs[0]
	s.Pos = model.Pos{}
	equal(t, "slab", s, model.SlabOffer{Name: "ash one natural edge", Species: "European ash", Length: 2400, Width: 900, Thickness: 45,
		Natural: 1, Widths: []unit.Length{960, 930, 900, 910, 940, 950, 960}, Every: 400, Price: 690})
	equal(t, "flaws", o.Slabs[1].Flaws, []model.Flaw{{From: 900, Up: 200, Length: 60, Width: 40}})
	equal(t, "moisture and count", []float64{o.Slabs[1].Moisture, float64(o.Slabs[1].Count)}, []float64{9.5, 2})
	equal(t, "bar", []any{o.Bars[0].Section, o.Bars[0].Length, o.Bars[0].Price}, []any{"L50x50x6", 6 * unit.M, 58.0})
	h := j.House
	equal(t, "climate", h.Climate, model.Climate{Moisture: 9, Winter: &moisture.Air{Humidity: 35, Temperature: 20}, Summer: &moisture.Air{Humidity: 60, Temperature: 20}})
	equal(t, "kinds of passage", []string{h.Way[0].Kind, h.Way[1].Kind, h.Way[2].Kind, h.Way[3].Kind, h.Way[4].Kind}, model.PassageKinds)
	if math.Abs(h.Way[2].Pitch.Degrees()-41) > 1e-12 || h.Way[1].Turn != 920 || h.Way[4].Diagonal != 2700 {
		t.Errorf("way %+v", h.Way)
	}
}

// What is left out has its documented default.
func TestReadDefaults(t *testing.T) {
	const short = "title: t\nroom: {readings_at: 1 m, corners: [1, 2], walls: [{from: 1, to: 2}], readings: [{between: 1-2, is: 2 m}]}\ndesign: {preset: bench}\n"
	j, mistakes := Read("job.yaml", []byte(short), testPresets)
	if len(mistakes) > 0 {
		t.Fatal(Text(mistakes))
	}
	equal(t, "show", j.Show, model.Show{Paper: "A3", Unit: "mm", Decimal: ".", Projection: "first", Language: "en", Natural: 0.5})
	w := j.Room.Walls[0]
	equal(t, "wall", []string{w.Name, string(w.Make), w.StudsFrom}, []string{"1-2", "unknown", "1"})
}

// A byte order mark and the line ends of other systems change nothing.
func TestReadLineEnds(t *testing.T) {
	data, want := readStudio(t)
	for _, end := range []string{"\r\n", "\r"} {
		changed := []byte("\ufeff")
		for _, c := range data {
			if c == '\n' {
				changed = append(changed, end...)
			} else {
				changed = append(changed, c)
			}
		}
		got, mistakes := Read("job.yaml", changed, testPresets)
		if len(mistakes) > 0 {
			t.Fatalf("%q:\n%s", end, Text(mistakes))
		}
		equal(t, "job", got, want)
	}
}

func FuzzRead(f *testing.F) {
	data, _ := readStudio(f)
	f.Add(data)
	for _, s := range []string{"", "a", "- - - [", "a: {b: {c: [", "? x", "title: \"\x00", "room:\n  corners: [A]\n  walls:\n", "a: 2310,5\n\t- x", "{: }", "[a]: b"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		_, mistakes := Read("job.yaml", data, testPresets)
		for _, m := range mistakes {
			if m.Pos.Line < 1 || m.Pos.Column < 1 || m.Message() == "" || m.String() == "" {
				t.Errorf("mistake without place or text: %+v", m)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data, _ := readStudio(b)
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		Read("job.yaml", data, testPresets)
	}
}

// The readings of the file agree with each other, so a kind or a sign that the
// reader got wrong would stand out in the adjusted room.
func TestReadingsAgree(t *testing.T) {
	_, j := readStudio(t)
	room, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range room.Survey.Readings {
		if math.Abs(r.Read-r.Adjusted) > 3*r.SD {
			t.Errorf("%s: read %.1f, adjusted %.1f, sd %.1f %s", r.Name, r.Read, r.Adjusted, r.SD, r.Unit)
		}
	}
}

func TestReadRevisionsAndCutParts(t *testing.T) {
	data, j := readStudio(t)
	before, _, _ := strings.Cut(string(data), "revisions:")
	first := strings.Count(before, "\n") + 1
	at := func(line, column int) model.Pos {
		return model.Pos{File: "job.yaml", Line: first + line, Column: column}
	}
	equal(t, "revisions", j.History, []model.Revision{{Mark: "0", What: "first look", Pos: at(1, 5)}, {Mark: "A", On: "2026-09-13", What: "niche measured again", Pos: at(2, 5)}})
	equal(t, "cut", j.Cut, []model.CutPart{
		{Part: "worktop", On: "2026-10-02", Sizes: []model.CutSize{
			{Edge: "left", Length: 789.5, Pos: at(7, 13)}, {Edge: "back", Length: 2362, Pos: at(7, 38)}, {From: "1", To: "3", Length: 2490, Pos: at(7, 66)},
		}, Pos: at(5, 5)},
		{Part: "angle left", On: "2026-10-03", Length: 1200, WallHoles: []unit.Length{40, 610}, ScrewHoles: []unit.Length{}, Pos: at(8, 5)},
	})
	j, mistakes := Read("job.yaml", []byte(strings.Replace(string(data), "revision: A\n", "", 1)), testPresets)
	if len(mistakes) > 0 || j.Revision != "A" {
		t.Errorf("revision %q; without the key it is the last of the revisions: %s", j.Revision, Text(mistakes))
	}
}
