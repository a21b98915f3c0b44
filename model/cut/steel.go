package cut

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// steelLots groups the angles that are still to be cut by their section.
func steelLots(d *model.Design) []SteelLot {
	var out []SteelLot
	for _, p := range d.Parts {
		if p.Angle == nil || p.Cut != nil {
			continue
		}
		i := slices.IndexFunc(out, func(l SteelLot) bool { return l.Section == p.Angle.Section.Name })
		if i < 0 {
			i = len(out)
			out = append(out, SteelLot{Section: p.Angle.Section.Name, Problem: saw.BarProblem{Depth: p.Angle.Section.Leg, Aim: saw.LeastCost}})
		}
		out[i].Problem.Pieces = append(out[i].Problem.Pieces, pieceOf(p))
	}
	return out
}

// pieceOf is an angle as a piece of a bar, seen on its seat leg: the near edge is
// the heel.
func pieceOf(p *model.Part) saw.Piece {
	a := p.Angle
	slant := func(e model.End) unit.Length {
		return unit.Length(math.Round(float64(a.Section.Leg)*math.Tan(float64(e.Mitre))*100) / 100)
	}
	return saw.Piece{ID: p.ID, Length: tenthUp(a.Length), Count: 1, Left: -slant(a.Left), Right: slant(a.Right)}
}

// steel plans the bars of one section.
func (s *Shopping) steel(l SteelLot, o model.Offers) {
	l.Problem.Kerf = o.KerfSteel
	if o.KerfSteel == 0 {
		l.Problem.Kerf = usualSteelKerf
		s.SteelNotes.assume(fmt.Sprintf("The saw takes %s mm in steel: the job file says nothing. Common practice, no source.", mm(usualSteelKerf)))
	}
	for _, b := range o.Bars {
		if b.Section == l.Section {
			id := fmt.Sprintf("%s, %s mm", b.Section, mm(b.Length))
			if n := slices.IndexFunc(l.Problem.Bars, func(x saw.Bar) bool { return x.ID == id }); n >= 0 {
				id += fmt.Sprintf(" (%d)", len(l.Problem.Bars)+1)
			}
			l.Problem.Bars = append(l.Problem.Bars, saw.Bar{ID: id, Length: b.Length, Count: b.Count, Price: b.Price})
			l.Offers = append(l.Offers, b)
		}
	}
	if len(l.Problem.Bars) == 0 {
		s.SteelNotes.Open = append(s.SteelNotes.Open, fmt.Sprintf("no bar of %s is on offer", l.Section))
		s.Steel = append(s.Steel, l)
		return
	}
	l.Plan = saw.PlanBars(l.Problem, saw.Effort{Steps: steps})
	for _, m := range l.Plan.Missing {
		s.SteelNotes.Open = append(s.SteelNotes.Open, m.Why)
	}
	s.Cost += l.Plan.Objective
	l.Second = secondBars(l)
	s.Steel = append(s.Steel, l)
}

// secondBars is the best set of bars that uses one bar less of one that the plan
// uses.
func secondBars(l SteelLot) *Choice {
	var best *Choice
	for k, n := range usedBars(l.Problem, l.Plan) {
		if n == 0 {
			continue
		}
		p := l.Problem
		p.Bars = slices.Clone(p.Bars)
		if n == 1 {
			p.Bars = slices.Delete(p.Bars, k, k+1)
		} else {
			p.Bars[k].Count = n - 1
		}
		if len(p.Bars) == 0 {
			continue
		}
		plan := saw.PlanBars(p, saw.Effort{Steps: steps / 4})
		if plan.Found && (best == nil || plan.Objective < best.Cost) {
			best = &Choice{Found: true, Buys: BuysBars(p, plan), Cost: plan.Objective, More: plan.Objective - l.Plan.Objective}
		}
	}
	return best
}

// BuysBars says what a plan buys.
func BuysBars(p saw.BarProblem, plan saw.BarPlan) []string {
	var out []string
	for k, n := range usedBars(p, plan) {
		if n > 0 {
			out = append(out, fmt.Sprintf("%d x %s", n, p.Bars[k].ID))
		}
	}
	return out
}

func usedBars(p saw.BarProblem, plan saw.BarPlan) []int {
	out := make([]int, len(p.Bars))
	for _, b := range plan.Bars {
		if k := slices.IndexFunc(p.Bars, func(x saw.Bar) bool { return x.ID == b.Bar }); k >= 0 {
			out[k]++
		}
	}
	return out
}
