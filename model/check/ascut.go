package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// alike is how far a cut part may be off before it is worth a word.
const alike unit.Length = 1

var asCutRule = Rule{
	ID: "as-cut", Title: "A part that is already cut still serves", Fit: true,
	Basis: "2 mm left to a wall, joints no more than 4 mm wider than planned, 2 mm between slabs; 12 mm can be covered: " + practice,
	Why:   "After a second survey the walls stand elsewhere, and what is cut stays as it is. Either its gaps take the difference, or a neighbour does, or it is trimmed, or it is lost.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			switch {
			case p.Cut == nil:
			case p.Slab != nil:
				out = append(out, s.judgeCutSlab(p))
			case p.Bracket() != nil:
				out = append(out, judgeCutBracket(p))
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "No part is told as cut."})
		}
		return out
	},
}

// give is how far an edge may stand over the line that is wanted, and how far
// it may fall short of it.
func give(e model.Edge) (over, short unit.Length) {
	w := model.UsualFit
	if e.Bound == model.ToPart {
		return e.Gap - w.LeastJoint, w.WiderJoint
	}
	return e.Gap - w.Least, w.Wider
}

// judgeCutSlab looks at the edge that has least left to give.
func (s Site) judgeCutSlab(p *model.Part) find.Finding {
	f := find.Finding{Status: find.Pass, Parts: []string{p.ID}, Assumed: laid(p)}
	var worst *model.Trim
	left := unit.Length(1e9)
	trims := p.Trims()
	for i, t := range trims {
		if t.Edge.Bound != model.ToWall && t.Edge.Bound != model.ToPart {
			continue
		}
		over, short := give(t.Edge)
		if m := min(over-t.Most(), short+t.Least()); m < left {
			left, worst = m, &trims[i]
		}
	}
	f.Why = fmt.Sprintf("%s was cut on %s. %s", capital(p.ID), p.Cut.On, differences(trims))
	if worst == nil {
		return f
	}
	over, short := give(worst.Edge)
	tooLarge := over-worst.Most() <= short+worst.Least()
	f.Measured, f.Required = mm(worst.Most()), &find.Limit{Value: hundredth(-short), High: hundredth(over), Relation: find.Between, Unit: "mm"}
	if !tooLarge {
		f.Measured = mm(worst.Least())
	}
	if worst.Edge.Bound == model.ToWall {
		f.Walls = []string{worst.Edge.To}
	}
	f.At = at(worst.At[0].Up(p.Slab.Top))
	f = f.Judge()
	switch {
	case f.Status == find.Pass:
	case tooLarge:
		f.Fix = s.tooLarge(p, trims, *worst)
	default:
		if gap := worst.Edge.Gap - worst.Least(); worst.Edge.Bound == model.ToWall && gap <= widestGap {
			f.Status = find.Warn
		}
		f.Fix = s.tooSmall(p, *worst)
	}
	return f
}

// laid says what is taken for granted about a cut slab.
func laid(p *model.Part) []find.Assumption {
	out := []find.Assumption{{What: "it lies along its back line, or closed to the slab in front of it, with what is over shared between both ends", Source: practice}}
	if !p.Cut.Checked {
		out = append(out, find.Assumption{What: "its sizes are right: no size checks another", Source: "job file"})
	}
	return out
}

// differences tells how each edge lies against the line that is wanted.
func differences(trims []model.Trim) string {
	var out []string
	for _, t := range trims {
		if abs(t.Start) < alike && abs(t.End) < alike {
			continue
		}
		out = append(out, fmt.Sprintf("its %s edge %s", t.Edge.Name, stands(t)))
	}
	if out == nil {
		return fmt.Sprintf("It is what would be cut now, within %.1f mm.", float64(alike))
	}
	return "Against what would be cut now, " + list(out) + "."
}

