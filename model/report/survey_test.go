package report_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/survey"
	"slabwright/presets"
)

// roomOf builds the room of three walls from the lines of its readings.
func roomOf(t testing.TB, readings ...string) *model.Room {
	t.Helper()
	text := `title: Trial
revision: A
surveyed: 2026-01-10
room:
  readings_at: 745
  corners: [A, B, C, D]
  walls:
    - {name: left, from: A, to: B, make: solid brick, lean: {by: 4, over: 700}}
    - {name: back, from: B, to: C, make: solid brick, bow: -3}
    - {name: right, from: C, to: D, make: solid brick}
  floor: {A: 0, D: -6}
  readings:
`
	for _, r := range readings {
		text += "    - {" + r + "}\n"
	}
	j, mistakes := job.Read("job.yaml", []byte(text+"design: {preset: alcove}\n"), presets.All())
	if len(mistakes) > 0 {
		t.Fatal(job.Text(mistakes))
	}
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var (
	enough = []string{"between: A-B, is: 800", "between: B-C, is: 1600", "between: C-D, is: 800", "between: A-C, is: 1789", "between: B-D, is: 1788"}
	spared = append(slices.Clone(enough), "between: A-D, is: 1601", "square: A-B-C, marks: [600, 800], is: 1000", "square: B-C-D, marks: [800, 600], is: 1000")
)

func statisticsOf(t *testing.T, r *model.Room) map[string]any {
	t.Helper()
	data, err := report.RoomJSON(r)
	if err != nil {
		t.Fatal(err)
	}
	var d struct{ Statistics map[string]any }
	if err := json.Unmarshal(data, &d); err != nil {
		t.Fatal(err)
	}
	return d.Statistics
}

// Five readings for five unknowns: the word is "unchecked", and there is no
// chance, no limit and no least slip anywhere.
func TestUncheckedRoomGivesNoChance(t *testing.T) {
	r := roomOf(t, enough...)
	text := report.RoomText(r)
	for _, want := range []string{"5 readings, 0 more than needed: UNCHECKED", "unchecked, and the fit hangs on it", "UNCHECKED ", "any size", "Next best reading", "floor at D: -6.0 mm", "leans +5.7 mm per m (sd 1.4)", "bow 3.0 mm hollow (sd 0.7)"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	s := statisticsOf(t, r)
	test := s["test"].(map[string]any)
	if test["answer"] != "unchecked" || test["p_value"] != nil || test["limit"] != nil || s["unchecked"] != true || len(s["readings_unchecked"].([]any)) != 5 {
		t.Errorf("%v", s)
	}
	for _, x := range s["readings_adjusted"].([]any) {
		if m := x.(map[string]any); m["w"] != nil || m["least_detectable"] != nil || m["damage_mm"] != nil {
			t.Errorf("%v", m)
		}
	}
	if r.Survey.Settled() {
		t.Error("an unchecked room is settled")
	}
	if text := report.RoomText(roomOf(t, spared...)); !strings.Contains(text, "they agree (sum of squares") || strings.Contains(text, "UNCHECKED") {
		t.Error(text)
	}
}

// A slip is told with the line it stands in and what it should read.
func TestSuspectsAreToldWithTheirLines(t *testing.T) {
	list := slices.Clone(spared)
	list[4] = "between: B-D, is: 1808"
	r := roomOf(t, append(list, "square: C-D-A, marks: [600, 800], is: 1000")...)
	text := report.RoomText(r)
	if !strings.Contains(text, "they DISAGREE") || !strings.Contains(text, "Measure it again:\n  B-D (job.yaml:17) reads 1808.0 mm; expected 178") {
		t.Error(text)
	}
	s := statisticsOf(t, r)
	suspect := s["suspects"].([]any)[0].(map[string]any)["readings"].([]any)[0].(map[string]any)
	if suspect["name"] != "B-D" || suspect["line"] != "job.yaml:17" || !(suspect["error"].(float64) > 15 && suspect["error"].(float64) < 25) {
		t.Errorf("%v", suspect)
	}
	// With one reading to spare it may be any of them.
	r = roomOf(t, append(list[:5:5], "between: A-D, is: 1601")...)
	if text := report.RoomText(r); !strings.Contains(text, "1 of these 6 readings is wrong") || !strings.Contains(text, "Without these nothing checks the others.") {
		t.Error(text)
	}
	if r.Survey.Settled() {
		t.Error("a room with a slip is settled")
	}
}

// The line that is proposed for the job file is one that the job file takes:
// with the expected value in it the room comes out the same and better known.
func TestProposedLinesCanBeWrittenDown(t *testing.T) {
	r := roomOf(t, enough...)
	kinds := map[survey.Kind]bool{}
	for _, c := range r.Survey.Verdict.Next {
		line := report.JobLine(c.Reading, c.Expected)
		kinds[c.Reading.Kind] = true
		v := float64(c.Expected.Length.Value)
		line = strings.TrimSuffix(strings.TrimPrefix(line, "{"), "is: }") + fmt.Sprintf("is: %.1f", max(v, -v))
		better := roomOf(t, append(slices.Clone(enough), line)...)
		n := len(better.Survey.Readings) - 1
		for i, x := range better.Survey.Readings { // a bow comes last, if widths bring it in
			if x.Name == c.Reading.Name() {
				n = i
			}
		}
		if x := better.Survey.Readings[n]; x.Name != c.Reading.Name() || x.Adjusted-x.Read > 0.2 || x.Adjusted-x.Read < -0.2 {
			t.Errorf("%s: %+v", line, x)
		}
		if better.Survey.Redundancy < 1 {
			t.Errorf("%s brings nothing", line)
		}
	}
	if len(kinds) < 2 {
		t.Errorf("only %v proposed", kinds)
	}
}

// A wall read in centimetres spoils everything; the error names its line.
func TestGrossSlipInAJobIsNamed(t *testing.T) {
	list := slices.Clone(spared)
	list[1] = "between: B-C, is: 160"
	text := ""
	for i, r := range list {
		text += fmt.Sprintf("    - {%s} # %d\n", r, i)
	}
	j, mistakes := job.Read("job.yaml", []byte("title: T\nrevision: A\nsurveyed: 2026-01-10\nroom:\n  readings_at: 745\n  corners: [A, B, C, D]\n  walls:\n    - {name: left, from: A, to: B}\n    - {name: back, from: B, to: C}\n    - {name: right, from: C, to: D}\n  readings:\n"+text+"design: {preset: alcove}\n"), presets.All())
	if len(mistakes) > 0 {
		t.Fatal(job.Text(mistakes))
	}
	r, err := model.NewRoom(j.Room)
	if err == nil { // then as a suspect
		s := r.Survey.Verdict.Suspects
		if len(s) != 1 || len(s[0].Readings) != 1 || s[0].Readings[0].Reading.ID != "B-C" {
			t.Errorf("suspects %+v", s)
		}
	} else if !strings.Contains(err.Error(), "job.yaml:13") || !strings.Contains(err.Error(), "it reads 160 mm, by the others it should be 1599") {
		t.Errorf("%v", err)
	}
}
