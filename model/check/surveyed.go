package check

import (
	"fmt"
	"math"

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
		var out []find.Finding
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
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: fmt.Sprintf("%d readings, %d more than needed, agree within their tools' spread.", len(v.Readings), v.Redundancy)})
		}
		return out
	},
}
