package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
)

// angleSheets gives one sheet per distinct angle; equal ones share it.
func angleSheets(m *maker) []page {
	var out []page
	done := map[int]bool{}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Angle != nil }) {
		if !done[p.Mark] {
			done[p.Mark] = true
			out = append(out, m.angleSheet(p))
		}
	}
	return out
}

func (m *maker) angleSheet(p *model.Part) page {
	a := p.Angle
	pg := m.new("angle-"+stem(p.ID), fmt.Sprintf("%d  %s", p.Mark, p.ID))
	s := &stage{elevation: true}
	it := view.Item{ID: stem(p.ID), Title: p.ID, Mark: p.Mark, Role: view.Made, DropHidden: true}
	it.Faces = own(p.Bodies[0].Solid, a.Pose()).Faces()
	s.add(it, p, nil)
	free := drawing.Free(m.size)
	front := picture{id: "wall-leg", title: "Wall leg, seen from the room", view: view.Of(s.scene, view.Front()), paint: m.usual(s), style: dim.Steel, ask: m.legDims(a, model.WallLeg)}
	plan := picture{id: "seat-leg", title: "Seat leg, seen from above", view: view.Of(s.scene, view.Plan()), paint: m.usual(s), style: dim.Steel, ask: m.legDims(a, model.SeatLeg)}
	items, scale := m.column(free[0], front, plan)
	pg.sheet.Add(items...)
	pg.sheet.Scale = scale.String()
	pg.block.DocumentType = "part drawing, steel"
	pg.block.Material = "S235, " + a.Section.Name + " EN 10056-1, raw, burrs off"
	pg.block.Mass = m.kg(p.Mass())
	pg.block.Tolerance = "length +0/-1, holes ±1"
	if len(free) > 1 {
		room := free[1]
		t, box := m.holeTable(a).draw(geom.V(room.Min.X, room.Max.Y), room.Width()-4, m.lines)
		_ = box
		pg.sheet.Add(drawing.Group{ID: "holes", Title: "holes", Items: t})
	}
	return pg
}

// legDims gives the length, the hole line and the holes by running dimensions
// from the left end.
func (m *maker) legDims(a *model.AnglePart, leg model.Leg) []dim.Request {
	down := a.Section.Leg
	if leg == model.WallLeg && a.LegUp {
		down = -(a.Section.Leg - a.Section.Thickness)
	}
	ask := []dim.Request{dim.Linear{A: geom.V(0, -down), B: geom.V(a.Length, -down), Dir: dim.Horizontal, Side: dim.Below, Label: dim.Label{Tolerance: "+0/-1"}},
		dim.Linear{A: geom.V(0, 0), B: geom.V(0, -down), Dir: dim.Vertical, Side: dim.LeftOf}}
	var xs []geom.Vec
	for _, h := range a.Holes {
		if h.Leg != leg {
			continue
		}
		y := -h.FromHeel
		if leg == model.WallLeg && a.LegUp {
			y = h.FromHeel - a.Section.Thickness
		}
		at := geom.V(h.X, y)
		if len(xs) == 0 {
			text := dim.Label{}
			if h.Slot > 0 {
				text.Text = fmt.Sprintf("slot %s x %s %s", m.length(h.Dia), m.length(h.Dia+h.Slot), map[bool]string{true: "along", false: "across"}[h.Along])
			}
			ask = append(ask, dim.Diameter{Centre: at, Dia: h.Dia, Count: holes(a, leg), Label: text})
			ask = append(ask, dim.Linear{A: geom.V(a.Length, 0), B: geom.V(h.X, y), Dir: dim.Vertical, Side: dim.RightOf})
		}
		xs = append(xs, at)
	}
	return append(ask, row(geom.V(0, 0), "left end", dim.Horizontal, dim.Above, xs...)...)
}

func holes(a *model.AnglePart, leg model.Leg) int {
	n := 0
	for _, h := range a.Holes {
		if h.Leg == leg {
			n++
		}
	}
	return n
}

func (m *maker) holeTable(a *model.AnglePart) table {
	t := table{heads: []string{"hole", "leg", "x from left end", "from heel", "size", "for"}, right: []bool{false, false, true, true, false, false}}
	for _, h := range a.Holes {
		size := "Ø" + m.length(h.Dia)
		if h.Slot > 0 {
			size = fmt.Sprintf("slot %s x %s %s", m.length(h.Dia), m.length(h.Dia+h.Slot), map[bool]string{true: "along", false: "across"}[h.Along])
		}
		t.rows = append(t.rows, []string{h.Name, string(h.Leg), m.length(h.X), m.length(h.FromHeel), size, h.For})
	}
	return t
}
