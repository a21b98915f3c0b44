package saw

import (
	"fmt"
	"math"
	"slices"
)

// many plans for more parts than can be searched one by one: quick layouts by
// rules, then exact patterns in a linear programme over patterns, rounded. Its
// bound is that of the linear programme and of the areas.
func (s *sheetSearch) many() Plan {
	m := &manySheets{sheetSearch: s, cost: math.Inf(1), leaves: leavesOf(s.parts)}
	for k := range s.boards {
		m.step = append(m.step, s.quickStep(k))
		m.plain = append(m.plain, s.boards[k].straight && s.boards[k].whole)
		m.price = append(m.price, s.boards[k].price)
		m.limit = append(m.limit, s.boards[k].count)
	}
	m.bound = roundUp(m.byArea(s.demand), s.step)
	for _, next := range []func(){m.quick, m.filled, m.columns} {
		if !m.over() {
			next()
		}
	}
	return m.plan()
}

type manySheets struct {
	*sheetSearch
	leaves []leaf
	step   []grid // raster of each board
	plain  []bool
	price  []float64
	limit  []int
	best   []cutBoard
	cost   float64
	area   float64
	cuts   int
	bound  float64
	pool   []column
	places map[string][]located // of patterns
}

// cutBoard is one board with its places.
type cutBoard struct {
	kind int
	list []located
}

func (m *manySheets) closed() bool { return m.best != nil && m.bound > m.cost-1e-6*(1+m.cost) }

// over says whether nothing is left to search for, or to search with.
func (m *manySheets) over() bool { return m.closed() || m.b.left <= 0 || m.b.stopped }

// byArea is the least cost by area alone: boards that give area at the least
// price first, as far as they go.
func (m *manySheets) byArea(demand []int) float64 {
	var need float64
	for i, n := range demand {
		need += float64(max(n, 0)) * m.parts[i].area
	}
	order := make([]int, len(m.boards))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := m.boards[i].price*m.boards[j].area, m.boards[j].price*m.boards[i].area
		switch {
		case a < b:
			return -1
		case a > b:
			return 1
		}
		return 0
	})
	cost := 0.0
	for _, k := range order {
		b := m.boards[k]
		most := need
		if b.count > 0 {
			most = min(need, float64(b.count)*b.area)
		}
		cost += most / b.area * b.price
		need -= most
	}
	return cost
}

// take keeps a plan that makes everything if it is better.
func (m *manySheets) take(plan []cutBoard) {
	var cost, area float64
	for _, c := range plan {
		cost += m.boards[c.kind].price
		area += m.boards[c.kind].area
	}
	if cost > m.cost+1e-9 || cost > m.cost-1e-9 && area > m.area-1 {
		return
	}
	for _, c := range plan {
		if _, ok := m.layout(c.kind, c.list, m.leaves); !ok {
			return
		}
	}
	m.best, m.cost, m.area = plan, cost, area
	m.hear()
}

func (m *manySheets) hear() {
	m.b.now = Progress{Objective: m.cost, Bound: m.bound, Found: m.best != nil}
	m.b.tell()
}

// greedily fills board after board, each time the one that gives most area for
// its price, times the taste for it, by the given way to fill; the last is the cheapest that holds the rest.
func (m *manySheets) greedily(taste []float64, fill func(k int, left []int) []located) []cutBoard {
	left, stock := slices.Clone(m.demand), slices.Clone(m.limit)
	var plan []cutBoard
	for some(left) {
		var best cutBoard
		rate, last := -1.0, math.Inf(1)
		for k, b := range m.boards {
			if stock[k] < 0 {
				continue
			}
			list := fill(k, left)
			r := m.worth(list) / max(b.price, tiny)
			if taste != nil {
				r *= taste[k]
			}
			if len(list) == sum(left) && b.price < last {
				best, rate, last = cutBoard{k, list}, math.Inf(1), b.price
			} else if len(list) > 0 && r > rate {
				best, rate = cutBoard{k, list}, r
			}
		}
		if rate < 0 {
			return nil
		}
		plan = append(plan, best)
		c := column{best.kind, m.made(best.list)}
		use(&c, left, stock)
		if !m.b.spend(len(m.boards)) {
			return nil
		}
	}
	return plan
}

