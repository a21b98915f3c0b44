package revision

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Fate is what becomes of a part that was made to the old drawings.
type Fate string

// Fates.
const (
	Same     Fate = "same"                  // to be made as before
	Stays    Fate = "may stay"              // the old one would still serve
	Smaller  Fate = "must be recut smaller" // the old one would not go in
	Larger   Fate = "too small now"         // the old one leaves gaps that nothing covers, or does not reach what carries it
	Unfit    Fate = "does not serve"        // the old one breaks another rule
	NotKnown Fate = "not known"             // an input is missing
	Added    Fate = "new"
	Dropped  Fate = "dropped"
)

// PartChange is what became of a part.
type PartChange struct {
	ID    string
	Fate  Fate
	Why   string
	Mend  []string     // what to do to the old part, computed
	Sizes []SizeChange // as drawn, old and new
	Gaps  []GapRange   // round the old part in the new room, on each side that is bounded
	Sure  *float64     // chance that the old part goes in, 0 to 1; nil when none can be given
	Entry string       // the old part as the section cut of the new job would have it; "" for other kinds
}

// GapRange is the least and the widest gap along an edge.
type GapRange struct {
	Edge, To      string
	Asked         unit.Length
	Least, Widest unit.Length
}

func parts(old, now State) []PartChange {
	var out []PartChange
	for _, p := range old.Design.Parts {
		q := now.Design.Part(p.ID)
		if q == nil {
			out = append(out, PartChange{ID: p.ID, Fate: Dropped, Why: "The new design has no part of this name."})
			continue
		}
		out = append(out, fate(p, q, now))
	}
	for _, q := range now.Design.Parts {
		if old.Design.Part(q.ID) == nil {
			out = append(out, PartChange{ID: q.ID, Fate: Added, Why: "The old design had no part of this name."})
		}
	}
	return out
}

// fate finds out whether a part made to the old drawings serves in the new
// design, by building that with the old part in it.
func fate(p, q *model.Part, now State) PartChange {
	c := PartChange{ID: p.ID, Fate: Same, Sizes: sizes(p, q)}
	if p.Material != q.Material || p.Kind != q.Kind {
		c.Fate, c.Why = Unfit, fmt.Sprintf("It was a %s of %s and is a %s of %s now.", p.Kind, p.Material, q.Kind, q.Material)
		return c
	}
	if q.Cut != nil {
		c.Sizes = nil // it is not made again
		c.Sure = surely(now.Design, q.ID)
		c.Gaps = gaps(q)
		c.judge(ruleOf(now.Findings, "as-cut", q.ID), failing(now.Findings, q.ID, nil))
		c.Why = fmt.Sprintf("It is told as cut on %s. ", q.Cut.On) + c.Why
		return c
	}
	if p.Cut != nil {
		c.Fate, c.Why = NotKnown, fmt.Sprintf("The old job tells it as cut on %s, the new one does not: copy its entry.", p.Cut.On)
		c.Entry = p.Cut.Told()
		return c
	}
	if len(c.Sizes) == 0 {
		c.Why = "It is made to the same sizes."
		return c
	}
	told, ok := p.CutAsDrawn("2000-01-01") // any day
	if !ok {
		c.Fate, c.Why = Unfit, "Its sizes changed."
		return c
	}
	c.Entry = entry(told)
	d, found := now.with(told)
	kept := d.Part(p.ID)
	if kept == nil || kept.Cut == nil {
		c.Fate, c.Why = Unfit, "Its outline has other edges now: "+faultOf(d, p.ID)
		return c
	}
	c.Sure = surely(d, p.ID)
	c.Gaps = gaps(kept)
	c.judge(ruleOf(found, "as-cut", p.ID), failing(found, p.ID, now.Findings))
	return c
}

// entry writes a part as the section cut has it, with the day left open.
func entry(c model.CutPart) string { return strings.Replace(c.Told(), c.On, "DAY", 1) }

func faultOf(d *model.Design, part string) string {
	for _, f := range d.Faults() {
		if slices.Contains(f.Parts, part) {
			return f.Why
		}
	}
	return "it cannot be laid into the new design."
}

