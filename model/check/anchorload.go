package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/anchor"
	"slabwright/model/calc/screw"
	"slabwright/model/calc/steelangle"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// How an anchor's resistance is taken.
const (
	approvalFactor             = 1.4 // between permissible loads of approvals and design loads, on the side of the load
	studDepth      unit.Length = 60  // of a coach screw in a stud
	studWhole      unit.Length = 90  // of the longest one: most of a stud
	studDensity                = 310 // kg/m3, characteristic, C16 (EN 338)
	studSteel                  = 400 // N/mm2
	coachCore                  = 0.7 // core of a coach screw, of its thread
	boardShear                 = 0.5 // of the shear that counts where a board lies between steel and stud
	woodGamma                  = 1.3 // EN 1995-1-1 table 2.3
)

var anchorStrength = Rule{
	ID: "anchor-strength", Title: "Every anchor carries its share",
	Basis: "statics: each load turns the bracket about its lower edge or its heel, lever 0.9 of the distance; the bar is a beam and a shaft on its anchors as springs; pull and shear added up. Loads as in deflection and strength of the slab",
	Why:   "The load stands off the wall and turns the bracket: an anchor is pulled out with twice the load and more. The wall decides, not the steel.",
	Run: func(s Site) []find.Finding {
		st := s.statics()
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if b := p.Bracket(); b == nil || len(b.On().In(model.WallLeg)) == 0 {
				continue
			}
			out = append(out, s.anchors(p, st))
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "No bracket is anchored to a wall."})
		}
		return out
	},
}

// anchoring is a bracket with what its anchors may take.
type anchoring struct {
	part    *model.Part
	holes   []model.BracketHole
	take    func(kMod float64) anchor.Resistance // design values, by the load's duration
	source  find.Assumption
	guessed bool // no approval is at hand

	strongest func(kMod float64) anchor.Resistance // of a guess: what no anchor of that wall exceeds
	best      find.Assumption
}

// anchors judges the anchors of a bracket in its worst case.
func (s Site) anchors(p *model.Part, st *hold.Statics) find.Finding {
	b := p.Bracket()
	a := b.On()
	f := find.Finding{Parts: []string{p.ID}, Walls: []string{a.Wall.Name}}
	slab, ok := st.Of(a.Under)
	if !ok || slab.Trouble != "" {
		u := unknown(fmt.Sprintf("what %s carries is not known: %s.", p.ID, slab.Trouble), hint("mend that first"))
		u.Parts, u.Walls = f.Parts, f.Walls
		return u
	}
	x := anchoring{part: p, holes: a.In(model.WallLeg)}
	if why := x.resist(); why != "" {
		u := unknown(why, hint("drill a test hole, and write the wall's make and what the anchor's approval permits in it into the job file: walls, anchor"))
		u.Parts, u.Walls = f.Parts, f.Walls
		return u
	}
	w := s.worstAnchor(x, slab, x.part.Bracket().On().Places(model.WallLeg))
	h := x.holes[w.index]
	f.At = at(b.Pose().Space(geom.Vec3{X: h.X, Z: b.HeightOf(h) - a.Seat}))
	f.Measured, f.Required = percentOf(w.used), &find.Limit{Value: 100, Relation: find.AtMost, Unit: "% of its load"}
	f.Why = fmt.Sprintf("Anchor %s of %s takes %.0f N of pull and %.0f N of shear (design loads, %s): the wall %s (%s) and that anchor take %.0f N of pull or %.0f N of shear alone",
		h.Name, p.ID, w.reaction.Pull, w.reaction.Shear, caseText(w.of), a.Wall.Name, a.Wall.Make, w.left*w.take.Pull, w.left*w.take.Shear)
	if w.left < 0.995 {
		var near []string
		if w.edge < w.take.EdgeFull {
			near = append(near, fmt.Sprintf("%.0f mm from an edge", float64(w.edge)))
		}
		if w.next < w.take.SpacingFull {
			near = append(near, fmt.Sprintf("%.0f mm from the next anchor", float64(w.next)))
		}
		f.Why += ", as it stands " + list(near)
	}
	f.Why += "."
	f.Assumed = append([]find.Assumption{x.source, {What: "it lies firm on the wall or on shims at every anchor; plaster counts as nothing", Source: practice}}, st.Assumed...)
	f = f.Judge()
	switch {
	case f.Status == find.Fail:
		f.Fix = s.anchorFixes(x, slab, w)
	case x.guessed:
		f.Fix = []find.Fix{stronger(w)}
	}
	if x.guessed {
		s.withoutPaper(&f, x, slab, w)
	}
	return f
}

