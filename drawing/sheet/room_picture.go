package sheet

import (
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// shot is a picture of the room: beside what every picture has, it may be cut
// off by a window and flagged in red.
type shot struct {
	picture
	under func(dim.Plate) []drawing.Item // fills that lie below the lines
	flags []flag                         // findings: they must show, so they are placed first
	rings []ring                         // item numbers, placed after the dimensions
	tags  []tag                          // names of corners, placed after the numbers
	marks []mark                         // ends of cutting planes, placed after the dimensions
	loose bool                           // a pictorial view, not to scale
}

// hung is a shot at its place on the paper.
type hung struct {
	items []drawing.Item
	scale drawing.Scale
	box   drawing.Rect // taken with dimensions and title
	fits  bool         // the views find room
}

// hang draws shots side by side at the largest scale of the series at which
// they find room in one of the rectangles; the first rectangle is tried first,
// another one when some lettering finds no place there. Where some never finds
// one, the row that lacks the fewest places is hung.
func (m *maker) hang(rooms []drawing.Rect, shots ...shot) hung {
	return m.hangAt(roomScales, rooms, shots)
}

// roomScales are the scales of views of the room: at more than 1:5 such a view
// shows no more.
var roomScales = slices.DeleteFunc(slices.Clone(drawing.Scales), func(s drawing.Scale) bool { return 5*s.Paper > s.Real })

// smallerAtMost is how many steps of the series a row of shots may be smaller
// than it could be, so that all its lettering can be read.
const smallerAtMost = 2

func (m *maker) hangAt(scales []drawing.Scale, rooms []drawing.Rect, shots []shot) hung {
	var best *row
	steps := 0
	for _, s := range scales {
		for _, room := range rooms {
			r := m.rowAt(room, s, shots, false)
			if r.fits && (best == nil || r.lacks < best.lacks) {
				best = &r
			}
			if best != nil && best.lacks == 0 {
				return m.hung(best)
			}
		}
		if best != nil {
			steps++
		}
		if steps > smallerAtMost {
			break
		}
	}
	if best == nil {
		r := m.rowAt(rooms[0], scales[len(scales)-1], shots, true)
		best = &r
	}
	return m.hung(best)
}

// row is shots side by side with their dimensions, without numbers yet.
type row struct {
	scale  drawing.Scale
	shots  []shot
	plates []dim.Plate
	items  [][]drawing.Item // of each shot
	titles [][]string
	title  unit.Length // height of the titles
	fits   bool        // the shots find room
	lacks  int         // letterings that have no place of their own
}

// rowAt hangs shots side by side in a rectangle at a scale. Only dimension lines
// claim room beforehand: notes and numbers look for a free place in what is
// left. What does not fit is not gone on with, unless it must be drawn anyway.
func (m *maker) rowAt(room drawing.Rect, s drawing.Scale, shots []shot, anyway bool) row {
	r := row{scale: s, shots: shots, plates: make([]dim.Plate, len(shots)), titles: make([][]string, len(shots))}
	blocks := make([]drawing.Rect, len(shots))
	var width unit.Length
	below, above := unit.Length(-1e9), unit.Length(-1e9)
	for i, p := range shots {
		if b := p.view.Bounds; !anyway && (s.Of(b.Width()) > room.Width() || s.Of(b.Height()) > room.Height()) {
			return r
		}
		pl := m.marked(m.exposed(p, s), p.picture, false)
		blocks[i] = dim.Extent(pl, ruled(p.ask)).Union(drawing.Bounds(pl.Drawn))
		for _, k := range p.marks {
			blocks[i] = blocks[i].Union(drawing.Bounds(k.drawn(m, paperAt(pl, k.at), markShaft)))
		}
		r.plates[i] = pl
		width += blocks[i].Width()
		below, above = max(below, -blocks[i].Min.Y), max(above, blocks[i].Max.Y)
	}
	spare := (room.Width() - width - betweenTwo*unit.Length(len(shots)-1)) / unit.Length(len(shots)+1)
	for i, p := range shots {
		if r.titles[i] = p.caption(s, blocks[i].Width()+max(0, spare)); len(r.titles[i]) > 0 {
			r.title = max(r.title, titleRoom+captionPitch*unit.Length(len(r.titles[i])-1))
		}
	}
	high := room.Height() - below - above - r.title
	r.fits = spare >= 0 && high >= 0
	if !r.fits && !anyway {
		return r
	}
	spare, high = max(0, spare), max(0, high)
	origin := room.Min.Y + r.title + high/2 + below // of all pictures of the row
	x := room.Min.X + spare
	for i, p := range shots {
		b := blocks[i]
		frame := drawing.Rect{Min: geom.V(x-spare/2, room.Min.Y+r.title), Max: geom.V(x+b.Width()+spare/2, room.Max.Y)}
		if i == 0 {
			frame.Min.X = room.Min.X
		}
		if i == len(shots)-1 {
			frame.Max.X = room.Max.X
		}
		pl := r.plates[i].MoveTo(geom.V(x-b.Min.X, origin))
		pl.Frame = frame
		items, lacks := m.develop(p, pl)
		r.plates[i], r.items = pl, append(r.items, items)
		r.lacks += lacks
		x += b.Width() + betweenTwo + spare
	}
	return r
}

// hung adds the numbers and titles to a row.
func (m *maker) hung(r *row) hung {
	h := hung{scale: r.scale, fits: r.fits}
	for i, p := range r.shots {
		pl, items := r.plates[i], r.items[i]
		more := func(id, title string, list []drawing.Item) {
			if len(list) > 0 {
				items = append(items, drawing.Group{ID: p.id + id, Title: title, Items: list})
			}
		}
		more("-numbers", m.say("item numbers"), m.rings(pl, items, pl.Frame, p.rings))
		more("-corners", m.say("corners"), m.tags(pl, items, pl.Frame, p.tags))
		h.items = append(h.items, drawing.Group{ID: p.id, Title: p.title, Items: items})
	}
	h.box = drawing.Bounds(h.items)
	foot := h.box.Min.Y
	for i, lines := range r.titles {
		h.items = append(h.items, captionAt(lines, geom.V(r.plates[i].Body.Centre().X, foot-titleRoom+2.5), r.plates[i].Frame)...)
	}
	h.box.Min.Y -= r.title
	return h
}

// ruled gives the requests that stand in rows around a view.
func ruled(ask []dim.Request) []dim.Request {
	var out []dim.Request
	for _, q := range ask {
		switch q.(type) {
		case dim.Linear, dim.Chain, dim.Running:
			out = append(out, q)
		}
	}
	return out
}

// measured gives the requests that have dimension lines.
func measured(ask []dim.Request) []dim.Request {
	out := ruled(ask)
	for _, q := range ask {
		if a, ok := q.(dim.Across); ok {
			out = append(out, a)
		}
	}
	return out
}

// exposed is the plate of a shot with everything but its dimensions.
func (m *maker) exposed(p shot, s drawing.Scale) dim.Plate {
	pl := m.exposedView(p, s)
	if p.under != nil {
		pl.Drawn = append(p.under(pl), pl.Drawn...)
	}
	if p.extra != nil {
		pl.Drawn = append(pl.Drawn, p.extra(pl)...)
	}
	return pl
}

// exposedView draws the lines and cut faces of a shot at a scale, its origin on
// the paper's. Steel too thin for a hatch is filled (ISO 128-3), wood is not: it
// would look like steel.
func (m *maker) exposedView(p shot, s drawing.Scale) dim.Plate {
	pl := dim.Plate{Scale: s, Style: p.style, Format: m.length}
	groups := newGroups(p.picture)
	for _, c := range p.view.Cuts {
		loops := make([][]geom.Vec, len(c.Loops))
		for i, l := range c.Loops {
			loops[i] = paperChain(pl, l)
		}
		pat := p.paint.hatch(c.Item)
		pat.Width = m.lines.Narrow
		if thin(loops) && pat.Material == drawing.Steel {
			groups.add(c.Item, drawing.Area{Loops: loops})
		} else {
			groups.add(c.Item, drawing.Hatch{Loops: loops, Pattern: pat})
		}
	}
	for _, l := range p.view.Lines() {
		if pen, ok := p.paint.pen(l.Stroke); ok {
			groups.add(l.Item, drawing.Polyline{Points: paperChain(pl, l.Points), Closed: l.Closed, Pen: pen})
		}
	}
	pl.Drawn = groups.items()
	pl.Body = drawing.Rect{Min: paperAt(pl, p.view.Bounds.Min), Max: paperAt(pl, p.view.Bounds.Max)}
	return pl
}

// develop draws a shot with its flags and dimensions; it tells how many of them
// found no place. Dimension lines stand where they must; the ends of cutting
// planes avoid them, flags avoid both, and all other lettering avoids the flags.
// Where that leaves too little room for lettering, flags take what it leaves.
func (m *maker) develop(p shot, pl dim.Plate) ([]drawing.Item, int) {
	if len(p.marks) > 0 {
		lines, _ := dim.Place(pl, measured(p.ask))
		ends := m.marks(pl, slices.Concat(pl.Drawn, lines), pl.Frame, p.marks)
		pl.Added = []drawing.Item{drawing.Group{ID: p.id + "-sections", Title: m.say("cutting planes"), Items: ends}}
	}
	withFlags := func(among []drawing.Item) (dim.Plate, int) {
		flags, lost := m.flags(pl, slices.Concat(pl.Drawn, pl.Added, among), pl.Frame, p.flags)
		out := pl
		out.Added = append(slices.Clone(pl.Added), drawing.Group{ID: p.id + "-flags", Title: m.say("findings"), Items: flags})
		return out, lost
	}
	whole := func(pl dim.Plate, asked []drawing.Item) []drawing.Item {
		return append(slices.Concat(pl.Drawn, pl.Added), drawing.Group{ID: p.id + "-dimensions", Title: m.say("dimensions"), Items: asked})
	}
	if len(p.flags) == 0 {
		asked, report := place(pl, p.ask)
		return whole(pl, asked), len(report.Troubles)
	}
	lines, _ := dim.Place(pl, measured(p.ask))
	flagged, lost := withFlags(lines)
	asked, report := place(flagged, p.ask)
	lacks := len(report.Troubles) + lost
	if lacks > 0 {
		first, report := place(pl, p.ask)
		if after, lost := withFlags(first); len(report.Troubles)+lost < lacks {
			return whole(after, first), len(report.Troubles) + lost
		}
	}
	return whole(flagged, asked), lacks
}

// place dimensions a view. Captions that find no room become notes on a leader.
func place(pl dim.Plate, requests []dim.Request) ([]drawing.Item, dim.Report) {
	items, report := dim.Place(pl, requests)
	moved := false
	ask := slices.Clone(requests)
	for _, t := range report.Troubles {
		if c, ok := ask[t.Request].(dim.Caption); ok && len(c.Loop) > 2 {
			ask[t.Request] = dim.Note{At: geom.Polygon(c.Loop...).Centroid(), Lines: c.Lines, Height: c.Height}
			moved = true
		}
	}
	if moved {
		return dim.Place(pl, ask)
	}
	return items, report
}

// captionPitch is the distance of the lines of a title below a shot.
const captionPitch = drawing.Standard * 1.6

// caption is the title below a shot, in lines no wider than a room, with the
// scale behind the last; none where it has no title.
func (p shot) caption(s drawing.Scale, room unit.Length) []string {
	if p.title == "" {
		return nil
	}
	scale := ""
	if !p.loose {
		scale = "   " + s.String()
	}
	whole := drawing.Write(geom.Vec{}, p.title+scale, drawing.Standard, drawing.Centre).Strong()
	if whole.Width() <= room {
		return []string{whole.String}
	}
	lines := drawing.WrapStrong(p.title, drawing.Standard, room-18) // the scale follows
	lines[len(lines)-1] += scale
	return lines
}

// captionAt sets a title, the first of its lines at a place or as near to it as
// the frame allows.
func captionAt(lines []string, at geom.Vec, frame drawing.Rect) []drawing.Item {
	var out []drawing.Item
	for i, l := range lines {
		t := drawing.Write(at.Sub(geom.V(0, captionPitch*unit.Length(i))), l, drawing.Standard, drawing.Centre).Strong()
		if half := t.Width() / 2; 2*half < frame.Width() {
			t.At.X = min(max(t.At.X, frame.Min.X+half), frame.Max.X-half)
		}
		out = append(out, t)
	}
	return out
}

// inRed gives items the ink of findings.
func inRed(items []drawing.Item) []drawing.Item {
	out := make([]drawing.Item, len(items))
	for i, it := range items {
		switch x := it.(type) {
		case drawing.Polyline:
			x.Pen.Ink = drawing.Red
			out[i] = x
		case drawing.Circle:
			x.Pen.Ink = drawing.Red
			out[i] = x
		case drawing.Mark:
			x.Pen.Ink = drawing.Red
			out[i] = x
		case drawing.Text:
			x.Ink, x.Bold = drawing.Red, true
			out[i] = x
		case drawing.Group:
			x.Items = inRed(x.Items)
			out[i] = x
		default:
			out[i] = it
		}
	}
	return out
}
