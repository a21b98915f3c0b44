package dim

import (
	"math/rand/v2"
	"testing"

	"slabwright/drawing"
)

// One view with sixty requests.
func BenchmarkPlace60(b *testing.B) {
	s := randomScene(rand.New(rand.NewPCG(11, 7)), 60)
	p, ok := s.sheetFor(drawing.A1, Wood)
	if !ok {
		b.Fatal("the scene fits no scale")
	}
	for b.Loop() {
		Place(p, s.want)
	}
}
