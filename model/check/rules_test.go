package check_test

import (
	"flag"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/check"
	"slabwright/model/find"
	"slabwright/model/job"
	"slabwright/model/report"
	"slabwright/model/unit"
	"slabwright/presets"
)

var update = flag.Bool("update", false, "write the findings into the archives")

// Most rules pass or fail. These are the others, with the best and the worst
// that they say.
var (
	best  = map[string]find.Status{"surface-height": find.Note, "mass": find.Note, "wood-moisture": find.Note}
	worst = map[string]find.Status{"chair-room": find.Warn, "leg-width": find.Warn, "build-up": find.Warn, "surface-height": find.Warn, "head-room": find.Warn, "screen": find.Warn, "reach": find.Note, "lifting": find.Note, "survey": find.Warn, "survey-unchecked": find.Unknown, "survey-next": find.Warn, "survey-sight": find.Warn, "survey-face": find.Warn, "on-offer": find.Note, "elbow-height": find.Warn, "tipping": find.Warn, "wood-moisture": find.Warn, "natural-edge": find.Unknown}
)

// lacking are the rules that need what a job file may leave out, or a part that
// could not be built.
var lacking = []string{"screen", "survey", "survey-sight", "fit-probability", "goes-in", "wall-anchors", "natural-edge", "floor-ceiling", "leaves-room", "parts-overlap", "tipping", "mass", "wood-moisture", "anchor-strength", "rod-strength"}

// TestRules holds every rule against its archive in testdata/rules. An archive
// has a room that its cases share, and for each case what the job file says
// beyond it, then the findings of that rule. A case is named by the worst
// verdict, such as "fail: legs cross"; one with a room of its own shares none.
func TestRules(t *testing.T) {
	for _, r := range check.All {
		t.Run(r.ID, func(t *testing.T) {
			file := filepath.Join("testdata", "rules", r.ID+".txt")
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatalf("every rule has an archive of cases: %v", err)
			}
			comment, sections := parseArchive(string(data))
			var seen []find.Status
			shared := ""
			for i, s := range sections {
				verdict, _, isCase := strings.Cut(s.name, ": ")
				switch {
				case s.name == "room":
					shared = s.text
				case isCase:
					if i+1 == len(sections) || sections[i+1].name != "findings" {
						t.Fatalf("no findings after case %q", s.name)
					}
					got := tryCase(t, s, shared, r.ID, find.Status(verdict))
					seen = append(seen, find.Status(verdict))
					if *update {
						sections[i+1].text = got
					} else if got != sections[i+1].text {
						t.Errorf("case %q says\n%swant\n%s", s.name, got, sections[i+1].text)
					}
				}
			}
			complete(t, r.ID, seen)
			if *update {
				if err := os.WriteFile(file, []byte(formatArchive(comment, sections)), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// tryCase runs one case and gives the findings as text. Where a hint names a
// parameter and a value, that is set, and the rule must not fail any more.
func tryCase(t *testing.T, s section, shared, rule string, verdict find.Status) string {
	t.Helper()
	text := s.text
	if !strings.Contains("\n"+text, "\nroom:") {
		text = shared + text
	}
	j := readJob(t, s.name, text)
	found := findingsOf(t, j, rule)
	if w := find.Worst(found); w != verdict {
		t.Errorf("case %q comes out as %s", s.name, w)
	}
	for _, f := range found {
		if f.Status.Severity() >= find.Warn.Severity() && len(f.Fix) == 0 {
			t.Errorf("case %q: %q has no hint to mend it", s.name, f.Why)
		}
		for _, x := range f.Fix {
			if x.Value == nil {
				continue
			}
			mended := j
			mended.Settings = maps.Clone(j.Settings)
			if mended.Settings == nil {
				mended.Settings = map[string]model.Setting{}
			}
			mended.Settings[x.Parameter] = model.Setting{Length: unit.Length(*x.Value)}
			if again := findingsOf(t, mended, rule); find.Worst(again).Severity() >= find.Unknown.Severity() {
				t.Errorf("case %q: %s at %v does not mend it:\n%s", s.name, x.Parameter, *x.Value, report.Text(again))
			}
		}
	}
	return report.Text(found)
}

func complete(t *testing.T, rule string, seen []find.Status) {
	t.Helper()
	want := []find.Status{find.Pass, find.Fail}
	if s, ok := best[rule]; ok {
		want[0] = s
	}
	if s, ok := worst[rule]; ok {
		want[1] = s
	}
	if slices.Contains(lacking, rule) {
		want = append(want, find.Unknown)
	}
	for _, s := range want {
		if !slices.Contains(seen, s) {
			t.Errorf("no case comes out as %s", s)
		}
	}
}

func readJob(t testing.TB, name, text string) model.Job {
	t.Helper()
	j, mistakes := job.Read("job.yaml", []byte(text), append(presets.All(), trial))
	if len(mistakes) > 0 {
		t.Fatalf("case %q:\n%s", name, job.Text(mistakes))
	}
	return j
}

// siteOf builds a job up to the checks.
func siteOf(t testing.TB, j model.Job) check.Site {
	t.Helper()
	r, err := model.NewRoom(j.Room)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range append(presets.All(), trial) {
		if p.Name == j.Preset {
			d := p.Build(model.Site{Room: r, People: j.People, Offers: j.Offers, House: j.House, Cut: j.Cut, Wiring: j.Wiring}, j.Settings)
			d.Finish()
			return check.Site{Job: j, Room: r, Design: d, Params: p.Params}
		}
	}
	t.Fatalf("no preset %q", j.Preset)
	return check.Site{}
}

func findingsOf(t testing.TB, j model.Job, rule string) []find.Finding {
	t.Helper()
	var out []find.Finding
	for _, f := range check.RunCheap(siteOf(t, j), rule) {
		if f.Rule == rule {
			out = append(out, f)
		}
		if f.Status == find.Broken {
			t.Errorf("%s broke: %s", f.Rule, f.Why)
		}
	}
	return out
}
