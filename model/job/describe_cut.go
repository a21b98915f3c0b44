package job

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/unit"
)

// revisionForm describes one state of the job.
func revisionForm() form[model.Revision] {
	type R = model.Revision
	return inner(record("a revision", []field[R]{
		need("mark", "its letter or number, as it stood in the key revision", text(), func(v *R) *string { return &v.Mark }),
		may("on", "day on which it was given out", date(), func(v *R) *string { return &v.On }),
		need("what", "what changed, in a few words", text(), func(v *R) *string { return &v.What }),
	}, func(r *reader, e *entry[R]) { e.v.Pos = r.pos(e.at[""]) }))
}

// latest takes the revision of the job from its history, and holds the two
// against each other where both are told.
func latest(r *reader, e *entry[draft]) {
	j := &e.v.job
	n := len(j.History)
	switch {
	case n == 0 || !e.at.has("revisions"):
	case !e.gave("revision"):
		j.Revision = j.History[n-1].Mark
	case e.at.has("revision") && j.Revision != j.History[n-1].Mark:
		r.wrong(e.at["revision"], fmt.Sprintf("revision %s, but the last of the revisions is %s", quoted(j.Revision), quoted(j.History[n-1].Mark)),
			"the same mark in both places, the latest revision last", "")
	}
}

// cutForm describes a part that is already cut.
func cutForm() form[model.CutPart] {
	type C = model.CutPart
	places := func(what string) form[[]unit.Length] { return list(what, length(0, 20000), 0, 200) }
	return inner(record("a part that is already cut", []field[C]{
		need("part", "its name, as it stands on the sheets", text(), func(c *C) *string { return &c.Part }),
		need("on", "day on which it was cut", date(), func(c *C) *string { return &c.On }),
		may("sizes", "of a slab, measured on its top face from corner to corner: every edge, and a line between opposite corners; one line more checks the others", list("sizes", cutSizeForm(), 1, 100), func(c *C) *[]model.CutSize { return &c.Sizes }),
		may("length", "of an angle, from end to end", length(10, 20000), func(c *C) *unit.Length { return &c.Length }),
		may("wall_holes", "holes of an angle's wall leg that are drilled, each from the left end as seen from the room; drilled as drawn if nothing is said", places("places"), func(c *C) *[]unit.Length { return &c.WallHoles }),
		may("screw_holes", "the same for the leg that carries the slab", places("places"), func(c *C) *[]unit.Length { return &c.ScrewHoles }),
	}, func(r *reader, e *entry[C]) {
		e.v.Pos = r.pos(e.at[""])
		if !e.gave("sizes", "length") {
			r.wrong(e.at[""], "a cut part without a size", "sizes of a slab, or the length of an angle", "")
		}
	}, schema{"anyOf": []schema{{"required": []string{"sizes"}}, {"required": []string{"length"}}}}))
}

func cutSizeForm() form[model.CutSize] {
	type S = model.CutSize
	return inner(record("a size", []field[S]{
		may("edge", "name of the edge, as in the table of edges on the part's sheet", text(), func(s *S) *string { return &s.Edge }),
		mayPut("between", "two corners by their numbers on the part's sheet", chain(2), func(s *S, names []string) {
			if len(names) == 2 {
				s.From, s.To = names[0], names[1]
			}
		}),
		need("is", "what the tape said", length(10, 20000), func(s *S) *unit.Length { return &s.Length }),
	}, func(r *reader, e *entry[S]) {
		e.v.Pos = r.pos(e.at[""])
		if e.gave("edge") == e.gave("between") {
			r.wrong(e.at[""], "a size that does not say what was measured", "either the key edge or the key between", "")
		}
	}, schema{"oneOf": []schema{{"required": []string{"edge"}}, {"required": []string{"between"}}}}))
}
