package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

var nextRule = Rule{
	ID: "survey-next", Title: "A slip that stays unseen does little harm",
	Basis: "least error that the other readings betray (0.1 %, 80 %: W. Baarda 1968) times what it does to the measures that decide; at most 12 mm (judgement: a wider joint shows)",
	Why:   "Also a reading that others check can hide an error, the larger the weaker they check it. One more reading, well chosen, makes more of it visible than three at random.",
	Run: func(s Site) []find.Finding {
		v := s.Room.Survey
		if v.Redundancy == 0 || len(v.Verdict.Suspects) > 0 {
			return nil // first things first
		}
		worst := mostDamaging(v.Verdict.Readings)
		if worst < 0 {
			return nil
		}
		j := v.Verdict.Readings[worst]
		least, _ := v.Least(worst)
		f := find.Finding{Status: find.Pass,
			Why: fmt.Sprintf("A slip of %.1f %s in %s might just go unseen; it would change the %s by %.1f mm.", least, v.Readings[worst].Unit, v.Readings[worst].Name, j.Damages, float64(j.Damage))}
		if j.Damage > model.SlipBearable {
			f.Status, f.Title, f.Fix = find.Warn, "A slip that stays unseen could spoil the fit", nextHint(v)
			if len(f.Fix) == 0 {
				f.Fix = []find.Fix{hint("measure %s once more", v.Readings[worst].Name)}
			}
		}
		return []find.Finding{f}
	},
}

// nextHint tells which reading to take next, what it should read and what it
// brings; none if no further reading is known.
func nextHint(v model.SurveyReport) []find.Fix {
	if len(v.Verdict.Next) == 0 {
		return nil
	}
	c := v.Verdict.Next[0]
	return []find.Fix{hint("measure %s, and write it into the job file; if all is well it reads %s within %.1f%s",
		c.Reading.How(), c.Expected.Of(c.Reading), c.Expected.Within(c.Reading), brings(v, c))}
}

// brings tells what a further reading is good for.
func brings(v model.SurveyReport, c survey.Candidate) string {
	if len(c.Checks) > 0 {
		return fmt.Sprintf(". It checks %s so far unchecked", count(len(c.Checks), "reading", "readings"))
	}
	now := unit.Length(0)
	for _, d := range v.Verdict.Deciding {
		now = max(now, d.Damage)
	}
	if c.Damage < now {
		return fmt.Sprintf(". The harm of an unseen slip falls from %.1f to %.1f mm", float64(now), float64(c.Damage))
	}
	return ""
}
