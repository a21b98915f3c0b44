package model

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// judge adds to the report of the survey what the readings say of each other,
// and how well faces and floor are known.
func (r *Room) judge(p RoomPlan, res *survey.Result, refused []*survey.Problem, faces faces) {
	s := &r.Survey
	s.Verdict = judged(p, res)
	for _, g := range res.Inseparable() {
		var names []string
		for _, i := range g {
			names = append(names, s.Readings[i].Name)
		}
		s.Inseparable = append(s.Inseparable, names)
	}
	for _, x := range refused {
		one := Refused{Name: x.Reading, Where: x.Where, Why: x.Why, Needed: x.Needed}
		for _, m := range x.Measure {
			one.Instead = append(one.Instead, string(m[0]+"-"+m[1]))
		}
		s.Refused = append(s.Refused, one)
	}
	for _, w := range p.Walls {
		if f, ok := faceOf(w, p.Accuracy, res, faces); ok {
			s.Faces = append(s.Faces, f)
		}
	}
	s.Levels = r.levels(p)
}

// judged judges the readings. Bows that the adjustment did not need belong to
// it: a width between bowed walls can only be foretold with them.
func judged(p RoomPlan, res *survey.Result) survey.Verdict {
	n := len(res.Readings)
	var bows []survey.Reading
	for _, w := range p.Walls {
		b := w.bowReading()
		if (w.Bow != 0 || w.bowSD > 0) && !slices.ContainsFunc(res.Readings, func(o survey.Outcome) bool { return o.Reading.ID == b.ID }) {
			bows = append(bows, b)
		}
	}
	if bows != nil {
		if more, err := res.With(bows...); err == nil {
			res = more
		}
	}
	v := res.Judge(survey.Options{})
	v.Readings = v.Readings[:n]
	known := func(list []int) []int {
		return slices.DeleteFunc(list, func(i int) bool { return i >= n })
	}
	v.Unchecked = known(v.Unchecked)
	for i := range v.Next {
		v.Next[i].Checks, v.Next[i].Left = known(v.Next[i].Checks), known(v.Next[i].Left)
	}
	for i := range v.Deciding {
		if v.Deciding[i].By >= n {
			v.Deciding[i].By = -1
		}
	}
	return v
}

// bowReading states the bow of a wall as the survey wants it.
func (p WallPlan) bowReading() survey.Reading {
	return survey.Reading{ID: fmt.Sprintf("bow of %s", p.called()), Kind: survey.Bow, Points: []survey.Point{survey.Point(p.From), survey.Point(p.To)}, Length: p.Bow, SD: p.bowSD}
}

// faceOf tells how well bow and lean of a wall are known; false if neither was
// read.
func faceOf(w WallPlan, tools survey.Accuracy, res *survey.Result, fits faces) (FaceReport, bool) {
	f := FaceReport{Wall: w.called(), Stations: len(w.Stations), Plumbs: len(w.Plumbs), Uneven: fits.uneven(w), NotPlane: fits.notPlane(w)}
	for _, b := range res.Bows {
		if string(b.From) == w.From && string(b.To) == w.To {
			f.Bow = &b.Bow
		}
	}
	for _, o := range res.Readings {
		at := []survey.Point{survey.Point(w.From), survey.Point(w.To)}
		f.Proved = f.Proved || o.Reading.Kind == survey.Bow && o.Checked && slices.Equal(o.Reading.Points, at)
	}
	if fit, ok := fits.bows[w.called()]; ok {
		f.BowTest = fit.Test
		if f.Bow == nil {
			f.Bow = &fit.Bow
		}
	}
	if f.Bow == nil && w.Bow != 0 {
		l, err := res.Length(survey.Point(w.From), survey.Point(w.To))
		if err == nil {
			if fit, err := survey.FitBow(l.Value, []survey.Station{{Along: l.Value / 2, Off: w.Bow}}, tools); err == nil {
				f.Bow = &fit.Bow
			}
		}
	}
	if fit, ok := fits.leans[w.called()]; ok {
		f.Lean, f.LeanTest = &fit.PerMetre, fit.Test
	} else if w.LeanOver > 0 {
		if fit, err := survey.FitLean([]survey.Plumb{{}, {Height: w.LeanOver, Back: w.Lean}}, tools); err == nil {
			f.Lean = &fit.PerMetre
		}
	}
	return f, f.Bow != nil || f.Lean != nil
}

// SlipBearable is how far an unnoticed slip may move what decides the fit
// before a reading counts as weakly checked: as wide as a joint that a bead
// still hides. Judgement.
const SlipBearable unit.Length = 12

// Settled says whether the fit may be judged by these readings: none is suspect,
// and it hangs on none that nothing checks or that nobody can have taken.
func (s SurveyReport) Settled() bool {
	for _, x := range s.Refused {
		if x.Needed {
			return false
		}
	}
	for _, j := range s.Verdict.Readings {
		if !j.Checked && j.Matters {
			return false
		}
	}
	return s.Redundancy > 0 && len(s.Verdict.Suspects) == 0 && !s.Verdict.More
}

// State says in a few words how far reading i can be trusted.
func (s SurveyReport) State(i int) string {
	if i >= len(s.Verdict.Readings) {
		return ""
	}
	j := s.Verdict.Readings[i]
	switch {
	case j.Suspected:
		for _, x := range s.Verdict.Suspects {
			if n := len(x.Readings); n > 1 && slices.ContainsFunc(x.Readings, func(a survey.Accused) bool { return a.Index == i }) {
				return "one of several suspects: measure again"
			}
		}
		return "suspect: measure again"
	case !j.Checked && j.Matters:
		return "unchecked, and the fit hangs on it"
	case !j.Checked:
		return "unchecked"
	case j.Repeated:
		return "checked by its repeat only"
	case j.Damage > SlipBearable:
		return "weakly checked"
	}
	return "checked"
}

// Least is the smallest slip in reading i that the others betray, in its unit,
// at a chance of 80 %; false where nothing checks it.
func (s SurveyReport) Least(i int) (float64, bool) {
	if i >= len(s.Verdict.Readings) || !s.Verdict.Readings[i].Checked {
		return math.NaN(), false
	}
	j := s.Verdict.Readings[i]
	if s.Readings[i].Unit == "deg" {
		return j.LeastAngle.Degrees(), true
	}
	return float64(j.Least), true
}
