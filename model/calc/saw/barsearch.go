package saw

import (
	"fmt"
	"math"
	"slices"
)

// relaxed is the solved linear programme of what is left to cut.
type relaxed struct {
	value float64
	duals []float64
	used  map[int]float64
}

// relax solves the linear programme over patterns.
func (s *barSearch) relax(demand, limit []int) (relaxed, bool) {
	m := newMaster(s.price, limit, demand, &s.pool)
	value, short := m.solve(func(b int, y []float64) *column { return s.worthiest(b, demand, y) }, 4000)
	if short || !s.b.spend(20) {
		return relaxed{}, false
	}
	return relaxed{value, m.duals(), m.used()}, true
}

// scale makes prices whole numbers for the knapsack.
const scale = 1 << 30

func (s *barSearch) sack(b int, demand []int, y []float64) sack {
	profit := make([]int64, len(demand))
	top := 0.0
	for _, p := range s.price {
		top = max(top, p)
	}
	for i := range demand {
		profit[i] = int64(y[i] / (top + tiny) * scale)
	}
	k := sack{profit: profit, size: s.size, limit: demand, room: s.room[b]}
	if s.slants {
		k.may = func(counts []int) bool { return s.fit(counts).length <= s.room[b]-s.kerf }
	}
	return k
}

// worthiest is the pattern of a bar that is worth most.
func (s *barSearch) worthiest(b int, demand []int, y []float64) *column {
	worth, counts, exact := s.sack(b, demand, y).fill()
	if !exact {
		s.whole = false
	}
	if worth <= 0 {
		return nil
	}
	return &column{b, counts}
}

// proved is a bound on the cost of a whole plan from prices of the pieces. It
// is computed in whole numbers, so that no rounding can lift it: a plan costs at
// least what its pieces are worth, less what any bar yields beyond its price.
func (s *barSearch) proved(y []float64) float64 {
	top := 0.0
	for _, p := range s.price {
		top = max(top, p)
	}
	unit := (top + tiny) / scale
	most := make([]float64, len(s.price))
	shrink := 1.0
	var profit []int64
	for b := range s.price {
		k := s.sack(b, s.demand, y)
		k.may = nil
		profit = k.profit
		for i := range profit {
			profit[i] = max(profit[i], 0)
		}
		worth, _, exact := k.fill()
		if !exact {
			return 0
		}
		most[b] = float64(worth) * unit
		if s.limit[b] == 0 && most[b] > 0 {
			shrink = min(shrink, s.base(b)/most[b])
		}
	}
	var sum float64
	for i, n := range s.demand {
		sum += float64(n) * float64(profit[i]) * unit * shrink
	}
	for b, w := range most {
		if s.limit[b] > 0 {
			sum -= float64(s.limit[b]) * max(0, w*shrink-s.base(b))
		}
	}
	return roundUp(sum*(1-1e-12), s.step)
}

// greedy fills bar after bar as full as it goes, trying each stock.
func (s *barSearch) greedy() {
	for _, pick := range []func(demand, limit []int) *column{s.fullest, s.firstFit} {
		demand, limit := slices.Clone(s.demand), slices.Clone(s.limit)
		var plan []column
		for some(demand) {
			c := pick(demand, limit)
			if c == nil {
				break
			}
			plan = append(plan, *c)
			use(c, demand, limit)
		}
		if !some(demand) {
			s.pool = append(s.pool, plan...)
			s.take(plan)
		}
	}
}

func some(list []int) bool { return slices.Max(append(list, 0)) > 0 }

// use takes a pattern out of what is wanted and what is there.
func use(c *column, demand, limit []int) {
	for i, n := range c.counts {
		demand[i] -= n
	}
	switch limit[c.stock] {
	case 0:
	case 1:
		limit[c.stock] = -1
	default:
		limit[c.stock]--
	}
}

// fullest is the pattern with the least price for the length it uses; long
// pieces count a little more than their length.
func (s *barSearch) fullest(demand, limit []int) *column {
	var out *column
	rate := math.Inf(1)
	long := float64(slices.Max(s.size))
	for b := range s.room {
		if limit[b] < 0 {
			continue
		}
		k := s.sack(b, demand, make([]float64, len(demand)))
		for i, z := range s.size {
			k.profit[i] = int64(float64(z) * (1 + 0.05*float64(z)/long))
		}
		worth, counts, _ := k.fill()
		if worth > 0 && s.price[b]/float64(worth) < rate {
			rate, out = s.price[b]/float64(worth), &column{b, counts}
		}
	}
	return out
}

// firstFit opens the bar with the best rate and fills the longest pieces in.
func (s *barSearch) firstFit(demand, limit []int) *column {
	var out *column
	rate := math.Inf(1)
	for b := range s.room {
		if limit[b] < 0 {
			continue
		}
		c := s.longest(b, demand)
		var full grid
		for i, n := range c.counts {
			full += grid(n) * s.size[i]
		}
		if full > 0 && s.price[b]/float64(full) < rate {
			rate, out = s.price[b]/float64(full), c
		}
	}
	return out
}

func (s *barSearch) longest(b int, demand []int) *column {
	c := &column{b, make([]int, len(demand))}
	room := s.room[b]
	for _, i := range s.longestFirst() {
		for c.counts[i] < demand[i] && s.size[i] <= room {
			c.counts[i]++
			if s.slants && s.fit(c.counts).length > s.room[b]-s.kerf {
				c.counts[i]--
				break
			}
			room -= s.size[i]
		}
	}
	return c
}

