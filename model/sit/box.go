package sit

import (
	"math"
	"slices"

	"slabwright/model/calc/body"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// BoxKind is a part of the legs.
type BoxKind string

// The boxes of the legs, from the belly to the toes.
const (
	Thigh BoxKind = "thighs"
	Knee  BoxKind = "knees"
	Shin  BoxKind = "shins"
	Foot  BoxKind = "feet"
)

// Box is the room that a part of the legs takes, straight ahead, and what it
// sweeps when the chair moves sideways and turns.
type Box struct {
	Kind      BoxKind
	Near, Far unit.Length // in from the straight front
	Half      unit.Length // to each side of the middle
	Low, High unit.Length // above the floor under the seat
	Sweep     geom.Region // in the room
	solid     geom.Solid
}

// boxes are the legs of somebody whose belly is at the front edge, thighs
// level, shanks upright; the feet may slide forward.
func (s *Sitter) boxes() []Box {
	at := func(d body.Dimension) unit.Length { return s.by[d].Ample() }
	belly := -s.Bulge
	seat := s.SeatHeight()
	thighTop := at(body.ThighTop) + s.Shoe + body.OverThigh.Value
	kneeTop := at(body.Knee) + s.Shoe + body.OverThigh.Value
	kneeFar := belly + at(body.BellyToKnee) + body.BeforeKnee.Value
	kneeNear := kneeFar - body.BeforeKnee.Value - (at(body.ButtockKnee) - at(body.ButtockHollow))
	toes := belly + at(body.BellyToToe)
	out := []Box{
		{Kind: Thigh, Near: belly, Far: kneeFar, Low: seat, High: thighTop},
		{Kind: Knee, Near: kneeNear, Far: kneeFar, Low: seat, High: kneeTop},
		{Kind: Shin, Near: kneeNear, Far: kneeFar, Low: footRoom, High: seat},
		{Kind: Foot, Near: toes - at(body.FootLength), Far: toes + body.LegStretch.Value, Low: 0, High: footRoom},
	}
	for i := range out {
		b := &out[i]
		b.Half = at(body.HipBreadth) / 2
		if b.Kind == Shin { // straight below the knees
			b.Sweep = out[i-1].Sweep
		} else {
			b.Sweep = s.sweep(*b)
		}
		b.solid = geom.Prism(b.Sweep, s.Floor+b.Low, s.Floor+b.High, string(b.Kind))
	}
	return out
}

// Pivot is how far in from the straight front the post of the chair stands:
// negative, for it stands before it.
func (s *Sitter) Pivot() unit.Length { return -s.Bulge - s.by[body.BellyDepth].Ample() + seatMid }

// sweep turns a box about the post of the chair from one side to the other: its
// two ends, and the rings that its far corners and its middle run through. Arcs
// are chords of a degree, too small by 0.04 mm in 1000.
func (s *Sitter) sweep(b Box) geom.Region {
	half := b.Half + Sideways
	near, far := b.Near-s.Pivot(), b.Far-s.Pivot()
	corner := unit.Angle(math.Atan2(float64(half), float64(far)))
	out := geom.V(far, half).Len()
	rings := []geom.Region{s.ring(0, near, far), s.ring(corner, out*near/far, out), s.ring(-corner, out*near/far, out)}
	for k := range 5 {
		rings = append(rings, s.turned(b, half, Swivel*unit.Angle(k-2)/2))
	}
	return geom.UnionAll(rings...)
}

// turned is a box after the chair has turned.
func (s *Sitter) turned(b Box, half unit.Length, by unit.Angle) geom.Region {
	post := geom.V(0, s.Pivot())
	var pts []geom.Vec
	for _, c := range []geom.Vec{{X: -half, Y: b.Near}, {X: half, Y: b.Near}, {X: half, Y: b.Far}, {X: -half, Y: b.Far}} {
		v := post.Add(c.Sub(post).Turn(by))
		pts = append(pts, s.At(v.X, v.Y))
	}
	return geom.Polygon(pts...)
}

// ring is what lies between two circles about the post, from one side to the
// other of a direction that is so far off straight ahead.
func (s *Sitter) ring(off unit.Angle, inner, outer unit.Length) geom.Region {
	const steps = 60
	var there, back []geom.Vec
	for k := range steps + 1 {
		dir := geom.V(0, 1).Turn(off + Swivel*unit.Angle(2*k-steps)/steps)
		for _, x := range []struct {
			r  unit.Length
			to *[]geom.Vec
		}{{outer, &there}, {max(inner, 0), &back}} {
			v := geom.V(0, s.Pivot()).Add(dir.Mul(float64(x.r)))
			*x.to = append(*x.to, s.At(v.X, v.Y))
		}
	}
	slices.Reverse(back)
	return geom.Polygon(append(there, back...)...)
}
