package survey

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// cofactors are what the adjusted design matrix tells about precision.
type cofactors struct {
	q          *mat.Dense // covariance of the unknowns, mm2
	redundancy []float64  // by row: the share of a reading's error that shows in its residual
}

// weakest gives the directions in which the rows hold the unknowns least, as
// moves of the unknowns of unit length: those whose singular value is below the
// limit, as a share of the largest, of the matrix with columns of length 1.
func weakest(jacobian *mat.Dense, limit float64) [][]float64 {
	m, n := jacobian.Dims()
	scale := columnLengths(jacobian)
	a := mat.NewDense(max(m, n), n, nil)
	for i := range m {
		for j := range n {
			a.Set(i, j, jacobian.At(i, j)/scale[j])
		}
	}
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDThinV) {
		return nil
	}
	values := svd.Values(nil)
	var v mat.Dense
	svd.VTo(&v)
	var out [][]float64
	for k, s := range values {
		if s > limit*values[0] {
			continue
		}
		d, l := make([]float64, n), 0.0
		for j := range d {
			d[j] = v.At(j, k) / scale[j]
			l = math.Hypot(l, d[j])
		}
		for j := range d {
			d[j] /= l
		}
		out = append(out, d)
	}
	return out
}

// precision computes covariance and redundancy of a sound design of which the
// first rows are readings. Q = (A'WA)^-1 comes from R of the QR factorisation,
// the redundancy of row i is 1 - (A Q A'W)_ii.
func precision(jacobian *mat.Dense, readings int) cofactors {
	_, n := jacobian.Dims()
	var qr mat.QR
	qr.Factorize(jacobian)
	var r mat.Dense
	qr.RTo(&r)
	inverse := mat.NewDense(n, n, nil)
	for j := range n { // columns of R^-1, by back substitution
		for i := j; i >= 0; i-- {
			s := 0.0
			if i == j {
				s = 1
			}
			for k := i + 1; k <= j; k++ {
				s -= r.At(i, k) * inverse.At(k, j)
			}
			inverse.Set(i, j, s/r.At(i, i))
		}
	}
	c := cofactors{q: mat.NewDense(n, n, nil), redundancy: make([]float64, readings)}
	c.q.Mul(inverse, inverse.T())
	var lever mat.Dense
	lever.Mul(jacobian, inverse)
	for i := range c.redundancy {
		l := 0.0
		for j := range n {
			l += lever.At(i, j) * lever.At(i, j)
		}
		c.redundancy[i] = min(1, max(0, 1-l))
	}
	return c
}

// unfloat takes the share of the inner constraints out of the covariance of a
// free network: (A'WA + GG')^-1 - GG', G of orthonormal columns.
func (c cofactors) unfloat(g [3][]float64) {
	n, _ := c.q.Dims()
	for i := range n {
		for j := range n {
			v := c.q.At(i, j)
			for _, k := range g {
				v -= k[i] * k[j]
			}
			c.q.Set(i, j, v)
		}
	}
}
