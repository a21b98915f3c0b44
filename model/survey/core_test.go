package survey

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.12g, want %.12g within %g", what, got, want, tol)
	}
}

// misra is y = b1 (1 - exp(-b2 x)), NIST StRD nonlinear regression, Misra1a
// (public domain): a certified test of the solver, not of geometry.
type misra struct{}

var misraX = []float64{77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0}
var misraY = []float64{10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78}

func (misra) dims() (int, int) { return len(misraX), 2 }
func (misra) size() []float64  { return []float64{250, 5e-4} }
func (misra) linear(b []float64, j *mat.Dense, miss []float64) {
	for i, x := range misraX {
		e := math.Exp(-b[1] * x)
		miss[i] = misraY[i] - b[0]*(1-e)
		j.Set(i, 0, 1-e)
		j.Set(i, 1, b[0]*x*e)
	}
}

// From NIST's nearer start; from the further one, (500, 0.0001), the solver
// would need more than its 30 rounds.
func TestCertifiedRegression(t *testing.T) {
	s := solve(misra{}, []float64{250, 0.0005})
	if !s.settled {
		t.Fatalf("not settled after %d rounds", s.rounds)
	}
	near(t, "b1", s.u[0], 238.94212918, 1e-8)
	near(t, "b2", s.u[1], 0.00055015643181, 1e-14)
	near(t, "residual sum of squares", s.cost, 0.12455138894, 1e-11)
	c := precision(s.jacobian, len(misraX))
	s0 := math.Sqrt(s.cost / 12)
	near(t, "s0", s0, 0.1018787633, 1e-10)
	near(t, "sd of b1", s0*math.Sqrt(c.q.At(0, 0)), 2.7070075241, 1e-9)
	near(t, "sd of b2", s0*math.Sqrt(c.q.At(1, 1)), 7.2668688436e-06, 1e-15)
}

// levels is a levelling net: E. M. Mikhail and F. Ackermann, Observations and
// Least Squares, table 7-1, weights 1/km, A = 800.000 m. The input is
// published; the results are our own, the book's were not seen.
type levels struct{}

var levelRuns = []struct {
	from, to int // A is 0, B to E are 1 to 4
	dh, km   float64
}{
	{0, 1, 25.42, 18.1}, {1, 2, 10.34, 9.4}, {2, 0, -35.2, 14.2}, {1, 3, -15.54, 17.6},
	{3, 4, 21.32, 13.5}, {4, 2, 4.82, 9.9}, {4, 0, -31.02, 13.8}, {2, 3, -26.11, 14.0},
}

func (levels) dims() (int, int) { return len(levelRuns), 4 }
func (levels) size() []float64  { return []float64{1, 1, 1, 1} }
func (levels) linear(u []float64, j *mat.Dense, miss []float64) {
	h := append([]float64{800}, u...)
	j.Zero()
	for i, r := range levelRuns {
		w := 1 / math.Sqrt(r.km)
		miss[i] = (r.dh - (h[r.to] - h[r.from])) * w
		if r.to > 0 {
			j.Set(i, r.to-1, w)
		}
		if r.from > 0 {
			j.Set(i, r.from-1, -w)
		}
	}
}

func TestLevelNet(t *testing.T) {
	s := solve(levels{}, []float64{800, 800, 800, 800})
	if !s.settled {
		t.Fatal("not settled")
	}
	for i, want := range []float64{825.220624, 835.53543, 809.533928, 830.846029} {
		near(t, "height", s.u[i], want, 1e-6)
	}
	near(t, "vTPv", s.cost, 0.016171369, 1e-9)
	c := precision(s.jacobian, len(levelRuns))
	for i, want := range []float64{0.554694, 0.403736, 0.545924, 0.54874, 0.471456, 0.453813, 0.475438, 0.546198} {
		near(t, "redundancy", c.redundancy[i], want, 1e-6)
	}
	for i, want := range []float64{8.060035, 6.447872, 9.989736, 7.238952} {
		near(t, "cofactor", c.q.At(i, i), want, 1e-6)
	}
	near(t, "cofactor of B and E", c.q.At(0, 3), 3.328662, 1e-6)
}

// Derivatives against differences of the values, for every kind of reading,
// with bowed walls.
func TestDerivatives(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	const points = 6
	for range 200 {
		x := make([]float64, 2*points+2)
		for i := range x {
			x[i] = 2000 * r.Float64()
		}
		x[2*points], x[2*points+1] = 8*r.Float64()-4, 8*r.Float64()-4
		bows, bulge := [2]int{0, 1}, [2]float64{1, -1}
		for _, w := range []row{
			{kind: Distance, points: []int{0, 1}, bows: [2]int{-1, -1}},
			{kind: Angle, points: []int{0, 1, 2}, bows: [2]int{-1, -1}},
			{kind: SquareOff, points: []int{0, 1, 2}, bows: bows, bulge: bulge, a: 600, b: 800},
			{kind: Width, points: []int{0, 1, 2, 3, 4, 5}, bows: bows, a: 500},
			{kind: Width, points: []int{0, 1, 0, 3, 1, 5}, bows: bows, a: 100},
			{kind: Offset, points: []int{0, 1, 2}, bows: [2]int{-1, -1}},
			{kind: Bow, points: []int{0, 1}, bows: [2]int{1, -1}},
		} {
			got := make([]float64, len(x))
			v := w.value(x, points)
			for k, d := range v.d {
				if e := w.slot(k, points); e >= 0 {
					got[e] += d
				}
			}
			for e := range x {
				const h = 1e-3
				at := func(d float64) float64 {
					y := append([]float64(nil), x...)
					y[e] += d
					return w.value(y, points).v
				}
				want := (at(h) - at(-h)) / (2 * h)
				if math.Abs(got[e]-want) > 1e-5*(1+math.Abs(want)) && math.Abs(want) < 100 {
					t.Fatalf("%s by entry %d: got %g, want %g", w.kind, e, got[e], want)
				}
			}
		}
	}
}
