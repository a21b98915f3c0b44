package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Gaps between a slab and a wall: what must be left to get the slab in and let
// it move, and what is still hidden by a bead or a fillet.
const (
	leastGap  unit.Length = 2
	widestGap unit.Length = 12
)

var wallGap = Rule{
	ID: "wall-gap", Title: "A gap is left between the slab and the wall",
	Basis: "2 to 3 mm left at each end to get a top in: " + practice,
	Why:   "A slab as long as the space cannot be lowered into it, and wood that swells against a wall lifts or cracks it. Too wide a gap shows.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			for _, w := range s.Room.Walls {
				if f, ok := gapTo(p, w); ok {
					out = append(out, f)
				}
			}
		}
		return out
	},
}

// gapTo measures the least and the widest gap along the stretch where an edge
// of the slab runs beside a wall, at the underside and at the top.
func gapTo(p *model.Part, w *model.Wall) (find.Finding, bool) {
	sp := p.Slab
	least, widest := unit.Length(1e9), unit.Length(0)
	var where geom.Vec
	found := false
	for _, e := range sp.Edges {
		if e.Bound != model.ToWall {
			continue
		}
		for _, z := range []unit.Length{sp.Top - sp.Thickness, sp.Top} {
			l, wide, at, ok := gapAlong(sp.Pose.Plan(e.Start), sp.Pose.Plan(e.End), w.Face(z))
			if !ok {
				continue
			}
			found = true
			if l < least {
				least, where = l, at
			}
			widest = max(widest, wide)
		}
	}
	if !found {
		return find.Finding{}, false
	}
	f := find.Finding{
		Parts: []string{p.ID}, Walls: []string{w.Name}, At: at(where.Up(sp.Top)),
		Measured: find.MM(least), Required: find.LimitMM(find.AtLeast, leastGap),
		Assumed: []find.Assumption{{What: "the walls are straight or bowed as measured, at both faces of the slab", Source: "survey"}},
		Why:     fmt.Sprintf("Between %s and the wall %s the gap is %.1f to %.1f mm.", p.ID, w.Name, float64(least), float64(widest)),
	}.Judge()
	switch {
	case f.Status == find.Fail:
		f.Fix = []find.Fix{{Text: fmt.Sprintf("make the gap %.1f mm wider, or scribe that edge", float64(leastGap-least))}}
	case widest > widestGap:
		f.Status = find.Warn
		f.Why += fmt.Sprintf(" More than %.0f mm shows.", float64(widestGap))
		f.Fix = []find.Fix{{Text: "scribe the edge to the wall, or cover the joint with a bead"}}
	}
	return f, true
}

// gapAlong samples an edge against a wall's face where the face runs beside it:
// at the corners of both polylines, which is where a distance between straight
// lines is least or greatest. ok is false when they do not face each other
// within 60 mm over a finger's breadth.
func gapAlong(a, b geom.Vec, face []geom.Vec) (least, widest unit.Length, where geom.Vec, ok bool) {
	edge := geom.Through(a, b)
	l := edge.D.Len()
	lo := max(0, min(edge.Along(face[0]), edge.Along(face[len(face)-1])))
	hi := min(l, max(edge.Along(face[0]), edge.Along(face[len(face)-1])))
	if hi-lo < 15 {
		return 0, 0, where, false
	}
	least = 1e9
	for _, s := range append(alongs(edge, face, lo, hi), lo, hi) {
		p := edge.P.Add(edge.D.Unit().Mul(float64(s)))
		d, hit := across(p, edge.D.Unit().Left(), face)
		if !hit || d > 60 || d < -60 {
			continue
		}
		ok = true
		if d < least {
			least, where = d, p
		}
		widest = max(widest, d)
	}
	return least, widest, where, ok
}

func alongs(edge geom.Line, face []geom.Vec, lo, hi unit.Length) []unit.Length {
	var out []unit.Length
	for _, v := range face {
		if s := edge.Along(v); s > lo && s < hi {
			out = append(out, s)
		}
	}
	return out
}

// across is the signed distance from p to a polyline along a direction.
func across(p, dir geom.Vec, face []geom.Vec) (unit.Length, bool) {
	best, found := unit.Length(0), false
	for i := range face[:len(face)-1] {
		a, b := face[i], face[i+1]
		den := dir.Cross(b.Sub(a))
		if den == 0 {
			continue
		}
		t := a.Sub(p).Cross(b.Sub(a)) / den
		u := a.Sub(p).Cross(dir) / den
		if u < -1e-9 || u > 1+1e-9 {
			continue
		}
		if d := unit.Length(t); !found || abs(d) < abs(best) {
			best, found = d, true
		}
	}
	return best, found
}

func abs(l unit.Length) unit.Length {
	if l < 0 {
		return -l
	}
	return l
}
