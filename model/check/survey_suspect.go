package check

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/survey"
)

var suspectRule = Rule{
	ID: "survey-suspect", Title: "No reading contradicts the others",
	Basis: "data snooping: a residual above 3.29 of its standard deviations is suspect (W. Baarda 1968, two-sided 0.1 %); readings whose residuals go together by 0.95, or that explain the contradiction at least a twentieth as well, are told together",
	Why:   "A number remembered wrong, a digit swapped, the hook of the tape counted twice: one wrong reading pulls the corners of the room towards it. Several readings may explain the same contradiction; measuring only one of them again can leave the wrong one in.",
	Run: func(s Site) []find.Finding {
		v := s.Room.Survey
		if v.Redundancy == 0 {
			return nil // the rule "survey" says so
		}
		if len(v.Verdict.Suspects) == 0 {
			return []find.Finding{loudest(v)}
		}
		var out []find.Finding
		for _, x := range v.Verdict.Suspects {
			out = append(out, contradiction(v, x))
		}
		return out
	},
}

func deviations(x float64) *find.Quantity {
	return &find.Quantity{Value: x, Unit: "standard deviations"}
}

// standing holds a residual against the critical value.
func standing(w float64) find.Finding {
	return find.Finding{
		Measured: deviations(math.Abs(w)),
		Required: &find.Limit{Value: survey.Critical, Relation: find.AtMost, Unit: deviations(0).Unit},
	}.Judge()
}

// loudest speaks of the reading that is furthest from the others where none is
// suspect.
func loudest(v model.SurveyReport) find.Finding {
	worst := 0
	for i, j := range v.Verdict.Readings {
		if math.Abs(j.W) > 1.0001*math.Abs(v.Verdict.Readings[worst].W) { // of equal ones the first
			worst = i
		}
	}
	f := standing(v.Verdict.Readings[worst].W)
	f.Why = fmt.Sprintf("No reading stands out; %s is the furthest off.", v.Readings[worst].Name)
	if f.Status != find.Pass {
		f.Title = "A reading contradicts the others"
		f.Why = fmt.Sprintf("%s is far off, and without it the room cannot be found.", v.Readings[worst].Name)
		f.Fix = []find.Fix{hint("measure %s again before anything is ordered or cut", v.Readings[worst].Name)}
	}
	return f
}

// contradiction names the readings that may be wrong, with what each should
// have read.
func contradiction(v model.SurveyReport, x survey.Suspect) find.Finding {
	first := x.Readings[0]
	f := standing(first.W)
	f.Title = "A reading contradicts the others"
	var names []string
	for _, a := range x.Readings {
		names = append(names, v.Readings[a.Index].Name)
	}
	switch {
	case len(names) == 1:
		f.Why = fmt.Sprintf("%s reads %s.", names[0], readShould(v, first))
	case x.Slips == 1:
		f.Why = fmt.Sprintf("One of the readings %s is wrong, and nothing tells which.", list(names))
	default:
		f.Why = fmt.Sprintf("%s of the readings %s are wrong, and nothing tells which.", capital(number(x.Slips)), list(names))
	}
	if v.Redundancy <= x.Slips {
		f.Why += fmt.Sprintf(" Only %s more than needed.", count(v.Redundancy, "reading is", "readings are"))
	}
	if v.Verdict.More {
		f.Why += " Even without it others contradict each other: there is more than this wrong."
	}
	for k, a := range x.Readings {
		if k == mostNamed {
			f.Fix = append(f.Fix, hint("and the others named above"))
			break
		}
		where := ""
		if w := a.Reading.Where; w != "" {
			where = " (" + w + ")"
		}
		again := hint("measure %s%s again before anything is ordered or cut: it reads %s", v.Readings[a.Index].Name, where, readShould(v, a))
		if len(names) > 1 {
			again = hint("measure %s%s again: it reads %s, if it is the wrong one", v.Readings[a.Index].Name, where, readShould(v, a))
		}
		f.Fix = append(f.Fix, again)
	}
	if len(names) > 1 {
		f.Fix = append(f.Fix, nextHint(v)...)
	}
	return f
}

// mostNamed is how many suspects get a line of their own.
const mostNamed = 4

func readShould(v model.SurveyReport, a survey.Accused) string {
	r := v.Readings[a.Index]
	s := fmt.Sprintf("%.1f %s, the others say %s within %.1f", r.Read, r.Unit, a.ShouldRead.Of(a.Reading), a.ShouldRead.Within(a.Reading))
	if pen := a.Pen(); pen != "" {
		s += " (" + pen + "?)"
	}
	return s
}

func number(n int) string {
	if n == 2 {
		return "two"
	}
	return fmt.Sprint(n)
}
