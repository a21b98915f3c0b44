package sheet

import (
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// elevationSheets looks at the back wall from the room, and then at every other
// wall that carries something; the walls beside are cut.
func elevationSheets(m *maker) []page {
	if len(m.parts(func(p *model.Part) bool { return p.Rod == nil })) == 0 {
		return nil
	}
	pg := m.new("front", m.say("Front elevation, seen from the room"))
	pg.block.DocumentType = m.say("arrangement")
	pg, _ = m.pictures(pg, m.frontShot())
	return append([]page{pg}, m.wallPages()...)
}

// facing is an elevation: a wall, the plane in front of it that the view is
// cut at, and the stretch of that plane that is shown.
type facing struct {
	id, title string
	plane     geom.Line // along the wall; what lies to its left is seen
	window    drawing.Rect
	walls     upright
	parts     []*model.Part
}

// highest is the upper end of what elevations show.
func (m *maker) highest() unit.Length {
	var top unit.Length
	for _, p := range m.parts(func(*model.Part) bool { return true }) {
		top = max(top, p.Bounds().Max.Z)
	}
	top += 50
	if c := m.b.Room.Ceiling; c > 0 {
		top = min(top, c)
	}
	return top
}

// frontShot looks along y at everything.
func (m *maker) frontShot() shot {
	parts := m.parts(func(p *model.Part) bool { return p.Rod == nil }) // rods are inside wall and wood
	lo, hi := parts[0].Bounds().Min, parts[0].Bounds().Max
	for _, p := range parts {
		b := p.Bounds()
		lo = geom.Vec3{X: min(lo.X, b.Min.X), Y: min(lo.Y, b.Min.Y)}
		hi = geom.Vec3{X: max(hi.X, b.Max.X)}
	}
	f := facing{id: "front", title: m.say("Front elevation, seen from the room"), parts: parts}
	f.plane = geom.Line{P: geom.V(0, m.viewpoint(parts, (lo.X+hi.X)/2)), D: geom.V(1, 0)}
	f.walls = m.uprightWalls(f.plane, lo.X-unit.M, hi.X+unit.M)
	f.window = drawing.Rect{Min: geom.V(lo.X-m.strip(), -30), Max: geom.V(hi.X+m.strip(), m.highest())}
	for _, x := range f.walls.faces {
		if x < lo.X+60 {
			f.window.Min.X = x - m.strip()
		}
		if x > hi.X-60 {
			f.window.Max.X = x + m.strip()
		}
	}
	o := m.origin().At.X
	f.window.Min.X, f.window.Max.X = min(f.window.Min.X, o-m.strip()), max(f.window.Max.X, o+m.strip())
	p := m.elevationShot(f)
	p.ask = m.frontDims(f)
	return p
}

// elevationShot draws an elevation without its dimensions.
func (m *maker) elevationShot(f facing) shot {
	s := &stage{elevation: true}
	s.addParts(f.parts...)
	s.addWalls(m, 6*unit.M)
	s.addObstacles(m.b.Room)
	look := view.Section(f.plane)
	v := window(view.Of(s.scene, look), f.window, func(st view.Stroke) bool {
		if s.scene.Items[st.Item].Role == view.Wall {
			return st.Kind == view.Visible
		}
		return st.Kind != view.Hidden
	})
	v = m.endless(s, v, look)
	v.Cuts = slices.DeleteFunc(v.Cuts, func(a view.CutArea) bool { return s.parts[a.Item] == nil })
	p := shot{picture: picture{id: f.id, title: f.title, view: v, paint: m.elevationPaint(s, f), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := append(f.walls.draw(m, pl, f.window, 0), m.floor(pl, f.window, 0))
		if f.id == "front" {
			out = append(out, m.legFrames(pl, f)...)
		}
		return out
	}
	p.tags = m.cornersOver(f)
	p.rings = m.cutRings(s, v, f.window)
	for i := range p.rings {
		p.rings[i].id = f.id + "-" + p.rings[i].id
	}
	return p
}

// elevationPaint draws parts in wide lines, wherever they stand, and the
// corners of the room in narrow ones.
func (m *maker) elevationPaint(s *stage, f facing) paint {
	p := m.cutPaint(s, f.plane)
	cut := p.pen
	p.pen = func(st view.Stroke) (drawing.Pen, bool) {
		if s.scene.Items[st.Item].Role == view.Made && st.Kind == view.Visible && !st.Curved {
			return m.lines.Outline(), true
		}
		return cut(st)
	}
	return p
}

// cornersOver names the corners that an elevation looks at, near its upper end.
func (m *maker) cornersOver(f facing) []tag {
	var list []tag
	for _, c := range m.b.Room.Corners {
		x := f.plane.Along(c.At)
		if f.plane.Side(c.At) > 0 && x > f.window.Min.X && x < f.window.Max.X && c.Angle != 0 {
			list = append(list, tag{c.Name, geom.V(x, f.window.Max.Y-20)})
		}
	}
	return list
}

// viewpoint is the y in front of which nothing stands that the front elevation
// shows. Where a worktop runs up to a wall in front, it is cut just before the
// foremost front edge that faces the viewer.
func (m *maker) viewpoint(parts []*model.Part, x unit.Length) unit.Length {
	foremost := func(list []*model.Part) unit.Length {
		y := list[0].Bounds().Min.Y
		for _, p := range list {
			y = min(y, p.Bounds().Min.Y)
		}
		return y - 20
	}
	y := foremost(parts)
	if m.b.Room.Plan(m.b.Room.At).Contains(geom.V(x, y)) {
		return y
	}
	square := m.parts(func(p *model.Part) bool {
		return p.RollOut != nil || p.Kind == model.KindSlab && math.Abs(math.Sin(float64(p.Slab.Pose.Turn))) < math.Sqrt2/2
	})
	if len(square) == 0 {
		return parts[0].Centroid().Y
	}
	return foremost(square)
}
