package saw

import (
	"math"
	"slices"
)

// quick tries the rules, then changes in the order of the best of them, always
// the same ones.
func (m *manySheets) quick() {
	best, score := rule{}, math.Inf(1)
	try := func(r rule) {
		plan := m.greedily(r.taste, func(k int, left []int) []located { return m.pack(k, left, m.leaves, r) })
		if plan == nil {
			return
		}
		m.take(plan)
		m.learn(plan)
		if v := m.score(plan); v <= score {
			best, score = r, v
		}
	}
	for _, r := range m.rules(m.leaves) {
		try(r)
		if m.over() {
			return
		}
	}
	number := uint64(1)
	for range shuffles {
		if m.over() || best.order == nil {
			return
		}
		r := rule{slices.Clone(best.order), best.cross, slices.Clone(best.taste)}
		for range 2 {
			number = scatter(number)
			i, j := int(number%uint64(len(r.order))), int(number>>32%uint64(len(r.order)))
			r.order[i], r.order[j] = r.order[j], r.order[i]
		}
		if number>>58&3 == 0 {
			r.taste = m.tastes(number)
		}
		if number>>60 == 0 {
			r.cross = (r.cross + 1) % 3
		}
		try(r)
	}
}

// tastes makes some boards a little more welcome than others.
func (m *manySheets) tastes(number uint64) []float64 {
	out := make([]float64, len(m.boards))
	for k := range out {
		number = scatter(number)
		out[k] = 0.8 + 0.4*float64(number>>32)/(1<<32)
	}
	return out
}

// shuffles bounds the changes of order that are tried.
const shuffles = 1500

// score is the cost of a plan, a little less the more unevenly its boards are
// filled: an empty board is nearer to being spared.
func (m *manySheets) score(plan []cutBoard) float64 {
	cost, fill, price := 0.0, 0.0, 0.0
	for _, c := range plan {
		b := m.boards[c.kind]
		f := m.worth(c.list) / b.area
		cost, price, fill = cost+b.price, max(price, b.price), fill+f*f*b.price
	}
	return cost - 0.5*price*fill/cost
}
