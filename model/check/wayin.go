package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/calc/passage"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// handRoom is what hands and a slip of the eye need round a part that is carried.
const handRoom unit.Length = 20

var wayInRule = Rule{
	ID: "way-in", Title: "Every part passes on its way into the room", Fit: true,
	Basis: "closed forms for a box round a right-angled corner, on a stair, in a lift or car; 20 mm for hands: " + practice,
	Why:   "The longest board stands in the hall before the turn to the stair, paid and finished. A door passes its section; a corner passes its length only if it is narrow, on edge.",
	Run: func(s Site) []find.Finding {
		if len(s.Job.House.Way) == 0 {
			return []find.Finding{{Status: find.Note, Title: "The way in", Why: "Not checked: the job file says nothing of the way from the street to the room (house, way).",
				Fix: []find.Fix{hint("measure doors, turns, stairs and the car, and write them under house, way")}}}
		}
		var out []find.Finding
		for i, step := range s.Job.House.Way {
			out = append(out, s.passes(i, step)...)
		}
		return out
	},
}

// carried is a way to carry a part through a passage, and what is left then.
type carried struct {
	how  string
	left unit.Length
}

// passes judges a passage: each part that does not pass, or that part of those
// that pass which has least room.
func (s Site) passes(i int, step model.Passage) []find.Finding {
	name := step.Name
	if name == "" {
		name = fmt.Sprintf("step %d, %s", i+1, step.Kind)
	}
	var out []find.Finding
	var tightest *model.Part
	best := carried{left: farthest}
	for _, p := range s.Design.Parts {
		if len(p.Bodies) == 0 || p.Rod != nil {
			continue
		}
		switch c := through(step, p); {
		case c.left < handRoom:
			out = append(out, passing(name, step, p, c))
		case c.left < best.left:
			tightest, best = p, c
		}
	}
	if len(out) == 0 && tightest != nil {
		out = append(out, passing(name, step, tightest, best))
	}
	return out
}

func passing(name string, step model.Passage, p *model.Part, c carried) find.Finding {
	long, wide, thick := bring.Size(p)
	f := find.Finding{Title: fmt.Sprintf("%s on its way: %s", capital(p.ID), name), Parts: []string{p.ID}, Line: step.Pos.String(),
		Measured: mm(c.left), Required: limit(find.AtLeast, handRoom),
		Assumed: []find.Assumption{{What: "straight, square passages as wide and high all through as told; no handrail, door leaf or lamp in them", Source: "job file"}},
	}.Judge()
	size := fmt.Sprintf("%s, %.0f x %.0f x %.0f mm", p.ID, float64(long), float64(wide), float64(thick))
	switch {
	case c.left < 0:
		f.Why = fmt.Sprintf("%s, does not pass %s: even %s, %.0f mm are missing.", capital(size), name, c.how, -float64(c.left))
		f.Fix = []find.Fix{hint("make %s in pieces that pass, bring it through a window, or measure %s again", p.ID, name)}
		if step.Kind == "corridor turn" && step.Height == 0 {
			f.Fix = append(f.Fix, hint("give the height of %s: standing on end it may pass", name))
		}
	case f.Status == find.Fail:
		f.Status = find.Warn
		f.Why = fmt.Sprintf("%s, passes %s %s with %.0f mm; hands want %.0f.", capital(size), name, c.how, float64(c.left), float64(handRoom))
		f.Fix = []find.Fix{hint("try the way with a lath and a board of that size first")}
	default:
		f.Why = fmt.Sprintf("%s, passes %s %s with %.0f mm left; it has the least room of all parts.", capital(size), name, c.how, float64(c.left))
	}
	if step.Kind == "stair" {
		f.Assumed = append(f.Assumed, find.Assumption{What: "a straight flight with room to turn at its head and foot", Source: "job file"})
	}
	return f
}

// through gives the best way to carry a part through a passage.
func through(step model.Passage, p *model.Part) carried {
	l, w, t := bring.Size(p)
	high := step.Height
	if high == 0 {
		high = farthest
	}
	flat, edge, end := "flat", "on its long edge", "standing on end"
	switch step.Kind {
	case "door":
		return roomiest(carried{flat, min(step.Width-w, high-t)}, carried{edge, min(step.Width-t, high-w)})
	case "corridor turn":
		list := []carried{
			{flat, min(turning(step, l, w), high-t)},
			{edge, min(turning(step, l, t), high-w)},
		}
		if step.Height > 0 {
			list = append(list, carried{end, min(turning(step, w, t), high-l)})
		}
		return roomiest(list...)
	case "stair":
		clear := passage.StairHeight(high, step.Pitch)
		return roomiest(carried{flat, min(step.Width-w, clear-t)}, carried{edge, min(step.Width-t, clear-w)})
	}
	in := carried{"laid or stood in it as it fits best", passage.InBox([3]unit.Length{l, w, t}, [3]unit.Length{step.Length, step.Width, step.Height})}
	if step.Diagonal > 0 {
		in = roomiest(in, carried{"at a slant, along the diagonal that was told", min(step.Diagonal-l, max(min(step.Width-w, step.Height-t), min(step.Width-t, step.Height-w)))})
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

func roomiest(list ...carried) carried {
	best := carried{left: unit.Length(math.Inf(-1))}
	for _, c := range list {
		if c.left > best.left {
			best = c
		}
	}
	return best
}
