package survey

import (
	"math"
	"slices"
)

// picture is a whole network computed linearly about the shape that is found
// without its slips. There the readings are linear even for gross slips, which
// bend the shape that is adjusted with them.
type picture struct {
	w   []float64   // residual of each reading over its standard deviation; 0 where nothing checks
	rho [][]float64 // correlation of two residuals; 0 where nothing checks
}

// picture puts readings that were left out back: those with the numbers out of
// the whole list.
func (r *Result) picture(list []Reading, out []int) (picture, bool) {
	n := len(list)
	l := levers{a: make([][]term, n), qa: make([][]float64, n), sd: make([]float64, n)}
	off := make([]float64, n) // adjusted less observed, without the slips
	for i, rd := range list {
		w, err := r.compiled(rd)
		if err != nil {
			return picture{}, false
		}
		w.want = float64(rd.Length)
		if rd.Kind.angular() {
			w.want = float64(rd.Angle)
		}
		value, a := r.system.slope(&w, r.x)
		off[i], l.sd[i] = -w.miss(value), r.network.Accuracy.of(rd)
		l.a[i], l.qa[i] = a, r.spread(a)
	}
	// Putting back readings p changes the covariance of two adjusted readings
	// by t D^-1 t', t their covariance with the adjusted p, D that of p itself.
	inverse := l.putting(out)
	back := make([][]float64, n) // rows of t D^-1
	moved := make([][]float64, n)
	for i := range n {
		for _, p := range out {
			moved[i] = append(moved[i], l.shared(i, p))
		}
		back[i] = make([]float64, len(out))
		for j := range out {
			for k := range out {
				back[i][j] += moved[i][k] * inverse[k][j]
			}
		}
	}
	cov := func(i, j int) float64 {
		c := l.shared(i, j)
		for k := range out {
			c -= back[i][k] * moved[j][k]
		}
		return c
	}
	pic := picture{w: make([]float64, n), rho: make([][]float64, n)}
	spread := make([]float64, n)
	for i := range n {
		s2 := l.sd[i] * l.sd[i]
		if q := s2 - cov(i, i); q >= sound*s2 {
			spread[i] = math.Sqrt(q)
			v := off[i]
			for k, p := range out {
				v -= back[i][k] * off[p]
			}
			pic.w[i] = v / spread[i]
		}
	}
	for i := range n {
		pic.rho[i] = make([]float64, n)
		for j := range n {
			if i != j && spread[i] > 0 && spread[j] > 0 {
				pic.rho[i][j] = -cov(i, j) / (spread[i] * spread[j])
			}
		}
	}
	return pic, true
}

// putting is the inverse of the covariance of the differences between the
// readings put back and what the others say: of one or two readings.
func (l levers) putting(out []int) [][]float64 {
	d := func(i, j int) float64 {
		v := l.shared(out[i], out[j])
		if i == j {
			v += l.sd[out[i]] * l.sd[out[i]]
		}
		return v
	}
	if len(out) == 1 {
		return [][]float64{{1 / d(0, 0)}}
	}
	det := d(0, 0)*d(1, 1) - d(0, 1)*d(0, 1)
	return [][]float64{{d(1, 1) / det, -d(0, 1) / det}, {-d(0, 1) / det, d(0, 0) / det}}
}

// gain is by how much the sum of squares falls when one or two readings are
// left out.
func (p picture) gain(set []int) float64 {
	i := set[0]
	if len(set) == 1 {
		return p.w[i] * p.w[i]
	}
	j := set[1]
	rho := p.rho[i][j]
	if 1-rho*rho < 1e-9 {
		return max(p.w[i]*p.w[i], p.w[j]*p.w[j])
	}
	return (p.w[i]*p.w[i] + p.w[j]*p.w[j] - 2*rho*p.w[i]*p.w[j]) / (1 - rho*rho)
}

// quiet says whether no residual stands out when a set is left out.
func (p picture) quiet(set []int) bool {
	for k := range p.w {
		if slices.Contains(set, k) || p.w[k] == 0 {
			continue
		}
		// What k brings in addition to the set.
		var w, spare float64
		i := set[0]
		if len(set) == 1 {
			w, spare = p.w[k]-p.rho[i][k]*p.w[i], 1-p.rho[i][k]*p.rho[i][k]
		} else {
			j := set[1]
			rho, a, b := p.rho[i][j], p.rho[i][k], p.rho[j][k]
			det := 1 - rho*rho
			if det < 1e-9 {
				return p.quiet(set[:1])
			}
			ca, cb := (a-rho*b)/det, (b-rho*a)/det
			w, spare = p.w[k]-ca*p.w[i]-cb*p.w[j], 1-ca*a-cb*b
		}
		if spare > 1e-9 && math.Abs(w) > Critical*math.Sqrt(spare) {
			return false
		}
	}
	return true
}

// twins says whether nothing can tell an error of reading i from one of j, once
// the other one is left out (-1: none is).
func (p picture) twins(i, j, other int) bool {
	rho, spare := p.rho[i][j], 1.0
	if other >= 0 {
		a, b := p.rho[i][other], p.rho[j][other]
		if 1-a*a < 1e-9 || 1-b*b < 1e-9 {
			return false
		}
		rho, spare = rho-a*b, math.Sqrt((1-a*a)*(1-b*b))
	}
	return math.Abs(rho) >= inseparable*spare
}

// explanations lists the sets of so many readings that end the contradiction,
// as far as they do it nearly as well as the best one, the best one first; and
// those that differ from it by an inseparable reading only.
func (p picture) explanations(size int) [][]int {
	var all [][]int
	for i := range p.w {
		if p.w[i] == 0 {
			continue
		}
		if size == 1 {
			all = append(all, []int{i})
			continue
		}
		for j := range i {
			if p.w[j] != 0 {
				all = append(all, []int{j, i})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b []int) int {
		x, y := p.gain(a), p.gain(b)
		switch {
		case x > y*(1+1e-9):
			return -1
		case y > x*(1+1e-9):
			return 1
		}
		return 0
	})
	var out [][]int
	for _, set := range all {
		if len(out) > 0 && p.gain(set) < p.gain(out[0])-certainly {
			break
		}
		if p.quiet(set) {
			out = append(out, set)
		}
	}
	if len(out) == 0 {
		return nil
	}
	for _, set := range all {
		if !slices.ContainsFunc(out, func(o []int) bool { return slices.Equal(o, set) }) && p.likeBest(set, out[0]) {
			out = append(out, set)
		}
	}
	return out
}

// likeBest says whether a set differs from another by one reading that is
// inseparable from the one it stands for.
func (p picture) likeBest(set, best []int) bool {
	if len(set) == 1 {
		return p.twins(set[0], best[0], -1)
	}
	for k, i := range set {
		j := set[1-k]
		if at := slices.Index(best, j); at >= 0 {
			return p.twins(i, best[1-at], j)
		}
	}
	return false
}
