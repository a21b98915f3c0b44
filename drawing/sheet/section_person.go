package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// sitter is somebody at a seat, seen from the side: heights above the floor
// datum in shoes, depths from the belly.
type sitter struct {
	person                                     model.Person
	floor, seat, thigh, knee, elbow, eye, head unit.Length
	toKnee, toToe                              unit.Length
}

// sitters are the described people of a seat, their feet on the floor there.
func (m *maker) sitters(c cutting) []sitter {
	if c.seat == nil {
		return nil
	}
	floor := m.b.Room.FloorAt(c.at(c.slab.Slab.Front().Start.Y))
	var out []sitter
	for _, p := range c.seat.People {
		legs, err := model.LegRoomOf(p)
		if err != nil || p.Stature == 0 {
			continue
		}
		s, err := p.Body().Sitting()
		if err != nil {
			continue
		}
		up := legs.Elbow - s.Elbow.Mean + floor // shoe and floor
		out = append(out, sitter{person: p, floor: floor, seat: s.Seat.Mean + up, thigh: s.ThighTop.Mean + up, knee: s.Knee.Mean + up,
			elbow: legs.Elbow + floor, eye: s.Eye.Mean + up, head: s.Head.Mean + up, toKnee: s.BellyToKnee.Mean, toToe: s.BellyToToe.Mean})
	}
	return out
}

// legFinding is what the check of the leg room says about a zone.
func (m *maker) legFinding(z model.Zone) (find.Finding, bool) {
	for _, f := range m.b.Findings {
		if f.Rule == "leg-room" && f.Title == "Room for "+z.Name {
			return f, true
		}
	}
	return find.Finding{}, false
}

// legsFail tells whether something stands in somebody's leg room.
func (m *maker) legsFail(zones []model.Zone, who string) bool {
	for _, z := range zones {
		if f, ok := m.legFinding(z); ok && z.Person == who && f.Status.Severity() >= find.Fail.Severity() {
			return true
		}
	}
	return false
}

// legFills shades the leg room, once where people share it.
func (m *maker) legFills(pl dim.Plate, c cutting, walls upright) []drawing.Item {
	var all []geom.Region
	for _, z := range c.zones {
		if box, ok := c.zoneBox(z, walls); ok {
			all = append(all, geom.Rect(box.Min, box.Max))
		}
	}
	if len(all) == 0 {
		return nil
	}
	var loops [][]geom.Vec
	for _, l := range geom.UnionAll(all...).Loops() {
		loops = append(loops, paperChain(pl, l))
	}
	return []drawing.Item{drawing.Group{ID: "leg-room", Title: m.say("leg room"), Items: []drawing.Item{drawing.Area{Loops: loops, Ink: drawing.Pale}}}}
}

// legOutlines draws the border of everybody's leg room.
func (m *maker) legOutlines(pl dim.Plate, c cutting, walls upright) []drawing.Item {
	by := map[string][]geom.Region{}
	var order []string
	for _, z := range c.zones {
		if box, ok := c.zoneBox(z, walls); ok {
			if len(by[z.Person]) == 0 {
				order = append(order, z.Person)
			}
			by[z.Person] = append(by[z.Person], geom.Rect(box.Min, box.Max))
		}
	}
	var out []drawing.Item
	for _, who := range order {
		g := drawing.Group{ID: "leg-room-" + stem(who), Title: m.sayf("leg room of %s", who)}
		pen := m.lines.Adjacent()
		if m.legsFail(c.zones, who) {
			pen.Ink, pen.Width = drawing.Red, m.lines.Wide
		}
		for _, l := range geom.UnionAll(by[who]...).Loops() {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), pen))
		}
		out = append(out, g)
	}
	return out
}

