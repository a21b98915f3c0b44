package sheet

import (
	"fmt"
	"strings"
	"unicode"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/report"
	"slabwright/model/revision"
)

// Since is an earlier state of a job, against which sheets are drawn: what its
// sheets said, and what changed from it.
type Since struct {
	Build   report.Build
	Changes revision.Comparison
}

// SetSince draws the sheets of a build with the sign of its revision behind
// every dimension that is another one than in an earlier state, tells on the
// cover which sheets changed, and adds a list of what did.
func SetSince(b report.Build, since Since) ([]drawing.Sheet, error) {
	was := newMaker(since.Build)
	was.said = said{}
	was.draft()
	m := newMaker(b)
	m.since, m.before = &since, was.said
	return m.finished(m.draft())
}

// RevisionSign is the triangle with the mark of a revision behind a dimension
// that it changed.
func RevisionSign(mark string) string { return "△" + mark }

// said holds the figures of every picture: all of them, and those of each
// request.
type said map[string]*figures

type figures struct {
	all map[string]bool
	of  []map[string]bool
}

// of is the maker of the pages of one part: pictures of other parts have the
// same names.
func (m *maker) of(part string) *maker {
	own := *m
	own.part = part
	return &own
}

// watch looks at the figures of a picture. While an earlier state is drawn it
// writes them down; after that it puts the sign behind those that are new.
// counted tells whether requests can be told apart by their number.
func (m *maker) watch(p picture, counted bool) func(request int, figure string) string {
	key := m.part + "\x00" + p.id + "\x00" + p.title
	if m.said != nil {
		return func(i int, figure string) string { m.said.add(key, len(p.ask), i, figure); return "" }
	}
	f := m.before[key]
	if f == nil {
		return nil // nothing to compare with: a new picture
	}
	sign := " " + RevisionSign(m.b.Job.Revision)
	return func(i int, figure string) string {
		had := f.all[figure]
		if counted && len(f.of) == len(p.ask) {
			had = f.of[i][figure]
		}
		if had || !strings.ContainsFunc(figure, unicode.IsDigit) {
			return ""
		}
		return sign
	}
}

func (s said) add(key string, requests, i int, figure string) {
	f := s[key]
	if f == nil {
		f = &figures{all: map[string]bool{}, of: make([]map[string]bool, requests)}
		s[key] = f
	}
	f.all[figure] = true
	if i < len(f.of) {
		if f.of[i] == nil {
			f.of[i] = map[string]bool{}
		}
		f.of[i][figure] = true
	}
}

// marked puts the marks of a picture on its plate.
func (m *maker) marked(pl dim.Plate, p picture, counted bool) dim.Plate {
	if m.said != nil || m.before != nil {
		pl.Mark = m.watch(p, counted)
	}
	return pl
}

// changeSheets list what changed since an earlier state: sheet by sheet, then
// walls, parts and parameters. They are the last of the set; the numbers of the
// sheets are known once all are laid out.
func changeSheets(m *maker) []page {
	if m.since == nil {
		return nil
	}
	pages := m.changePages(1)
	for i := range pages {
		pages[i].finish = func(s drawing.Sheet, b drawing.Block) drawing.Sheet {
			if set := m.changePages(s.Of - len(m.others)); i < len(set) {
				s.Items = set[i].sheet.Items
			}
			return drawing.Finish(s, b)
		}
	}
	return pages
}

func (m *maker) changePages(covers int) []page {
	c := m.since.Changes
	f := newListing(m, "changes", m.sayf("Changes since revision %s", c.Old))
	f.notes(m.say("What changed"), m.changes())
	f.notes(m.say("How to read it"), []string{
		m.sayf("%s behind a figure: another one than in revision %s. Throw the old sheets away.", RevisionSign(c.New), c.Old),
	})
	t := table{heads: m.heads("sheet", "title", "what changed"), right: []bool{true, false, false}}
	for _, s := range c.Sheets {
		t.rows = append(t.rows, []string{m.numberOf(s, covers), s.Title, m.changeText(s)})
	}
	if len(t.rows) > 0 {
		f.table(m.say("Sheets to print again"), t, asIs)
	}
	return f.pages(m.say("list of changes"))
}

