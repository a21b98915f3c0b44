package saw

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// Bar is a stock of bars of one length; Count 0 is as many as wanted.
type Bar struct {
	ID     string
	Length unit.Length
	Count  int
	Price  float64
}

// Piece is a length wanted Count times. Left and Right tell how far the far
// edge of an end lies to the right of its near edge, 0 for a square end: with
// Left below and Right above 0 the far edge is the longer one. Length is that
// of the near edge. A piece that may turn can be cut end for end.
type Piece struct {
	ID          string
	Length      unit.Length
	Count       int
	Left, Right unit.Length
	Turn        bool
}

// BarProblem is what to cut from which bars. Depth is the width across which
// slanted ends are measured; it matters only for them.
type BarProblem struct {
	Kerf, Depth unit.Length
	Bars        []Bar
	Pieces      []Piece
	Aim         Aim // LeastCost or Fewest
}

// BarPiece is one piece in a bar, At its near left corner.
type BarPiece struct {
	ID     string
	At     unit.Length
	Turned bool
}

// BarLayout is one bar with its pieces from left to right.
type BarLayout struct {
	Bar    string
	Pieces []BarPiece
	Rest   unit.Length // usable length left at the right end, behind the last cut
	Cuts   int
}

// BarPlan is a plan with the proved bound on the best one.
type BarPlan struct {
	Objective, Bound float64
	Found, Optimal   bool
	Bars             []BarLayout
	Missing          []Missing
	Steps            int
}

// PlanBars finds the cheapest bars for all pieces, or the fewest; among plans
// of one cost that with the least length bought.
func PlanBars(p BarProblem, e Effort) BarPlan {
	s := newBarSearch(p, e)
	if miss := s.impossible(); len(miss) > 0 {
		return BarPlan{Missing: miss}
	}
	s.run()
	return s.plan()
}

// barSearch is the problem on the grid, with equal pieces joined.
type barSearch struct {
	p      BarProblem
	kerf   grid
	ends   []ends // of each kind of piece
	demand []int
	size   []grid // what a piece takes of a bar at least, one kerf included
	room   []grid // of each bar, one kerf added
	price  []float64
	limit  []int
	step   float64 // all prices are multiples of it; 0: no such unit
	extra  float64 // most that the tie-break adds to a price in sum
	pool   []column
	b      *budget
	slants bool
	fitted map[string]fitting

	best  []column
	cost  float64 // of the best plan, with the tie-break
	bound float64 // on the cost without the tie-break
	whole bool    // nothing was left out of the search
}

func newBarSearch(p BarProblem, e Effort) *barSearch {
	s := &barSearch{p: p, kerf: onGrid(p.Kerf), b: e.budget(), cost: math.Inf(1), whole: true, fitted: map[string]fitting{}}
	most := 0.0
	for _, it := range p.Pieces {
		s.ends = append(s.ends, endsOf(it, p))
		s.demand = append(s.demand, it.Count)
		s.slants = s.slants || it.Left != 0 || it.Right != 0
		most += float64(it.Count)
	}
	for _, x := range s.ends {
		s.size = append(s.size, x.least(s.kerf))
	}
	for _, b := range p.Bars {
		s.room = append(s.room, onGrid(b.Length)+s.kerf)
		s.limit = append(s.limit, b.Count)
		s.price = append(s.price, b.Price)
		if p.Aim == Fewest {
			s.price[len(s.price)-1] = 1
		}
	}
	s.step = coarsest(s.price)
	s.preferShort(most)
	return s
}

// preferShort adds to each price a share for its length, so small that all of
// them together stay below half of the unit of the prices.
func (s *barSearch) preferShort(bars float64) {
	long := slices.Max(append(slices.Clone(s.room), 1))
	if slices.Min(append(slices.Clone(s.room), long)) == long {
		return
	}
	u := s.step
	if u == 0 {
		u = 0.001
	}
	each := u / (2.5 * bars)
	s.extra = u / 2.5
	for i, r := range s.room {
		s.price[i] += each * float64(r) / float64(long)
	}
}

// impossible names the pieces that no bar holds.
func (s *barSearch) impossible() []Missing {
	var out []Missing
	for i, it := range s.p.Pieces {
		if it.Count == 0 {
			continue
		}
		one := make([]int, len(s.demand))
		one[i] = 1
		need := s.fit(one).length
		near, ok := -1, false
		for b, r := range s.room {
			ok = ok || need <= r-s.kerf
			if near < 0 || r > s.room[near] {
				near = b
			}
		}
		switch {
		case ok:
		case near < 0:
			out = append(out, Missing{Item: it.ID, Why: "there are no bars"})
		default:
			out = append(out, Missing{Item: it.ID, Nearest: s.p.Bars[near].ID,
				Why: fmt.Sprintf("%s takes %s, the longest bar %s has %s", it.ID, mm(ofGrid(need)), s.p.Bars[near].ID, mm(s.p.Bars[near].Length))})
		}
	}
	return out
}

