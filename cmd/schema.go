package cmd

import "slabwright/model/job"

var schemaVerb = verb{"schema", "", "the JSON Schema of a job file, for editors", func(t *tool, args []string) int {
	o := t.flags("schema")
	if code, ok := t.parse(o, args, 0, "no arguments"); !ok {
		return code
	}
	if _, err := t.out.Write(job.Schema(t.presets)); err != nil {
		return exitOurs
	}
	return exitFine
}}
