package saw

import (
	"math"
	"slices"
)

// rule is one way to fill a board: which part comes next, and how what is left
// beside it is parted.
type rule struct {
	order []int     // leaves, the first that fits is taken
	cross int       // 1: cross cuts first, 0: rips first, 2: whichever leaves the larger rest
	taste []float64 // for the boards, nil: all alike
}

// rules are the orders and partings that are tried.
func (s *sheetSearch) rules(leaves []leaf) []rule {
	keys := []func(f leaf) float64{
		func(f leaf) float64 { return float64(f.l) * float64(f.w) },
		func(f leaf) float64 { return float64(f.l) + float64(f.w)/1e6 },
		func(f leaf) float64 { return float64(f.w) + float64(f.l)/1e6 },
		func(f leaf) float64 { return float64(f.l + f.w) },
		func(f leaf) float64 { return float64(max(f.l, f.w)) },
	}
	var out []rule
	for _, key := range keys {
		order := make([]int, len(leaves))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(i, j int) int {
			a, b := key(leaves[i]), key(leaves[j])
			if leaves[i].low || leaves[i].high { // what needs a natural edge goes first
				a += 1e15
			}
			if leaves[j].low || leaves[j].high {
				b += 1e15
			}
			switch {
			case a > b:
				return -1
			case a < b:
				return 1
			}
			return 0
		})
		for cross := range 3 {
			out = append(out, rule{order: order, cross: cross})
		}
	}
	return out
}

// greedyStep is the raster on which a quick layout tries places on an uneven
// board.
const greedyStep = 10 * rasterStep

// pack fills one board by a rule.
func (s *sheetSearch) pack(k int, left []int, leaves []leaf, r rule) []located {
	u := &uneven{board: &s.boards[k], kerf: s.kerf}
	free := []box{s.boards[k].in}
	left = slices.Clone(left)
	var out []located
	for {
		n, at, in := s.choose(u, free, left, leaves, r)
		if n < 0 {
			return out
		}
		out = append(out, at)
		left[leaves[at.leaf].part]--
		free = slices.Delete(free, n, n+1)
		for _, rest := range s.rest(u, at, leaves[at.leaf], in, r.cross) {
			if rest.x1 > rest.x0 && rest.y1 > rest.y0 {
				free = append(free, rest)
			}
		}
	}
}

// choose takes the first leaf of the order that fits somewhere, in the box where
// least is left.
func (s *sheetSearch) choose(u *uneven, free []box, left []int, leaves []leaf, r rule) (int, located, box) {
	for _, i := range r.order {
		f := leaves[i]
		if left[f.part] <= 0 {
			continue
		}
		best, spare, spot := -1, math.Inf(1), located{}
		for n, in := range free {
			if f.l > in.x1-in.x0 || f.w > in.y1-in.y0 {
				continue
			}
			rest := float64(in.x1-in.x0)*float64(in.y1-in.y0) - float64(f.l)*float64(f.w)
			if rest >= spare {
				continue
			}
			if x, y, ok := s.first(u, f, in); ok {
				best, spare, spot = n, rest, located{i, x, y}
			}
		}
		if best >= 0 {
			return best, spot, free[best]
		}
	}
	return -1, located{}, box{}
}

func (s *sheetSearch) first(u *uneven, f leaf, in box) (x, y grid, ok bool) {
	step := greedyStep
	if u.board.straight && u.board.whole {
		step = in.x1 - in.x0 + 1
	}
	for x = in.x0; x+f.l <= in.x1; x += step {
		if y, ok = u.spotAt(f, x, f.l, in.y0, in.y1, func(at box) box { return at }); ok {
			return x, y, true
		}
	}
	return 0, 0, false
}

// rest is what cuts right across leave of a box around a part.
func (s *sheetSearch) rest(u *uneven, at located, f leaf, in box, cross int) []box {
	own := box{at.x, at.y, at.x + f.l, at.y + f.w}
	if f.low {
		own.y0 = u.board.in.y0
	}
	if f.high {
		own.y1 = u.board.in.y1
	}
	right, top := u.board.clear(own.x1, s.kerf, in, true), u.board.clear(own.y1, s.kerf, in, false)
	if cross == 2 {
		cross = 0
		if (in.x1-own.x1)*(in.y1-in.y0) > (in.x1-in.x0)*(in.y1-own.y1) {
			cross = 1
		}
	}
	lowCut, leftCut := own.y0-s.kerf, own.x0-s.kerf
	if cross == 1 {
		mid := box{in.x0, in.y0, right, in.y1}
		out := []box{{right + s.kerf, in.y0, in.x1, in.y1}}
		if u.board.clear(leftCut, s.kerf, in, true) == leftCut && leftCut > in.x0 {
			out = append(out, box{in.x0, in.y0, leftCut, in.y1})
			mid.x0 = own.x0
		}
		top = u.board.clear(own.y1, s.kerf, mid, false)
		out = append(out, box{mid.x0, top + s.kerf, mid.x1, in.y1})
		if u.board.clear(lowCut, s.kerf, mid, false) == lowCut {
			out = append(out, box{mid.x0, in.y0, mid.x1, lowCut})
		}
		return out
	}
	mid := box{in.x0, in.y0, in.x1, top}
	out := []box{{in.x0, top + s.kerf, in.x1, in.y1}}
	if u.board.clear(lowCut, s.kerf, in, false) == lowCut && lowCut > in.y0 {
		out = append(out, box{in.x0, in.y0, in.x1, lowCut})
		mid.y0 = own.y0
	}
	right = u.board.clear(own.x1, s.kerf, mid, true)
	out = append(out, box{right + s.kerf, mid.y0, in.x1, mid.y1})
	if u.board.clear(leftCut, s.kerf, mid, true) == leftCut {
		out = append(out, box{in.x0, mid.y0, leftCut, mid.y1})
	}
	return out
}
