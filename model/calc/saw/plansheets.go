package saw

import (
	"fmt"
	"math"
	"slices"
)

// PlanSheets finds the cheapest sheets for all items (the fewest under Fewest),
// or the most value out of the sheets that are there. Among plans of one cost it
// prefers the least area bought, then fewer cuts.
func PlanSheets(p Problem, e Effort) Plan {
	s := newSheetSearch(p, e)
	if p.Aim == MostValue {
		return s.mostValue()
	}
	if miss := s.impossible(); len(miss) > 0 {
		return Plan{Missing: miss}
	}
	if out, ok := s.exact(); ok {
		return out
	}
	return s.many()
}

type sheetSearch struct {
	p      Problem
	kerf   grid
	parts  []part
	demand []int
	boards []board
	b      *budget
	step   float64
}

func newSheetSearch(p Problem, e Effort) *sheetSearch {
	s := &sheetSearch{p: p, kerf: onGrid(p.Kerf), parts: partsOf(p.Items), b: e.budget()}
	var prices []float64
	for _, it := range p.Items {
		s.demand = append(s.demand, it.Count)
	}
	for _, sh := range p.Sheets {
		s.boards = append(s.boards, boardOf(sh, p))
		prices = append(prices, s.boards[len(s.boards)-1].price)
	}
	s.step = coarsest(prices)
	return s
}

// around is the largest rectangle around any board, kerf included.
func (s *sheetSearch) around() (long, wide grid) {
	for _, b := range s.boards {
		long, wide = max(long, b.in.x1-b.in.x0+s.kerf), max(wide, b.in.y1-b.in.y0+s.kerf)
	}
	return long, wide
}

// alone says which boards yield a part by itself.
func (s *sheetSearch) alone(i int) (fits []bool) {
	st, _ := newStates([]int{1})
	long, wide := s.around()
	c := newComposites(st, s.parts[i:i+1], s.p, s.kerf, long, wide, &budget{left: 1000})
	y := newYields(c, s.boards, s.parts[i:i+1], &budget{left: 4 * unevenShare})
	for k := range s.boards {
		fits = append(fits, y.asked(k, 1) == yes)
	}
	return fits
}

// impossible names the parts that no sheet yields, with the nearest one.
func (s *sheetSearch) impossible() []Missing {
	var out []Missing
	for i, it := range s.p.Items {
		if it.Count > 0 && !slices.Contains(s.alone(i), true) {
			out = append(out, s.nearest(i))
		}
	}
	return out
}

// nearest says which sheet lacks least for a part.
func (s *sheetSearch) nearest(i int) Missing {
	it, p := s.p.Items[i], s.parts[i]
	m := Missing{Item: it.ID, Why: "there are no sheets"}
	lack := never
	for k, b := range s.boards {
		for _, f := range leavesOf([]part{p}) {
			dl, dw := f.l-(b.in.x1-b.in.x0), f.w-b.widest(f.l)
			short := max(dl, dw, 0)
			if f.low && !b.naturalLo || f.high && !b.naturalHi {
				short += never / 4
			}
			if short >= lack {
				continue
			}
			lack = short
			m.Nearest = s.p.Sheets[k].ID
			m.Why = s.lacking(it, s.p.Sheets[k], dl, dw, short >= never/4)
		}
	}
	return m
}

func (s *sheetSearch) lacking(it Item, sh Sheet, dl, dw grid, natural bool) string {
	what := fmt.Sprintf("%s takes %s; the nearest sheet %s ", it.ID, size(it.Length, max(it.Width, it.EndWidth)), sh.ID)
	switch {
	case natural:
		return what + "has no natural edge where the part needs one"
	case dl > 0 && dw > 0:
		return what + fmt.Sprintf("lacks %s in length and %s in width", mm(ofGrid(dl)), mm(ofGrid(dw)))
	case dl > 0:
		return what + fmt.Sprintf("lacks %s in length", mm(ofGrid(dl)))
	case dw > 0:
		return what + fmt.Sprintf("lacks %s in width", mm(ofGrid(dw)))
	}
	return what + "is large enough, but places to keep off lie in the way"
}

// widest is the width of the widest straight strip of a length.
func (b *board) widest(l grid) grid {
	best := grid(0)
	for x := b.in.x0; x+l <= b.in.x1; x += rasterStep {
		y0, y1 := b.band(x, l)
		best = max(best, y1-y0)
	}
	if best == 0 {
		best = b.in.y1 - b.in.y0
	}
	return best
}

// exact tries every selection on every sheet; false where there are too many.
func (s *sheetSearch) exact() (Plan, bool) {
	st, ok := newStates(s.demand)
	if !ok {
		return Plan{}, false
	}
	long, wide := s.around()
	c := newComposites(st, s.parts, s.p, s.kerf, long, wide, s.b)
	if !c.fill() {
		return Plan{}, false
	}
	y := newYields(c, s.boards, s.parts, s.b)
	loose := y.cheapest(st, y.loose)
	out := Plan{}
	if loose != nil {
		out.Bound = loose.cost
	}
	for {
		found := y.cheapest(st, y.strict)
		out.Steps = s.b.spent
		if found == nil {
			out.Missing = []Missing{s.scarce(loose == nil)}
			return out, true
		}
		if out.Layouts = s.sawn(found, y); out.Layouts == nil {
			continue
		}
		out.Found, out.Objective = true, found.cost
		out.Optimal = out.Bound > out.Objective-1e-6*(1+out.Objective)
		return out, true
	}
}

