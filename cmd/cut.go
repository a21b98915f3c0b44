package cmd

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"slabwright/model/calc/saw"
	"slabwright/model/cut"
)

var cutVerb = verb{"cut", "INSTANCE.json [--json]", "where to saw: a bare cutting instance", func(t *tool, args []string) int {
	o := t.flags("cut")
	asJSON := o.set.Bool("json", false, "print the plan as JSON")
	steps := o.set.Int("steps", saw.Usual, "how much is searched; the same steps give the same plan")
	seconds := o.set.Float64("seconds", 0, "stop after so many seconds with the best plan so far; 0: no limit")
	if code, ok := t.parse(o, args, 1, "one instance"); !ok {
		return code
	}
	file := o.rest[0]
	data, err := os.ReadFile(file)
	if err != nil {
		fmt.Fprintf(t.err, "%s: cannot be read: %v\n", file, err)
		return exitUnread
	}
	instance, mistakes := cut.ReadInstance(filepath.ToSlash(file), data)
	for _, m := range mistakes {
		fmt.Fprintln(t.err, m)
	}
	if len(mistakes) > 0 {
		return exitUnread
	}
	s := instance.Solve(saw.Effort{Steps: *steps, Progress: t.searching(*seconds)})
	if *asJSON {
		fmt.Fprintf(t.out, "%s", s.JSON())
	} else {
		fmt.Fprint(t.out, s.Text())
	}
	if !s.Found() {
		return exitFails
	}
	return exitFine
}}

// searching tells of every better plan or bound, and stops a search when its time
// is over.
func (t *tool) searching(seconds float64) func(saw.Progress) bool {
	start := time.Now()
	var last saw.Progress
	return func(p saw.Progress) bool {
		if p.Found && (p.Objective != last.Objective || p.Bound != last.Bound) {
			fmt.Fprintf(t.err, "%6.2f s  have %g, bound %g\n", time.Since(start).Seconds(), p.Objective, p.Bound)
		}
		last = p
		return seconds <= 0 || time.Since(start).Seconds() < seconds
	}
}
