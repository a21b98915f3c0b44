package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/hold"
)

// clearOver is the mean tension strength across the grain of small clear wood,
// N/mm2: USDA Wood Handbook Table 5-3 (white oak 800, white ash 940, beech 1010,
// walnut 690, cherry 560 lbf/in2), from memory. Its coefficient of variation is
// 25 % (Table 5-6, from memory), so that 5 % of pieces have less than 0.59 of it.
var clearOver = map[string]float64{"oak": 5.5, "ash": 6.5, "beech": 7.0, "walnut": 4.8}

const (
	clearOverElse = 3.9
	lowestShare   = 1 - 1.645*0.25
)

var bendingRule = Rule{
	ID: "bending-strength", Title: "Whether the slab breaks",
	Basis: "EN 1995-1-1 with k_mod of Table 3.1 and gamma_M 1.3, loads times 1.35 and 1.5 (EN 1990), from memory; strengths of EN 338:2016, read in public reproductions; no factor for thin wood. Across the grain: tension strength of EN 338, and of clear wood (USDA Wood Handbook Tables 5-3 and 5-6, from memory)",
	Why:   "Wood breaks without notice, along the grain at a knot, across the grain at a crack or the pith. Strength classes hold for graded timber; a slab that nobody graded counts as the weakest class.",
	Run: func(s Site) []find.Finding {
		return s.eachSlab([]string{"lies", "person", "step", "service_class", "grade"}, func(p *model.Part, b hold.Slab) []find.Finding {
			return []find.Finding{s.breaksAlong(p, b), s.splits(p, b)}
		})
	},
}

func bentAlong(b hold.Slab) hold.Case {
	c, _ := b.Worst(func(c hold.Case) float64 {
		if !c.Design {
			return 0
		}
		return c.Along.Used()
	})
	return c
}

func bentAcross(b hold.Slab) hold.Case {
	c, _ := b.Worst(func(c hold.Case) float64 {
		if !c.Design {
			return 0
		}
		return c.Across.Used()
	})
	return c
}

func (s Site) breaksAlong(p *model.Part, b hold.Slab) find.Finding {
	c := bentAlong(b)
	f := find.Finding{
		Title: "Bending along the grain", At: onTop(p, c.Along.At), Measured: newton(c.Along.Value), Required: strength(c.Along.Strength),
		Why: fmt.Sprintf("Bending uses %.0f %% of the strength of %s along the grain (%s), %s, with %s.", 100*c.Along.Used(), b.Part, b.Class.Name, on(p, c.Along.At), s.loadedBy(p, c)),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = s.remedies(p, asClear(p), func(b hold.Slab) string {
			return fmt.Sprintf("bending then uses %.0f %%", 100*bentAlong(b).Along.Used())
		})
	}
	return f
}

// splits judges bending across the grain. EN 338 gives all hardwoods the same
// low strength; between that and the strength of clear wood it takes a look at
// the piece.
func (s Site) splits(p *model.Part, b hold.Slab) find.Finding {
	c := bentAcross(b)
	f := find.Finding{
		Title: "Bending across the grain", At: onTop(p, c.Across.At), Measured: newton(c.Across.Value), Required: strength(c.Across.Strength),
		Why: fmt.Sprintf("Bending across the grain of %s reaches %.2f N/mm2, %s, with %s.", b.Part, c.Across.Value, on(p, c.Across.At), s.loadedBy(p, c)),
	}.Judge()
	if f.Status != find.Fail {
		return f
	}
	clear := clearAcross(p, c, b)
	if c.Across.Value <= clear {
		f.Status = find.Warn
		f.Why += fmt.Sprintf(" That is more than the %.2f N/mm2 of graded timber, and less than the %.2f N/mm2 of clear wood.", c.Across.Strength, clear)
		f.Fix = s.remedies(p, asGraded, func(b hold.Slab) string {
			return fmt.Sprintf("%.2f N/mm2 are left, which graded timber bears", bentAcross(b).Across.Value)
		})
		if len(f.Fix) > 0 && !inVain(f.Fix[0]) {
			f.Fix = append(f.Fix, hint("or take a piece without crack, pith or knots there"))
		} else {
			f.Fix = append([]find.Fix{hint("take a piece without crack, pith or knots there")}, f.Fix...)
		}
		return f
	}
	f.Why += fmt.Sprintf(" Even clear wood bears no more than %.2f N/mm2.", clear)
	f.Fix = s.remedies(p, asClear(p), func(b hold.Slab) string {
		return fmt.Sprintf("%.2f N/mm2 are left, for a piece without crack, pith or knots", bentAcross(b).Across.Value)
	})
	return f
}

// asClear is the share that a slab of clear wood uses of its strength, both ways.
func asClear(p *model.Part) hold.Wanted {
	return hold.Wanted{Of: hold.Strength, Used: func(b hold.Slab) float64 {
		c := bentAcross(b)
		return math.Max(bentAlong(b).Along.Used(), c.Across.Value/clearAcross(p, c, b))
	}}
}

// asGraded is that of one of graded timber. It only saves a look at the wood, for
// which nobody makes a slab much thicker.
var asGraded = hold.Wanted{Of: hold.Strength, Thicker: someThicker, Used: func(b hold.Slab) float64 {
	return math.Max(bentAlong(b).Along.Used(), bentAcross(b).Across.Used())
}}

// clearAcross is the design strength of clear wood across the grain in a case.
func clearAcross(p *model.Part, c hold.Case, b hold.Slab) float64 {
	mean := clearOverElse
	for wood, v := range clearOver {
		if strings.Contains(strings.ToLower(p.Slab.Species.Name), wood) {
			mean = v
		}
	}
	return mean * lowestShare * c.Across.Strength / b.Class.TensionOver
}

// loadedBy says what loads a case has.
func (s Site) loadedBy(p *model.Part, c hold.Case) string {
	switch {
	case c.Person != nil:
		l := s.statics().Loads
		return fmt.Sprintf("a person of %.0f kg climbing up %s", float64(l.Person), on(p, *c.Person))
	case c.Kind == hold.DesignWeight:
		return "its own weight alone"
	}
	return "what lies on it"
}
