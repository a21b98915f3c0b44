package presets_test

import (
	"testing"

	"slabwright/model"
	"slabwright/model/hold"
)

// BenchmarkHoldOfStudio works out the statics of every slab of the studio.
func BenchmarkHoldOfStudio(b *testing.B) {
	d, _ := build(b, preset(b, "studio"), nil)
	j := model.Job{}
	for b.Loop() {
		hold.Of(&model.Design{Title: d.Title, Room: d.Room, Parts: d.Parts}, j)
	}
}
