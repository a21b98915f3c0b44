package sit

import (
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
		b.Sweep = s.sweep(*b)
		b.solid = geom.Prism(b.Sweep, s.Floor+b.Low, s.Floor+b.High, string(b.Kind))
	}
	return out
}

// Pivot is how far in from the straight front the post of the chair stands:
// negative, for it stands before it.
func (s *Sitter) Pivot() unit.Length { return -s.Bulge - s.by[body.BellyDepth].Ample() + seatMid }

// sweep turns a box about the post of the chair from one side to the other. In
// steps of 5 degrees it is too small by 1 mm in 1000 at most.
func (s *Sitter) sweep(b Box) geom.Region {
	const steps = 6
	post := geom.V(0, s.Pivot())
	half := b.Half + Sideways
	corners := []geom.Vec{{X: -half, Y: b.Near}, {X: half, Y: b.Near}, {X: half, Y: b.Far}, {X: -half, Y: b.Far}}
	var all []geom.Region
	for k := -steps; k <= steps; k++ {
		pts := make([]geom.Vec, len(corners))
		for i, c := range corners {
			v := post.Add(c.Sub(post).Turn(Swivel * unit.Angle(k) / steps))
			pts[i] = s.At(v.X, v.Y)
		}
		all = append(all, geom.Polygon(pts...))
	}
	return geom.UnionAll(all...)
}
