package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/screw"
	"slabwright/model/find"
	"slabwright/model/hold"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// coreOf is the core of a wood screw as a share of its thread, common practice.
const coreOf = 0.65

var screwStrength = Rule{
	ID: "screw-strength", Title: "The screws hold the slab down",
	Basis: "EN 1995-1-1 equations 8.38 and 8.39, from memory: withdrawal across the grain; made for screws of 6 to 12 mm in softwood, taken here for what is drawn",
	Why:   "A person at the front edge lifts the back of the slab: the screws there pull. One that comes out leaves a slab that rocks.",
	Run: func(s Site) []find.Finding {
		st := s.statics()
		var out []find.Finding
		for _, p := range s.Design.Parts {
			b := p.Bracket()
			if b == nil || len(b.On().In(model.SeatLeg)) == 0 {
				continue
			}
			if slab, ok := st.Of(b.On().Under); ok && slab.Trouble == "" {
				out = append(out, s.screws(p, slab, st))
				continue
			}
			u := unknown(fmt.Sprintf("what the screws of %s pull is not known.", p.ID), hint("mend the slab on it first"))
			u.Parts = []string{p.ID}
			out = append(out, u)
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "No screw from below holds a slab."})
		}
		return out
	},
}

// screws judges the screw of a bracket that is used most.
func (s Site) screws(p *model.Part, slab hold.Slab, st *hold.Statics) find.Finding {
	f := find.Finding{Parts: []string{p.ID, slab.Part}}
	var most struct {
		pull, take, used float64
		at               hold.ScrewPull
		of               hold.Case
	}
	most.used = -1
	thread, into := threadOf(s.Design, p)
	for _, c := range slab.Cases {
		for _, r := range c.Runs {
			if r.Carrier != p.ID || !c.Design {
				continue
			}
			take := screw.Screw{Thread: thread, Core: coreOf * thread}.Withdrawal(into, slab.Class.DensityLow) * c.KMod / woodGamma
			for _, pull := range r.Screws {
				if used := pull.Force / take; used > most.used {
					most.pull, most.take, most.used, most.at, most.of = pull.Force, take, used, pull, c
				}
			}
		}
	}
	if most.used < 0 {
		f.Status, f.Why = find.Pass, fmt.Sprintf("No screw of %s pulls in any load case: the slab presses on it.", p.ID)
		return f
	}
	f.At = at(p.Bracket().Pose().Space(seatPlace(most.at.Along, screwsFromHeel(p.Bracket()))))
	f.Measured, f.Required = &find.Quantity{Value: round3(most.pull), Unit: "N"}, &find.Limit{Value: round3(most.take), Relation: find.AtMost, Unit: "N"}
	f.Why = fmt.Sprintf("Screw %s of %s pulls %.0f N (design load, %s); %.0f mm in the wood, it takes %.0f N.", most.at.Hole, p.ID, most.pull, caseText(most.of), float64(into), most.take)
	f.Assumed = append([]find.Assumption{{What: fmt.Sprintf("wood screws of %.0f mm in %s, density %.0f kg/m3", float64(thread), slab.Class.Name, slab.Class.DensityLow), Source: slab.Class.Source}}, st.Assumed...)
	f = f.Judge()
	if f.Status == find.Fail {
		longest := slab.Thick - woodOverPilot
		full := screw.Screw{Thread: thread, Core: coreOf * thread}.Withdrawal(longest, slab.Class.DensityLow) * most.of.KMod / woodGamma
		if longest > into && full >= most.pull {
			f.Fix = append(f.Fix, hint("take screws that go %.0f mm into the wood: they take %.0f N and leave %.0f mm over them", float64(longest), full, float64(woodOverPilot)))
		}
		f.Fix = append(f.Fix, s.remedies(s.Design.Part(slab.Part), hold.Wanted{Of: hold.Strength, Only: hold.SpanWays, Used: func(b hold.Slab) float64 {
			return pulled(b, p.ID, thread, into)
		}}, func(b hold.Slab) string {
			return fmt.Sprintf("its screws then use %.0f %%", 100*pulled(b, p.ID, thread, into))
		})...)
	}
	return f
}

// threadOf is the thread of the screws of a bracket and how far they go into the
// wood.
func threadOf(d *model.Design, p *model.Part) (thread, into unit.Length) {
	m := p.Bracket().On()
	for _, h := range m.In(model.SeatLeg) {
		if s, ok := stock.ScrewThrough(h.Dia); ok {
			thread = s.Diameter
		}
	}
	if slab := d.Part(m.Under); slab != nil && slab.Slab != nil {
		for _, f := range slab.Slab.Features {
			if f.Kind == model.Pilot && f.For == p.ID {
				into = f.Depth
			}
		}
	}
	return thread, into
}

func screwsFromHeel(b model.Bracket) unit.Length {
	for _, h := range b.On().In(model.SeatLeg) {
		return h.FromHeel
	}
	return 0
}

// pulled is the share of its withdrawal that the screw of a bracket uses which is
// used most.
func pulled(b hold.Slab, bracket string, thread, into unit.Length) float64 {
	used := 0.0
	for _, c := range b.Cases {
		for _, r := range c.Runs {
			if r.Carrier != bracket || !c.Design {
				continue
			}
			take := screw.Screw{Thread: thread, Core: coreOf * thread}.Withdrawal(into, b.Class.DensityLow) * c.KMod / woodGamma
			for _, pull := range r.Screws {
				used = math.Max(used, pull.Force/take)
			}
		}
	}
	return used
}
