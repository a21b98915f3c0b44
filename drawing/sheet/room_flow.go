package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// flow sets blocks of text and tables below each other in a column.
type flow struct {
	m      *maker
	room   drawing.Rect // what is left of the column
	items  []drawing.Item
	full   bool             // something found no room
	titled int              // items of a heading that still waits for its block
	top    unit.Length      // where that heading, or else the next block, begins
	next   drawing.Rect     // the column of the pages that follow; empty: there is none
	done   [][]drawing.Item // pages that are full
}

// down starts a column in a room.
func (m *maker) down(room drawing.Rect) *flow { return &flow{m: m, room: room, top: room.Max.Y} }

// onto lets the column go on on further pages, each with a column in a room.
func (f *flow) onto(room drawing.Rect) *flow { f.next = room; return f }

// pages are the items of each page.
func (f *flow) pages() [][]drawing.Item { return append(f.done, f.items) }

// grid adds a table under a heading; id names its group.
func (f *flow) grid(id, heading string, t grid) drawing.Rect {
	f.head(heading)
	items, box := t.set(geom.V(f.room.Min.X, f.room.Max.Y), f.room.Width(), f.m.lines)
	f.put(id, heading, items, box.Height()+2.5)
	return box
}

// long adds a table whose rows go on on the next page, under the same heads.
func (f *flow) long(id, heading string, t grid) {
	for k := 1; len(t.rows) > 0; k++ {
		part, n := t, 0
		for n < len(t.rows) {
			part.rows = t.rows[:n+1]
			if drawing.Small+4.1+part.tall(f.room.Width()) > f.room.Height() {
				break
			}
			n++
		}
		if fresh := f.room.Max.Y == f.next.Max.Y; n < min(3, len(t.rows)) && !fresh {
			f.turn()
			k--
			continue
		}
		n = max(n, 1)
		part.rows = t.rows[:n]
		f.grid(fmt.Sprintf("%s-%d", id, k), heading, part)
		t.rows = t.rows[n:]
		t.bold, t.bars = t.bold[min(n, len(t.bold)):], t.bars[min(n, len(t.bars)):]
		if len(t.rows) > 0 {
			f.turn()
		}
	}
}

// turn starts the next page.
func (f *flow) turn() {
	f.done, f.items = append(f.done, f.items), nil
	f.room, f.top = f.next, f.next.Max.Y
}

// head adds a heading.
func (f *flow) head(s string) {
	if s == "" {
		return
	}
	const h = drawing.Small
	for i, l := range drawing.WrapStrong(s, h, f.room.Width()) {
		if i > 0 {
			f.room.Max.Y -= headingPitch - h
		}
		line := drawing.Write(geom.V(f.room.Min.X, f.room.Max.Y-h), l, h, drawing.Left).Strong()
		if over := drawing.Bounds([]drawing.Item{line}).Max.Y - f.room.Max.Y; len(f.items) == 0 && over > 0 { // accents
			line.At.Y, f.room.Max.Y = line.At.Y-over, f.room.Max.Y-over
		}
		f.items = append(f.items, line)
		f.room.Max.Y -= h
		f.titled++
	}
	f.room.Max.Y -= 1.6
}

// text adds paragraphs under a heading.
func (f *flow) text(id, heading string, paragraphs ...string) {
	const h, pitch = drawing.Small, drawing.Small * 1.7
	f.head(heading)
	var items []drawing.Item
	y := f.room.Max.Y - h
	for _, p := range paragraphs {
		for _, l := range drawing.Wrap(p, h, f.room.Width()) {
			items = append(items, drawing.Write(geom.V(f.room.Min.X, y), l, h, drawing.Left))
			y -= pitch
		}
	}
	f.put(id, heading, items, f.room.Max.Y-h-y+1.5)
}

// try adds blocks if there is room for all of them.
func (f *flow) try(add func(*flow)) bool {
	trial := *f
	trial.items, trial.full = slices.Clone(f.items), false
	add(&trial)
	if trial.full {
		return false
	}
	trial.full = f.full
	*f = trial
	return true
}

func (f *flow) put(id, title string, items []drawing.Item, height unit.Length) {
	f.items = append(f.items, drawing.Group{ID: id, Title: title, Items: items})
	f.room.Max.Y -= height
	if f.room.Max.Y < f.room.Min.Y-1 {
		f.overflow(len(f.items) - 1 - f.titled)
	}
	f.titled, f.top = 0, f.room.Max.Y
}

// overflow moves the items from the n-th on to the next page, if there is one.
func (f *flow) overflow(n int) {
	if f.next.Empty() || n == 0 {
		f.full = true
		return
	}
	by := f.next.Max.Sub(geom.V(f.next.Max.X-f.next.Min.X+f.room.Min.X, f.top))
	f.done = append(f.done, f.items[:n:n])
	if over := drawing.Bounds(drawing.Move(f.items[n:], by)).Max.Y - f.next.Max.Y; over > 0 { // accents
		by.Y -= over
	}
	f.items = drawing.Move(f.items[n:], by)
	f.room = drawing.Rect{Min: f.next.Min, Max: geom.V(f.next.Max.X, f.room.Max.Y+by.Y)}
}

// tooWide tells whether something reaches beyond the right side of the column.
func (f *flow) tooWide() bool { return drawing.Bounds(f.items).Max.X > f.room.Max.X+1 }

// corner is where the next block begins.
func (f *flow) corner() geom.Vec { return geom.V(f.room.Min.X, f.room.Max.Y) }

// large adds sentences in large bold lettering.
func (f *flow) large(h unit.Length, sentences ...string) {
	for _, s := range sentences {
		for _, l := range wrapped(s, h, f.room.Width(), true) {
			line := drawing.Write(geom.V(f.room.Min.X, f.room.Max.Y-h), l, h, drawing.Left).Strong()
			if over := drawing.Bounds([]drawing.Item{line}).Max.Y - f.room.Max.Y; len(f.items) == 0 && over > 0 { // accents
				line.At.Y, f.room.Max.Y = line.At.Y-over, f.room.Max.Y-over
			}
			f.items = append(f.items, line)
			f.room.Max.Y -= h * 1.7
		}
	}
	f.room.Max.Y -= 2
	f.top = f.room.Max.Y
}
