package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
)

// suspect is how many standard deviations a reading may differ from the room.
const suspect = 3.29

var surveyRule = Rule{
	ID: "survey", Title: "The readings agree with each other",
	Basis: "least squares over all readings; a reading off by more than 3.29 standard deviations is suspect (Baarda 1968, two-sided 0.1 %)",
	Why:   "A slab is cut once. A reading that no other reading checks can be wrong by any amount, and the room still looks right.",
	Run: func(s Site) []find.Finding {
		v := s.Room.Survey
		if v.Redundancy == 0 {
			return []find.Finding{{
				Status: find.Warn, Title: "Nothing checks the readings",
				Why: fmt.Sprintf("The %d readings are just enough for the room: a slip of any size stays unseen.", len(v.Readings)),
				Fix: []find.Fix{{Text: "measure both diagonals and one width more, and write them into the job file"}},
			}}
		}
		out := looselyHeld(v)
		for _, r := range v.Readings {
			if r.Checked < 1e-6 {
				continue
			}
			w := math.Abs(r.Adjusted-r.Read) / (r.SD * math.Sqrt(r.Checked))
			if w <= suspect {
				continue
			}
			out = append(out, find.Finding{
				Status: find.Warn, Title: "A reading does not agree with the others",
				Why:      fmt.Sprintf("%s was read as %.1f %s, the others say %.1f.", r.Name, r.Read, r.Unit, r.Adjusted),
				Measured: &find.Quantity{Value: round3(w), Unit: "standard deviations"}, Required: &find.Limit{Value: suspect, Relation: find.AtMost, Unit: "standard deviations"},
				Margin: &find.Quantity{Value: round3(suspect - w), Unit: "standard deviations"},
				Fix:    []find.Fix{{Text: "measure " + r.Name + " again before anything is cut"}},
			})
		}
		if find.Worst(out).Severity() < find.Warn.Severity() {
			out = append(out, find.Finding{Status: find.Pass, Why: fmt.Sprintf("%d readings, %d more than needed, agree within their tools' spread.", len(v.Readings), v.Redundancy)})
		}
		return out
	},
}

// looselyHeld speaks of corners that only lengths in one line hold, and of
// corners whose bend nothing told.
func looselyHeld(v model.SurveyReport) []find.Finding {
	var out []find.Finding
	if v.Loose != "" {
		out = append(out, find.Finding{
			Status: find.Warn, Title: "Part of the room is held loosely",
			Why:     upperFirst(v.Loose) + ".",
			Assumed: []find.Assumption{{What: "these corners are nearly square: " + strings.Join(v.Squared, ", "), Source: "nothing measured tells otherwise"}},
			Fix:     []find.Fix{{Text: "take the readings named, across the line, and write them into the job file"}},
		})
	}
	if len(v.Assumed) > 0 {
		out = append(out, find.Finding{
			Status: find.Note, Title: "Corners taken as corners of the room",
			Why: "Nothing measured tells whether these corners stick out into the room; they are taken as inside ones: " + strings.Join(v.Assumed, ", ") + ".",
			Fix: []find.Fix{{Text: "write bends: {" + v.Assumed[0] + ": in} or out into the job file, or measure a diagonal"}},
		})
	}
	return out
}

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
