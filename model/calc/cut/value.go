package cut

import (
	"math"
	"slices"
)

// mostOf finds the most value out of one sheet. Limits of 0 are none.
func mostOf(length, width grid, shapes []shape, value []float64, limit []int, b *budget) *limited {
	q := &limited{p: newPlane(length, width, shapes, limit), value: value, limit: limit, b: b, bound: math.Inf(1), step: coarsest(value)}
	q.charge(chargeRounds)
	if q.have >= q.bound-1e-9 {
		return q
	}
	q.remember(make([]float64, len(value)))
	gap := max(q.step, q.bound/2000)
	for q.have < q.bound-1e-9 {
		floor := max(q.have, q.bound-gap)
		d := q.builder(floor)
		if !d.run() {
			return q
		}
		if q.have > floor {
			q.bound = q.have
			q.hear()
			return q
		}
		q.bound = q.down(floor)
		q.hear()
		gap *= 2
	}
	return q
}

// chargeRounds bounds the rounds of lowering the bound.
const chargeRounds = 120

// shapesOf gives the ways in which items lie, kerf included.
func shapesOf(items []Item, kerf, unit grid) []shape {
	var out []shape
	for i, it := range items {
		l, w := (onGrid(it.Length)+kerf)/unit, (onGrid(it.Width)+kerf)/unit
		out = append(out, shape{i, l, w, false})
		if it.Turn && l != w {
			out = append(out, shape{i, w, l, true})
		}
	}
	return slices.Clip(out)
}
