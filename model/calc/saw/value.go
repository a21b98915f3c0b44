package saw

import "math"

// mostOf finds the most value out of one sheet. Limits of 0 are none.
func mostOf(length, width grid, shapes []shape, value []float64, limit []int, stages int, b *budget) *limited {
	q := newLimited(length, width, shapes, value, limit, stages, b)
	q.close(chargeRounds)
	return q
}

// close works until the best value is proved or the budget is spent.
func (q *limited) close(rounds int) {
	q.charge(rounds)
	if q.have >= q.bound-1e-9 {
		return
	}
	q.remember(make([]float64, len(q.value)))
	gap := max(q.step, q.bound/2000)
	for q.have < q.bound-1e-9 {
		floor := max(q.have, q.bound-gap)
		d := q.builder(floor)
		if !d.run() {
			return
		}
		if q.have > floor {
			q.bound = q.have
			q.hear()
			return
		}
		q.bound = q.down(floor)
		q.hear()
		gap *= 2
	}
}

func newLimited(length, width grid, shapes []shape, value []float64, limit []int, stages int, b *budget) *limited {
	return &limited{p: newPlane(length, width, shapes, limit), value: value, limit: limit, stages: stages, b: b, bound: math.Inf(1), step: coarsest(value)}
}

// chargeRounds bounds the rounds of lowering the bound.
const chargeRounds = 120

// fill is the most value out of one plain board, with places in micrometres. On a
// raster too fine for a table the layout is found with sizes rounded up and bounded
// with sizes rounded down.
func (s *sheetSearch) fill(k int, left []int, value []float64) (*limited, []leaf) {
	coarse := grid(0)
	for s.tooFine(s.onRaster(k, left, coarse, true), left) {
		coarse = max(2*coarse, 2*s.onRaster(k, left, coarse, true).step)
	}
	on := s.onRaster(k, left, coarse, true)
	q := mostOf(on.long, on.wide, on.shapes, value, limits(left), s.p.Stages, s.b)
	if coarse > 0 {
		low := s.limited(s.onRaster(k, left, coarse, false), left, value, s.b)
		low.charge(chargeRounds)
		q.bound = low.bound
	}
	for i := range q.best {
		q.best[i].x, q.best[i].y = q.best[i].x*on.step, q.best[i].y*on.step
	}
	return q, on.leaves
}

// Tables beyond these sizes take too long, or too much memory.
const (
	mostPoints = 3000
	mostRaster = 8 << 20
)

func (s *sheetSearch) tooFine(on scaled, left []int) bool {
	return max(on.long, on.wide) > mostRaster || points(on, limits(left), mostRaster) > mostPoints
}
