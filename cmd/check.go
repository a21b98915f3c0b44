package cmd

import (
	"encoding/json"
	"fmt"

	"slabwright/model/find"
	"slabwright/model/report"
)

var checkVerb = verb{"check", "JOB [--json]", "findings only", func(t *tool, args []string) int {
	o := t.flags("check")
	asJSON := o.set.Bool("json", false, "print the findings as JSON")
	if code, ok := t.parse(o, args, 1, "one job file or folder"); !ok {
		return code
	}
	b, ok := t.whole(o.rest[0])
	if !ok {
		return exitUnread
	}
	if *asJSON {
		data, err := json.MarshalIndent(b.Findings, "", "  ")
		if err != nil {
			panic(err)
		}
		fmt.Fprintf(t.out, "%s\n", data)
		return exitOf(b.Findings)
	}
	fmt.Fprint(t.out, report.Brief(b))
	fmt.Fprintf(t.out, "\nAll findings:\n")
	for _, f := range b.Findings {
		fmt.Fprintf(t.out, "  %-7s %s: %s\n", f.Status, f.Title, f.Why)
	}
	return exitOf(b.Findings)
}}

// exitOf gives the exit code of a list of findings.
func exitOf(list []find.Finding) int {
	switch find.Worst(list) {
	case find.Broken:
		return exitOurs
	case find.Fail, find.Unknown:
		return exitFails
	}
	return exitFine
}
