package saw

import "math"

// column is one pattern: a stock and how many of each item come out of it.
type column struct {
	stock  int
	counts []int
}

// master is the linear programme over patterns: least price so that every item
// is made and no stock is used more often than there is. Columns come from a
// pool and from a function that prices new ones. Revised simplex with a dense
// inverse; rows are the items, then the stocks with a limit.
type master struct {
	price  []float64 // of each stock
	limit  []int     // of each stock, 0: none
	row    []int     // of each stock with a limit, -1 without
	demand []int
	rows   int
	big    float64
	basis  []basic
	inv    [][]float64
	x      []float64
	cost   []float64
	pool   *[]column
	fits   []int // patterns of the pool that do not make more than is wanted
}

// basic is a column of the basis: a pattern, or a unit column of a row.
type basic struct {
	pattern int // index in the pool, -1 for a unit column
	row     int
	sign    float64 // of the unit column
	missing bool    // an artificial column: the item is not made
}

const tiny = 1e-9

// newMaster starts from the empty plan, in which every item is missing at a
// price beyond all others.
func newMaster(price []float64, limit, demand []int, pool *[]column) *master {
	m := &master{price: price, limit: limit, demand: demand, pool: pool, rows: len(demand)}
	m.row = make([]int, len(price))
	for s := range price {
		m.row[s] = -1
		m.big = max(m.big, price[s])
		if limit[s] > 0 {
			m.row[s] = m.rows
			m.rows++
		}
	}
	m.big = 1 + 100*m.big
	for k, c := range *pool {
		if limit[c.stock] >= 0 && within(c.counts, demand) {
			m.fits = append(m.fits, k)
		}
	}
	m.inv = make([][]float64, m.rows)
	m.x = make([]float64, m.rows)
	m.cost = make([]float64, m.rows)
	m.basis = make([]basic, m.rows)
	for r := range m.rows {
		m.inv[r] = make([]float64, m.rows)
		m.inv[r][r] = 1
		m.basis[r] = basic{pattern: -1, row: r, sign: 1}
		if r < len(demand) {
			m.x[r], m.cost[r], m.basis[r].missing = float64(demand[r]), m.big, true
		}
	}
	for s, r := range m.row {
		if r >= 0 {
			m.x[r] = float64(limit[s])
		}
	}
	return m
}

// duals prices the rows.
func (m *master) duals() []float64 {
	y := make([]float64, m.rows)
	for r, c := range m.cost {
		if c == 0 {
			continue
		}
		for k, v := range m.inv[r] {
			y[k] += c * v
		}
	}
	return y
}

// reduced is the reduced cost of a pattern.
func (m *master) reduced(c column, y []float64) float64 {
	v := m.price[c.stock]
	if r := m.row[c.stock]; r >= 0 {
		v -= y[r]
	}
	for i, n := range c.counts {
		if n > 0 {
			v -= y[i] * float64(n)
		}
	}
	return v
}

// direction is the inverse times a column.
func (m *master) direction(b basic) []float64 {
	d := make([]float64, m.rows)
	if b.pattern < 0 {
		for r := range d {
			d[r] = b.sign * m.inv[r][b.row]
		}
		return d
	}
	c := (*m.pool)[b.pattern]
	for r := range d {
		var v float64
		for i, n := range c.counts {
			if n > 0 {
				v += m.inv[r][i] * float64(n)
			}
		}
		if k := m.row[c.stock]; k >= 0 {
			v += m.inv[r][k]
		}
		d[r] = v
	}
	return d
}

// enter brings a column into the basis; false if the programme is unbounded.
func (m *master) enter(b basic, cost float64) bool {
	d := m.direction(b)
	out, best := -1, math.Inf(1)
	for r, v := range d {
		if v <= tiny {
			continue
		}
		t := m.x[r] / v
		if t < best-tiny || t < best+tiny && (out < 0 || m.basis[r].missing && !m.basis[out].missing || d[r] > d[out] && m.basis[r].missing == m.basis[out].missing) {
			out, best = r, min(t, best)
		}
	}
	if out < 0 {
		return false
	}
	best = m.x[out] / d[out]
	p := d[out]
	for k := range m.inv[out] {
		m.inv[out][k] /= p
	}
	for r, v := range d {
		if r == out || v == 0 {
			continue
		}
		m.x[r] = max(m.x[r]-best*v, 0)
		for k, w := range m.inv[out] {
			if w != 0 {
				m.inv[r][k] -= v * w
			}
		}
	}
	m.x[out], m.basis[out], m.cost[out] = best, b, cost
	return true
}

// pricer finds the pattern of a stock that is worth most at the prices of the
// items; it gives nil where it knows of none.
type pricer func(stock int, y []float64) *column

// solve works to the optimum of the programme over all patterns that the
// pricer can find, and gives its value; +Inf if an item cannot be made. most
// bounds the number of pivots; short is true if it was not enough.
func (m *master) solve(price pricer, most int) (value float64, short bool) {
	for range most {
		y := m.duals()
		if !m.improve(price, y) {
			for r, b := range m.basis {
				if b.missing && m.x[r] > 1e-6 {
					return math.Inf(1), false
				}
				value += m.cost[r] * m.x[r]
			}
			return value, false
		}
	}
	return 0, true
}

// improve brings the best column in and is false at the optimum.
func (m *master) improve(price pricer, y []float64) bool {
	best, enter, cost := -1e-7, basic{pattern: -2}, 0.0
	for i := range m.demand {
		if y[i] < best {
			best, enter = y[i], basic{pattern: -1, row: i, sign: -1}
		}
	}
	for _, r := range m.row {
		if r >= 0 && -y[r] < best {
			best, enter = -y[r], basic{pattern: -1, row: r, sign: 1}
		}
	}
	for _, k := range m.fits {
		c := (*m.pool)[k]
		if v := m.reduced(c, y); v < best {
			best, enter, cost = v, basic{pattern: k}, m.price[c.stock]
		}
	}
	if enter.pattern == -2 {
		for s := range m.price {
			if m.limit[s] < 0 {
				continue
			}
			if c := price(s, y); c != nil {
				if v := m.reduced(*c, y); v < best {
					*m.pool = append(*m.pool, *c)
					m.fits = append(m.fits, len(*m.pool)-1)
					best, enter, cost = v, basic{pattern: len(*m.pool) - 1}, m.price[s]
				}
			}
		}
	}
	return enter.pattern != -2 && m.enter(enter, cost)
}

// used gives the patterns of the solution with how often each is cut.
func (m *master) used() map[int]float64 {
	out := map[int]float64{}
	for r, b := range m.basis {
		if b.pattern >= 0 && m.x[r] > tiny {
			out[b.pattern] += m.x[r]
		}
	}
	return out
}

// within says whether no count is above its limit.
func within(counts, limit []int) bool {
	for i, n := range counts {
		if n > limit[i] {
			return false
		}
	}
	return true
}
