// Package sit puts people at the seats of a design: the boxes that their
// thighs, knees, shins and feet take when the chair moves sideways and turns,
// everything near these boxes with its distance, the free width, and how far
// head and hands go. It is above model because it reads designs, and below
// model/check because rules and sheets read its results, which a design keeps.
//
// Heights count from the floor under the seat, in shoes. Depths count inwards
// from the straight front of the worktop, widths from the middle of the seat.
package sit

import (
	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/model/wire"
)

// What a chair does. It stands so that the belly touches the front edge.
const (
	Swivel   unit.Angle  = 30 * unit.Degree // to each side: common practice, no source
	Sideways unit.Length = 50               // to each side: common practice, no source
	seatMid  unit.Length = 205              // post of the chair before its back: seats are 400 to 420 deep (DGUV Information 209-069), the post in their middle
)

// footRoom is how high feet in shoes are: EN 527-1, as quoted in a public table.
const footRoom unit.Length = 120

// Near is how far away a thing is still named.
const Near unit.Length = 150

// Size is one dimension of a person as it counts here.
type Size struct {
	Name string
	body.Estimate
}

// Sitter is somebody at a seat.
type Sitter struct {
	Seat   model.Seat
	Person model.Person
	Told   bool // something is told of the body
	Slab   *model.Part
	Floor  unit.Length // height of the floor under the seat
	Shoe   unit.Length
	Bulge  unit.Length // a natural front comes out so far: the belly is there
	Depth  unit.Length // of the worktop, at the middle of the seat
	Legs   model.LegRoom
	Sizes  []Size

	Boxes       []Box
	Things      []Thing // within Near of a box, the nearest first
	Left, Right Side
	Over        []Overhang

	mid       geom.Vec // the seat's middle on the straight front, in the room
	along, in geom.Vec // of length 1
	by        map[body.Dimension]body.Estimate
}

type memoKey struct{}

// Of puts everybody at the seats of a finished design, once. The wiring is that
// of the job the design was made for.
func Of(d *model.Design, w model.Wiring) []*Sitter {
	return d.Once(memoKey{}, func() any {
		var out []*Sitter
		var all []piece
		for _, seat := range d.Seats {
			for _, p := range People(seat) {
				s, ok := sitter(d, seat, p)
				if !ok {
					continue
				}
				if all == nil {
					all = pieces(d, wire.Of(d, w))
				}
				s.look(all)
				s.above(all)
				out = append(out, s)
			}
		}
		return out
	}).([]*Sitter)
}

// People are those who sit at a seat; nobody told means anybody.
func People(seat model.Seat) []model.Person {
	if len(seat.People) == 0 {
		return []model.Person{{Name: "anybody"}}
	}
	return seat.People
}

// measured are the dimensions that matter at a desk, as people name them.
var measured = []Size{
	{"seat: hollow of the knee", body.Estimate{Dimension: body.Popliteal}},
	{"top of the thigh", body.Estimate{Dimension: body.ThighTop}},
	{"top of the knee", body.Estimate{Dimension: body.Knee}},
	{"elbow, sitting", body.Estimate{Dimension: body.Elbow}},
	{"eye, sitting", body.Estimate{Dimension: body.Eye}},
	{"head, sitting", body.Estimate{Dimension: body.Head}},
	{"elbow, standing", body.Estimate{Dimension: body.StandingElbow}},
	{"hips, sitting", body.Estimate{Dimension: body.HipBreadth}},
	{"belly to knee", body.Estimate{Dimension: body.BellyToKnee}},
	{"belly to toes", body.Estimate{Dimension: body.BellyToToe}},
	{"grip past the front edge", body.Estimate{Dimension: body.GripReach}},
}

// needed are the others that are reckoned with.
var needed = []body.Dimension{body.ElbowAboveThigh, body.ButtockKnee, body.ButtockHollow, body.BellyDepth, body.FootLength, body.Overhead, body.Shoulder}

func sitter(d *model.Design, seat model.Seat, p model.Person) (*Sitter, bool) {
	slab := d.Part(seat.At)
	legs, err := model.LegRoomOf(p)
	if err != nil || slab == nil || slab.Slab == nil || len(slab.Bodies) == 0 {
		return nil, false
	}
	b := p.Body()
	s := &Sitter{Seat: seat, Person: p, Told: p.Stature > 0 || len(b.Own) > 0, Slab: slab, Legs: legs, by: map[body.Dimension]body.Estimate{}}
	s.Shoe, _ = p.ShoeOf()
	for _, m := range measured {
		e, err := b.Estimate(m.Dimension)
		if err != nil {
			return nil, false
		}
		s.by[m.Dimension] = e
		s.Sizes = append(s.Sizes, Size{m.Name, e})
	}
	for _, dim := range needed {
		e, err := b.Estimate(dim)
		if err != nil {
			return nil, false
		}
		s.by[dim] = e
	}
	s.stand(d.Room)
	s.Boxes = s.boxes()
	return s, true
}

// stand finds where the seat is in the room.
func (s *Sitter) stand(room *model.Room) {
	sp := s.Slab.Slab
	e := sp.Front() // runs from right to left
	t := float64((s.Seat.Centre - e.End.X) / (e.Start.X - e.End.X))
	s.mid = sp.Pose.Plan(e.End.Lerp(e.Start, t))
	s.along = e.Start.Sub(e.End).Turn(sp.Pose.Turn).Unit()
	s.in = s.along.Left()
	for _, n := range e.Natural {
		s.Bulge = max(s.Bulge, n.Top, n.Under)
	}
	s.Floor = room.FloorAt(s.mid)
	const far = 3 * unit.M
	for _, span := range s.Slab.Outline().Inside(s.At(0, -far), s.At(0, far)) {
		s.Depth = -far + 2*far*unit.Length(span[1])
	}
}

// At is a place in the room, so far to the right of the middle of the seat and
// so far in from the straight front.
func (s *Sitter) At(right, in unit.Length) geom.Vec {
	return s.mid.Add(s.along.Mul(float64(right))).Add(s.in.Mul(float64(in)))
}

// From is the place at which something in the room lies before the sitter.
func (s *Sitter) From(v geom.Vec) (right, in unit.Length) {
	d := v.Sub(s.mid)
	return unit.Length(d.Dot(s.along)), unit.Length(d.Dot(s.in))
}

// Of is the estimate of a dimension of the body, barefoot.
func (s *Sitter) Of(d body.Dimension) body.Estimate { return s.by[d] }

// SeatHeight is how high the chair stands for feet flat on the floor.
func (s *Sitter) SeatHeight() unit.Length { return s.by[body.Popliteal].Ample() + s.Shoe }

// Underside is how high the worktop's wood is from below; Surface how high from
// above.
func (s *Sitter) Underside() unit.Length { return s.Slab.Slab.Top - s.Slab.Slab.Thickness - s.Floor }

// Surface is the height of the worktop above the floor under the seat.
func (s *Sitter) Surface() unit.Length { return s.Slab.Slab.Top - s.Floor }
