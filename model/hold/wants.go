package hold

import "slices"

// Wants is what of a slab is to be worked out: no load cases but these. The zero
// Wants is everything.
type Wants int

// Parts of the statics of a slab.
const (
	Sinking  Wants = iota + 1 // deflections: after years and under a person
	Strength                  // stresses and pressures of the design cases
	Lifting                   // how far it comes off its bearings
	Swinging                  // its lowest frequency
)

// swing is the frequency, which is no load case.
const swing Kind = "swing"

func (w Wants) has(k Kind) bool {
	switch w {
	case Sinking:
		return k == Lasting || k == Daily || k == PersonSinks
	case Strength:
		return k == DesignWeight || k == DesignSpread || k == DesignPerson
	case Lifting:
		return k == Lasting || k == Daily || k == PersonLifts
	case Swinging:
		return k == Lasting || k == Daily || k == swing
	}
	return true
}

// of leaves a slab no other cases.
func (w Wants) of(b Slab) Slab {
	b.Cases = slices.DeleteFunc(slices.Clone(b.Cases), func(c Case) bool { return !w.has(c.Kind) })
	return b
}
