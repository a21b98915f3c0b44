package report

import (
	"fmt"
	"strings"

	"slabwright/model/cut"
	"slabwright/model/unit"
)

// shopping gives what to buy of what is on offer, and what another choice costs.
func shopping(w *strings.Builder, s *cut.Shopping) {
	if s == nil || len(s.Wood)+len(s.Steel) == 0 {
		return
	}
	fmt.Fprintf(w, "## What to buy of what is on offer\n\n")
	price := func(v float64) string { return cut.Money(s.Currency, v) }
	for _, l := range s.Wood {
		if !l.Plan.Found {
			continue
		}
		fmt.Fprintf(w, "- %s, %s mm: %s, together %s; %s.\n", l.Species, unit.Style{}.Length(l.Thickness), strings.Join(cut.Buys(l.Problem, l.Plan), ", "), price(l.Plan.Objective), proof(l.Plan.Optimal, price(l.Plan.Bound)))
		second(w, l.Second, price)
		for _, h := range l.Halved {
			if h.Found && h.More < 0 {
				fmt.Fprintf(w, "  - %s: %s, %s less.\n", h.What, strings.Join(h.Buys, ", "), price(-h.More))
			}
		}
	}
	for _, l := range s.Steel {
		if l.Plan.Found {
			fmt.Fprintf(w, "- %s: %s, together %s; %s.\n", l.Section, strings.Join(cut.BuysBars(l.Problem, l.Plan), ", "), price(l.Plan.Objective), proof(l.Plan.Optimal, price(l.Plan.Bound)))
			second(w, l.Second, price)
		}
	}
	for _, l := range s.Packs {
		if !l.Found {
			continue
		}
		fmt.Fprintf(w, "- %s %s, %d wanted: %s, together %s; no packs cost less, that is proved.\n", l.Need.What, l.Need.Size, l.Count, strings.Join(l.Buys(), ", "), price(l.Cost))
		second(w, l.Second, price)
	}
	fmt.Fprintf(w, "- All of that together: %s. Not priced: %s.\n", price(s.Cost), strings.Join(s.CostDocument().NotPriced, "; "))
	for _, o := range s.Open() {
		fmt.Fprintf(w, "- Open: %s.\n", o)
	}
	for _, l := range s.Wood {
		if l.Plan.Found {
			continue
		}
		for _, h := range l.Halved {
			if h.Found {
				fmt.Fprintf(w, "  - %s: %s, together %s.\n", h.What, strings.Join(h.Buys, ", "), price(h.Cost))
			}
		}
	}
	for _, a := range s.Assumed() {
		fmt.Fprintf(w, "- Taken for granted: %s\n", a)
	}
	w.WriteString("\n")
}

func proof(optimal bool, bound string) string {
	if optimal {
		return "no set costs less, that is proved"
	}
	return "no set costs less than " + bound
}

func second(w *strings.Builder, c *cut.Choice, price func(float64) string) {
	if c != nil {
		fmt.Fprintf(w, "  - second best: %s, %s more.\n", strings.Join(c.Buys, ", "), price(c.More))
	}
}
