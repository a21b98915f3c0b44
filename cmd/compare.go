package cmd

import (
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/sheet"
	"slabwright/model/report"
	"slabwright/model/revision"
)

var compareVerb = verb{"compare", "OLD NEW [--json]", "what a new survey or a changed parameter does to every part", func(t *tool, args []string) int {
	o := t.flags("compare")
	asJSON := o.set.Bool("json", false, "print the comparison as JSON")
	if code, ok := t.parse(o, args, 2, "two job files or folders, the old one first"); !ok {
		return code
	}
	old, ok := t.whole(o.rest[0])
	if !ok {
		return exitUnread
	}
	now, ok := t.whole(o.rest[1])
	if !ok {
		return exitUnread
	}
	c, code := t.compared(old, now)
	if code != exitFine {
		return code
	}
	if *asJSON {
		data, err := c.JSON()
		if err != nil {
			panic(err)
		}
		fmt.Fprintf(t.out, "%s\n", data)
	} else {
		fmt.Fprint(t.out, c.Text())
	}
	return exitOf(now.Findings)
}}

// compared holds two builds against each other, sheets included.
func (t *tool) compared(old, now report.Build) (revision.Comparison, int) {
	a, b := t.state(old), t.state(now)
	c, err := revision.Compare(a, b)
	if err != nil {
		fmt.Fprintf(t.err, "%s:%d: %v. Give two jobs of the same preset.\n", now.Job.Pos.File, now.Job.Pos.Line, err)
		return c, exitUnread
	}
	return c, exitFine
}

// state is a build as package revision looks at it.
func (t *tool) state(b report.Build) revision.State {
	s := revision.State{Job: b.Job, Room: b.Room, Design: b.Design, Findings: b.Findings}
	for _, p := range t.presets {
		if p.Name == b.Job.Preset {
			s.Preset = p
		}
	}
	sheets, err := sheet.Set(b)
	if err != nil {
		panic(err)
	}
	for _, x := range sheets {
		if !strings.HasSuffix(x.Name, "-cover") {
			s.Sheets = append(s.Sheets, readable(x))
		}
	}
	return s
}

// readable is what stands on a sheet but for its frame and title block.
func readable(s drawing.Sheet) revision.Sheet {
	_, name, _ := strings.Cut(s.Name, "-")
	out := revision.Sheet{Name: name, Title: s.Title, Number: s.Number}
	for _, it := range s.Items {
		g, ok := it.(drawing.Group)
		if !ok || strings.HasPrefix(g.ID, "sheet-") {
			continue
		}
		texts := drawing.Texts(g.Items)
		out.Groups = append(out.Groups, revision.Group{ID: g.ID, Texts: texts, Drawn: drawing.DumpItems(g.Items)})
	}
	return out
}