// stands writes how an edge lies: seen clockwise from above.
func stands(t model.Trim) string {
	word := func(l unit.Length) string {
		if l < 0 {
			return "falls short"
		}
		return "stands over"
	}
	a, b := t.Start, t.End
	if fmt.Sprintf("%.1f", hundredth(a)) == fmt.Sprintf("%.1f", hundredth(b)) {
		return fmt.Sprintf("%s by %.1f mm", word(a), float64(abs(a)))
	}
	from, to := ends(t.Edge)
	if (a < 0) == (b < 0) {
		return fmt.Sprintf("%s by %.1f mm at its %s end and %.1f mm at its %s end", word(a), float64(abs(a)), from, float64(abs(b)), to)
	}
	return fmt.Sprintf("%s by %.1f mm at its %s end and %s by %.1f mm at its %s end", word(a), float64(abs(a)), from, word(b), float64(abs(b)), to)
}

// ends names the two ends of an edge as somebody before the slab sees them;
// edges run clockwise from above.
func ends(e model.Edge) (start, end string) {
	switch {
	case e.Name == "left":
		return "front", "back"
	case e.Name == "right":
		return "back", "front"
	case e.Name == "front":
		return "right", "left"
	}
	return "left", "right"
}

// tooLarge proposes what to take off: of the part, or of a neighbour that is not
// cut yet.
func (s Site) tooLarge(p *model.Part, trims []model.Trim, worst model.Trim) []find.Fix {
	off, keep := oneEnd(trims, worst)
	out := []find.Fix{hint("trim %s: %s", p.ID, trimming(off))}
	if keep > 0 {
		least := off
		least.Start, least.End = off.Start-keep, off.End-keep
		out = append(out, hint("or, if the room is just as measured, only until the least gaps are left: %s", trimming(least)))
	}
	for _, t := range trims {
		n := s.Design.Part(t.Edge.To)
		if t.Edge.Bound == model.ToPart && n != nil && n.Cut == nil {
			out = append(out, hint("or make %s, which is not cut yet, %.1f mm smaller on that side", n.ID, float64(off.Most())))
		}
	}
	return out
}

// oneEnd is what must come off one edge when the slab is first pushed so that the
// edge across from it keeps its gap; keep is how much less it is when both have
// the least gaps only.
func oneEnd(trims []model.Trim, worst model.Trim) (off model.Trim, keep unit.Length) {
	over, _ := give(worst.Edge)
	keep = max(0, over)
	for i, j := range map[int]int{0: len(trims) - 2, len(trims) - 2: 0} {
		across := trims[j]
		if trims[i].Edge.Name != worst.Edge.Name || across.Edge.Bound != model.ToWall && across.Edge.Bound != model.ToPart {
			continue
		}
		over, _ := give(across.Edge)
		keep += max(0, over)
		worst.Start, worst.End = worst.Start+across.Most(), worst.End+across.Most()
	}
	return worst, keep
}

// trimming says what to take off an edge.
func trimming(t model.Trim) string {
	from, to := ends(t.Edge)
	a, b := max(0, t.Start), max(0, t.End)
	switch {
	case abs(a-b) < 0.05:
		return fmt.Sprintf("take %.1f mm off its %s edge", float64(a), t.Edge.Name)
	case a < 0.05:
		return fmt.Sprintf("take %.1f mm at the %s end, nothing at the %s end, off its %s edge", float64(b), to, from, t.Edge.Name)
	case b < 0.05:
		return fmt.Sprintf("take %.1f mm at the %s end, nothing at the %s end, off its %s edge", float64(a), from, to, t.Edge.Name)
	}
	return fmt.Sprintf("take %.1f mm at the %s end and %.1f mm at the %s end off its %s edge", float64(a), from, float64(b), to, t.Edge.Name)
}

