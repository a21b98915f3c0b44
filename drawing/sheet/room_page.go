package sheet

import (
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// pictures puts shots side by side on a page that carries nothing else, and
// tells the scale. Small paper is turned when that gives a larger one.
func (m *maker) pictures(pg page, shots ...shot) (page, drawing.Scale) {
	h := m.hang(whole(m.size), shots...)
	if !m.stands && len(drawing.Free(m.size)) == 1 {
		turned := m.size.Turned()
		if t := m.hang(whole(turned), shots...); bigger(t.scale, h.scale) {
			h = t
			pg.sheet.Size = turned
		}
	}
	pg.sheet.Add(h.items...)
	pg.sheet.Scale = h.scale.String()
	return pg, h.scale
}

// withNotes puts a shot and its notes on one page where the notes cost no scale,
// otherwise on two.
func (m *maker) withNotes(pg page, p shot, notes func(*flow), name, title string) []page {
	alone, scale := m.pictures(pg, p)
	for _, s := range m.splits(notes) {
		f := m.down(s.notes)
		notes(f)
		if f.full || f.tooWide() || min(s.picture.Height(), s.picture.Width()) < 60 {
			continue
		}
		if h := m.hang([]drawing.Rect{s.picture}, p); !bigger(scale, h.scale) && !drawing.Bounds(h.items).Meets(s.notes) {
			pg.sheet.Add(h.items...)
			pg.sheet.Add(f.items...)
			pg.sheet.Scale = h.scale.String()
			return []page{pg}
		}
	}
	free := drawing.Free(m.size)
	f := m.down(free[0]).onto(free[0])
	notes(f)
	out := []page{alone}
	for _, items := range f.pages() {
		more := m.new(name, title)
		more.block.DocumentType = m.say("table")
		more.sheet.Add(items...)
		out = append(out, more)
	}
	return out
}

// split is a page parted between a picture and its notes.
type split struct{ picture, notes drawing.Rect }

// splits are the ways to part a page: notes beside the title block and no higher,
// then as high as they ask for, then in columns down the right side; below the
// picture where nothing is beside the block.
func (m *maker) splits(notes func(*flow)) []split {
	const gap unit.Length = 4
	free := drawing.Free(m.size)
	above := free[0]
	tall := func(width unit.Length) unit.Length {
		probe := m.down(drawing.Box(above.Min.X, 0, width, above.Max.Y))
		notes(probe)
		return above.Max.Y - probe.corner().Y
	}
	if len(free) == 1 {
		s := split{above, above}
		s.picture.Min.Y = above.Min.Y + tall(above.Width())
		s.notes.Max.Y = s.picture.Min.Y
		return []split{s}
	}
	beside := drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X-2, free[1].Max.Y-2)}
	out := []split{{above, beside}}
	if high := beside.Min.Y + tall(beside.Width()); high > beside.Max.Y {
		s := split{above, beside}
		s.notes.Max.Y = high
		s.picture.Min.Y = high + gap
		out = append(out, s)
	}
	for _, width := range []unit.Length{80, 110, 140, 170, 200} {
		s := split{above, above}
		s.notes.Min.X = above.Max.X - width
		s.picture.Max.X = s.notes.Min.X - gap
		s.picture.Min.Y = free[1].Min.Y
		if s.picture.Max.X > free[1].Max.X {
			s.picture.Min.Y = above.Min.Y
		}
		out = append(out, s)
	}
	return out
}

// bigger tells whether one scale is larger than another.
func bigger(a, b drawing.Scale) bool { return a.Paper*b.Real > b.Paper*a.Real }

// whole gives the free fields of a sheet that carries one picture and no notes:
// above the title block, or the column beside it.
func whole(size drawing.Size) []drawing.Rect {
	free := drawing.Free(size)
	if len(free) == 1 {
		return free
	}
	return []drawing.Rect{free[0], {Min: free[1].Min, Max: geom.V(free[1].Max.X, free[0].Max.Y)}}
}

// joinery is the style of dimensions on joinery sheets of this size.
func (m *maker) joinery() dim.Style {
	if m.lines == drawing.Dense {
		s := dim.Wood.Dense()
		s.First, s.Next = 7, 7 // never under 6
		return s
	}
	return dim.Wood
}

// stop is one place of a running dimension with what is there.
type stop struct {
	at    geom.Vec
	name  string
	about bool // an estimate, written without decimals
	below bool // with a sign when it is below the datum
}

// heights makes a running dimension of heights over a floor; what is below it
// carries a sign.
func (m *maker) heights(datum geom.Vec, from string, stops []stop) []dim.Request {
	for i := range stops {
		stops[i].below = stops[i].at.Y < datum.Y
	}
	return m.ladder(datum, from, dim.Vertical, dim.LeftOf, stops)
}

// ladder makes a running dimension of stops. Stops that lie together within
// 0.05 mm become one that carries all their names.
func (m *maker) ladder(datum geom.Vec, from string, dir dim.Direction, side dim.Side, stops []stop) []dim.Request {
	key := func(v geom.Vec) unit.Length {
		if dir == dim.Vertical {
			return v.Y
		}
		return v.X
	}
	q := dim.Running{Datum: datum, From: from, Dir: dir, Side: side}
	for _, s := range stops {
		d := key(s.at) - key(datum)
		if abs(d) < 0.05 {
			continue
		}
		known := false
		for i, p := range q.Points {
			if abs(key(p)-key(s.at)) < 0.05 {
				known = true
				if l := &q.Labels[i]; s.name != "" && !strings.Contains(l.Suffix+l.Text, s.name) {
					l.Suffix += ", " + s.name
				}
			}
		}
		if !known {
			q.Points, q.Labels = append(q.Points, s.at), append(q.Labels, s.label(m, d))
		}
	}
	if len(q.Points) == 0 {
		return nil
	}
	return []dim.Request{q}
}

// label is what stands at a stop.
func (s stop) label(m *maker, d unit.Length) dim.Label {
	l := dim.Label{}
	if s.name != "" {
		l.Suffix = " " + s.name
	}
	if s.about {
		l = dim.Label{Text: m.about(d) + l.Suffix}
	} else if s.below {
		l.Prefix = "-"
	}
	return l
}
