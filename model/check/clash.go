package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/corner"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// leastLegGap leaves a yard its saw tolerance of +2 mm.
const leastLegGap unit.Length = 2

var cornerClash = Rule{
	ID: "angles-in-corner", Title: "Two angles do not meet in the corner",
	Basis: "plane geometry of two legs in a corner of any angle; 2 mm for the yard's saw (+0/+2): " + practice,
	Why:   "Two angles each as long as their wall, or shorter by a round amount, still meet where their legs cross: in a square corner a leg of 60 mm needs 60 mm, not 50.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for i, a := range s.Design.Parts {
			for _, b := range s.Design.Parts[i+1:] {
				if a.Angle == nil || b.Angle == nil {
					continue
				}
				switch {
				case a.Angle.Wall.Next() == b.Angle.Wall && a.Angle.Wall != b.Angle.Wall:
					out = append(out, meetInCorner(a, b)...)
				case b.Angle.Wall.Next() == a.Angle.Wall && a.Angle.Wall != b.Angle.Wall:
					out = append(out, meetInCorner(b, a)...)
				}
			}
		}
		return out
	},
}

// meetInCorner judges the right end of one angle against the left end of the
// next, seen from the room.
func meetInCorner(left, right *model.Part) []find.Finding {
	a, b := left.Angle, right.Angle
	sa, okA := a.SetBackFrom(a.Wall, true)
	sb, okB := b.SetBackFrom(b.Wall, false)
	if !okA || !okB || math.Abs(float64(a.Seat-b.Seat)) >= float64(max(a.Section.Leg, b.Section.Leg)) {
		return nil
	}
	theta := model.CornerAngle(a.Wall, b.Wall)
	la, lb := corner.Leg{SetBack: sa, Width: a.Reach()}, corner.Leg{SetBack: sb, Width: b.Reach()}
	f := find.Finding{
		Parts: []string{left.ID, right.ID}, Walls: []string{a.Wall.Name, b.Wall.Name}, At: at(a.Wall.To.At.Up(a.Seat)),
		Required: find.LimitMM(find.AtLeast, leastLegGap),
		Assumed:  []find.Assumption{{What: fmt.Sprintf("the corner %s has %.2f° inside the room, less twice its standard deviation", a.Wall.To.Name, theta.Degrees()), Source: "survey"}},
	}
	c, err := corner.Check(theta, la, lb)
	if err != nil {
		g := unknown(fmt.Sprintf("corner %s: %v", a.Wall.To.Name, err))
		g.Parts, g.Walls = f.Parts, f.Walls
		return []find.Finding{g}
	}
	gap := c.Clearance
	f.Why = fmt.Sprintf("At corner %s the legs of %s and %s pass each other by %.1f mm.", a.Wall.To.Name, left.ID, right.ID, float64(gap))
	if !c.Free {
		gap = -min(c.Box[0], c.Box[1])
		f.Why = fmt.Sprintf("At corner %s the legs of %s and %s overlap by %.0f x %.0f mm (set back %.1f and %.1f mm).",
			a.Wall.To.Name, left.ID, right.ID, float64(c.Box[0]), float64(c.Box[1]), float64(sa), float64(sb))
	}
	f.Measured = find.MM(gap)
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = legFixes(theta, left, right, la, lb)
	}
	return []find.Finding{f}
}

// legFixes proposes the least set-backs that clear: both alike, or one running
// through and the other butting against it, and what "shorter by" that makes.
func legFixes(theta unit.Angle, left, right *model.Part, la, lb corner.Leg) []find.Fix {
	var out []find.Fix
	if s, err := corner.Alike(theta, la.Width, lb.Width, leastLegGap); err == nil {
		s = up(s)
		out = append(out, find.Fix{Text: fmt.Sprintf("set both angles back %.0f mm from the corner; between two such corners an angle is then %.0f mm shorter than its wall", float64(s), float64(2*s))})
	}
	own, err1 := corner.Start(theta, lb.Width)
	own = up(own + leastLegGap)
	s, err2 := corner.Butt(theta, corner.Leg{SetBack: own, Width: lb.Width}, la.Width, leastLegGap)
	if err1 == nil && err2 == nil {
		out = append(out, find.Fix{Text: fmt.Sprintf("or let %s start %.0f mm from the corner and set %s back %.0f mm", right.ID, float64(own), left.ID, float64(up(s)))})
	}
	return out
}

// up rounds up to whole millimetres.
func up(l unit.Length) unit.Length { return unit.Length(math.Ceil(float64(l) - 1e-9)) }
