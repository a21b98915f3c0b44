package presets_test

import (
	"testing"

	"slabwright/model"
)

// BenchmarkFitOfStudio draws 100000 rooms for every slab of the studio, both
// ways where both are bound.
func BenchmarkFitOfStudio(b *testing.B) {
	d, _ := build(b, preset(b, "studio"), nil)
	wish := model.UsualFit
	wish.Draws = 100_000
	for b.Loop() {
		for _, p := range d.Parts {
			if p.Slab == nil {
				continue
			}
			if _, err := d.FitWith(p.ID, wish); err != nil {
				b.Fatal(err)
			}
		}
	}
}
