package sheet

import (
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// table is rows of text under a heading. Right columns are for figures.
type table struct {
	heads []string
	right []bool
	rows  [][]string
	fixed []unit.Length // widths of the columns; nil: what the texts ask for
}

const (
	rowHeight unit.Length = 5.2
	cellInset unit.Length = 1.4
)

// widths are the column widths that the texts ask for.
func (t table) widths(h unit.Length) []unit.Length {
	if t.fixed != nil {
		return append([]unit.Length(nil), t.fixed...)
	}
	w := make([]unit.Length, len(t.heads))
	for i, s := range t.heads {
		w[i] = drawing.Write(geom.Vec{}, s, h, drawing.Left).Strong().Width() + 2*cellInset + 0.01
	}
	for _, r := range t.rows {
		for i, s := range r {
			w[i] = max(w[i], drawing.TextWidth(s, h)+2*cellInset+0.01)
		}
	}
	return w
}

// draw sets the table with its upper left corner at a place, no wider than
// room: long texts of the widest column are shortened. It gives the box taken.
func (t table) draw(at geom.Vec, room unit.Length, lines drawing.LineGroup) ([]drawing.Item, drawing.Rect) {
	const h = drawing.Small
	w := t.widths(h)
	var sum unit.Length
	widest := 0
	for i, x := range w {
		sum += x
		if x > w[widest] {
			widest = i
		}
	}
	if sum > room {
		w[widest] -= sum - room
		sum = room
	}
	var items []drawing.Item
	y := at.Y
	rule := func(pen drawing.Pen) {
		items = append(items, drawing.Line(geom.V(at.X, y), geom.V(at.X+sum, y), pen))
	}
	row := func(cells []string, bold bool) {
		x := at.X
		for i, s := range cells {
			text := drawing.Write(geom.V(x+cellInset, y-rowHeight+1.5), drawing.Fit(s, h, w[i]-2*cellInset), h, drawing.Left)
			if i < len(t.right) && t.right[i] {
				text = drawing.Write(geom.V(x+w[i]-cellInset, y-rowHeight+1.5), drawing.Fit(s, h, w[i]-2*cellInset), h, drawing.Right)
			}
			text.Bold = bold
			items = append(items, text)
			x += w[i]
		}
		y -= rowHeight
	}
	rule(lines.Outline())
	row(t.heads, true)
	rule(lines.Outline())
	for _, r := range t.rows {
		row(r, false)
		rule(lines.Fine())
	}
	return items, drawing.Rect{Min: geom.V(at.X, y), Max: geom.V(at.X+sum, at.Y)}
}

// height is how tall the table stands.
func (t table) height() unit.Length { return rowHeight * unit.Length(len(t.rows)+1) }

// notes sets short paragraphs below a bold heading, wrapped to a width, and
// gives the height that they take.
func notes(at geom.Vec, heading string, paragraphs []string, room unit.Length) ([]drawing.Item, unit.Length) {
	const h, pitch = drawing.Small, drawing.Small * 1.7
	items := []drawing.Item{drawing.Write(geom.V(at.X, at.Y-h), heading, h, drawing.Left).Strong()}
	y := at.Y - h - pitch
	for _, p := range paragraphs {
		for _, l := range drawing.Wrap(p, h, room) {
			items = append(items, drawing.Write(geom.V(at.X, y), l, h, drawing.Left))
			y -= pitch
		}
	}
	return items, at.Y - y
}

// blocks sets the table below a heading as blocks for a page: in one part, or in
// parts beside each other where it is long. More than mostRows rows make
// several blocks.
func (t table) blocks(id, heading string, lines drawing.LineGroup) []block {
	var out []block
	for n := 0; len(t.rows) > 0; n++ {
		part := t
		part.rows = t.rows[:min(mostRows, len(t.rows))]
		t.rows = t.rows[len(part.rows):]
		b := block{name: strings.ToLower(heading[:1]) + heading[1:], pull: bottomLeft}
		for columns := 1; columns <= 4 && (columns == 1 || len(part.rows) >= 3*columns); columns++ {
			b.forms = append(b.forms, part.split(fmt.Sprintf("%s-%d", id, n+1), heading, columns, lines))
		}
		out = append(out, b)
	}
	return out
}

const (
	mostRows    = 34
	headingRoom = drawing.Small + 2.5
	columnGap   = 5
)

// split sets the table in parts beside each other.
func (t table) split(id, heading string, columns int, lines drawing.LineGroup) form {
	var sum unit.Length
	for _, w := range t.widths(drawing.Small) {
		sum += w
	}
	part := t
	part.fixed = t.widths(drawing.Small)
	per := (len(t.rows) + columns - 1) / columns
	part.rows = t.rows[:per]
	h := part.height() + headingRoom
	items := []drawing.Item{drawing.Write(geom.V(0, h-drawing.Small), heading, drawing.Small, drawing.Left).Strong()}
	w := max(sum*unit.Length(columns)+columnGap*unit.Length(columns-1), items[0].(drawing.Text).Width())
	for c := range columns {
		part.rows = t.rows[min(c*per, len(t.rows)):min((c+1)*per, len(t.rows))]
		if len(part.rows) == 0 {
			break
		}
		set, _ := part.draw(geom.V(unit.Length(c)*(sum+columnGap), h-headingRoom), sum, lines)
		items = append(items, set...)
	}
	return form{w: w, h: h, items: []drawing.Item{drawing.Group{ID: id, Title: heading, Items: items}}}
}

// notesBlock sets paragraphs below a heading, as wide as there is room.
func notesBlock(id, heading string, paragraphs []string) block {
	b := block{name: strings.ToLower(heading[:1]) + heading[1:], pull: bottomLeft}
	for _, w := range []unit.Length{95, 120, 150, 180, 75, 60} {
		items, h := notes(geom.V(0, 0), heading, paragraphs, w)
		items = drawing.Move(items, geom.V(0, h))
		used := drawing.Bounds(items)
		b.forms = append(b.forms, form{w: used.Max.X, h: h, items: []drawing.Item{drawing.Group{ID: id, Title: heading, Items: items}}})
	}
	return b
}