// worth is the area of parts.
func (m *manySheets) worth(list []located) float64 {
	var area float64
	for _, l := range list {
		area += m.parts[m.leaves[l.leaf].part].area
	}
	return area
}

func (m *manySheets) made(list []located) []int {
	n := make([]int, len(m.demand))
	for _, l := range list {
		n[m.leaves[l.leaf].part]++
	}
	return n
}

// learn keeps the patterns of a plan for the linear programme.
func (m *manySheets) learn(plan []cutBoard) {
	if m.places == nil {
		m.places = map[string][]located{}
	}
	for _, c := range plan {
		col := column{c.kind, m.made(c.list)}
		if _, ok := m.places[key(col)]; !ok && len(m.pool) < mostPatterns {
			m.places[key(col)] = c.list
			m.pool = append(m.pool, col)
		}
	}
}

// mostPatterns bounds the patterns that are kept of plans.
const mostPatterns = 1500

// filled fills plain boards exactly, one after the other.
func (m *manySheets) filled() {
	if m.p.Stages > 0 || slices.Contains(m.plain, false) || m.natural() {
		return
	}
	large := m.parts[m.largest()]
	for _, taste := range tastesOfParts {
		value := make([]float64, len(m.parts))
		for i, p := range m.parts {
			value[i] = p.area * (1 + taste.area*math.Sqrt(p.area/large.area) + taste.long*float64(max(p.l, p.high()))/float64(max(large.l, large.high())))
		}
		plan := m.greedily(nil, func(k int, left []int) []located { return m.fillBoard(k, left, value) })
		if plan != nil {
			m.take(plan)
			m.learn(plan)
		}
		if m.over() {
			return
		}
	}
}

// tastesOfParts make large or long parts a little more welcome in the first
// boards: what is awkward comes first.
var tastesOfParts = []struct{ area, long float64 }{{0.02, 0}, {0, 0}, {0.1, 0}, {0, 0.1}, {0.3, 0}, {0, 0.3}, {0.1, 0.2}}

func (m *manySheets) natural() bool {
	return slices.ContainsFunc(m.leaves, func(f leaf) bool { return f.low || f.high })
}

func (m *manySheets) largest() int {
	best := 0
	for i, p := range m.parts {
		if p.area > m.parts[best].area {
			best = i
		}
	}
	return best
}

// fillRounds bounds the work on one pattern.
const fillRounds = 15

// fillBoard is a good layout of one plain board.
func (m *manySheets) fillBoard(k int, left []int, value []float64) []located {
	gone := gone(left)
	on := m.onRaster(k, gone, m.step[k], true)
	if len(on.leaves) == 0 {
		return nil
	}
	q := m.limited(on, gone, value, m.aside())
	q.close(fillRounds)
	return m.located(k, q, on)
}

// gone marks what is made: 0 would mean any number.
func gone(left []int) []int {
	out := slices.Clone(left)
	for i, n := range out {
		if n == 0 {
			out[i] = -1
		}
	}
	return out
}

// located turns a layout on a raster into places on the board.
func (m *manySheets) located(k int, q *limited, on scaled) []located {
	var out []located
	for _, sp := range q.best {
		n := slices.Index(m.leaves, on.leaves[sp.shape])
		out = append(out, located{n, m.boards[k].in.x0 + sp.x*on.step, m.boards[k].in.y0 + sp.y*on.step})
	}
	return out
}

// asideSteps bounds the search for one pattern.
const asideSteps = 1200

// aside is a budget for a search inside this one, which takes its steps from it.
func (m *manySheets) aside() *budget {
	m.b.spend(1)
	return &budget{left: asideSteps}
}

// plan writes the best plan out.
func (m *manySheets) plan() Plan {
	out := Plan{Bound: m.bound, Steps: m.b.spent, Found: m.best != nil, Objective: m.cost}
	if m.best == nil {
		out.Objective = 0
		out.Missing = []Missing{m.scarce(false)}
		return out
	}
	out.Bound = min(out.Bound, m.cost)
	out.Optimal = m.closed()
	for _, c := range m.best {
		lay, ok := m.layout(c.kind, c.list, m.leaves)
		if !ok {
			panic(fmt.Sprintf("saw: a layout on %s that no saw cuts", m.p.Sheets[c.kind].ID))
		}
		out.Layouts = append(out.Layouts, lay)
	}
	return out
}
