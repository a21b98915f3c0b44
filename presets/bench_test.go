package presets_test

import (
	"os"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/job"
	"slabwright/presets"
)

// BenchmarkStudio measures the line from the job file to checked findings.
func BenchmarkStudio(b *testing.B) {
	data, err := os.ReadFile("studio/job.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		j, bad := job.Read("job.yaml", data, presets.All())
		if len(bad) > 0 {
			b.Fatal(bad[0])
		}
		r, err := model.NewRoom(j.Room)
		if err != nil {
			b.Fatal(err)
		}
		d := presets.Studio.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House}, j.Settings)
		d.Finish()
		check.Run(check.Site{Job: j, Room: r, Design: d})
	}
}
