package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/calc/batten"
	"slabwright/model/find"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

var cleatStrength = Rule{
	ID: "cleat-strength", Title: "The cleat carries the slab",
	Basis: "EN 1995-1-1, from memory: bending and shear of the batten from anchor to anchor as simple beams, splitting at a bolt 8.1.4, pressure of a bolt 8.32, washers 8.5.2; gamma_M 1.3",
	Why:   "A cleat is as good as its anchors and the wood round them: it splits along the row of bolts when they stand near the top, and the washers sink in when it turns off the wall.",
	Run: func(s Site) []find.Finding {
		st := s.statics()
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Cleat == nil {
				continue
			}
			if slab, ok := st.Of(p.Cleat.Under); ok && slab.Trouble == "" {
				out = append(out, s.batten(p, slab, st))
				continue
			}
			u := unknown(fmt.Sprintf("what %s carries is not known.", p.ID), hint("mend the slab on it first"))
			u.Parts = []string{p.ID}
			out = append(out, u)
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "No cleat carries anything."})
		}
		return out
	},
}

// strained is what a cleat is used for most.
type strained struct {
	used, value, takes float64
	what, unit         string
	at                 unit.Length
	of                 hold.Case
}

// batten judges a cleat in its worst design case.
func (s Site) batten(p *model.Part, slab hold.Slab, st *hold.Statics) find.Finding {
	c := p.Cleat
	f := find.Finding{Parts: []string{p.ID}, Walls: []string{c.Wall.Name}}
	if len(c.In(model.WallLeg)) == 0 {
		u := unknown(fmt.Sprintf("%s has no anchor, so nothing holds it.", p.ID), hint("drill it for wall anchors: Anchored(...)"))
		u.Parts, u.Walls = f.Parts, f.Walls
		return u
	}
	w := strainOf(c, p.ID, slab)
	f.At = at(c.Pose().Space(seatPlace(w.at, c.Wide/2)))
	f.Measured, f.Required = &find.Quantity{Value: math.Round(1000*w.used) / 10, Unit: "% of its strength"}, &find.Limit{Value: 100, Relation: find.AtMost, Unit: "% of its strength"}
	f.Why = fmt.Sprintf("%s (%s, %s) is used most by %s %.0f mm from its left end: %.4g %s, it takes %.4g (design loads, %s).", capital(p.ID), c.Profile(), p.Material, w.what, float64(w.at), w.value, w.unit, w.takes, caseText(w.of))
	f.Assumed = append([]find.Assumption{{What: fmt.Sprintf("the cleat is of class %s, as the slab, with straight grain along the wall", slab.Class.Name), Source: slab.Class.Source}}, st.Assumed...)
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = battenFixes(c, p.ID, slab)
	}
	return f
}

// strainOf finds what uses a cleat most over all design cases.
func strainOf(c *model.CleatPart, id string, slab hold.Slab) strained {
	anchor, _ := stock.AnchorThrough(c.In(model.WallLeg)[0].Dia)
	return strainUnder(c, id, slab, anchor.Washer)
}

// strainUnder is the same with other washers.
func strainUnder(c *model.CleatPart, id string, slab hold.Slab, washer unit.Length) strained {
	var worst strained
	section := batten.Section{Wide: c.Wide, High: c.High}
	bolts := c.In(model.WallLeg)
	at := c.Places(model.WallLeg)
	anchor, _ := stock.AnchorThrough(bolts[0].Dia)
	for _, k := range slab.Cases {
		for _, r := range k.Runs {
			if r.Carrier != id || !k.Design {
				continue
			}
			look := func(what, unit string, value, takes float64, x unit.Length) {
				takes *= k.KMod / woodGamma
				if used := value / takes; used > worst.used {
					worst = strained{used, value, takes, what, unit, x, k}
				}
			}
			for _, t := range stretchesOf(&c.Mounted) {
				moment, shear, x := t.strain(r)
				look("bending", "N/mm2", section.Bending(moment), slab.Class.Bending, x)
				look("shear", "N/mm2", section.Shear(shear), slab.Class.Shear, x)
			}
			for i, re := range hold.Shared(c, at, r) {
				h := bolts[i]
				look("splitting at anchor "+h.Name, "N", re.Shear, section.Splitting(h.FromHeel), h.X)
				look("the pressure of anchor "+h.Name, "N", re.Shear, batten.Embedding(anchor.Bolt, slab.Class.DensityLow)*float64(anchor.Bolt*c.Wide), h.X)
				look("the washer of anchor "+h.Name, "N", re.Pull, batten.Pulled(washer, h.Dia, slab.Class.PressOver), h.X)
			}
		}
	}
	return worst
}

