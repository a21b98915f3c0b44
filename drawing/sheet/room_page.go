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
	if len(drawing.Free(m.size)) == 1 {
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
	free := drawing.Free(m.size)
	var f *flow
	picture := free[0]
	if len(free) > 1 {
		f = m.down(drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X-2, free[1].Max.Y-2)})
	} else {
		probe := m.down(free[0])
		notes(probe)
		picture.Min.Y = free[0].Min.Y + free[0].Max.Y - probe.corner().Y
		f = m.down(drawing.Rect{Min: free[0].Min, Max: geom.V(free[0].Max.X, picture.Min.Y)})
	}
	notes(f)
	alone, scale := m.pictures(pg, p)
	if !f.full && picture.Height() > 60 {
		if h := m.hang([]drawing.Rect{picture}, p); !bigger(scale, h.scale) {
			pg.sheet.Add(h.items...)
			pg.sheet.Add(f.items...)
			pg.sheet.Scale = h.scale.String()
			return []page{pg}
		}
	}
	f = m.down(free[0]).onto(free[0])
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
}

// ladder makes a running dimension of stops. Stops that lie together within
// 0.05 mm become one that carries all their names; heights below the floor
// carry a sign.
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
			q.Points, q.Labels = append(q.Points, s.at), append(q.Labels, s.label(m, d, dir == dim.Vertical))
		}
	}
	if len(q.Points) == 0 {
		return nil
	}
	return []dim.Request{q}
}

// label is what stands at a stop.
func (s stop) label(m *maker, d unit.Length, signed bool) dim.Label {
	l := dim.Label{}
	if s.name != "" {
		l.Suffix = " " + s.name
	}
	if s.about {
		l = dim.Label{Text: m.about(d) + l.Suffix}
	} else if d < 0 && signed {
		l.Prefix = "-"
	}
	return l
}
