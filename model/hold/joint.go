package hold

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/calc/plate"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// What joints pass on.
const (
	// dowelPlay is how much a dowel moves in its bore before it bears. Common
	// practice, no source.
	dowelPlay unit.Length = 0.3
	// slipOver is the divisor of the slip modulus of dowels and screws: density to
	// the power of 1.5 times the diameter, over 23 (EN 1995-1-1 table 7.1, from
	// memory).
	slipOver = 23
	// woodenShare is that of a beech dowel against a steel one (choice, on the side
	// of the loose).
	woodenShare = 0.5
	// gluedStep is the distance of the points that stand for a glue line.
	gluedStep unit.Length = 40
	// gluedPerMM is the stiffness of a glue line, N/mm for each millimetre: much
	// stiffer than any slab.
	gluedPerMM = 2000
)

// jointOf is a joint as it is looked at: as drawn, or tried out tighter.
func (v variant) jointOf(j model.Joint) model.Joint {
	if v.joint.Tighter(j.Kind) {
		return j.As(v.joint)
	}
	return j
}

// joints are those of a slab as they are looked at.
func (v variant) joints(d *model.Design, slab string) []model.Joint {
	var out []model.Joint
	for _, j := range d.Joints {
		if j.Slab == slab || j.To == slab {
			out = append(out, v.jointOf(j))
		}
	}
	return out
}

// neighbours puts the slabs that are joined to one beside it, each on its own
// carriers: what is joined to them in turn is left out, which is on the side of
// the weak.
func neighbours(a *plate.Assembly, d *model.Design, p *model.Part, v variant) ([]support, []seam) {
	var out []support
	var seams []seam
	for _, j := range v.joints(d, p.ID) {
		other := j.To
		if other == p.ID {
			other = j.Slab
		}
		q := d.Part(other)
		if j.Kind == model.OpenJoint || q == nil || q.Slab == nil || len(q.Bodies) == 0 {
			continue
		}
		n := len(a.Plates)
		w := plateOf(q, variant{class: v.class})
		a.Plates = append(a.Plates, w)
		for _, s := range carry(a, d, n, q, variant{class: v.class, section: v.section}) {
			s.beside = true
			out = append(out, s)
		}
		seams = append(seams, join(a, j, p, q, n))
	}
	return out, seams
}

// join links two plates along a joint.
func join(a *plate.Assembly, j model.Joint, p, q *model.Part, n int) seam {
	out := seam{joint: j}
	way := j.Ends[1].Sub(j.Ends[0])
	in := way.Unit().Left()
	if here := p.Slab.Pose.Plan(centre(p)); here.Sub(j.Ends[0]).Dot(in) < 0 {
		in = in.Mul(-1)
	}
	at := func(s *model.Part, k int, room geom.Vec, side float64) (plate.Spot, bool) {
		own := s.Slab.Pose.Unplan(room)
		in := in.Mul(side).Turn(-s.Slab.Pose.Turn)
		for off := unit.Length(1); off <= 40; off++ {
			if spot := own.Add(in.Mul(float64(off))); a.Plates[k].Outline.Contains(spot) {
				return plate.Spot{Plate: k, At: spot}, true
			}
		}
		return plate.Spot{}, false
	}
	for _, place := range placesOf(j) {
		mine, ok := at(p, 0, place.at, 1)
		its, also := at(q, n, place.at, -1)
		if !ok || !also {
			continue
		}
		link := func(k float64, slack unit.Length, acts plate.Acts, slope bool) {
			on, other := mine, its
			if slope {
				on.Slope, other.Slope = in.Turn(-p.Slab.Pose.Turn), in.Turn(-q.Slab.Pose.Turn)
			}
			a.Links = append(a.Links, plate.Link{On: on, Ground: plate.Ground{Other: &other}, Stiffness: k, Slack: slack, Acts: acts})
		}
		shear, turn := stiffnessOf(j, a.Plates[0], place.long)
		out.places = append(out.places, seamPlace{place.at, len(a.Links)})
		if j.Kind == model.DowelJoint {
			link(shear, dowelPlay, plate.Push, false)
			link(shear, dowelPlay, plate.Pull, false)
			continue
		}
		link(shear, 0, plate.Both, false)
		link(turn, 0, plate.Both, true)
	}
	return out
}

func centre(p *model.Part) geom.Vec {
	low, high := p.Slab.TopOutline().Bounds()
	return low.Lerp(high, 0.5)
}

// place is where a joint passes something on, and how much of its length that
// stands for.
type place struct {
	at   geom.Vec
	long unit.Length
}

func placesOf(j model.Joint) []place {
	var out []place
	if j.Kind != model.GluedJoint {
		for _, at := range j.Places {
			out = append(out, place{at, 0})
		}
		return out
	}
	way := j.Ends[1].Sub(j.Ends[0])
	n := max(2, int(math.Ceil(float64(way.Len()/gluedStep))))
	for i := range n {
		out = append(out, place{j.Ends[0].Add(way.Mul((float64(i) + 0.5) / float64(n))), way.Len() / unit.Length(n)})
	}
	return out
}

// stiffnessOf is what one place of a joint passes on: force for each millimetre,
// and moment for each radian.
func stiffnessOf(j model.Joint, wood plate.Plate, long unit.Length) (shear, turn float64) {
	slip := math.Pow(float64(wood.Wood.Density), 1.5) / slipOver
	switch j.Kind {
	case model.DowelJoint:
		return woodenShare * slip * float64(j.Dia), 0
	case model.PlateJoint:
		_, screw := j.PlateScrews()
		inertia := float64(model.PlateWide) * math.Pow(float64(j.Dia), 3) / 12
		// Two screws on each side, one side after the other; the steel bends between
		// the inner screws.
		return slip * float64(screw), steelModulus * inertia / float64(2*j.Near())
	}
	thick := float64(wood.Thick)
	return gluedPerMM * float64(long), gluedPerMM * float64(long) * thick * thick
}

// JointAssumed says what was taken for granted of the joints of a slab that pass
// something on.
func (s *Slab) JointAssumed() []find.Assumption {
	var out []find.Assumption
	for _, j := range s.Joints {
		if j.Kind == model.OpenJoint {
			continue
		}
		what := fmt.Sprintf("the joint of %s and %s: %s", j.Slab, j.To, passes[j.Kind])
		out = append(out, find.Assumption{What: what, Source: "slip of dowels and screws EN 1995-1-1 table 7.1, from memory; play: common practice, no source"})
	}
	return out
}

// passes says what a joint passes on.
var passes = map[model.JointKind]string{
	model.DowelJoint: "dowels pass shear on after 0.3 mm of play, and no bending",
	model.PlateJoint: "plates pass shear on, and what little their steel bends",
	model.GluedJoint: "glued, both are one slab",
}
