// Package fit tells how surely a rigid part goes between walls that are known
// with an uncertainty only, and which size of it to order.
//
// The part stands as drawn, parallel to its back, and can be slid one way. Its
// gaps are looked at in stations along both ends; they are jointly normal, with
// the covariance that follows from the survey. The part fits when it can be
// slid so that every gap is as wide as it must be. Three answers stand side by
// side: the tightest pair of stations alone (at most so sure), the sum of the
// chances of all pairs (at least so sure, Boole's inequality), and drawn rooms
// (Monte Carlo, the same ones every time).
//
// Basis: linear propagation of variances and Boole's inequality, as in any
// textbook; checked against two independent programs on made-up rooms.
package fit

import (
	"errors"
	"fmt"
	"math"

	"slabwright/model/unit"
)

// hangs is how many millimetres a way in may move per millimetre (or degree) of
// a reading that nothing checks before no probability is given any more.
const hangs = 0.05

// Station is a place on the part's edge from which the gap is measured, square
// to the edge.
type Station struct {
	Edge   string
	Gap    unit.Length // as drawn, in the most likely room
	Least  unit.Length // what must be left
	Widest unit.Length // what may show at most; 0: whatever comes
	Rate   float64     // how the gap grows per millimetre that the part is slid on: above 0 at the start, below 0 at the end
	Trims  bool        // the edge moves when the part is made longer or shorter
}

// Influence is how the gaps move with one reading that nothing checks, in
// station order, millimetres per millimetre or degree of the reading.
type Influence struct {
	Reading string
	PerUnit []float64
}

// Problem is a part between two ends.
type Problem struct {
	Stations   []Station
	Covariance [][]float64 // of the gaps, mm2
	Share      float64     // of the play that goes to the start when the part lies in place, 0 to 1
	Unchecked  []string    // readings, when nothing at all checks the survey
	Hidden     []Influence // of single readings that nothing checks
	Draws      int         // 0: UsualDraws
	Seed       uint64
}

// UsualDraws is how many rooms are drawn when a Problem does not say: a chance
// of 0.99 is then known within 0.0003 (one standard deviation).
const UsualDraws = 100_000

// Pair is what is left between two stations across the part, measured along the
// way in which it slides: the play in the most likely room beyond the least
// gaps, with its standard deviation.
type Pair struct {
	Start, End int // stations
	Play       unit.Measured
	share      float64 // of a longer part that this pair feels
}

// Answer is how a part goes in. Chance is nil when readings that nothing checks
// decide: then no probability can be given, and Unchecked names them.
type Answer struct {
	Gaps      []unit.Measured // by station, as drawn
	Tightest  Pair
	Unchecked []string
	Chance    *Chance
}

// ErrFree tells that one end of the part has no station: any size fits.
var ErrFree = errors.New("nothing bounds the part at one of its ends")

// Solve answers a Problem. It gives ErrFree for a part that is bounded at one
// end only, and an error for numbers that are none.
func Solve(p Problem) (Answer, error) {
	if err := p.check(); err != nil {
		return Answer{}, err
	}
	pairs := p.pairs()
	if len(pairs) == 0 {
		return Answer{}, ErrFree
	}
	a := Answer{Tightest: pairs[0], Unchecked: p.unchecked(pairs)}
	for i, s := range p.Stations {
		a.Gaps = append(a.Gaps, unit.Measured{Value: s.Gap, SD: unit.Length(math.Sqrt(max(0, p.Covariance[i][i])))})
	}
	for _, q := range pairs {
		if q.Play.Value < a.Tightest.Play.Value {
			a.Tightest = q
		}
	}
	if len(a.Unchecked) > 0 {
		return a, nil
	}
	c, err := p.draw()
	if err != nil {
		return Answer{}, err
	}
	c.pairs = pairs
	a.Chance = c
	return a, nil
}

// Within gives the gap that a normal one stays below with probability p.
func Within(gap unit.Measured, p float64) unit.Length {
	return gap.Value + unit.Length(quantile(p))*gap.SD
}

func (p Problem) check() error {
	n := len(p.Stations)
	if n == 0 {
		return errors.New("a fit without stations")
	}
	if len(p.Covariance) != n {
		return fmt.Errorf("covariance of %d gaps for %d stations", len(p.Covariance), n)
	}
	for i, s := range p.Stations {
		if !finite(float64(s.Gap), float64(s.Least), float64(s.Widest), s.Rate) {
			return fmt.Errorf("station %d of edge %s is not a number", i+1, s.Edge)
		}
		if math.Abs(s.Rate) < 1e-3 {
			return fmt.Errorf("station %d of edge %s lies along the way in which the part slides", i+1, s.Edge)
		}
		if len(p.Covariance[i]) != n || !finite(p.Covariance[i]...) {
			return fmt.Errorf("covariance of station %d is not a row of %d numbers", i+1, n)
		}
	}
	for _, h := range p.Hidden {
		if len(h.PerUnit) != n || !finite(h.PerUnit...) {
			return fmt.Errorf("influence of %s is not a row of %d numbers", h.Reading, n)
		}
	}
	if !(p.Share >= 0 && p.Share <= 1) || p.Draws < 0 {
		return fmt.Errorf("share %v of the play and %d draws make no sense", p.Share, p.Draws)
	}
	return nil
}

func finite(x ...float64) bool {
	for _, v := range x {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// unchecked names the readings that forbid a probability. A slip in one of
// them can be of any size, so that every pair counts, not the tightest alone.
func (p Problem) unchecked(pairs []Pair) []string {
	out := append([]string(nil), p.Unchecked...)
	for _, h := range p.Hidden {
		for _, q := range pairs {
			k := h.PerUnit[q.Start]/p.weight(q.Start) + h.PerUnit[q.End]/p.weight(q.End)
			if math.Abs(k) > hangs {
				out = append(out, h.Reading)
				break
			}
		}
	}
	return out
}

// weight is what a gap's millimetre is in millimetres of sliding.
func (p Problem) weight(i int) float64 { return math.Abs(p.Stations[i].Rate) }
