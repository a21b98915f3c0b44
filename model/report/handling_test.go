package report_test

import (
	"strings"
	"testing"

	"slabwright/model/report"
)

// The report tells the whole order of the studio: steel first, the worktop with
// its way and its hands.
func TestHowItGoesTogether(t *testing.T) {
	text := string(report.Markdown(built(t, "studio")))
	_, section, ok := strings.Cut(text, "## How it goes together\n")
	section, _, _ = strings.Cut(section, "\n## ")
	order, _, _ := strings.Cut(section, "Where to take hold")
	if !ok || strings.Count(order, "\n| ") != 20 {
		t.Fatalf("no order of 19 parts:\n%s", order)
	}
	for _, want := range []string{
		"| worktop | 59.0 | 4 and a lift table | hold it in front of its place, level, 100 mm higher; push it back",
		"| 1 | angle back left |", "| infill | 5.9 | 1 |",
	} {
		if !strings.Contains(section, want) {
			t.Errorf("%q is missing:\n%s", want, section)
		}
	}
	if strings.Contains(section, "no way") {
		t.Error("a part of the studio does not go in")
	}
}
