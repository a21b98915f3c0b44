package cmd

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"slabwright/drawing/sheet"
	"slabwright/model/report"
)

var buildVerb = verb{"build", "JOB [-o OUT] [--since OLD]", "everything: drawings, models, lists, report", func(t *tool, args []string) int {
	o := t.flags("build")
	out := o.set.String("o", "", "folder to write to; out/<name of the job's folder> when not given")
	since := o.set.String("since", "", "job file or folder as it was before: sheets get the sign of the revision behind what changed")
	quiet := o.set.Bool("quiet", false, "print nothing but mistakes")
	asJSON := o.set.Bool("json", false, "print the verdict as JSON")
	if code, ok := t.parse(o, args, 1, "one job file or folder"); !ok {
		return code
	}
	b, ok := t.whole(o.rest[0])
	if !ok {
		return exitUnread
	}
	if *since != "" {
		old, ok := t.whole(*since)
		if !ok {
			return exitUnread
		}
		c, code := t.compared(old, b)
		if code != exitFine {
			return code
		}
		t.since = &sheet.Since{Build: old, Changes: c}
	}
	if *out == "" {
		*out = filepath.Join("out", jobName(o.rest[0]))
	}
	files, err := t.files(b, *quiet)
	if err != nil {
		panic(err) // every input has been read: what breaks from here on is ours
	}
	if err := files.write(*out); err != nil {
		fmt.Fprintf(t.err, "%v\n", err)
		return exitUnread
	}
	code := exitOf(b.Findings)
	switch {
	case *asJSON:
		data, err := json.Marshal(map[string]any{"out": *out, "status": report.Worst(b.Findings), "sentence": report.Sentence(b.Findings), "exit": code})
		if err != nil {
			panic(err)
		}
		fmt.Fprintf(t.out, "%s\n", data)
	case !*quiet:
		fmt.Fprint(t.out, report.Brief(b))
		fmt.Fprintf(t.out, "\nWritten to %s: drawings.pdf, sheets, models, lists, report.md, report.json\n", *out)
	}
	return code
}}

// jobName is the name of the job's folder, or of the file without its ending.
func jobName(path string) string {
	clean := filepath.Clean(path)
	if abs, err := filepath.Abs(clean); err == nil {
		clean = abs
	}
	if base := filepath.Base(clean); base == "job.yaml" {
		return filepath.Base(filepath.Dir(clean))
	}
	return strings.TrimSuffix(filepath.Base(clean), filepath.Ext(clean))
}

// progress tells what is being made once a build has taken longer than a
// second.
func (t *tool) progress(quiet bool) func(string) {
	start := time.Now()
	var mu sync.Mutex
	return func(what string) {
		mu.Lock()
		defer mu.Unlock()
		if time.Since(start) > time.Second {
			t.say(quiet, "%s ...", what)
		}
	}
}
