package model

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// JointKind is how the edges of two slabs that meet are joined.
type JointKind string

// Kinds of joints, from loose to stiff. An open joint passes nothing; dowels,
// glued into one slab only, keep both faces level; plates screwed on from below
// do so without play and bend a little; a glued joint makes one slab of two.
const (
	OpenJoint   JointKind = "open"
	DowelJoint  JointKind = "dowels"
	PlateJoint  JointKind = "plates"
	GluedJoint  JointKind = "glued"
	dowelEnd              = 60 * unit.MM
	dowelPitch            = 150 * unit.MM
	plateEnd              = 80 * unit.MM
	platePitch            = 300 * unit.MM
	plateNear             = 30 * unit.MM // screws of a plate from the joint
	plateFar              = 75 * unit.MM
	plateScrew            = 5 * unit.MM
	platePilot            = 3.5 * unit.MM
	besideFaces           = 12 * unit.MM // wood left over a screw
)

// JointKinds lists the kinds, loose ones first.
var JointKinds = []JointKind{OpenJoint, DowelJoint, PlateJoint, GluedJoint}

// Closed is the widest gap of edges that lie together.
const Closed unit.Length = 0.05

// PlateWide is the width of the steel plates.
const PlateWide unit.Length = 40

// Tighter says whether a kind passes more on than another one.
func (k JointKind) Tighter(than JointKind) bool {
	return slices.Index(JointKinds, k) > slices.Index(JointKinds, than)
}

// Joint is a joint between a slab and another one that its edge meets. Ends are
// those of the stretch on which both lie side by side, in the room; Places are the
// middles of dowels and plates on it.
type Joint struct {
	Kind         JointKind
	Slab, To     string
	Edge, ToEdge int
	Ends         [2]geom.Vec
	Places       []geom.Vec
	Dia, Length  unit.Length // of a dowel; thickness and length of a plate
	Line         string
	thick        unit.Length // of the thinner slab
}

// Size is what is bought for a joint, "" if nothing is.
func (j Joint) Size() string {
	switch j.Kind {
	case DowelJoint:
		return fmt.Sprintf("Ø%.0f x %.0f", float64(j.Dia), float64(j.Length))
	case PlateJoint:
		return fmt.Sprintf("%.0f x %.0f x %.0f", float64(j.Length), float64(PlateWide), float64(j.Dia))
	}
	return ""
}

// Join joins a slab to another one that one of its edges meets. Dowels get their
// bores in both edges, plates the pilot holes of their screws.
func (d *Design) Join(slab, to string, kind JointKind) {
	line := callLine()
	bad := func(format string, args ...any) {
		d.report(slab, fault{what: fmt.Sprintf(format, args...), line: line})
	}
	p, wrong := d.slab(slab)
	q, also := d.slab(to)
	if wrong = append(wrong, also...); len(wrong) > 0 {
		for _, f := range wrong {
			f.line = line
			d.report(slab, f)
		}
		return
	}
	j := Joint{Kind: kind, Slab: slab, To: to, Edge: -1, Line: line}
	for i, e := range p.Slab.Edges {
		if e.Bound == ToPart && e.To == to {
			j.Edge = i
		}
	}
	switch {
	case d.done:
		bad("%q is joined after Finish", slab)
		return
	case j.Edge < 0:
		bad("no edge of %q runs up to %q: let it meet that slab first", slab, to)
		return
	case !j.beside(p, q):
		bad("%q and %q do not lie side by side", slab, to)
		return
	}
	j.drill(p, q)
	d.Joints = append(d.Joints, j)
}

// beside finds the edge of the other slab that lies along the joint, and the
// stretch that both share.
func (j *Joint) beside(p, q *Part) bool {
	e := p.Slab.Edges[j.Edge]
	a, b := p.Slab.Pose.Plan(e.Start), p.Slab.Pose.Plan(e.End)
	l := geom.Through(a, b)
	best := unit.Length(math.Inf(1))
	for i, f := range q.Slab.Edges {
		c, g := q.Slab.Pose.Plan(f.Start), q.Slab.Pose.Plan(f.End)
		if far := max(abs(l.Side(c)), abs(l.Side(g))); far < best && far < 40 {
			from, to := max(0, min(l.Along(c), l.Along(g))), min(b.Sub(a).Len(), max(l.Along(c), l.Along(g)))
			if to-from < short {
				continue
			}
			way := l.D.Unit()
			best, j.ToEdge = far, i
			j.Ends = [2]geom.Vec{a.Add(way.Mul(float64(from))), a.Add(way.Mul(float64(to)))}
		}
	}
	return best < 40
}