// withoutPaper judges anchors of which no approval is at hand. A guess never
// makes them pass: where a usual anchor would hold, they are to be looked at;
// where it would not, nobody knows; where the strongest of that wall would not,
// they fail.
func (s Site) withoutPaper(f *find.Finding, x anchoring, slab hold.Slab, w worstAnchor) {
	weak := f.Status == find.Fail
	f.Status = find.Warn
	f.Why += " That is a guess for a usual anchor: what the one that will be bought permits is not in the job file"
	if !weak {
		f.Why += "; it has to be at least what is listed below."
		return
	}
	best := x
	best.take = x.strongest
	if t := s.worstAnchor(best, slab, x.part.Bracket().On().Places(model.WallLeg)); t.used > 1 {
		f.Status = find.Fail
		f.Why += fmt.Sprintf(", but %s would be loaded by %.0f %% as well.", x.best.What, 100*t.used)
		f.Assumed = append(f.Assumed, x.best)
		return
	}
	f.Status = find.Unknown
	f.Why += ", so nobody knows yet whether it holds."
}

func percentOf(share float64) *find.Quantity {
	return &find.Quantity{Value: math.Round(1000*share) / 10, Unit: "% of its load"}
}

// caseText says in which case something is worst.
func caseText(c hold.Case) string {
	if c.Person != nil {
		return "a person stands where it is worst for this"
	}
	return string(c.Kind)
}

// resist finds what an anchor may take in the wall, or says why nobody knows.
func (x *anchoring) resist() string {
	w, hole := x.part.Bracket().On().Wall, x.holes[0].Dia
	a, ok := stock.AnchorThrough(hole)
	switch {
	case w.Anchor != nil:
		p := w.Anchor
		r := anchor.Resistance{Pull: approvalFactor * p.Pull, Shear: approvalFactor * p.Shear, EdgeFull: p.Edge, SpacingFull: p.Spacing}
		x.take = func(float64) anchor.Resistance { return r }
		x.source = find.Assumption{What: fmt.Sprintf("one anchor may carry %.2f kN of pull or %.2f kN of shear in the wall %s, times 1.4 against design loads", p.Pull/1000, p.Shear/1000, w.Name), Source: "job file, " + p.Paper}
		return ""
	case w.Make == model.UnknownWall || w.Make == "":
		return fmt.Sprintf("nobody has said what the wall %s is made of, so nobody knows what an anchor in it carries.", w.Name)
	case !ok:
		return fmt.Sprintf("no anchor is known whose screw passes holes of %.0f mm.", float64(hole))
	case len(w.Studs) > 0:
		x.guessed = true
		x.take = coachScrews(a.Bolt, studDepth, boardShear)
		x.strongest = coachScrews(a.Bolt, studWhole, 1)
		x.best = find.Assumption{What: fmt.Sprintf("a coach screw of %.0f mm, %.0f mm deep in a stud that bears against the steel", float64(a.Bolt), float64(studWhole)), Source: "EN 1995-1-1 equations 8.38 and 8.9, from memory"}
		x.source = find.Assumption{What: fmt.Sprintf("coach screws of %.0f mm, %.0f mm deep in studs of C16; half of their shear counts, because a board lies between", float64(a.Bolt), float64(studDepth)), Source: "EN 1995-1-1 equations 8.38 and 8.9, from memory; the half is judgement"}
		return ""
	}
	x.guessed = true
	h, ok := stock.WallHoldOf(string(w.Make), a.Drill)
	if !ok {
		return fmt.Sprintf("nobody knows what an anchor of %.0f mm carries in the wall %s, %s.", float64(a.Drill), w.Name, w.Make)
	}
	r := anchor.Resistance{Pull: approvalFactor * h.Load, Shear: approvalFactor * h.Load, EdgeFull: h.Edge, SpacingFull: h.Spacing}
	x.take = func(float64) anchor.Resistance { return r }
	top := anchor.Resistance{Pull: approvalFactor * h.Strongest, Shear: approvalFactor * h.Strongest, EdgeFull: h.Edge, SpacingFull: h.Spacing}
	x.strongest = func(float64) anchor.Resistance { return top }
	x.best = find.Assumption{What: fmt.Sprintf("three times what is usual for an anchor set in resin in %s, %.2f kN,", w.Make, h.Strongest/1000), Source: h.Source}
	x.source = find.Assumption{What: fmt.Sprintf("no approval in the job file: a plastic frame anchor of %.0f mm may carry %.2f kN in %s, times 1.4 against design loads", float64(a.Drill), h.Load/1000, w.Make), Source: h.Source}
	return ""
}

// coachScrews are what screws into studs take, of their shear a share.
func coachScrews(thread, into unit.Length, share float64) func(float64) anchor.Resistance {
	c := screw.Screw{Thread: thread, Core: coachCore * thread, Steel: studSteel}
	return func(kMod float64) anchor.Resistance {
		return anchor.Resistance{Pull: c.Withdrawal(into, studDensity) * kMod / woodGamma, Shear: share * c.LateralThin(into, studDensity) * kMod / woodGamma}
	}
}

