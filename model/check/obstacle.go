package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
)

var obstacleRule = Rule{
	ID: "obstacle", Title: "Parts keep clear of what is on the walls", Fit: true,
	Basis: "geometry: signed distance of the solids to the measured boxes with their free margin",
	Why:   "A socket behind a bracket is lost, a radiator under wood dries it, a pipe behind steel is drilled.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, w := range s.Room.Walls {
			for _, o := range w.Obstacles {
				if o.Depth > 0 {
					out = append(out, s.clearOf(w, o))
				}
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "Nothing that stands out from a wall was measured.",
				Assumed: []find.Assumption{{What: "there are no sockets, radiators, pipes, sills or doors where the parts go", Source: "job file: none is given"}}})
		}
		return out
	},
}

// clearOf finds the part that is nearest to an obstacle.
func (s Site) clearOf(w *model.Wall, o model.Obstacle) find.Finding {
	box := o.Solid()
	f := find.Finding{Walls: []string{w.Name}, Title: "Room round " + o.Name, Status: find.Pass, Why: "No part is near " + o.Name + "."}
	best := farthest
	for _, p := range s.Design.Parts {
		if len(p.Bodies) == 0 || s.shapes[p]().bounds.Gap(box.Bounds()) > max(0, best) {
			continue
		}
		g, ok := s.shapes.gapTo(p, box)
		if !ok || g.Distance >= best {
			continue
		}
		best = g.Distance
		f.Parts, f.At = []string{p.ID}, at(mid(g))
		f.Measured, f.Required = mm(g.Distance), limit(find.AtLeast, o.Free)
		f.Why = fmt.Sprintf("%s is %.0f mm from %s on the wall %s; %.0f mm are to stay free.", capital(p.ID), float64(g.Distance), o.Name, w.Name, float64(o.Free))
		if g.Distance < 0 {
			f.Why = fmt.Sprintf("%s stands %.0f mm inside %s on the wall %s; %.0f mm are to stay free.", capital(p.ID), -float64(g.Distance), o.Name, w.Name, float64(o.Free))
		}
	}
	f = f.Judge()
	if f.Status == find.Fail {
		or := "have it moved"
		if best < 0 {
			or = "make a cut-out round it"
		}
		f.Fix = []find.Fix{hint("move %s %.0f mm away from %s, or %s", f.Parts[0], float64(up(o.Free-best)), o.Name, or)}
	}
	return f
}
