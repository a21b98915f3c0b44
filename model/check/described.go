package check

import (
	"fmt"

	"slabwright/model/find"
)

var describedRule = Rule{
	ID: "description", Title: "Every part can be built as described",
	Basis: "the description of the desk",
	Why:   "A part that cannot be built is missing from every sheet, list and model, and no other rule can look at it.",
	Run: func(s Site) []find.Finding {
		out := s.Design.Faults()
		if len(out) == 0 {
			out = append(out, find.Finding{Status: find.Pass, Why: fmt.Sprintf("All %s could be built as described.", count(len(s.Design.Parts), "part", "parts"))})
		}
		return out
	},
}
