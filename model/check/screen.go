package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// Where a screen is looked at with ease: 500 to 700 mm from the eyes, 900 for
// large ones, its top line at the eyes or up to 50 mm below them.
const (
	screenNear, screenFar, screenLarge unit.Length = 500, 700, 900
	underEyes                          unit.Length = 50
)

var screenRule = Rule{
	ID: "screen", Title: "Screens stand where eyes and neck are at ease",
	Basis: "500 to 700 mm, large screens to 900; top line at the eyes or to 50 mm below: public guidance (AUVA, OSHA training text); eye height from the ANSUR II regressions",
	Why:   "A screen too near strains the eyes, one too high bends the neck back. The depth of the worktop decides how far away it can stand.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, c := range s.Job.Screens {
			out = append(out, s.screen(c)...)
		}
		return orNone(out, "The job file tells of no screen.")
	},
}

// screen judges a screen for everybody at the seat that is nearest to it.
func (s Site) screen(c model.Screen) []find.Finding {
	near := farthest
	for _, x := range sit.Of(s.Design, s.Job.Wiring) {
		if x.Slab.ID == c.On {
			near = min(near, abs(x.Seat.Centre-c.Along))
		}
	}
	if near == farthest {
		f := unknown(fmt.Sprintf("nobody is said to sit at %q, where the screen %q stands.", c.On, c.Name), hint("give screens the name of a worktop with a seat: on"))
		f.Line = c.Pos.String()
		return []find.Finding{f}
	}
	var out []find.Finding
	for _, x := range sit.Of(s.Design, s.Job.Wiring) {
		if x.Slab.ID == c.On && abs(x.Seat.Centre-c.Along) == near {
			out = append(out, screenAway(x, c), screenTop(x, c))
		}
	}
	return out
}

// screenAway judges how far the middle of a screen is from the eyes, which are
// taken to be where the forehead is.
func screenAway(x *sit.Sitter, c model.Screen) find.Finding {
	f := about("Distance of "+c.Name+" for", x)
	f.Line = c.Pos.String()
	eyeIn, _ := x.Head(0)
	eye := x.Of(body.Eye)
	aside, in := c.Along-x.Seat.Centre, x.Depth-c.Back
	away := geom.Vec3{X: in - eyeIn, Y: aside, Z: eye.Mean + x.Shoe - x.Surface() - c.Bottom - c.Height/2}.Len()
	f.Measured = spread(away, eye.SD)
	f.Required = &find.Limit{Value: float64(screenNear), High: float64(screenFar), Relation: find.Between, Unit: "mm"}
	f = f.Judge()
	f.Assumed = []find.Assumption{rests("eye, sitting,", x, 4), {What: fmt.Sprintf("eyes %.0f mm in from the front, the trunk upright", float64(eyeIn)), Source: "derived; places in the body from memory"}}
	f.Why = fmt.Sprintf("The eyes of %s are about %.0f mm from the middle of %s.", x.Person.Name, float64(away), c.Name)
	if f.Status != find.Fail {
		return f
	}
	f.Status = find.Warn
	switch {
	case away < screenNear:
		f.Fix = []find.Fix{hint("move %s %.0f mm further back", c.Name, float64(up(screenNear-away)))}
	case away <= screenLarge:
		f.Status = find.Note
		f.Why += fmt.Sprintf(" That suits a large screen only, which may be up to %.0f mm away.", float64(screenLarge))
		f.Fix = []find.Fix{hint("bring %s %.0f mm nearer unless it is large", c.Name, float64(up(away-screenFar)))}
	default:
		f.Fix = []find.Fix{hint("bring %s %.0f mm nearer", c.Name, float64(up(away-screenFar)))}
	}
	return f
}

// screenTop judges the upper edge of a screen against the eyes.
func screenTop(x *sit.Sitter, c model.Screen) find.Finding {
	f := about("Height of "+c.Name+" for", x)
	f.Line = c.Pos.String()
	eye := x.Of(body.Eye)
	level := eye.Mean + x.Shoe
	top := x.Surface() + c.Bottom + c.Height
	f.Measured = spread(top, eye.SD)
	f.Required = &find.Limit{Value: hundredth(level - underEyes), High: hundredth(level), Relation: find.Between, Unit: "mm"}
	f = f.Judge()
	f.Assumed = []find.Assumption{rests("eye, sitting,", x, 4), {What: fmt.Sprintf("shoe %.0f mm; who slumps has the eyes %.0f mm lower", float64(x.Shoe), -float64(body.Slump.Value)), Source: body.Slump.Source}}
	f.Why = fmt.Sprintf("The upper edge of %s is %.0f mm above the floor, the eyes at about %.0f mm sitting straight.", c.Name, float64(top), float64(level))
	switch {
	case eye.SD == 0:
		f.Status, f.Required, f.Margin = find.Note, nil, nil
		f.Why += fmt.Sprintf(" Nobody is described: eyes of 9 in 10 lie between %.0f and %.0f mm, so a screen that can be raised and lowered is the answer.", float64(eye.Low+x.Shoe), float64(eye.High+x.Shoe))
	case f.Status != find.Fail:
	case top > level:
		f.Status = find.Warn
		f.Fix = []find.Fix{hint("lower %s by %.0f mm", c.Name, float64(up(top-level)))}
	default:
		f.Status = find.Note
		f.Fix = []find.Fix{hint("raise %s by %.0f mm, unless glasses for reading ask for a low screen", c.Name, float64(up(level-underEyes-top)))}
	}
	return f
}
