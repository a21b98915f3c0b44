package bring

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/passage"
	"slabwright/model/unit"
)

// HandRoom is what hands and a slip of the eye need round a part that is carried:
// common practice, no source.
const HandRoom unit.Length = 20

// Carried is a way to carry a part through a passage, and what is left then; below
// 0 it does not pass.
type Carried struct {
	How  string
	Left unit.Length
}

// Ways to hold a part.
const (
	Flat  = "flat"
	OnEnd = "standing on end"
)

// unbounded stands for a height that nobody told.
const unbounded unit.Length = 1e6

// Through gives the best way to carry a part through a passage.
func Through(step model.Passage, p *model.Part) Carried {
	l, w, t := Size(p)
	high := step.Height
	if high == 0 {
		high = unbounded
	}
	flat, edge, end := Flat, "on its long edge", OnEnd
	switch step.Kind {
	case "door":
		return roomiest(Carried{flat, min(step.Width-w, high-t)}, Carried{edge, min(step.Width-t, high-w)})
	case "corridor turn":
		list := []Carried{
			{flat, min(turning(step, l, w), high-t)},
			{edge, min(turning(step, l, t), high-w)},
		}
		if step.Height > 0 {
			list = append(list, Carried{end, min(turning(step, w, t), high-l)})
		}
		return roomiest(list...)
	case "stair":
		clear := passage.StairHeight(high, step.Pitch)
		return roomiest(Carried{flat, min(step.Width-w, clear-t)}, Carried{edge, min(step.Width-t, clear-w)})
	}
	in := Carried{"laid or stood in it as it fits best", passage.InBox([3]unit.Length{l, w, t}, [3]unit.Length{step.Length, step.Width, step.Height})}
	if step.Diagonal > 0 {
		in = roomiest(in, Carried{"at a slant, along the diagonal that was told", min(step.Diagonal-l, max(min(step.Width-w, step.Height-t), min(step.Width-t, step.Height-w)))})
	}
	return in
}

// turning is how much longer a panel of that width may be, or, where it is too
// wide for the ways, how much narrower it has to be.
func turning(step model.Passage, long, wide unit.Length) unit.Length {
	if over := min(step.Width, step.Turn) - wide; over < 0 {
		return over
	}
	return passage.RoundCorner(step.Width, step.Turn, wide) - long
}

func roomiest(list ...Carried) Carried {
	best := Carried{Left: unit.Length(math.Inf(-1))}
	for _, c := range list {
		if c.Left > best.Left {
			best = c
		}
	}
	return best
}
