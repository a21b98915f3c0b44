package check_test

import (
	"os"
	"testing"

	"slabwright/model/check"
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
