package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/survey"
)

var faceRule = Rule{
	ID: "survey-face", Title: "Walls are bowed and lean evenly",
	Basis: "the squared residuals of the readings against the best parabola through both corners, and against the best straight line upwards; chi-square, 5 %",
	Why:   "Bow and lean are worked out as an even curve and an even slope. A lump of plaster or a wall bowed upwards is neither: there the slab meets the wall earlier, or the gap is wider, than the drawings say.",
	Run: func(s Site) []find.Finding {
		var out []find.Finding
		for _, f := range s.Room.Survey.Faces {
			out = append(out, evenly(f, f.BowTest, f.Uneven, fmt.Sprintf("%d readings of the bow", f.Stations),
				"measure there again; if it is so, leave wood on that edge and scribe it on the spot")...)
			out = append(out, evenly(f, f.LeanTest, f.NotPlane, fmt.Sprintf("%d plumb readings", f.Plumbs),
				"hang the plumb line again, and take the gap at the height of the slab, not at another one")...)
		}
		if out == nil {
			out = []find.Finding{{Status: find.Note, Title: "Bow and lean are read at one place or not at all",
				Why: "No wall was read at so many places that its bow or lean could be checked; each is taken as told, and a wall that nobody read as straight and plumb.",
				Fix: []find.Fix{hint("lay a straightedge along the walls that a slab meets and read the gap at three places (bow_at), and hang a plumb line (plumb)")}}}
		}
		return out
	},
}

// evenly judges the readings of one face; nothing where they are too few to tell.
func evenly(f model.FaceReport, t survey.GlobalTest, trouble, what, mend string) []find.Finding {
	if t.Answer == survey.NothingChecks {
		return nil
	}
	one := find.Finding{
		Walls:    []string{f.Wall},
		Measured: &find.Quantity{Value: t.Sum, Unit: "sum of squares"},
		Required: &find.Limit{Value: t.Limit, Relation: find.AtMost, Unit: "sum of squares"},
		Why:      fmt.Sprintf("The %s of wall %s agree with an even face.", what, f.Wall),
	}.Judge()
	if one.Status == find.Fail {
		one.Status, one.Title = find.Warn, "A wall is not even"
		one.Why = fmt.Sprintf("Wall %s has %s.", f.Wall, trouble)
		one.Fix = []find.Fix{hint("%s", mend)}
	}
	return []find.Finding{one}
}
