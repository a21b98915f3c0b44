package cmd

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/check"
)

var explainVerb = verb{"explain", "RULE", "what a rule looks at, and why", func(t *tool, args []string) int {
	o := t.flags("explain")
	if code, ok := t.parse(o, args, 1, "one rule, such as wall-gap"); !ok {
		return code
	}
	r, ok := check.ByID(o.rest[0])
	if !ok {
		var ids []string
		for _, x := range check.All {
			ids = append(ids, x.ID)
		}
		fmt.Fprintf(t.err, "There is no rule %q", o.rest[0])
		if n := model.Nearest(o.rest[0], ids); n != "" {
			fmt.Fprintf(t.err, "; the nearest is %q", n)
		}
		fmt.Fprintf(t.err, ". The rules are:\n")
		for _, x := range check.All {
			fmt.Fprintf(t.err, "  %-18s %s\n", x.ID, x.Title)
		}
		return exitUnread
	}
	fmt.Fprintf(t.out, "%s: %s\n\n%s\n\nBasis: %s\n", r.ID, r.Title, r.Why, r.Basis)
	return exitFine
}}
