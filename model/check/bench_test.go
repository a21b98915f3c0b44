package check_test

import (
	"os"
	"testing"

	"slabwright/model/check"
	"slabwright/model/wire"
)

// BenchmarkStudio runs every rule on a fresh design of the studio: what is
// worked out once per solid counts each time.
func BenchmarkStudio(b *testing.B) {
	data, err := os.ReadFile("../../presets/studio/job.yaml")
	if err != nil {
		b.Fatal(err)
	}
	j := readJob(b, "studio", string(data))
	for b.Loop() {
		b.StopTimer()
		s := siteOf(b, j)
		b.StartTimer()
		check.Run(s)
	}
}

// BenchmarkPeople runs the rules about people on a fresh design of the studio
// whose bodies are sliced and whose cables are laid, as other rules need them too.
func BenchmarkPeople(b *testing.B) {
	data, err := os.ReadFile("../../presets/studio/job.yaml")
	if err != nil {
		b.Fatal(err)
	}
	j := readJob(b, "studio", string(data))
	people := []string{"leg-room", "elbow-height", "surface-height", "build-up", "leg-width", "chair-room", "head-room", "reach", "screen"}
	for b.Loop() {
		b.StopTimer()
		s := siteOf(b, j)
		for _, p := range s.Design.Parts {
			p.Footprint()
			for _, x := range p.Bodies {
				x.Solid.Layers()
			}
		}
		wire.Of(s.Design, s.Job.Wiring)
		b.StartTimer()
		check.RunOnly(s, people)
	}
}
