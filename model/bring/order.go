package bring

import (
	"slices"

	"slabwright/model"
	"slabwright/model/calc/motion"
)

// Order is how the parts go in, the first to be mounted first. A part whose Way
// is not Found could not be taken out of what is mounted before it; the others
// follow as if it were in place.
type Order []Way

type orderKey struct{}

// OrderOf gives the order of a finished design, worked out once.
func OrderOf(d *model.Design) Order {
	return d.Once(orderKey{}, func() any { return NewScene(d).Order() }).(Order)
}

// Order takes the finished desk apart, part by part: the last that comes off is
// the first that goes on. Taking a part away never shuts in another, so where this
// finds no order there is none that moves one part at a time.
func (s *Scene) Order() Order {
	var there []*model.Part
	tasks := map[*model.Part]*task{}
	for _, p := range s.Design.Parts {
		if len(p.Bodies) > 0 {
			there = append(there, p)
			tasks[p] = s.task(p)
		}
	}
	slices.SortStableFunc(there, func(a, b *model.Part) int { return rank(a) - rank(b) })
	slices.Reverse(there)
	var out Order
	for len(there) > 0 {
		way := next(there, tasks)
		out = append(out, way)
		there = slices.DeleteFunc(there, func(p *model.Part) bool { return p == way.Part })
	}
	slices.Reverse(out)
	return out
}

// rank is the order in which parts are mounted if they may: all that is drilled
// for first, then wood from below upwards, and what stands loose.
func rank(p *model.Part) int {
	switch {
	case p.Bracket() != nil:
		return 0
	case p.Rod != nil:
		return 1
	case p.Kind == model.KindSlab:
		return 2
	case p.Kind == model.KindShelf:
		return 3
	}
	return 4
}

// next gives the part that comes off next: the first that can be drawn out
// straight, else the first that a search gets out, else the first that nothing
// lies on, whatever the search says of it.
func next(there []*model.Part, tasks map[*model.Part]*task) Way {
	loose := slices.DeleteFunc(slices.Clone(there), func(q *model.Part) bool {
		return slices.ContainsFunc(there, func(p *model.Part) bool { return carries(q, p) })
	})
	for _, p := range loose {
		if w, ok := tasks[p].straight(there); ok {
			return w
		}
	}
	var first Way
	for i, p := range loose {
		w := tasks[p].out(there)
		if w.Verdict == motion.Found {
			return w
		}
		if i == 0 {
			first = w
		}
	}
	return first
}
