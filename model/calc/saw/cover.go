package saw

import "math"

// cover finds the cheapest boards that together yield everything, by dynamic
// programming over selections: least cost, then least area, then fewest boards.
type cover struct {
	states
	boards []board
	yields func(board, state int) bool
}

// bill is what a selection costs at least.
type bill struct {
	cost, area float64
	boards     int
	kind       int // the last board; -1: none
	part       int // what it yields
	before     *bill
}

func (b *bill) less(o *bill) bool {
	const same = 1e-9
	switch {
	case o == nil:
		return true
	case math.Abs(b.cost-o.cost) > same*(1+math.Abs(o.cost)):
		return b.cost < o.cost
	case math.Abs(b.area-o.area) > 1:
		return b.area < o.area
	}
	return b.boards < o.boards
}

// cheapest gives the bill of everything, nil where the boards do not suffice.
func (c cover) cheapest() *bill {
	best := make([]*bill, c.n)
	best[0] = &bill{kind: -1}
	for k, b := range c.boards {
		var yields []bool
		for state := range c.n {
			yields = append(yields, state > 0 && c.yields(k, state))
		}
		if b.count == 0 {
			c.layer(best, best, k, yields)
			continue
		}
		for range min(b.count, sum(c.demand)) {
			next := append([]*bill(nil), best...)
			if !c.layer(next, best, k, yields) {
				break
			}
			best = next
		}
	}
	return best[c.full()]
}

func sum(list []int) (n int) {
	for _, v := range list {
		n += v
	}
	return n
}

// layer adds one board of a kind where that is cheaper; with next and before the
// same it may be added again and again.
func (c cover) layer(next, before []*bill, kind int, yields []bool) (changed bool) {
	try := func(state, part int) {
		from := before[state-part]
		if !yields[part] || from == nil {
			return
		}
		n := bill{from.cost + c.boards[kind].price, from.area + c.boards[kind].area, from.boards + 1, kind, part, from}
		if n.less(next[state]) {
			next[state], changed = &n, true
		}
	}
	for state := 1; state < c.n; state++ {
		c.within(state, func(part int) { try(state, part) })
		try(state, state)
	}
	return changed
}

// used lists the boards of a bill, kinds in order, with what each yields.
func (b *bill) used() (kinds, parts []int) {
	for ; b != nil && b.kind >= 0; b = b.before {
		kinds, parts = append([]int{b.kind}, kinds...), append([]int{b.part}, parts...)
	}
	return kinds, parts
}