// dive rounds the linear programme: what it cuts whole is kept, then its
// fullest pattern, and the rest is solved again.
func (s *barSearch) dive(lp relaxed) {
	demand, limit := slices.Clone(s.demand), slices.Clone(s.limit)
	var plan []column
	for some(demand) {
		best, most := -1, 0.0
		for _, k := range sorted(lp.used) {
			x := lp.used[k]
			for n := 0; n < int(x+1e-6); n++ {
				c := s.pool[k]
				if limit[c.stock] < 0 || !within(c.counts, demand) {
					break
				}
				plan = append(plan, c)
				use(&c, demand, limit)
			}
			if f := x - math.Floor(x+1e-6); f > most && within(s.pool[k].counts, demand) && limit[s.pool[k].stock] >= 0 {
				best, most = k, f
			}
		}
		if best >= 0 && within(s.pool[best].counts, demand) && limit[s.pool[best].stock] >= 0 {
			c := s.pool[best]
			plan = append(plan, c)
			use(&c, demand, limit)
		}
		if !some(demand) {
			break
		}
		var ok bool
		if lp, ok = s.relax(demand, limit); !ok || math.IsInf(lp.value, 1) {
			return
		}
	}
	s.take(plan)
}

func sorted(m map[int]float64) []int {
	var keys []int
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// mostChoices bounds the patterns that are tried for one piece.
const mostChoices = 20_000

// search tries, for the longest piece that is left, every pattern that holds it
// and has no room for more, and goes on with the rest.
func (s *barSearch) search(demand, limit []int, spent float64, plan []column, seen map[string]float64) {
	if !some(demand) {
		s.take(plan)
		return
	}
	if !s.b.spend(1) || s.closed(spent, s.cheap(demand), demand) {
		return
	}
	key := fmt.Sprint(demand, limit)
	if was, ok := seen[key]; ok && was <= spent+1e-12 {
		return
	}
	seen[key] = spent
	lp, ok := s.relax(demand, limit)
	if !ok {
		s.whole = false
		return
	}
	if math.IsInf(lp.value, 1) || s.closed(spent, lp.value-1e-7*(1+lp.value), demand) {
		return
	}
	for _, c := range s.choices(demand, limit, lp) {
		d, l := slices.Clone(demand), slices.Clone(limit)
		use(&c, d, l)
		s.search(d, l, spent+s.price[c.stock], append(slices.Clone(plan), c), seen)
		if s.b.left <= 0 || s.b.stopped || s.closed(spent, lp.value-1e-7*(1+lp.value), demand) {
			return
		}
	}
}

// choices lists the full patterns with the longest piece that is left: those of
// the linear programme first, then the fullest.
func (s *barSearch) choices(demand, limit []int, lp relaxed) []column {
	pivot := 0
	for _, i := range s.longestFirst() {
		if demand[i] > 0 {
			pivot = i
			break
		}
	}
	weight := map[string]float64{}
	for k, x := range lp.used {
		weight[key(s.pool[k])] += x
	}
	var out []column
	for b := range s.room {
		if limit[b] < 0 {
			continue
		}
		full := lister{s: s, bar: b, demand: demand, now: make([]int, len(demand)), order: s.longestFirst()}
		full.now[pivot] = 1
		if s.slants && s.fit(full.now).length > s.room[b]-s.kerf || s.size[pivot] > s.room[b] {
			continue
		}
		full.walk(0, s.room[b]-s.size[pivot])
		out = append(out, full.out...)
		if len(full.out) >= mostChoices {
			s.whole = false
		}
	}
	waste := func(c column) float64 {
		w := s.room[c.stock]
		for i, n := range c.counts {
			w -= grid(n) * s.size[i]
		}
		return float64(w) / float64(s.room[c.stock])
	}
	slices.SortStableFunc(out, func(a, b column) int {
		x, y := weight[key(a)], weight[key(b)]
		switch wa, wb := waste(a), waste(b); {
		case x > y:
			return -1
		case x < y:
			return 1
		case wa < wb:
			return -1
		case wa > wb:
			return 1
		}
		return 0
	})
	return out
}

func key(c column) string { return fmt.Sprint(c.stock, c.counts) }

// lister lists the patterns of a bar that have no room for more.
type lister struct {
	s      *barSearch
	bar    int
	demand []int
	now    []int
	order  []int
	out    []column
}

func (l *lister) walk(k int, room grid) {
	if len(l.out) >= mostChoices {
		return
	}
	if k == len(l.order) {
		if l.full(room) {
			l.out = append(l.out, column{l.bar, slices.Clone(l.now)})
		}
		return
	}
	i := l.order[k]
	was := l.now[i]
	n := was
	for n < l.demand[i] && grid(n-was+1)*l.s.size[i] <= room {
		n++
	}
	for ; n >= was; n-- {
		l.now[i] = n
		if n > was && l.s.slants && l.s.fit(l.now).length > l.s.room[l.bar]-l.s.kerf {
			continue
		}
		l.walk(k+1, room-grid(n-was)*l.s.size[i])
	}
	l.now[i] = was
}

// full says whether nothing that is wanted goes in beside what is there.
func (l *lister) full(room grid) bool {
	for i, n := range l.demand {
		if l.now[i] >= n || l.s.size[i] > room {
			continue
		}
		if !l.s.slants {
			return false
		}
		l.now[i]++
		ok := l.s.fit(l.now).length <= l.s.room[l.bar]-l.s.kerf
		l.now[i]--
		if ok {
			return false
		}
	}
	return true
}
