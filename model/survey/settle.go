package survey

import (
	"math"

	"slabwright/model/unit"
)

// candidate is one shape that the readings came to rest at.
type candidate struct {
	sol     solution
	x       []float64
	cost    float64 // of the readings alone
	held    bool    // settled, and every point is held; then
	prec    cofactors
	squared []int // corners that had to be taken as square
	loose   *Problem
}

const (
	// slackSD is the standard deviation of a point from which on the readings
	// are said to hold it loosely.
	slackSD = 25.0 // mm
	// squareSD is how far corners are taken to be from square, straight or half
	// square, whichever is nearest, where readings do not tell. Judgement, no
	// source: old houses.
	squareSD = 1.5 * math.Pi / 180
)

// settle adjusts from one start.
//
// Readings can hold a point without fixing it: three lengths in a line hold
// its middle like a taut string, that gives a centimetre sideways for every
// tenth of a millimetre along. Then the least squares have no clear minimum
// and the linear standard deviations no meaning. In that case, and only then,
// corners near to a multiple of 45 degrees are taken as such, give or take 1.5
// degrees, and the candidate says so.
func (s *system) settle(x []float64) candidate {
	c := s.rest(x, nil)
	if c.held {
		return c
	}
	if free, _ := s.floppy(c.x); len(free) > 0 {
		return c
	}
	assumed, corners := s.square(c.x)
	if len(corners) == 0 {
		return c
	}
	d := s.rest(c.x, assumed)
	if !d.sol.settled {
		return c
	}
	d.squared = corners
	d.loose = s.loosely(c)
	return d
}

// rest runs the adjustment with the readings and some assumptions.
func (s *system) rest(x []float64, assumed []row) candidate {
	f := s.fitting(x, assumed)
	sol := solve(f, s.values(x))
	c := candidate{sol: sol, x: append([]float64(nil), f.all(sol.u)...), cost: square(sol.miss[:len(s.rows)])}
	if s.free {
		c.x = s.backTo(x, c.x)
		c.sol.jacobian = jacobianAt(f, s.values(c.x))
	}
	if sol.settled && !sol.singular {
		c.prec = precision(c.sol.jacobian, len(s.rows))
		if s.free {
			c.prec.unfloat(s.floating(c.x))
		}
		c.held = !s.slack(c.prec)
	}
	return c
}

// slack says whether some point is known no better than slackSD.
func (s *system) slack(c cofactors) bool {
	for j, e := range s.unknown {
		if e < 2*len(s.names) && !(c.q.At(j, j) < slackSD*slackSD) {
			return true
		}
	}
	return false
}

// floppyLimit is the singular value, as a share of the largest, at which a
// direction counts as free.
const floppyLimit = 1e-6

// floppy gives the directions in which the points can move because readings
// are missing, not because the points happen to lie in line: those that stay
// when all points are pushed a little out of place. It also gives the places
// that they were pushed to.
func (s *system) floppy(x []float64) (free [][]float64, pushed []float64) {
	y := append([]float64(nil), x...)
	push := 0.1 * (s.size(x) + 1)
	for i := range 2 * len(s.names) {
		y[i] += push * math.Sin(float64(7*i+1)) // any uneven pattern will do
	}
	f := s.fitting(y, nil)
	return weakest(jacobianAt(f, s.values(y)), floppyLimit), y
}

// square makes assumptions of the corners that are nearly square, straight or
// half square.
func (s *system) square(x []float64) ([]row, []int) {
	var rows []row
	var corners []int
	for _, p := range s.inner() {
		wide := math.Pi - s.bend(x, p)
		nearest := math.Round(wide/(math.Pi/4)) * math.Pi / 4
		if nearest == 0 || math.Abs(wide-nearest) > float64(10*unit.Degree) {
			continue
		}
		corners = append(corners, p)
		rows = append(rows, row{kind: Angle, points: []int{s.previous(p), p, s.next(p)}, bows: [2]int{-1, -1}, want: nearest, sd: squareSD})
	}
	return rows, corners
}

// named gives the names of points.
func (s *system) named(list []int) []Point {
	var out []Point
	for _, i := range list {
		out = append(out, s.names[i])
	}
	return out
}
