package sheet

import (
	"slices"

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
	linePitch             = drawing.Small * 1.6 // in a cell of more than one line
)

// widths are the column widths that the texts ask for.
func (t table) widths(h unit.Length) []unit.Length {
	if t.fixed != nil {
		return slices.Clone(t.fixed)
	}
	const hair = 0.01 // so that a text fits its own width
	w := make([]unit.Length, len(t.heads))
	for i, s := range t.heads {
		w[i] = drawing.Write(geom.Vec{}, s, h, drawing.Left).Strong().Width() + 2*cellInset + hair
	}
	for _, r := range t.rows {
		for i, s := range r {
			w[i] = max(w[i], drawing.TextWidth(s, h)+2*cellInset+hair)
		}
	}
	return w
}

// within gives column widths that are no wider than room together, as far as
// their words allow: the widest columns give way.
func (t table) within(room unit.Length) []unit.Length {
	w := t.widths(drawing.Small)
	over := sum(w) - room
	if over <= 0 {
		return w
	}
	least := t.leastWidths(true)
	if sum(least) > room {
		least = t.leastWidths(false)
	}
	for ; over > 0.001; over = sum(w) - room {
		most, next := -1, unit.Length(0)
		for i, x := range w {
			if x > least[i] && (most < 0 || x > w[most]) {
				most = i
			}
		}
		if most < 0 {
			return w
		}
		for i, x := range w {
			if i != most && x > least[i] {
				next = max(next, x)
			}
		}
		w[most] = max(w[most]-over, min(next, w[most])-1, least[most])
	}
	return w
}

// leastWidths are those of the longest words of the columns; figures, which may
// hold a fraction, stay in one line if they are whole.
func (t table) leastWidths(whole bool) []unit.Length {
	least := make([]unit.Length, len(t.heads))
	for i := range least {
		least[i] = drawing.LeastRoom(t.heads[i], drawing.Small, true)
		for _, r := range t.rows {
			room := drawing.LeastRoom(r[i], drawing.Small, false)
			if whole && i < len(t.right) && t.right[i] {
				room = drawing.TextWidth(r[i], drawing.Small)
			}
			least[i] = max(least[i], room)
		}
		least[i] += 2*cellInset + 0.01
	}
	return least
}

func sum(w []unit.Length) unit.Length {
	var s unit.Length
	for _, x := range w {
		s += x
	}
	return s
}

// cells breaks the texts of a row into the lines that fit its columns.
func cells(row []string, w []unit.Length, bold bool) (lines [][]string, height unit.Length) {
	most := 1
	for i, s := range row {
		room := w[i] - 2*cellInset
		l := []string{s}
		text := drawing.Write(geom.Vec{}, s, drawing.Small, drawing.Left)
		text.Bold = bold
		if text.Width() > room {
			l = wrapped(s, drawing.Small, room, bold)
		}
		for k := range l {
			if len(l) > 1 {
				l[k] = drawing.Fit(l[k], drawing.Small, room)
			}
		}
		lines = append(lines, l)
		most = max(most, len(l))
	}
	return lines, rowHeight + unit.Length(most-1)*linePitch
}

// draw sets the table with its upper left corner at a place, no wider than
// room: long texts break into lines. It gives the box taken.
func (t table) draw(at geom.Vec, room unit.Length, lines drawing.LineGroup) ([]drawing.Item, drawing.Rect) {
	const h = drawing.Small
	w := t.within(room)
	wide := sum(w)
	var items []drawing.Item
	y := at.Y
	rule := func(pen drawing.Pen) {
		items = append(items, drawing.Line(geom.V(at.X, y), geom.V(at.X+wide, y), pen))
	}
	row := func(texts []string, bold bool) {
		x := at.X
		set, height := cells(texts, w, bold)
		for i, cell := range set {
			for k, s := range cell {
				base := y - rowHeight + 1.5 - unit.Length(k)*linePitch
				text := drawing.Write(geom.V(x+cellInset, base), s, h, drawing.Left)
				if i < len(t.right) && t.right[i] {
					text = drawing.Write(geom.V(x+w[i]-cellInset, base), s, h, drawing.Right)
				}
				text.Bold = bold
				items = append(items, text)
			}
			x += w[i]
		}
		y -= height
	}
	rule(lines.Outline())
	row(t.heads, true)
	rule(lines.Outline())
	for _, r := range t.rows {
		row(r, false)
		rule(lines.Fine())
	}
	return items, drawing.Rect{Min: geom.V(at.X, y), Max: geom.V(at.X+wide, at.Y)}
}

// height is how tall the table stands when it is no wider than room.
func (t table) height(room unit.Length) unit.Length {
	w := t.within(room)
	_, sum := cells(t.heads, w, true)
	for _, r := range t.rows {
		_, h := cells(r, w, false)
		sum += h
	}
	return sum
}
