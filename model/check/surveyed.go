package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
)

// suspect is how many standard deviations a reading may differ from what the
// other readings say.
const suspect = 3.29

// indistinct is how close the standardised differences of two readings must be for
// the readings not to be told apart.
const indistinct = 0.02

var surveyRule = Rule{
	ID: "survey", Title: "The readings agree with each other",
	Basis: "least squares over all readings; a reading off by more than 3.29 standard deviations is suspect (W. Baarda 1968, two-sided 0.1 %)",
	Why:   "A slab is cut once. A slip in one reading bends the whole room, and every other number here follows from the room. A reading that no other reading checks can be wrong by any amount, and the room still looks right.",
	Run: func(s Site) []find.Finding {
		v := s.Room.Survey
		if v.Redundancy == 0 {
			f := unknown(fmt.Sprintf("the %d readings are just enough to draw the room, so a slip of any size in one of them stays unseen.", len(v.Readings)),
				hint("measure both diagonals and one width more, and write them into the job file"))
			f.Title = "Nothing checks the readings"
			return []find.Finding{f}
		}
		out := looselyHeld(v)
		worst, off := worstReading(v)
		if off > suspect {
			return append(out, slip(v, worst, off))
		}
		return append(out, find.Finding{
			Why:      fmt.Sprintf("%d readings, %d more than needed, agree within the spread of their tools; %s is the furthest off.", len(v.Readings), v.Redundancy, v.Readings[worst].Name),
			Measured: deviations(off), Required: &find.Limit{Value: suspect, Relation: find.AtMost, Unit: deviations(0).Unit},
		}.Judge())
	},
}

func deviations(x float64) *find.Quantity {
	return &find.Quantity{Value: x, Unit: "standard deviations"}
}

// worstReading finds the reading that is furthest from what the others say, in
// standard deviations of that difference.
func worstReading(v model.SurveyReport) (worst int, off float64) {
	for i, r := range v.Readings {
		if w := offBy(r); w > off {
			worst, off = i, w
		}
	}
	return worst, off
}

// offBy is the standardised difference: residual over its own standard
// deviation. A reading that nothing checks has none.
func offBy(r model.AdjustedReading) float64 {
	if r.Checked < 1e-6 || r.SD <= 0 {
		return 0
	}
	return math.Abs(r.Adjusted-r.Read) / (r.SD * math.Sqrt(r.Checked))
}

// slip names the reading to repeat. Readings whose differences are equal cannot
// be told apart: then any one of them may be the wrong one.
func slip(v model.SurveyReport, worst int, off float64) find.Finding {
	var names []string
	for _, r := range v.Readings {
		if offBy(r) > off-indistinct {
			names = append(names, r.Name)
		}
	}
	f := find.Finding{
		Title:    "A reading does not agree with the others",
		Measured: deviations(off), Required: &find.Limit{Value: suspect, Relation: find.AtMost, Unit: deviations(0).Unit},
	}.Judge()
	r := v.Readings[worst]
	others := r.Read + (r.Adjusted-r.Read)/r.Checked // what they say without it
	if len(names) == 1 {
		f.Why = fmt.Sprintf("%s was read as %.1f %s, the other readings say %.1f: it is off by %.1f %s, %.1f standard deviations.", r.Name, r.Read, r.Unit, others, math.Abs(others-r.Read), r.Unit, off)
		f.Fix = []find.Fix{hint("measure %s again before anything is ordered or cut", r.Name)}
		return f
	}
	f.Why = fmt.Sprintf("One of the readings %s is wrong, and these readings cannot tell which: each is %.1f standard deviations off.", list(names), off)
	if v.Redundancy == 1 {
		f.Why += " Only one reading is more than needed."
	}
	f.Fix = []find.Fix{
		hint("measure %s again before anything is ordered or cut", list(names)),
		hint("or take one more diagonal: it tells which of them is wrong"),
	}
	return f
}
