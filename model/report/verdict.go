package report

import (
	"fmt"
	"strings"

	"slabwright/model/find"
)

// Worst is the verdict's status: what decides the first sentence.
func Worst(list []find.Finding) find.Status { return find.Worst(list) }

// Sentence is the verdict in one sentence.
func Sentence(list []find.Finding) string {
	var fails, unknowns, broken []find.Finding
	for _, f := range list {
		switch f.Status {
		case find.Fail:
			fails = append(fails, f)
		case find.Unknown:
			unknowns = append(unknowns, f)
		case find.Broken:
			broken = append(broken, f)
		}
	}
	switch {
	case len(broken) > 0:
		return fmt.Sprintf("Not known: a check broke (%s). The fault is ours.", broken[0].Rule)
	case len(fails) > 0:
		s := "It does not fit: " + sentence(fails[0])
		if n := len(fails) - 1; n > 0 {
			s += fmt.Sprintf(" And %d more %s.", n, plural(n, "check fails", "checks fail"))
		}
		return s
	case len(unknowns) > 0:
		return "Not known yet, because " + lowerFirst(strings.TrimPrefix(sentence(unknowns[0]), "not checked: "))
	}
	if m := Smallest(list, 1); len(m) > 0 {
		return fmt.Sprintf("It fits. The smallest margin is %s (%s). Whether it holds a person has not been checked.", margin(m[0]), lowerFirst(m[0].Title))
	}
	return "It fits. Whether it holds a person has not been checked."
}

// Smallest gives the n findings with the smallest margins, failing ones first.
// Margins of one unit only are compared: millimetres.
func Smallest(list []find.Finding, n int) []find.Finding {
	var out []find.Finding
	for _, f := range list {
		if f.Margin != nil && f.Margin.Unit == "mm" {
			out = append(out, f)
		}
	}
	for i := 1; i < len(out); i++ {
		for j := i; j > 0 && out[j].Margin.Value < out[j-1].Margin.Value; j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out[:min(n, len(out))]
}

func sentence(f find.Finding) string {
	if i := strings.Index(f.Why, ". "); i > 0 {
		return f.Why[:i+1]
	}
	return f.Why
}

func margin(f find.Finding) string { return fmt.Sprintf("%.1f %s", f.Margin.Value, f.Margin.Unit) }

func lowerFirst(s string) string {
	if s == "" || len(s) > 1 && s[1] >= 'A' && s[1] <= 'Z' {
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
