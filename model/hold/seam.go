package hold

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/plate"
	"slabwright/model/geom"
)

// seam is a joint that passes something on, and the first of two links at each of
// its places: shear and moment, of dowels push and pull.
type seam struct {
	joint  model.Joint
	places []seamPlace
}

type seamPlace struct {
	at   geom.Vec // in the room
	link int
}

// Seam is what a joint passes on.
type Seam struct {
	Joint  model.Joint
	Passed []Passed
}

// Passed is what one dowel or plate passes on, or a stretch of a glue line.
type Passed struct {
	At     geom.Vec // in the room
	Shear  float64  // N, up or down
	Moment float64  // N mm, either way; 0 of a dowel
}

func (s seam) read(res *plate.Result) Seam {
	out := Seam{Joint: s.joint}
	for _, p := range s.places {
		first, second := math.Abs(res.Force(p.link)), math.Abs(res.Force(p.link+1))
		if s.joint.Kind == model.DowelJoint {
			first, second = math.Max(first, second), 0
		}
		out.Passed = append(out.Passed, Passed{p.at, first, second})
	}
	return out
}

// Bends is the moment in a plate at its nearer screws, N mm.
func (p Passed) Bends(j model.Joint) float64 { return p.Moment + p.Shear*float64(j.Near()) }

// strain is the largest moment in a plate of the joints of a slab, N mm.
func (b *bench) strain(res *plate.Result) (most float64, any bool) {
	for _, s := range b.seams {
		if s.joint.Kind != model.PlateJoint {
			continue
		}
		for _, p := range s.read(res).Passed {
			most, any = math.Max(most, p.Bends(s.joint)), true
		}
	}
	return most, any
}

// Joined is a slab joined to its neighbours in another way, worked out as the slab
// itself.
func Joined(d *model.Design, j model.Job, part string, kind model.JointKind) Slab {
	return tried(d, j, part, change{joint: kind}, Strength, false)
}
