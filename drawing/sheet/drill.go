package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// drillSheets gives one sheet per wall that gets holes, to be read on a ladder:
// whole millimetres in large figures.
func drillSheets(m *maker) []page {
	k := m.whole()
	var out []page
	for _, w := range m.b.Room.Walls {
		if holes := m.wallHoles(w); len(holes) > 0 {
			out = append(out, k.drillSheet(w, holes)...)
		}
	}
	return out
}

// whole is a maker that writes whole millimetres.
func (m *maker) whole() *maker {
	k := *m
	switch m.style.Unit {
	case "", "mm":
		k.style.Places = -1
	case "cm":
		k.style.Places = 1
	}
	return &k
}

func (m *maker) drillSheet(w *model.Wall, holes []wallHole) []page {
	d := newDrilling(m, w, holes)
	var beside []block
	for _, b := range d.table().blocks("wall-holes", m.say("Holes in this wall"), m.lines) {
		beside = append(beside, enlarged(unbroken(b), ladderText))
	}
	if t := d.forces(); len(t.rows) > 0 {
		beside = append(beside, t.blocks("wall-forces", m.say("What the anchors take at most: design loads in kN"), m.lines)...)
	}
	beside = append(beside, notesBlock("wall-notes", m.say("Before drilling"), d.notes()))
	lay := func() []page {
		return m.steelPages("drilling-"+stem(w.Name), m.sayf("Drilling, wall %s", m.pass(w.Name)), m.size.Name == drawing.A4.Name || m.size.Name == drawing.A3.Name, func(s drawing.Scale) chapter {
			return chapter{pictures: []picture{d.elevation(s)}, beside: beside}
		})
	}
	pages := lay()
	small := func(real int) bool {
		least := drawing.Scale{Paper: 1, Real: real}
		return !slices.ContainsFunc(drawing.Scales, func(s drawing.Scale) bool {
			return s.String() == pages[0].sheet.Scale && larger(s, least) == s
		})
	}
	if small(20) || crowded(pages) { // a high wall on small paper, or many parts on it
		d.figures = drawing.Standard
		pages = lay()
	}
	if small(20) || crowded(pages) {
		d.brief = true
		pages = lay()
	}
	if small(50) || crowded(pages) {
		d.terse, d.figures = true, drawing.Small
		pages = lay()
	}
	for i := range pages {
		b := &pages[i].block
		b.DocumentType = m.say("drilling plan")
		b.Material = m.sayf("wall: %s", m.pass(string(w.Make)))
		b.Tolerance = m.sayf("holes ±%s", m.within(1))
	}
	return pages
}

// crowded tells whether there is lettering that cannot be read.
func crowded(pages []page) bool {
	return slices.ContainsFunc(pages, func(p page) bool { return len(drawing.Overlaps(p.sheet)) > 0 })
}

// ladderText is how much larger than usual the tables of drilling sheets are:
// figures of 3.5 mm where they find room.
const ladderText = 1.4

// unbroken keeps the forms of a table in which no cell is broken into lines:
// none is narrower than the first.
func unbroken(b block) block {
	b.forms = slices.DeleteFunc(slices.Clone(b.forms), func(f form) bool { return f.w < b.forms[0].w-1 })
	return b
}

// enlarged gives a block of texts and lines larger where there is room, and as
// it is where there is none.
func enlarged(b block, by float64) block {
	out := b
	out.forms = nil
	for _, f := range b.forms {
		out.forms = append(out.forms, form{w: f.w * unit.Length(by), h: f.h * unit.Length(by), items: grown(f.items, by)})
	}
	out.forms = append(out.forms, b.forms...)
	return out
}

// grown gives texts and lines at another size; widths of lines stay.

func grown(items []drawing.Item, by float64) []drawing.Item {
	out := make([]drawing.Item, 0, len(items))
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Group:
			x.Items = grown(x.Items, by)
			out = append(out, x)
		case drawing.Text:
			x.At, x.Height = x.At.Mul(by), x.Height*unit.Length(by)
			out = append(out, x)
		case drawing.Polyline:
			x.Points = mapped(x.Points, func(v geom.Vec) geom.Vec { return v.Mul(by) })
			out = append(out, x)
		default:
			panic(fmt.Sprintf("sheet: a table with a %T cannot be enlarged", it))
		}
	}
	return out
}
