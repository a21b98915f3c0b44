package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// surely is the chance in percent with which a slab must go in as drawn.
const surely = 99

var fitRule = Rule{
	ID: "fit-probability", Title: "The slab goes in, as surely as the room is known", Fit: true,
	Basis: "linear propagation of the survey's covariance and 40000 drawn rooms; 2 mm must be left to a wall, 99 %: " + practice,
	Why:   "Walls are where the tape says only within a millimetre or two, and a slab is cut once. One that is too long is sawn in a finished room, one that is too short is lost. A reading that nothing checks can be wrong by any amount: then nobody can say how surely anything fits.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			f, err := s.Design.FitOf(p.ID)
			if err != nil {
				u := unknown(fmt.Sprintf("how surely %s fits cannot be computed: %v.", p.ID, err), hint("measure the room and write the readings into the job file"))
				u.Parts = []string{p.ID}
				out = append(out, u)
			}
			for _, w := range f.Ways {
				out = append(out, s.judgeFit(p, f, w))
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No slab is bound at both of its ends, so none can jam."})
		}
		return out
	},
}

// judgeFit is the finding for one way across a slab.
func (s Site) judgeFit(p *model.Part, f model.Fit, w model.FitWay) find.Finding {
	t := w.Tightest[0]
	out := find.Finding{Parts: []string{p.ID}, At: at(t.At.Up(t.Height)), Assumed: f.Assumed}
	for _, g := range w.Tightest {
		if edge(p, g.Edge).Bound == model.ToWall {
			out.Walls = append(out.Walls, g.To)
		}
	}
	if w.Chance == nil {
		u := notSure(p, w)
		out.Status, out.Title, out.Why, out.Fix = u.Status, u.Title, u.Why, u.Fix
		return out
	}
	chance, longer := 100*w.Chance.Fits(0), w.Chance.Longest(surely/100.).Drawn
	out.Measured = &find.Quantity{Value: chance, Unit: "%"}
	out.Required = &find.Limit{Value: surely, Relation: find.AtLeast, Unit: "%"}
	out = out.Judge()
	longer = unit.Length(math.Floor(float64(longer)*10) / 10) // nothing is promised by rounding
	out.Margin = mm(longer)
	made := "drawn"
	if p.Cut != nil {
		made = "cut"
	}
	out.Why = fmt.Sprintf("%s, %s with a %s of %s, goes in between %s and %s with %s.", capital(p.ID), made, w.Name, fromTo(w.Size, w.Size), w.From, w.To, percent(chance))
	if out.Status == find.Fail {
		out.Why += fmt.Sprintf(" It must be %.1f mm %s to go in with %d %%.", -float64(longer), word(w, "shorter", "shallower"), surely)
		out.Fix = s.shorten(p, w, -longer)
		if p.Cut != nil {
			out.Fix = []find.Fix{hint("take %.1f mm off it", -float64(longer))}
		}
		for _, m := range f.Measure {
			out.Fix = append(out.Fix, hint("or %s", m))
		}
		return out
	}
	out.Why += fmt.Sprintf(" It could be %.1f mm %s.", float64(longer), word(w, "longer", "deeper"))
	if p.Cut != nil {
		return out
	}
	o := w.Order
	if o.Good {
		out.Why += " " + capital(order(w)) + "."
		return out
	}
	out.Status = find.Warn
	out.Why += fmt.Sprintf(" But no whole millimetre that a shop delivers with %s goes in as surely and closes the joints: %.0f jams with %s and shows too wide a gap with %s.",
		w.Tolerance(), float64(o.Size), percent(100*o.Jams), percent(100*o.Wide))
	out.Fix = []find.Fix{hint("agree on a closer tolerance with the shop, or have %s left longer and scribe it on the spot", p.ID)}
	return out
}

// word picks the word for a length or for a depth.
func word(w model.FitWay, length, depth string) string {
	if w.Name == "depth" {
		return depth
	}
	return length
}

func edge(p *model.Part, name string) model.Edge {
	for _, e := range p.Slab.Edges {
		if e.Name == name {
			return e
		}
	}
	return model.Edge{}
}

// notSure is the finding where readings forbid a probability.
func notSure(p *model.Part, w model.FitWay) find.Finding {
	what := fmt.Sprintf("on which the %s of %s hangs", w.Name, p.ID)
	rest := fmt.Sprintf(" As read, %.1f mm of play would be left; a slip can take all of it.", hundredth(w.Play.Value))
	if len(w.Disputed) > 0 {
		f := unknown(fmt.Sprintf("%sthe %s contradicts the others, so no probability can be given for the %s of %s.", oneOrMany(w.Disputed, "", "one of "), readings(w.Disputed), w.Name, p.ID)+rest,
			hint("measure %s again before anything is ordered or cut", list(w.Disputed)))
		f.Title = "Readings contradict each other: no probability can be given"
		return f
	}
	f := unknown(fmt.Sprintf("nothing checks the %s, %s.", readings(w.Unchecked), what)+rest,
		hint("take readings that cross those, such as a diagonal or a width at another depth, and write them into the job file"))
	f.Title = "Unchecked: no probability can be given"
	return f
}

func readings(names []string) string { return oneOrMany(names, "reading ", "readings ") + list(names) }

func oneOrMany(names []string, one, many string) string {
	if len(names) == 1 {
		return one
	}
	return many
}

// shorten gives ways to mend a slab that is too long: wider gaps, the order that
// goes in, more readings.
func (s Site) shorten(p *model.Part, w model.FitWay, lack unit.Length) []find.Fix {
	var walls []model.Edge
	for _, g := range w.Tightest {
		if e := edge(p, g.Edge); e.Bound == model.ToWall {
			walls = append(walls, e)
		}
	}
	var out []find.Fix
	if len(walls) > 0 && !math.IsInf(float64(lack), 0) {
		each := up((lack/unit.Length(len(walls))+0.05)*10) / 10 // the chance is known within 0.05 mm of length
		gap := walls[0].Gap + each
		out = append(out, s.set(hint("make the gap to %s %.1f mm wider: %.1f mm", wallsOf(walls), float64(each), float64(gap)), gapParameter(walls[0]), walls[0].Gap, gap))
	}
	if o := w.Order; o.Jams <= 1-surely/100. {
		out = append(out, hint("or %s, which jams with %s", order(w), percent(100*o.Jams)))
	}
	return append(out, hint("or take more widths between %s and %s, at the back and at the front: the better they are known the less must be left", w.From, w.To))
}

func wallsOf(edges []model.Edge) string {
	var names []string
	for _, e := range edges {
		names = append(names, e.To)
	}
	return list(names)
}

// order is "order 2365 +0/-2 along the back, 2374.5 along the front".
func order(w model.FitWay) string {
	out := fmt.Sprintf("order %.0f %s", float64(w.Order.Size), w.Tolerance())
	other := w.OrderOther()
	if math.Abs(float64(other-w.Order.Size)) < 0.05 {
		return out
	}
	return out + fmt.Sprintf(" %s, %.1f %s", word(w, "along the back", "at the left"), float64(other), word(w, "along the front", "at the right"))
}

// percent writes a chance; what the drawn rooms cannot tell from certainty is
// not called certain.
func percent(p float64) string {
	switch {
	case p > 99.95:
		return "more than 99.9 %"
	case p < 0.05:
		return "less than 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", p)
}
