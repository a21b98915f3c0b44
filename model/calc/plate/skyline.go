package plate

import (
	"errors"
	"math"
)

// errLoose says that something can move without any resistance.
var errLoose = errors.New("nothing holds a part of the plate: it can move without bending")

// skyline is a symmetric matrix in blocks of three rows. Of every block row it
// holds what lies between its first entry and the diagonal; the factor of
// Cholesky fills no more than that.
type skyline struct {
	first []int          // first block column of every block row
	row   [][3][]float64 // 3 (i - first + 1) entries each
}

func newSkyline(first []int) *skyline {
	a := &skyline{first: first, row: make([][3][]float64, len(first))}
	total := 0
	for i, f := range first {
		total += 9 * (i - f + 1)
	}
	store := make([]float64, total)
	for i, f := range first {
		n := 3 * (i - f + 1)
		for r := range 3 {
			a.row[i][r], store = store[:n:n], store[n:]
		}
	}
	return a
}

// clear makes all entries zero.
func (a *skyline) clear() {
	for i := range a.row {
		for r := range 3 {
			clear(a.row[i][r])
		}
	}
}

// add puts v on the entry (i, j) of the lower triangle; i and j count unknowns.
func (a *skyline) add(i, j int, v float64) {
	if j > i {
		i, j = j, i
	}
	a.row[i/3][i%3][j-3*a.first[i/3]] += v
}

// block gives the rows of the 3x3 block (i, j), j at most i; of one on the diagonal
// the lower triangle counts.
func (a *skyline) block(i, j int) [3][]float64 {
	at := 3 * (j - a.first[i])
	ri := &a.row[i]
	return [3][]float64{ri[0][at : at+3 : at+3], ri[1][at : at+3 : at+3], ri[2][at : at+3 : at+3]}
}

// mean is the mean number of entries of a row.
func (a *skyline) mean() int {
	sum := 0
	for i, f := range a.first {
		sum += 3 * (i - f + 1)
	}
	return sum / max(1, len(a.first))
}

// factor makes the matrix its own Cholesky factor. A pivot that vanishes
// against its diagonal means that something is loose.
func (a *skyline) factor() error {
	for i := range a.first {
		fi := a.first[i]
		ri := &a.row[i]
		diagonal := [3]float64{}
		for r := range 3 {
			diagonal[r] = ri[r][3*(i-fi)+r]
		}
		for j := fi; j < i; j++ {
			a.eliminate(ri, fi, j)
		}
		if !a.pivot(i, diagonal) {
			return errLoose
		}
	}
	return nil
}

// eliminate finishes the 3x3 block in block column j of a row.
func (a *skyline) eliminate(ri *[3][]float64, fi, j int) {
	fj := a.first[j]
	rj := &a.row[j]
	from := max(fi, fj)
	n := 3 * (j - from)
	i0, j0 := 3*(from-fi), 3*(from-fj)
	var b [9]float64
	if n > 0 {
		b = dots(ri[0][i0:i0+n], ri[1][i0:i0+n], ri[2][i0:i0+n], rj[0][j0:j0+n], rj[1][j0:j0+n], rj[2][j0:j0+n])
	}
	at, d := i0+n, j0+n
	l00, l10, l11 := rj[0][d], rj[1][d], rj[1][d+1]
	l20, l21, l22 := rj[2][d], rj[2][d+1], rj[2][d+2]
	for r := range 3 {
		x := ri[r][at : at+3 : at+3]
		x0 := (x[0] - b[3*r]) / l00
		x1 := (x[1] - b[3*r+1] - l10*x0) / l11
		x[0], x[1], x[2] = x0, x1, (x[2]-b[3*r+2]-l20*x0-l21*x1)/l22
	}
}

// pivot finishes the diagonal block of row i.
func (a *skyline) pivot(i int, diagonal [3]float64) bool {
	ri := &a.row[i]
	n := 3 * (i - a.first[i])
	b := dots(ri[0][:n], ri[1][:n], ri[2][:n], ri[0][:n], ri[1][:n], ri[2][:n])
	for r := range 3 {
		for c := 0; c <= r; c++ {
			v := ri[r][n+c] - b[3*r+c]
			for k := range c {
				v -= ri[r][n+k] * ri[c][n+k]
			}
			if c < r {
				ri[r][n+c] = v / ri[c][n+c]
				continue
			}
			if !(v > 1e-13*diagonal[r]) {
				return false
			}
			ri[r][n+c] = math.Sqrt(v)
		}
	}
	return true
}

// dots gives the nine products of three rows with three rows of equal length.
func dots(a0, a1, a2, b0, b1, b2 []float64) [9]float64 {
	var s00, s01, s02, s10, s11, s12, s20, s21, s22 float64
	n := len(a0)
	a1, a2, b0, b1, b2 = a1[:n], a2[:n], b0[:n], b1[:n], b2[:n]
	for k, x := range a0 {
		y, z := a1[k], a2[k]
		u := b0[k]
		s00 += x * u
		s10 += y * u
		s20 += z * u
		u = b1[k]
		s01 += x * u
		s11 += y * u
		s21 += z * u
		u = b2[k]
		s02 += x * u
		s12 += y * u
		s22 += z * u
	}
	return [9]float64{s00, s01, s02, s10, s11, s12, s20, s21, s22}
}

