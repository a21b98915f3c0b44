package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// mostLift is how far a slab may come off its bearing under a person.
const mostLift unit.Length = 2

var liftRule = Rule{
	ID: "lift", Title: "Whether the slab lifts off its bearings",
	Basis: "supports that only push, and screws as drawn; checked against CalculiX contact models; 2 mm at most: " + practice,
	Why:   "A loose slab comes off its brackets at the corners behind the load: it knocks when the load goes, and where too little holds it down it tips with whoever stands there.",
	Run: func(s Site) []find.Finding {
		out := s.eachSlab([]string{"person", "grade"}, func(p *model.Part, b hold.Slab) []find.Finding { return s.lifts(p, b) })
		for i, b := range s.statics().Slabs {
			if b.Falls && out[i].Status == find.Unknown {
				out[i] = find.Finding{Status: find.Fail, Title: "The slab tips", Parts: []string{b.Part}, Why: fmt.Sprintf("%s is not held: %s.", capital(b.Part), b.Trouble), Fix: s.steadied(s.Design.Part(b.Part), b)}
			}
		}
		return out
	},
}

// lifts gives one finding for a slab.
func (s Site) lifts(p *model.Part, b hold.Slab) []find.Finding {
	if b.Tips {
		f := find.Finding{
			Status: find.Fail, Title: "The slab tips under a person", At: onTop(p, b.TipsAt),
			Why: fmt.Sprintf("A person of %.0f kg who climbs on %s %s tips it off what carries it.", float64(s.statics().Loads.Person), b.Part, on(p, b.TipsAt)),
		}
		f.Fix = s.steadied(p, b)
		return []find.Finding{f}
	}
	c, ok := b.Case(liftsMost(b))
	if !ok {
		return []find.Finding{unstood(b)}
	}
	up := max(0, -c.Highest.Down)
	f := find.Finding{At: onTop(p, c.Highest.At), Measured: mm(up), Required: limit(find.AtMost, mostLift)}.Judge()
	f.Why = fmt.Sprintf("%s lifts by %.2f mm at most, %s.", capital(b.Part), float64(up), on(p, c.Highest.At))
	pull, hole, carrier := mostPull(b)
	if pull > 0 {
		f.Why += fmt.Sprintf(" The screws hold it down; the one that pulls most, %s of %s, takes %.0f N of the design load.", hole, carrier, pull)
	}
	if f.Status == find.Fail {
		f.Fix = s.steadied(p, b)
	}
	return []find.Finding{f}
}

// steadied are ways to keep a slab on its bearings.
func (s Site) steadied(p *model.Part, b hold.Slab) []find.Fix {
	kind, only := liftsMost(b), hold.AnyWay
	if b.Falls || b.Tips { // nothing else brings what carries it further out
		only = hold.SpanWays
	}
	return s.remedies(p, hold.Wanted{Of: hold.Lifting, Only: only, Used: func(b hold.Slab) float64 {
		c, ok := b.Case(kind)
		if !ok || b.Tips {
			return math.Inf(1)
		}
		return float64(-c.Highest.Down / mostLift)
	}}, func(b hold.Slab) string {
		c, _ := b.Case(kind)
		return fmt.Sprintf("it then lifts by %.2f mm", float64(max(0, -c.Highest.Down)))
	})
}

// liftsMost is the kind of load case in which a slab lifts most.
func liftsMost(b hold.Slab) hold.Kind {
	if b.Walked {
		return hold.PersonLifts
	}
	return hold.Daily
}

// mostPull is the largest pull on a screw in all design cases, N.
func mostPull(b hold.Slab) (most float64, hole, carrier string) {
	for _, c := range b.Cases {
		if !c.Design {
			continue
		}
		for _, r := range c.Runs {
			for _, sc := range r.Screws {
				if sc.Force > most {
					most, hole, carrier = sc.Force, sc.Hole, r.Carrier
				}
			}
		}
	}
	return most, hole, carrier
}
