package cut_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"slabwright/model/calc/saw"
)

type doc = map[string]any

func encode(t testing.TB, d doc) []byte {
	t.Helper()
	out, err := json.MarshalIndent(d, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// rectangle of the exhaustive search.
type rectangle struct {
	l, w int
	turn bool
}

// freed says whether through cuts free all parts of a set from a rectangle: every
// way to part the set in two, every place of the cut, both directions. stages < 0
// is free; last is the direction of the cut before.
func freed(list []rectangle, set, l, w, k, stages int, last byte) bool {
	if set&(set-1) == 0 {
		for i, r := range list {
			if set == 1<<i {
				return r.l <= l && r.w <= w || r.turn && r.w <= l && r.l <= w
			}
		}
		return true
	}
	for a := (set - 1) & set; a > 0; a = (a - 1) & set {
		if left := after(stages, last, 'x'); left != 0 {
			for x := 1; x+k < l; x++ {
				if freed(list, a, x, w, k, left, 'x') && freed(list, set&^a, l-x-k, w, k, left, 'x') {
					return true
				}
			}
		}
		if left := after(stages, last, 'y'); left != 0 {
			for y := 1; y+k < w; y++ {
				if freed(list, a, l, y, k, left, 'y') && freed(list, set&^a, l, w-y-k, k, left, 'y') {
					return true
				}
			}
		}
	}
	return false
}

func after(stages int, last, now byte) int {
	if stages < 0 || last == 0 || last == now {
		return stages
	}
	return stages - 1
}

// cheapest is the least cost of boards for a set by trying everything.
func cheapest(set int, boards [][3]int, left []int, yields func(b, part int) bool) float64 {
	if set == 0 {
		return 0
	}
	best := math.Inf(1)
	low := set & -set
	for b := range boards {
		if left[b] == 0 {
			continue
		}
		left[b]--
		for part := set; part > 0; part = (part - 1) & set {
			if part&low != 0 && yields(b, part) {
				best = min(best, float64(boards[b][2])+cheapest(set&^part, boards, left, yields))
			}
		}
		left[b]++
	}
	return best
}

// TestRandomSheetsAgainstEverything compares small random problems with an
// exhaustive search.
func TestRandomSheetsAgainstEverything(t *testing.T) {
	for seed := range int64(150) {
		r := rand.New(rand.NewSource(seed))
		k, stages := r.Intn(3), 0
		if seed%3 == 0 {
			stages = 2 + r.Intn(2)
		}
		most := 5
		if seed%10 == 0 && stages == 0 {
			most = 7
		}
		n := 2 + r.Intn(most-1)
		var list []rectangle
		var items, sheets []doc
		for i := range n {
			p := rectangle{1 + r.Intn(7), 1 + r.Intn(6), r.Intn(2) == 0}
			list = append(list, p)
			items = append(items, doc{"id": fmt.Sprint("p", i), "length": p.l, "width": p.w, "count": 1, "rotate": p.turn})
		}
		var boards [][3]int
		var left []int
		for b := range 1 + r.Intn(3) {
			boards = append(boards, [3]int{5 + r.Intn(8), 4 + r.Intn(6), 3 + r.Intn(9)})
			left = append(left, 1+r.Intn(3))
			sheets = append(sheets, doc{"id": fmt.Sprint("s", b), "length": boards[b][0], "width": boards[b][1], "price": boards[b][2], "count": left[b]})
		}
		limit := stages
		if stages == 0 {
			limit = -1
		}
		known := map[[2]int]bool{}
		asked := map[[2]int]bool{}
		want := cheapest(1<<n-1, boards, left, func(b, part int) bool {
			q := [2]int{b, part}
			if !asked[q] {
				asked[q], known[q] = true, freed(list, part, boards[b][0], boards[b][1], k, limit, 0)
			}
			return known[q]
		})
		ins := encode(t, doc{"kind": "sheets", "objective": "cost", "kerf": k, "stages": stages, "sheets": sheets, "items": items})
		s, v := solve(t, fmt.Sprint("seed ", seed), ins, saw.Effort{})
		switch {
		case s.Found() != !math.IsInf(want, 1):
			t.Errorf("seed %d: found %v, everything tried says %v\n%s", seed, s.Found(), want, ins)
		case s.Found() && (v.Worth != want || !s.Sheets.Optimal):
			t.Errorf("seed %d: cost %g (optimal %v), everything tried gives %g\n%s", seed, v.Worth, s.Sheets.Optimal, want, ins)
		}
	}
}

// TestRandomValueAgainstEverything does the same for the most value out of one
// sheet.
func TestRandomValueAgainstEverything(t *testing.T) {
	for seed := range int64(120) {
		r := rand.New(rand.NewSource(seed))
		k := r.Intn(2)
		stages, limit := 0, -1
		if seed%3 == 0 {
			stages = 2 + r.Intn(2)
			limit = stages
		}
		n := 3 + r.Intn(3)
		var list []rectangle
		var value []float64
		var items []doc
		for i := range n {
			p := rectangle{2 + r.Intn(6), 2 + r.Intn(5), r.Intn(2) == 0}
			list = append(list, p)
			value = append(value, float64(1+r.Intn(20)))
			items = append(items, doc{"id": fmt.Sprint("p", i), "length": p.l, "width": p.w, "count": 1, "rotate": p.turn, "value": value[i]})
		}
		l, w := 7+r.Intn(5), 6+r.Intn(4)
		want := 0.0
		for set := range 1 << n {
			sum := 0.0
			for i := range n {
				if set&(1<<i) != 0 {
					sum += value[i]
				}
			}
			if sum > want && freed(list, set, l, w, k, limit, 0) {
				want = sum
			}
		}
		ins := encode(t, doc{"kind": "sheets", "objective": "value", "kerf": k, "stages": stages, "sheets": []doc{{"id": "s", "length": l, "width": w, "count": 1}}, "items": items})
		s, v := solve(t, fmt.Sprint("seed ", seed), ins, saw.Effort{})
		if v.Worth != want || !s.Sheets.Optimal {
			t.Errorf("seed %d: value %g (optimal %v), everything tried gives %g\n%s", seed, v.Worth, s.Sheets.Optimal, want, ins)
		}
	}
}

// TestRandomBarsAgainstEverything compares mixed bars with an exhaustive search,
// pieces with slanted ends and pieces that may turn among them.
func TestRandomBarsAgainstEverything(t *testing.T) {
	for seed := range int64(150) {
		r := rand.New(rand.NewSource(seed))
		k, n := r.Intn(4), 2+r.Intn(5)
		var pieces []stick
		var items, stock []doc
		for i := range n {
			p := stick{25 + r.Intn(60), 0, 0, false}
			if seed%2 == 0 {
				p.left, p.right, p.turn = -10+10*r.Intn(3), -10+10*r.Intn(3), r.Intn(3) == 0
			}
			pieces = append(pieces, p)
			items = append(items, doc{"id": fmt.Sprint("p", i), "length": p.length, "count": 1, "left": p.left, "right": p.right, "turn": p.turn})
		}
		var bars [][3]int
		var left []int
		for b := range 1 + r.Intn(3) {
			bars = append(bars, [3]int{80 + r.Intn(120), 0, 5 + r.Intn(10)})
			left = append(left, 1+r.Intn(4))
			stock = append(stock, doc{"id": fmt.Sprint("b", b), "length": bars[b][0], "price": bars[b][2], "count": left[b]})
		}
		want := cheapest(1<<n-1, bars, left, func(b, part int) bool { return rowed(pieces, part, 0, nil, k) <= bars[b][0] })
		ins := encode(t, doc{"kind": "bars", "objective": "cost", "kerf": k, "bars": stock, "items": items})
		s, v := solve(t, fmt.Sprint("seed ", seed), ins, saw.Effort{})
		switch {
		case s.Found() != !math.IsInf(want, 1):
			t.Errorf("seed %d: found %v, everything tried says %v\n%s", seed, s.Found(), want, ins)
		case s.Found() && (v.Worth != want || !s.Bars.Optimal):
			t.Errorf("seed %d: cost %g (optimal %v, bound %g), everything tried gives %g\n%s", seed, v.Worth, s.Bars.Optimal, s.Bars.Bound, want, ins)
		}
	}
}

type stick struct {
	length, left, right int
	turn                bool
}

// rowed is the shortest bar for a set of sticks laid in any order: near edges and
// far edges each keep a kerf apart.
func rowed(all []stick, set, at int, last *stick, k int) int {
	if set == 0 {
		return at + max(last.length, last.length+last.right)
	}
	best := math.MaxInt
	for i, p := range all {
		if set&(1<<i) == 0 {
			continue
		}
		ways := []stick{p}
		if p.turn {
			ways = append(ways, stick{p.length + p.right - p.left, p.right, p.left, true})
		}
		for _, q := range ways {
			x := max(0, -q.left)
			if last != nil {
				x = at + max(last.length+k, last.length+last.right+k-q.left)
			}
			best = min(best, rowed(all, set&^(1<<i), x, &q, k))
		}
	}
	return best
}
