package check

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
)

var anchorRule = Rule{
	ID: "wall-anchors", Title: "Every wall fixing has a place",
	Basis: "keep-outs and studs as surveyed; about three fixings per metre on masonry: " + practice,
	Why:   "A hole in a pipe, a cable or thin air is found when it is too late. What a fixing carries is not checked here: that needs the approval of the anchor that was bought.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, p := range s.Design.Parts {
			if p.Angle != nil {
				out = append(out, anchors(p)...)
			}
		}
		return out
	},
}

func anchors(p *model.Part) []find.Finding {
	a := p.Angle
	n := 0
	for _, h := range a.Holes {
		if h.Leg == model.WallLeg {
			n++
		}
	}
	base := find.Finding{Parts: []string{p.ID}, Walls: []string{a.Wall.Name}}
	var out []find.Finding
	if len(a.Moved) > 0 {
		f := base
		f.Status, f.Title = find.Note, "A wall fixing gave way"
		f.Why = fmt.Sprintf("On %s: %s.", p.ID, strings.Join(a.Moved, "; "))
		out = append(out, f)
	}
	if len(a.Unmatched) > 0 {
		f := base
		f.Status, f.Title = find.Warn, "A wall fixing was given up"
		f.Why = fmt.Sprintf("On %s: %s.", p.ID, strings.Join(a.Unmatched, "; "))
		f.Fix = []find.Fix{{Text: "find out exactly where the hidden thing runs, or bridge it with fixings on both sides"}}
		out = append(out, f)
	}
	f := base
	f.Why = fmt.Sprintf("%s is fixed at %d places over %.0f mm.", p.ID, n, float64(a.Length))
	f.Measured = &find.Quantity{Value: float64(n), Unit: "fixings"}
	f.Required = &find.Limit{Value: 2, Relation: find.AtLeast, Unit: "fixings"}
	f = f.Judge()
	if f.Status == find.Fail {
		f.Fix = []find.Fix{{Text: "move the angle or its ends, or add studs or a board behind the plaster"}}
	}
	if a.Wall.Make == model.UnknownWall || a.Wall.Make == "" {
		f.Status = find.Unknown
		f.Why = fmt.Sprintf("not checked: nobody has said what the wall %s is made of, so no fixing in it can be judged.", a.Wall.Name)
		f.Fix = []find.Fix{{Text: "drill a test hole and write the wall's make into the job file"}}
	}
	return append(out, f)
}
