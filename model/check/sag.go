package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// Deflection limits as shares of the span: what lies there for years, and a
// person for a moment.
const (
	yearsShare  = 300
	personShare = 200
)

var sagRule = Rule{
	ID: "deflection", Title: "How far the slab sinks",
	Basis: "after years with creep: span/300, EN 1995-1-1 Table 7.2 upper end and k_def of Table 3.2, from memory; under a person: span/200, order of furniture tests, from memory, a choice of this project. Orthotropic plate on supports that only push, checked against CalculiX solids",
	Why:   "A slab that sags looks wrong, doors and drawers below it jam, and pens roll off. It also creeps: what lies there for years makes it sink half as much again.",
	Run: func(s Site) []find.Finding {
		return append(s.strayThings(), s.eachSlab([]string{"lies", "person", "service_class", "grade"}, func(p *model.Part, b hold.Slab) []find.Finding {
			out := []find.Finding{s.sagsInYears(p, b)}
			if b.Walked {
				out = append(out, s.sagsUnderPerson(p, b))
			}
			return out
		})...)
	},
}

// SagInYears is how far a slab may sink under what lies on it for years.
func SagInYears(b hold.Slab) unit.Length { return b.Span / yearsShare }

// SagUnderPerson is how far a slab may sink where a person stands on it.
func SagUnderPerson(b hold.Slab) unit.Length { return b.Span / personShare }

// sinks is the share that a slab uses of both limits.
var sinks = hold.Wanted{Of: hold.Sinking, Used: func(b hold.Slab) float64 {
	used := float64(b.Years / SagInYears(b))
	if !b.Walked {
		return used
	}
	c, ok := b.Case(hold.PersonSinks)
	if !ok {
		return math.Inf(1)
	}
	return math.Max(used, float64(c.Sinks()/SagUnderPerson(b)))
}}

func (s Site) sagsInYears(p *model.Part, b hold.Slab) find.Finding {
	c, _ := b.Case(hold.Daily)
	f := find.Finding{
		Title: "How far the slab sinks after years", At: onTop(p, c.Lowest.At), Measured: mm(b.Years), Required: limit(find.AtMost, SagInYears(b)), Assumed: steelAdded(c),
		Why: fmt.Sprintf("%s sinks by %.1f mm under what lies on it, and by %.1f mm after years, %s; its span there is %.0f mm.", capital(b.Part), float64(c.Sinks()), float64(b.Years), on(p, c.Lowest.At), float64(b.Span)),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = s.remedies(p, sinks, func(b hold.Slab) string {
			return fmt.Sprintf("it then sinks by %.1f mm after years", float64(b.Years))
		})
	}
	return f
}

func (s Site) sagsUnderPerson(p *model.Part, b hold.Slab) find.Finding {
	c, ok := b.Case(hold.PersonSinks)
	if !ok {
		return unstood(b)
	}
	f := find.Finding{
		Title: "How far the slab sinks under a person", At: onTop(p, *c.Person), Measured: mm(c.Sinks()), Required: limit(find.AtMost, SagUnderPerson(b)), Assumed: steelAdded(c),
		Why: fmt.Sprintf("%s sinks by %.1f mm with its own weight when a person of %.0f kg stands %s, the worst of %d places.", capital(b.Part), float64(c.Sinks()), float64(s.statics().Loads.Person), on(p, *c.Person), b.Places),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = s.remedies(p, sinks, func(b hold.Slab) string {
			c, _ := b.Case(hold.PersonSinks)
			return fmt.Sprintf("it then sinks by %.1f mm under a person", float64(c.Sinks()))
		})
	}
	return f
}

// steelAdded says how the steel below a slab comes into its deflection; nothing
// for a slab on no angle.
func steelAdded(c hold.Case) []find.Assumption {
	var tip unit.Length
	for _, r := range c.Runs {
		tip = max(tip, r.TipSag)
	}
	if c.Steel == 0 && tip == 0 {
		return nil
	}
	return []find.Assumption{{
		What:   fmt.Sprintf("the seat legs bend with the slab, at their toes by up to %.2f mm; that the angles sag between their anchors, and that these give way by 1 mm under 10 kN, adds the most of any angle below it, %.2f mm", float64(tip), float64(c.Steel)),
		Source: "computed: cantilever strips; beam and shaft on springs; stiffness of anchors from memory",
	}}
}

// unstood is the finding for a slab on which a person finds no place to stand.
func unstood(b hold.Slab) find.Finding {
	if b.Tips {
		return unknown(fmt.Sprintf("%s tips wherever a person stands on it.", b.Part), hint("mend first what the check of lifting says"))
	}
	return unknown(fmt.Sprintf("%s has no place for a foot, so no person was put on it.", b.Part), hint("make it wide and long enough for one"))
}
