package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Gaps between a slab and a wall: what must be left to get the slab in, and what
// is still hidden by a bead or a fillet.
const (
	leastGap  unit.Length = 2
	widestGap unit.Length = 12
)

// beside is how near a wall must be to count as the one that an edge faces.
const beside unit.Length = 60

var wallGap = Rule{
	ID: "wall-gap", Title: "A gap is left between the slab and the wall", Fit: true,
	Basis: "2 to 3 mm left at each end to get a top in, 1 mm where the wood has swollen most; more than 12 mm shows: " + practice + "; swelling: " + swellingBasis,
	Why:   "A slab as long as the space cannot be lowered into it, and wood that swells against a wall lifts or cracks it. Too wide a gap shows.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Slab == nil {
				continue
			}
			n := len(out)
			move := s.movement(p)
			for _, w := range s.Room.Walls {
				if g, ok := gapTo(p, w); ok {
					out = append(out, s.judgeGap(p, w, g, move))
				}
			}
			if len(out) == n {
				out = append(out, find.Finding{Status: find.Pass, Parts: []string{p.ID}, Why: fmt.Sprintf("No wall is within %.0f mm of an edge of %s.", float64(beside), p.ID)})
			}
		}
		return out
	},
}

// wallJoint is the joint between a slab and a wall: its least and its greatest
// width, the edge with the least, and where that is.
type wallJoint struct {
	least, widest unit.Length
	edge          model.Edge
	where         geom.Vec
}

// gapTo measures the joint along the stretch where an edge of the slab runs
// beside a wall, at the underside and at the top: a wall leans evenly, so it is
// nowhere nearer in between.
func gapTo(p *model.Part, w *model.Wall) (wallJoint, bool) {
	sp := p.Slab
	out := wallJoint{least: 1e9}
	found := false
	for _, e := range sp.Edges {
		if e.Bound == model.ToPart || !facing(sp.Pose, e, w) {
			continue
		}
		for _, z := range []unit.Length{sp.Top - sp.Thickness, sp.Top} {
			l, wide, at, ok := gapAlong(sp.Pose.Plan(e.Start), sp.Pose.Plan(e.End), w.Face(z))
			if !ok {
				continue
			}
			found = true
			if l < out.least {
				out.least, out.where, out.edge = l, at, e
			}
			out.widest = max(out.widest, wide)
		}
	}
	return out, found
}

// facing tells whether an edge looks at a wall: both run the same way, for the
// room lies to the right of walls as the slab lies to the right of its edges.
func facing(pose geom.Pose, e model.Edge, w *model.Wall) bool {
	return e.End.Sub(e.Start).Turn(pose.Turn).Dot(w.Chord().D) > 0
}

// leastAt is the least gap that an edge needs at a wall, and how far it swells
// towards it.
func leastAt(move model.Movement, e model.Edge) (need, swells unit.Length) {
	swells = upTenth(travelOf(move, e).Out)
	return max(leastGap, model.WallSpare+swells), swells
}

// judgeGap wants room to get the slab in, and room to swell.
func (s Site) judgeGap(p *model.Part, w *model.Wall, g wallJoint, move model.Movement) find.Finding {
	need, swells := leastAt(move, g.edge)
	behind := s.legBehind(p, w)
	need += behind
	f := find.Finding{
		Parts: []string{p.ID}, Walls: []string{w.Name}, At: at(g.where.Up(p.Slab.Top)),
		Measured: mm(g.least),
		Assumed:  []find.Assumption{assumedFace(w)},
		Why:      fmt.Sprintf("Between %s and the wall %s the gap is %s.", p.ID, w.Name, fromTo(g.least, g.widest)),
	}
	if behind > 0 {
		f.Why += fmt.Sprintf(" A wall leg of %.0f mm stands in it.", float64(behind))
	}
	if need-behind > leastGap {
		f.Why += fmt.Sprintf(" The wood swells up to %.1f mm towards it.", float64(swells))
		f.Assumed = append(f.Assumed, move.Assumed...)
	}
	f.Required = limit(find.AtLeast, need)
	switch l := hundredth(g.least); {
	case l == 0 && hundredth(g.widest) == 0:
		f.Why = fmt.Sprintf("%s touches the wall %s: the gap is 0.0 mm.", capital(p.ID), w.Name)
	case l < 0:
		f.Why = fmt.Sprintf("%s runs %.1f mm into the wall %s.", capital(p.ID), -float64(g.least), w.Name)
	}
	f = f.Judge()
	switch {
	case f.Status == find.Fail && p.Cut != nil:
		f.Fix = []find.Fix{hint("it is already cut: take %.1f mm off its %s edge there", float64(up((need-g.least)*10)/10), g.edge.Name)}
	case f.Status == find.Fail:
		lack := upTenth(need - g.least)
		f.Fix = []find.Fix{
			s.set(hint("make the gap %.1f mm wider: %.1f mm", float64(lack), float64(g.edge.Gap+lack)), gapParameter(g.edge), g.edge.Gap, g.edge.Gap+lack),
			hint("or scribe that edge to the wall on the spot, which takes off at least as much"),
		}
		if move.Held.By == model.ByNone && need-behind > leastGap {
			f.Fix = append(f.Fix, hint("or hold %s by one row of screws in round holes near the wall %s, with slots for all others (Moving): it then swells away from there", p.ID, w.Name))
		}
	case g.widest-behind > widestGap:
		f.Status = find.Warn
		f.Why += fmt.Sprintf(" More than %.0f mm shows.", float64(widestGap))
		f.Fix = []find.Fix{hint("scribe the %s edge of %s to the wall %s, or cover the joint with a bead", g.edge.Name, p.ID, w.Name)}
	}
	return f
}

// fromTo writes a range of lengths, or one where both are printed alike.
func fromTo(low, high unit.Length) string {
	a, b := fmt.Sprintf("%.1f", hundredth(low)), fmt.Sprintf("%.1f", hundredth(high))
	if a == b {
		return a + " mm"
	}
	return a + " to " + b + " mm"
}

// gapParameter is what presets call the gap of an edge.
func gapParameter(e model.Edge) string {
	if e.Name == "left" || e.Name == "right" {
		return "side_gap"
	}
	return "back_gap"
}

func assumedFace(w *model.Wall) find.Assumption {
	if w.Bow == 0 {
		return find.Assumption{What: "the wall " + w.Name + " is flat: no bow was given for it", Source: "job file"}
	}
	return find.Assumption{What: fmt.Sprintf("the wall %s is bowed evenly by %.1f mm, as measured at its middle", w.Name, math.Abs(float64(w.Bow))), Source: "job file"}
}

// gapAlong measures an edge against a wall's face where the face runs beside
// it: at the corners of both polylines, which is where a distance between
// straight lines is least or greatest. ok is false when they do not face each
// other within reach over a finger's breadth.
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
		if !hit || d > beside || d < -beside {
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

func abs(l unit.Length) unit.Length { return unit.Length(math.Abs(float64(l))) }
