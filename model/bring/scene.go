package bring

import (
	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Scene is a design made ready to be taken apart.
type Scene struct {
	Design *model.Design
	room   []lump
	parts  map[*model.Part][]lump
	looks  int // that may still be spent on searches
	proof  int // and on proofs
}

// mostLooks bounds the searches for all parts of a design together.
const mostLooks = 6000

// NewScene prepares a finished design.
func NewScene(d *model.Design) *Scene {
	s := &Scene{Design: d, room: roomLumps(d.Room), parts: map[*model.Part][]lump{}, looks: mostLooks, proof: proofLooks}
	for _, p := range d.Parts {
		if len(p.Bodies) > 0 {
			s.parts[p] = lumpsOf(p)
		}
	}
	return s
}

// frame is a part's own axes, with the origin in the middle of the part: x along
// its long edge, y towards the wall behind it, z up.
type frame struct{ pose geom.Pose }

func frameOf(p *model.Part, lumps []lump) frame {
	turn := turnOf(p)
	box := boxOf(lumps, geom.Pose{Turn: turn})
	mid := geom.Pose{Turn: turn}.Space(box.Min.Add(box.Max).Mul(0.5))
	return frame{geom.Pose{At: mid, Turn: turn}}
}

func turnOf(p *model.Part) unit.Angle {
	switch {
	case p.Slab != nil:
		return p.Slab.Pose.Turn
	case p.Bracket() != nil:
		return p.Bracket().Pose().Turn
	case p.Rod != nil:
		return p.Rod.Wall.Chord().D.Angle()
	case p.RollOut != nil:
		return p.RollOut.Turn
	}
	return 0
}

// own takes a place from the room's axes to the part's.
func (f frame) own(v geom.Vec3) geom.Vec3 { return f.pose.Unplan(v.Flat()).Up(v.Z - f.pose.At.Z) }

func boxOf(lumps []lump, pose geom.Pose) geom.Box {
	var b geom.Box
	first := true
	for _, l := range lumps {
		for _, v := range append(append([]geom.Vec3{}, l.bottom...), l.top...) {
			q := pose.Unplan(v.Flat()).Up(v.Z - pose.At.Z)
			if first {
				b, first = geom.Box{Min: q, Max: q}, false
			}
			b.Min = geom.Vec3{X: min(b.Min.X, q.X), Y: min(b.Min.Y, q.Y), Z: min(b.Min.Z, q.Z)}
			b.Max = geom.Vec3{X: max(b.Max.X, q.X), Y: max(b.Max.Y, q.Y), Z: max(b.Max.Z, q.Z)}
		}
	}
	return b
}

// task is one part to be taken out.
type task struct {
	scene  *Scene
	part   *model.Part
	frame  frame
	own    []lump // in its own axes
	box    geom.Box
	moving []motion.Body
	room   []motion.Body // in the part's axes
	ends   unit.Length   // the furthest end of an open room's walls, along y
	others map[*model.Part][]motion.Body
}

func (s *Scene) task(p *model.Part) *task {
	t := &task{scene: s, part: p, frame: frameOf(p, s.parts[p]), others: map[*model.Part][]motion.Body{}}
	t.own = t.toOwn(s.parts[p])
	t.box = boxOf(t.own, geom.Pose{})
	t.moving = bodies(t.own)
	t.room = bodies(t.toOwn(s.roomFor(p)))
	if r := s.Design.Room; !r.Closed {
		for _, c := range []model.Corner{r.Corners[0], r.Corners[len(r.Corners)-1]} {
			t.ends = min(t.ends, t.frame.own(c.At.Up(0)).Y)
		}
	}
	for q, lumps := range s.parts {
		if q != p {
			t.others[q] = bodies(t.toOwn(lumps))
		}
	}
	return t
}

// roomFor leaves out the floor for what stands on it, and the wall for a rod that
// sits in it.
func (s *Scene) roomFor(p *model.Part) []lump {
	var out []lump
	for _, l := range s.room {
		if p.RollOut != nil && l.name == "the floor" || p.Rod != nil && l.name == "the wall "+p.Rod.Wall.Name {
			continue
		}
		out = append(out, l)
	}
	return out
}

func (t *task) toOwn(list []lump) []lump {
	out := make([]lump, len(list))
	for i, l := range list {
		out[i] = l.moved(t.frame.own)
	}
	return out
}

// fixed is what stands in the way when the given parts are in place.
func (t *task) fixed(there []*model.Part, without ...*model.Part) []motion.Body {
	out := append([]motion.Body{}, t.room...)
next:
	for _, q := range there {
		for _, w := range without {
			if q == w {
				continue next
			}
		}
		if q != t.part {
			out = append(out, t.others[q]...)
		}
	}
	return out
}

// carries tells whether q holds p up.
func carries(q, p *model.Part) bool {
	b := q.Bracket()
	return b != nil && b.On().Under == p.ID || q.Rod != nil && q.Rod.Shelf == p.ID
}