// numberOf is the number of a sheet in this set, "-" for one that is gone.
func (m *maker) numberOf(s revision.SheetChange, covers int) string {
	for i, p := range m.others {
		if p.sheet.Name == s.Name {
			return fmt.Sprint(i + 1 + covers)
		}
	}
	return "-"
}

func (m *maker) changeText(s revision.SheetChange) string {
	switch s.Fate {
	case revision.Added:
		return m.say("new sheet")
	case revision.Dropped:
		return m.say("dropped")
	}
	if s.Lines {
		return m.say("lines only")
	}
	var out []string
	const most = 5
	for i, f := range s.Figures {
		if i == most {
			out = append(out, m.sayf("%d more", len(s.Figures)-most))
			break
		}
		out = append(out, m.figureText(f))
	}
	return strings.Join(out, "; ")
}

func (m *maker) figureText(f revision.Figure) string {
	old, now := f.Short()
	switch {
	case old == "":
		return m.sayf("new %s", now)
	case now == "":
		return m.sayf("gone %s", old)
	}
	return old + " → " + now
}

// changes says what changed in walls, parts and parameters.
func (m *maker) changes() []string {
	c := m.since.Changes
	var out []string
	for _, w := range c.Room.Walls {
		if w.Moved {
			out = append(out, m.sayf("Wall %s moved: %s and %s into the room at its ends.", m.pass(w.Name), m.length(w.Start.Value), m.length(w.End.Value)))
		}
	}
	for _, p := range c.Params {
		out = append(out, m.sayf("%s: %s, was %s.", p.Name, p.New, p.Old))
	}
	for _, p := range c.Parts {
		switch {
		case p.Fate == revision.Added:
			out = append(out, m.sayf("%s: a new part.", p.ID))
		case p.Fate == revision.Dropped:
			out = append(out, m.sayf("%s: no longer there.", p.ID))
		case p.Fate != revision.Same:
			out = append(out, m.sayf("%s, as it was made before: %s.", p.ID, m.pass(string(p.Fate))))
		}
	}
	return out
}

// sinceText tells on the cover what is new.
func (m *maker) sinceText(f *flow, covers int) {
	if m.since == nil {
		return
	}
	c := m.since.Changes
	var sheets, gone []string
	for _, s := range c.Sheets {
		if n := m.numberOf(s, covers); n != "-" {
			sheets = append(sheets, n)
		} else {
			gone = append(gone, s.Title)
		}
	}
	lines := []string{m.sayf("Sheets that changed: %s. The last sheet lists what.", strings.Join(ranges(sheets), ", "))}
	if len(sheets) == 0 {
		lines = []string{m.say("No sheet changed.")}
	}
	if len(gone) > 0 {
		lines = append(lines, m.sayf("Old sheets that are no more: %s.", strings.Join(gone, ", ")))
	}
	for _, w := range c.Room.Walls {
		if w.Moved {
			lines = append(lines, m.sayf("Wall %s moved: %s and %s into the room at its ends.", m.pass(w.Name), m.length(w.Start.Value), m.length(w.End.Value)))
		}
	}
	f.text("since", m.sayf("Revision %s, against %s", c.New, c.Old), lines...)
}

// ranges joins neighbouring numbers: 3, 4, 5, 8 is 3-5, 8.
func ranges(numbers []string) []string {
	var out []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && after(numbers[j], numbers[j+1]) {
			j++
		}
		if j > i+1 {
			out = append(out, numbers[i]+"-"+numbers[j])
		} else {
			out = append(out, numbers[i:j+1]...)
		}
		i = j + 1
	}
	return out
}

func after(a, b string) bool {
	var x, y int
	fmt.Sscan(a, &x)
	fmt.Sscan(b, &y)
	return y == x+1
}
