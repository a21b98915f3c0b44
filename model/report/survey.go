package report

import (
	"slabwright/model"
	"slabwright/model/job"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// statsDoc is room.statistics of report.json.
type statsDoc struct {
	Readings    int          `json:"readings"`
	Redundancy  int          `json:"redundancy"`
	Unchecked   bool         `json:"unchecked"`
	Test        testDoc      `json:"test"`
	Residuals   []readingDoc `json:"readings_adjusted"`
	Suspects    []suspectDoc `json:"suspects"`
	More        bool         `json:"more_is_wrong"`
	Unseen      []string     `json:"readings_unchecked"`
	Inseparable [][]string   `json:"inseparable"`
	Refused     []refusedDoc `json:"refused"`
	Deciding    []decidedDoc `json:"deciding"`
	Next        []nextDoc    `json:"next"`
	Faces       []faceDoc    `json:"faces"`
	Levels      []levelDoc   `json:"floor"`
}

// testDoc is the global test. Where nothing checks there is neither a limit nor
// a chance.
type testDoc struct {
	Answer string   `json:"answer"` // agree, disagree, unchecked
	Sum    float64  `json:"sum_of_squares"`
	Limit  *float64 `json:"limit,omitempty"`
	P      *float64 `json:"p_value,omitempty"`
	After  string   `json:"without_suspects,omitempty"`
}

// readingDoc is one reading. W, least and damage are left out where nothing
// checks it.
type readingDoc struct {
	Name     string   `json:"name"`
	Read     float64  `json:"read"`
	Adjusted float64  `json:"adjusted"`
	SD       float64  `json:"sd"`
	Unit     string   `json:"unit"`
	Checked  float64  `json:"redundancy"`
	Residual float64  `json:"residual"`
	W        *float64 `json:"w,omitempty"`
	Least    *float64 `json:"least_detectable,omitempty"`
	Damage   *float64 `json:"damage_mm,omitempty"`
	Damages  string   `json:"damages,omitempty"`
	State    string   `json:"state"`
	Line     string   `json:"line,omitempty"`
}

type suspectDoc struct {
	Slips    int          `json:"slips"`
	Readings []accusedDoc `json:"readings"`
}

type accusedDoc struct {
	Name   string  `json:"name"`
	Line   string  `json:"line,omitempty"`
	W      float64 `json:"w"`
	Read   float64 `json:"read"`
	Should float64 `json:"should_read"`
	SD     float64 `json:"should_read_sd"`
	Error  float64 `json:"error"`
	Unit   string  `json:"unit"`
	Pen    string  `json:"slip_of_the_pen,omitempty"`
}

type refusedDoc struct {
	Name    string   `json:"name"`
	Line    string   `json:"line,omitempty"`
	Why     string   `json:"why"`
	Kept    bool     `json:"kept"`
	Instead []string `json:"instead,omitempty"`
}

type decidedDoc struct {
	Name      string  `json:"name"`
	Value     float64 `json:"value"`
	Unit      string  `json:"unit"`
	SD        float64 `json:"sd_mm"`
	Unchecked bool    `json:"unchecked"`
	Damage    float64 `json:"damage_mm"`
	By        string  `json:"by,omitempty"`
}

type nextDoc struct {
	Name     string   `json:"name"`
	How      string   `json:"how"`
	JobLine  string   `json:"job_line"`
	Expected float64  `json:"expected"`
	Within   float64  `json:"within"`
	Unit     string   `json:"unit"`
	Worst    float64  `json:"worst_sd_mm"`
	Damage   float64  `json:"damage_mm"`
	Unseen   float64  `json:"least_detectable_mm"`
	Checks   []string `json:"checks"`
	Left     []string `json:"leaves_unchecked"`
}

type faceDoc struct {
	Wall       string   `json:"wall"`
	Bow        *float64 `json:"bow_mm,omitempty"`
	BowSD      *float64 `json:"bow_sd_mm,omitempty"`
	BowChecked bool     `json:"bow_checked"`
	Lean       *float64 `json:"lean_mm_per_m,omitempty"`
	LeanSD     *float64 `json:"lean_sd_mm_per_m,omitempty"`
	Stations   int      `json:"bow_readings,omitempty"`
	Plumbs     int      `json:"plumb_readings,omitempty"`
	Uneven     string   `json:"uneven,omitempty"`
	NotPlane   string   `json:"not_plane,omitempty"`
}

type levelDoc struct {
	Corner string  `json:"corner"`
	Height float64 `json:"height_mm"`
	SD     float64 `json:"sd_mm"`
}

func statistics(s model.SurveyReport) statsDoc {
	v := s.Verdict
	d := statsDoc{
		Readings: len(s.Readings), Redundancy: s.Redundancy, Unchecked: s.Redundancy == 0, More: v.More,
		Test:      testDoc{Answer: v.Test.Answer.String(), Sum: digits(v.Test.Sum)},
		Residuals: []readingDoc{}, Suspects: []suspectDoc{}, Unseen: named(s, v.Unchecked), Inseparable: [][]string{},
		Refused: []refusedDoc{}, Deciding: []decidedDoc{}, Next: []nextDoc{}, Faces: []faceDoc{}, Levels: []levelDoc{},
	}
	if v.Test.Answer != survey.NothingChecks {
		d.Test.Limit, d.Test.P = some(v.Test.Limit), &v.Test.P
	}
	if v.Without != nil {
		d.Test.After = v.AfterTest.Answer.String()
	}
	for i := range s.Readings {
		d.Residuals = append(d.Residuals, readingOf(s, i))
	}
	for _, x := range v.Suspects {
		one := suspectDoc{Slips: x.Slips}
		for _, a := range x.Readings {
			r := s.Readings[a.Index]
			doc := accusedDoc{Name: r.Name, Line: a.Reading.Where, W: digits(a.W), Read: digits(r.Read), Unit: r.Unit, Pen: a.Pen()}
			doc.Should, doc.SD = valueOf(a.ShouldRead, r.Unit)
			doc.Error = digits(r.Read - doc.Should)
			one.Readings = append(one.Readings, doc)
		}
		d.Suspects = append(d.Suspects, one)
	}
	d.Inseparable = append(d.Inseparable, s.Inseparable...)
	for _, x := range s.Refused {
		d.Refused = append(d.Refused, refusedDoc{x.Name, x.Where, x.Why, x.Needed, x.Instead})
	}
	for _, x := range v.Deciding {
		d.Deciding = append(d.Deciding, decidedOf(s, x))
	}
	for _, c := range v.Next {
		d.Next = append(d.Next, nextOf(s, c))
	}
	for _, x := range s.Faces {
		doc := faceDoc{Wall: x.Wall, BowChecked: x.Proved, Stations: x.Stations, Plumbs: x.Plumbs, Uneven: x.Uneven, NotPlane: x.NotPlane}
		doc.Bow, doc.BowSD = pair(x.Bow)
		doc.Lean, doc.LeanSD = pair(x.Lean)
		d.Faces = append(d.Faces, doc)
	}
	for _, l := range s.Levels {
		d.Levels = append(d.Levels, levelDoc{string(l.Name), mm(l.Height.Value), mm(l.Height.SD)})
	}
	return d
}

func readingOf(s model.SurveyReport, i int) readingDoc {
	x := s.Readings[i]
	d := readingDoc{Name: x.Name, Read: digits(x.Read), Adjusted: digits(x.Adjusted), SD: digits(x.SD), Unit: x.Unit, Checked: digits(x.Checked),
		Residual: digits(x.Adjusted - x.Read), State: s.State(i)}
	if i >= len(s.Verdict.Readings) {
		return d
	}
	j := s.Verdict.Readings[i]
	d.Line = j.Reading.Where
	if least, ok := s.Least(i); ok {
		d.W, d.Least, d.Damage, d.Damages = some(j.W), some(least), some(float64(j.Damage)), j.Damages
	}
	return d
}

func decidedOf(s model.SurveyReport, x survey.Decided) decidedDoc {
	d := decidedDoc{Name: x.Name, Unit: "mm", SD: mm(x.SD), Unchecked: x.Unchecked, Damage: mm(x.Damage)}
	if x.Value.Angle != 0 {
		d.Unit = "deg"
	}
	d.Value, _ = valueOf(x.Value, d.Unit)
	if x.By >= 0 {
		d.By = s.Readings[x.By].Name
	}
	return d
}

func nextOf(s model.SurveyReport, c survey.Candidate) nextDoc {
	d := nextDoc{
		Name: c.Reading.Name(), How: c.Reading.How(), JobLine: JobLine(c.Reading, c.Expected), Unit: "mm", Within: digits(c.Expected.Within(c.Reading)),
		Worst: mm(c.Worst), Damage: mm(c.Damage), Unseen: mm(c.Unseen), Checks: named(s, c.Checks), Left: named(s, c.Left),
	}
	if c.Reading.Kind == survey.Angle || c.Reading.Kind == survey.Interior {
		d.Unit = "deg"
	}
	d.Expected, _ = valueOf(c.Expected, d.Unit)
	return d
}

// JobLine is the line of a job file for a reading that is still to be taken.
// What was foretold tells on which side of a line a corner lies.
func JobLine(r survey.Reading, f survey.Foretold) string {
	r.Length = f.Length.Value
	return job.Line(r, "")
}

func valueOf(f survey.Foretold, u string) (value, sd float64) {
	if u == "deg" {
		return digits(f.Angle.Degrees()), digits(f.AngleSD.Degrees())
	}
	return mm(f.Length.Value), mm(f.Length.SD)
}

func named(s model.SurveyReport, list []int) []string {
	out := []string{}
	for _, i := range list {
		out = append(out, s.Readings[i].Name)
	}
	return out
}

func some(x float64) *float64 {
	x = digits(x)
	return &x
}

func pair(m *unit.Measured) (value, sd *float64) {
	if m == nil {
		return nil, nil
	}
	return some(float64(m.Value)), some(float64(m.SD))
}
