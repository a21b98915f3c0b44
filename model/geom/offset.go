package geom

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Grow is the region of all points within d of this one, with round corners.
// A negative d shrinks it: what stays are the points at least -d away from
// everything outside, so that inner corners are rounded. Arcs are flattened on
// the far side of the true arc, by at most chord: the grown region contains
// the true one, the shrunk region is contained in it, both to the grid.
func (r Region) Grow(d, chord unit.Length) Region {
	if r.err != nil {
		return r
	}
	if err := checkChord(chord); err != nil {
		return faulty(fmt.Errorf("grow: %w", err))
	}
	if !(math.Abs(float64(d))*perMM <= limit) {
		return faulty(fmt.Errorf("grow: distance %g mm is not a length below 1 km", float64(d)))
	}
	if r.Empty() {
		return r
	}
	var loops [][]pt
	for _, pc := range r.pieces {
		for _, loop := range pc {
			raw, err := offsetLoop(loop, d, chord)
			if err != nil {
				return faulty(fmt.Errorf("grow by %g mm: %w", float64(d), err))
			}
			loops = append(loops, raw)
		}
	}
	return fromRaw(loops, positive)
}

// offsetLoop moves every side of a loop to its right by d. Corners that open
// are rounded; at corners that close the path goes back through the corner
// itself. The result winds once around what is covered by the loop, by the
// band beside each side and by the round of each opening corner, for each of
// them: the places with a positive winding number are exactly their union.
// Moving to the left is the same for the outside, seen from there.
func offsetLoop(loop []pt, d, chord unit.Length) ([]pt, error) {
	n := len(loop)
	side := make([]Vec, n) // direction of the side that starts at each corner
	for i, p := range loop {
		side[i] = loop[(i+1)%n].vec().Sub(p.vec()).Unit()
	}
	var out []pt
	add := func(vs ...Vec) error {
		for _, v := range vs {
			p, err := snap(v)
			if err != nil {
				return err
			}
			out = append(out, p)
		}
		return nil
	}
	for i, p := range loop {
		a, b := side[(i+n-1)%n], side[i]
		o := orient(loop[(i+n-1)%n], p, loop[(i+1)%n])
		var err error
		switch v := p.vec(); {
		case d > 0 && o >= 0:
			err = add(join(v, a, b, d, chord)...)
		case d < 0 && o <= 0:
			// Mirrored, the left-hand side of a right turn is the right-hand
			// side of a left turn.
			err = add(flip(join(flip(v)[0], flip(a)[0], flip(b)[0], -d, chord)...)...)
		default:
			k := -float64(d)
			err = add(v.Add(a.Left().Mul(k)), v, v.Add(b.Left().Mul(k)))
		}
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// flip mirrors points about the x axis.
func flip(vs ...Vec) []Vec {
	out := make([]Vec, len(vs))
	for i, v := range vs {
		out[i] = Vec{v.X, -v.Y}
	}
	return out
}