// zoneBox is what a section shows of a zone, up to the wall.
func (c cutting) zoneBox(z model.Zone, walls upright) (drawing.Rect, bool) {
	from, to, ok := c.along(z.Plan)
	for _, x := range walls.faces {
		if x > from {
			to = min(to, x)
		}
	}
	return drawing.Rect{Min: geom.V(from, z.Floor), Max: geom.V(to, z.Floor+z.Height)}, ok && to > from
}

// figures draws everybody who sits there in grey: a hint, drawn from the same
// estimates as the leg room.
func (m *maker) figures(pl dim.Plate, c cutting) []drawing.Item {
	pen := m.lines.Fine().In(drawing.Grey)
	var out []drawing.Item
	for _, f := range m.sitters(c) {
		belly, found := unit.Length(0), false
		for _, z := range c.zones {
			if from, _, ok := c.along(z.Plan); ok && z.Person == f.person.Name && z.Kind == model.ThighZone {
				belly, found = from, true
			}
		}
		if !found {
			continue
		}
		g := drawing.Group{ID: "figure-" + stem(f.person.Name), Title: m.sayf("%s, sitting", f.person.Name)}
		body, arm, chair := f.shape(belly)
		for _, r := range []geom.Region{chair.Minus(body), body, arm} {
			for _, l := range r.Loops() {
				g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), pen))
			}
		}
		out = append(out, g)
	}
	return out
}

// shape is the outline of a sitting figure whose belly is at a place: body, arm
// and seat. Heights are estimates of the person; the roundings are drawn.
func (f sitter) shape(belly unit.Length) (figure, arm, chair geom.Region) {
	const trunk = 115
	hip := geom.V(belly-trunk, f.seat+trunk)
	shoulder := geom.V(belly-trunk-10, f.elbow+(f.eye-f.elbow)*0.62)
	kneeR := (f.knee - f.seat) * 0.5
	knee := geom.V(belly+f.toKnee-kneeR, f.knee-kneeR)
	ankle := geom.V(knee.X-15, f.floor+90)
	toe := geom.V(max(ankle.X+120, belly+f.toToe-25), f.floor+25)
	thighR := (f.thigh - f.seat) / 2
	skull := (f.head - f.eye) * 0.92
	figure = geom.UnionAll(
		limb(hip, trunk, shoulder, trunk*0.86),
		limb(geom.V(hip.X+20, f.seat+thighR), thighR, geom.V(belly+f.toKnee*0.3, f.thigh-thighR), thighR),
		limb(geom.V(belly+f.toKnee*0.3, f.thigh-thighR), thighR, knee, kneeR),
		limb(knee, kneeR, ankle, 42),
		limb(geom.V(ankle.X-20, f.floor+45), 42, toe, 25),
		limb(geom.V(shoulder.X+5, shoulder.Y+60), 55, geom.V(shoulder.X+20, f.head-skull*1.4), 50),
		limb(geom.V(shoulder.X+25, f.head-skull), skull, geom.V(shoulder.X+30, f.head-skull*1.35), skull*0.85),
	)
	elbow := geom.V(belly-trunk+5, f.elbow+42)
	arm = geom.UnionAll(
		limb(geom.V(shoulder.X+10, shoulder.Y-5), 52, elbow, 42),
		limb(elbow, 42, geom.V(elbow.X+0.165*f.person.Stature, f.elbow+36), 28),
	)
	chair = geom.Rect(geom.V(belly-2*trunk-5, f.seat-45), geom.V(belly+f.toKnee*0.42, f.seat))
	return figure, arm, chair
}

// limb is the hull of two discs.
func limb(a geom.Vec, ra unit.Length, b geom.Vec, rb unit.Length) geom.Region {
	const chord = 0.8
	n := b.Sub(a).Unit().Left()
	quad := geom.Polygon(a.Sub(n.Mul(float64(ra))), b.Sub(n.Mul(float64(rb))), b.Add(n.Mul(float64(rb))), a.Add(n.Mul(float64(ra))))
	return geom.UnionAll(geom.Circle(a, ra, chord), geom.Circle(b, rb, chord), quad)
}
