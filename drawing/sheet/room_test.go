package sheet

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/unit"
	"slabwright/presets"
)

// keptRooms are presets that were built as they are, for tests that only look: most
// of the time of these tests went into checking the same designs again.
var keptRooms sync.Map

// roomBuild takes a preset's own job through the line of a build; change may
// alter the job before.
func roomBuild(t testing.TB, name, paper string, change func(*model.Job)) report.Build {
	t.Helper()
	if change != nil {
		return freshRoom(t, name, paper, change)
	}
	f, _ := keptRooms.LoadOrStore(name, sync.OnceValue(func() report.Build { return freshRoom(t, name, paper, nil) }))
	b := f.(func() report.Build)()
	b.Job.Show.Paper = paper
	return b
}

func freshRoom(t testing.TB, name, paper string, change func(*model.Job)) report.Build {
	t.Helper()
	file := filepath.Join("..", "..", "presets", name, "job.yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(name, data, presets.All())
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	j.Show.Paper = paper
	if change != nil {
		change(&j)
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range presets.All() {
		if p.Name == j.Preset {
			d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
			d.Finish()
			return report.Build{Job: j, Room: r, Design: d, Findings: check.Run(check.Site{Job: j, Room: r, Design: d})}
		}
	}
	t.Fatalf("no preset %q", j.Preset)
	return report.Build{}
}

// drawnRooms keeps the sheets of presets as they are, so that every test need
// not draw them again.
var drawnRooms sync.Map

// presetPages are the sheets of the room of an unaltered preset.
func presetPages(t testing.TB, name, paper string) []drawing.Sheet {
	t.Helper()
	f, _ := drawnRooms.LoadOrStore(name+paper, sync.OnceValue(func() []drawing.Sheet { return roomPages(t, roomBuild(t, name, paper, nil)) }))
	return f.(func() []drawing.Sheet)()
}

// roomPages gives the pages of the kinds that show the room, finished.
func roomPages(t testing.TB, b report.Build) []drawing.Sheet {
	t.Helper()
	m := newMaker(b)
	var pages []page
	for _, kind := range []func(*maker) []page{surveySheets, planSheets, elevationSheets, sectionSheets} {
		pages = append(pages, kind(m)...)
	}
	m.others = pages
	pages = append(coverSheets(m), pages...)
	var out []drawing.Sheet
	for i, p := range pages {
		s := p.sheet
		s.Number, s.Of, s.Stamp = i+1, len(pages), m.stamp
		s = drawing.Finish(s, m.block(p.block, s.Number))
		if err := drawing.Sound(s); err != nil {
			t.Fatalf("%s: %v", s.Name, err)
		}
		out = append(out, s)
	}
	return out
}

// Nothing on the sheets of the room is crossed or touched by anything else
// (ISO 129-1), and nothing leaves the drawing space.
func TestRoomSheetsCanBeRead(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		for _, paper := range []string{"A3", "A4"} {
			t.Run(name+" "+paper, func(t *testing.T) {
				t.Parallel()
				for _, s := range presetPages(t, name, paper) {
					for _, c := range drawing.Overlaps(s) {
						t.Errorf("%s (%s): %v", s.Name, s.Scale, c)
					}
					for _, it := range s.Items {
						if g, ok := it.(drawing.Group); ok && strings.HasPrefix(g.ID, "sheet-") {
							continue
						}
						if b := drawing.Bounds([]drawing.Item{it}); !b.Empty() && !s.Size.Space().Holds(b) {
							t.Errorf("%s: something leaves the drawing space: %v", s.Name, b)
						}
					}
				}
			})
		}
	}
}

// Sheets of jobs that fail, of many people and of other units can be read too.
func TestOddRoomsCanBeRead(t *testing.T) {
	set := func(j *model.Job, name string, l unit.Length) {
		if j.Settings == nil {
			j.Settings = map[string]model.Setting{}
		}
		j.Settings[name] = model.Setting{Length: l}
	}
	for what, change := range map[string]func(*model.Job){
		"no gaps": func(j *model.Job) { set(j, "side_gap", 0); set(j, "back_gap", 0) },
		"too low": func(j *model.Job) { set(j, "surface", 650) },
		"three people, one not described": func(j *model.Job) {
			j.People = append(j.People, model.Person{Name: "somebody tall", Stature: 2010, Sex: "male"}, model.Person{Name: "guest"})
		},
		"centimetres, decimal comma": func(j *model.Job) { j.Show.Unit, j.Show.Decimal = "cm", "," },
		"nothing told of the walls": func(j *model.Job) {
			for i := range j.Room.Walls {
				j.Room.Walls[i].Make, j.Room.Walls[i].Obstacles, j.Room.Walls[i].Bow = "", nil, 0
			}
		},
	} {
		for _, paper := range []string{"A3", "A4"} {
			for _, s := range roomPages(t, roomBuild(t, "corner", paper, change)) {
				for _, c := range drawing.Overlaps(s) {
					t.Errorf("%s, %s, %s: %v", what, paper, s.Name, c)
				}
			}
		}
	}
}
