package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var leavesRoom = Rule{
	ID: "leaves-room", Title: "Every part stays inside the room", Fit: true,
	Basis: "geometry: plan of each part against the walls at its own height, with bow and lean",
	Why:   "A part that passes through a wall was drawn into plaster. Rods that are meant to sit in the wall are left out.",
	Run: func(s Site) []find.Finding {
		out := unbuilt(s.Design)
		plans := plansOf(s.Room)
		looked := 0
		for _, p := range s.Design.Parts {
			if p.Rod != nil || len(p.Bodies) == 0 {
				continue
			}
			looked++
			depth, where, z := outside(plans, p)
			if depth <= contact {
				continue
			}
			f := find.Finding{
				Parts: []string{p.ID}, At: at(where.Up(z)),
				Measured: mm(depth), Required: limit(find.AtMost, 0.0),
				Fix: []find.Fix{hint("shorten or move %s by %.0f mm there, or measure that wall again", p.ID, float64(up(depth)))},
			}
			beyond := "the walls"
			if w := nearestWall(s.Room, where); w != nil {
				f.Walls = []string{w.Name}
				beyond = "the wall " + w.Name
			}
			f.Why = fmt.Sprintf("%s reaches %.1f mm beyond %s, at a height of %.0f mm.", capital(p.ID), float64(depth), beyond, float64(z))
			out = append(out, f.Judge())
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: fmt.Sprintf("All %s stay inside the measured walls; rods that sit in a wall are not counted.", count(looked, "part", "parts"))})
		}
		return out
	},
}

// plansOf remembers the room's plans: many parts share a height.
func plansOf(r *model.Room) func(unit.Length) geom.Region {
	seen := map[unit.Length]geom.Region{}
	return func(z unit.Length) geom.Region {
		plan, ok := seen[z]
		if !ok {
			plan = r.Plan(z)
			seen[z] = plan
		}
		return plan
	}
}

// outside finds how far a part goes beyond the walls, at worst, as they stand at
// its lower and its upper end. Seen from above, the whole part counts at both.
func outside(plans func(unit.Length) geom.Region, p *model.Part) (worst unit.Length, where geom.Vec, height unit.Length) {
	for _, b := range p.Bodies {
		shape, box := b.Solid.Footprint(), b.Solid.Bounds()
		loops := shape.Loops()
		for _, z := range []unit.Length{box.Min.Z, box.Max.Z} {
			plan := plans(z)
			for _, loop := range loops {
				for _, v := range loop {
					if plan.Contains(v) {
						continue
					}
					if d := plan.DistanceTo(v); d > worst {
						worst, where, height = d, v, z
					}
				}
			}
			if worst > contact || !pokes(plan, shape, box) {
				continue
			}
			// What sticks out between two of its corners: its mean width.
			if out := shape.Minus(plan); out.Area() > 1 {
				worst, where, height = 2*unit.Length(out.Area())/out.Perimeter(), out.Centroid(), z
			}
		}
	}
	return worst, where, height
}

// pokes tells whether a line of the plan runs through a shape: only then can a
// wall enter a part whose corners are all in the room.
func pokes(plan, shape geom.Region, box geom.Box) bool {
	for _, loop := range plan.Loops() {
		for i, v := range loop {
			w := loop[(i+1)%len(loop)]
			if max(v.X, w.X) < box.Min.X+contact || min(v.X, w.X) > box.Max.X-contact || max(v.Y, w.Y) < box.Min.Y+contact || min(v.Y, w.Y) > box.Max.Y-contact {
				continue
			}
			if len(shape.Inside(v, w)) > 0 {
				return true
			}
		}
	}
	return false
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
