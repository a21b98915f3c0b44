package hold

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// bearings are the places where the slab rests, in its axes.
func (b *bench) bearings() []geom.Vec {
	var out []geom.Vec
	for _, s := range b.supports {
		if s.beside {
			continue
		}
		for _, st := range s.stations {
			for _, p := range st.points {
				out = append(out, p.at)
			}
		}
	}
	return out
}

// spanThrough is the shorter of the spans along and across the slab through a
// place: from bearing to bearing, without leaving the slab. Where neither ends
// on bearings both ways the slab overhangs, and twice the distance to the
// nearest bearing counts: EN 1995-1-1 Table 7.2 allows an overhang twice the
// ratio of a span.
func spanThrough(outline geom.Region, bearings []geom.Vec, at geom.Vec) unit.Length {
	shortest := unit.Length(math.Inf(1))
	for _, dir := range []geom.Vec{geom.V(1, 0), geom.V(0, 1)} {
		ahead, ok := reach(outline, bearings, at, dir)
		behind, also := reach(outline, bearings, at, dir.Mul(-1))
		if ok && also {
			shortest = min(shortest, ahead+behind)
		}
	}
	if !math.IsInf(float64(shortest), 1) {
		return shortest
	}
	return 2 * distance(bearings, at)
}

// distance to the nearest bearing.
func distance(bearings []geom.Vec, at geom.Vec) unit.Length {
	least := unit.Length(math.Inf(1))
	for _, p := range bearings {
		least = min(least, p.Sub(at).Len())
	}
	return least
}

// reach is how far it is from a place to the first bearing in a direction, seen
// within 20 degrees: brackets end before the front edge.
func reach(outline geom.Region, bearings []geom.Vec, at, dir geom.Vec) (unit.Length, bool) {
	best, ok := geom.Vec{}, false
	for _, p := range bearings {
		d := p.Sub(at)
		along := d.Dot(dir)
		if along > 1 && math.Abs(dir.Cross(d)) < along*math.Tan(math.Pi/9) && (!ok || d.Len() < best.Len()) {
			best, ok = d, true
		}
	}
	// Midway the slab must still be there.
	if !ok || outline.DistanceTo(at.Lerp(at.Add(best), 0.5)) > 10 {
		return 0, false
	}
	return best.Len(), true
}