// surely is the chance that a slab goes in, on its least sure way.
func surely(d *model.Design, part string) *float64 {
	f, err := d.FitOf(part)
	if err != nil || len(f.Ways) == 0 {
		return nil
	}
	least := 1.0
	for _, w := range f.Ways {
		if w.Chance == nil {
			return nil
		}
		least = min(least, w.Chance.Fits(0))
	}
	return &least
}

// gaps are those round a cut slab as it lies, against the lines that its edges
// were to keep from.
func gaps(p *model.Part) []GapRange {
	var out []GapRange
	for _, t := range p.Trims() {
		if t.Edge.Bound == model.ToWall || t.Edge.Bound == model.ToPart {
			out = append(out, GapRange{Edge: t.Edge.Name, To: t.Edge.To, Asked: t.Edge.Gap, Least: t.Edge.Gap - t.Most(), Widest: t.Edge.Gap - t.Least()})
		}
	}
	return out
}

// ruleOf is the finding of a rule about a part; its zero value if there is none.
func ruleOf(list []find.Finding, rule, part string) find.Finding {
	for _, f := range list {
		if f.Rule == rule && slices.Contains(f.Parts, part) {
			return f
		}
	}
	return find.Finding{}
}

// failing lists what fails with a part, or is not known about it, and did
// neither before.
func failing(list []find.Finding, part string, before []find.Finding) []find.Finding {
	var out []find.Finding
	for _, f := range list {
		bad := f.Status == find.Fail || f.Status == find.Broken || f.Status == find.Unknown
		if !bad || !slices.Contains(f.Parts, part) || f.Rule == "as-cut" {
			continue
		}
		if !slices.ContainsFunc(before, func(g find.Finding) bool { return key(g) == key(f) && g.Status == f.Status }) {
			out = append(out, f)
		}
	}
	return out
}

// judge turns the findings about an old part in the new room into its fate.
func (c *PartChange) judge(cut find.Finding, fails []find.Finding) {
	c.Fate = Stays
	c.Why, _, _ = strings.Cut(afterDay(cut.Why), " Drilled already:")
	for _, x := range cut.Fix {
		c.Mend = append(c.Mend, x.Text)
	}
	tooLarge := cut.Status == find.Fail && cut.Required != nil && cut.Measured.Value > cut.Required.High
	switch {
	case tooLarge:
		c.Fate = Smaller
	case cut.Status == find.Fail:
		c.Fate = Larger
	}
	for _, f := range fails {
		c.Why += " " + f.Why
		for _, x := range f.Fix {
			if c.Fate != Smaller {
				c.Mend = append(c.Mend, x.Text)
			}
		}
		switch {
		case c.Fate == Smaller || c.Fate == Larger:
		case f.Status == find.Unknown:
			c.Fate = NotKnown
		case jams(f.Rule) && c.grew() < 0:
			c.Fate = Smaller
		case f.Rule == "bearing":
			c.Fate = Larger
		default:
			c.Fate = Unfit
		}
	}
}

// afterDay is what a finding about a cut part says beyond the day on which it
// was cut, which here is nobody's.
func afterDay(why string) string {
	_, rest, _ := strings.Cut(why, " was cut on ")
	if _, length, ok := strings.Cut(rest, " to "); ok && strings.Contains(length, "now it would be cut to") {
		return "It is " + strings.Replace(length, "now it would be cut to", "now it would be", 1)
	}
	_, rest, _ = strings.Cut(rest, ". ")
	return rest
}

// jams names the rules that fail when a part is too large for its place.
func jams(rule string) bool {
	return slices.Contains([]string{"fit-probability", "wall-gap", "parts-overlap", "angles-in-corner", "leaves-room"}, rule)
}

// grew is the difference of the size that changed most, new less old.
func (c *PartChange) grew() unit.Length {
	var most unit.Length
	for _, s := range c.Sizes {
		if d := s.Difference(); math.Abs(float64(d)) > math.Abs(float64(most)) {
			most = d
		}
	}
	return most
}
