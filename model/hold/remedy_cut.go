package hold

import (
	"slices"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// What is cut into a slab goes to another place in steps, up to mostMoved of them,
// and leaves some wood to its edges and to other work.
const (
	moveStep  unit.Length = 10
	mostMoved             = 40
	woodLeft  unit.Length = 20
)

// sides are the ways to go: right, left, towards the back edge, away from it.
var sides = []geom.Vec{geom.V(1, 0), geom.V(-1, 0), geom.V(0, 1), geom.V(0, -1)}

// shallower finds the groove or pocket without which the slab would hold, and the
// greatest depth of it with which it does.
func (s seeker) shallower() (Remedy, bool, bool) {
	there := false
	for i, f := range s.part.Slab.Features {
		if f.Kind != model.Groove && f.Kind != model.Pocket {
			continue
		}
		there = true
		of := func(n int) change { return change{cut: i + 1, less: unit.Length(n)} }
		most := int(f.Clear()) - 3
		without, ok := s.without(of(most))
		if !ok {
			continue
		}
		n, w, ok := without.leastSurely(most, of)
		if ok {
			return Remedy{Shallow: f.Name, Depth: f.Depth - unit.Length(n), With: w}, true, true
		}
	}
	return Remedy{}, there, false
}

// without tells whether a slab without some cut would hold, and gives a seeker that
// takes its bearings from that: what the coarse mesh makes of stresses at a cut says
// nothing of those elsewhere.
func (s seeker) without(c change) (seeker, bool) {
	rough := s.rough(c)
	if s.used(rough) > 1 {
		return s, false
	}
	w, ok := s.does(c)
	s.like = &pair{w, rough}
	return s, ok
}

// cutElsewhere finds the cuts without which the slab would hold, and the least way
// by which they must go.
func (s seeker) cutElsewhere() (Remedy, bool, bool) {
	there := false
	var seen []bool
	for i, f := range s.part.Slab.Features {
		if !isCut(f) || i < len(seen) && seen[i] {
			continue
		}
		there, seen = true, met(s.part.Slab, i)
		without, ok := s.without(change{cut: i + 1, closed: true})
		if !ok {
			continue
		}
		if r, ok := without.moved(i); ok {
			return r, true, true
		}
	}
	return Remedy{}, there, false
}

// moved tries all sides, twice as far each time.
func (s seeker) moved(cut int) (Remedy, bool) {
	var names []string
	for i, in := range met(s.part.Slab, cut) {
		if in {
			names = append(names, s.part.Slab.Features[i].Name)
		}
	}
	for far := 5; far <= mostMoved; far *= 2 {
		var best Remedy
		found := far
		for _, side := range sides {
			of := func(n int) change {
				return change{cut: cut + 1, way: side.Mul(float64(n) * float64(moveStep))}
			}
			if !hasRoom(s.part.Slab, cut, of(far).way) {
				continue
			}
			n, w, ok := s.leastSurely(far, of)
			if ok && hasRoom(s.part.Slab, cut, of(n).way) && (best.Cuts == nil || n < found) {
				best, found = Remedy{Cuts: names, Way: of(n).way, With: w}, n
			}
		}
		if best.Cuts != nil {
			return best, true
		}
	}
	return Remedy{}, false
}

// hasRoom tells whether cuts that go some way stay in the wood and off other work.
func hasRoom(p *model.SlabPart, cut int, way geom.Vec) bool {
	wood := p.TopOutline().Intersect(p.UnderOutline()).Grow(-woodLeft, 1)
	group := met(p, cut)
	return !slices.ContainsFunc(p.Features, func(f model.Feature) bool {
		i := slices.IndexFunc(p.Features, func(g model.Feature) bool { return g.Name == f.Name && g.At == f.At })
		if i < 0 || !group[i] {
			return false
		}
		there := shifted(f, way).Mouth()
		if !there.Minus(wood).Empty() {
			return true
		}
		for k, g := range p.Features {
			if !group[k] && g.Kind != model.Bore && !there.Intersect(g.Outline.Grow(woodLeft/4, 1)).Empty() {
				return true
			}
		}
		return false
	})
}
