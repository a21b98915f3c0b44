package bring

import (
	"slices"

	"slabwright/model"
	"slabwright/model/unit"
)

// Step is what is set in one go: a slab, or all that is mounted between two slabs
// and needs no way worth drawing.
type Step struct {
	Ways []Way
}

// Slab is the way of the slab of a step; false: there is none.
func (s Step) Slab() (Way, bool) {
	if w := s.Ways[0]; w.Part.Slab != nil {
		return w, true
	}
	return Way{}, false
}

// Has tells whether a part is set in the step.
func (s Step) Has(p *model.Part) bool {
	return slices.ContainsFunc(s.Ways, func(w Way) bool { return w.Part == p })
}

// Mass is that of all its parts.
func (s Step) Mass() unit.Mass {
	var sum unit.Mass
	for _, w := range s.Ways {
		sum += w.Part.Mass()
	}
	return sum
}

// Steps parts an order: every slab is a step of its own, other parts of a kind
// that follow each other are one.
func (o Order) Steps() []Step {
	var out []Step
	for i, w := range o {
		if i > 0 && w.Part.Slab == nil && sameKind(o[i-1].Part, w.Part) {
			last := &out[len(out)-1]
			last.Ways = append(last.Ways, w)
			continue
		}
		out = append(out, Step{[]Way{w}})
	}
	return out
}

func sameKind(a, b *model.Part) bool {
	return a.Slab == nil && (a.Angle == nil) == (b.Angle == nil) && (a.Cleat == nil) == (b.Cleat == nil) && (a.Rod == nil) == (b.Rod == nil)
}
