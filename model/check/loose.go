package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
)

// looselyHeld speaks of corners that only lengths in one line hold, and of
// corners whose bend nothing told.
func looselyHeld(v model.SurveyReport) []find.Finding {
	var out []find.Finding
	if v.Loose != "" {
		out = append(out, find.Finding{
			Status: find.Warn, Title: "Part of the room is held loosely",
			Why:     capital(v.Loose) + ".",
			Assumed: []find.Assumption{{What: "these corners are nearly square: " + list(v.Squared), Source: "nothing measured tells otherwise"}},
			Fix:     []find.Fix{hint("take the readings named, across the line, and write them into the job file")},
		})
	}
	if len(v.Assumed) > 0 {
		out = append(out, find.Finding{
			Status: find.Note, Title: "Corners taken as corners of the room",
			Why: fmt.Sprintf("Nothing measured tells whether these corners stick out into the room; they are taken as inside ones: %s.", list(v.Assumed)),
			Fix: []find.Fix{hint("write bends: {%s: in} or out into the job file, or measure a diagonal", v.Assumed[0])},
		})
	}
	return out
}
