package survey

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"slabwright/model/unit"
)

// Rise is a measured difference of height: how much higher one point is than
// another. A zero SD takes that of Accuracy.Rise over no distance.
type Rise struct {
	ID       string
	From, To Point
	Rise     unit.Length
	SD       unit.Length
	Where    string // where it stands in the user's file, for messages
}

// LevelNet is a set of rises, and the point whose height is known.
type LevelNet struct {
	Datum    Point
	Height   unit.Length // of the datum
	Rises    []Rise
	Accuracy Accuracy
}

// Level is an adjusted height.
type Level struct {
	Name   Point
	Height unit.Measured
}

// RiseOutcome is what became of one rise; as Outcome.
type RiseOutcome struct {
	Rise
	Residual   unit.Length
	Redundancy float64
	W          float64
	Checked    bool
	Least      unit.Length // least error that is noticed with 80 %, 0 if nothing checks it
}

// Levels are adjusted heights, the datum first, then in order of mention.
type Levels struct {
	Points []Level
	Rises  []RiseOutcome
	Test   GlobalTest
	S0     float64
}

// Rise is the standard deviation of a height carried over some distance with a
// spirit level or a water level: two marks read to 0.5 mm and 0.5 mm per metre
// of the level. Common practice, no source.
func (a Accuracy) Rise(over unit.Length) unit.Length {
	touch := float64(a.filled().Touch)
	return unit.Length(math.Sqrt(2*touch*touch + 0.25*float64(over/1000)*float64(over/1000)))
}

// levelTask is the adjustment of heights: the unknowns are those of all points
// but the datum.
type levelTask struct {
	rises  []Rise
	number map[Point]int // datum: -1
	datum  float64
}

func (t levelTask) dims() (int, int) { return len(t.rises), len(t.number) - 1 }

func (t levelTask) size() []float64 {
	out := make([]float64, len(t.number)-1)
	for i := range out {
		out[i] = 1000
	}
	return out
}

func (t levelTask) linear(u []float64, jacobian *mat.Dense, miss []float64) {
	jacobian.Zero()
	for i, r := range t.rises {
		sd, computed := float64(r.SD), 0.0
		for _, end := range []struct {
			p    Point
			sign float64
		}{{r.To, 1}, {r.From, -1}} {
			j := t.number[end.p]
			if j < 0 {
				computed += end.sign * t.datum
				continue
			}
			computed += end.sign * u[j]
			jacobian.Set(i, j, end.sign/sd)
		}
		miss[i] = (float64(r.Rise) - computed) / sd
	}
}

// AdjustLevels finds the most likely heights from measured rises. A rise that
// makes no sense, or a point that no rise ties to the datum, comes back as a
// *Problem.
func AdjustLevels(n LevelNet) (*Levels, error) {
	t := levelTask{number: map[Point]int{n.Datum: -1}, datum: float64(n.Height)}
	names := []Point{n.Datum}
	for _, r := range n.Rises {
		if err := checkRise(r); err != nil {
			return nil, err
		}
		if r.SD == 0 {
			r.SD = n.Accuracy.Rise(0)
		}
		t.rises = append(t.rises, r)
		for _, p := range []Point{r.From, r.To} {
			if _, ok := t.number[p]; !ok {
				t.number[p] = len(names) - 1
				names = append(names, p)
			}
		}
	}
	if !sane(n.Height) {
		return nil, badNetwork("the height of %s is not a length", n.Datum)
	}
	if p := untied(t.rises, names); p != "" {
		return nil, &Problem{Trouble: HangsFree, Points: []Point{p}, Measure: [][2]Point{{n.Datum, p}},
			Why: "no rise ties the height of " + string(p) + " to that of " + string(n.Datum)}
	}
	if len(names) == 1 {
		return &Levels{Points: []Level{{n.Datum, unit.Measured{Value: n.Height}}}}, nil
	}
	sol := solve(t, make([]float64, len(names)-1))
	if !sol.settled || sol.singular {
		return nil, badNetwork("the rises do not determine the heights; their accuracies lie too far apart")
	}
	return t.report(names, sol), nil
}

func checkRise(r Rise) error {
	told := Reading{ID: r.ID, Where: r.Where, Points: []Point{r.From, r.To}}
	switch {
	case r.From == r.To:
		return bad(told, "a rise needs two different points")
	case !sane(r.Rise):
		return bad(told, "a rise of %g mm is not a length", float64(r.Rise))
	case !deviation(float64(r.SD), huge):
		return bad(told, "the standard deviation is not a number from 1e-9")
	}
	return nil
}

// untied finds a point that no chain of rises ties to the first name.
func untied(list []Rise, names []Point) Point {
	tied := map[Point]bool{names[0]: true}
	for range names {
		for _, r := range list {
			if tied[r.From] || tied[r.To] {
				tied[r.From], tied[r.To] = true, true
			}
		}
	}
	for _, p := range names {
		if !tied[p] {
			return p
		}
	}
	return ""
}

func (t levelTask) report(names []Point, sol solution) *Levels {
	c := precision(sol.jacobian, len(t.rises))
	out := &Levels{Test: globalTest(sol.cost, len(t.rises)-len(names)+1)}
	if out.Test.DOF > 0 {
		out.S0 = math.Sqrt(sol.cost / float64(out.Test.DOF))
	}
	out.Points = append(out.Points, Level{names[0], unit.Measured{Value: unit.Length(t.datum)}})
	for j, p := range names[1:] {
		out.Points = append(out.Points, Level{p, unit.Measured{Value: unit.Length(sol.u[j]), SD: unit.Length(math.Sqrt(c.q.At(j, j)))}})
	}
	for i, r := range t.rises {
		sd := float64(r.SD)
		o := RiseOutcome{Rise: r, Residual: unit.Length(-sol.miss[i] * sd), Redundancy: c.redundancy[i]}
		if o.Checked = out.Test.DOF > 0 && o.Redundancy >= sound; o.Checked {
			o.W = -sol.miss[i] / math.Sqrt(o.Redundancy)
			o.Least = unit.Length(noticed * sd / math.Sqrt(o.Redundancy))
		}
		out.Rises = append(out.Rises, o)
	}
	return out
}
