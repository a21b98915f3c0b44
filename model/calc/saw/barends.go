package saw

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// ends is a piece on the grid.
type ends struct {
	length, left, right grid
	cutLeft, cutRight   grid // what the kerf of each end takes along the bar
	turn                bool
}

func endsOf(p Piece, in BarProblem) ends {
	along := func(slant unit.Length) grid {
		if slant == 0 || in.Depth <= 0 {
			return onGrid(in.Kerf)
		}
		return grid(math.Ceil(float64(onGrid(in.Kerf)) * math.Hypot(1, float64(slant/in.Depth))))
	}
	return ends{onGrid(p.Length), onGrid(p.Left), onGrid(p.Right), along(p.Left), along(p.Right), p.Turn}
}

// turned is the piece end for end: a half turn in the plane of the cut.
func (e ends) turned() ends {
	return ends{e.length + e.right - e.left, e.right, e.left, e.cutRight, e.cutLeft, e.turn}
}

// least is what the piece takes of a bar wherever it lies, with one kerf: its
// length midway between near and far edge.
func (e ends) least(kerf grid) grid { return e.length + (e.right-e.left)/2 + kerf }

// after is how far the near corner of a piece lies from that of the one before
// it. Equal slants share one cut, others need the wider kerf at their closest.
func (e ends) after(before ends) grid {
	k := max(before.cutRight, e.cutLeft)
	return before.length + k + max(0, before.right-e.left)
}

// first is where the near corner of the first piece lies.
func (e ends) first() grid { return max(0, -e.left) }

// end is the length taken up to the far right corner.
func (e ends) end() grid { return e.length + max(0, e.right) }

// fitting is the shortest row of some pieces.
type fitting struct {
	length grid
	row    []laid
}

// laid is one piece of a row.
type laid struct {
	piece  int
	turned bool
	at     grid
}

// fit finds the shortest row of pieces.
func (s *barSearch) fit(counts []int) fitting {
	if !s.slants {
		return s.straight(counts)
	}
	key := fmt.Sprint(counts)
	if f, ok := s.fitted[key]; ok {
		return f
	}
	f := rowSearch{s: s, left: slices.Clone(counts), best: fitting{length: math.MaxInt64}}
	f.walk(nil, 0)
	if f.nodes > rowNodes {
		s.whole = false
	}
	s.fitted[key] = f.best
	return f.best
}

// straight lays square pieces, the longest first.
func (s *barSearch) straight(counts []int) fitting {
	var f fitting
	at := grid(0)
	for _, i := range s.longestFirst() {
		for range counts[i] {
			f.row = append(f.row, laid{piece: i, at: at})
			f.length = at + s.ends[i].length
			at = f.length + s.kerf
		}
	}
	return f
}

func (s *barSearch) longestFirst() []int {
	order := make([]int, len(s.size))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch {
		case s.size[i] > s.size[j]:
			return -1
		case s.size[i] < s.size[j]:
			return 1
		}
		return 0
	})
	return order
}

// rowSearch looks for the shortest row by depth first search with the bound of
// the mid lengths.
type rowSearch struct {
	s     *barSearch
	left  []int
	row   []laid
	best  fitting
	nodes int
}

// rowNodes bounds the search for one row; the best row until then is kept.
const rowNodes = 20_000

func (f *rowSearch) walk(last *ends, at grid) {
	if f.nodes++; f.nodes > rowNodes && f.best.row != nil {
		return
	}
	rest := grid(0)
	empty := true
	for i, n := range f.left {
		rest += grid(n) * f.s.size[i]
		empty = empty && n == 0
	}
	if empty {
		if end := at + last.end(); end < f.best.length {
			f.best = fitting{end, slices.Clone(f.row)}
		}
		return
	}
	if last != nil && at+last.length+last.right/2+rest >= f.best.length {
		return
	}
	for _, i := range f.s.longestFirst() {
		if f.left[i] == 0 {
			continue
		}
		f.left[i]--
		ways := []ends{f.s.ends[i]}
		if ways[0].turn {
			ways = append(ways, ways[0].turned())
		}
		for k, e := range ways {
			x := e.first()
			if last != nil {
				x = at + e.after(*last)
			}
			f.row = append(f.row, laid{i, k == 1, x})
			f.walk(&e, x)
			f.row = f.row[:len(f.row)-1]
		}
		f.left[i]++
	}
}

// layout writes a row of one bar out.
func (s *barSearch) layout(bar int, counts []int) BarLayout {
	f := s.fit(counts)
	out := BarLayout{Bar: s.p.Bars[bar].ID}
	var before *ends
	for _, l := range f.row {
		e := s.ends[l.piece]
		if l.turned {
			e = e.turned()
		}
		switch {
		case before == nil && e.left != 0:
			out.Cuts++
		case before != nil && before.right != e.left:
			out.Cuts++
		}
		out.Cuts++
		before = &e
		out.Pieces = append(out.Pieces, BarPiece{s.p.Pieces[l.piece].ID, ofGrid(l.at), l.turned})
	}
	rest := s.room[bar] - s.kerf - f.length
	if rest == 0 && before.right == 0 {
		out.Cuts--
	}
	out.Rest = ofGrid(max(0, rest-before.cutRight))
	return out
}
