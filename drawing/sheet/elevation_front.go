package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
)

// frontDims gives heights from the floor on the left, places from the origin
// below, and names what is there already.
func (m *maker) frontDims(f facing) []dim.Request {
	var heights []stop
	left := f.window.Min.X + m.strip()
	for _, p := range f.parts {
		b := p.Bounds()
		switch {
		case p.RollOut != nil:
			heights = append(heights, stop{at: geom.V(b.Min.X, b.Max.Z)})
		case p.Slab != nil:
			heights = append(heights, stop{at: geom.V(b.Min.X, p.Slab.Top)}, stop{at: geom.V(b.Min.X, p.Slab.Top-p.Slab.Thickness)})
		case p.Bracket() != nil: // under a worktop its lower edge is at the knees
			if top := m.b.Design.Part(p.Bracket().On().Under); top != nil && top.Kind == model.KindSlab {
				heights = append(heights, stop{at: geom.V(b.Min.X, b.Min.Z)})
			}
		}
	}
	for _, w := range m.b.Room.Walls {
		for _, o := range w.Obstacles {
			if x := f.plane.Along(o.Solid().Bounds().Min.Flat()); o.Depth > 0 && o.Bottom > 500 && f.shows(o) {
				heights = append(heights, stop{at: geom.V(x, o.Bottom)})
			}
		}
	}
	ask := m.heights(geom.V(left, 0), m.say("floor"), heights)
	var xs []stop
	for _, p := range m.stationsAlongBack() {
		if f.plane.Side(p.at) > 0 {
			xs = append(xs, stop{at: geom.V(f.plane.Along(p.at), p.under), name: p.name})
		}
	}
	ask = append(ask, m.alongBack(0, xs)...)
	return append(append(ask, m.obstacleNotes(f)...), m.legCaptions(f)...)
}

// obstacleNotes names what is on the walls within the window.
func (m *maker) obstacleNotes(f facing) []dim.Request {
	var ask []dim.Request
	for _, w := range m.b.Room.Walls {
		for _, o := range w.Obstacles {
			if f.shows(o) {
				ask = append(ask, dim.Note{At: f.face(o).Centre(), Lines: m.noted(o.Name)})
			}
		}
	}
	return ask
}

// face is what an elevation shows of an obstacle.
func (f facing) face(o model.Obstacle) drawing.Rect {
	c := o.Solid().Bounds()
	a, b := f.plane.Along(c.Min.Flat()), f.plane.Along(c.Max.Flat())
	return drawing.Rect{Min: geom.V(min(a, b), o.Bottom), Max: geom.V(max(a, b), min(o.Top, f.window.Max.Y))}
}

// shows tells whether an elevation shows an obstacle: what is hidden in a wall
// is shown only where one looks at that wall.
func (f facing) shows(o model.Obstacle) bool {
	square := math.Abs(o.Wall.Chord().D.Unit().Dot(f.plane.D.Unit())) > math.Sqrt2/2
	return f.face(o).Meets(f.window) && f.plane.Side(o.Solid().Bounds().Min.Flat()) > -1 && (square || o.Depth > 0)
}

// legCaptions names the leg room.
func (m *maker) legCaptions(f facing) []dim.Request {
	var ask []dim.Request
	for _, z := range m.b.Design.Zones {
		if box, ok := f.zone(z); ok && z.Kind == model.ThighZone {
			ask = append(ask, dim.Caption{Loop: box.Corners(), Lines: append([]string{m.say("leg room")}, m.noted(z.Person)...)})
		}
	}
	return ask
}

// zone is the leg room as an elevation shows it.
func (f facing) zone(z model.Zone) (drawing.Rect, bool) {
	if z.Plan.Empty() {
		return drawing.Rect{}, false
	}
	lo, hi := z.Plan.Bounds()
	a, b := f.plane.Along(lo), f.plane.Along(hi)
	box := drawing.Rect{Min: geom.V(min(a, b), z.Floor), Max: geom.V(max(a, b), z.Floor+z.Height)}
	return box, f.window.Grow(20).Holds(box)
}

// legFrames draws the outline of the leg room seen from the front.
func (m *maker) legFrames(pl dim.Plate, f facing) []drawing.Item {
	var out []drawing.Item
	for _, z := range m.b.Design.Zones {
		if box, ok := f.zone(z); ok && z.Kind == model.ThighZone {
			pen := m.lines.Adjacent()
			if m.legsFail([]model.Zone{z}, z.Person) {
				pen.Ink, pen.Width = drawing.Red, m.lines.Wide
			}
			out = append(out, drawing.Outline(paperChain(pl, box.Corners()), pen))
		}
	}
	return out
}
