package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// wallThickness is how much of a wall a drawing shows.
const wallThickness unit.Length = 90

// stage is a scene whose items remember what they are.
type stage struct {
	scene     view.Scene
	parts     []*model.Part // by item, nil for other things
	walls     []*model.Wall // by item
	elevation bool          // seen from the side: y of the view is height
}

func (s *stage) add(it view.Item, p *model.Part, w *model.Wall) {
	s.scene.Items = append(s.scene.Items, it)
	s.parts = append(s.parts, p)
	s.walls = append(s.walls, w)
}

// addParts puts parts on the stage.
func (s *stage) addParts(parts ...*model.Part) {
	for _, p := range parts {
		it := view.Item{ID: stem(p.ID), Title: p.ID, Mark: p.Mark, Role: view.Made}
		for _, b := range p.Bodies {
			it.Faces = append(it.Faces, b.Solid.Faces()...)
		}
		s.add(it, p, nil)
	}
}

// addWalls puts the walls on the stage, from the floor to a height.
func (s *stage) addWalls(m *maker, top unit.Length) {
	for _, w := range m.b.Room.Walls {
		solid := geom.Prism(wallBody(w, m.b.Room.At), -0.001, top, "wall")
		if solid.Err() != nil {
			continue
		}
		s.add(view.Item{ID: "wall-" + stem(w.Name), Title: m.sayf("wall %s", m.pass(w.Name)), Role: view.Wall, Faces: solid.Faces(), DropHidden: true}, nil, w)
	}
}

// wallBody is the strip behind a wall's face, mitred with its neighbours.
func wallBody(w *model.Wall, z unit.Length) geom.Region {
	face := w.Face(z)
	outer := w.LineAt(z).Shift(wallThickness)
	a, b := outer.P, outer.P.Add(outer.D)
	if n := w.Previous(); n != nil {
		if p, ok := n.LineAt(z).Shift(wallThickness).Meet(outer); ok {
			a = p
		}
	}
	if n := w.Next(); n != nil {
		if p, ok := outer.Meet(n.LineAt(z).Shift(wallThickness)); ok {
			b = p
		}
	}
	return geom.Polygon(append(append([]geom.Vec(nil), face...), b, a)...)
}

// addObstacles puts what stands on the walls on the stage.
func (s *stage) addObstacles(r *model.Room) {
	for _, w := range r.Walls {
		for i, o := range w.Obstacles {
			solid := o.Solid()
			if solid.Err() != nil {
				continue
			}
			s.add(view.Item{ID: fmt.Sprintf("obstacle-%s-%d", stem(w.Name), i+1), Title: o.Name, Role: view.Obstacle, Faces: solid.Faces(), DropHidden: true, SeeThrough: true}, nil, w)
		}
	}
}

// addZones puts the leg room on the stage.
func (s *stage) addZones(zones ...model.Zone) {
	for i, z := range zones {
		if solid := z.Solid(); solid.Err() == nil {
			s.add(view.Item{ID: fmt.Sprintf("zone-%d", i+1), Title: z.Name, Role: view.Zone, Faces: solid.Faces()}, nil, nil)
		}
	}
}

// item is the index of a part on the stage, -1 if it is not there.
func (s *stage) item(p *model.Part) int {
	for i, q := range s.parts {
		if q == p {
			return i
		}
	}
	return -1
}

// usual is the look of lines and hatches in views of the room.
func (m *maker) usual(s *stage) paint {
	g := m.lines
	return paint{
		pen: func(st view.Stroke) (drawing.Pen, bool) {
			switch it := s.scene.Items[st.Item]; {
			case it.Role == view.Obstacle || it.Role == view.Zone || it.Role == view.Ghost:
				return g.Adjacent(), st.Kind != view.Hidden || it.Role != view.Obstacle
			case st.Kind == view.Hidden:
				return g.Hidden(), true
			case it.Role == view.Wall:
				return drawing.Pen{Width: 0.7}, true
			case st.Kind == view.Cut:
				return g.Outline(), true
			}
			return g.Outline(), true
		},
		hatch: func(i int) drawing.Pattern { return s.pattern(i) },
		group: func(i int) (string, string) { return s.scene.Items[i].ID, s.scene.Items[i].Title },
	}
}

// pattern is the hatch of an item by its material. Slabs take turns in their
// direction, so that neighbours can be told apart.
func (s *stage) pattern(i int) drawing.Pattern {
	if w := s.walls[i]; w != nil {
		return drawing.Pattern{Material: wallHatch(w.Make)}
	}
	p := s.parts[i]
	switch {
	case p == nil:
		return drawing.Pattern{Material: drawing.Plain}
	case p.Angle != nil || p.Rod != nil:
		return drawing.Pattern{Material: drawing.Steel}
	}
	turn := unit.Angle(0)
	if p.Mark%2 == 0 {
		turn = 90 * unit.Degree
	}
	return drawing.Pattern{Material: drawing.EndGrain, Turn: turn}
}

func wallHatch(w model.WallMake) drawing.Material {
	switch w {
	case model.Brick, model.Hollow:
		return drawing.Masonry
	case model.Concrete:
		return drawing.Concrete
	case model.Aerated:
		return drawing.Aerated
	case model.Stud:
		return drawing.StudWall
	case model.Plasterboard:
		return drawing.Plaster
	}
	return drawing.Plain
}

// own puts a part into its own axes: the pose of a slab or an angle undone.
func own(s geom.Solid, pose geom.Pose) geom.Solid {
	back := geom.V(0, 0).Sub(pose.At.Flat()).Turn(-pose.Turn)
	return s.Place(geom.Pose{At: back.Up(-pose.At.Z), Turn: -pose.Turn})
}
