package saw

import "math"

// priced is a bound by prices on the limits (Lagrange multipliers): items lose
// what their limit is charged, the unlimited problem is solved, the charges are
// paid back once for every piece that is allowed.
type priced struct {
	worth []float64 // of each item, less its charge
	paid  float64   // all charges
	rest  []float64 // plane.beside at these worths
}

// limited is the most value out of one sheet with limits on the items.
type limited struct {
	p      *plane
	value  []float64
	limit  []int // 0: any number
	stages int
	b      *budget
	best   []spot
	have   float64
	bounds []priced
	bound  float64
	step   float64
}

// counts gives how many of each item a layout holds.
func (q *limited) counts(list []spot) []int {
	n := make([]int, len(q.value))
	for _, s := range list {
		n[q.p.shapes[s.shape].item]++
	}
	return n
}

// take keeps a layout after dropping what goes beyond the limits.
func (q *limited) take(list []spot) {
	n := make([]int, len(q.value))
	var kept []spot
	var v float64
	for _, s := range list {
		i := q.p.shapes[s.shape].item
		if n[i]++; q.limit[i] == 0 || n[i] <= q.limit[i] {
			kept, v = append(kept, s), v+q.value[i]
		}
	}
	if v > q.have+1e-9 {
		q.have, q.best = v, kept
		q.hear()
	}
}

func (q *limited) hear() {
	q.b.now = Progress{Objective: q.have, Bound: q.bound, Found: true}
	q.b.tell()
}

// charge lowers the bound by moving the charges along the subgradient, and keeps
// the charges of the lowest one. It ends when the bound is reached or rounds
// have passed.
func (q *limited) charge(rounds int) {
	n := len(q.value)
	charge, best := make([]float64, n), make([]float64, n)
	low, pace, still := math.Inf(1), 1.0, 0
	worth := make([]float64, n)
	for range rounds {
		paid := 0.0
		for i := range worth {
			worth[i] = q.value[i] - charge[i]
			paid += charge[i] * float64(q.limit[i])
		}
		q.p.solve(worth)
		if v := q.p.whole() + paid; v < low-1e-9 {
			low, still = v, 0
			copy(best, charge)
		} else if still++; still == 5 {
			pace, still = pace/2, 0
			copy(charge, best)
		}
		list := q.p.trace(q.p.x.n()-1, q.p.y.n()-1, 0, 0, worth, nil)
		if q.stages == 0 {
			q.take(list)
		}
		q.bound = min(q.bound, q.down(low))
		used := q.counts(list)
		norm := 0.0
		grad := make([]float64, n)
		for i, l := range q.limit {
			if l == 0 {
				continue
			}
			grad[i] = float64(used[i] - l)
			if grad[i] < 0 && charge[i] == 0 {
				grad[i] = 0
			}
			norm += grad[i] * grad[i]
		}
		if norm == 0 || q.have >= q.bound-1e-9 || pace < 0.01 || !q.b.spend(1+q.p.effort()/20_000) {
			break
		}
		step := pace * (q.p.whole() + paid - q.have*0.999) / norm
		for i := range charge {
			charge[i] = max(0, min(q.value[i], charge[i]+step*grad[i]))
		}
	}
	if q.have < q.bound-1e-9 {
		q.remember(best)
	}
}

// remember makes a bound for parts of layouts from charges.
func (q *limited) remember(charge []float64) {
	d := priced{worth: make([]float64, len(charge))}
	for i := range charge {
		d.worth[i] = q.value[i] - charge[i]
		d.paid += charge[i] * float64(q.limit[i])
	}
	q.p.all()
	q.p.solve(d.worth)
	d.rest = q.p.beside()
	q.bounds = append(q.bounds, d)
}

// down lowers a bound to the next multiple of the unit of all values.
func (q *limited) down(v float64) float64 {
	if q.step == 0 {
		return v
	}
	return math.Floor(v/q.step+1e-6) * q.step
}
