// Package stock holds tables of what is bought: timber species, steel angles,
// screws and wall anchors. Every row names its source and how far that source
// can be trusted. The paid standards themselves were not read.
package stock

// Status tells how a number came into the tables.
type Status string

// The ways a number came in. A remembered value may inform, it may not be the
// only support of a check.
const (
	Found    Status = "found"    // read in a public reproduction of the source
	Partly   Status = "partly"   // some of the row found, the rest from memory
	Memory   Status = "memory"   // recalled, source not seen
	Practice Status = "practice" // common practice, no source
)
