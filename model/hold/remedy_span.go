package hold

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// A table leg that is tried out is legDia thick, stands legInside from the edge
// that it is to hold, every legStep along it, and at most legTries are tried.
const (
	legDia    unit.Length = 60
	legInside unit.Length = 70
	legStep   unit.Length = 100
	legTries              = 4
	far                   = 1.3 // used with a leg: one a step further on does not help either
	mostRods              = 3
)

// oneMoreWall finds a wall along which the slab lies on nothing, and one more bracket
// does it.
func (s seeker) oneMoreWall() (Remedy, bool, bool) {
	there := false
	for _, e := range s.part.Slab.Edges {
		if e.Bound != model.ToWall || s.carried(e.To) {
			continue
		}
		bracket := oneMore(s.design, s.part.ID, e.To)
		if bracket == nil {
			continue
		}
		there = true
		c := change{wall: e.To}
		if s.guess(c) > near {
			continue
		}
		if w, ok := s.does(c); ok {
			return Remedy{Wall: e.To, Bracket: bracket, With: w}, true, true
		}
	}
	return Remedy{}, there, false
}

// carried tells whether something on a wall carries the slab.
func (s seeker) carried(wall string) bool {
	return slices.ContainsFunc(s.design.Parts, func(p *model.Part) bool {
		return slices.Contains(p.Bears, s.part.ID) && slices.Contains(p.Bears, wall)
	})
}

// moreRods finds how many more rods, evenly between the outermost ones, do it.
func (s seeker) moreRods() (Remedy, bool, bool) {
	now := len(rodsOf(s.design, s.part))
	if now < 2 {
		return Remedy{}, false, false
	}
	n, w, ok := s.least(mostRods, func(n int) change { return change{rods: n} })
	return Remedy{Rods: now + n, With: w}, true, ok
}

// postElsewhere finds the table leg that goes the least way, along the slab or
// across it, towards where the slab sinks most.
func (s seeker) postElsewhere() (Remedy, bool, bool) {
	var best Remedy
	least, there := 0, false
	for _, p := range s.design.Parts {
		if p.Post == nil || p.Post.Under != s.part.ID {
			continue
		}
		there = true
		from := s.part.Slab.Pose.Unplan(p.Post.Middle)
		far := s.sinksAt.Sub(from)
		for _, d := range []geom.Vec{geom.V(far.X, 0), geom.V(0, far.Y)} {
			of := func(n int) change {
				return change{post: p.ID, way: d.Unit().Mul(float64(n) * float64(moveStep))}
			}
			n, w, ok := s.least(int(d.Len()/moveStep), of)
			if to := from.Add(of(n).way); ok && (least == 0 || n < least) && s.stands(to, p) {
				best, least = Remedy{Post: p.ID, Way: of(n).way, To: geom.V(to.X, -to.Y), With: w}, n
			}
		}
	}
	return best, there, least > 0
}

// oneMorePost finds a place for one more table leg, the nearest to where the slab
// sinks most of those where nobody's legs and no part are in its way.
func (s seeker) oneMorePost() (Remedy, bool, bool) {
	if s.part.Kind != model.KindSlab {
		return Remedy{}, false, false
	}
	spots := s.spots()
	for _, at := range spots[:min(len(spots), legTries)] {
		c := change{propped: true, prop: at}
		if is := s.guess(c); is > far {
			break
		} else if is > near {
			continue
		}
		if w, ok := s.does(c); ok {
			return Remedy{Prop: &geom.Vec{X: at.X, Y: -at.Y}, With: w}, true, true
		}
	}
	return Remedy{}, len(spots) > 0, false
}

// spots are places for a leg along the free edges, in the slab's axes, nearest
// first to where it sinks most.
func (s seeker) spots() []geom.Vec {
	var out []geom.Vec
	for _, e := range s.part.Slab.Edges {
		way := e.End.Sub(e.Start)
		if e.Bound == model.ToWall || e.Bound == model.ToPart || way.Len() < 2*legInside {
			continue
		}
		in := way.Unit().Left().Mul(-float64(legInside))
		for x := legInside; x <= way.Len()-legInside; x += legStep {
			at := e.Start.Add(way.Unit().Mul(float64(x))).Add(in)
			at = geom.V(unit.Length(10*math.Round(float64(at.X)/10)), unit.Length(10*math.Round(float64(at.Y)/10)))
			if s.stands(at, nil) {
				out = append(out, at)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b geom.Vec) int {
		return cmp.Compare(a.Sub(s.sinksAt).Len(), b.Sub(s.sinksAt).Len())
	})
	return out
}

// stands tells whether a leg can stand under a place of the slab: with its whole
// top, on the floor, out of spaces kept free, and clear of parts but itself.
func (s seeker) stands(own geom.Vec, itself *model.Part) bool {
	sp := s.part.Slab
	top := geom.Circle(own, legDia/2, 1)
	if !top.Minus(sp.UnderOutline()).Empty() {
		return false
	}
	for _, f := range sp.Features {
		if (isCut(f) || f.Kind == model.Pilot && (itself == nil || f.For != itself.ID)) && !top.Intersect(f.Mouth()).Empty() {
			return false
		}
	}
	foot, under := top.Place(sp.Pose), sp.Top-sp.Thickness
	for _, z := range s.design.Zones {
		if z.Floor < under && !z.Plan.Intersect(foot).Empty() {
			return false
		}
	}
	for _, p := range s.design.Parts {
		if p == s.part || p == itself {
			continue
		}
		for _, b := range p.Bodies {
			if b.Solid.Bounds().Min.Z < under-1 && !b.Solid.Footprint().Intersect(foot).Empty() {
				return false
			}
		}
	}
	return true
}

// rodsOf are the rods of a shelf.
func rodsOf(d *model.Design, shelf *model.Part) []*model.Part {
	var out []*model.Part
	for _, p := range d.Parts {
		if p.Rod != nil && p.Rod.Shelf == shelf.ID {
			out = append(out, p)
		}
	}
	return out
}

// evenRods puts a shelf on so many rods like its own, evenly from the first to the
// last.
func evenRods(a *plate.Assembly, d *model.Design, n int, shelf *model.Part, count int) []support {
	rods := rodsOf(d, shelf)
	first, last := boreOf(shelf, rods[0].ID), boreOf(shelf, rods[len(rods)-1].ID)
	var out []support
	for i := range count {
		bore := first
		bore.At = first.At.Lerp(last.At, float64(i)/float64(count-1))
		like := *rods[0]
		like.ID = fmt.Sprintf("%s rod %d", shelf.ID, i+1)
		out = append(out, onRod(a, n, shelf, &like, bore))
	}
	return out
}
