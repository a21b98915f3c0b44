package check

import (
	"fmt"
	"math"

	"slabwright/model/calc/wiring"
	"slabwright/model/find"
	"slabwright/model/wire"
)

var lightDrop = Rule{
	ID: "light-drop", Title: "Lights are bright to their far end",
	Basis: "5 % of the voltage may be lost from the supply to the darkest place: " + practice + "; " + wiring.ConductorSource + ", taken at 40 degrees C; " + wiring.CarriesSource,
	Why:   "A strip fed over thin wire, or too long for one feed, is dim and yellow at its far end.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, r := range s.wires.Lights {
			out = append(out, judgeDrop(r))
		}
		return orNone(out, "There are no lights in the job.")
	},
}

func judgeDrop(r wire.LightRun) find.Finding {
	l := r.Light
	f := find.Finding{Title: "Drop to the end of " + l.Name, Line: l.Pos.String()}
	switch {
	case r.Slab == "":
		f.Status, f.Why = find.Fail, fmt.Sprintf("There is no groove %q in the underside of a slab.", l.In)
		f.Fix = []find.Fix{hint("name a groove of the design: `in` of %s", l.Name)}
		return f
	case r.Pieces == 0:
		f.Status, f.Why, f.Parts = find.Fail, fmt.Sprintf("%s is cut every %.1f mm, but only %.0f mm of %s are free for it.", capital(l.Name), float64(l.Strip.Pitch), float64(r.Room), l.In), []string{r.Slab}
		f.Fix = []find.Fix{hint("take a strip that is cut more often, or make the groove longer")}
		return f
	case !r.Found:
		by, start := l.Supply, l.Supply
		if l.Dimmer != "" {
			by, start = l.Supply+" by way of "+l.Dimmer, l.Supply+" and "+l.Dimmer
		}
		u := unknown(fmt.Sprintf("no way leads from %s to %s, so the feed has no length.", by, l.In), hint("put %s where a hole or an edge along a wall leads to the groove", start))
		u.Title, u.Line, u.Parts = f.Title, f.Line, []string{r.Slab}
		return u
	}
	f.Parts = []string{r.Slab}
	ends := "one end"
	if r.BothEnds {
		ends = "both ends"
	}
	f.Why = fmt.Sprintf("%s: %.0f mm in %d pitches, %.1f W, %.2f A, fed at %s over %.2f m of 2 x %g mm2, fuse %g A.",
		capital(l.Name), float64(r.Run), r.Pieces, float64(r.Power), float64(r.Current), ends, float64(r.Feeds[len(r.Feeds)-1])/1000, r.Wire.SquareMM, float64(r.Fuse))
	if m := r.Dimmer; m != nil {
		f.Why += fmt.Sprintf(" The dimmer %s comes %.2f m behind the supply.", m.Device, float64(m.Lead)/1000)
	}
	if !r.Told {
		f.Status = find.Unknown
		f.Why = "Not known yet: how much the strip itself drops. " + f.Why
		f.Fix = []find.Fix{hint("write the ohms per metre of the strip, both conductors together, from its data sheet: resistance of %s", l.Name)}
		return f
	}
	f.Measured = &find.Quantity{Value: 100 * float64(r.Drop) / float64(l.Strip.Supply), Unit: "%"}
	f.Required = &find.Limit{Value: 100 * wire.MostDrop, Relation: find.AtMost, Unit: "%"}
	f = f.Judge()
	if l.Strip.Longest > 0 && !r.BothEnds && r.Run > l.Strip.Longest {
		f.Status = find.Fail
		f.Why += fmt.Sprintf(" Its maker allows %.0f mm fed at one end.", float64(l.Strip.Longest))
	}
	if f.Status == find.Fail {
		if !r.BothEnds {
			f.Fix = append(f.Fix, hint("feed it at both ends: bore a second cable hole near the other end of the groove"))
		}
		f.Fix = append(f.Fix, hint("divide it into two lights with a feed each"), hint("take a strip of %.1f W/m", math.Floor(10*float64(l.Strip.Power)*5/f.Measured.Value)/10))
	}
	return f
}