// worstAnchor is the anchor that is used most, over all design cases.
type worstAnchor struct {
	index      int
	used, left float64
	reaction   anchor.Reaction
	take       anchor.Resistance
	of         hold.Case
	edge, next unit.Length
}

func (s Site) worstAnchor(x anchoring, slab hold.Slab, at []unit.Length) worstAnchor {
	a := x.part.Bracket()
	worst := worstAnchor{used: -1}
	for _, c := range slab.Cases {
		if !c.Design {
			continue
		}
		for _, r := range c.Runs {
			if r.Carrier != x.part.ID {
				continue
			}
			take := x.take(c.KMod)
			for i, re := range hold.Shared(a, at, r) {
				edge, next := s.wallEdge(a.On(), re.Along), s.nextAnchor(x.part, at, i)
				left := take.Reduced(edge, next)
				if used := take.Used(re, left); used > worst.used {
					worst = worstAnchor{i, used, left, re, take, c, edge, next}
				}
			}
		}
	}
	return worst
}

// rolledOf is the shape of a section of the stock.
func rolledOf(s stock.AngleSection) steelangle.Shape {
	return steelangle.Shape{Leg: s.Leg, Thickness: s.Thickness, Root: s.Root, Toe: s.Toe}
}

// wallEdge is how far a place of a bracket is from the nearest outside corner.
func (s Site) wallEdge(a *model.Mounted, x unit.Length) unit.Length {
	w, best := a.Wall, unit.Length(math.Inf(1))
	along := a.Start + x
	if w.From.Angle > 180*unit.Degree {
		best = min(best, along)
	}
	if w.To.Angle > 180*unit.Degree {
		best = min(best, w.Length()-along)
	}
	return best
}

// nextAnchor is the distance to the nearest other hole in the wall.
func (s Site) nextAnchor(p *model.Part, at []unit.Length, i int) unit.Length {
	a := p.Bracket().On()
	here := geom.V(a.Start+at[i], bracketFixings(p.Bracket())[0].z)
	best := unit.Length(math.Inf(1))
	for k, x := range at {
		if k != i {
			best = min(best, abs(x-at[i]))
		}
	}
	for _, q := range s.Design.Parts {
		o := q.Bracket()
		switch {
		case o != nil && q != p && o.On().Wall == a.Wall:
			for _, f := range bracketFixings(o) {
				best = min(best, geom.V(f.s, f.z).Sub(here).Len())
			}
		case q.Rod != nil && q.Rod.Wall == a.Wall:
			best = min(best, geom.V(q.Rod.At, q.Rod.Height).Sub(here).Len())
		}
	}
	return best
}

// anchorFixes are ways out, each computed: a stronger anchor, a closer pitch, the
// leg turned up.
func (s Site) anchorFixes(x anchoring, slab hold.Slab, w worstAnchor) []find.Fix {
	out := []find.Fix{stronger(w)}
	if n, pitch, ok := s.closer(x, slab); ok {
		out = append(out, hint("or set %d anchors instead of %d, one every %.0f mm or closer", n, len(x.holes), float64(pitch)))
	}
	a := x.part.Angle
	if a == nil {
		return out
	}
	up := *x.part
	bar := *a
	bar.LegUp = true
	up.Angle = &bar
	turned := x
	turned.part = &up
	if t := s.worstAnchor(turned, slab, x.part.Bracket().On().Places(model.WallLeg)); !a.LegUp && t.used <= min(1, w.used) {
		out = append(out, hint("or turn the wall leg up, behind the slab: its anchors then take %.0f %%", 100*t.used))
	}
	return out
}

// stronger asks for an anchor that holds. Pull and shear add up, so that each may
// take half of its own.
func stronger(w worstAnchor) find.Fix {
	need := func(v float64) float64 { return math.Ceil(2*v/approvalFactor/w.left/10) * 10 }
	return hint("take an anchor that is approved for at least %.0f N of pull and %.0f N of shear in this wall, and write that into the job file (walls, anchor)", need(w.reaction.Pull), need(w.reaction.Shear))
}

// closer is the least number of anchors, evenly spread, and the widest pitch, in
// steps of 10 mm, at which they hold.
func (s Site) closer(x anchoring, slab hold.Slab) (int, unit.Length, bool) {
	a := x.part.Bracket().On()
	first, last := x.holes[0].X, x.holes[len(x.holes)-1].X
	if len(a.Wall.Studs) > 0 || last <= first {
		return 0, 0, false
	}
	for pitch := unit.Length(math.Floor(float64(last-first)/10) * 10); pitch >= 100; pitch -= 10 {
		n := int(math.Ceil(float64((last - first) / pitch)))
		if n < len(x.holes) {
			continue
		}
		at := make([]unit.Length, n+1)
		for i := range at {
			at[i] = first + (last-first)*unit.Length(i)/unit.Length(n)
		}
		if s.worstAnchor(x, slab, at).used <= 0.95 {
			return n + 1, pitch, true
		}
	}
	return 0, 0, false
}
