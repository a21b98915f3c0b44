package sheet

import (
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// flow sets blocks of text and tables below each other in a column.
type flow struct {
	m     *maker
	room  drawing.Rect // what is left of the column
	items []drawing.Item
	full  bool // something found no room
}

// down starts a column in a room.
func (m *maker) down(room drawing.Rect) *flow { return &flow{m: m, room: room} }

// grid adds a table under a heading; id names its group.
func (f *flow) grid(id, heading string, t grid) drawing.Rect {
	f.head(heading)
	items, box := t.set(geom.V(f.room.Min.X, f.room.Max.Y), f.room.Width(), f.m.lines)
	f.put(id, heading, items, box.Height()+2.5)
	return box
}

// head adds a heading.
func (f *flow) head(s string) {
	if s == "" {
		return
	}
	const h = drawing.Small
	f.items = append(f.items, drawing.Write(geom.V(f.room.Min.X, f.room.Max.Y-h), s, h, drawing.Left).Strong())
	f.room.Max.Y -= h + 1.6
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
	f.full = f.full || f.room.Max.Y < f.room.Min.Y-1
}

// corner is where the next block begins.
func (f *flow) corner() geom.Vec { return geom.V(f.room.Min.X, f.room.Max.Y) }

// large adds sentences in large bold lettering.
func (f *flow) large(h unit.Length, sentences ...string) {
	for _, s := range sentences {
		for _, l := range wrapped(s, h, f.room.Width(), true) {
			f.items = append(f.items, drawing.Write(geom.V(f.room.Min.X, f.room.Max.Y-h), l, h, drawing.Left).Strong())
			f.room.Max.Y -= h * 1.7
		}
	}
	f.room.Max.Y -= 2
}
