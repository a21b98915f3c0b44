package sheet

import (
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
)

// angleSheets gives one sheet per distinct angle; equal ones share it, mirrored
// ones do not.
func angleSheets(m *maker) []page {
	var out []page
	done := map[int]bool{}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Angle != nil }) {
		if !done[p.Mark] {
			done[p.Mark] = true
			out = append(out, m.angleSheet(p)...)
		}
	}
	return out
}

// angleSheet is all that a yard needs to make one bar, on one sheet where that
// is possible: both legs in views that stand exactly below each other, a
// section, the end at a larger scale where the views are small, the holes as a
// table, and what to know.
func (m *maker) angleSheet(p *model.Part) []page {
	a := p.Angle
	hand, _ := m.b.Design.HandOf(p)
	title := strings.TrimSpace(fmt.Sprintf("%d %s", p.Mark, hand)) + "  " + p.ID
	if n := len(m.b.Design.Alike(p)); n > 1 {
		title += fmt.Sprintf(" (%d pieces)", n)
	}
	pages := m.steelPages("angle-"+stem(p.ID), title, m.size == drawing.A4, func(s drawing.Scale) chapter { return m.angleChapter(p, s) })
	for i := range pages {
		b := &pages[i].block
		b.DocumentType = "part drawing, steel"
		b.Material = fmt.Sprintf("S235JR, %s EN 10056-1, raw, burrs off", a.Section.Name)
		b.Mass = m.kg(p.Mass())
		b.Tolerance = fmt.Sprintf("length %s, holes ±%s", m.shorter(), m.length(1))
	}
	return pages
}

// shorter is the tolerance of what goes between fixed ends: never longer.
func (m *maker) shorter() string { return "+0/-" + m.length(1) }

// angleChapter is an angle at a scale.
func (m *maker) angleChapter(p *model.Part, s drawing.Scale) chapter {
	full, half := drawing.Scale{Paper: 1, Real: 1}, drawing.Scale{Paper: 1, Real: 2}
	v := newAngleView(m, p)
	beside := []block{m.pictured(v.section(), topRight, full, half)}
	if small(s) {
		for _, d := range v.ends() {
			beside = append(beside, m.pictured(d, topRight, half))
		}
	}
	beside = append(beside, m.barTable(p).blocks("bar", "Bar", m.lines)...)
	beside = append(beside, m.holeTables(p.Angle)...)
	beside = append(beside, notesBlock("notes", "Notes", m.angleNotes(p)))
	return chapter{pictures: v.legs(s), beside: beside}
}