// sawn puts the boards of a bill into saw cuts. A layout that no order of cuts
// frees is struck out of what its board yields, and there is no answer.
func (s *sheetSearch) sawn(b *bill, y *yields) []Layout {
	var out []Layout
	kinds, states := b.used()
	for n, k := range kinds {
		if list, ok := y.layout(k, states[n]); ok {
			if lay, ok := s.layout(k, list, y.c.leaves); ok {
				out = append(out, lay)
				continue
			}
		}
		y.strict[k][states[n]] = no
		return nil
	}
	return out
}

// scarce says that the sheets that are there do not suffice.
func (s *sheetSearch) scarce(proved bool) Missing {
	var need, have float64
	for i, n := range s.demand {
		need += float64(n) * s.parts[i].area
	}
	endless := false
	for _, b := range s.boards {
		have += float64(b.count) * b.area
		endless = endless || b.count == 0
	}
	if !endless && need > have {
		return Missing{Why: fmt.Sprintf("the parts take %.3f m2, the sheets that are there have %.3f m2", need/1e12, have/1e12)}
	}
	if proved {
		return Missing{Why: "the sheets that are there do not yield all parts, however they are cut"}
	}
	return Missing{Why: "no way was found to cut all parts from the sheets that are there"}
}

// layout writes the places on one board out, with the cuts in order.
func (s *sheetSearch) layout(k int, list []located, leaves []leaf) (Layout, bool) {
	b := &s.boards[k]
	out := Layout{Sheet: s.p.Sheets[k].ID}
	saw := sawing{board: b, kerf: s.kerf, stages: s.p.Stages, leaves: leaves, parts: s.parts, names: s.names}
	s.trimEdges(&saw, k)
	if !saw.saw(list) {
		return out, false
	}
	for _, l := range list {
		out.Placed = append(out.Placed, s.placed(leaves[l.leaf], l)...)
	}
	out.Cuts = saw.cuts
	for _, o := range saw.offcuts {
		y0, y1 := b.band(o.x0, o.x1-o.x0)
		o.y0, o.y1 = max(o.y0, y0), min(o.y1, y1)
		r := rectOf(o)
		if r.Length > 0 && r.Width > 0 && r.Length >= s.p.Keep.Length && r.Width >= s.p.Keep.Width && !slices.ContainsFunc(b.keep, o.hits) {
			out.Offcuts = append(out.Offcuts, r)
		}
	}
	return out, true
}

func (s *sheetSearch) names(f leaf) []string {
	out := []string{s.p.Items[f.part].ID}
	if f.mate >= 0 {
		out = append(out, s.p.Items[f.mate].ID)
	}
	return out
}

// placed are the parts of a leaf at its place.
func (s *sheetSearch) placed(f leaf, l located) []Placed {
	p := Placed{Item: s.p.Items[f.part].ID, Rect: Rect{ofGrid(l.x), ofGrid(l.y), ofGrid(f.l), ofGrid(f.w)}, Across: f.across, Turned: f.turned}
	switch {
	case f.low:
		p.Edge = Low
	case f.high:
		p.Edge = High
	}
	if f.mate < 0 {
		return []Placed{p}
	}
	a, b := s.parts[f.part], s.parts[f.mate]
	p.Rect = Rect{ofGrid(l.x + f.at), ofGrid(l.y), ofGrid(a.l), ofGrid(a.high())}
	mate := Placed{Item: s.p.Items[f.mate].ID, Turned: true,
		Rect: Rect{ofGrid(l.x + f.mateAt), ofGrid(l.y + f.w - b.high()), ofGrid(b.l), ofGrid(b.high())}}
	return []Placed{p, mate}
}

// trimEdges notes the cuts that take the trim off.
func (s *sheetSearch) trimEdges(saw *sawing, k int) {
	t := onGrid(s.p.Trim)
	if t == 0 {
		return
	}
	b, sh := saw.board, s.p.Sheets[k]
	in := box{0, b.in.y0, onGrid(sh.Length), b.in.y1}
	if !b.naturalLo {
		in.y0 -= t
	}
	if !b.naturalHi {
		in.y1 += t
	}
	saw.add(false, in, b.in.x0, false)
	in.x0 = b.in.x0
	saw.add(false, in, b.in.x1, true)
	in.x1 = b.in.x1
	if !b.naturalLo {
		saw.add(true, in, b.in.y0, false)
		in.y0 = b.in.y0
	}
	if !b.naturalHi {
		saw.add(true, in, b.in.y1, true)
	}
}

// mostValue fills the sheets one after the other.
func (s *sheetSearch) mostValue() Plan {
	out := Plan{Found: true, Optimal: true}
	left := slices.Clone(s.demand)
	value := make([]float64, len(left))
	for i, it := range s.p.Items {
		value[i] = it.Value
	}
	limited := slices.ContainsFunc(left, func(n int) bool { return n > 0 })
	for k, sh := range s.p.Sheets {
		for range max(1, sh.Count) {
			q, leaves := s.fill(k, left, value)
			alone := q
			if limited && !slices.Equal(left, s.demand) {
				alone, _ = s.fill(k, s.demand, value)
			}
			out.Objective += q.have
			out.Bound += alone.bound
			list := make([]located, 0, len(q.best))
			for _, sp := range q.best {
				list = append(list, located{sp.shape, s.boards[k].in.x0 + sp.x, s.boards[k].in.y0 + sp.y})
				i := leaves[sp.shape].part
				if left[i] == 1 {
					left[i] = -1
				} else if left[i] > 1 {
					left[i]--
				}
			}
			lay, ok := s.layout(k, list, leaves)
			if !ok {
				panic("saw: a layout that no saw cuts")
			}
			out.Layouts = append(out.Layouts, lay)
		}
	}
	out.Steps = s.b.spent
	out.Optimal = out.Bound <= out.Objective+1e-6*(1+math.Abs(out.Objective))
	if out.Optimal {
		out.Bound = out.Objective
	}
	return out
}
