package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// fixings are the holes in one wall that hold one thing.
type fixings struct {
	what   string
	parts  []string
	wall   *model.Wall
	places []fixing
}

// fixing is one hole: along the wall from its left corner, and its height.
type fixing struct {
	name string
	s, z unit.Length
}

// judge looks at the number, at the wall, at studs, keep-outs and arrises.
func (x fixings) judge() []find.Finding {
	base := find.Finding{Parts: x.parts, Walls: []string{x.wall.Name}}
	f := base
	f.Measured = &find.Quantity{Value: float64(len(x.places)), Unit: "fixings"}
	f.Required = &find.Limit{Value: leastFixings, Relation: find.AtLeast, Unit: "fixings"}
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{hint("give it two fixings at least: move it or its ends, or put studs or a board behind the plaster")}
	}
	if len(x.places) == 0 {
		f.Why = fmt.Sprintf("%s is not fixed to the wall %s at all.", capital(x.what), x.wall.Name)
		return []find.Finding{f}
	}
	if u, bad := x.wallUnfit(); bad {
		u.Parts, u.Walls = base.Parts, base.Walls
		return []find.Finding{u}
	}
	f.Why = fmt.Sprintf("%s is fixed to the wall %s (%s) at %s.", capital(x.what), x.wall.Name, x.wall.Make, count(len(x.places), "place", "places"))
	if x.wall.Make == model.Aerated || x.wall.Make == model.Hollow {
		f.Assumed = []find.Assumption{{What: "the anchors are approved for " + string(x.wall.Make) + ": others pull out of it", Source: "the paper of the anchor that is bought"}}
	}
	out := []find.Finding{f}
	for _, look := range []func(find.Finding) (find.Finding, bool){x.inStuds, x.keptOut, x.nearArris} {
		if g, ok := look(base); ok {
			out = append(out, g)
		}
	}
	return out
}

// wallUnfit tells what must be known of a wall before a hole in it can be
// judged, and of a wall that holds nothing.
func (x fixings) wallUnfit() (find.Finding, bool) {
	w := x.wall
	switch {
	case w.Make == model.UnknownWall || w.Make == "":
		return unknown(fmt.Sprintf("nobody has said what the wall %s is made of, so no fixing of %s in it can be judged.", w.Name, x.what),
			hint("drill a test hole and write the wall's make into the job file")), true
	case w.Make == model.Stud && len(w.Studs) == 0:
		return unknown(fmt.Sprintf("the wall %s stands on studs, and nobody has said where they are; %s is to be fixed in them and nowhere else.", w.Name, x.what),
			hint("find the studs and write their distances from a corner into the job file")), true
	case w.Make == model.Plasterboard && len(w.Studs) == 0:
		return find.Finding{
			Status: find.Fail, Title: "Fixings sit in studs",
			Why: fmt.Sprintf("The wall %s is plasterboard without studs behind it: it does not carry %s.", w.Name, x.what),
			Fix: []find.Fix{hint("find what stands behind the board and fix to that, or put a board across the studs behind the plaster")},
		}, true
	}
	return find.Finding{}, false
}

// inStuds holds every fixing in a wall of studs, or of plasterboard, to a stud.
func (x fixings) inStuds(f find.Finding) (find.Finding, bool) {
	w := x.wall
	if w.Make != model.Stud && w.Make != model.Plasterboard {
		return f, false
	}
	f.Title = "Fixings sit in studs"
	worst, which := unit.Length(-1), fixing{}
	for _, p := range x.places {
		off := unit.Length(math.Inf(1))
		for _, s := range w.Studs {
			off = min(off, abs(p.s-s))
		}
		if off > worst {
			worst, which = off, p
		}
	}
	f.Measured, f.Required, f.At = mm(worst), limit(find.AtMost, studReach), x.at(which)
	f.Why = fmt.Sprintf("Fixing %s of %s is %.0f mm beside the middle of the nearest stud; no other is further off.", which.name, x.what, float64(worst))
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{hint("fix %s at the studs only: they stand %s mm from the left corner of the wall %s", x.what, distances(w.Studs), w.Name)}
	}
	return f, true
}

func distances(list []unit.Length) string {
	var out []string
	for _, l := range list {
		out = append(out, fmt.Sprintf("%.0f", float64(l)))
	}
	return strings.Join(out, ", ")
}

// keptOut holds every fixing clear of what runs in or stands on the wall.
func (x fixings) keptOut(f find.Finding) (find.Finding, bool) {
	if len(x.wall.Obstacles) == 0 {
		return f, false
	}
	best := unit.Length(math.Inf(1))
	for _, p := range x.places {
		for _, o := range x.wall.Obstacles {
			box := geom.Rect(geom.V(o.Start, o.Bottom), geom.V(o.End, o.Top))
			if d := box.DistanceTo(geom.V(p.s, p.z)) - o.Free; d < best {
				best = d
				f.At = x.at(p)
				f.Measured, f.Required = mm(d+o.Free), limit(find.AtLeast, o.Free)
				f.Why = fmt.Sprintf("Fixing %s of %s is %.0f mm from %s, from its middle to the edge; %.0f mm are to stay free.", p.name, x.what, float64(d+o.Free), o.Name, float64(o.Free))
				if d+o.Free < 0 {
					f.Why = fmt.Sprintf("Fixing %s of %s is drilled into %s.", p.name, x.what, o.Name)
				}
			}
		}
	}
	f.Title = "Fixings keep clear of what is in the wall"
	f.Assumed = []find.Assumption{{What: "nothing else runs in the wall: detector, power off, test hole", Source: "job file"}}
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{hint("move that hole by %.0f mm, or leave it out and fix on both sides", float64(up(-best)))}
	}
	return f, true
}

// nearArris tells of fixings near an outside corner of masonry.
func (x fixings) nearArris(f find.Finding) (find.Finding, bool) {
	w := x.wall
	if w.Make == model.Stud || w.Make == model.Plasterboard {
		return f, false
	}
	best, which, corner := unit.Length(math.Inf(1)), fixing{}, ""
	for _, p := range x.places {
		for _, end := range []struct {
			c model.Corner
			d unit.Length
		}{{w.From, p.s}, {w.To, w.Length() - p.s}} {
			if end.c.Angle > 180*unit.Degree && end.d < best {
				best, which, corner = end.d, p, end.c.Name
			}
		}
	}
	if best >= arrisDistance {
		return f, false
	}
	f.Title, f.At = "Fixings keep off an outside corner", x.at(which)
	f.Measured, f.Required = mm(best), limit(find.AtLeast, arrisDistance)
	f = f.Judge()
	f.Status = find.Note // how near it may be stands in a paper that is not known here
	f.Why = fmt.Sprintf("Fixing %s of %s is %.0f mm from the outside corner %s of the wall %s: masonry may break away there.", which.name, x.what, float64(best), corner, w.Name)
	f.Assumed = []find.Assumption{{What: "the anchor sits 50 mm deep in the masonry and wants twice that to an edge", Source: practice + "; the approval of the anchor decides"}}
	f.Fix = []find.Fix{hint("move %s %.0f mm away from the corner, or use an anchor that is approved for such an edge", which.name, float64(up(arrisDistance-best)))}
	return f, true
}

func (x fixings) at(p fixing) *[3]float64 {
	l := x.wall.LineAt(p.z)
	return at(l.P.Add(l.D.Unit().Mul(float64(p.s))).Up(p.z))
}
