// Package sheet makes the sheets of a job. One kind of sheet is one file; it
// says what is seen and what is dimensioned. Where things stand on the paper is
// found by the layout, so that a new kind inherits scale, frame and title block.
package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/words"
	"slabwright/model"
	"slabwright/model/atonce"
	"slabwright/model/find"
	"slabwright/model/report"
	"slabwright/model/unit"
)

// page is one sheet before the set is numbered.
type page struct {
	sheet drawing.Sheet
	block drawing.Block
	// finish gives the sheet its frame and title; nil for those of the house.
	finish func(drawing.Sheet, drawing.Block) drawing.Sheet
}

// family is one kind of sheet. It gives as many pages as the design calls for.
type family struct {
	pages func(*maker) []page
	looks bool // at the other pages of the set, which must be there before it
}

// kinds lists the kinds of sheets in the order of the set; the cover, which comes
// first, is drawn last.
var kinds = []family{
	{coverSheets, true}, {surveySheets, false}, {planSheets, false}, {elevationSheets, false}, {sectionSheets, false}, {kneeSheets, false}, {movementSheets, false}, {loadSheets, false}, {slabSheets, false}, {channelSheets, false}, {fitSheets, false}, {angleSheets, false}, {cleatSheets, false}, {drillSheets, false}, {rollOutSheets, false}, {carryingSheets, false}, {mountingSheets, false}, {cableSheets, false}, {cuttingSheets, false}, {labelSheets, false}, {listSheets, true}, {templateSheets, false},
	{changeSheets, true},
}

// Set draws all sheets of a build, numbered, framed and stamped.
func Set(b report.Build) ([]drawing.Sheet, error) {
	m := newMaker(b)
	return m.finished(m.draft())
}

// draft lays out all pages of a set: the kinds that do not look at others at once,
// unless they write down what they say.
func (m *maker) draft() []page {
	sets := make([][]page, len(kinds))
	draw := func(i int) {
		if !kinds[i].looks {
			sets[i] = kinds[i].pages(m)
		}
	}
	if m.said == nil {
		atonce.Each(len(kinds), draw)
	} else {
		for i := range kinds {
			draw(i)
		}
	}
	for i, k := range kinds {
		if i > 0 && k.looks {
			m.others = slices.Concat(sets[1:i]...)
			sets[i] = k.pages(m)
		}
	}
	m.others = slices.Concat(sets[1:]...)
	return append(kinds[0].pages(m), m.others...)
}

// finished numbers, frames and stamps the pages of a set.
func (m *maker) finished(pages []page) ([]drawing.Sheet, error) {
	out, faults := make([]drawing.Sheet, len(pages)), make([]error, len(pages))
	atonce.Each(len(pages), func(i int) {
		p := pages[i]
		s := p.sheet
		s.Number, s.Of = i+1, len(pages)
		s.Name = fmt.Sprintf("%02d-%s", s.Number, s.Name)
		if m.stamp != "" {
			s.Stamp = m.stamp
		}
		finish := drawing.Finish
		if p.finish != nil {
			finish = p.finish
		}
		s = finish(s, m.block(p.block, s.Number))
		s, _ = drawing.Readable(s)
		if m.b.Job.Show.Ink == "black" {
			s = drawing.InBlack(s)
		}
		if err := drawing.Sound(s); err != nil {
			faults[i] = fmt.Errorf("sheet %s: %w", s.Name, err)
		}
		out[i] = s
	})
	if err := cmp.Or(faults...); err != nil {
		return nil, err
	}
	return out, nil
}

// maker is what all kinds of sheets work with.
type maker struct {
	b      report.Build
	size   drawing.Size
	style  unit.Style
	lines  drawing.LineGroup
	stands bool // the job says how sheets stand: none is turned
	stamp  string
	lang   *words.Language
	others []page
	part   string // the one whose pages are drawn
	said   said   // figures as they are drawn, of an earlier state
	before said   // those of the earlier state
	since  *Since
}

