package report_test

import (
	"strings"
	"testing"

	"slabwright/model/find"
	"slabwright/model/report"
)

// of makes a finding of a rule, with a margin in millimetres.
func of(rule string, status find.Status, margin float64, why string) find.Finding {
	return find.Finding{
		Rule: rule, Status: status, Title: "Title of " + rule, Why: why, Basis: "test",
		Measured: &find.Quantity{Value: 10 + margin, Unit: "mm"}, Required: &find.Limit{Value: 10, Relation: find.AtLeast, Unit: "mm"}, Margin: &find.Quantity{Value: margin, Unit: "mm"},
	}
}

func TestSentence(t *testing.T) {
	gap := of("wall-gap", find.Pass, 1, "Between bench and the wall left the gap is 3.0 mm. More words.")
	for _, c := range []struct {
		name string
		list []find.Finding
		want string
	}{
		{"fits", []find.Finding{gap},
			"It fits. The smallest margin is 1.0 mm: between bench and the wall left the gap is 3.0 mm. No number here replaces the approval of an anchor and a load test."},
		{"fits, nothing measured", nil,
			"It fits. No number here replaces the approval of an anchor and a load test."},
		{"fits with a warning", []find.Finding{of("tipping", find.Warn, -5, "It tips."), gap},
			"It fits. The smallest margin is 1.0 mm: between bench and the wall left the gap is 3.0 mm. 1 warning needs a look. No number here replaces the approval of an anchor and a load test."},
		{"does not fit", []find.Finding{of("wood-left", find.Fail, -9, "Thin web."), of("wall-gap", find.Fail, -2, "Bench runs 2.0 mm into the wall left. Really."), gap},
			"It does not fit: bench runs 2.0 mm into the wall left. And 1 more check fails."},
		{"cannot be built", []find.Finding{of("wood-left", find.Fail, -9, "Groove cable run leaves 3.0 mm of the 45 mm of bench."), gap},
			"It cannot be built like this: groove cable run leaves 3.0 mm of the 45 mm of bench."},
		{"unknown", []find.Finding{{Rule: "wall-anchors", Status: find.Unknown, Why: "Not known yet: nobody has said what the wall left is made of. So."}, {Rule: "survey", Status: find.Unknown, Why: "Not known yet: x."}, gap},
			"Not known yet: nobody has said what the wall left is made of. And 1 more check lacks an input."},
		{"broken", []find.Finding{{Rule: "bearing", Status: find.Broken, Why: "This rule broke: x"}, of("wall-gap", find.Fail, -2, "Bench runs into it.")},
			"Not known: a check broke (bearing). The fault is ours."},
		{"three fail", []find.Finding{of("wall-gap", find.Fail, -3, "A-B is in the way."), of("wall-gap", find.Fail, -2, "B."), of("leg-room", find.Fail, -1, "C.")},
			"It does not fit: A-B is in the way. And 2 more checks fail."},
	} {
		if got := report.Sentence(c.list); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// TestSmallest: only millimetres of room between things are compared, and what
// is alike stands in one row.
func TestSmallest(t *testing.T) {
	steel := of("steel-left", find.Pass, 0, "Steel.")
	mass := find.Finding{Rule: "mass", Status: find.Pass, Margin: &find.Quantity{Value: 0.1, Unit: "kg"}}
	survey := find.Finding{Rule: "survey", Status: find.Pass, Margin: &find.Quantity{Value: 0.2, Unit: "standard deviations"}}
	left, right := of("wall-gap", find.Pass, 1.04, "Left."), of("wall-gap", find.Pass, 0.96, "Right.")
	left.Parts, right.Parts = []string{"bench"}, []string{"bench"}
	left.Walls, right.Walls = []string{"left"}, []string{"right"}
	legs := of("leg-room", find.Fail, -6, "Legs.")
	got := report.Smallest([]find.Finding{steel, mass, survey, left, right, legs}, 5)
	if len(got) != 2 || got[0].Rule != "leg-room" || got[1].Rule != "wall-gap" {
		t.Fatalf("%+v", got)
	}
	if w := strings.Join(got[1].Walls, " "); w != "right left" || len(got[1].Parts) != 1 {
		t.Errorf("one row for %v on %v", got[1].Parts, got[1].Walls)
	}
	if len(left.Walls) != 1 || len(right.Walls) != 1 {
		t.Error("the findings themselves were changed")
	}
	if n := len(report.Smallest([]find.Finding{left, legs}, 1)); n != 1 {
		t.Errorf("%d rows, want 1", n)
	}
}

func TestText(t *testing.T) {
	v := 62.5
	list := []find.Finding{{
		Rule: "wall-gap", Status: find.Fail, Title: "A gap is left", Why: "Too tight.", Parts: []string{"bench"}, Walls: []string{"left"}, At: &[3]float64{-0.2, 3.6, 745},
		Measured: &find.Quantity{Value: -0.04, SD: 1.25, Unit: "mm"}, Required: &find.Limit{Value: 2, High: 12, Relation: find.Between, Unit: "mm"}, Margin: &find.Quantity{Value: -2.04, SD: 1.25, Unit: "mm"},
		Assumed: []find.Assumption{{What: "flat", Source: "job file"}}, Fix: []find.Fix{{Text: "wider", Parameter: "side_gap", Value: &v}, {Text: "or scribe"}},
	}, {
		Rule: "wall-anchors", Status: find.Pass, Title: "Fixed", Why: "At one place.",
		Measured: &find.Quantity{Value: 1, Unit: "fixings"}, Required: &find.Limit{Value: 1, Relation: find.AtMost, Unit: "fixings"}, Margin: &find.Quantity{Value: 0, Unit: "fixings"},
	}}
	want := `fail: A gap is left [bench, wall left; at 0, 4, 745]
  Too tight.
  measured 0.0 ± 1.2 mm, required 2.0 to 12.0 mm, margin -2.0 ± 1.2 mm
  assumed: flat (job file)
  to mend: wider (set side_gap to 62.5)
  to mend: or scribe
pass: Fixed [whole desk]
  At one place.
  measured 1 fixing, required at most 1 fixing, margin 0 fixings
`
	if got := report.Text(list); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// TestSteps: what fails comes first, with every way to mend it; where nothing
// fails, the work begins.
func TestSteps(t *testing.T) {
	v := 751.0
	f := of("leg-room", find.Fail, -6, "Thighs need 706 mm. More.")
	f.Fix = []find.Fix{{Text: "raise the surface", Parameter: "surface", Value: &v}, {Text: "or sit elsewhere"}}
	note := of("mass", find.Note, 1, "Heavy.")
	note.Fix = []find.Fix{{Text: "eat less"}}
	got := report.Steps([]find.Finding{f, note})
	if len(got) != 1 || got[0].Why != "Thighs need 706 mm." || len(got[0].Ways) != 2 || got[0].Ways[0] != "raise the surface (set surface to 751)" {
		t.Errorf("%+v", got)
	}
	if begin := report.Steps(nil); len(begin) < 2 || !strings.HasPrefix(begin[0].Why, "Measure the width once more") {
		t.Errorf("%+v", begin)
	}
}

// TestMarkdownOrder: the verdict opens the report, then come the margins, what
// to do next, what is wrong, what to look out for, and the rest.
func TestMarkdownOrder(t *testing.T) {
	md := string(report.Markdown(built(t, "studio", "surface: 755", "surface: 745")))
	at := 0
	for _, h := range []string{
		"# Print studio: verdict\n\n**It does not fit: thighs and knees of printmaker", "## The five smallest margins", "## Next\n\n1. ", "(set surface to ", "## What fails, is not known, or needs a look",
		"### fail: Room for thighs", "to mend: raise the surface", "## What to look out for, in the order of the work", "## Parts", "## What the slabs carry", "What every carrier has to take", "## What was looked at and is in order", "## What the checks rest on", "## Room as adjusted", "## Not checked",
	} {
		i := strings.Index(md[at:], h)
		if i < 0 {
			t.Fatalf("%q is missing, or not in its place", h)
		}
		at += i
	}
	fits := string(report.Markdown(built(t, "studio")))
	if !strings.HasPrefix(fits, "# Print studio: verdict\n\n**It fits. ") || strings.Contains(fits, "### fail") {
		t.Errorf("opens with %.80q", fits)
	}
	if rows := strings.Count(fits[:strings.Index(fits, "## Next")], "\n| "); rows != 6 {
		t.Errorf("%d rows of margins, want a head and five", rows)
	}
}

// TestCautions: a caution stands where its act does, and only where the design
// calls for it.
func TestCautions(t *testing.T) {
	acts := func(name string) string {
		var out []string
		for _, c := range report.Cautions(built(t, name).Design) {
			out = append(out, c.Act)
			if c.Text == "" {
				t.Errorf("%s says nothing", c.Act)
			}
		}
		return strings.Join(out, "; ")
	}
	if got, want := acts("studio"), "Before anything is ordered; Before drilling a wall; Setting anchors; Cutting and drilling steel; Sawing and sanding; Lifting; Mains electricity; Oiling; Before anybody stands on it"; got != want {
		t.Errorf("got %s", got)
	}
}