// run brackets the optimum: a quick plan, the bound of the linear programme,
// then search.
func (s *barSearch) run() {
	s.greedy()
	s.bound = s.cheap(s.demand)
	if lp, ok := s.relax(s.demand, s.limit); ok {
		if math.IsInf(lp.value, 1) {
			s.bound = math.Inf(1)
			return
		}
		s.bound = max(s.bound, s.proved(lp.duals))
		s.hear()
		if !s.closed(0, s.bound, s.demand) {
			s.dive(lp)
		}
	}
	if s.closed(0, s.bound, s.demand) {
		return
	}
	seen := map[string]float64{}
	s.search(slices.Clone(s.demand), slices.Clone(s.limit), 0, nil, seen)
	if s.whole && !s.b.stopped && s.b.left > 0 {
		s.bound = max(s.bound, s.plain(s.best))
	}
}

func (s *barSearch) hear() {
	s.b.now = Progress{Objective: s.plain(s.best), Bound: s.bound, Found: s.best != nil}
	s.b.tell()
}

// plain is the cost of a plan without the tie-break.
func (s *barSearch) plain(plan []column) float64 {
	var sum float64
	for _, c := range plan {
		if s.p.Aim == Fewest {
			sum++
			continue
		}
		sum += s.p.Bars[c.stock].Price
	}
	return sum
}

// cheap is a bound by length alone: all that is needed, in the bar that gives
// length at the least price.
func (s *barSearch) cheap(demand []int) float64 {
	var need grid
	for i, n := range demand {
		need += grid(n) * s.size[i]
	}
	rate := math.Inf(1)
	for b, r := range s.room {
		if s.limit[b] >= 0 && r > 0 {
			price := s.p.Bars[b].Price
			if s.p.Aim == Fewest {
				price = 1
			}
			rate = min(rate, price/float64(r))
		}
	}
	if need == 0 || math.IsInf(rate, 1) {
		return 0
	}
	return roundUp(rate*float64(need), s.step)
}

// closed says whether a plan that goes on from spent cannot beat the best one.
func (s *barSearch) closed(spent, bound float64, demand []int) bool {
	if s.step > 0 && s.extra == 0 {
		return spent+roundUp(bound, s.step) > s.cost-s.step/2
	}
	low := bound
	if s.step > 0 {
		var need grid
		for i, n := range demand {
			need += grid(n) * s.size[i]
		}
		long := slices.Max(s.room)
		each := s.price[0] - s.base(0)
		each = each * float64(long) / float64(s.room[0])
		low = max(bound, roundUp(bound-s.extra, s.step)+each*float64(need)/float64(long))
	}
	return spent+low > s.cost-1e-9*(1+math.Abs(s.cost))
}

// base is the price of a bar without the tie-break.
func (s *barSearch) base(b int) float64 {
	if s.p.Aim == Fewest {
		return 1
	}
	return s.p.Bars[b].Price
}

// take keeps a plan if it is better than the best so far.
func (s *barSearch) take(plan []column) {
	var cost float64
	for _, c := range plan {
		cost += s.price[c.stock]
	}
	if cost < s.cost-1e-9*(1+math.Abs(cost)) {
		s.cost, s.best = cost, slices.Clone(plan)
		s.hear()
	}
}

// plan writes the best plan out.
func (s *barSearch) plan() BarPlan {
	out := BarPlan{Bound: s.bound, Steps: s.b.spent, Found: s.best != nil}
	if s.best == nil {
		out.Missing = []Missing{s.scarce()}
		return out
	}
	out.Objective = s.plain(s.best)
	out.Bound = min(roundUp(s.bound, s.step), out.Objective)
	out.Optimal = out.Bound > out.Objective-1e-6*(1+out.Objective)
	plan := slices.Clone(s.best)
	slices.SortStableFunc(plan, func(a, b column) int {
		if a.stock != b.stock {
			return a.stock - b.stock
		}
		return slices.Compare(b.counts, a.counts)
	})
	left := slices.Clone(s.demand)
	for _, c := range plan {
		counts := slices.Clone(c.counts)
		for i := range counts {
			counts[i] = min(counts[i], left[i])
			left[i] -= counts[i]
		}
		if slices.Max(append(counts, 0)) > 0 {
			out.Bars = append(out.Bars, s.layout(c.stock, counts))
		}
	}
	return out
}

// scarce says that the bars that are there do not suffice.
func (s *barSearch) scarce() Missing {
	var need, have grid
	for i, n := range s.demand {
		need += grid(n) * s.size[i]
	}
	for b, n := range s.limit {
		have += grid(n) * s.room[b]
	}
	why := fmt.Sprintf("the pieces take at least %s with their cuts, the bars that are there have %s", mm(ofGrid(need)), mm(ofGrid(have)))
	if need <= have {
		why = "no way was found to cut all pieces from the bars that are there"
		if math.IsInf(s.bound, 1) || s.whole && s.b.left > 0 {
			why = "the bars that are there do not yield all pieces, however they are cut"
		}
	}
	return Missing{Why: why}
}
