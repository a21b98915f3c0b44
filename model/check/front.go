package check

import (
	"math"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// front is the straight front of a slab in the room, as a sitter sees it: along
// it to the right, and in from it under the slab.
type front struct {
	left      geom.Vec
	along, in geom.Vec // of length 1
	length    unit.Length
	bulge     unit.Length // how far a natural edge comes out: the belly keeps off that far
}

func frontOf(slab *model.Part) front {
	sp := slab.Slab
	e := sp.Front()
	along := e.Start.Sub(e.End).Turn(sp.Pose.Turn)
	f := front{left: sp.Pose.Plan(e.End), along: along.Unit(), in: along.Unit().Left(), length: along.Len()}
	for _, n := range e.Natural {
		f.bulge = max(f.bulge, n.Top, n.Under)
	}
	return f
}

// at is a place so far along the front and so far in from it.
func (f front) at(t, depth unit.Length) geom.Vec {
	return f.left.Add(f.along.Mul(float64(t))).Add(f.in.Mul(float64(depth)))
}

// extent is from where to where a region goes along the front, and in from it.
type extent struct{ left, right, near, far unit.Length }

func (f front) extentOf(r geom.Region) extent {
	inf := unit.Length(math.Inf(1))
	out := extent{inf, -inf, inf, -inf}
	for _, loop := range r.Loops() {
		for _, v := range loop {
			d := v.Sub(f.left)
			t, in := unit.Length(d.Dot(f.along)), unit.Length(d.Dot(f.in))
			out = extent{min(out.left, t), max(out.right, t), min(out.near, in), max(out.far, in)}
		}
	}
	return out
}

// slabOf is the slab that a zone lies under, nil if it lies under none.
func (s Site) slabOf(z model.Zone) *model.Part {
	if p := s.Design.Part(z.Slab); p != nil && p.Slab != nil {
		return p
	}
	return nil
}

// seatOfZone finds the seat that a zone belongs to, and its person as told.
func (s Site) seatOfZone(z model.Zone) (model.Seat, model.Person, bool) {
	for _, seat := range s.Design.Seats {
		for _, p := range sitters(seat) {
			if seat.Name == z.Seat && p.Name == z.Person {
				return seat, p, true
			}
		}
	}
	return model.Seat{}, model.Person{}, false
}

// sitters are the people of a seat; nobody told means anybody.
func sitters(seat model.Seat) []model.Person {
	if len(seat.People) == 0 {
		return []model.Person{{Name: "anybody"}}
	}
	return seat.People
}
