package check

import (
	"fmt"
	"slices"

	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/wire"
)

var cableWay = Rule{
	ID: "cable-way", Title: "Every cable has a way that it can be bent along",
	Basis: "least bends of four diameters, five where it moves, DIN VDE 0298-3 from memory, or as the cable's maker says; " + practice + " for where cables run",
	Why:   "A cable bent too tightly breaks inside; a plug that does not pass the hole is cut off and fitted again, or the hole is bored larger over a finished top.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, name := range s.wires.Lost {
			out = append(out, s.lost(name))
		}
		for _, r := range s.wires.Runs {
			out = append(out, s.judgeWay(r))
		}
		return orNone(out, "There are no cables in the job.")
	},
}

// orNone says that there is nothing to judge where there is nothing.
func orNone(out []find.Finding, why string) []find.Finding {
	if len(out) == 0 {
		return []find.Finding{{Status: find.Pass, Why: why}}
	}
	return out
}

// lost is a device at a place that does not exist.
func (s Site) lost(name string) find.Finding {
	f := unknown(name + " has no place in this design, so no cable can be led to it.")
	for _, d := range s.Job.Wiring.Devices {
		if d.Name != name {
			continue
		}
		f.Line = d.Pos.String()
		switch {
		case d.Socket != "":
			f.Fix = []find.Fix{hint("name a socket or switch among the obstacles of a wall: there is no %q", d.Socket)}
		case d.Wall != "":
			f.Fix = []find.Fix{hint("name a wall of the room, and a place on it: %s mm from the left corner is not on %q", wholeMM(d.Along), d.Wall)}
		case d.Inside != "":
			f.Fix = []find.Fix{hint("name a roll-out table of the design: %q is none", d.Inside)}
		default:
			f.Fix = []find.Fix{hint("name a slab or shelf of the design, and a place within its outline: %s mm from the left end of its reference edge and %s mm from that edge is not on %q", wholeMM(d.X), wholeMM(d.Back), d.On+d.Under)}
		}
	}
	return f
}

func (s Site) judgeWay(r wire.Run) find.Finding {
	c := r.Cable
	f := find.Finding{Title: "Way of " + c.Name, Status: find.Pass, Line: c.Pos.String()}
	if !r.Found {
		if slices.Contains(s.wires.Lost, c.From) || slices.Contains(s.wires.Lost, c.To) {
			u := unknown(fmt.Sprintf("%s ends at a device without a place.", c.Name), hint("mend the device first"))
			u.Title, u.Line = f.Title, f.Line
			return u
		}
		f.Status = find.Fail
		f.Why = fmt.Sprintf("No hole, groove or edge leads from %s to %s.", c.From, c.To)
		f.Fix = []find.Fix{hint("bore a cable hole near the one that stands on the slab, within 450 mm of an edge that runs along a wall"), hint("or move the device")}
		return f
	}
	f.At = at(midway(r.Points))
	f.Why = fmt.Sprintf("%s runs %.2f m from %s to %s.", capital(c.Name), float64(r.Length)/1000, c.From, c.To)
	f.Measured, f.Required = mm(r.Radius), limit(find.AtLeast, r.Wanted)
	if slices.Contains(r.Breaks, wire.NoPlug) {
		g, need := narrowest(r), max(c.Plug, c.Dia)
		f.Measured, f.Required = mm(g.Gate), limit(find.AtLeast, need)
		what := "plug of " + c.Name
		if c.Plug == 0 {
			what = "cable " + c.Name
		}
		f.Why = fmt.Sprintf("The %s is %s mm wide and does not pass %s in %s, %s mm wide.", what, wholeMM(need), g.Feature, g.Slab, wholeMM(g.Gate))
		f.Fix = []find.Fix{hint("%s at least %s mm wide", map[wire.Kind]string{wire.InHole: "bore the hole", wire.InSlot: "cut the slot so that the steel leaves it"}[g.Kind], wholeMM(up(need)))}
		if c.Plug > c.Dia && c.Dia <= g.Gate {
			f.Fix = append(f.Fix, hint("or fit the plug afterwards (leave out plug)"))
		}
	} else if slices.Contains(r.Breaks, wire.TooTight) {
		f.Why += fmt.Sprintf(" The tightest bend on its best way leaves %.0f mm of radius.", float64(r.Radius))
		f.Fix = []find.Fix{hint("take a cable that bends to %.0f mm: %.1f mm thick at most", float64(down(r.Radius)), float64(r.Radius)/4), hint("or move the device or the hole, so that the bends lie further apart")}
	}
	return f.Judge()
}

// narrowest is the narrowest hole or slot of a way.
func narrowest(r wire.Run) (out wire.Piece) {
	for _, p := range r.Pieces {
		if p.Gate > 0 && (out.Gate == 0 || p.Gate < out.Gate) {
			out = p
		}
	}
	return out
}

// midway is the middle point of a way.
func midway(pts []geom.Vec3) geom.Vec3 { return pts[len(pts)/2] }
