package cut_test

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"slabwright/model/calc/saw"
)

// outline of the exhaustive search: heights of both edges at whole millimetres.
type outline struct {
	low, high []int
	l, w      int
	knots     [][4]int // x, y, length, width
}

// holds says whether a part lies somewhere in a window of the outline.
func (o outline) holds(r rectangle, x0, y0, x1, y1, kerf int) bool {
	for x := x0; x+r.l <= x1; x++ {
		low, high := y0, y1
		for k := x; k <= x+r.l; k++ {
			low, high = max(low, o.low[k]), min(high, o.high[k])
		}
		for y := low; y+r.w <= high; y++ {
			clear := true
			for _, q := range o.knots {
				clear = clear && !(x < q[0]+q[2] && q[0] < x+r.l && y < q[1]+q[3] && q[1] < y+r.w)
			}
			if clear && o.sawnOut(r, x, y, x0, y0, x1, y1, kerf) {
				return true
			}
		}
	}
	return false
}

// sawnOut says whether some order of cuts along the four sides frees a part from
// a window without meeting a knot.
func (o outline) sawnOut(r rectangle, x, y, x0, y0, x1, y1, k int) bool {
	switch {
	case x0 == x && y0 == y && x1 == x+r.l && y1 == y+r.w:
		return true
	case x0 < x && !o.crossed(x-k, y0, x, y1) && o.sawnOut(r, x, y, x, y0, x1, y1, k),
		x1 > x+r.l && !o.crossed(x+r.l, y0, x+r.l+k, y1) && o.sawnOut(r, x, y, x0, y0, x+r.l, y1, k),
		y0 < y && !o.crossed(x0, y-k, x1, y) && o.sawnOut(r, x, y, x0, y, x1, y1, k),
		y1 > y+r.w && !o.crossed(x0, y+r.w, x1, y+r.w+k) && o.sawnOut(r, x, y, x0, y0, x1, y+r.w, k):
		return true
	}
	return false
}

// crossed says whether a saw cut meets a knot.
func (o outline) crossed(x0, y0, x1, y1 int) bool {
	for _, q := range o.knots {
		if x0 < q[0]+q[2] && q[0] < x1 && y0 < q[1]+q[3] && q[1] < y1 {
			return true
		}
	}
	return false
}

func (o outline) freed(list []rectangle, set, x0, y0, x1, y1, k int) bool {
	if set&(set-1) == 0 {
		for i, r := range list {
			if set == 1<<i {
				return o.holds(r, x0, y0, x1, y1, k) || r.turn && o.holds(rectangle{r.w, r.l, false}, x0, y0, x1, y1, k)
			}
		}
	}
	for a := (set - 1) & set; a > 0; a = (a - 1) & set {
		for x := x0 + 1; x+k < x1; x++ {
			if !o.crossed(x, y0, x+k, y1) && o.freed(list, a, x0, y0, x, y1, k) && o.freed(list, set&^a, x+k, y0, x1, y1, k) {
				return true
			}
		}
		for y := y0 + 1; y+k < y1; y++ {
			if !o.crossed(x0, y, x1, y+k) && o.freed(list, a, x0, y0, x1, y, k) && o.freed(list, set&^a, x0, y+k, x1, y1, k) {
				return true
			}
		}
	}
	return false
}

// TestRandomUnevenSlabs has the sawyer saw layouts on slabs with uneven edges and
// knots, and wants no plan to be worse than trying every place on whole
// millimetres, nor any bound to be above it.
func TestRandomUnevenSlabs(t *testing.T) {
	for seed := range int64(80) {
		r := rand.New(rand.NewSource(seed))
		k, n := 1+r.Intn(2), 2+r.Intn(2)
		var list []rectangle
		var items []doc
		for i := range n {
			p := rectangle{3 + r.Intn(9), 2 + r.Intn(6), r.Intn(3) == 0}
			list = append(list, p)
			items = append(items, doc{"id": fmt.Sprint("p", i), "length": p.l, "width": p.w, "count": 1, "rotate": p.turn})
		}
		var boards [][3]int
		var outlines []outline
		var sheets []doc
		var left []int
		for b := range 1 + r.Intn(2) {
			o := outline{l: 14 + r.Intn(6), w: 12}
			low, high := [2]int{r.Intn(3), r.Intn(3)}, [2]int{8 + r.Intn(5), 8 + r.Intn(5)}
			mid := 1 + r.Intn(o.l-1)
			for x := range o.l + 1 {
				o.low = append(o.low, low[0])
				step := high[0]
				if x > mid {
					step = high[1]
				} else if x == mid {
					step = min(high[0], high[1])
				}
				o.high = append(o.high, step)
			}
			keep := []doc{}
			if r.Intn(2) == 0 {
				q := [4]int{r.Intn(o.l - 2), r.Intn(7), 1 + r.Intn(2), 1 + r.Intn(2)}
				o.knots = append(o.knots, q)
				keep = append(keep, doc{"x": q[0], "y": q[1], "length": q[2], "width": q[3]})
			}
			outlines = append(outlines, o)
			boards = append(boards, [3]int{o.l, o.w, 3 + r.Intn(9)})
			left = append(left, 1+r.Intn(2))
			// A step of the edge within a thousandth of a millimetre.
			top := [][2]float64{{0, float64(high[0])}, {float64(mid), float64(high[0])}, {float64(mid) + 0.001, float64(high[1])}, {float64(o.l), float64(high[1])}}
			if high[1] < high[0] {
				top[1][0], top[2][0] = float64(mid)-0.001, float64(mid)
			}
			sheets = append(sheets, doc{"id": fmt.Sprint("s", b), "length": o.l, "width": o.w, "price": boards[b][2], "count": left[b],
				"low": [][2]float64{{0, float64(low[0])}}, "high": top, "keep_out": keep})
		}
		answers := map[[2]int]bool{}
		asked := map[[2]int]bool{}
		want := cheapest(1<<n-1, boards, left, func(b, part int) bool {
			q := [2]int{b, part}
			if !asked[q] {
				o := outlines[b]
				asked[q], answers[q] = true, o.freed(list, part, 0, 0, o.l, o.w, k)
			}
			return answers[q]
		})
		ins := encode(t, doc{"kind": "sheets", "objective": "cost", "kerf": k, "sheets": sheets, "items": items})
		s, v := solve(t, fmt.Sprint("seed ", seed), ins, saw.Effort{})
		if !s.Found() && !math.IsInf(want, 1) || s.Found() && v.Worth > want {
			t.Errorf("seed %d: cost %g (found %v), trying whole millimetres gives %g\n%s", seed, v.Worth, s.Found(), want, ins)
		}
		if s.Sheets.Bound > want {
			t.Errorf("seed %d: bound %g, a plan of %g exists\n%s", seed, s.Sheets.Bound, want, ins)
		}
	}
}