// warmStrip is the power per metre above which a strip lies in an aluminium
// profile and not on the wood.
const warmStrip wiring.WattPerM = 10

var lightSupply = Rule{
	ID: "light-supply", Title: "Supplies have power to spare, and strips get rid of their heat",
	Basis: "supplies and dimmers are loaded to four fifths at most; above 10 W/m a strip lies in a metal profile: " + practice,
	Why:   "A supply at its limit hums, gets hot and fails first; a warm strip on bare wood loses its light within a year or two.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.wires.Supplies {
			f := find.Finding{Title: "Power of " + p.Device, Status: find.Pass}
			f.Why = fmt.Sprintf("%s feeds %s with %.1f W at %.0f V: a supply of %.0f W keeps a fifth free. It must stay within reach and have air.", capital(p.Device), list(p.Lights), float64(p.Load), float64(p.Voltage), float64(p.Rated))
			f.Measured = &find.Quantity{Value: float64(p.Load), Unit: "W"}
			f.Required = &find.Limit{Value: float64(p.Rated) * (1 - wiring.Reserve), Relation: find.AtMost, Unit: "W"}
			if !p.OK {
				largest := wiring.Supplies[len(wiring.Supplies)-1]
				f.Required.Value = float64(largest) * (1 - wiring.Reserve)
				f.Why = fmt.Sprintf("%s would feed %s with %.0f W: more than any usual supply.", capital(p.Device), list(p.Lights), float64(p.Load))
				f.Fix = []find.Fix{hint("divide the lights among %.0f supplies", math.Ceil(float64(p.Load)/f.Required.Value))}
			}
			f = f.Judge()
			if p.Mixed {
				f.Measured, f.Required, f.Margin = nil, nil, nil
				f.Status, f.Why = find.Fail, fmt.Sprintf("%s would feed lights of different voltages: %s.", capital(p.Device), list(p.Lights))
				f.Fix = []find.Fix{hint("give each voltage a supply of its own")}
			}
			out = append(out, f)
		}
		for _, r := range s.wires.Lights {
			if r.Dimmer != nil && r.Dimmer.First {
				out = append(out, judgeDimmer(r))
			}
			if r.Pieces > 0 && r.Light.Strip.Power > warmStrip {
				out = append(out, find.Finding{Title: "Heat of " + r.Light.Name, Status: find.Note, Parts: []string{r.Slab},
					Why:      fmt.Sprintf("%s gives %.1f W per metre: lay it into an aluminium profile let into the groove.", capital(r.Light.Name), float64(r.Light.Strip.Power)),
					Measured: &find.Quantity{Value: float64(r.Light.Strip.Power), Unit: "W/m"}, Required: &find.Limit{Value: float64(warmStrip), Relation: find.AtMost, Unit: "W/m"}})
			}
		}
		return orNone(out, "There are no lights in the job.")
	},
}

// judgeDimmer holds the current of all lights of a dimmer against what it bears.
func judgeDimmer(r wire.LightRun) find.Finding {
	m := r.Dimmer
	f := find.Finding{Title: "Current of " + m.Device, Line: r.Light.Pos.String(), Measured: &find.Quantity{Value: float64(m.Carries), Unit: "A"}}
	f.Required = &find.Limit{Value: float64(m.Rated) * (1 - wiring.Reserve), Relation: find.AtMost, Unit: "A"}
	f.Why = fmt.Sprintf("%s dims %.2f A at low voltage: take one of %g A, so that a fifth stays free. Put it where a hand reaches it.", capital(m.Device), float64(m.Carries), float64(m.Rated))
	if !m.OK {
		f.Required.Value = float64(wiring.Dimmers[len(wiring.Dimmers)-1]) * (1 - wiring.Reserve)
		f.Why = fmt.Sprintf("%s would dim %.1f A: more than any usual dimmer.", capital(m.Device), float64(m.Carries))
		f.Fix = []find.Fix{hint("divide its lights among %.0f dimmers", math.Ceil(float64(m.Carries)/f.Required.Value)), hint("or take strips for a higher voltage: the current falls as it rises")}
	}
	return f.Judge()
}
