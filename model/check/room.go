package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var leavesRoom = Rule{
	ID: "leaves-room", Title: "Every part stays inside the room",
	Basis: "geometry: plan of each part against the walls at its own height, with bow and lean",
	Why:   "A part that passes through a wall was drawn into plaster. Rods that are meant to sit in the wall are left out.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Rod != nil || len(p.Bodies) == 0 {
				continue
			}
			depth, where, z := outside(s.Room, p)
			if depth <= contact {
				continue
			}
			f := find.Finding{
				Parts: []string{p.ID}, At: at(where.Up(z)),
				Why:      fmt.Sprintf("%s reaches %.1f mm beyond the walls at a height of %.0f mm.", p.ID, float64(depth), float64(z)),
				Measured: find.MM(depth), Required: find.LimitMM(find.AtMost, 0.0),
				Fix: []find.Fix{{Text: "shorten it, move it, or measure that wall again"}},
			}
			if w := nearestWall(s.Room, where); w != nil {
				f.Walls = []string{w.Name}
			}
			out = append(out, f.Judge())
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: fmt.Sprintf("All %d parts stay inside the measured walls.", len(s.Design.Parts))})
		}
		return out
	},
}

// outside finds how far a part goes beyond the walls, at worst, as they stand at
// its lower and its upper end. Seen from above, the whole part counts at both.
func outside(room *model.Room, p *model.Part) (worst unit.Length, where geom.Vec, height unit.Length) {
	for _, b := range p.Bodies {
		shape, box := b.Solid.Footprint(), b.Solid.Bounds()
		for _, z := range []unit.Length{box.Min.Z, box.Max.Z} {
			plan := room.Plan(z)
			for _, loop := range shape.Loops() {
				for _, v := range loop {
					if plan.Contains(v) {
						continue
					}
					if d := plan.DistanceTo(v); d > worst {
						worst, where, height = d, v, z
					}
				}
			}
			// What sticks out between two of its corners: its mean width.
			if out := shape.Minus(plan); worst <= contact && out.Area() > 1 {
				worst, where, height = 2*unit.Length(out.Area())/out.Perimeter(), out.Centroid(), z
			}
		}
	}
	return worst, where, height
}

func nearestWall(room *model.Room, p geom.Vec) *model.Wall {
	var best *model.Wall
	var dist unit.Length
	for _, w := range room.Walls {
		if d := distanceToPath(p, w.Face(room.At)); best == nil || d < dist {
			best, dist = w, d
		}
	}
	return best
}

func distanceToPath(p geom.Vec, path []geom.Vec) unit.Length {
	best := path[0].Sub(p).Len()
	for i := range path[:len(path)-1] {
		best = min(best, distanceToSegment(p, path[i], path[i+1]))
	}
	return best
}

func distanceToSegment(p, a, b geom.Vec) unit.Length {
	d := b.Sub(a)
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = min(1, max(0, p.Sub(a).Dot(d)/l))
	}
	return p.Sub(a.Add(d.Mul(t))).Len()
}
