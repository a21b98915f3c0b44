package survey

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// most is how many rounds an adjustment may take.
const most = 30

// task is a least-squares task: make the sum of squares of the misses least.
type task interface {
	// dims gives the number of rows and of unknowns.
	dims() (rows, unknowns int)
	// linear writes the weighted derivatives of every row and its weighted
	// miss, (observed - computed)/sd, at the values u.
	linear(u []float64, jacobian *mat.Dense, miss []float64)
	// size is a typical value of each unknown; convergence is judged by it.
	size() []float64
}

// solution is where a task came to rest.
type solution struct {
	u        []float64
	cost     float64 // sum of squared misses
	rounds   int
	settled  bool
	singular bool // the rows leave some unknowns free
	jacobian *mat.Dense
	miss     []float64
}

// solve adjusts from the start u: Gauss-Newton rounds, each a QR factorisation
// of the weighted design matrix, damped (Levenberg-Marquardt) as long as a full
// step does not come closer. It settles when no unknown moves by more than
// 1e-9 of its size, and then does one round more.
func solve(t task, start []float64) solution {
	m, n := t.dims()
	s := solution{u: append([]float64(nil), start...), jacobian: mat.NewDense(m, n, nil), miss: make([]float64, m)}
	trial, trialMiss := mat.NewDense(m, n, nil), make([]float64, m)
	next, size := make([]float64, n), t.size()
	t.linear(s.u, s.jacobian, s.miss)
	s.cost = square(s.miss)
	s.singular = m < n
	damping, last := 1e-3, false
	var before [4]float64 // costs of the last rounds
	for s.rounds = 1; s.rounds <= most; s.rounds++ {
		if s.singular {
			damping = max(damping, 1e-6)
		} else if damping < 1e-5 {
			damping = 0
		}
		step, ok := dampedStep(s.jacobian, s.miss, damping)
		if !ok {
			s.singular = true
			damping = max(10*damping, 1e-6)
			continue
		}
		largest := 0.0
		for i := range next {
			next[i] = s.u[i] + step[i]
			largest = max(largest, math.Abs(step[i])/size[i])
		}
		small := largest < 1e-9
		if s.rounds > 2*len(before) && s.cost > 0.99*before[s.rounds%len(before)] && largest > 1e-4 {
			return s // it creeps along a valley without a floor
		}
		before[s.rounds%len(before)] = s.cost
		t.linear(next, trial, trialMiss)
		// At rest the cost only trembles by rounding; a step too small to
		// matter is taken either way.
		if cost := square(trialMiss); cost < s.cost || (small && cost < s.cost*(1+1e-9)+1e-18) {
			s.cost = cost
			s.u, next = next, s.u
			s.jacobian, trial = trial, s.jacobian
			s.miss, trialMiss = trialMiss, s.miss
			if last {
				s.settled = true
				return s
			}
			last = small && (damping == 0 || s.singular)
			damping /= 30
		} else if small {
			s.settled = true
			return s
		} else {
			damping = max(10*damping, 1e-4)
		}
	}
	return s
}

// jacobianAt gives the weighted derivatives at the values u.
func jacobianAt(t task, u []float64) *mat.Dense {
	m, n := t.dims()
	j := mat.NewDense(m, n, nil)
	t.linear(u, j, make([]float64, m))
	return j
}

// dampedStep solves min |J d - r|^2 + damping |C d|^2 with C the lengths of
// the columns of J; false when J lets d run free.
func dampedStep(jacobian *mat.Dense, miss []float64, damping float64) ([]float64, bool) {
	m, n := jacobian.Dims()
	rows := m
	if damping > 0 {
		rows += n
	}
	a := make([][]float64, rows)
	for i := range a {
		a[i] = make([]float64, n+1)
		if i < m {
			copy(a[i], jacobian.RawRowView(i))
			a[i][n] = miss[i]
		}
	}
	if damping > 0 {
		for j, c := range columnLengths(jacobian) {
			a[m+j][j] = math.Sqrt(damping) * c
		}
	}
	return leastSquares(a)
}

// leastSquares solves min |A d - b| by QR with Householder reflections; the
// rows hold A and, as last column, b, and are used up. False when a column is,
// but for rounding, a sum of others.
func leastSquares(a [][]float64) ([]float64, bool) {
	n := len(a[0]) - 1
	if len(a) < n {
		return nil, false
	}
	diagonal := make([]float64, n)
	for k := range n {
		whole, below := 0.0, 0.0
		for i := range a {
			whole += a[i][k] * a[i][k]
			if i >= k {
				below += a[i][k] * a[i][k]
			}
		}
		if !(below > 1e-24*whole) || math.IsInf(whole, 1) {
			return nil, false
		}
		diagonal[k] = -math.Copysign(math.Sqrt(below), a[k][k])
		a[k][k] -= diagonal[k] // below the diagonal, column k is now the reflection vector
		scale := -1 / (diagonal[k] * a[k][k])
		for j := k + 1; j <= n; j++ {
			s := 0.0
			for _, row := range a[k:] {
				s += row[k] * row[j]
			}
			s *= scale
			for _, row := range a[k:] {
				row[j] -= s * row[k]
			}
		}
	}
	d := make([]float64, n)
	for k := n - 1; k >= 0; k-- {
		s := a[k][n]
		for j := k + 1; j < n; j++ {
			s -= a[k][j] * d[j]
		}
		d[k] = s / diagonal[k]
		if math.IsNaN(d[k]) || math.IsInf(d[k], 0) {
			return nil, false
		}
	}
	return d, true
}

// columnLengths gives the length of each column, 1 for one that is empty.
func columnLengths(a *mat.Dense) []float64 {
	m, n := a.Dims()
	out := make([]float64, n)
	for i := range m {
		for j, v := range a.RawRowView(i) {
			out[j] += v * v
		}
	}
	for j, v := range out {
		if out[j] = math.Sqrt(v); v == 0 {
			out[j] = 1
		}
	}
	return out
}

func square(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x * x
	}
	return s
}
