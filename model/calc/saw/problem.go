package saw

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Aim is what a plan is to be best at.
type Aim string

// Aims. Least cost and fewest make every part; most value takes as much as it
// is worth out of the stock that is there.
const (
	LeastCost Aim = "cost"
	Fewest    Aim = "fewest"
	MostValue Aim = "value"
)

// Effort bounds the work of a search. Steps counts the states that are looked
// at; 0 stands for Usual. Progress, if there, hears of every better plan or
// bound and stops the search by answering false.
type Effort struct {
	Steps    int
	Progress func(Progress) bool
}

// Usual is the effort where nothing is said.
const Usual = 400_000

// Progress is how far a search has come.
type Progress struct {
	Objective, Bound float64
	Found            bool // a plan is there
	Steps            int
}

// Missing is a part that cannot be made, with the reason.
type Missing struct {
	Item    string
	Why     string
	Nearest string // the stock that comes nearest, "" if there is none
}

// budget counts the steps of one search.
type budget struct {
	left, spent int
	hear        func(Progress) bool
	stopped     bool
	now         Progress
}

func (e Effort) budget() *budget {
	n := e.Steps
	if n <= 0 {
		n = Usual
	}
	return &budget{left: n, hear: e.Progress}
}

// spend takes n steps and is false when none are left.
func (b *budget) spend(n int) bool {
	b.left -= n
	b.spent += n
	if b.hear != nil && b.spent/4096 != (b.spent-n)/4096 {
		b.tell()
	}
	return b.left > 0 && !b.stopped
}

func (b *budget) tell() {
	if b.hear == nil || b.stopped {
		return
	}
	b.now.Steps = b.spent
	b.stopped = !b.hear(b.now)
}

// grid is a length in micrometres, or in their greatest common measure.
type grid = int64

// onGrid gives a length in whole micrometres.
func onGrid(l unit.Length) grid { return grid(math.Round(float64(l) * 1000)) }

// ofGrid gives a length back in millimetres.
func ofGrid(g grid) unit.Length { return unit.Length(float64(g) / 1000) }

// measure is the greatest common measure of lengths; 1 where there is none.
func measure(list ...grid) grid {
	var g grid
	for _, v := range list {
		for v != 0 {
			g, v = v, g%max(v, -v)
		}
		g = max(g, -g)
	}
	return max(g, 1)
}

// mm writes a length as a person reads it.
func mm(l unit.Length) string { return unit.Style{}.Length(l) + " mm" }

func size(l, w unit.Length) string {
	return fmt.Sprintf("%s x %s", unit.Style{}.Length(l), mm(w))
}

// coarsest is the unit of which all prices are whole multiples, 0 if there is
// none.
func coarsest(prices []float64) float64 {
	var all []grid
	for _, p := range prices {
		c := math.Round(p * 1000)
		if math.Abs(p*1000-c) > 1e-6 || c > 1e15 {
			return 0
		}
		all = append(all, grid(c))
	}
	sum := grid(0)
	for _, c := range all {
		sum += c
	}
	if sum == 0 {
		return 0
	}
	return float64(measure(all...)) / 1000
}

// roundUp lifts a bound to the next multiple of a unit.
func roundUp(v, unit float64) float64 {
	if unit == 0 {
		return v
	}
	return math.Ceil(v/unit-1e-6) * unit
}
