package cmd

import (
	"path/filepath"
	"strings"
	"testing"
)

// threeWalls is a job whose readings stand from line 12 on.
func threeWalls(readings ...string) string {
	text := `title: Trial
revision: A
surveyed: 2026-01-10
room:
  readings_at: 745
  corners: [A, B, C, D]
  walls:
    - {name: left, from: A, to: B}
    - {name: back, from: B, to: C}
    - {name: right, from: C, to: D}
  readings:
`
	for _, r := range readings {
		text += "    - {" + r + "}\n"
	}
	return text + "design: {preset: alcove}\n"
}

// TestSurveyOfBadReadings: which line, why, what to do; and the exit code tells
// a program that the fit cannot be judged.
func TestSurveyOfBadReadings(t *testing.T) {
	good := []string{"between: A-B, is: 800", "between: B-C, is: 1600", "between: C-D, is: 800", "between: A-C, is: 1789", "between: B-D, is: 1788",
		"between: A-D, is: 1601", "square: A-B-C, marks: [600, 800], is: 1000", "square: B-C-D, marks: [800, 600], is: 1000"}
	changed := func(i int, r string) []string {
		list := append([]string(nil), good...)
		list[i] = r
		return list
	}
	for name, c := range map[string]struct {
		readings []string
		code     int
		says     []string
	}{
		"sound":       {good, exitFine, []string{"8 readings, 3 more than needed: they agree", "Next best reading"}},
		"just enough": {good[:5], exitFails, []string{"UNCHECKED", "least slip seen", "1. the straight distance from A to D\n     expected 1599.2 mm within 5.3"}},
		"a slip":      {changed(4, "between: B-D, is: 1808"), exitFails, []string{"they DISAGREE", "job.yaml:16) reads 1808.0 mm; expected 178"}},
		"a repeat that contradicts": {append(good[:5:5], "between: B-C, is: 1630"), exitFails,
			[]string{"1 of these 2 readings is wrong", "B-C (", "job.yaml:13) reads 1600.0 mm; expected 1630.0", "B-C (2) ("}},
		"a plain copy":            {append(good[:5:5], good[1]), exitFails, []string{"checked by its repeat only", "unchecked, and the fit hangs on it"}},
		"a wall of 230 m":         {changed(1, "between: B-C, is: 230 m"), exitUnread, []string{"job.yaml:13", "230 m", "out of range"}},
		"a wall in centimetres":   {changed(1, "between: B-C, is: 160"), exitUnread, []string{"job.yaml:13: reading \"B-C\"", "it reads 160 mm, by the others it should be 1599", "measure it again"}},
		"a wall ten times longer": {changed(1, "between: B-C, is: 16 m"), exitUnread, []string{"job.yaml:13: reading \"B-C\"", "it reads 16000 mm, by the others it should be 1599"}},
	} {
		file := filepath.Join(t.TempDir(), "job.yaml")
		write(t, file, threeWalls(c.readings...))
		out, errs, code := run(t, "survey", file)
		if code != c.code {
			t.Errorf("%s: exit %d, want %d\n%s%s", name, code, c.code, out, errs)
		}
		for _, want := range c.says {
			if !strings.Contains(out+errs, want) {
				t.Errorf("%s: no %q in\n%s%s", name, want, out, errs)
			}
		}
	}
}

// TestSurveyOfWrongBend: a bend that the readings deny is named with its line,
// never taken with a large misfit.
func TestSurveyOfWrongBend(t *testing.T) {
	text := threeWalls("between: A-B, is: 800", "between: B-C, is: 1600", "between: C-D, is: 800", "between: A-C, is: 1789", "between: B-D, is: 1788", "between: A-D, is: 1601")
	file := filepath.Join(t.TempDir(), "job.yaml")
	write(t, file, strings.Replace(text, "  walls:\n", "  bends: {B: out, C: in}\n  walls:\n", 1))
	_, errs, code := run(t, "survey", file)
	for _, want := range []string{"job.yaml:7: ", "B is told to be an outside corner, but the readings make it an inside one", "mend its bend"} {
		if code != exitUnread || !strings.Contains(errs, want) {
			t.Errorf("exit %d, want %q in\n%s", code, want, errs)
		}
	}
}
