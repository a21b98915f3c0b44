package sample

import (
	"os"
	"path/filepath"
	"testing"

	"slabwright/model"
	"slabwright/model/job"
	"slabwright/presets"
)

// Parts builds a preset from its own job file; root is the way from the test's
// folder to that of the module.
func Parts(t testing.TB, root string, p model.Preset) []*model.Part {
	t.Helper()
	file := filepath.Join(root, "presets", p.Name, "job.yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	j, mistakes := job.Read(file, data, presets.All())
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	room, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	d := p.Build(model.Site{Room: room, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
	d.Finish()
	return d.Parts
}
