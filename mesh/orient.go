package mesh

import (
	"math"
	"math/big"

	"slabwright/model/geom"
)

// orient is the exact sign of the turn a, b, c in the plane: +1 to the left, -1
// to the right, 0 on one line. A rounded value is trusted where its error bound
// (3+16u)u is smaller (J. R. Shewchuk, Adaptive precision floating-point
// arithmetic, 1997, section 4.3); otherwise the sign comes from rationals.
func orient(a, b, c geom.Vec) int {
	l := float64(a.X-c.X) * float64(b.Y-c.Y)
	r := float64(a.Y-c.Y) * float64(b.X-c.X)
	if l == 0 && r == 0 {
		return 0 // both products hold an exact zero: corners in line with an axis
	}
	d := l - r
	const bound = 3.3306690738754716e-16
	if math.Abs(d) > bound*(math.Abs(l)+math.Abs(r)) {
		if d > 0 {
			return 1
		}
		return -1
	}
	var ac, bc, ad, bd big.Rat
	diff := func(z *big.Rat, x, y float64) *big.Rat {
		var w big.Rat
		z.SetFloat64(x)
		w.SetFloat64(y)
		return z.Sub(z, &w)
	}
	diff(&ac, float64(a.X), float64(c.X))
	diff(&bc, float64(b.Y), float64(c.Y))
	diff(&ad, float64(a.Y), float64(c.Y))
	diff(&bd, float64(b.X), float64(c.X))
	return ac.Mul(&ac, &bc).Cmp(ad.Mul(&ad, &bd))
}
