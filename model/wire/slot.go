package wire

import (
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// IsSlot tells whether work is a slot at an edge through which cables come up.
func IsSlot(f model.Feature) bool { return f.Kind == model.CutOut && f.For == model.CableWork }

// Opening is what a slot lets through: what the brackets below leave of it, as
// long along the reference edge and as deep as its largest piece; the zero
// Opening if they close it.
type Opening struct {
	At         geom.Vec // its middle, in the slab's own axes
	Long, Deep unit.Length
}

// least is the thickest thing that passes.
func (o Opening) least() unit.Length { return min(o.Long, o.Deep) }

// OpeningOf takes the brackets under a slab off a slot.
func OpeningOf(d *model.Design, p *model.Part, f model.Feature) Opening {
	open := f.Outline.Intersect(p.Slab.UnderOutline()).Intersect(p.Slab.TopOutline())
	var closed []geom.Region
	for _, a := range d.BracketsUnder(p.ID) {
		b := a.Bracket()
		long, deep := b.On().Length, b.Deep()
		var seat []geom.Vec
		for _, c := range []geom.Vec{{}, geom.V(0, -deep), geom.V(long, -deep), geom.V(long, 0)} {
			seat = append(seat, p.Slab.Pose.Unplan(b.Pose().Plan(c)))
		}
		closed = append(closed, geom.Polygon(seat...))
	}
	var best geom.Region
	for _, piece := range open.Minus(closed...).Pieces() {
		if piece.Area() > best.Area() {
			best = piece
		}
	}
	if best.Empty() {
		return Opening{}
	}
	low, high := best.Bounds()
	return Opening{At: low.Lerp(high, 0.5), Long: high.X - low.X, Deep: high.Y - low.Y}
}

// gate is a place where cables change from one face of a slab to the other.
type gate struct {
	at    geom.Vec
	piece Piece
}

// gates lists the holes and slots of a slab.
func gates(d *model.Design, p *model.Part) []gate {
	var out []gate
	for _, f := range p.Slab.Features {
		switch {
		case f.Kind == model.Through:
			out = append(out, gate{f.At, Piece{Kind: InHole, Slab: p.ID, Feature: f.Name, Gate: f.Dia}})
		case IsSlot(f):
			if o := OpeningOf(d, p, f); o != (Opening{}) {
				out = append(out, gate{o.At, Piece{Kind: InSlot, Slab: p.ID, Feature: f.Name, Gate: o.least()}})
			}
		}
	}
	return out
}
