package report_test

import (
	"encoding/json"
	"strings"
	"testing"

	"slabwright/model/report"
)

// fitKeys are the keys of report.json about how slabs fit.
var fitKeys = []struct {
	path    string
	example any
}{
	{"fit[].part", ""}, {"fit[].way", ""}, {"fit[].from", ""}, {"fit[].to", ""}, {"fit[].size_mm", 0.}, {"fit[].other_size_mm", 0.},
	{"fit[].play_mm", 0.}, {"fit[].play_sd_mm", 0.}, {"fit[].unchecked", []string{}}, {"fit[].disputed", []string{}}, {"fit[].wanted_probability", 0.},
	{"fit[].probability?", 0.}, {"fit[].probability_low?", 0.}, {"fit[].probability_high?", 0.}, {"fit[].longer_mm?", 0.},
	{"fit[].as_drawn_probability?", 0.}, {"fit[].drawn_play_mm?", 0.}, {"fit[].drawn_play_sd_mm?", 0.},
	{"fit[].order?.size_mm", 0.}, {"fit[].order?.other_size_mm", 0.}, {"fit[].order?.plus_mm", 0.}, {"fit[].order?.minus_mm", 0.}, {"fit[].order?.jams", 0.}, {"fit[].order?.shows_too_wide", 0.},
	{"fit[].gaps[].edge", ""}, {"fit[].gaps[].to", ""}, {"fit[].gaps[].at_mm", [3]float64{}}, {"fit[].gaps[].gap_mm", 0.}, {"fit[].gaps[].sd_mm", 0.},
	{"fit[].shape?.form", ""}, {"fit[].shape?.clear_mm", 0.}, {"fit[].shape?.text", ""}, {"fit[].scribe[].edge", ""}, {"fit[].scribe[].over_wood_mm", 0.},
}

type fitEntry struct {
	Part, Way   string
	Unchecked   []string
	Probability *float64
	Order       *struct {
		Size float64 `json:"size_mm"`
		Jams float64
		Good bool
	}
	Gaps []struct {
		Limits []float64 `json:"limits_5_95_mm"`
	}
}

func fitOf(t *testing.T, b report.Build) []fitEntry {
	t.Helper()
	data, err := report.JSON(b)
	if err != nil {
		t.Fatal(err)
	}
	var whole any
	if err := json.Unmarshal(data, &whole); err != nil {
		t.Fatal(err)
	}
	for _, k := range fitKeys {
		if err := follow(whole, strings.Split(k.path, "."), k.example); err != nil {
			t.Errorf("%s: %v", k.path, err)
		}
	}
	var doc struct{ Fit []fitEntry }
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	return doc.Fit
}

// TestFitIsReported: every slab between two ends stands in report.json and in
// report.md with the size to order.
func TestFitIsReported(t *testing.T) {
	b := built(t, "studio")
	var names []string
	for _, f := range fitOf(t, b) {
		names = append(names, f.Part+" "+f.Way)
		if f.Probability == nil || *f.Probability < 0.99 || f.Order == nil || !f.Order.Good || f.Order.Jams > 0.01 {
			t.Errorf("%s: probability %v, order %+v", f.Part, f.Probability, f.Order)
		}
		for _, g := range f.Gaps {
			if len(g.Limits) != 2 || g.Limits[0] > g.Limits[1] {
				t.Errorf("%s: limits %v", f.Part, g.Limits)
			}
		}
	}
	if got := strings.Join(names, ", "); got != "worktop length, infill length, infill depth" {
		t.Errorf("fit of %s", got)
	}
	text := string(report.Markdown(b))
	for _, says := range []string{"## Order sizes", "| worktop | length | left – right | 2363.6 (2373.2) | **2365 +0/-2** (2374.5) |", "| infill | depth | worktop – niche back |"} {
		if !strings.Contains(text, says) {
			t.Errorf("report.md lacks %q", says)
		}
	}
}

// TestNoProbabilityWithoutChecks: a room that nothing checks gets no probability
// and no order, in neither report.
func TestNoProbabilityWithoutChecks(t *testing.T) {
	b := built(t, "alcove",
		"    - {between: A-C, is: 1628}\n", "", "    - {between: B-D, is: 1626}\n", "",
		"    - {width: A-B to C-D, along: B-C, depth: 60, is: 1462}\n", "",
		"    - {width: A-B to C-D, along: B-C, depth: 300, is: 1469}\n", "",
		"    - {width: A-B to C-D, along: B-C, depth: 560, is: 1476}\n", "")
	list := fitOf(t, b)
	if len(list) != 4 {
		t.Errorf("%d slabs, want 4", len(list))
	}
	for _, f := range list {
		if f.Probability != nil || f.Order != nil || len(f.Unchecked) != 5 {
			t.Errorf("%s: probability %v, order %v, unchecked %v", f.Part, f.Probability, f.Order, f.Unchecked)
		}
		for _, g := range f.Gaps {
			if len(g.Limits) != 0 {
				t.Errorf("%s: limits %v", f.Part, g.Limits)
			}
		}
	}
	text := string(report.Markdown(b))
	if !strings.Contains(text, "| worktop | length | left – right |") || !strings.Contains(text, "no order yet") || !strings.Contains(text, "unchecked: nothing checks A-B, B-C") {
		t.Error("report.md does not say that it is unchecked")
	}
	order, _, _ := strings.Cut(text[strings.Index(text, "## Order sizes"):], "\n## ")
	if strings.Contains(order, "%") {
		t.Errorf("a probability is given all the same:\n%s", order)
	}
}

// TestScribeIsReported: a bow beyond what may show asks for more wood.
func TestScribeIsReported(t *testing.T) {
	b := built(t, "alcove", "make: hollow block\n", "make: hollow block\n      bow: -9\n")
	fitOf(t, b)
	text := string(report.Markdown(b))
	for _, says := range []string{"edge right: the wall is", "more wood and scribe it on the spot", "scribe its ends"} {
		if !strings.Contains(text, says) {
			t.Errorf("report.md lacks %q", says)
		}
	}
}
