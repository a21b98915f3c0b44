package saw

import (
	"math"
	"slices"
)

// columns solves the linear programme over patterns and rounds it.
func (m *manySheets) columns() {
	exact := m.p.Stages == 0 && !slices.Contains(m.plain, false) && !m.natural()
	lp := newMaster(m.price, m.limit, m.demand, &m.pool)
	price := func(k int, y []float64) *column { return nil }
	if exact {
		price = func(k int, y []float64) *column { return m.worthiest(k, m.demand, y) }
	}
	value, short := lp.solve(price, 400)
	m.bound = max(m.bound, roundUp(m.proved(lp.duals()), m.sheetSearch.step))
	m.hear()
	if short || math.IsInf(value, 1) {
		return
	}
	m.dive(lp.used(), price, exact)
}

// worthiest is a pattern of a board that is worth much at the prices of the
// parts.
func (m *manySheets) worthiest(k int, demand []int, y []float64) *column {
	if m.b.left <= 0 || m.b.stopped {
		return nil
	}
	worth := y[:len(m.parts)]
	list := m.fillBoard(k, demand, worth)
	if len(list) == 0 {
		return nil
	}
	c := column{k, m.made(list)}
	m.places[key(c)] = list
	return &c
}

// proved is a bound from prices of the parts: a plan costs at least what its
// parts are worth, less what any board can yield beyond its price. What a board
// can yield is bounded on the rectangle around it, with sizes rounded down.
func (m *manySheets) proved(y []float64) float64 {
	worth := make([]float64, len(m.parts))
	var all float64
	for i, n := range m.demand {
		worth[i] = max(0, y[i])
		all += float64(n) * worth[i]
	}
	most, shrink := make([]float64, len(m.boards)), 1.0
	for k, b := range m.boards {
		on := m.onRaster(k, m.demand, m.step[k], false)
		if len(on.leaves) == 0 {
			continue
		}
		q := m.limited(on, m.demand, worth, m.aside())
		q.step = 0
		q.charge(4 * fillRounds)
		most[k] = q.bound * (1 + 1e-9)
		if b.count == 0 && most[k] > 0 {
			shrink = min(shrink, b.price/most[k])
		}
	}
	all *= shrink
	for k, b := range m.boards {
		if b.count > 0 {
			all -= float64(b.count) * max(0, most[k]*shrink-b.price)
		}
	}
	return all
}

// dive rounds the linear programme down, takes its fullest pattern in, and
// solves what is left again.
func (m *manySheets) dive(used map[int]float64, price pricer, exact bool) {
	left, stock := slices.Clone(m.demand), slices.Clone(m.limit)
	var plan []cutBoard
	for some(left) {
		best, most := -1, 0.0
		for _, k := range sorted(used) {
			for n := 0; n < int(used[k]+1e-6) && m.usable(k, left, stock); n++ {
				plan = append(plan, cutBoard{m.pool[k].stock, m.places[key(m.pool[k])]})
				use(&m.pool[k], left, stock)
			}
			if f := used[k] - math.Floor(used[k]+1e-6); f > most && m.usable(k, left, stock) {
				best, most = k, f
			}
		}
		if best >= 0 && m.usable(best, left, stock) {
			plan = append(plan, cutBoard{m.pool[best].stock, m.places[key(m.pool[best])]})
			use(&m.pool[best], left, stock)
		}
		if !some(left) {
			break
		}
		lp := newMaster(m.price, stock, left, &m.pool)
		next := func(k int, y []float64) *column { return nil }
		if exact {
			next = func(k int, y []float64) *column { return m.worthiest(k, left, y) }
		}
		value, short := lp.solve(next, 60)
		if short || math.IsInf(value, 1) {
			return
		}
		if used = lp.used(); len(used) == 0 {
			return
		}
	}
	m.take(plan)
}

func (m *manySheets) usable(k int, left, stock []int) bool {
	c := m.pool[k]
	return stock[c.stock] >= 0 && within(c.counts, left)
}
