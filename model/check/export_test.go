package check

import (
	"slices"

	"slabwright/model/find"
)

// statics are the rules that solve plates, which takes a tenth of a second and
// more.
var statics = []string{"deflection", "bending-strength", "bearing-pressure", "wobble", "lift", "anchor-strength", "angle-strength", "screw-strength", "rod-strength", "groove-strength", "joint-bearing"}

// RunCheap runs every rule but those on statics, unless it is one of those that
// is asked for: then it runs that one alone.
func RunCheap(s Site, asked string) []find.Finding {
	var rules []Rule
	for _, r := range All {
		if r.ID == asked || !slices.Contains(statics, asked) && !slices.Contains(statics, r.ID) {
			rules = append(rules, r)
		}
	}
	return run(s, rules)
}

// RunOnly runs the rules of these names.
func RunOnly(s Site, ids []string) []find.Finding {
	var rules []Rule
	for _, r := range All {
		if slices.Contains(ids, r.ID) {
			rules = append(rules, r)
		}
	}
	return run(s, rules)
}

// Bare is a site whose rules do not look for what would help a slab.
func Bare(s Site) Site {
	s.bare = true
	return s
}
