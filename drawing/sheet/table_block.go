package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	mostRows                 = 34 // of a table in one block
	headingRoom              = drawing.Small + 2.5
	headingPitch             = drawing.Small * 1.6
	columnGap    unit.Length = 5
)

// blocks sets the table below a heading as blocks for a page: in one part, in
// parts beside each other where it is long, or narrower with broken lines. More
// than mostRows rows make several blocks.
func (t table) blocks(id, heading string, lines drawing.LineGroup) []block {
	var out []block
	for n := 0; len(t.rows) > 0; n++ {
		part := t
		part.rows = t.rows[:min(mostRows, len(t.rows))]
		t.rows = t.rows[len(part.rows):]
		b := block{name: heading, pull: bottomLeft}
		name := fmt.Sprintf("%s-%d", id, n+1)
		part.fixed = part.widths(drawing.Small)
		wide := sum(part.fixed)
		for columns := 1; columns <= 4 && (columns == 1 || len(part.rows) >= 3*columns); columns++ {
			b.forms = append(b.forms, part.split(name, heading, columns, wide, lines))
		}
		for _, room := range []unit.Length{160, 120, 90, 70} {
			if room < wide-1 {
				b.forms = append(b.forms, part.split(name, heading, 1, room, lines))
			}
		}
		out = append(out, b)
	}
	return out
}

// split sets the table in parts beside each other, each no wider than room.
func (t table) split(id, heading string, columns int, room unit.Length, lines drawing.LineGroup) form {
	wide := sum(t.within(room))
	per := (len(t.rows) + columns - 1) / columns
	var parts []table
	var tall unit.Length
	for rows := t.rows; len(rows) > 0; rows = rows[min(per, len(rows)):] {
		part := t
		part.rows = rows[:min(per, len(rows))]
		parts = append(parts, part)
		tall = max(tall, part.height(room))
	}
	w := wide*unit.Length(len(parts)) + columnGap*unit.Length(len(parts)-1)
	heads := []string{heading}
	if title := drawing.Write(geom.Vec{}, heading, drawing.Small, drawing.Left).Strong(); title.Width() > 1.2*w && room < title.Width() {
		heads = drawing.WrapStrong(heading, drawing.Small, w)
	}
	h := tall + headingRoom + unit.Length(len(heads)-1)*headingPitch
	var items []drawing.Item
	for i, l := range heads {
		title := drawing.Write(geom.V(0, h-drawing.Small-unit.Length(i)*headingPitch), l, drawing.Small, drawing.Left).Strong()
		items = append(items, title)
		w = max(w, title.Width())
	}
	for c, part := range parts {
		set, _ := part.draw(geom.V(unit.Length(c)*(wide+columnGap), tall), room, lines)
		items = append(items, set...)
	}
	return form{w: w, h: h, items: []drawing.Item{drawing.Group{ID: id, Title: heading, Items: items}}}
}

// notes sets short paragraphs below a bold heading, wrapped to a width, and
// gives the height that they take.
func notes(at geom.Vec, heading string, paragraphs []string, room unit.Length) ([]drawing.Item, unit.Length) {
	const h, pitch = drawing.Small, drawing.Small * 1.7
	var items []drawing.Item
	y := at.Y - h
	for _, l := range drawing.WrapStrong(heading, h, room) {
		items = append(items, drawing.Write(geom.V(at.X, y), l, h, drawing.Left).Strong())
		y -= pitch
	}
	for _, p := range paragraphs {
		for _, l := range drawing.Wrap(p, h, room) {
			items = append(items, drawing.Write(geom.V(at.X, y), l, h, drawing.Left))
			y -= pitch
		}
	}
	return items, at.Y - y
}

// notesBlock sets paragraphs below a heading, as wide as there is room.
func notesBlock(id, heading string, paragraphs []string) block {
	b := block{name: heading, pull: bottomLeft, notes: true}
	for _, w := range []unit.Length{95, 120, 150, 180, 88, 80, 70, 60} {
		items, h := notes(geom.V(0, 0), heading, paragraphs, w)
		items = drawing.Move(items, geom.V(0, h))
		used := drawing.Bounds(items)
		b.forms = append(b.forms, form{w: used.Max.X, h: h, items: []drawing.Item{drawing.Group{ID: id, Title: heading, Items: items}}})
	}
	return b
}