// solve replaces a right side by the solution. Rows before the block row
// `from` of the right side must be zero.
func (a *skyline) solve(x []float64, from int) {
	for i := from; i < len(a.first); i++ {
		f, ri := max(a.first[i], from), &a.row[i]
		n := 3 * (i - f)
		skip := 3 * (f - a.first[i])
		s0, s1, s2 := dot3(ri[0][skip:skip+n], ri[1][skip:skip+n], ri[2][skip:skip+n], x[3*f:3*i])
		d := skip + n
		x0 := (x[3*i] - s0) / ri[0][d]
		x1 := (x[3*i+1] - s1 - ri[1][d]*x0) / ri[1][d+1]
		x[3*i], x[3*i+1] = x0, x1
		x[3*i+2] = (x[3*i+2] - s2 - ri[2][d]*x0 - ri[2][d+1]*x1) / ri[2][d+2]
	}
	for i := len(a.first) - 1; i >= 0; i-- {
		f, ri := a.first[i], &a.row[i]
		n := 3 * (i - f)
		x2 := x[3*i+2] / ri[2][n+2]
		x1 := (x[3*i+1] - ri[2][n+1]*x2) / ri[1][n+1]
		x0 := (x[3*i] - ri[1][n]*x1 - ri[2][n]*x2) / ri[0][n]
		x[3*i], x[3*i+1], x[3*i+2] = x0, x1, x2
		subtract3(x[3*f:3*i], ri[0][:n], ri[1][:n], ri[2][:n], x0, x1, x2)
	}
}

// solveThree does the same for three right sides at once, to the same digits: a
// large factor is read from memory once, not three times.
func (a *skyline) solveThree(x *[3][]float64, from int) {
	for i := from; i < len(a.first); i++ {
		f, ri := max(a.first[i], from), &a.row[i]
		n := 3 * (i - f)
		skip := 3 * (f - a.first[i])
		s := dots(ri[0][skip:skip+n], ri[1][skip:skip+n], ri[2][skip:skip+n], x[0][3*f:3*i], x[1][3*f:3*i], x[2][3*f:3*i])
		d := skip + n
		for c, x := range x {
			x0 := (x[3*i] - s[c]) / ri[0][d]
			x1 := (x[3*i+1] - s[3+c] - ri[1][d]*x0) / ri[1][d+1]
			x[3*i], x[3*i+1] = x0, x1
			x[3*i+2] = (x[3*i+2] - s[6+c] - ri[2][d]*x0 - ri[2][d+1]*x1) / ri[2][d+2]
		}
	}
	for i := len(a.first) - 1; i >= 0; i-- {
		f, ri := a.first[i], &a.row[i]
		n := 3 * (i - f)
		var by [9]float64
		for c, x := range x {
			x2 := x[3*i+2] / ri[2][n+2]
			x1 := (x[3*i+1] - ri[2][n+1]*x2) / ri[1][n+1]
			x0 := (x[3*i] - ri[1][n]*x1 - ri[2][n]*x2) / ri[0][n]
			x[3*i], x[3*i+1], x[3*i+2] = x0, x1, x2
			by[3*c], by[3*c+1], by[3*c+2] = x0, x1, x2
		}
		subtract9(x[0][3*f:3*i], x[1][3*f:3*i], x[2][3*f:3*i], ri[0][:n], ri[1][:n], ri[2][:n], &by)
	}
}

// subtract9 takes multiples of three rows from each of three right sides.
func subtract9(x, y, z, a0, a1, a2 []float64, by *[9]float64) {
	n := len(x)
	y, z, a0, a1, a2 = y[:n], z[:n], a0[:n], a1[:n], a2[:n]
	f0, f1, f2, g0, g1, g2, h0, h1, h2 := by[0], by[1], by[2], by[3], by[4], by[5], by[6], by[7], by[8]
	for k := range x {
		p, q, r := a0[k], a1[k], a2[k]
		x[k] -= f0*p + f1*q + f2*r
		y[k] -= g0*p + g1*q + g2*r
		z[k] -= h0*p + h1*q + h2*r
	}
}

func dot3(a0, a1, a2, x []float64) (s0, s1, s2 float64) {
	n := len(x)
	a0, a1, a2 = a0[:n], a1[:n], a2[:n]
	for k, v := range x {
		s0 += a0[k] * v
		s1 += a1[k] * v
		s2 += a2[k] * v
	}
	return s0, s1, s2
}

func subtract3(x, a0, a1, a2 []float64, f0, f1, f2 float64) {
	n := len(x)
	a0, a1, a2 = a0[:n], a1[:n], a2[:n]
	for k := range x {
		x[k] -= f0*a0[k] + f1*a1[k] + f2*a2[k]
	}
}