// tooSmall proposes to let the gap show, to cover it, or to cut anew.
func (s Site) tooSmall(p *model.Part, t model.Trim) []find.Fix {
	gap := t.Edge.Gap - t.Least()
	if t.Edge.Bound == model.ToPart {
		out := []find.Fix{}
		if n := s.Design.Part(t.Edge.To); n != nil && n.Cut == nil {
			out = append(out, hint("make %s, which is not cut yet, %.1f mm larger on that side", n.ID, float64(-t.Least())))
		}
		return append(out, hint("glue a strip of the same wood, %.0f mm and the kerf, to its %s edge, and cut it to the line", float64(up(-t.Least())), t.Edge.Name))
	}
	wide := unit.Length(float64(int(gap*10+0.999))) / 10
	out := []find.Fix{s.set(hint("let the gap show evenly: %.1f mm instead of %.1f mm", float64(wide), float64(t.Edge.Gap)), gapParameter(t.Edge), t.Edge.Gap, wide)}
	if gap <= widestGap {
		return append(out, hint("or cover the joint along its %s edge with a bead or a strip wider than %.0f mm", t.Edge.Name, float64(up(gap))))
	}
	return append(out, hint("or glue a strip of the same wood, %.0f mm and the kerf, to its %s edge, and cut it to the line", float64(up(-t.Least())), t.Edge.Name),
		hint("or cut %s anew and use this one for a smaller part", p.ID))
}

// judgeCutBracket compares the length of a cut angle or cleat with the one that is wanted.
// Whether its ends clear the corners, what lies on it and where its anchors meet
// the wall is for the rules about these.
func judgeCutBracket(p *model.Part) find.Finding {
	bar := p.Bracket().On()
	over := bar.Length - p.Cut.WantedBar.Length
	f := find.Finding{Status: find.Pass, Parts: []string{p.ID}, Walls: []string{bar.Wall.Name}, Measured: mm(over),
		Assumed: []find.Assumption{{What: "it keeps its distance from the corner that it runs into; between two corners its middle is where that of the new one would be", Source: practice}}}
	f.Why = fmt.Sprintf("%s was cut on %s to %.1f mm; now it would be cut to %.1f mm.", capital(p.ID), p.Cut.On, float64(bar.Length), float64(p.Cut.WantedBar.Length))
	switch {
	case over > alike:
		f.Status = find.Warn
		f.Why += " " + endsAt(p)
		f.Fix = []find.Fix{hint("take %.1f mm off %s, from the end without a hole near it; see angles-in-corner for what is left between the legs", float64(over), p.ID)}
	case over < -alike:
		f.Status = find.Note
		f.Why += " " + endsAt(p) + " Bearing and tipping are judged with it as it is."
		f.Fix = []find.Fix{hint("keep it, or cut a new one of %.1f mm", float64(p.Cut.WantedBar.Length))}
	}
	var drilled []string
	if n := len(p.Cut.WallHoles); p.Cut.WallHoles != nil {
		drilled = append(drilled, count(n, "hole into the wall", "holes into the wall"))
	}
	if n := len(p.Cut.ScrewHoles); p.Cut.ScrewHoles != nil {
		drilled = append(drilled, count(n, "hole up into the slab", "holes up into the slab"))
	}
	if drilled != nil {
		f.Why += " Drilled already: " + strings.Join(drilled, ", ") + "."
	}
	return f
}

// endsAt says where the ends of a cut bracket come to lie, against those of the
// one that would be cut now.
func endsAt(p *model.Part) string {
	a, w := p.Bracket().On(), p.Cut.WantedBar
	end := func(name string, off unit.Length) string {
		switch {
		case off > 0.05:
			return fmt.Sprintf("its %s end comes %.1f mm further out", name, float64(off))
		case off < -0.05:
			return fmt.Sprintf("its %s end stops %.1f mm earlier", name, float64(-off))
		}
		return fmt.Sprintf("its %s end stays", name)
	}
	return capital(end("left", w.Left.SetBack-a.Left.SetBack)) + ", " + end("right", w.Right.SetBack-a.Right.SetBack) + "."
}
