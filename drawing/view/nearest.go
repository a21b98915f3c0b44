package view

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Anchor is a place on the lines of an item to which a leader can point. Kind
// is Hidden if the item has no other lines in the view.
type Anchor struct {
	At   geom.Vec
	Kind Kind
}

// Nearest gives the point on the visible or cut lines of an item that is
// nearest to a place, or on its hidden lines if there are no others. It is
// false if the item has no lines of its own: they may all have fallen together
// with those of other items, see Look.Outline.
func (v View) Nearest(item int, to geom.Vec) (Anchor, bool) {
	var best Anchor
	least, found := unit.Length(math.Inf(1)), false
	for _, s := range v.Segments {
		if s.Item != item || s.Kind == Hidden && found && best.Kind != Hidden {
			continue // the hidden ones come last
		}
		p := nearestOn(s.A, s.B, to)
		if d := p.Sub(to).Len(); d < least {
			best, least, found = Anchor{p, s.Kind}, d, true
		}
	}
	return best, found
}

func nearestOn(a, b, p geom.Vec) geom.Vec {
	d := b.Sub(a)
	size := d.Dot(d)
	if size == 0 {
		return a
	}
	return a.Lerp(b, min(max(p.Sub(a).Dot(d)/size, 0), 1))
}
