package survey

import "math"

// term is the derivative of a reading by one entry of the coordinate list.
type term struct {
	entry int
	by    float64
}

// slope gives the value of a row at the coordinates x and its derivatives.
func (s *system) slope(r *row, x []float64) (float64, []term) {
	v := r.value(x, len(s.names))
	var out []term
	for k, d := range v.d {
		// Points on top of each other have no direction and no derivative.
		if e := r.slot(k, len(s.names)); e >= 0 && d != 0 && math.Abs(d) < 1e12 {
			out = append(out, term{e, d})
		}
	}
	return v.v, out
}

// spread is the covariance of all coordinates with a linear function of them.
func (r *Result) spread(a []term) []float64 {
	out := make([]float64, len(r.x))
	for _, t := range a {
		for e, q := range r.Covariance[t.entry] {
			out[e] += t.by * q
		}
	}
	return out
}

// along applies a linear function to a column.
func along(a []term, column []float64) float64 {
	sum := 0.0
	for _, t := range a {
		sum += t.by * column[t.entry]
	}
	return sum
}

// levers are the readings of a result as linear functions of the coordinates
// about the adjusted ones, each with its column of the covariance.
type levers struct {
	a  [][]term
	qa [][]float64
	sd []float64 // of the readings, mm or rad
}

func (r *Result) levers() levers {
	var l levers
	for i := range r.system.rows {
		w := &r.system.rows[i]
		_, a := r.system.slope(w, r.x)
		l.a, l.qa, l.sd = append(l.a, a), append(l.qa, r.spread(a)), append(l.sd, w.sd)
	}
	return l
}

// shared is the covariance of two adjusted readings.
func (l levers) shared(i, j int) float64 { return along(l.a[i], l.qa[j]) }

// repeats says whether two rows measure the same thing.
func (r *row) repeats(o *row) bool {
	if r.kind != o.kind || len(r.points) != len(o.points) {
		return false
	}
	same := math.Abs(r.a-o.a) < 1 && math.Abs(r.b-o.b) < 1
	turned := math.Abs(r.a-o.b) < 1 && math.Abs(r.b-o.a) < 1 && (r.kind == Distance || r.kind == SquareOff)
	for i, p := range r.points {
		same = same && p == o.points[i]
		turned = turned && p == o.points[len(o.points)-1-i]
	}
	return same || turned
}
