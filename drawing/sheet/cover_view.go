package sheet

import (
	"fmt"
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// coverShots are the desk in the room and the same with the wood taken off the
// steel, or one of them as the job wants; every part is numbered once.
func (m *maker) coverShots() []shot {
	parts := m.parts(func(*model.Part) bool { return true })
	if len(parts) == 0 {
		return nil
	}
	look := m.coverLook()
	whole := m.pictorial("desk", m.say("The desk in the room"), look, parts, nil)
	apart := m.pictorial("parts-apart", m.say("Taken apart, not to scale; numbers: parts list"), look, parts, m.apart())
	switch m.b.Job.Show.Cover {
	case "together":
		whole.rings = m.partRings(look, parts, whole.view)
		return []shot{whole}
	case "apart":
		apart.rings = m.partRings(look, parts, apart.view)
		return []shot{apart}
	}
	apart.rings = m.partRings(look, parts, apart.view)
	return []shot{whole, apart}
}

// Angles of the cover's view: from in front and somewhat above, so that one
// looks under a lifted worktop.
const (
	coverTurn = 28 * unit.Degree
	coverTilt = 20 * unit.Degree
)

// coverLook looks from the side that has fewer shelves: the wall there is left
// out.
func (m *maker) coverLook() view.Look {
	left, right := 0, 0
	for _, p := range m.parts(func(p *model.Part) bool { return p.Rod != nil || p.Kind == model.KindSlab && p.Slab != nil }) {
		switch d := m.behind(p); {
		case d.Y < -math.Sqrt2/2: // on a wall that runs towards the viewer: the right one
			right++
		case d.Y > math.Sqrt2/2:
			left++
		}
	}
	if right > left {
		return view.Axonometric(-coverTurn, coverTilt)
	}
	return view.Axonometric(coverTurn, coverTilt)
}

// behind is the direction of the wall behind a part, left to right.
func (m *maker) behind(p *model.Part) geom.Vec {
	if p.Rod != nil {
		return p.Rod.Wall.Chord().D.Unit()
	}
	return geom.V(1, 0).Turn(p.Slab.Pose.Turn)
}

// apart says how far every part is moved in the picture of the parts: wood up
// from its steel, shelves on rods forward off them.
func (m *maker) apart() map[string]geom.Vec3 {
	by := map[string]geom.Vec3{}
	onRods := map[string]bool{}
	var deep unit.Length
	for _, p := range m.b.Design.Parts {
		if p.Rod != nil {
			onRods[p.Rod.Shelf] = true
		}
		if p.Kind == model.KindSlab && p.Slab != nil {
			deep = max(deep, -p.Slab.Front().Start.Y)
		}
	}
	lift := deep*unit.Length(math.Tan(float64(coverTilt))) + 70
	for _, p := range m.b.Design.Parts {
		switch {
		case p.Slab == nil:
		case onRods[p.ID]:
			out := geom.V(0, -1).Turn(p.Slab.Pose.Turn).Mul(float64(m.rodReach(p) + 90))
			by[p.ID] = out.Up(0)
		case p.Kind == model.KindSlab:
			by[p.ID] = geom.V(0, 0).Up(lift)
		default:
			by[p.ID] = geom.V(0, 0).Up(110)
		}
	}
	return by
}

// rodReach is how far the rods of a shelf stand into it.
func (m *maker) rodReach(shelf *model.Part) unit.Length {
	var d unit.Length
	for _, p := range m.b.Design.Parts {
		if p.Rod != nil && p.Rod.Shelf == shelf.ID {
			d = max(d, p.Rod.InShelf)
		}
	}
	return d
}

// pictorial shows parts and the walls behind them along parallel rays, hidden
// lines removed.
func (m *maker) pictorial(id, title string, look view.Look, parts []*model.Part, by map[string]geom.Vec3) shot {
	return m.staged(id, title, look, parts, func(p *model.Part) []geom.Face {
		var out []geom.Face
		for _, b := range p.Bodies {
			solid := b.Solid
			if d, ok := by[p.ID]; ok {
				solid = solid.Place(geom.Pose{At: d})
			}
			out = append(out, solid.Faces()...)
		}
		return out
	})
}

// staged is pictorial with the faces of every part told.
func (m *maker) staged(id, title string, look view.Look, parts []*model.Part, faces func(*model.Part) []geom.Face) shot {
	s := &stage{}
	for _, p := range parts {
		s.add(view.Item{ID: stem(p.ID), Title: p.ID, Mark: p.Mark, Role: view.Made, DropHidden: true, Faces: faces(p)}, p, nil)
	}
	m.backdrop(s, look)
	v := view.Of(s.scene, look)
	v.Segments = slices.DeleteFunc(v.Segments, func(g view.Segment) bool { return g.Kind == view.Hidden })
	p := shot{picture: picture{id: id, title: title, view: v, paint: m.usual(s), style: m.joinery()}, loose: true}
	pen := p.paint.pen
	p.paint.pen = func(st view.Stroke) (drawing.Pen, bool) {
		if s.walls[st.Item] != nil {
			return m.lines.Fine().In(drawing.Grey), true
		}
		if st.Curved {
			return m.lines.Fine(), true
		}
		return pen(st)
	}
	return p
}

// backdrop puts the faces of those walls on the stage that are seen from the
// room, as far as the desk reaches.
func (m *maker) backdrop(s *stage, look view.Look) {
	w := drawing.Rect{}
	for i, p := range m.parts(func(*model.Part) bool { return true }) {
		b := p.Bounds()
		if box := (drawing.Rect{Min: b.Min.Flat(), Max: b.Max.Flat()}); i == 0 {
			w = box
		} else {
			w = w.Union(box)
		}
	}
	w = w.Grow(180)
	top := m.highest() + 60
	for _, wall := range m.b.Room.Walls {
		l := wall.Chord()
		in := l.D.Unit().Left().Mul(-1)
		if look.Depth(in.Up(0)) <= look.Depth(geom.V(0, 0).Up(0))+0.05 {
			continue // seen from behind
		}
		a, b, ok := clipLine(w, wall.From.At, wall.To.At)
		if !ok {
			continue
		}
		face := geom.Face{Normal: in.Up(0), Loops: [][]geom.Vec3{{a.Up(0), b.Up(0), b.Up(top), a.Up(top)}}, Surface: wall.Name}
		s.add(view.Item{ID: "wall-" + stem(wall.Name), Title: m.sayf("wall %s", m.pass(wall.Name)), Role: view.Wall, Faces: []geom.Face{face}, DropHidden: true}, nil, wall)
	}
}

// partRings numbers every mark once, on a part of that mark that is seen.
func (m *maker) partRings(look view.Look, parts []*model.Part, v view.View) []ring {
	by := map[int]*ring{}
	var order []int
	for i, p := range parts {
		r := by[p.Mark]
		if r == nil {
			r = &ring{id: fmt.Sprintf("cover-number-%d", p.Mark), number: fmt.Sprint(p.Mark)}
			by[p.Mark] = r
			order = append(order, p.Mark)
		}
		r.places = append(r.places, seen(v, i)...)
	}
	var out []ring
	for _, k := range order {
		r := by[k]
		if len(r.places) == 0 { // wholly hidden: the leader ends in a dot over it
			for _, p := range parts {
				if p.Mark == k {
					r.places = append(r.places, look.Project(p.Centroid()))
				}
			}
			r.inside = true
		}
		out = append(out, *r)
	}
	return out
}
