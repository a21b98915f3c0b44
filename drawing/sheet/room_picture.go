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
	loose bool                           // a pictorial view, not to scale
}

// hung is a shot at its place on the paper.
type hung struct {
	items []drawing.Item
	scale drawing.Scale
	box   drawing.Rect // taken with dimensions and title
}

// hang draws shots side by side at the largest scale of the series at which
// they find room in one of the rectangles; the first rectangle is tried first,
// another one when some lettering finds no place there.
func (m *maker) hang(rooms []drawing.Rect, shots ...shot) hung {
	return m.hangAt(roomScales, rooms, shots)
}

// roomScales are the scales of views of the room: at more than 1:5 such a view
// shows no more.
var roomScales = slices.DeleteFunc(slices.Clone(drawing.Scales), func(s drawing.Scale) bool { return 5*s.Paper > s.Real })

func (m *maker) hangAt(scales []drawing.Scale, rooms []drawing.Rect, shots []shot) hung {
	type try struct {
		room  drawing.Rect
		scale drawing.Scale
	}
	best := try{rooms[0], scales[len(scales)-1]}
search:
	for _, s := range scales {
		found := false
		for _, room := range rooms {
			_, fits, clean := m.hangIn(room, s, shots, false)
			if fits && (clean || !found) {
				best, found = try{room, s}, true
			}
			if fits && clean {
				break search
			}
		}
		if found {
			break
		}
	}
	h, _, _ := m.hangIn(best.room, best.scale, shots, true)
	return h
}

// hangIn draws shots side by side in a rectangle at a scale, and tells whether
// they find room there and whether all their lettering can be read. Only
// dimension lines claim room beforehand: notes and numbers look for a free
// place in what is left. A layout that is not final has no numbers yet.
func (m *maker) hangIn(room drawing.Rect, s drawing.Scale, shots []shot, final bool) (hung, bool, bool) {
	h := hung{scale: s}
	plates := make([]dim.Plate, len(shots))
	blocks := make([]drawing.Rect, len(shots))
	var width, title unit.Length
	below, above := unit.Length(-1e9), unit.Length(-1e9)
	for i, p := range shots {
		if b := p.view.Bounds; s.Of(b.Width()) > room.Width() || s.Of(b.Height()) > room.Height() {
			return h, false, false
		}
		plates[i] = m.exposed(p, s)
		blocks[i] = dim.Extent(plates[i], ruled(p.ask)).Union(drawing.Bounds(plates[i].Drawn))
		width += blocks[i].Width()
		below, above = max(below, -blocks[i].Min.Y), max(above, blocks[i].Max.Y)
		if p.title != "" {
			title = titleRoom
		}
	}
	spare := (room.Width() - width - betweenTwo*unit.Length(len(shots)-1)) / unit.Length(len(shots)+1)
	high := room.Height() - below - above - title
	fits := spare >= 0 && high >= 0
	spare, high = max(0, spare), max(0, high)
	origin := room.Min.Y + title + high/2 + below // of all pictures of the row
	clean := true
	x := room.Min.X + spare
	for i, p := range shots {
		b := blocks[i]
		frame := drawing.Rect{Min: geom.V(x-spare/2, room.Min.Y+title), Max: geom.V(x+b.Width()+spare/2, room.Max.Y)}
		if i == 0 {
			frame.Min.X = room.Min.X
		}
		if i == len(shots)-1 {
			frame.Max.X = room.Max.X
		}
		plates[i] = plates[i].MoveTo(geom.V(x-b.Min.X, origin))
		item, ok := m.develop(p, plates[i], frame, final)
		h.items = append(h.items, item)
		clean = clean && ok
		x += b.Width() + betweenTwo + spare
	}
	h.box = drawing.Bounds(h.items)
	if title > 0 {
		h.box.Min.Y -= titleRoom
		for i, p := range shots {
			h.items = append(h.items, m.caption(p, s, geom.V(plates[i].Body.Centre().X, h.box.Min.Y+2.5)))
		}
	}
	return h, fits, clean
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

// develop places dimensions, numbers and flags of a shot; it tells whether all
// dimensions found their places. A name for which there is no room inside its
// region hangs on a leader instead.
func (m *maker) develop(p shot, pl dim.Plate, frame drawing.Rect, final bool) (drawing.Item, bool) {
	pl.Frame = frame
	if len(p.flags) > 0 { // dimension lines stand where they must; flags avoid them, and all other lettering avoids the flags
		lines, _ := dim.Place(pl, measured(p.ask))
		flags := m.flags(pl, append(slices.Clone(pl.Drawn), lines...), frame, p.flags)
		pl.Drawn = append(slices.Clone(pl.Drawn), drawing.Group{ID: p.id + "-flags", Title: m.say("findings"), Items: flags})
	}
	ask := slices.Clone(p.ask)
	asked, report := dim.Place(pl, ask)
	if moved := leadOut(ask, report); moved {
		asked, report = dim.Place(pl, ask)
	}
	items := append(append([]drawing.Item(nil), pl.Drawn...), drawing.Group{ID: p.id + "-dimensions", Title: m.say("dimensions"), Items: asked})
	if !final {
		return drawing.Group{ID: p.id, Items: items}, report.Clean()
	}
	more := func(id, title string, list []drawing.Item) {
		if len(list) > 0 {
			items = append(items, drawing.Group{ID: p.id + id, Title: title, Items: list})
		}
	}
	more("-numbers", m.say("item numbers"), m.rings(pl, items, frame, p.rings))
	more("-corners", m.say("corners"), m.tags(pl, items, frame, p.tags))
	return drawing.Group{ID: p.id, Title: p.title, Items: items}, report.Clean()
}

// leadOut turns captions that found no place into notes on a leader.
func leadOut(ask []dim.Request, report dim.Report) bool {
	moved := false
	for _, t := range report.Troubles {
		if c, ok := ask[t.Request].(dim.Caption); ok && len(c.Loop) > 2 {
			ask[t.Request] = dim.Note{At: geom.Polygon(c.Loop...).Centroid(), Lines: c.Lines}
			moved = true
		}
	}
	return moved
}

// caption is the title below a shot.
func (m *maker) caption(p shot, s drawing.Scale, at geom.Vec) drawing.Item {
	t := p.title
	if !p.loose {
		t += "   " + s.String()
	}
	return drawing.Write(at, t, drawing.Standard, drawing.Centre).Strong()
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
