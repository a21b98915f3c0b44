package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
)

var uncheckedRule = Rule{
	ID: "survey-unchecked", Title: "Every reading that decides is checked by others",
	Basis: "redundancy of each reading from the least squares; a reading decides when a width, an offset or a slant that the fit hangs on takes over more than a twentieth of its error (judgement)",
	Why:   "A room can agree in itself and yet hang on a reading that no other one touches, such as the depth of a niche that was measured once. A slip there goes straight into the slab.",
	Run: func(s Site) []find.Finding {
		v := s.Room.Survey
		if v.Redundancy == 0 {
			return nil // the rule "survey" says so
		}
		var decide, others, repeats []string
		for i, j := range v.Verdict.Readings {
			switch {
			case !j.Checked && j.Matters:
				decide = append(decide, v.Readings[i].Name)
			case !j.Checked:
				others = append(others, v.Readings[i].Name)
			case j.Repeated:
				repeats = append(repeats, v.Readings[i].Name)
			}
		}
		var out []find.Finding
		if decide != nil {
			f := unknown(fmt.Sprintf("nothing checks %s; a slip of any size there stays unseen. On it hang: %s.", list(decide), list(hanging(v))), nextHint(v)...)
			f.Title = "The fit hangs on readings that nothing checks"
			out = append(out, f)
		}
		if repeats != nil {
			out = append(out, find.Finding{
				Status: find.Note, Title: "A reading is checked by its own repeat only",
				Why: fmt.Sprintf("%s: measured twice, which shows a slip of the tape but not a wrong corner. A line that was only copied shows nothing.", list(repeats)),
				Fix: nextHint(v),
			})
		}
		if others != nil {
			out = append(out, find.Finding{
				Status: find.Note, Title: "Readings that nothing checks, and that decide nothing",
				Why: fmt.Sprintf("Nothing checks %s, but no width of the room hangs on it.", list(others)),
			})
		}
		if decide == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "Every reading that a width, an offset or a slant of the room hangs on is checked by others."})
		}
		return out
	},
}

// hanging lists the deciding measures that hang on unchecked readings.
func hanging(v model.SurveyReport) []string {
	var out []string
	for _, d := range v.Verdict.Deciding {
		if d.Unchecked {
			out = append(out, d.Name)
		}
	}
	return out
}
