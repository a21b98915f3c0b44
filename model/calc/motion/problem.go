package motion

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Problem is a part to be brought from one pose to another, or out over a line.
type Problem struct {
	Part      []Body // in its own axes; the less far from their origin, the quicker
	Fixed     []Body
	From      Pose
	To        *Pose     // where it has to get to; nil: anywhere Beyond
	Out       geom.Vec3 // direction of length 1; used with Beyond
	Beyond    unit.Length
	Roomy     unit.Length // that must be free all round when it is Beyond
	Ways      []Way       // that may change; the others stay as in From
	Low, High Pose        // bounds of the ways that may change
	// Clear is to be kept to everything; negative: overlap that is let pass. With
	// 0, NoWay is exact. Above 0 there may still be a way that squeezes past a
	// corner with less than three times as much.
	Clear unit.Length
	Looks int // measurements until it gives up; 0: 20 000
}

// Verdict is what a search ends with.
type Verdict string

// The verdicts.
const (
	Found  Verdict = "a way"
	NoWay  Verdict = "no way"
	GaveUp Verdict = "gave up"
)

// Answer is the result of a search. Bounded tells, with NoWay, that the part
// could get to no bound of the ways: it is shut in by the bodies alone.
type Answer struct {
	Verdict Verdict
	Way     []Pose // from From on, each reached in even motion; Found only
	Looks   int
	Bounded bool
}

// usualLooks is how many measurements a search may take when nothing is said.
const usualLooks = 20_000

// touch is how much overlap counts as touching: the kernel rounds to 0.001 mm.
const touch = 0.01

// reach is how far a unit of each way moves the part's points at most.
func reach(part []Body) coords {
	out := coords{1, 1, 1}
	for _, b := range part {
		for _, p := range b.points {
			out[Turn] = max(out[Turn], p.len())
			out[Roll] = max(out[Roll], p.len())
			out[Tilt] = max(out[Tilt], math.Hypot(p.y, p.z))
		}
	}
	return out
}

// move is how far a change of pose moves any point at most.
func (r coords) move(d coords) float64 {
	return vec{d[X], d[Y], d[Z]}.len() + math.Abs(d[Turn])*r[Turn] + math.Abs(d[Roll])*r[Roll] + math.Abs(d[Tilt])*r[Tilt]
}

func (c coords) minus(d coords) coords {
	for i := range c {
		c[i] -= d[i]
	}
	return c
}

// beyond is how far the part's hindmost point is past the line.
func (p *posed) beyond(out vec, line float64) float64 {
	least := math.Inf(1)
	for i := range p.bodies {
		lo, _ := span(p.bodies[i].points, out)
		least = min(least, lo)
	}
	return least - line
}

func (c coords) times(k float64) coords {
	for i := range c {
		c[i] *= k
	}
	return c
}
