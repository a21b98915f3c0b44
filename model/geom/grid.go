package geom

import (
	"fmt"
	"math"
	"math/bits"

	"slabwright/model/unit"
)

// perMM is the fineness of the grid: steps of one micrometre.
const perMM = 1000

// limit bounds every coordinate to one kilometre, in grid steps. Differences
// then stay below 2^31 and the cross product of two of them fits an int64.
const limit = 1_000_000_000

// pt is a point of the grid, in micrometres.
type pt struct{ x, y int64 }

// snap rounds a point to the grid. The error names what is wrong with it.
func snap(v Vec) (pt, error) {
	x, y := math.Round(float64(v.X)*perMM), math.Round(float64(v.Y)*perMM)
	if math.IsNaN(x) || math.IsNaN(y) {
		return pt{}, fmt.Errorf("point (%v, %v) is not a number", float64(v.X), float64(v.Y))
	}
	if math.Abs(x) > limit || math.Abs(y) > limit {
		return pt{}, fmt.Errorf("point (%g, %g) mm lies more than 1 km from the origin", float64(v.X), float64(v.Y))
	}
	return pt{int64(x), int64(y)}, nil
}

// vec gives the point in millimetres; snap takes it back unchanged.
func (p pt) vec() Vec { return Vec{length(p.x), length(p.y)} }

func length(steps int64) unit.Length { return unit.Length(float64(steps) / perMM) }

// before orders points from left to right, then upwards.
func (p pt) before(q pt) bool { return p.x < q.x || p.x == q.x && p.y < q.y }

func compare(p, q pt) int {
	switch {
	case p.before(q):
		return -1
	case q.before(p):
		return 1
	}
	return 0
}

// orient is twice the area of the triangle a, b, c: positive when c lies to
// the left of a->b, zero when the three are exactly in line.
func orient(a, b, c pt) int64 {
	return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x)
}

// between tells whether p, known to be in line with a and b, lies strictly
// between them.
func between(p, a, b pt) bool {
	if p == a || p == b {
		return false
	}
	return min(a.x, b.x) <= p.x && p.x <= max(a.x, b.x) && min(a.y, b.y) <= p.y && p.y <= max(a.y, b.y)
}

// crossing is the grid point nearest to where a-b properly crosses c-d. The
// rounding is exact and the same function of the true place for every pair,
// so places in order along one segment stay in order.
func crossing(a, b, c, d pt) pt {
	num := (c.x-a.x)*(d.y-c.y) - (c.y-a.y)*(d.x-c.x)
	den := (b.x-a.x)*(d.y-c.y) - (b.y-a.y)*(d.x-c.x)
	if den < 0 {
		num, den = -num, -den
	}
	return pt{a.x + scaled(b.x-a.x, num, den), a.y + scaled(b.y-a.y, num, den)}
}

// scaled is d*num/den rounded to the nearest integer, halves upwards, for
// 0 <= num <= den.
func scaled(d, num, den int64) int64 {
	u, round := uint64(d), uint64(den)
	if d < 0 {
		u, round = uint64(-d), uint64(den)-1
	}
	hi, lo := bits.Mul64(2*u, uint64(num))
	lo, carry := bits.Add64(lo, round, 0)
	q, _ := bits.Div64(hi+carry, lo, 2*uint64(den))
	if d < 0 {
		return -int64(q)
	}
	return int64(q)
}

// area2 is twice the signed area of a loop. Partial sums may wrap around, the
// total of a simple loop cannot.
func area2(loop []pt) int64 {
	var sum int64
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		sum += p.x*q.y - p.y*q.x
	}
	return sum
}

// around is the length of a closed loop, in grid steps.
func around(loop []pt) float64 {
	var sum float64
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		sum += math.Hypot(float64(q.x-p.x), float64(q.y-p.y))
	}
	return sum
}
