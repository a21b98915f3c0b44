package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/find"
)

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

// passes judges a passage: each part that does not pass, or that part of those
// that pass which has least room.
func (s Site) passes(i int, step model.Passage) []find.Finding {
	name := step.Name
	if name == "" {
		name = fmt.Sprintf("step %d, %s", i+1, step.Kind)
	}
	var out []find.Finding
	var tightest *model.Part
	best := bring.Carried{Left: farthest}
	for _, p := range s.Design.Parts {
		if len(p.Bodies) == 0 || p.Rod != nil {
			continue
		}
		switch c := bring.Through(step, p); {
		case c.Left < bring.HandRoom:
			out = append(out, passing(name, step, p, c))
		case c.Left < best.Left:
			tightest, best = p, c
		}
	}
	if len(out) == 0 && tightest != nil {
		out = append(out, passing(name, step, tightest, best))
	}
	return out
}

func passing(name string, step model.Passage, p *model.Part, c bring.Carried) find.Finding {
	long, wide, thick := bring.Size(p)
	f := find.Finding{Title: fmt.Sprintf("%s on its way: %s", capital(p.ID), name), Parts: []string{p.ID}, Line: step.Pos.String(),
		Measured: mm(c.Left), Required: limit(find.AtLeast, bring.HandRoom),
		Assumed: []find.Assumption{{What: "straight, square passages as wide and high all through as told; no handrail, door leaf or lamp in them", Source: "job file"}},
	}.Judge()
	size := fmt.Sprintf("%s, %.0f x %.0f x %.0f mm", p.ID, float64(long), float64(wide), float64(thick))
	switch {
	case c.Left < 0:
		f.Why = fmt.Sprintf("%s, does not pass %s: even %s, %.0f mm are missing.", capital(size), name, c.How, -float64(c.Left))
		f.Fix = []find.Fix{hint("make %s in pieces that pass, bring it through a window, or measure %s again", p.ID, name)}
		if step.Kind == "corridor turn" && step.Height == 0 {
			f.Fix = append(f.Fix, hint("give the height of %s: standing on end it may pass", name))
		}
	case f.Status == find.Fail:
		f.Status = find.Warn
		f.Why = fmt.Sprintf("%s, passes %s %s with %.0f mm; hands want %.0f.", capital(size), name, c.How, float64(c.Left), float64(bring.HandRoom))
		f.Fix = []find.Fix{hint("try the way with a lath and a board of that size first")}
	default:
		f.Why = fmt.Sprintf("%s, passes %s %s with %.0f mm left; it has the least room of all parts.", capital(size), name, c.How, float64(c.Left))
	}
	if step.Kind == "stair" {
		f.Assumed = append(f.Assumed, find.Assumption{What: "a straight flight with room to turn at its head and foot", Source: "job file"})
	}
	return f
}
