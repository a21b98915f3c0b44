package cut_test

import (
	"fmt"
	"math/rand"
	"testing"

	"slabwright/model/calc/saw"
)

// torn parts a board by random through cuts into pieces, so that a plan without
// waste is known.
func torn(r *rand.Rand, l, w, k, depth int) [][2]int {
	if depth == 0 || l < 300 && w < 300 {
		return [][2]int{{l, w}}
	}
	if l >= w {
		x := l/4 + r.Intn(l/2)
		return append(torn(r, x, w, k, depth-1), torn(r, l-x-k, w, k, depth-1)...)
	}
	y := w/4 + r.Intn(w/2)
	return append(torn(r, l, y, k, depth-1), torn(r, l, w-y-k, k, depth-1)...)
}

// TestTornBoards plans the pieces of boards that were torn without waste. That
// many boards are enough, so no bound may be above it; the plan may take one more.
func TestTornBoards(t *testing.T) {
	for seed := range int64(4) {
		r := rand.New(rand.NewSource(seed))
		boards := 2 + r.Intn(2)
		var items []doc
		for b := range boards {
			for i, p := range torn(r, 2400, 1200, 4, 4) {
				items = append(items, doc{"id": fmt.Sprintf("b%dp%d", b, i), "length": p[0], "width": p[1], "count": 1})
			}
		}
		ins := encode(t, doc{"kind": "sheets", "objective": "sheets", "kerf": 4, "sheets": []doc{{"id": "board", "length": 2400, "width": 1200}}, "items": items})
		s, v := solve(t, fmt.Sprint("seed ", seed), ins, saw.Effort{Steps: 8000})
		if !s.Found() || v.Worth > float64(boards+1) {
			t.Errorf("seed %d: %d pieces take %g boards, %d are enough", seed, len(items), v.Worth, boards)
		}
		if s.Sheets.Bound > float64(boards) {
			t.Errorf("seed %d: the bound %g is above %d boards, which are enough", seed, s.Sheets.Bound, boards)
		}
	}
}

// TestManyPartsOnUnevenSlabs has the sawyer saw more parts than can be searched one
// by one out of slabs with natural edges and knots.
func TestManyPartsOnUnevenSlabs(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	var items []doc
	for i := range 24 {
		it := doc{"id": fmt.Sprint("p", i), "length": 200 + r.Intn(700), "width": 60 + r.Intn(200), "count": 1}
		if i%6 == 0 {
			it["edge"] = "low"
		}
		items = append(items, it)
	}
	ins := encode(t, doc{"kind": "sheets", "objective": "cost", "kerf": 4, "items": items, "sheets": []doc{
		{"id": "waney", "length": 2600, "width": 640, "price": 300, "natural": []string{"low", "high"}, "low": [][2]int{{0, 20}, {800, 0}, {1700, 35}, {2600, 10}}, "high": [][2]int{{0, 600}, {1200, 640}, {2600, 560}},
			"keep_out": []doc{{"x": 1200, "y": 250, "length": 80, "width": 60}, {"x": 2500, "y": 0, "length": 100, "width": 640}}},
		{"id": "plain", "length": 2000, "width": 500, "price": 200}}})
	s, v := solve(t, "many", ins, saw.Effort{Steps: 8000})
	if !s.Found() || v.Worth < s.Sheets.Bound {
		t.Errorf("found %v, cost %g, bound %g", s.Found(), v.Worth, s.Sheets.Bound)
	}
}
