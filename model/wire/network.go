// Package wire leads the cables of a design: it builds the network of places
// where cables may run out of reach of knees, finds the way of each cable
// through it, and sizes light runs and their feeds.
package wire

import (
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/wiring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Kind tells how a cable runs along a link.
type Kind string

// Kinds of links.
const (
	AlongEdge  Kind = "along the edge" // clipped under or beside the back edge
	InGroove   Kind = "groove"
	InHole     Kind = "hole"
	InSlot     Kind = "slot"           // at an edge
	UnderSlab  Kind = "under the slab" // clipped straight across the underside
	OnTop      Kind = "on the top"     // lies on the surface
	RoundEnd   Kind = "round the end"
	OnWall     Kind = "on the wall"
	MovingLoop Kind = "moving loop" // hangs, to a table that rolls
)

// Piece is what is known of one link of the network.
type Piece struct {
	Kind    Kind
	Slab    string // part that it belongs to, "" for walls
	Feature string // groove, hole or slot
	Wall    string
	Gate    unit.Length // the thickest thing that passes; 0: anything
}

// closed tells whether it is a channel of which cables cannot keep apart.
func (p Piece) closed() bool { return p.Kind == InGroove || p.Kind == InHole || p.Kind == InSlot }

// spare is by how much a cable may bulge beyond the ends of a link: freely in
// the open, and out of a hole into the air over and under it.
func (p Piece) spare() unit.Length {
	if p.Kind == InGroove {
		return 0
	}
	return bulge
}

// How far things are led straight to the nearest channel, and how far cables
// keep from what they run along. (Common practice, no source.)
const (
	besideLeg  unit.Length = 15
	besideWall unit.Length = 20
	belowLeg   unit.Length = 10
	aroundEnd  unit.Length = 10
	acrossMost unit.Length = 450  // from a hole or groove to the edge strip
	nearMost   unit.Length = 700  // from a device to a strip, hole or groove
	wallMost   unit.Length = 2500 // along a wall to where the slab begins
	loopMost   unit.Length = 2000
	bulge      unit.Length = 30
	slant      unit.Length = 60 // along a strip, to something that is nearer
)

// network is the graph with what is known of its links.
type network struct {
	wiring.Network
	pieces []Piece
	index  map[geom.Vec3]int
	strips []*strip
}

// strip is a straight line along an edge of a slab on which cables are clipped.
type strip struct {
	slab *model.Part
	edge model.Edge
	a, b geom.Vec // own axes of the slab
	z    unit.Length
	at   []float64 // where something joins, as fractions
	top  bool
}

func (n *network) place(p geom.Vec3) int {
	grid := func(l unit.Length) unit.Length { return unit.Length(math.Round(float64(l)*100)/100) + 0 }
	key := geom.Vec3{X: grid(p.X), Y: grid(p.Y), Z: grid(p.Z)}
	if i, ok := n.index[key]; ok {
		return i
	}
	n.index[key] = len(n.Places)
	n.Places = append(n.Places, p)
	return len(n.Places) - 1
}

func (n *network) link(a, b geom.Vec3, p Piece) {
	i, j := n.place(a), n.place(b)
	if i != j {
		n.Links = append(n.Links, wiring.Link{A: i, B: j, Spare: p.spare()})
		n.pieces = append(n.pieces, p)
	}
}

// space takes a place on a slab to the room, at a height above its underside.
func space(p *model.Part, at geom.Vec, z unit.Length) geom.Vec3 {
	return p.Slab.Pose.Plan(at).Up(p.Slab.Pose.At.Z + z)
}

// join gives the place of a strip nearest to a point in the slab's own axes.
func (s *strip) join(p geom.Vec) (geom.Vec, unit.Length) {
	d := s.b.Sub(s.a)
	t := min(1, max(0, p.Sub(s.a).Dot(d)/d.Dot(d)))
	foot := s.a.Lerp(s.b, t)
	return foot, foot.Sub(p).Len()
}

// beside gives the places of a strip from which a cable slants to something that
// is too near for two square bends.
func (s *strip) beside(foot geom.Vec) []geom.Vec {
	d := s.b.Sub(s.a)
	var out []geom.Vec
	for _, by := range []unit.Length{-slant, slant} {
		q := foot.Add(d.Unit().Mul(float64(by)))
		if t := q.Sub(s.a).Dot(d) / d.Dot(d); t > 0 && t < 1 {
			out = append(out, q)
		}
	}
	return out
}

// hold remembers that something joins the strip at one of its places.
func (s *strip) hold(foot geom.Vec) geom.Vec3 {
	d := s.b.Sub(s.a)
	s.at = append(s.at, foot.Sub(s.a).Dot(d)/d.Dot(d))
	return space(s.slab, foot, s.z)
}

// reach links a place on a slab with all strips of that face within a distance.
func (n *network) reach(p *model.Part, at geom.Vec, z unit.Length, top bool, most unit.Length, k Kind) {
	for _, s := range n.strips {
		if s.slab != p || s.top != top {
			continue
		}
		if foot, far := s.join(at); far <= most {
			n.link(space(p, at, z), s.hold(foot), Piece{Kind: k, Slab: p.ID})
			if far < slant {
				for _, q := range s.beside(foot) {
					n.link(space(p, at, z), s.hold(q), Piece{Kind: k, Slab: p.ID})
				}
			}
		}
	}
}

// lay turns the strips into links, when all is known that joins them.
func (n *network) lay() {
	for _, s := range n.strips {
		at := append(slices.Clone(s.at), 0, 1)
		slices.Sort(at)
		kind := AlongEdge
		if s.top {
			kind = OnTop
		}
		for i := 1; i < len(at); i++ {
			if at[i] > at[i-1] {
				n.link(space(s.slab, s.a.Lerp(s.b, at[i-1]), s.z), space(s.slab, s.a.Lerp(s.b, at[i]), s.z),
					Piece{Kind: kind, Slab: s.slab.ID, Wall: s.edge.To})
			}
		}
	}
}
