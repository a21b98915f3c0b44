package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var kneeSpace = Rule{
	ID: "leg-room", Title: "Legs fit under the worktop", Fit: true,
	Basis: "leg room from the person's stature and mass (ANSUR II regressions), EN 527-1 foot room, allowances as listed",
	Why:   "Steel at the knee bruises it every day; a slab that is too low for the thighs cannot be sat at at all. Everything that reaches into the leg room counts: slabs, angles, a roll-out table, what stands out from the walls, and the walls.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, z := range s.Design.Zones {
			out = append(out, s.headroom(z))
			if f, ok := s.stretch(z); ok {
				out = append(out, f)
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "Nobody is said to sit here, and no space is to be kept free."})
		}
		return out
	},
}

// headroom finds the lowest thing over a zone: the free height above the floor.
func (s Site) headroom(z model.Zone) find.Finding {
	var low *intruder
	var inTheWay []intruder
	for _, i := range s.over(z) {
		if low == nil || i.low < low.low {
			low = &i
		}
		if i.low < z.Height-contact {
			inTheWay = append(inTheWay, i)
		}
	}
	f := find.Finding{Title: "Room for " + z.Name, Assumed: assumedOf(z), Line: z.Line, Required: limit(find.AtLeast, z.Height)}
	if low == nil {
		f.Status, f.Required = find.Pass, nil
		f.Why = "Nothing is over the place of " + z.Name + "."
		return f
	}
	f.Measured = mm(low.low)
	if z.Kind == model.ThighZone {
		f.Measured.SD = hundredth(z.SD)
	}
	f.At = at(low.over.Centroid().Up(z.Floor + low.low))
	f.Parts, f.Walls = concerned([]intruder{*low})
	f = f.Judge()
	f.Why = needs(z)
	if f.Status != find.Fail {
		f.Why += fmt.Sprintf("; the lowest thing over this place is %s.%s%s", low.inWords(), s.bracketBeside(z), s.howSure(f, z))
		return f
	}
	f.Parts, f.Walls = concerned(inTheWay)
	var names []string
	for _, i := range inTheWay {
		names = append(names, i.inWords())
	}
	f.Why += fmt.Sprintf("; in the way: %s.%s%s", list(names), s.bracketBeside(z), s.howSure(f, z))
	f.Fix = s.waysOut(z, inTheWay)
	return f
}

func needs(z model.Zone) string {
	if z.Kind == model.ThighZone || z.Kind == model.FootZone {
		return fmt.Sprintf("%s need %.0f mm above the floor", capital(z.Name), float64(z.Height))
	}
	return fmt.Sprintf("%s: %.0f mm above the floor are to stay free", capital(z.Name), float64(z.Height))
}

// assumedOf leaves out what has no bearing on feet: their room is the same for
// everybody.
func assumedOf(z model.Zone) []find.Assumption {
	if z.Kind != model.FootZone {
		return z.Assumed
	}
	var out []find.Assumption
	for _, a := range z.Assumed {
		if strings.Contains(a.What, "feet") {
			out = append(out, a)
		}
	}
	return out
}

// howSure says how far the need is known: sizes are estimates with a spread.
func (s Site) howSure(f find.Finding, z model.Zone) string {
	_, p, ok := s.seatOfZone(z)
	switch {
	case z.Kind != model.ThighZone || !ok:
		return ""
	case p.Stature == 0 && p.Mass == 0 && p.Thigh == 0 && p.Knee == 0 && p.Seat == 0:
		return map[string]string{
			"female": " Nothing but her sex is told of who will sit here: this serves all but the largest 5 in 100 women.",
			"male":   " Nothing but his sex is told of who will sit here: this serves all but the largest 5 in 100 men.",
			"":       " Nobody is described who will sit here: this serves all but the largest 5 in 100 men, and nearly all women.",
		}[p.Sex]
	}
	for _, a := range z.Assumed {
		if strings.Contains(a.What, "extrapolated") {
			return " That stature or mass is outside what was measured, so the need is extrapolated: measure the height of the thighs, sitting with shoes on."
		}
	}
	if f.Status == find.Fail || z.SD <= 0 || f.Margin.Value > 2*float64(z.SD) {
		return ""
	}
	more := 50 * math.Erfc(f.Margin.Value/float64(z.SD)/math.Sqrt2)
	return fmt.Sprintf(" Of 100 people of that description about %.0f need more than that: measure the height of the thighs, sitting with shoes on.", more)
}

// bracketBeside names the bracket that hangs lower than a zone is high, next to it
// and not over it: what legs would meet elsewhere.
func (s Site) bracketBeside(z model.Zone) string {
	slab := s.slabOf(z)
	if z.Kind != model.ThighZone || slab == nil {
		return ""
	}
	best := geom.Gap{Distance: unit.Length(math.Inf(1))}
	var nearest *model.Part
	for _, p := range s.Design.Parts {
		if p.Bracket() == nil || len(p.Bodies) == 0 || p.Bounds().Min.Z >= z.Floor+z.Height || p.Bounds().Max.Z <= z.Floor {
			continue
		}
		g := p.Footprint().Gap(z.Plan)
		if g.Distance < -contact {
			return ""
		}
		if g.Distance < best.Distance {
			best, nearest = g, p
		}
	}
	if nearest == nil {
		return ""
	}
	f := frontOf(slab)
	side, away := "further in than the knees", best.A.Sub(best.B)
	if x, y := away.Dot(f.along), away.Dot(f.in); math.Abs(x) > math.Abs(y) {
		side = "to the " + leftOrRight(unit.Length(x))
	}
	what := "steel"
	if nearest.Cleat != nil {
		what = "cleat"
	}
	return fmt.Sprintf(" No %s is over this place: the nearest that low is %s (%.0f mm), %.0f mm %s.", what, nearest.ID, float64(nearest.Bounds().Min.Z-z.Floor), float64(max(0, best.Distance)), side)
}

func leftOrRight(by unit.Length) string {
	if by < 0 {
		return "left"
	}
	return "right"
}
