// Package job reads job files: YAML in, a model.Job and a list of mistakes out.
//
// One description of every section and key (the files describe_*.go) is both
// the reader and the JSON Schema that editors use, so the two cannot drift
// apart. Reading does not stop at the first mistake: all come back, each with
// its line and column, what was read, what was expected and how to mend it.
package job
