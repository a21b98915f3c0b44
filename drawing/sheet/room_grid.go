package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// grid is a table whose long cells are wrapped: the widest of its columns gives
// way where the room is short. The last column may be boxes to write in.
type grid struct {
	heads []string
	right []bool
	rows  [][]string
	bold  []bool // rows to be seen first
	boxes bool
	pitch unit.Length // height of a row; zero is the usual one
	short bool        // long cells are cut off instead of wrapped

	barred int       // column of bars, 0 for none
	bars   []float64 // by row, as a share of what is suspicious; NaN for no bar
}

// high is the height of a row of one line.
func (t grid) high() unit.Length {
	if t.pitch > 0 {
		return t.pitch
	}
	return rowHeight
}

// foot is the height of the base line over the rule below it: descenders, 0.81
// deep, stay clear of that, accents, 3.18 high, of the rule above.
func (t grid) foot() unit.Length { return max(0.94, min(0.29*t.high(), t.high()-3.5)) }

// head is the table as its heads are set: a low row is made higher, so that
// descenders stay clear of the wide rule below.
func (t grid) head() grid {
	if t.pitch > 0 {
		t.pitch = max(t.pitch, 4.75)
	}
	return t
}

// cellPitch is the distance of two lines in one cell.
const cellPitch = drawing.Small * 1.6

// columns gives the widths that the texts ask for, brought down to a room.
func (t grid) columns(room unit.Length) []unit.Length {
	const h = drawing.Small
	w, least := make([]unit.Length, len(t.heads)), make([]unit.Length, len(t.heads))
	for i, s := range t.heads {
		w[i] = drawing.Write(geom.Vec{}, s, h, drawing.Left).Strong().Width() + 2*cellInset + 0.1
		least[i] = drawing.LeastRoom(s, h, true) + 2*cellInset + 0.1
	}
	for k, r := range t.rows {
		for i, s := range r {
			x := drawing.Write(geom.Vec{}, s, h, drawing.Left)
			x.Bold = t.strong(k)
			w[i] = max(w[i], x.Width()+2*cellInset+0.1)
			least[i] = max(least[i], drawing.LeastRoom(s, h, x.Bold)+2*cellInset+0.1)
		}
	}
	if t.barred > 0 {
		w[t.barred], least[t.barred] = max(w[t.barred], barRoom), max(least[t.barred], barRoom)
	}
	var sum unit.Length
	for _, x := range w {
		sum += x
	}
	for sum > room { // the widest of those that can gives way
		k := -1
		for i := range w {
			if w[i] > least[i]+0.01 && (k < 0 || w[i] > w[k]) {
				k = i
			}
		}
		if k < 0 {
			break
		}
		give := min(sum-room, w[k]-least[k], 1)
		w[k] -= give
		sum -= give
	}
	return w
}

func (t grid) strong(row int) bool { return row < len(t.bold) && t.bold[row] }

// set draws the table with its upper left corner at a place, no wider than
// room, and gives the box taken.
func (t grid) set(at geom.Vec, room unit.Length, lines drawing.LineGroup) ([]drawing.Item, drawing.Rect) {
	w := t.columns(room)
	var sum unit.Length
	for _, x := range w {
		sum += x
	}
	var items []drawing.Item
	y := at.Y
	rule := func(pen drawing.Pen) {
		items = append(items, drawing.Line(geom.V(at.X, y), geom.V(at.X+sum, y), pen))
	}
	rule(lines.Outline())
	texts, h := t.head().row(t.heads, true, geom.V(at.X, y), w)
	items, y = append(items, texts...), y-h
	rule(lines.Outline())
	top := y
	for k, r := range t.rows {
		texts, h := t.row(r, t.strong(k), geom.V(at.X, y), w)
		items, y = append(items, texts...), y-h
		rule(lines.Fine())
		if t.barred > 0 && !math.IsNaN(t.bars[k]) {
			left := at.X
			for _, x := range w[:t.barred] {
				left += x
			}
			items = append(items, bar(geom.V(left+w[t.barred]/2, y+t.high()/2), t.bars[k], lines)...)
		}
	}
	if t.boxes {
		for _, x := range []unit.Length{at.X + sum - w[len(w)-1], at.X + sum} {
			items = append(items, drawing.Line(geom.V(x, y), geom.V(x, top), lines.Fine()))
		}
	}
	return items, drawing.Rect{Min: geom.V(at.X, y), Max: geom.V(at.X+sum, at.Y)}
}

const (
	barRoom  unit.Length = 24 // of a column of bars
	barReach unit.Length = 8  // from the middle to where a reading becomes suspicious
)

// bar draws a share of what is suspicious from a middle, with ticks where it
// becomes so. What is far beyond them ends at the edge of its column.
func bar(middle geom.Vec, share float64, lines drawing.LineGroup) []drawing.Item {
	const half = 0.9
	x := unit.Length(math.Max(-1.4, math.Min(share, 1.4))) * barReach
	var items []drawing.Item
	for _, t := range []unit.Length{-barReach, 0, barReach} {
		items = append(items, drawing.Line(middle.Add(geom.V(t, -1.5)), middle.Add(geom.V(t, 1.5)), lines.Fine()))
	}
	ink := drawing.Black
	if math.Abs(share) > 1 {
		ink = drawing.Red
	}
	low, high := geom.V(min(0, x), -half), geom.V(max(0, x), half)
	return append(items, drawing.Area{Loops: [][]geom.Vec{drawing.Rect{Min: middle.Add(low), Max: middle.Add(high)}.Corners()}, Ink: ink})
}

// tall is how high the table stands in a room of some width.
func (t grid) tall(room unit.Length) unit.Length {
	_, box := t.set(geom.Vec{}, room, drawing.Normal)
	return box.Height()
}

// row sets one row and gives its height.
func (t grid) row(cells []string, bold bool, at geom.Vec, w []unit.Length) ([]drawing.Item, unit.Length) {
	const h = drawing.Small
	var items []drawing.Item
	x, most := at.X, 1
	for i, s := range cells {
		cell := wrapped(s, h, w[i]-2*cellInset, bold)
		if t.short && len(cell) > 1 {
			cell = []string{drawing.Fit(s, h, w[i]-2*cellInset)}
		}
		most = max(most, len(cell))
		for k, line := range cell {
			text := drawing.Write(geom.V(x+cellInset, at.Y-t.high()+t.foot()-unit.Length(k)*cellPitch), line, h, drawing.Left)
			if i < len(t.right) && t.right[i] {
				text.At.X, text.Align = x+w[i]-cellInset, drawing.Right
			}
			text.Bold = bold
			items = append(items, text)
		}
		x += w[i]
	}
	return items, t.high() + unit.Length(most-1)*cellPitch
}

// wrapped breaks a text into lines no wider than room, as far as its words
// allow.
func wrapped(s string, h, room unit.Length, bold bool) []string {
	if bold {
		return drawing.WrapStrong(s, h, room)
	}
	return drawing.Wrap(s, h, room)
}
