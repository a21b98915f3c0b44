package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/survey"
)

var surveyRule = Rule{
	ID: "survey", Title: "The readings agree with each other",
	Basis: "least squares over all readings; weighted sum of squared residuals against chi-square, one-sided 5 % (any textbook of adjustment)",
	Why:   "A slab is cut once. A slip in one reading bends the whole room, and every other number here follows from the room. A reading that no other reading checks can be wrong by any amount, and the room still looks right.",
	Run: func(s Site) []find.Finding {
		v := s.Room.Survey
		if v.Redundancy == 0 {
			f := unknown(fmt.Sprintf("the %d readings are just enough to draw the room, so a slip of any size in one of them stays unseen.", len(v.Readings)), nextHint(v)...)
			f.Title = "Nothing checks the readings"
			return []find.Finding{f}
		}
		return append(looselyHeld(v), asWhole(v))
	},
}

// asWhole holds all readings together against the accuracy of the tools.
func asWhole(v model.SurveyReport) find.Finding {
	t := v.Verdict.Test
	f := find.Finding{
		Measured: &find.Quantity{Value: t.Sum, Unit: "squared deviations"},
		Required: &find.Limit{Value: t.Limit, Relation: find.AtMost, Unit: "squared deviations"},
	}.Judge()
	if t.Answer != survey.Disagree {
		f.Why = fmt.Sprintf("%d readings, %d more than needed, agree within the spread of their tools.", len(v.Readings), v.Redundancy)
		return f
	}
	chance := "by chance in less than one room of a million"
	if t.P > 1e-6 {
		chance = fmt.Sprintf("by chance in one room of %.0f", 1/t.P)
	}
	f.Title = "The readings as a whole differ more than their tools do"
	f.Why = fmt.Sprintf("%d readings, %d more than needed, differ by more than comes of their tools: %s.", len(v.Readings), v.Redundancy, chance)
	if len(v.Verdict.Suspects) > 0 {
		f.Status = find.Note // the rule "survey-suspect" says more
		f.Why += " The suspects are named below."
		return f
	}
	f.Status = find.Warn // one good room in twenty comes out like this
	f.Why += " No single reading stands out."
	if i := mostDamaging(v.Verdict.Readings); i >= 0 {
		f.Fix = append(f.Fix, hint("measure %s again first: a slip there does most harm", v.Readings[i].Name))
	}
	f.Fix = append(f.Fix, hint("or write down what the room has besides: bows of walls, a poorer tape (tool), the spread (sd) of readings that were hard to take"))
	return f
}

// mostDamaging is the reading in which an unnoticed slip would do most harm, of
// equal ones the first; -1 if there is none.
func mostDamaging(list []survey.Judged) int {
	worst := -1
	for i, j := range list {
		if j.Damage > 0 && (worst < 0 || j.Damage > 1.0001*list[worst].Damage) {
			worst = i
		}
	}
	return worst
}
