package plate

import (
	"errors"
	"math"
	"slices"
)

// errTips says that the loads turn the plate off its supports.
var errTips = errors.New("the load tips the plate off its supports")

// state is one load case solved: displacements, and which links carry.
type state struct {
	u       []float64
	on      []bool
	stretch []float64
	force   []float64 // N in every link
	rounds  int
}

// settle finds which links carry under a right side f, and the displacements.
// It is Newton's method on the energy, which is convex: every step solves the
// system with the links that carry now, and a step that goes too far is cut
// where the energy is least, so that it always comes to an end. Of the reference
// system the displacements may be given as `ahead`, which it uses up.
func (s *Solver) settle(f, ahead []float64, guess []bool) (state, error) {
	on := make([]bool, len(s.links))
	for i, l := range s.links {
		on[i] = !l.one || (guess == nil && l.ref) || (guess != nil && guess[i])
	}
	base := ahead
	if s.turn(on) || base == nil {
		base = s.free(f)
	}
	free := s.stretches(base)
	var w, force []float64
	for round := 1; round <= 60; round++ {
		if round > 1 && s.turn(on) {
			base = s.free(f)
			free = s.stretches(base)
		}
		t, z, err := s.correct(free, on)
		if err != nil {
			return state{}, err
		}
		w1, f1 := s.after(free, on, z, t)
		if w != nil {
			if tau := s.shorten(w, force, w1, f1); tau < 1 {
				mix(w1, w, tau)
				mix(f1, force, tau)
				w, force = w1, f1
				s.decide(on, w)
				continue
			}
		}
		w, force = w1, f1
		if s.decide(on, w) == 0 {
			st := state{on: on, stretch: w, force: force, rounds: round, u: base}
			for k, j := range z {
				axpy(st.u, s.cols[j], t[k])
			}
			return st, s.sane(st)
		}
	}
	return state{}, errTips
}

// free solves the reference system.
func (s *Solver) free(f []float64) (u []float64) {
	u = s.right(f)
	s.solve(u)
	return u
}

// right is a right side of the reference system.
func (s *Solver) right(f []float64) []float64 {
	u := slices.Clone(f)
	axpy(u, s.fixed, 1)
	return u
}

// turn makes the links in on the reference when many columns are wanted for them,
// and tells whether it did. A factorisation takes as long as a quarter of a row
// has columns, but after it all columns are to be made anew, and the next case may
// want the old ones: a whole row of columns took least work on random designs. A
// set that leaves the plate loose, as may come up on the way, is no reference.
func (s *Solver) turn(on []bool) bool {
	wanted := 0
	for i, l := range s.links {
		if l.ref != on[i] && s.cols[i] == nil {
			wanted++
		}
	}
	if wanted <= s.patience {
		return false
	}
	before := slices.Clone(s.links)
	for i := range s.links {
		s.links[i].ref = on[i]
	}
	if s.refactor() == nil {
		return true
	}
	copy(s.links, before)
	if err := s.refactor(); err != nil {
		panic("plate: a matrix that was factored before cannot be factored again: " + err.Error())
	}
	return true
}

// decide sets which links carry and tells how many changed.
func (s *Solver) decide(on []bool, w []float64) int {
	changed := 0
	for i := range s.links {
		if want := s.links[i].wants(w[i]); want != on[i] {
			on[i] = want
			changed++
		}
	}
	return changed
}

// correct finds the forces that turn the reference system into one where
// exactly the links in on carry.
func (s *Solver) correct(free []float64, on []bool) (t []float64, z []int, err error) {
	z = s.unlike(on)
	s.want(z)
	n := len(z)
	t = make([]float64, n)
	for r, j := range z {
		t[r] = free[j] - s.links[j].slack
	}
	if !eliminate(s.yields(z), t, n) {
		return nil, nil, errTips
	}
	return t, z, nil
}

// unlike are the links that do not carry as in the reference state.
func (s *Solver) unlike(on []bool) []int {
	var z []int
	for i := range s.links {
		if s.links[i].ref != on[i] {
			z = append(z, i)
		}
	}
	return z
}

// yields is the matrix between the forces that take links out of the reference
// system, or put them in, and the stretches there.
func (s *Solver) yields(z []int) []float64 {
	n := len(z)
	a := make([]float64, n*n)
	for r, j := range z {
		w := s.rows[j]
		l := &s.links[j]
		for c, i := range z {
			a[c*n+r] = -w[i]
		}
		if l.ref {
			a[r*n+r] += 1 / l.k
		} else {
			a[r*n+r] -= 1 / l.k
		}
	}
	return a
}

// after gives stretches and forces of all links once the correction acts.
func (s *Solver) after(free []float64, on []bool, z []int, t []float64) (w, force []float64) {
	w = slices.Clone(free)
	for k, j := range z {
		axpy(w, s.rows[j], t[k])
	}
	force = make([]float64, len(w))
	for i := range force {
		if on[i] {
			force[i] = s.links[i].force(w[i])
		}
	}
	return w, force
}

// shorten gives how much of the step from (w, f) to (w1, f1) lowers the energy:
// 1 when all of it does. The slope of the energy along the step only grows.
func (s *Solver) shorten(w, f, w1, f1 []float64) float64 {
	slope := func(tau float64) float64 {
		var sum float64
		for i, l := range s.links {
			d := w1[i] - w[i]
			at := w[i] + tau*d
			var real float64
			if l.wants(at) {
				real = l.force(at)
			}
			sum += d * (real - f[i] - tau*(f1[i]-f[i]))
		}
		return sum
	}
	if slope(1) <= 1e-12*math.Abs(slope(0)) {
		return 1
	}
	low, high := 0.0, 1.0
	for range 40 {
		if mid := (low + high) / 2; slope(mid) > 0 {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// sane refuses an answer that only the last digits hold in place.
func (s *Solver) sane(st state) error {
	for _, v := range st.stretch {
		if math.IsNaN(v) || math.Abs(v) > 1e5 {
			return errTips
		}
	}
	return nil
}

// eliminate solves a small system in place by Gauss with row exchange; false if
// it has no answer.
func eliminate(a, b []float64, n int) bool {
	for k := range n {
		best := k
		for r := k + 1; r < n; r++ {
			if math.Abs(a[r*n+k]) > math.Abs(a[best*n+k]) {
				best = r
			}
		}
		if a[best*n+k] == 0 {
			return false
		}
		if best != k {
			for c := k; c < n; c++ {
				a[k*n+c], a[best*n+c] = a[best*n+c], a[k*n+c]
			}
			b[k], b[best] = b[best], b[k]
		}
		for r := k + 1; r < n; r++ {
			f := a[r*n+k] / a[k*n+k]
			if f == 0 {
				continue
			}
			axpy(a[r*n+k:r*n+n], a[k*n+k:k*n+n], -f)
			b[r] -= f * b[k]
		}
	}
	for k := n - 1; k >= 0; k-- {
		for c := k + 1; c < n; c++ {
			b[k] -= a[k*n+c] * b[c]
		}
		b[k] /= a[k*n+k]
	}
	return true
}

func axpy(y, x []float64, f float64) {
	x = x[:len(y)]
	for i := range y {
		y[i] += f * x[i]
	}
}

// mix moves b towards a by 1 - tau.
func mix(b, a []float64, tau float64) {
	for i := range b {
		b[i] = a[i] + tau*(b[i]-a[i])
	}
}
