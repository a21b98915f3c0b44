package sheet

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// table is rows of text under a heading. Right columns are for figures.
type table struct {
	heads []string
	right []bool
	rows  [][]string
}

const (
	rowHeight unit.Length = 5.2
	cellInset unit.Length = 1.4
)

// widths are the column widths that the texts ask for.
func (t table) widths(h unit.Length) []unit.Length {
	w := make([]unit.Length, len(t.heads))
	for i, s := range t.heads {
		w[i] = drawing.Write(geom.Vec{}, s, h, drawing.Left).Strong().Width() + 2*cellInset
	}
	for _, r := range t.rows {
		for i, s := range r {
			w[i] = max(w[i], drawing.TextWidth(s, h)+2*cellInset)
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
