package fit

import (
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"

	"slabwright/model/unit"
)

// chunks is in how many pieces the draws are made. Each has its own source of
// numbers, so that the rooms are the same on every machine.
const chunks = 32

// Chance is how surely a part fits, from drawn rooms and from bounds.
type Chance struct {
	AsDrawn float64 // that every gap is between least and widest when the part stands exactly as drawn

	pairs []Pair
	room  []float64 // by drawn room, sorted: how much longer the part may be
	wide  []float64 // by drawn room, sorted: below which extra length a gap shows too wide
}

// Fits is the chance that a part longer by so much (shorter if below 0) can be
// put in with every gap as wide as it must be.
func (c *Chance) Fits(longer unit.Length) float64 { return 1 - below(c.room, float64(longer)) }

// TooWide is the chance that a part longer by so much leaves a gap that shows
// more than it may, when it lies in place.
func (c *Chance) TooWide(longer unit.Length) float64 {
	return 1 - below(c.wide, math.Nextafter(float64(longer), math.Inf(1)))
}

// below is the share of sorted numbers that are less than x.
func below(sorted []float64, x float64) float64 {
	i, _ := slices.BinarySearch(sorted, x)
	return float64(i) / float64(len(sorted))
}

// rank is the number that a share q of the drawn rooms does not reach.
func (c *Chance) rank(q float64) float64 {
	n := len(c.room)
	return c.room[min(n-1, max(0, int(math.Floor(q*float64(n)))))]
}

// Play is the mean and the spread of how much longer the part may be.
func (c *Chance) Play() unit.Measured {
	var sum, square float64
	for _, x := range c.room {
		sum += x
	}
	mean := sum / float64(len(c.room))
	for _, x := range c.room {
		square += (x - mean) * (x - mean)
	}
	return unit.Measured{Value: unit.Length(mean), SD: unit.Length(math.Sqrt(square / float64(len(c.room))))}
}

// stand is a station made ready for drawing. Gaps are counted beyond the least
// one, in millimetres of sliding.
type stand struct {
	mean   float64
	spread []float64 // by independent variable
	slack  float64   // how much wider than the least the gap may show, +Inf: any
	atEnd  bool
	trims  bool
}

// draw makes the rooms.
func (p Problem) draw() (*Chance, error) {
	factor, err := root(p.Covariance)
	if err != nil {
		return nil, err
	}
	stands := make([]stand, len(p.Stations))
	for i, s := range p.Stations {
		w := p.weight(i)
		stands[i] = stand{mean: float64(s.Gap-s.Least) / w, slack: math.Inf(1), atEnd: s.Rate < 0, trims: s.Trims}
		if s.Widest > 0 {
			stands[i].slack = float64(s.Widest-s.Least) / w
		}
		for _, f := range factor[i] {
			stands[i].spread = append(stands[i].spread, f/w)
		}
	}
	n := p.Draws
	if n == 0 {
		n = UsualDraws
	}
	c := &Chance{room: make([]float64, n), wide: make([]float64, n)}
	good := make([]int, chunks)
	next := make(chan int, chunks)
	for k := range chunks {
		next <- k
	}
	close(next)
	var wait sync.WaitGroup
	for range min(chunks, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for k := range next {
				from, to := k*n/chunks, (k+1)*n/chunks
				good[k] = p.chunk(stands, c.room[from:to], c.wide[from:to], rand.New(rand.NewPCG(p.Seed, uint64(k))))
			}
		})
	}
	wait.Wait()
	sum := 0
	for _, g := range good {
		sum += g
	}
	c.AsDrawn = float64(sum) / float64(n)
	wait.Go(func() { slices.Sort(c.room) })
	wait.Go(func() { slices.Sort(c.wide) })
	wait.Wait()
	return c, nil
}

// chunk draws rooms into room and wide and counts those in which the part is
// right just as drawn.
func (p Problem) chunk(stands []stand, room, wide []float64, source *rand.Rand) (good int) {
	z := make([]float64, len(stands[0].spread))
	gap := make([]float64, len(stands))
	for d := range room {
		for i := range z {
			z[i] = source.NormFloat64()
		}
		asDrawn := true
		// The least play at the start and at the end: of edges that are trimmed
		// and of others.
		least := [2][2]float64{{math.Inf(1), math.Inf(1)}, {math.Inf(1), math.Inf(1)}}
		for i := range stands {
			s := &stands[i]
			g := s.mean
			for k, f := range s.spread {
				g += f * z[k]
			}
			gap[i] = g
			asDrawn = asDrawn && g >= 0 && g <= s.slack
			m := &least[number(s.atEnd)][number(s.trims)]
			*m = min(*m, g)
		}
		if asDrawn {
			good++
		}
		room[d] = longest(least)
		wide[d] = p.widest(stands, gap, least)
	}
	return good
}

func number(b bool) int {
	if b {
		return 1
	}
	return 0
}

// longest is how much longer the part may be in one room. Extra length is
// shared by both trimmed ends.
func longest(least [2][2]float64) float64 {
	const plain, trimmed = 0, 1
	start, end := least[0], least[1]
	if start[plain]+end[plain] < 0 {
		return math.Inf(-1)
	}
	return min(start[trimmed]+end[trimmed], 2*(start[trimmed]+end[plain]), 2*(start[plain]+end[trimmed]))
}

// widest is the extra length below which some gap of a trimmed edge shows too
// wide, when the part lies so that the start has its share of the play.
func (p Problem) widest(stands []stand, gap []float64, least [2][2]float64) float64 {
	const trimmed = 1
	tight := [2]float64{least[0][trimmed], least[1][trimmed]}
	play := tight[0] + tight[1]
	out := math.Inf(-1)
	if math.IsInf(play, 1) { // one end is never trimmed: there is no play to share
		return out
	}
	for i := range stands {
		s := &stands[i]
		if !s.trims || math.IsInf(s.slack, 1) {
			continue
		}
		share := p.Share
		if s.atEnd {
			share = 1 - share
		}
		// The gap is what it stands out beyond the tightest of its end, and its
		// share of the play that is left.
		over := s.slack - (gap[i] - tight[number(s.atEnd)])
		switch {
		case share > 0:
			out = max(out, play-over/share)
		case over < 0:
			out = math.Inf(1)
		}
	}
	return out
}

// root gives L with L L' = the covariance, as few columns as its rank, by
// Cholesky's method with pivoting.
func root(cov [][]float64) ([][]float64, error) {
	n := len(cov)
	rest := make([][]float64, n)
	most := 0.0
	for i := range cov {
		rest[i] = slices.Clone(cov[i])
		most = max(most, cov[i][i])
	}
	out := make([][]float64, n)
	for range n {
		pivot := 0
		for i := range rest {
			if rest[i][i] > rest[pivot][pivot] {
				pivot = i
			}
		}
		d := rest[pivot][pivot]
		if !(d > 1e-12*most) {
			break
		}
		column := make([]float64, n)
		for i := range column {
			column[i] = rest[i][pivot] / math.Sqrt(d)
			out[i] = append(out[i], column[i])
		}
		for i := range rest {
			for j := range rest[i] {
				rest[i][j] -= column[i] * column[j]
			}
		}
	}
	for i := range rest {
		if rest[i][i] < -1e-6*most || cov[i][i] < 0 {
			return nil, errors.New("the covariance of the gaps is none: a variance comes out below 0")
		}
	}
	return out, nil
}
