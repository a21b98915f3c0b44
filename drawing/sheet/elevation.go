package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// elevationSheets looks at the back wall; the side walls are cut.
func elevationSheets(m *maker) []page {
	parts := m.parts(func(*model.Part) bool { return true })
	if len(parts) == 0 {
		return nil
	}
	box := parts[0].Bounds()
	for _, p := range parts {
		b := p.Bounds()
		box.Min = geom.Vec3{X: min(box.Min.X, b.Min.X), Y: min(box.Min.Y, b.Min.Y), Z: min(box.Min.Z, b.Min.Z)}
		box.Max = geom.Vec3{X: max(box.Max.X, b.Max.X), Y: max(box.Max.Y, b.Max.Y), Z: max(box.Max.Z, b.Max.Z)}
	}
	s := &stage{elevation: true}
	top := box.Max.Z + 250
	s.addWalls(m.b.Room, top)
	s.addParts(parts...)
	s.addObstacles(m.b.Room)
	s.addZones(m.b.Design.Zones...)
	s.scene = s.scene.DropHidden(view.Wall)
	plane := geom.Line{P: geom.V(0, box.Min.Y-20), D: geom.V(1, 0)}
	v := view.Of(s.scene, view.Section(plane))
	pic := picture{id: "front", title: "Front elevation, seen from the room", view: v, paint: m.usual(s), style: dim.Wood}
	left, right := v.Bounds.Min.X, v.Bounds.Max.X
	pic.extra = func(pl dim.Plate) []drawing.Item { return []drawing.Item{m.floorLine(pl, left, right)} }
	var heights []geom.Vec
	var xs []geom.Vec
	for _, p := range parts {
		b := p.Bounds()
		if p.Slab != nil || p.RollOut != nil {
			heights = append(heights, geom.V(b.Min.X, b.Max.Z))
			if p.Slab != nil {
				heights = append(heights, geom.V(b.Min.X, b.Min.Z))
			}
			if p.Kind != model.KindSlab {
				xs = append(xs, geom.V(b.Min.X, b.Min.Z), geom.V(b.Max.X, b.Min.Z))
			}
		}
	}
	for _, seat := range m.b.Design.Seats {
		if slab := m.b.Design.Part(seat.At); slab != nil {
			xs = append(xs, geom.V(slab.Slab.Pose.Plan(geom.V(seat.Centre, 0)).X, 0))
		}
	}
	pic.ask = append(row(geom.V(left+wallThickness, 0), "floor", dim.Vertical, dim.LeftOf, heights...), row(geom.V(0, 0), m.b.Room.Walls[0].To.Name, dim.Horizontal, dim.Below, xs...)...)
	pic.ask = append(pic.ask, m.balloons(s, v)...)
	pg := m.new("front", "Front elevation")
	free := drawing.Free(m.size)
	items, scale := m.column(free[0], pic)
	pg.sheet.Add(items...)
	pg.sheet.Scale = scale.String()
	pg.block.DocumentType = "arrangement"
	return []page{pg}
}

// floorLine draws the floor below a view.
func (m *maker) floorLine(pl dim.Plate, left, right unit.Length) drawing.Item {
	at := func(x unit.Length) geom.Vec { return pl.Origin.Add(geom.V(pl.Scale.Of(x), 0)) }
	return drawing.Line(at(left-60), at(right+60), drawing.Pen{Width: 0.7})
}
