package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var kneeSpace = Rule{
	ID: "leg-room", Title: "Legs fit under the worktop",
	Basis: "leg room from the person's stature and mass (ANSUR II regressions), EN 527-1 foot room, allowances as listed",
	Why:   "Steel at the knee bruises it every day; a slab that is too low for the thighs cannot be sat at at all. Everything that reaches into the leg room counts: slabs, angles, the roll-out table.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, z := range s.Design.Zones {
			out = append(out, headroom(s, z))
		}
		for _, seat := range s.Design.Seats {
			out = append(out, elbows(s, seat)...)
		}
		return out
	},
}

// intruder is a part over a zone, and how low it comes.
type intruder struct {
	part *model.Part
	low  unit.Length // above the zone's floor
	at   geom.Vec
}

// headroom finds the lowest thing over a zone: the free height above the floor.
func headroom(s Site, z model.Zone) find.Finding {
	list := intruders(s.Design, z)
	f := find.Finding{Title: "Room for " + z.Name, Assumed: z.Assumed, Line: z.Line, Required: find.LimitMM(find.AtLeast, z.Height)}
	if len(list) == 0 {
		f.Status, f.Required = find.Pass, nil
		f.Why = "Nothing stands over the place of " + z.Name + "."
		return f
	}
	low := list[0]
	for _, i := range list {
		if i.low < low.low {
			low = i
		}
	}
	f.Measured = find.MM(low.low)
	f.Measured.SD = float64(z.SD)
	f.At = at(low.at.Up(z.Floor + low.low))
	f.Parts = []string{low.part.ID}
	f.Why = fmt.Sprintf("%s needs %.0f mm above the floor; %s leaves %.0f mm.", z.Name, float64(z.Height), low.part.ID, float64(low.low))
	f = f.Judge()
	if f.Status != find.Fail {
		return f
	}
	f.Parts = nil
	var names []string
	for _, i := range list {
		if i.low < z.Height-1e-6 {
			f.Parts = append(f.Parts, i.part.ID)
			names = append(names, fmt.Sprintf("%s (%.0f mm)", i.part.ID, float64(i.low)))
			f.Fix = append(f.Fix, wayOut(s, z, i)...)
		}
	}
	f.Why = fmt.Sprintf("%s needs %.0f mm above the floor; in the way: %s.", z.Name, float64(z.Height), strings.Join(names, ", "))
	return f
}

// intruders gives every part over the zone with the height of its lowest layer
// there. What lies wholly above the worktop does not count.
func intruders(d *model.Design, z model.Zone) []intruder {
	var out []intruder
	for _, p := range d.Parts {
		found := false
		var worst intruder
		for _, b := range p.Bodies {
			for _, l := range b.Solid.Layers() {
				if found && l.Z0-z.Floor >= worst.low {
					continue
				}
				if over := l.Region.Intersect(z.Plan); over.Area() > 1 {
					worst, found = intruder{p, l.Z0 - z.Floor, over.Centroid()}, true
				}
			}
		}
		if found {
			out = append(out, worst)
		}
	}
	return out
}

// wayOut proposes what frees the zone of one intruder: raise a slab, or move
// what stands at the side.
func wayOut(s Site, z model.Zone, i intruder) []find.Fix {
	lack := z.Height - i.low
	if i.part.ID == z.Slab {
		surface := float64(up(i.part.Slab.Top + lack))
		return []find.Fix{
			value(fmt.Sprintf("raise the surface by %.0f mm, seat and footrest with it", float64(up(lack))), "surface", surface),
			value(fmt.Sprintf("or take a slab %.0f mm thinner", float64(up(lack))), "thickness", float64(i.part.Slab.Thickness-up(lack))),
			{Text: "or sit lower, on a seat whose user has measured the thigh's height on herself"},
		}
	}
	over := i.part.Footprint().Intersect(z.Plan)
	lo, hi := over.Bounds()
	return []find.Fix{{Text: fmt.Sprintf("or move the seat or %s sideways by %.0f mm, or cut %s back", i.part.ID, float64(up(hi.X-lo.X)), i.part.ID)}}
}

// elbows compares the surface with the elbows of everybody who sits there: the
// wish that pulls against the thighs.
func elbows(s Site, seat model.Seat) []find.Finding {
	slab := s.Design.Part(seat.At)
	var out []find.Finding
	for _, p := range seat.People {
		r, err := model.LegRoomOf(p)
		if err != nil || slab == nil {
			continue
		}
		over := slab.Slab.Top - r.Elbow
		f := find.Finding{
			Status: find.Note, Title: "Surface against elbow height", Parts: []string{slab.ID}, Line: seat.Line,
			Why:      fmt.Sprintf("%s: the elbow is at %.0f mm sitting with shoes, the surface %.0f mm above it. Work is easiest at 0 to 30 mm.", p.Name, float64(r.Elbow), float64(over)),
			Measured: &find.Quantity{Value: round3(float64(over)), SD: round3(float64(r.SDElbow)), Unit: "mm"},
			Assumed:  []find.Assumption{{What: "elbow height from stature is a weak guess: measure it on the person, seated", Source: "ANSUR II regression, R2 0.03 to 0.55"}},
			Basis:    "surface at elbow height, 0 to +30 mm: public teaching text, common practice",
		}
		if over > 50 {
			f.Why += fmt.Sprintf(" Seat and feet must go up by %.0f mm: a footrest.", float64(over-30))
		}
		out = append(out, f)
	}
	return out
}
