package cut

import (
	"fmt"
	"slices"

	"slabwright/model/calc/saw"
	"slabwright/model/unit"
)

// secondSlabs is the best set of slabs that does without one of those that the
// plan uses: no other set comes closer, as one with more slabs besides costs more.
func (s *Shopping) secondSlabs(l WoodLot) *Choice {
	if !l.Plan.Found {
		return nil
	}
	var best *Choice
	for k, n := range usedSheets(l.Problem, l.Plan) {
		if n == 0 {
			continue
		}
		p := l.Problem
		p.Sheets = slices.Clone(p.Sheets)
		if n == 1 {
			p.Sheets = slices.Delete(p.Sheets, k, k+1)
		} else {
			p.Sheets[k].Count = n - 1
		}
		if len(p.Sheets) == 0 {
			continue
		}
		plan := saw.PlanSheets(p, saw.Effort{Steps: steps})
		if !plan.Found || best != nil && plan.Objective >= best.Cost {
			continue
		}
		best = &Choice{Found: true, Buys: Buys(p, plan), Cost: plan.Objective, More: plan.Objective - l.Plan.Objective}
	}
	return best
}

// Buys says what a plan buys.
func Buys(p saw.Problem, plan saw.Plan) []string {
	var out []string
	for k, n := range usedSheets(p, plan) {
		if n > 0 {
			out = append(out, fmt.Sprintf("%d x %s", n, p.Sheets[k].ID))
		}
	}
	return out
}

// jointWood is what each half of a parted slab gets for its joint: planed square
// on both. Common practice, no source.
const jointWood unit.Length = 3

// halves tells what changes when one part is made of two pieces, joined end to
// end or side by side.
func (s *Shopping) halves(l WoodLot) []Choice {
	var out []Choice
	for i, b := range l.Blanks {
		for _, side := range []bool{false, true} {
			p := l.Problem
			one, two := b.around(), b.around()
			what := fmt.Sprintf("%s of two pieces end to end", b.ID)
			if side {
				what = fmt.Sprintf("%s of two pieces side by side", b.ID)
				one.Width, two.Width = tenthUp(one.Width/2+jointWood), tenthUp(two.Width/2+jointWood)
				two.Edge = saw.NoSide
			} else {
				one.Length, two.Length = tenthUp(b.Length/2+jointWood), tenthUp(b.Length/2+jointWood)
			}
			one.ID, two.ID = b.ID+" 1/2", b.ID+" 2/2"
			p.Items = slices.Replace(slices.Clone(p.Items), i, i+1, one, two)
			c := Choice{What: what}
			if plan := saw.PlanSheets(p, saw.Effort{Steps: steps / 2}); plan.Found {
				c.Found, c.Buys, c.Cost, c.More = true, Buys(p, plan), plan.Objective, plan.Objective-l.Plan.Objective
			} else if len(plan.Missing) > 0 {
				c.Why = plan.Missing[0].Why
			}
			out = append(out, c)
		}
	}
	return out
}
