package job

import (
	"math"
	"os"
	"strings"
	"testing"

	"slabwright/model"
)

// A template is read back without mistakes, sets every parameter and gives a
// room whose readings agree with each other.
func TestTemplates(t *testing.T) {
	for _, p := range testPresets {
		text := Template(p)
		j, mistakes := Read("job.yaml", text, testPresets)
		if len(mistakes) > 0 {
			t.Errorf("template of %s:\n%s\n%s", p.Name, Text(mistakes), text)
		}
		if len(j.Settings) != len(p.Params) {
			t.Errorf("template of %s sets %d of %d parameters", p.Name, len(j.Settings), len(p.Params))
		}
		name := "testdata/template-" + p.Name + ".yaml"
		if *update {
			if err := os.WriteFile(name, text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want, err := os.ReadFile(name); err != nil || string(want) != string(text) {
			t.Errorf("template of %s differs from %s (%v); look at it and run with -update", p.Name, name, err)
		}
	}
}

func TestTemplateRooms(t *testing.T) {
	for _, walls := range []string{
		"", "back", "left", "front", "left right", "left back", "back right", "left back right", "left back right front", "front left",
		"left,back left,niche left,niche back,niche right,back right,right", "left,a,b,right", "a,b,c", "left,a,b,c,right,front",
	} {
		split := strings.Fields
		if strings.Contains(walls, ",") {
			split = func(s string) []string { return strings.Split(s, ",") }
		}
		var needs []model.Need
		for _, w := range split(walls) {
			needs = append(needs, model.Need{Wall: w, Help: "a wall"})
		}
		p := model.NewPreset("trial", "a trial", func(model.Site, struct{}) *model.Design { return nil }, needs...)
		j, mistakes := Read("job.yaml", Template(p), []model.Preset{p})
		if len(mistakes) > 0 {
			t.Errorf("%q:\n%s", walls, Text(mistakes))
			continue
		}
		room, err := model.NewRoom(j.Room)
		if err != nil {
			t.Errorf("%q: %v", walls, err)
			continue
		}
		for _, r := range room.Survey.Readings {
			if math.Abs(r.Read-r.Adjusted) > 0.1 { // the file has a tenth of a millimetre
				t.Errorf("%q: %s reads %.1f but is %.1f", walls, r.Name, r.Read, r.Adjusted)
			}
		}
		for _, n := range needs {
			if w := room.Wall(n.Wall); w.Index < 0 {
				t.Errorf("%q: no wall %q in the room", walls, n.Wall)
			}
		}
	}
}
