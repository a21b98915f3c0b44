// Package cmd is the command line: one verb per file, the line from a job file
// to a desk, and all reading and writing of files. A program of one's own with
// one's own designs is ten lines:
//
//	func main() {
//		os.Exit(cmd.Main(os.Args[1:], append(presets.All(), mine)...))
//	}
package cmd

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"

	"slabwright/drawing/sheet"
	"slabwright/model"
	"slabwright/model/atonce"
	"slabwright/model/report"
)

// Exit codes.
const (
	exitFine   = 0 // nothing failed
	exitFails  = 1 // a finding failed, or a needed input is missing
	exitUnread = 2 // the job cannot be read; nothing was written
	exitOurs   = 3 // a fault of slabwright
)

// tool is one run of the command line.
type tool struct {
	out, err io.Writer
	presets  []model.Preset
	since    *sheet.Since // an earlier state against which sheets are drawn
}

// verb is one command.
type verb struct {
	name  string
	takes string // arguments as shown in the help
	help  string
	run   func(*tool, []string) int
}

// verbs lists the commands in the order of the help.
func verbs() []verb {
	return []verb{newVerb, buildVerb, checkVerb, surveyVerb, compareVerb, cutVerb, presetsVerb, explainVerb, schemaVerb}
}

// garbage is how much may pile up before it is cleared away, in percent of what is
// in use: a build lives for seconds, and a tenth of them went into clearing.
const garbage = 200

// Main runs the command line with the given presets and gives the exit code.
func Main(args []string, presets ...model.Preset) int {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbage)
	}
	return (&tool{out: os.Stdout, err: os.Stderr, presets: presets}).run(args)
}

func (t *tool) run(args []string) (code int) {
	defer func() {
		if p := recover(); p != nil {
			stack := debug.Stack()
			if deep, ok := p.(atonce.Panic); ok {
				stack = deep.Stack
			}
			fmt.Fprintf(t.err, "slabwright %s broke: %v\n%s\nThe fault is ours. Please send us these lines and the job file; nothing that was already built has been touched.\n", report.Version, p, stack)
			code = exitOurs
		}
	}()
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		t.help(t.out)
		return exitFine
	}
	var names []string
	for _, v := range verbs() {
		if v.name == args[0] {
			return v.run(t, args[1:])
		}
		names = append(names, v.name)
	}
	fmt.Fprintf(t.err, "There is no command %q", args[0])
	if n := model.Nearest(args[0], names); n != "" {
		fmt.Fprintf(t.err, "; the nearest is %q", n)
	}
	fmt.Fprintf(t.err, ". `slabwright help` lists them.\n")
	return exitUnread
}

func (t *tool) help(w io.Writer) {
	fmt.Fprintf(w, "slabwright %s: from tape readings to a worktop that fits.\n\n", report.Version)
	for _, v := range verbs() {
		fmt.Fprintf(w, "  slabwright %-36s %s\n", strings.TrimSpace(v.name+" "+v.takes), v.help)
	}
	fmt.Fprintf(w, "\nJOB is a job file, or a folder with job.yaml in it.\nExit: 0 nothing failed, 1 something fails or is unknown, 2 the job cannot be read, 3 a fault of ours.\n")
}

// say prints one line of progress.
func (t *tool) say(quiet bool, format string, args ...any) {
	if !quiet {
		fmt.Fprintf(t.err, format+"\n", args...)
	}
}
