package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// columnGutter is the distance of columns, and of what stands below each other.
const columnGutter unit.Length = 7

// listing sets tables and notes one after the other into the columns of as many
// pages as they need.
type listing struct {
	m           *maker
	name, title string
	done        []page
	columns     []drawing.Rect // of the page, those not yet used
	y           unit.Length    // where the next thing starts in the first of them
	groups      int
}

func newListing(m *maker, name, title string) *listing {
	f := &listing{m: m, name: name, title: title}
	f.turn()
	return f
}

// columnsOf are the columns of a page: one on upright sheets and small ones, two on
// those that lie, the left one down to the frame.
func columnsOf(size drawing.Size) []drawing.Rect {
	free := drawing.Free(size)
	all := free[0]
	if len(free) == 1 || size.Width < size.Height {
		return []drawing.Rect{all}
	}
	left, right := all, all
	if free[1].Width() < leastColumn {
		return []drawing.Rect{all}
	}
	left.Min.Y, left.Max.X = free[1].Min.Y, free[1].Max.X-columnGutter
	right.Min.X = free[1].Max.X
	return []drawing.Rect{left, right}
}

// leastColumn is how wide a column must be for the tables of lists.
const leastColumn unit.Length = 120

// turn starts a new page.
func (f *listing) turn() {
	f.done = append(f.done, f.m.new(f.name, f.title))
	f.columns = columnsOf(f.m.size)
	f.y = f.columns[0].Max.Y
}

// next goes to the next column.
func (f *listing) next() {
	f.columns = f.columns[1:]
	if len(f.columns) == 0 {
		f.turn()
		return
	}
	f.y = f.columns[0].Max.Y
}

// fresh tells whether nothing stands in the column yet.
func (f *listing) fresh() bool { return f.y == f.columns[0].Max.Y }

// left is the height left in the column.
func (f *listing) left() unit.Length { return f.y - f.columns[0].Min.Y }

// tableForm is how a table is set: how much larger than usual, and whether its
// last column are boxes to write into.
type tableForm struct {
	by    float64
	boxes bool
}

var asIs = tableForm{by: 1}

// table sets a table below a heading; what finds no room goes on in the next
// column below its heads.
func (f *listing) table(heading string, t table, form tableForm) {
	rows := t.rows
	by := unit.Length(form.by)
	if whole := (t.height(f.columns[0].Width()/by) + headingRoom) * by; !f.fresh() && whole > f.left() && whole < f.columns[0].Height()*0.9 {
		f.next()
	}
	for len(rows) > 0 {
		width := f.columns[0].Width() / by
		part := t
		part.fixed = t.within(width)
		n := 0
		for n < len(rows) {
			part.rows = rows[:n+1]
			if (part.height(width)+headingRoom)*by > f.left() {
				break
			}
			n++
		}
		if !f.fresh() && n < min(3, len(rows)) {
			f.next()
			continue
		}
		n = max(n, 1)
		part.rows = rows[:n]
		f.set(heading, part, form, width)
		if len(rows) == len(t.rows) {
			heading += f.m.say(", continued")
		}
		if rows = rows[n:]; len(rows) > 0 {
			f.next()
		}
	}
}

// set draws a part of a table in the column.
func (f *listing) set(heading string, part table, form tableForm, width unit.Length) {
	items := []drawing.Item{drawing.Write(geom.V(0, -drawing.Small), heading, drawing.Small, drawing.Left).Strong()}
	rows, box := part.draw(geom.V(0, -headingRoom), width, f.m.lines)
	items = append(items, rows...)
	if form.boxes {
		w := part.fixed
		for _, x := range []unit.Length{box.Max.X - w[len(w)-1], box.Max.X} {
			items = append(items, drawing.Line(geom.V(x, box.Min.Y), geom.V(x, box.Max.Y), f.m.lines.Outline()))
		}
	}
	items = grown(items, form.by)
	f.add(heading, items, -box.Min.Y*unit.Length(form.by))
}

// notes sets paragraphs below a heading.
func (f *listing) notes(heading string, paragraphs []string) {
	if len(paragraphs) == 0 {
		return
	}
	items, height := notes(geom.V(0, 0), heading, paragraphs, f.columns[0].Width())
	if !f.fresh() && height > f.left() {
		f.next()
		items, height = notes(geom.V(0, 0), heading, paragraphs, f.columns[0].Width())
	}
	f.add(heading, items, height)
}

// add puts items with their upper left corner at the origin into the column.
func (f *listing) add(title string, items []drawing.Item, height unit.Length) {
	f.groups++
	at := geom.V(f.columns[0].Min.X, f.y)
	g := drawing.Group{ID: fmt.Sprintf("%s-%d", f.name, f.groups), Title: title, Items: drawing.Move(items, at)}
	f.done[len(f.done)-1].sheet.Add(g)
	f.y -= height + columnGutter
}

// pages gives the pages.
func (f *listing) pages(kind string) []page {
	for i := range f.done {
		f.done[i].block.DocumentType = kind
		if n := len(f.done); n > 1 {
			f.done[i].sheet.Name = fmt.Sprintf("%s-%d", f.name, i+1)
		}
	}
	return f.done
}
