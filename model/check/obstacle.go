package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var obstacleRule = Rule{
	ID: "obstacle", Title: "Parts keep clear of what is on the walls",
	Basis: "geometry: signed distance of the solids to the measured boxes with their free margin",
	Why:   "A socket behind a bracket is lost, a radiator under wood dries it, a pipe behind steel is drilled.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, w := range s.Room.Walls {
			for _, o := range w.Obstacles {
				if o.Depth > 0 {
					out = append(out, clearOf(s.Design, w, o))
				}
			}
		}
		return out
	},
}

// clearOf finds the part that is nearest to an obstacle.
func clearOf(d *model.Design, w *model.Wall, o model.Obstacle) find.Finding {
	box := o.Solid()
	f := find.Finding{Walls: []string{w.Name}, Status: find.Pass, Why: "No part is near " + o.Name + "."}
	best := unit.Length(1e9)
	for _, p := range d.Parts {
		for _, b := range p.Bodies {
			if b.Solid.Bounds().Gap(box.Bounds()) > max(0, best) {
				continue
			}
			g := geom.Clearance(b.Solid, box)
			if g.Distance >= best {
				continue
			}
			best = g.Distance
			f.Parts, f.At = []string{p.ID}, at(mid(g))
			f.Measured, f.Required = find.MM(g.Distance), find.LimitMM(find.AtLeast, o.Free)
			f.Why = fmt.Sprintf("%s is %.0f mm from %s on the wall %s; %.0f mm are to stay free.", p.ID, float64(max(0, g.Distance)), o.Name, w.Name, float64(o.Free))
		}
	}
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{{Text: fmt.Sprintf("move %s by %.0f mm, or make a cut-out round %s", f.Parts[0], float64(o.Free-best), o.Name)}}
	}
	return f
}