// lay places dowels or plates along the joint of slabs of a thickness.
func (j *Joint) lay(thick unit.Length) {
	j.thick = thick
	end, pitch := dowelEnd, dowelPitch
	switch j.Kind {
	case DowelJoint:
		j.Dia, j.Length = 12, 80
		if thick < 36 {
			j.Dia, j.Length = 10, 60
		}
	case PlateJoint:
		end, pitch = plateEnd, platePitch
		j.Dia, j.Length = 5, 2*plateFar+30
	default:
		return
	}
	way := j.Ends[1].Sub(j.Ends[0])
	for _, x := range even(way.Len(), end, pitch) {
		j.Places = append(j.Places, j.Ends[0].Add(way.Unit().Mul(float64(x))))
	}
}

// drill puts the holes for dowels or plates into both slabs.
func (j *Joint) drill(p, q *Part) {
	j.lay(min(p.Slab.Thickness, q.Slab.Thickness))
	for i, at := range j.Places {
		p.Slab.join(j, j.Edge, at, fmt.Sprintf("joint %s %d", j.To, i+1), j.To)
		q.Slab.join(j, j.ToEdge, at, fmt.Sprintf("joint %s %d", j.Slab, i+1), j.Slab)
	}
}

// join drills one slab for a dowel or a plate at a place of the joint.
func (s *SlabPart) join(j *Joint, edge int, at geom.Vec, name, other string) {
	e := s.Edges[edge]
	l := geom.Through(e.Start, e.End)
	in := l.D.Unit().Left().Mul(-1)
	own := s.Pose.Unplan(at)
	foot := l.P.Add(l.D.Unit().Mul(float64(l.Along(own))))
	if j.Kind == DowelJoint {
		s.Features = append(s.Features, Feature{Name: name, Kind: Bore, At: foot, Dia: j.Dia, Depth: j.Length/2 + 1, Edge: edge, Height: s.Thickness / 2, For: other, Line: j.Line})
		return
	}
	for k, off := range []unit.Length{plateNear, plateFar} {
		hole := foot.Add(in.Mul(float64(off)))
		s.Features = append(s.Features, Feature{
			Name: fmt.Sprintf("%s.%d", name, k+1), Kind: Pilot, Face: UnderFace, At: hole, Dia: platePilot, Depth: min(s.Thickness-besideFaces, 30),
			Outline: geom.Circle(hole, platePilot/2, chord), For: other, Line: j.Line,
		})
	}
}

// As is the joint with another kind of joining, as it would be drilled; nothing is
// drilled.
func (j Joint) As(kind JointKind) Joint {
	j.Kind, j.Places = kind, nil
	j.lay(j.thick)
	return j
}

// Near is how far the nearer screws of a plate stand from the joint.
func (j Joint) Near() unit.Length { return plateNear }

// Far is how far the other screws of a plate stand from the joint.
func (j Joint) Far() unit.Length { return plateFar }

// PlateScrews is how many screws the plates of a joint take, and their size.
func (j Joint) PlateScrews() (count int, size unit.Length) {
	if j.Kind != PlateJoint {
		return 0, 0
	}
	return 4 * len(j.Places), plateScrew
}

// JointOf is the joint of a slab with another one, whichever of them was joined.
func (d *Design) JointOf(a, b string) (Joint, bool) {
	for _, j := range d.Joints {
		if j.Slab == a && j.To == b || j.Slab == b && j.To == a {
			return j, true
		}
	}
	return Joint{}, false
}

// Crossed says whether the grain of one slab of a joint runs across that of the
// other.
func (d *Design) Crossed(j Joint) bool {
	p, q := d.Part(j.Slab), d.Part(j.To)
	return p != nil && q != nil && crossed(p, q)
}
