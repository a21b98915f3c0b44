package cut_test

import (
	"testing"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// outlined is a slab of four corners that no survey knows.
func outlined(id string, corners ...geom.Vec) *model.Part {
	s := &model.SlabPart{Thickness: 30}
	for _, c := range corners {
		s.Edges = append(s.Edges, model.Edge{Start: c})
	}
	return &model.Part{ID: id, Slab: s}
}

// TestBlankTapers: a back wall that runs 60 out of square over 900 leaves a shelf
// that is 300 wide at one end and 240 at the other. Its straight front may be on
// either side; a part that is wider in the middle, or narrower by less than three
// kerfs, stays a rectangle.
func TestBlankTapers(t *testing.T) {
	_, d, _ := shopped(t, "studio")
	for _, c := range []struct {
		name          string
		corners       []geom.Vec
		width, end    unit.Length
		flipped, tape bool
	}{
		{"front straight", []geom.Vec{{X: 0, Y: -300}, {X: 900, Y: -300}, {X: 900, Y: -60}, {X: 0, Y: 0}}, 300, 240, false, true},
		{"back straight", []geom.Vec{{X: 0, Y: -300}, {X: 900, Y: -240}, {X: 900, Y: 0}, {X: 0, Y: 0}}, 240, 300, true, true},
		{"ends slanted too", []geom.Vec{{X: 0, Y: -300}, {X: 900, Y: -240}, {X: 880, Y: 0}, {X: 10, Y: 0}}, 240, 300, true, true},
		{"a gable", []geom.Vec{{X: 0, Y: 0}, {X: 900, Y: 0}, {X: 900, Y: 200}, {X: 450, Y: 300}, {X: 0, Y: 200}}, 300, 300, false, false},
		{"hardly", []geom.Vec{{X: 0, Y: 0}, {X: 900, Y: 0}, {X: 900, Y: 290}, {X: 0, Y: 300}}, 300, 300, false, false},
	} {
		b := cut.BlankOf(d, outlined(c.name, c.corners...))
		if b.Width != c.width || b.EndWidth != c.end || b.Flipped != c.flipped || b.Tapers() != c.tape {
			t.Errorf("%s: %v / %v, flipped %v", c.name, b.Width, b.EndWidth, b.Flipped)
		}
		low := geom.V(0, c.corners[0].Y)
		for _, p := range c.corners {
			q := b.Lying(p.Sub(low))
			over := float64(b.Width) + float64(b.EndWidth-b.Width)*float64(q.X/b.Length)
			if float64(q.Y) < -1e-9 || float64(q.Y) > over+0.11 {
				t.Errorf("%s: corner %v lies at %v, the blank is %.1f wide there", c.name, p, q, over)
			}
		}
	}
}

// TestTapersNest: two such shelves from a board of 900 x 545: head to tail, 300
// and 240 with the slanted kerf of 4·√(1 + (60/900)²) = 4.01 between them take
// 544.01; as rectangles they would take 604. The board for 545 is enough.
func TestTapersNest(t *testing.T) {
	_, d, _ := shopped(t, "studio")
	one := cut.BlankOf(d, outlined("one", geom.V(0, -300), geom.V(900, -240), geom.V(900, 0), geom.V(0, 0)))
	item := saw.Item{ID: "shelf", Length: one.Length, Width: one.Width, EndWidth: one.EndWidth, Count: 2}
	for width, want := range map[unit.Length]bool{545: true, 543.9: false} {
		p := saw.Problem{Kerf: 4, Aim: saw.LeastCost, Sheets: []saw.Sheet{{ID: "board", Length: 900, Width: width, Count: 1, Price: 1}}, Items: []saw.Item{item}}
		if plan := saw.PlanSheets(p, saw.Effort{}); plan.Found != want {
			t.Errorf("a board %v wide: %v", width, plan.Found)
		}
	}
}
