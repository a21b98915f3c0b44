package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Room round a table on castors: over it for a rough floor and the castors'
// play, beside it for steering.
const (
	overTable   unit.Length = 15
	besideTable unit.Length = 5
)

var rollOutRule = Rule{
	ID: "roll-out", Title: "The roll-out table rolls in and out", Fit: true,
	Basis: "15 mm over it (10 rough floor, 5 castors) and 5 mm beside it: " + practice,
	Why:   "A table that just fits under the slab catches on the first bump of the floor, and one that is parked close to steel or a socket cannot be steered past it.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.RollOut != nil && len(p.Bodies) > 0 {
				out = append(out, s.rolls(p)...)
			}
		}
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: "Nothing here rolls out."})
		}
		return out
	},
}

// rolls judges the way of a table from where it is parked to where it has been
// rolled out: what is over it, and what stands beside it.
func (s Site) rolls(table *model.Part) []find.Finding {
	ro := table.RollOut
	way := geom.Rect(geom.V(0, -ro.Depth-ro.Travel), geom.V(ro.Width, 0)).Place(geom.Pose{At: ro.Corner.Up(0), Turn: ro.Turn})
	box := table.Bounds()
	over := find.Finding{Title: "Room over the table", Parts: []string{table.ID}, Status: find.Pass, Why: "Nothing is over " + table.ID + "."}
	side := find.Finding{Title: "Room beside the table", Parts: []string{table.ID}, Status: find.Pass, Why: "Nothing is beside the way of " + table.ID + "."}
	least, near := farthest, farthest
	look := func(name string, part bool, layers []geom.Layer, height unit.Length) {
		for _, l := range layers {
			low, high := l.Region.Bounds()
			if l.Z1 <= box.Min.Z+contact || apartInPlan(geom.Box{Min: low.Up(0), Max: high.Up(0)}, way) > max(near, 0) {
				continue
			}
			gap := l.Region.Gap(way)
			switch {
			case l.Z0 >= box.Max.Z-contact || gap.Distance < 0 && l.Z0 > box.Min.Z+ro.Height/2:
				if gap.Distance < 0 && l.Z0-box.Max.Z < least {
					least = l.Z0 - box.Max.Z
					over = concern(over, name, part, gap.B.Up(l.Z0), least, overTable)
				}
			case gap.Distance < near:
				near = gap.Distance
				side = concern(side, name, part, gap.B.Up(height), near, besideTable)
			}
		}
	}
	for _, p := range s.Design.Parts {
		if p == table || len(p.Bodies) == 0 {
			continue
		}
		for _, b := range s.shapes[p]().solids {
			if apartInPlan(b.Bounds(), way) <= max(near, 0) {
				look(p.ID, true, b.Layers(), box.Max.Z)
			}
		}
	}
	for _, w := range s.Room.Walls {
		for _, o := range w.Obstacles {
			if o.Depth > 0 {
				look(o.Name, false, o.Solid().Layers(), box.Max.Z)
			}
		}
	}
	side = s.wallBeside(side, way, near, box.Max.Z)
	return []find.Finding{s.tableFix(over, table), s.tableFix(side, table)}
}

// apartInPlan is a lower bound of the distance of a box and a region, both
// seen from above.
func apartInPlan(box geom.Box, r geom.Region) unit.Length {
	low, high := r.Bounds()
	return geom.Box{Min: low.Up(0), Max: high.Up(0)}.Gap(geom.Box{Min: box.Min.Flat().Up(0), Max: box.Max.Flat().Up(0)})
}

func concern(f find.Finding, name string, part bool, where geom.Vec3, gap, need unit.Length) find.Finding {
	f.Parts, f.Walls = f.Parts[:1:1], nil
	if part {
		f.Parts = append(f.Parts, name)
	} else if wall, ok := strings.CutPrefix(name, "the wall "); ok {
		f.Walls = []string{wall}
	}
	f.At, f.Measured, f.Required = at(where), mm(gap), limit(find.AtLeast, need)
	f.Why = fmt.Sprintf("Between %s and %s there are %.0f mm on its way in and out.", f.Parts[0], name, float64(gap))
	if gap < 0 {
		f.Why = fmt.Sprintf("%s meets %s on its way in and out, by %.0f mm.", capital(f.Parts[0]), name, -float64(gap))
	}
	return f.Judge()
}

// wallBeside looks at the walls along the way.
func (s Site) wallBeside(f find.Finding, way geom.Region, near, z unit.Length) find.Finding {
	room := s.Room.Plan(z)
	for _, loop := range way.Loops() {
		for _, v := range loop {
			d := -room.DistanceTo(v)
			if d >= near {
				continue
			}
			near = d
			name := "a wall"
			if w := nearestWall(s.Room, v); w != nil {
				name = "the wall " + w.Name
			}
			f = concern(f, name, false, v.Up(z), d, besideTable)
		}
	}
	return f
}

func (s Site) tableFix(f find.Finding, table *model.Part) find.Finding {
	if f.Status != find.Fail {
		return f
	}
	lack := up(unit.Length(f.Required.Value - f.Measured.Value))
	if f.Required.Value == float64(overTable) {
		h := table.RollOut.Height
		f.Fix = []find.Fix{s.set(hint("make %s %.0f mm lower, %.0f mm", table.ID, float64(lack), float64(down(h-lack))), "table_height", h, down(h-lack))}
		return f
	}
	f.Fix = []find.Fix{hint("park %s %.0f mm further away from %s, or make it narrower", table.ID, float64(lack), "what stands beside it")}
	return f
}
