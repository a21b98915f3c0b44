package check

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// intruder is something over a zone: how low it comes there, and where.
type intruder struct {
	name string
	part *model.Part // nil for what is on a wall, and for a wall
	wall string      // the wall, or the one that it is on
	low  unit.Length // above the zone's floor
	over geom.Region // what is lower than the zone is high, as far as it is over the zone
}

func (i intruder) inWords() string {
	if i.part == nil && i.low == 0 {
		return i.name
	}
	return fmt.Sprintf("%s at %.0f mm", i.name, float64(i.low))
}

func concerned(list []intruder) (parts, walls []string) {
	for _, i := range list {
		switch {
		case i.part != nil:
			parts = append(parts, i.part.ID)
		case !slices.Contains(walls, i.wall):
			walls = append(walls, i.wall)
		}
	}
	return parts, walls
}

// over gives everything over a zone. What lies wholly above the worktop is too
// high to matter, but counts alike.
func (s Site) over(z model.Zone) []intruder {
	var out []intruder
	for _, p := range s.Design.Parts {
		if i, ok := s.partOver(p, z); ok {
			out = append(out, i)
		}
	}
	for _, w := range s.Room.Walls {
		for _, o := range w.Obstacles {
			if o.Depth <= 0 || o.Top <= z.Floor {
				continue
			}
			if over := o.Solid().Footprint().Intersect(z.Plan); over.Area() > 1 {
				out = append(out, intruder{name: o.Name, wall: w.Name, low: max(0, o.Bottom-z.Floor), over: over})
			}
		}
	}
	if z.Kind == model.FootZone { // how far feet reach to a wall is judged by itself
		return out
	}
	if beyond := z.Plan.Minus(s.Room.Plan(z.Floor + z.Height/2)); beyond.Area() > 100 {
		i := intruder{name: "a wall", over: beyond}
		if w := nearestWall(s.Room, beyond.Centroid()); w != nil {
			i.name, i.wall = "the wall "+w.Name, w.Name
		}
		out = append(out, i)
	}
	return out
}

// partOver finds how low a part comes over a zone, from its layers; a slab's
// underside is its lowest layer and need not be cut into layers first.
func (s Site) partOver(p *model.Part, z model.Zone) (intruder, bool) {
	out := intruder{name: p.ID, part: p, low: math.MaxFloat64}
	low, high := z.Plan.Bounds()
	if len(p.Bodies) == 0 {
		return out, false
	}
	for _, b := range s.shapes[p]().solids {
		box := b.Bounds()
		if box.Max.X < low.X || box.Min.X > high.X || box.Max.Y < low.Y || box.Min.Y > high.Y || box.Max.Z <= z.Floor {
			continue
		}
		for _, l := range b.Layers() {
			height := max(0, l.Z0-z.Floor)
			if l.Z1 <= z.Floor || height >= z.Height && height >= out.low {
				continue
			}
			over := l.Region.Intersect(z.Plan)
			if over.Area() <= 1 {
				continue
			}
			out.low = min(out.low, height)
			out.over = out.over.Union(over)
		}
	}
	return out, !out.over.Empty()
}
