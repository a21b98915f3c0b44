package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
)

// angleSheets gives one sheet per distinct angle; equal ones share it, mirrored
// ones do not.
func angleSheets(m *maker) []page {
	var out []page
	for _, p := range m.distinct(func(p *model.Part) bool { return p.Angle != nil }) {
		out = append(out, m.of(p.ID).angleSheet(p)...)
	}
	return out
}

// angleSheet is all that a yard needs to make one bar, on one sheet where that
// is possible: both legs in views that stand exactly below each other, a
// section, the end at a larger scale where the views are small, the holes as a
// table, and what to know.
func (m *maker) angleSheet(p *model.Part) []page {
	hand, _ := m.b.Design.HandOf(p)
	mark := strings.TrimSpace(fmt.Sprintf("%d %s", p.Mark, m.pass(string(hand))))
	return m.barSheet(p, "angle-"+stem(p.ID), mark, m.say("part drawing, steel"), m.sayf("S235JR, %s EN 10056-1, raw, burrs off", p.Angle.Section.Name), m.angleChapter(p))
}

// barSheet is the sheet of an angle or a cleat of some document type and material.
func (m *maker) barSheet(p *model.Part, name, mark, document, material string, at func(drawing.Scale) chapter) []page {
	title := mark + "  " + m.pass(p.ID)
	if n := len(m.b.Design.Alike(p)); n > 1 {
		title += m.sayf(" (%d pieces)", n)
	}
	pages := m.steelPages(name, title, m.size.Name == drawing.A4.Name, at)
	for i := range pages {
		b := &pages[i].block
		b.DocumentType, b.Material, b.Mass = document, material, m.kg(p.Mass())
		b.Tolerance = m.sayf("length %s, holes ±%s", m.shorter(), m.within(1))
		if p.Cut != nil {
			b.Tolerance = m.sayf("holes ±%s", m.within(1))
		}
	}
	m.alreadyCut(pages, p)
	return pages
}

// shorter is the tolerance of what goes between fixed ends: never longer.
func (m *maker) shorter() string { return "+0/-" + m.within(1) }

// sawn is the tolerance of a bar's length: none where it is cut already.
func (m *maker) sawn(p *model.Part) string {
	if p.Cut != nil {
		return ""
	}
	return m.shorter()
}

// angleChapter gives an angle at a scale.
func (m *maker) angleChapter(p *model.Part) func(drawing.Scale) chapter {
	full, half := drawing.Scale{Paper: 1, Real: 1}, drawing.Scale{Paper: 1, Real: 2}
	v := newBarView(m, p)
	section := []block{m.pictured(v.section(), topRight, full, half)}
	var details []block
	for _, d := range v.ends() {
		details = append(details, m.pictured(d, topRight, half))
	}
	texts := m.barTable(p).blocks("bar", m.say("Bar"), m.lines)
	texts = append(texts, m.holeTables(p)...)
	texts = append(texts, notesBlock("notes", m.say("Notes"), m.angleNotes(p)))
	return func(s drawing.Scale) chapter {
		if small(s) {
			return chapter{pictures: v.legs(s), beside: slices.Concat(section, details, texts)}
		}
		return chapter{pictures: v.legs(s), beside: slices.Concat(section, texts)}
	}
}
