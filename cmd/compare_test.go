package cmd

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
)

// The studio before and after its right wall was plastered: 6 mm.
func TestCompare(t *testing.T) {
	old, again := filepath.Join("..", "presets", "studio"), filepath.Join("..", "testdata", "again")
	out, complaints, code := run(t, "compare", old, again)
	if code != exitFine || complaints != "" {
		t.Fatalf("exit %d: %s", code, complaints)
	}
	for _, want := range []string{
		"Revision B against revision A.", "moved    right ", "same     back left ", "worktop: must be recut smaller", "infill: may stay (goes in with 9",
		"back edge: 2363.6 -> 2357.3 (-6.4)", "worktop: top face: 2363.6 +0/-1 -> 2357.3 +0/-1", "cut:\n  - part: worktop\n    on: DAY\n",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("it does not say %q:\n%s", want, out)
		}
	}
	if again, _, _ := run(t, "compare", old, again); again != out {
		t.Error("a second comparison says something else")
	}
	out, _, _ = run(t, "compare", old, again, "--json")
	var doc struct {
		Walls []struct {
			Name, Verdict string
			Ends          [2]float64 `json:"ends_mm"`
		}
		Parts []struct{ ID, Verdict string }
	}
	if err := json.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	for _, w := range doc.Walls {
		if moved := w.Name == "right"; (w.Verdict == "moved") != moved || moved && (w.Ends[0] < 3 || w.Ends[0] > 9 || w.Ends[1] < 3 || w.Ends[1] > 9) {
			t.Errorf("wall %s: %s, %v", w.Name, w.Verdict, w.Ends)
		}
	}
	if len(doc.Walls) != 7 || len(doc.Parts) < 10 {
		t.Errorf("%d walls, %d parts", len(doc.Walls), len(doc.Parts))
	}
}

func TestCompareMistakes(t *testing.T) {
	studio, alcove := filepath.Join("..", "presets", "studio"), filepath.Join("..", "presets", "alcove")
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{studio}, "takes two job files or folders, the old one first"},
		{[]string{studio, "nowhere"}, "there is no such file"},
		{[]string{"nowhere", studio}, "there is no such file"},
		{[]string{studio, alcove}, `a design of the preset "studio", the new one of "alcove": their parts cannot be compared. Give two jobs of the same preset.`},
	} {
		out, complaints, code := run(t, append([]string{"compare"}, c.args...)...)
		if code != exitUnread || out != "" || !strings.Contains(complaints, c.want) {
			t.Errorf("%v: exit %d, %q, want %q", c.args, code, complaints, c.want)
		}
	}
}
