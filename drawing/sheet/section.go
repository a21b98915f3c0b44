package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
)

// sectionSheets cuts through every seat, or through the middle of the first
// slab where nobody sits.
func sectionSheets(m *maker) []page {
	var out []page
	for _, seat := range m.b.Design.Seats {
		if slab := m.b.Design.Part(seat.At); slab != nil {
			out = append(out, m.sectionSheet(slab, seat.Name, slab.Slab.Pose.Plan(geom.V(seat.Centre, 0)), m.zonesOf(seat)))
		}
	}
	if len(out) == 0 {
		for _, p := range m.parts(func(p *model.Part) bool { return p.Kind == model.KindSlab }) {
			return []page{m.sectionSheet(p, p.ID, p.Slab.Pose.Plan(p.Slab.TopOutline().Centroid()), nil)}
		}
	}
	return out
}

func (m *maker) zonesOf(seat model.Seat) []model.Zone {
	var out []model.Zone
	for _, z := range m.b.Design.Zones {
		if z.Seat == seat.Name {
			out = append(out, z)
		}
	}
	return out
}

// sectionSheet looks along the slab's back edge to the left: the wall is cut on
// the right.
func (m *maker) sectionSheet(slab *model.Part, name string, at geom.Vec, zones []model.Zone) page {
	s := &stage{elevation: true}
	parts := m.parts(func(*model.Part) bool { return true })
	top := slab.Bounds().Max.Z
	for _, p := range parts {
		top = max(top, p.Bounds().Max.Z)
	}
	s.addWalls(m.b.Room, top+200)
	s.addParts(parts...)
	s.addZones(zones...)
	back := geom.V(0, 1).Turn(slab.Slab.Pose.Turn)
	plane := geom.Line{P: at, D: back}
	v := view.Of(s.scene, view.Section(plane))
	pic := picture{id: "section", title: "Section through " + name, view: v, paint: m.usual(s), style: dim.Wood}
	pic.extra = func(pl dim.Plate) []drawing.Item {
		return []drawing.Item{m.floorLine(pl, v.Bounds.Min.X, v.Bounds.Max.X)}
	}
	sp := slab.Slab
	front := plane.Along(sp.Pose.Plan(sp.Front().Start))
	heights := []geom.Vec{geom.V(front, sp.Top), geom.V(front, sp.Top-sp.Thickness)}
	for _, z := range zones {
		heights = append(heights, geom.V(front, z.Floor+z.Height))
	}
	for _, p := range parts {
		if p.Kind == model.KindShelf {
			b := p.Bounds()
			heights = append(heights, geom.V(front, b.Min.Z))
		}
	}
	pic.ask = row(geom.V(front, 0), "floor", dim.Vertical, dim.LeftOf, heights...)
	pic.ask = append(pic.ask, dim.Linear{A: geom.V(front, sp.Top), B: geom.V(0, sp.Top), Dir: dim.Horizontal, Side: dim.Above})
	pg := m.new("section-"+stem(name), "Section through "+name)
	free := drawing.Free(m.size)
	items, scale := m.column(free[0], pic)
	pg.sheet.Add(items...)
	pg.sheet.Scale = scale.String()
	pg.block.DocumentType = "section"
	return pg
}