// strain is the largest moment of a stretch, where that is, and its largest shear
// force: between two anchors of a simple beam, beyond the last one of a cantilever.
func (t stretch) strain(r hold.Run) (moment, shear float64, at unit.Length) {
	at = (t.from + t.to) / 2
	var left, right float64
	for _, l := range r.Line {
		if l.Along < t.from || l.Along > t.to || l.Force <= 0 {
			continue
		}
		if t.beyond {
			left += l.Force
			moment += l.Force * float64(abs(l.Along-t.held))
			at = t.held
			continue
		}
		share := float64((t.to - l.Along) / (t.to - t.from))
		left += l.Force * share
		right += l.Force * (1 - share)
	}
	if !t.beyond {
		for _, l := range r.Line {
			if l.Along < t.from || l.Along > t.to {
				continue
			}
			m := left * float64(l.Along-t.from)
			for _, o := range r.Line {
				if o.Along >= t.from && o.Along < l.Along && o.Force > 0 {
					m -= o.Force * float64(l.Along-o.Along)
				}
			}
			if m > moment {
				moment, at = m, l.Along
			}
		}
	}
	return moment, math.Max(left, right), at
}

// moreBolts is the least number of anchors, evenly spread from the first to the last,
// with which a cleat holds under the same loads, and how much of it is used then. They
// stay as far apart as bolts in wood must.
func moreBolts(c *model.CleatPart, id string, slab hold.Slab) (n int, used float64, ok bool) {
	bolts := c.In(model.WallLeg)
	first, last := bolts[0].X, bolts[len(bolts)-1].X
	anchor, _ := stock.AnchorThrough(bolts[0].Dia)
	for n = len(bolts) + 1; (last-first)/unit.Length(n-1) >= boltApart*anchor.Bolt; n++ {
		x := *c
		x.Holes = nil
		for i := range n {
			h := bolts[0]
			h.Name, h.X = fmt.Sprintf("W%d", i+1), first+(last-first)*unit.Length(i)/unit.Length(n-1)
			x.Holes = append(x.Holes, h)
		}
		if w := strainOf(&x, id, slab); w.used <= 0.97 {
			return n, w.used, true
		}
	}
	return 0, 0, false
}

// battenFixes finds the least washers and the least battens that hold under the same
// loads: higher ones, or wider ones.
func battenFixes(c *model.CleatPart, id string, slab hold.Slab) []find.Fix {
	var out []find.Fix
	for washer := unit.Length(20); washer <= c.High-10; washer += 5 {
		if w := strainUnder(c, id, slab, washer); w.used <= 0.97 {
			out = append(out, hint("put washers of %.0f mm under the heads: %.0f %%", float64(washer), 100*w.used))
			break
		}
	}
	try := func(what string, grown func(*model.CleatPart, unit.Length)) {
		for more := unit.Length(5); more <= 60; more += 5 {
			x := *c
			x.Holes = append([]model.BracketHole(nil), c.Holes...)
			grown(&x, more)
			if w := strainOf(&x, id, slab); w.used <= 0.97 {
				out = append(out, hint("or take a cleat %.0f mm %s, %s: %.0f %% under the same loads", float64(more), what, x.Profile(), 100*w.used))
				return
			}
		}
	}
	try("higher", func(x *model.CleatPart, more unit.Length) {
		for i := range x.Holes {
			if x.Holes[i].Leg == model.WallLeg {
				x.Holes[i].FromHeel += more / 2
			}
		}
		x.High += more
	})
	try("wider", func(x *model.CleatPart, more unit.Length) { x.Wide += more })
	if n, used, ok := moreBolts(c, id, slab); ok {
		out = append(out, hint("or set %d anchors instead of %d, evenly spread: %.0f %%", n, len(c.In(model.WallLeg)), 100*used))
	}
	out = append(out, hint("or take a steel angle"))
	out[0].Text = strings.TrimPrefix(out[0].Text, "or ")
	return out
}
