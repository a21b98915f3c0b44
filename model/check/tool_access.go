package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

var toolAccess = Rule{
	ID: "tool-access", Title: "Router and drill have room",
	Basis: "40 mm from the middle of a hole to the edge, where the wall will be, for a drill; 75 mm on either side of a cut for a router's base; bits up to 460 mm: " + practice,
	Why:   "A router that stands over the edge by half its base tips and spoils the groove; a hole beside a wall cannot be bored again once the slab is in; a bit that is too short leaves the rod standing out.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			for _, c := range wire.Cuttings(p) {
				if !c.Rebate { // it runs over its groove
					out = append(out, judgeTool(p, c))
				}
			}
		}
		return orNone(out, "No groove, pocket, hole or bore is cut into a slab.")
	},
}

func judgeTool(p *model.Part, c wire.Cutting) find.Finding {
	w := c.Work
	where := w.At
	if len(w.Path) > 0 {
		where = w.Path[0]
	}
	f := find.Finding{Title: fmt.Sprintf("Room for the tool at %s %s", w.Kind, w.Name), Parts: []string{p.ID}, Line: w.Line, At: onTop(p, p.Slab.Pose.Plan(where)),
		Measured: mm(c.Room), Required: limit(find.AtLeast, c.Needs)}
	lack := up(c.Needs - c.Room)
	switch {
	case w.Kind == model.Bore:
		f.Measured, f.Required = mm(c.Long), limit(find.AtMost, wire.LongestBit)
		f.Why = fmt.Sprintf("Bore %s in %s wants a bit of %.0f mm, %.0f mm long, in a jig on the edge; as much again is free before the edge while the slab is not yet in.", w.Name, p.ID, float64(w.Dia), float64(c.Long))
		f.Fix = []find.Fix{hint("take a rod that goes %.0f mm less deep into %s", float64(up(c.Long-wire.LongestBit)), p.ID)}
	case w.Kind == model.Through:
		f.Why = fmt.Sprintf("The middle of hole %s is %.0f mm from the edge of %s: a drill needs %.0f mm beside it, once there is a wall.", w.Name, float64(c.Room), p.ID, float64(c.Needs))
		f.Fix = []find.Fix{hint("move hole %s %.0f mm further in", w.Name, float64(lack))}
	case c.Bit == 0:
		f.Measured, f.Required = mm(w.Dia), limit(find.AtLeast, unit.Length(6))
		f.Why = fmt.Sprintf("%s %s is narrower than the thinnest usual bit of 6 mm.", capital(string(w.Kind)), w.Name)
		f.Fix = []find.Fix{hint("cut it 6 mm wide")}
	default:
		what := "groove"
		if w.Kind == model.Pocket {
			what = "pocket"
		}
		f.Why = fmt.Sprintf("The middle of %s %s comes within %.0f mm of the edge of %s: half a router's base is %.0f mm wide.", what, w.Name, float64(c.Room), p.ID, float64(c.Needs))
		f = f.Judge()
		if f.Status == find.Fail { // a strip beside the edge carries the base
			f.Status = find.Note
			f.Fix = []find.Fix{hint("clamp a strip as thick as the slab and %.0f mm wide beside the edge there, so that the base lies flat", float64(lack))}
		}
		return f
	}
	f = f.Judge()
	if f.Status != find.Fail {
		f.Fix = nil
	}
	return f
}
