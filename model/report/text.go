package report

import (
	"fmt"
	"strings"

	"slabwright/model/find"
)

// Text is a list of findings as plain text, one paragraph each: what a person
// reads on a terminal and what tests compare.
func Text(list []find.Finding) string {
	var w strings.Builder
	for _, f := range list {
		fmt.Fprintf(&w, "%s: %s [%s%s]\n  %s\n", f.Status, f.Title, where(f), place(f), f.Why)
		if s := numbers(f); s != "" {
			fmt.Fprintf(&w, "  %s\n", s)
		}
		for _, a := range f.Assumed {
			fmt.Fprintf(&w, "  assumed: %s (%s)\n", a.What, a.Source)
		}
		for _, x := range f.Fix {
			fmt.Fprintf(&w, "  to mend: %s\n", fixText(x))
		}
	}
	return w.String()
}

// place is where a finding is in the room's axes, in whole millimetres.
func place(f find.Finding) string {
	if f.At == nil {
		return ""
	}
	return fmt.Sprintf("; at %s, %s, %s", whole(f.At[0]), whole(f.At[1]), whole(f.At[2]))
}

// numbers is "measured 3.0 mm, required at least 2.0 mm, margin 1.0 mm", as far
// as there are any.
func numbers(f find.Finding) string {
	var out []string
	if f.Measured != nil {
		out = append(out, "measured "+quantity(f.Measured))
	}
	if f.Required != nil {
		out = append(out, "required "+limit(f.Required))
	}
	if f.Margin != nil {
		out = append(out, "margin "+quantity(f.Margin))
	}
	return strings.Join(out, ", ")
}

// fixText is a hint with the parameter that does it.
func fixText(x find.Fix) string {
	if x.Value == nil {
		return x.Text
	}
	return fmt.Sprintf("%s (set %s to %s)", x.Text, x.Parameter, trim(*x.Value))
}

// trim writes a number with no more decimals than it has, three at most.
func trim(v float64) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", v), "0"), ".")
}

func quantity(q *find.Quantity) string {
	if q == nil {
		return "-"
	}
	if q.SD > 0 {
		return fmt.Sprintf("%s ± %.1f %s", number(q.Value, q.Unit), q.SD, q.Unit)
	}
	return number(q.Value, q.Unit) + " " + of(q.Value, q.Unit)
}

// of writes a counted unit as one or many.
func of(v float64, unit string) string {
	if v == 1 {
		return strings.TrimSuffix(unit, "s")
	}
	return unit
}

func limit(l *find.Limit) string {
	switch {
	case l == nil:
		return "-"
	case l.Relation == find.Between:
		return fmt.Sprintf("%s to %s %s", number(l.Value, l.Unit), number(l.High, l.Unit), l.Unit)
	case l.Relation == find.AtMost:
		return fmt.Sprintf("at most %s %s", number(l.Value, l.Unit), of(l.Value, l.Unit))
	}
	return fmt.Sprintf("at least %s %s", number(l.Value, l.Unit), of(l.Value, l.Unit))
}

// number writes what is counted without decimals, and what is measured with as
// many as its unit deserves; it never prints a negative zero.
func number(v float64, unit string) string {
	decimals := 2
	switch unit {
	case "mm", "kg":
		decimals = 1
	case "fixings", "supports":
		decimals = 0
	}
	return plain(fmt.Sprintf("%.*f", decimals, v))
}

func whole(v float64) string { return plain(fmt.Sprintf("%.0f", v)) }

// plain takes the sign off a zero.
func plain(s string) string {
	if strings.Trim(s, "+-0.") == "" {
		return strings.TrimLeft(s, "+-")
	}
	return s
}