func newMaker(b report.Build) *maker {
	m := &maker{b: b, size: drawing.A3, lines: drawing.Normal, lang: words.Of(b.Job.Show.Language)}
	switch b.Job.Show.Paper {
	case "A4":
		m.size, m.lines = drawing.A4, drawing.Dense
	case "A2":
		m.size = drawing.A2
	case "A1":
		m.size = drawing.A1
	}
	if lying := m.size.Width > m.size.Height; b.Job.Show.Stand == "upright" && lying || b.Job.Show.Stand == "lying" && !lying {
		m.size = m.size.Turned()
	}
	m.stands = b.Job.Show.Stand != ""
	m.size.Revisions = min(len(b.Job.History), drawing.MostRevisions)
	m.style = b.Job.Show.Style()
	if w := find.Worst(b.Findings); w == find.Fail || w == find.Broken {
		m.stamp = m.say("NOT FOR THE SHOP")
	}
	return m
}

// block fills the fields that are the same on every sheet.
func (m *maker) block(b drawing.Block, number int) drawing.Block {
	j := m.b.Job
	b.Owner, b.Creator = j.Title, "slabwright "+report.Version
	b.Number = fmt.Sprintf("%s-%02d", initials(j.Title), number)
	b.Revision, b.Issued, b.Surveyed = j.Revision, j.Surveyed, j.Surveyed
	b.Language = m.lang
	for _, h := range j.History {
		b.History = append(b.History, drawing.Revision{Mark: h.Mark, On: h.On, What: h.What})
		b.Issued = h.On
	}
	if b.Unit = m.style.Unit; b.Unit == "in" {
		b.Unit = m.say("inches")
	}
	if b.Tolerance == "" {
		b.Tolerance = m.sayf("wood ±%s, thickness ±%s", m.within(0.5), m.within(0.3))
	}
	if b.Status == "" {
		b.Status = m.say("no check fails; see report.md")
		if find.Worst(m.b.Findings) == find.Unknown {
			b.Status = m.say("a check lacks an input; see report.md")
		}
	}
	if j.Show.Projection == "third" {
		b.Projection = drawing.ThirdAngle
	}
	return b
}

// initials makes a short drawing number of a title.
func initials(title string) string {
	var b strings.Builder
	words := strings.Fields(title)
	for _, w := range words[:min(len(words), 6)] {
		b.WriteString(strings.ToUpper(string([]rune(w)[:1])))
	}
	if b.Len() == 0 {
		return "S"
	}
	return b.String()
}

// new starts a page.
func (m *maker) new(name, title string) page {
	return page{sheet: drawing.Sheet{Name: name, Title: title, Size: m.size}}
}

// length writes a length as the user does.
func (m *maker) length(l unit.Length) string { return m.style.Length(l) }

// fine writes a length too small for the fractions of an inch: inch jobs get it
// in millimetres.
func (m *maker) fine(l unit.Length) string {
	if m.style.Unit == "in" {
		return unit.Style{Decimal: m.style.Decimal}.Length(l) + " mm"
	}
	return m.length(l)
}

// kg writes a mass to a tenth of a kilogram.
func (m *maker) kg(x unit.Mass) string { return m.style.Number(float64(x), 1) + " kg" }

// stem makes the end of a sheet's file name.
func stem(id string) string {
	return strings.Trim(strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, id), "-")
}

// parts gives the parts of the wanted kinds that have been built.
func (m *maker) parts(want func(*model.Part) bool) []*model.Part {
	var out []*model.Part
	for _, p := range m.b.Design.Parts {
		if want(p) && sound(p) {
			out = append(out, p)
		}
	}
	return out
}

// distinct gives the parts of the wanted kinds that have been built, one of each
// mark.
func (m *maker) distinct(want func(*model.Part) bool) []*model.Part {
	done := map[int]bool{}
	return m.parts(func(p *model.Part) bool {
		if !want(p) || !sound(p) || done[p.Mark] {
			return false
		}
		done[p.Mark] = true
		return true
	})
}

// alreadyCut stamps the sheets of a part that is cut already, and names the day.
func (m *maker) alreadyCut(pages []page, p *model.Part) {
	if p.Cut == nil {
		return
	}
	for i := range pages {
		s := &pages[i].sheet
		s.Stamp = m.sayf("CUT ON %s: DO NOT CUT", p.Cut.On)
		s.Title += m.say(", already cut")
	}
}

func sound(p *model.Part) bool {
	for _, b := range p.Bodies {
		if b.Solid.Err() != nil {
			return false
		}
	}
	return len(p.Bodies) > 0
}
