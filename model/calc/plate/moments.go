package plate

// moments are the integrals of 1, x, y, x2, xy, y2 over an area.
type moments [6]float64

func (m *moments) add(n moments, k float64) {
	for i := range m {
		m[i] += k * n[i]
	}
}

// point is a plain point; loops of points are closed.
type point struct{ x, y float64 }

// momentsOf integrates over closed loops about an origin (Green's theorem):
// outlines counter-clockwise, holes clockwise. Loops that run back on
// themselves cancel there.
func momentsOf(loops [][]point, o point) moments {
	var m moments
	for _, loop := range loops {
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			x0, y0, x1, y1 := p.x-o.x, p.y-o.y, q.x-o.x, q.y-o.y
			c := x0*y1 - x1*y0
			m[0] += c / 2
			m[1] += c * (x0 + x1) / 6
			m[2] += c * (y0 + y1) / 6
			m[3] += c * (x0*x0 + x0*x1 + x1*x1) / 12
			m[4] += c * (x0*(2*y0+y1) + x1*(y0+2*y1)) / 24
			m[5] += c * (y0*y0 + y0*y1 + y1*y1) / 12
		}
	}
	return m
}

// below keeps what has a coordinate of at most (or, with sign -1, at least)
// the limit: I. Sutherland, G. Hodgman, Reentrant polygon clipping, 1974. What
// the cut leaves in several pieces stays one loop that runs along the cut; the
// integrals do not mind.
func below(loops [][]point, at func(point) float64, limit, sign float64) [][]point {
	var out [][]point
	for _, loop := range loops {
		var kept []point
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			dp, dq := sign*(at(p)-limit), sign*(at(q)-limit)
			if dp <= 0 {
				kept = append(kept, p)
			}
			if (dp < 0 && dq > 0) || (dp > 0 && dq < 0) {
				t := dp / (dp - dq)
				kept = append(kept, point{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)})
			}
		}
		if len(kept) > 2 {
			out = append(out, kept)
		}
	}
	return out
}

func xOf(p point) float64 { return p.x }
func yOf(p point) float64 { return p.y }

// between keeps what lies from low to high in one coordinate.
func between(loops [][]point, at func(point) float64, low, high float64) [][]point {
	return below(below(loops, at, low, -1), at, high, 1)
}
