package fit

import (
	"math"

	"slabwright/model/unit"
)

// pairs gives every station of the start with every one of the end.
func (p Problem) pairs() []Pair {
	var out []Pair
	for i, a := range p.Stations {
		if a.Rate < 0 {
			continue
		}
		for j, b := range p.Stations {
			if b.Rate > 0 {
				continue
			}
			u, v := 1/p.weight(i), 1/p.weight(j)
			play := u*float64(a.Gap-a.Least) + v*float64(b.Gap-b.Least)
			variance := u*u*p.Covariance[i][i] + v*v*p.Covariance[j][j] + u*v*(p.Covariance[i][j]+p.Covariance[j][i])
			q := Pair{Start: i, End: j, Play: unit.Measured{Value: unit.Length(play), SD: unit.Length(math.Sqrt(max(0, variance)))}}
			for _, s := range []Station{a, b} {
				if s.Trims {
					q.share += 0.5
				}
			}
			out = append(out, q)
		}
	}
	return out
}

// fits is the chance that the pair leaves room for a part that much longer.
func (q Pair) fits(longer float64) float64 {
	return phi((float64(q.Play.Value)-q.share*longer)/float64(q.Play.SD), float64(q.Play.Value)-q.share*longer)
}

// Bounds gives the limits between which the chance lies that a part longer by
// so much fits: the sum over all pairs and the tightest pair.
func (c *Chance) Bounds(longer unit.Length) (low, high float64) {
	low, high = 1, 1
	for _, q := range c.pairs {
		f := q.fits(float64(longer))
		low -= 1 - f
		high = min(high, f)
	}
	return max(0, low), high
}

// Longest is how much longer than drawn the part may be to fit with a chance;
// below 0: how much shorter it must be.
type Longest struct {
	Linear unit.Length // from the tightest pair alone: exact when one pair decides
	Safe   unit.Length // from the sum over all pairs: never too long
	Drawn  unit.Length // from drawn rooms
}

// Longest gives the size that fits with a chance p, 0 < p < 1. It gives
// infinities when nothing that is trimmed decides.
func (c *Chance) Longest(p float64) Longest {
	z := quantile(p)
	lin := math.Inf(1)
	for _, q := range c.pairs {
		if room := float64(q.Play.Value) - z*float64(q.Play.SD); q.share > 0 {
			lin = min(lin, room/q.share)
		} else if room < 0 {
			lin = math.Inf(-1)
		}
	}
	return Longest{Linear: unit.Length(lin), Safe: c.safe(p, lin), Drawn: unit.Length(c.rank(1 - p))}
}

// safe finds the size at which the lower bound is p, by halving.
func (c *Chance) safe(p, start float64) unit.Length {
	sure := func(l float64) bool { low, _ := c.Bounds(unit.Length(l)); return low >= p }
	if math.IsInf(start, 0) || sure(start) {
		return unit.Length(start)
	}
	step := 1.0
	for !sure(start - step) {
		if step *= 2; step > 1e5 {
			return unit.Length(math.Inf(-1))
		}
	}
	lo, hi := start-step, start
	for range 60 {
		if mid := (lo + hi) / 2; sure(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return unit.Length(lo)
}

// phi is the standard normal distribution at z; where z is no number (0/0) or
// has no spread, the sign of what is left decides.
func phi(z, left float64) float64 {
	if math.IsNaN(z) || math.IsInf(z, 0) {
		if left >= 0 {
			return 1
		}
		return 0
	}
	return 0.5 * math.Erfc(-z/math.Sqrt2)
}

// quantile is the standard normal value that is not passed with probability p.
func quantile(p float64) float64 { return -math.Sqrt2 * math.Erfcinv(2*p) }
