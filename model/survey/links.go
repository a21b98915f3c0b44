package survey

import "math"

// links are the distances between points as far as readings tell them, for
// placing points before the adjustment. 0 is unknown.
type links [][]float64

// linksOf collects the measured distances and, where there is none, those that
// follow from two walls and the angle between them, or from a width.
func (s *system) linksOf() links {
	n := len(s.names)
	sum, count := newLinks(n), newLinks(n)
	for _, r := range s.rows {
		if r.kind == Distance {
			sum.add(r.points[0], r.points[1], r.want)
			count.add(r.points[0], r.points[1], 1)
		}
	}
	d := newLinks(n)
	for i := range d {
		for j := range d[i] {
			if count[i][j] > 0 {
				d[i][j] = sum[i][j] / count[i][j]
			}
		}
	}
	for _, r := range s.rows {
		if r.kind == Width && d[r.points[0]][r.points[1]] == 0 {
			d.add(r.points[0], r.points[1], r.want)
		}
	}
	for i := range s.rows {
		r := &s.rows[i]
		angle, ok := r.wide()
		if !ok {
			continue
		}
		a, v, b := r.points[0], r.points[1], r.points[2]
		if p, q := d[v][a], d[v][b]; p > 0 && q > 0 && d[a][b] == 0 {
			if c := math.Sqrt(max(0, p*p+q*q-2*p*q*math.Cos(angle))); c > 0 {
				d.add(a, b, c)
			}
		}
	}
	return d
}

func newLinks(n int) links {
	d := make(links, n)
	for i := range d {
		d[i] = make([]float64, n)
	}
	return d
}

func (d links) add(i, j int, v float64) {
	d[i][j] += v
	d[j][i] += v
}

// typical is the middle of the known distances, 1 m if there are none.
func (d links) typical() float64 {
	sum, n := 0.0, 0.0
	for i := range d {
		for _, v := range d[i][:i] {
			if v > 0 {
				sum, n = sum+v, n+1
			}
		}
	}
	if n == 0 {
		return 1000
	}
	return sum / n
}

// longest is the pair of points with the longest known distance, or the pair
// given if none is known.
func (d links) longest(a, b int) (int, int) {
	for i := range d {
		for j, v := range d[i][:i] {
			if v > d[a][b] {
				a, b = j, i
			}
		}
	}
	return a, b
}

// wide is the angle at the middle point of a reading, without its sense; false
// if the reading is not about an angle.
func (r *row) wide() (float64, bool) {
	switch r.kind {
	case Angle:
		return r.want, true
	case SquareOff:
		return math.Acos(max(-1, min(1, (r.a*r.a+r.b*r.b-r.want*r.want)/(2*r.a*r.b)))), true
	}
	return 0, false
}
