package report

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/model/check"
	"slabwright/model/find"
)

// Worst is the verdict's status: what decides the first sentence.
func Worst(list []find.Finding) find.Status { return find.Worst(list) }

// Sentence is the verdict in one sentence, and what it leaves open.
func Sentence(list []find.Finding) string { return strings.Join(Sentences(list), " ") }

// Sentences are those of the verdict one by one.
func Sentences(list []find.Finding) []string {
	of := func(s find.Status) []find.Finding {
		return only(list, func(f find.Finding) bool { return f.Status == s })
	}
	fails, unknowns, broken, warns := of(find.Fail), of(find.Unknown), of(find.Broken), of(find.Warn)
	switch {
	case len(broken) > 0:
		return []string{fmt.Sprintf("Not known: a check broke (%s). The fault is ours.", broken[0].Rule)}
	case len(fails) > 0:
		lead, first := "It cannot be built like this: %s", fails[0]
		if i := slices.IndexFunc(fails, isFit); i >= 0 {
			lead, first = "It does not fit: %s", fails[i]
		}
		return more(len(fails)-1, "And %d more check fails.", "And %d more checks fail.",
			fmt.Sprintf(lead, lowerFirst(firstSentence(first.Why))))
	case len(unknowns) > 0:
		why := strings.TrimPrefix(firstSentence(unknowns[0].Why), "Not known yet: ")
		return more(len(unknowns)-1, "And %d more check lacks an input.", "And %d more checks lack an input.",
			fmt.Sprintf("Not known yet: %s", lowerFirst(why)))
	}
	out := []string{"It fits."}
	if m := Smallest(list, 1); len(m) > 0 {
		out = append(out, fmt.Sprintf("The smallest margin is %s: %s", quantity(m[0].Margin), lowerFirst(firstSentence(m[0].Why))))
	}
	out = more(len(warns), "%d warning needs a look.", "%d warnings need a look.", out...)
	return append(out, "No number here replaces the approval of an anchor and a load test.")
}

// more adds a sentence on n things, if there are any.
func more(n int, one, many string, to ...string) []string {
	if n == 0 {
		return to
	}
	return append(to, fmt.Sprintf(plural(n, one, many), n))
}

// isFit tells whether a finding's margin is room between things.
func isFit(f find.Finding) bool {
	r, ok := check.ByID(f.Rule)
	return ok && r.Fit
}

func only(list []find.Finding, keep func(find.Finding) bool) []find.Finding {
	var out []find.Finding
	for _, f := range list {
		if keep(f) {
			out = append(out, f)
		}
	}
	return out
}

// Smallest gives the n findings with the smallest margins. Only like margins
// are compared: millimetres between things, not what is left of a part. Findings
// of one rule with the same margin count as one.
func Smallest(list []find.Finding, n int) []find.Finding {
	fit := only(list, func(f find.Finding) bool { return f.Margin != nil && f.Margin.Unit == "mm" && isFit(f) })
	slices.SortStableFunc(fit, func(a, b find.Finding) int {
		switch {
		case a.Margin.Value < b.Margin.Value:
			return -1
		case a.Margin.Value > b.Margin.Value:
			return 1
		}
		return 0
	})
	var out []find.Finding
	for _, f := range fit {
		if i := slices.IndexFunc(out, func(g find.Finding) bool { return alike(f, g) }); i >= 0 {
			out[i].Parts = union(out[i].Parts, f.Parts)
			out[i].Walls = union(out[i].Walls, f.Walls)
			continue
		}
		out = append(out, f)
	}
	return out[:min(n, len(out))]
}

func alike(f, g find.Finding) bool {
	return f.Rule == g.Rule && f.Title == g.Title && number(f.Margin.Value, "mm") == number(g.Margin.Value, "mm")
}

func union(a, b []string) []string {
	out := slices.Clone(a)
	for _, s := range b {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// firstSentence ends at the first full stop that a space follows.
func firstSentence(s string) string {
	if i := strings.Index(s, ". "); i > 0 {
		return s[:i+1]
	}
	return s
}

// lowerFirst writes the first letter small, but for a word in capitals.
func lowerFirst(s string) string {
	if s == "" || len(s) > 1 && (s[1] >= 'A' && s[1] <= 'Z' || s[1] >= '0' && s[1] <= '9' || s[1] == '-') {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func count(n int, one, many string) string { return fmt.Sprintf("%d %s", n, plural(n, one, many)) }
