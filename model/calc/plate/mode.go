package plate

import (
	"math"
	"slices"
)

// Frequency is the lowest natural frequency, Hz, with the links that carry in
// the result staying where they are, and the masses of the plates and of
// `riding` kilograms at single places. Inverse iteration with the quotient of
// Lord Rayleigh; it comes from above.
func (s *Solver) Frequency(r *Result, riding ...Load) (float64, error) {
	if err := s.Settle(r); err != nil {
		return 0, err
	}
	z := s.unlike(r.st.on)
	m := slices.Clone(s.masses())
	for _, l := range riding {
		l.Force /= Gravity * 1000
		s.push(m, l)
	}
	u := make([]float64, s.size)
	for i, v := range m {
		if v > 0 {
			u[i] = 1 + 0.1*math.Sin(float64(i)) // not even: an even start may miss an odd shape
		}
	}
	last := 0.0
	f, x := make([]float64, s.size), make([]float64, s.size)
	for range 100 {
		for i, v := range m {
			f[i] = v * u[i]
		}
		copy(x, f)
		if !s.held(x, z) {
			return 0, errTips
		}
		var work, kinetic float64
		for i, v := range m {
			work += x[i] * f[i]
			kinetic += v * x[i] * x[i]
		}
		square := work / kinetic
		norm := 1 / math.Sqrt(kinetic)
		for i := range x {
			u[i] = x[i] * norm
		}
		if math.Abs(square-last) < 1e-6*square {
			return math.Sqrt(square) / (2 * math.Pi), nil
		}
		last = square
	}
	return math.Sqrt(last) / (2 * math.Pi), nil
}

// held solves the system in which exactly the links of the reference state carry,
// but for those in z, all without slack. It overwrites the right side.
func (s *Solver) held(f []float64, z []int) bool {
	s.solve(f)
	t := make([]float64, len(z))
	for k, j := range z {
		t[k] = s.links[j].of(f)
	}
	if !eliminate(s.yields(z), t, len(z)) {
		return false
	}
	for k, j := range z {
		axpy(f, s.cols[j], t[k])
	}
	return true
}
