package check

import (
	"fmt"
	"slices"

	"slabwright/model/find"
	"slabwright/model/sit"
)

// eachSitter gives the findings of a rule for everybody at a seat.
func (s Site) eachSitter(judge func(*sit.Sitter) []find.Finding) []find.Finding {
	var out []find.Finding
	for _, x := range sit.Of(s.Design, s.Job.Wiring) {
		out = append(out, judge(x)...)
	}
	return orNone(out, "Nobody is said to sit here.")
}

// about starts a finding for somebody at a seat.
func about(what string, x *sit.Sitter) find.Finding {
	return find.Finding{Title: fmt.Sprintf("%s %s at %s", what, x.Person.Name, x.Seat.Name), Parts: []string{x.Slab.ID}, Line: x.Seat.Line}
}

// rests tells what a size rests on.
func rests(what string, x *sit.Sitter, i int) find.Assumption {
	e := x.Sizes[i]
	text := fmt.Sprintf("%s %.0f mm, barefoot (%s)", what, float64(e.Ample()), e.Basis)
	if e.SD > 0 {
		text = fmt.Sprintf("%s %.0f mm, barefoot (%s; sd %.0f)", what, float64(e.Mean), e.Basis, float64(e.SD))
	}
	return find.Assumption{What: text, Source: e.Source}
}

// involve adds a part or a wall to a finding, once.
func involve(f *find.Finding, part, wall string) {
	if part != "" && !slices.Contains(f.Parts, part) {
		f.Parts = append(f.Parts, part)
	}
	if wall != "" && !slices.Contains(f.Walls, wall) {
		f.Walls = append(f.Walls, wall)
	}
}

// nobodyTold says of somebody who is not described whom a size serves.
func nobodyTold(x *sit.Sitter) string {
	if x.Told {
		return ""
	}
	return " Nobody is described who will sit here: room is reckoned for the 95th percentile of the people measured, reach for the 5th."
}
