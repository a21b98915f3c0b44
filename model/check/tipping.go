package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var tipping = Rule{
	ID: "tipping", Title: "The slab lies by its own weight",
	Basis: "statics: the centre of gravity seen from above, against the outline round all its bearings",
	Why:   "A slab whose centre of gravity lies beyond its bearings tips as soon as it is let go. Screws may hold it, but then they carry it for ever, and whoever mounts it needs a prop.",
	Run: func(s Site) []find.Finding {
		out := unbuilt(s.Design)
		for _, p := range s.Design.Parts {
			if p.Slab != nil && len(p.Bodies) > 0 {
				if f, ok := lies(s.Design, p); ok {
					out = append(out, f)
				}
			}
		}
		return out
	},
}

// lies judges a slab on brackets and table legs. Rods hold a shelf like a beam built into the
// wall, and a slab that nothing carries fails elsewhere.
func lies(d *model.Design, slab *model.Part) (find.Finding, bool) {
	wood := flatOf(slab)
	var corners []geom.Vec
	screwed := true
	var names []string
	for _, a := range carriersOf(d, slab) {
		if a.Post != nil {
			names = append(names, a.ID)
			for _, loop := range a.Footprint().Intersect(wood).Loops() {
				corners = append(corners, loop...)
			}
			continue
		}
		b := a.Bracket()
		if b == nil {
			return find.Finding{Status: find.Pass, Parts: []string{slab.ID}, Why: fmt.Sprintf("%s hangs on rods, which hold it like beams built into the wall; whether they are strong enough is not checked.", capital(slab.ID))}, true
		}
		names = append(names, a.ID)
		screwed = screwed && len(b.On().In(model.SeatLeg)) > 0
		seat, _, _ := seatOf(b)
		for _, loop := range seat.Intersect(wood).Loops() {
			corners = append(corners, loop...)
		}
	}
	if names == nil {
		return find.Finding{}, false
	}
	c := slab.Centroid()
	if len(corners) < 3 {
		return find.Finding{Status: find.Fail, Parts: append([]string{slab.ID}, names...), At: at(c), Why: fmt.Sprintf("%s lies on none of its brackets.", capital(slab.ID)), Fix: []find.Fix{hint("move %s under it", list(names))}}, true
	}
	inside := -hull(corners).DistanceTo(c.Flat())
	f := find.Finding{
		Parts: append([]string{slab.ID}, names...), At: at(c), Measured: mm(inside), Required: limit(find.AtLeast, 0.0),
		Why: fmt.Sprintf("The centre of gravity of %s is %.0f mm inside the outline round its bearings.", slab.ID, float64(inside)),
	}.Judge()
	if f.Status != find.Fail {
		return f, true
	}
	f.Why = fmt.Sprintf("The centre of gravity of %s is %.0f mm beyond the edge of its bearings on %s: it tips as soon as it is let go.", slab.ID, -float64(inside), list(names))
	f.Fix = []find.Fix{hint("carry it on a second wall, or on a bracket that reaches at least %.0f mm further from the wall", float64(up(-inside)))}
	if screwed {
		f.Status = find.Warn
		f.Why += " Only the screws from below hold it, and whether they do is not checked."
	}
	return f, true
}

// hull is the convex outline round points: all of them that see the whole set
// on one side (gift wrapping; R. A. Jarvis, 1973).
func hull(pts []geom.Vec) geom.Region {
	if len(pts) < 3 {
		return geom.Region{}
	}
	start := pts[0]
	for _, p := range pts {
		if p.X < start.X || p.X == start.X && p.Y < start.Y {
			start = p
		}
	}
	var out []geom.Vec
	for at := start; ; {
		out = append(out, at)
		next, far := at, unit.Length(0)
		for _, p := range pts {
			if turn, d := next.Sub(at).Cross(p.Sub(at)), p.Sub(at).Len(); next == at || turn < 0 || turn == 0 && d > far {
				next, far = p, d
			}
		}
		if at = next; at == start || len(out) > len(pts) {
			return geom.Polygon(out...)
		}
	}
}
