// Package revision tells what a second survey or a changed parameter does to a
// desk: which walls moved and which are the same within the tape, what becomes
// of every part, which sizes, sheets and findings changed. Everything is a pure
// function of two states of a job.
package revision
