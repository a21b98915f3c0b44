package bring

import (
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Grip is where one person takes hold of a slab, on its outline in its own axes,
// and what of its mass that person then has.
type Grip struct {
	At    geom.Vec
	Edge  string
	Share unit.Mass
}

// Sizes of hands: how much of an edge one takes, how far the fingers reach under
// a slab, and how far people stand from each other. Common practice, no source.
const (
	handWide  unit.Length = 100
	handDeep  unit.Length = 100
	elbowRoom unit.Length = 500

	gripPitch unit.Length = 20 // of the places that are looked at
)

// Grips are places for so many people on the sawn edges of a slab, off its
// natural edge, grooves, holes and cut-outs. They are even about its centre of
// gravity: pairs opposite each other, of three one at an end and two at the
// other. One person has a grip for each hand. None: there is no such place.
func Grips(p *model.Part, people int) []Grip {
	heart := p.Slab.Pose.Unplan(p.Centroid().Flat())
	all := places(p.Slab)
	var at []Grip
	switch people {
	case 1, 2:
		at = pair(all, heart, straight)
	case 3:
		at = three(all, heart)
	default:
		if at = four(all, heart, straight); at == nil {
			at = four(all, heart, diagonal)
		}
	}
	share(at, heart, p.Mass())
	return at
}

// four are two pairs: each of the four stands clear of the others.
func four(all []Grip, heart geom.Vec, first slant) []Grip {
	at := pair(all, heart, first)
	rest := slices.DeleteFunc(slices.Clone(all), func(g Grip) bool { return near(g, at) })
	if second := pair(rest, heart, straight); at != nil && second != nil {
		return append(at, second...)
	}
	return nil
}

func near(g Grip, others []Grip) bool {
	return slices.ContainsFunc(others, func(o Grip) bool { return o.At.Sub(g.At).Len() < elbowRoom })
}

// places are those on the outline where a hand finds wood.
func places(s *model.SlabPart) []Grip {
	var out []Grip
	for _, e := range s.Edges {
		long := e.End.Sub(e.Start).Len()
		if e.Waney || len(e.Natural) > 0 || long < handWide {
			continue
		}
		n := int((long - handWide) / gripPitch)
		for i := range n + 1 {
			at := e.Start.Lerp(e.End, float64((long-unit.Length(n)*gripPitch)/2+unit.Length(i)*gripPitch)/float64(long))
			if holdsHand(s, e, at) {
				out = append(out, Grip{At: at, Edge: e.Name})
			}
		}
	}
	return out
}

// holdsHand tells whether the underside is whole where fingers lie, and the edge
// where the palm is.
func holdsHand(s *model.SlabPart, e model.Edge, at geom.Vec) bool {
	run := e.End.Sub(e.Start).Unit()
	half, in := run.Mul(float64(handWide/2)), run.Left().Mul(-float64(handDeep))
	hand := geom.Polygon(at.Sub(half), at.Add(half), at.Add(half).Add(in), at.Sub(half).Add(in))
	return whole(s, hand)
}

// whole tells whether no groove, pocket, hole or cut-out is within a region.
func whole(s *model.SlabPart, r geom.Region) bool {
	for _, f := range s.Features {
		if f.Kind == model.Pilot || f.Kind == model.Bore {
			continue
		}
		if meets(f.Outline, r) && !f.Outline.Intersect(r).Empty() {
			return false
		}
	}
	return true
}

// meets tells, by their boxes, whether two regions may have a common place.
func meets(a, b geom.Region) bool {
	lo, hi := a.Bounds()
	l, h := b.Bounds()
	return lo.X < h.X && l.X < hi.X && lo.Y < h.Y && l.Y < hi.Y
}

// offBalance is how far the middle of a pair may be from the centre of gravity.
const offBalance unit.Length = 25

// slant is how a pair likes to lie: along the slab, or from corner to corner.
type slant unit.Length

const (
	straight slant = -1
	diagonal slant = 1
)

// pair gives two places opposite each other, as far apart as there are.
func pair(all []Grip, heart geom.Vec, as slant) []Grip {
	var best []Grip
	most := elbowRoom / 4
	for i, a := range all {
		for _, b := range all[i+1:] {
			off := a.At.Lerp(b.At, 0.5).Sub(heart).Len()
			if off > offBalance || a.Edge == b.Edge {
				continue
			}
			aside := unit.Length(math.Abs(float64(a.At.Y-heart.Y)) + math.Abs(float64(b.At.Y-heart.Y)))
			if far := b.At.Sub(a.At).Len() - 4*off + unit.Length(as)*aside; far > most {
				best, most = []Grip{a, b}, far
			}
		}
	}
	return best
}

// three gives one place at an end and two towards the other end, on edges that
// face each other, so that each has about a third.
func three(all []Grip, heart geom.Vec) []Grip {
	var best []Grip
	least := unit.Length(math.Inf(1))
	for _, one := range all {
		d := one.At.Sub(heart)
		if math.Abs(float64(d.Y)) > float64(offBalance) || math.Abs(float64(d.X)) < float64(elbowRoom) {
			continue
		}
		x := heart.X - d.X/2
		a, okA := closest(all, geom.V(x, math.MaxInt32))
		b, okB := closest(all, geom.V(x, math.MinInt32))
		if !okA || !okB || a.Edge == b.Edge {
			continue
		}
		middle := one.At.Add(a.At).Add(b.At).Mul(1. / 3)
		if off := middle.Sub(heart).Len(); off < least && off < 2*offBalance {
			best, least = []Grip{one, a, b}, off
		}
	}
	return best
}

// closest gives the place at about an x that is furthest back or furthest in
// front.
func closest(all []Grip, to geom.Vec) (Grip, bool) {
	var best Grip
	found := false
	for _, g := range all {
		if math.Abs(float64(g.At.X-to.X)) <= float64(gripPitch) && (!found || math.Abs(float64(g.At.Y-to.Y)) < math.Abs(float64(best.At.Y-to.Y))) {
			best, found = g, true
		}
	}
	return best, found
}

// share gives each its part of the mass: the most even one that keeps the moments
// about the centre of gravity.
func share(at []Grip, heart geom.Vec, mass unit.Mass) {
	var n, sx, sy, xx, xy, yy float64
	for _, g := range at {
		d := g.At.Sub(heart)
		x, y := float64(d.X), float64(d.Y)
		n, sx, sy, xx, xy, yy = n+1, sx+x, sy+y, xx+x*x, xy+x*y, yy+y*y
	}
	// shares are a + b·d with no moment: Σ d (a + b·d) = 0
	tiny := 1e-9*(xx+yy) + 1e-9
	xx, yy = xx+tiny, yy+tiny
	det := xx*yy - xy*xy
	bx, by := -(yy*sx-xy*sy)/det, -(xx*sy-xy*sx)/det // for a = 1
	a := float64(mass) / (n + bx*sx + by*sy)
	for i := range at {
		d := at[i].At.Sub(heart)
		at[i].Share = unit.Mass(a * (1 + bx*float64(d.X) + by*float64(d.Y)))
	}
}

// Trestle is a line across a slab under which a trestle stands, in its own axes.
type Trestle struct {
	X         unit.Length
	Near, Far unit.Length // y of the line's ends, front and back
}

// bearer is the breadth of a trestle's top. Common practice, no source.
const bearer unit.Length = 60

// OnTrestles are two lines across a slab, a quarter of its length from its ends
// or as close to that as the underside is nearly whole, on either side of its centre of
// gravity.
func OnTrestles(p *model.Part) []Trestle {
	heart := p.Slab.Pose.Unplan(p.Centroid().Flat())
	outline := p.Slab.TopOutline()
	low, high := outline.Bounds()
	long := high.X - low.X
	var out []Trestle
	for _, side := range []unit.Length{-1, 1} {
		for k := range 40 {
			by := unit.Length((k+1)/2) * 10 * unit.Length(1-2*(k%2))
			x := heart.X + side*(long/4+by)
			strip := geom.Polygon(geom.V(x-bearer/2, low.Y-1), geom.V(x+bearer/2, low.Y-1), geom.V(x+bearer/2, high.Y+1), geom.V(x-bearer/2, high.Y+1))
			if side*(x-heart.X) < long/10 || x-bearer/2 < low.X || x+bearer/2 > high.X || !bears(p.Slab, strip) {
				continue
			}
			if spans := outline.Inside(geom.V(x, low.Y-1), geom.V(x, high.Y+1)); len(spans) > 0 {
				deep := high.Y - low.Y + 2
				out = append(out, Trestle{x, low.Y - 1 + deep*unit.Length(spans[0][0]), low.Y - 1 + deep*unit.Length(spans[len(spans)-1][1])})
				break
			}
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// mostCut is how much of the line of a trestle cuts in the underside may take: a
// groove that crosses it is bridged. Common practice, no source.
const mostCut = 0.15

func bears(s *model.SlabPart, strip geom.Region) bool {
	return cut(s, strip) <= mostCut*float64(strip.Area())
}

func uncut(s *model.SlabPart, strip geom.Region) bool { return cut(s, strip) == 0 }

// cut is how much of a region is cut out of the underside, mm².
func cut(s *model.SlabPart, strip geom.Region) float64 {
	sum := 0.0
	for _, f := range s.Features {
		under := f.Kind == model.Through || f.Kind == model.CutOut || f.Face == model.UnderFace && f.Kind != model.Pilot
		if under && meets(f.Outline, strip) {
			sum += float64(f.Outline.Intersect(strip).Area())
		}
	}
	return sum
}

// Prop is a post that holds a slab up while it is lowered: where it stands under
// the slab, in the slab's own axes, and how high.
type Prop struct {
	At   geom.Vec
	High unit.Length
}

// propIn is how far behind the front a prop stands, and propWide its head.
// Common practice, no source.
const (
	propIn   unit.Length = 120
	propWide unit.Length = 80
)

// Props are two posts near the front, on which the slab rests before it is
// lowered for the last time. They stand clear of the steel below. None for a slab
// that slides in.
func (w Way) Props(d *model.Design) []Prop {
	s := w.Part.Slab
	if s == nil || w.Last() == 0 {
		return nil
	}
	pose := w.Poses[len(w.Poses)-2]
	heart := s.Pose.Unplan(w.Part.Centroid().Flat())
	outline := s.TopOutline()
	low, high := outline.Bounds()
	var out []Prop
	for _, side := range []unit.Length{-1, 1} {
		for k := range 40 {
			x := heart.X + side*((high.X-low.X)/4+unit.Length((k+1)/2)*20*unit.Length(1-2*(k%2)))
			spans := outline.Inside(geom.V(x, low.Y-1), geom.V(x, high.Y+1))
			if side*(x-heart.X) < propWide || len(spans) == 0 {
				continue
			}
			at := geom.V(x, low.Y-1+(high.Y-low.Y+2)*unit.Length(spans[0][0])+propIn)
			post := geom.Polygon(at.Add(geom.V(-propWide/2, -propWide/2)), at.Add(geom.V(propWide/2, -propWide/2)), at.Add(geom.V(propWide/2, propWide/2)), at.Add(geom.V(-propWide/2, propWide/2)))
			if !uncut(s, post) || !freeBelow(d, w.Part, post.Place(s.Pose)) {
				continue
			}
			out = append(out, Prop{at, w.Moved(pose, s.Pose.Space(at.Up(0))).Z})
			break
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// freeBelow tells whether no other part is under a slab at a place.
func freeBelow(d *model.Design, p *model.Part, at geom.Region) bool {
	for _, q := range d.Parts {
		if q == p || len(q.Bodies) == 0 || q.RollOut != nil {
			continue
		}
		box := q.Bounds()
		lo, hi := at.Bounds()
		beside := box.Max.X < lo.X || box.Min.X > hi.X || box.Max.Y < lo.Y || box.Min.Y > hi.Y
		if box.Min.Z < p.Slab.Top && !beside && !q.Footprint().Intersect(at).Empty() {
			return false
		}
	}
	return true
}

// Moved is where a place of the part, told as it is in the end, is in a pose.
func (w Way) Moved(p motion.Pose, at geom.Vec3) geom.Vec3 {
	return w.frame.pose.Space(p.Space(w.frame.own(at)))
}
