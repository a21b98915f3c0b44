package cmd

import (
	"fmt"

	"slabwright/model/report"
)

var surveyVerb = verb{"survey", "JOB [--json]", "the adjusted room, how the readings agree, what to measure next", func(t *tool, args []string) int {
	o := t.flags("survey")
	asJSON := o.set.Bool("json", false, "print the room as JSON")
	if code, ok := t.parse(o, args, 1, "one job file or folder"); !ok {
		return code
	}
	j, ok := t.load(o.rest[0])
	if !ok {
		return exitUnread
	}
	r, ok := t.room(j)
	if !ok {
		return exitUnread
	}
	if *asJSON {
		data, err := report.RoomJSON(r)
		if err != nil {
			panic(err)
		}
		fmt.Fprintf(t.out, "%s\n", data)
	} else {
		fmt.Fprint(t.out, report.RoomText(r))
	}
	if !r.Survey.Settled() {
		return exitFails
	}
	return exitFine
}}
