package report

import (
	"fmt"
	"strings"

	"slabwright/model/find"
)

// Step is one thing to do next: what calls for it, and the ways to do it, any
// of which mends it.
type Step struct {
	Rule string // of the finding; empty when the work just begins
	Why  string
	Ways []string
}

// Steps gives what to measure or do next: the hints of failing, unknown and
// warned findings, worst first; where there are none, how the work begins.
func Steps(list []find.Finding) []Step {
	var out []Step
	for _, f := range list {
		if f.Status.Severity() < find.Warn.Severity() || len(f.Fix) == 0 {
			continue
		}
		s := Step{Rule: f.Rule, Why: firstSentence(f.Why)}
		for _, x := range f.Fix {
			s.Ways = append(s.Ways, fixText(x))
		}
		out = append(out, s)
	}
	if out == nil {
		for _, s := range []string{
			"Measure the width once more at the back, in the middle and at the front before anything is cut.",
			"Hand the slab sheets to the joiner and the angle sheets to the steel yard.",
			"Search every wall for services before drilling.",
		} {
			out = append(out, Step{Why: s})
		}
	}
	return out
}

// mostSteps is how many steps a terminal shows.
const mostSteps = 6

// Brief is what the terminal shows: the verdict, the margins and what to do.
func Brief(b Build) string {
	var w strings.Builder
	fmt.Fprintf(&w, "%s\n\n", Sentence(b.Findings))
	for _, f := range Smallest(b.Findings, 5) {
		fmt.Fprintf(&w, "  %12s  %-7s %s (%s)\n", quantity(f.Margin), f.Status, f.Title, briefly(f))
	}
	steps := Steps(b.Findings)
	fmt.Fprintf(&w, "\nNext:\n")
	for i, s := range steps[:min(mostSteps, len(steps))] {
		fmt.Fprintf(&w, "  %d. %s\n", i+1, s.Why)
		for _, way := range s.Ways {
			fmt.Fprintf(&w, "     - %s\n", way)
		}
	}
	if n := len(steps) - mostSteps; n > 0 {
		fmt.Fprintf(&w, "  and %d more\n", n)
	}
	return w.String()
}

func next(w *strings.Builder, b Build) {
	fmt.Fprintf(w, "## Next\n\n")
	for i, s := range Steps(b.Findings) {
		fmt.Fprintf(w, "%d. %s\n", i+1, s.Why)
		for _, way := range s.Ways {
			fmt.Fprintf(w, "   - %s\n", way)
		}
	}
	w.WriteString("\n")
}
