package revision

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Two surveys of one room have no common origin: a wall can be said to have
// moved only against others. The walls that stay are those whose ends, seen
// square to each wall, agree after one common shift and turn (the congruence
// test of repeated networks: Pelzer 1971, from memory).

// ends are the two ends of every wall, how far each lies off in the second
// survey, square to the wall, in mm; how these spread together; and how each
// follows a common shift along x, along y, and a turn.
type ends struct {
	off    []float64
	cov    *mat.SymDense
	motion *mat.Dense // a row for each end, three columns
}

// loose is the variance, in mm2, that a common motion is given so that it
// decides nothing: a millionfold of a tape's.
const loose = 1e6

// zero is the share of the largest variance below which a direction counts as
// not measured: two walls in line share a corner and say the same twice.
const zero = 1e-9

// agreement holds how well some walls agree with a common motion.
type agreement struct {
	t   float64 // weighted sum of squares, chi-square distributed
	dof int
}

// chance is how often walls that did not move differ by more.
func (a agreement) chance() float64 {
	if a.dof < 1 {
		return 1
	}
	return distuv.ChiSquared{K: float64(a.dof)}.Survival(a.t)
}

// inverse is the pseudo-inverse of a covariance, the number of directions in it
// that were measured.
func inverse(c mat.Symmetric) (*mat.Dense, int) {
	n := c.SymmetricDim()
	var eig mat.EigenSym
	if n == 0 || !eig.Factorize(c, true) {
		return mat.NewDense(max(n, 1), max(n, 1), nil), 0
	}
	values := eig.Values(nil)
	var v mat.Dense
	eig.VectorsTo(&v)
	top := values[n-1]
	out := mat.NewDense(n, n, nil)
	rank := 0
	for k, l := range values {
		if l <= zero*top {
			continue
		}
		rank++
		col := mat.Col(nil, k, &v)
		out.RankOne(out, 1/l, mat.NewVecDense(n, col), mat.NewVecDense(n, col))
	}
	return out, rank
}

// of picks the ends of some walls.
func (e ends) of(walls []int) (rows []int) {
	for _, w := range walls {
		rows = append(rows, 2*w, 2*w+1)
	}
	return rows
}

// weight is the weight matrix of some ends when their common motion is free.
func (e ends) weight(rows []int) (*mat.Dense, int) {
	c := mat.NewSymDense(len(rows), nil)
	for i, a := range rows {
		for j, b := range rows[:i+1] {
			v := e.cov.At(a, b)
			for k := range 3 {
				v += loose * e.motion.At(a, k) * e.motion.At(b, k)
			}
			c.SetSym(i, j, v)
		}
	}
	return inverse(c)
}

// agree tests whether some walls moved together.
func (e ends) agree(walls []int) agreement {
	rows := e.of(walls)
	if len(rows) == 0 {
		return agreement{}
	}
	p, rank := e.weight(rows)
	off := mat.NewVecDense(len(rows), nil)
	for i, r := range rows {
		off.SetVec(i, e.off[r])
	}
	return agreement{t: mat.Inner(off, p, off), dof: rank - e.freedoms(rows)}
}

// freedoms is how many common motions some ends show at all.
func (e ends) freedoms(rows []int) int {
	g := mat.NewDense(len(rows), 3, nil)
	for i, r := range rows {
		g.SetRow(i, e.motion.RawRowView(r))
	}
	var svd mat.SVD
	if !svd.Factorize(g, mat.SVDNone) {
		return 3
	}
	n := 0
	for _, s := range svd.Values(nil) {
		if s > 1e-6 {
			n++
		}
	}
	return n
}

// against gives how far the ends of a wall lie off the walls that stay, and
// their covariance. These are laid over each other so that the squares of what
// is left are least, each end counting alike: no corner is held fast, whichever
// frame the surveys have.
func (e ends) against(stay []int, wall int) (off [2]float64, cov [2][2]float64) {
	rows := e.of(stay)
	normal := mat.NewSymDense(3, nil)
	for _, r := range rows {
		normal.SymRankOne(normal, 1, mat.NewVecDense(3, e.motion.RawRowView(r)))
	}
	ni, _ := inverse(normal)
	k := mat.NewDense(3, len(rows), nil) // gives the motion from the ends
	for j, r := range rows {
		var col mat.VecDense
		col.MulVec(ni, mat.NewVecDense(3, e.motion.RawRowView(r)))
		k.SetCol(j, col.RawVector().Data)
	}
	count := len(e.off)
	b := mat.NewDense(2, count, nil) // how both ends follow from all ends
	for i := range 2 {
		b.Set(i, 2*wall+i, 1)
		for j, r := range rows {
			v := 0.0
			for m := range 3 {
				v += e.motion.At(2*wall+i, m) * k.At(m, j)
			}
			b.Set(i, r, b.At(i, r)-v)
		}
	}
	var out mat.VecDense
	out.MulVec(b, mat.NewVecDense(count, e.off))
	var bc, c mat.Dense
	bc.Mul(b, e.cov)
	c.Mul(&bc, b.T())
	for i := range 2 {
		off[i] = out.AtVec(i)
		for j := range 2 {
			cov[i][j] = c.At(i, j)
		}
	}
	return off, cov
}

// pair is the agreement of the two ends of one wall with lying where they did.
func pair(off [2]float64, cov [2][2]float64) agreement {
	c := mat.NewSymDense(2, []float64{cov[0][0], cov[0][1], cov[0][1], cov[1][1]})
	p, rank := inverse(c)
	v := mat.NewVecDense(2, off[:])
	return agreement{t: mat.Inner(v, p, v), dof: rank}
}

// stay finds the walls that did not move: all of them if they agree, else those
// that are left when as few as possible are taken out. others are the walls that
// could have moved instead of a single one.
func (e ends) stay(level float64) (stay, moved, others []int) {
	for w := range len(e.off) / 2 {
		stay = append(stay, w)
	}
	for e.agree(stay).chance() < level {
		var best []int
		var fits []int
		least, out := math.Inf(1), -1
		for i, w := range stay {
			rest := append(append([]int(nil), stay[:i]...), stay[i+1:]...)
			a := e.agree(rest)
			if a.dof < 1 {
				continue
			}
			if a.chance() >= level {
				fits = append(fits, w)
			}
			if t := a.t - float64(a.dof); t < least {
				least, out, best = t, w, rest
			}
		}
		if best == nil {
			return nil, nil, nil // nothing is left to hold on to
		}
		if len(fits) > 0 && len(moved) == 0 {
			out, others = e.choose(stay, fits)
			best = without(stay, out)
		}
		stay, moved = best, append(moved, out)
	}
	return stay, moved, others
}

// near is by how much a sum of squares must be smaller to prefer one wall to
// another: the 5 % limit of one degree of freedom.
const near = 3.84

// choose picks the wall whose leaving makes the others agree best. Of those
// that do it nearly as well it takes the last one along the walls, as the frame
// of a survey begins at the first; the others are named.
func (e ends) choose(stay, fits []int) (out int, others []int) {
	least := math.Inf(1)
	sum := map[int]float64{}
	for _, w := range fits {
		a := e.agree(without(stay, w))
		sum[w] = a.t
		least = min(least, a.t)
	}
	out = -1
	for _, w := range fits {
		if sum[w] <= least+near {
			if out >= 0 {
				others = append(others, out)
			}
			out = w
		}
	}
	return out, others
}

func without(list []int, w int) []int {
	var out []int
	for _, v := range list {
		if v != w {
			out = append(out, v)
		}
	}
	return out
}
