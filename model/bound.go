package model

import (
	"fmt"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// BoundKind tells what a slab's edge runs up to.
type BoundKind string

// Kinds of bound.
const (
	ToWall  BoundKind = "wall"  // a wall of the room
	ToMouth BoundKind = "mouth" // the open side of a recess, a line from corner to corner
	ToPart  BoundKind = "part"  // an edge of another slab
	ToAir   BoundKind = "air"   // nothing: a square cut or the front
)

// Bound is a line that a slab may run up to. Walls are bounds; Across, Mark and
// EdgeOf make others. The slab lies to the right of the line.
type Bound struct {
	Kind     BoundKind
	Name     string
	Wall     *Wall
	Part     string
	Edge     string
	lines    func(z0, z1 unit.Length) geom.Line
	gap      unit.Length
	gapGiven bool
	inward   bool // square cuts: the line is turned round when it bounds a slab on the other side
	faults   faults
}

// Bounder is anything that can bound a slab.
type Bounder interface{ bound() Bound }

func (b Bound) bound() Bound { return b }

func (w *Wall) bound() Bound {
	if w == nil {
		return Bound{Kind: ToWall, faults: faults{faultf("a wall is missing: take one with room.Wall(...)")}}
	}
	if len(w.faults) > 0 {
		return Bound{Kind: ToWall, Name: w.Name, faults: w.faults}
	}
	return Bound{Kind: ToWall, Name: w.Name, Wall: w, lines: w.Hull}
}

// boundOf gives what bounds a slab, or a fault where nothing is given.
func boundOf(b Bounder) Bound {
	if b == nil {
		return (*Wall)(nil).bound()
	}
	out := b.bound()
	if out.lines == nil && len(out.faults) == 0 {
		out.faults = faults{faultf("a bound without a line: make one with room.Wall, Across, Straight, Mark or EdgeOf")}
	}
	return out
}

// Across is the straight line from one corner to another, left to right, such
// as the mouth of a recess or the whole back of a room.
func (r *Room) Across(from, to string) Bound {
	b := Bound{Kind: ToMouth, Name: from + "-" + to}
	var names []string
	for _, c := range r.Corners {
		names = append(names, c.Name)
	}
	for _, word := range []string{from, to} {
		if !slices.Contains(names, word) {
			b.faults = b.faults.and(faultf("there is no corner %q%s", word, didYouMean(word, names)))
		}
	}
	i, j := slices.Index(names, from), slices.Index(names, to)
	switch {
	case len(b.faults) > 0:
		return b
	case i == j:
		b.faults = faults{faultf("a line from corner %q to itself leads nowhere", from)}
		return b
	case i > j && !r.Closed:
		b.faults = faults{faultf("corner %q lies to the right of %q: name the left one first", from, to)}
		return b
	}
	l := geom.Through(r.Corners[i].At, r.Corners[j].At)
	b.lines = func(_, _ unit.Length) geom.Line { return l }
	return b
}

// Gap overrides the gap that a slab keeps from this bound.
func (b Bound) Gap(g unit.Length) Bound {
	b.gap, b.gapGiven = g, true
	b.faults = b.faults.within("gap to "+b.Name, g, 0, 100)
	return b
}

// Gap is the wall as a bound with a gap of its own.
func (w *Wall) Gap(g unit.Length) Bound { return w.bound().Gap(g) }

// Mark is a square cut at a distance from the left end of a wall or a line.
func (b Bound) Mark(s unit.Length) Bound { return b.square(s, false) }

// MarkFromRight is a square cut at a distance from the right end of the line.
func (b Bound) MarkFromRight(s unit.Length) Bound { return b.square(s, true) }

// Mark is a square cut at a distance from the wall's left corner.
func (w *Wall) Mark(s unit.Length) Bound { return w.bound().Mark(s) }

// MarkFromRight is a square cut at a distance from the wall's right corner.
func (w *Wall) MarkFromRight(s unit.Length) Bound { return w.bound().MarkFromRight(s) }

func (b Bound) square(s unit.Length, fromRight bool) Bound {
	out := Bound{Kind: ToAir, Name: fmt.Sprintf("square cut at %s on %s", inWords(s), b.Name), inward: true, faults: b.faults}
	if b.lines == nil {
		return out
	}
	out.faults = b.faults.within("square cut on "+b.Name, s, 0, b.lines(0, 0).D.Len())
	out.lines = func(z0, z1 unit.Length) geom.Line {
		l, at := b.lines(z0, z1), s
		if fromRight {
			at = l.D.Len() - s
		}
		return geom.Line{P: l.P.Add(l.D.Unit().Mul(float64(at))), D: l.D.Left()}
	}
	return out
}

// at gives the bound's line for a slab between two heights, the slab to its
// right. Square cuts run towards the wall when they bound the slab on the left.
func (b Bound) at(z0, z1 unit.Length, left bool) geom.Line {
	l := b.lines(z0, z1)
	if b.inward && !left {
		l.D = l.D.Mul(-1)
	}
	return l
}

// Straight is one straight line in front of all walls from one corner to
// another: parallel to the line between the two corners, moved into the room
// until no corner and no bulge between them crosses it.
func (r *Room) Straight(from, to string) Bound {
	b := r.Across(from, to)
	b.Kind = ToWall
	if len(b.faults) > 0 {
		return b
	}
	corners := b.lines(0, 0)
	walls := r.between(from, to)
	b.lines = func(z0, z1 unit.Length) geom.Line {
		var in unit.Length
		for i, w := range walls {
			h := w.Hull(z0, z1)
			in = max(in, -corners.Side(h.P), -corners.Side(h.P.Add(h.D)))
			if i > 0 { // an arris between leaning walls stands out further than either
				if p, ok := walls[i-1].Hull(z0, z1).Meet(h); ok && p.Sub(h.P).Len() < 100 {
					in = max(in, -corners.Side(p))
				}
			}
		}
		return corners.Shift(-in)
	}
	return b
}

// between gives the walls on the way from one corner to another.
func (r *Room) between(from, to string) []*Wall {
	var out []*Wall
	on := false
	for _, w := range append(append([]*Wall(nil), r.Walls...), r.Walls...) {
		on = on || w.From.Name == from
		if on {
			out = append(out, w)
		}
		if on && w.To.Name == to {
			return out
		}
	}
	return nil
}

// EdgeOf is an edge of a slab that is already in the design, for another slab
// to run up to.
func (d *Design) EdgeOf(slab, edge string) Bound {
	part, bad := d.slab(slab)
	if bad != nil {
		return Bound{Kind: ToPart, Name: slab, faults: bad}
	}
	var names []string
	for _, e := range part.Slab.Edges {
		if e.Name == edge {
			a, b := part.Slab.Pose.Plan(e.Start), part.Slab.Pose.Plan(e.End)
			return Bound{Kind: ToPart, Name: slab, Part: slab, Edge: edge,
				lines: func(_, _ unit.Length) geom.Line { return geom.Through(b, a) }}
		}
		names = append(names, e.Name)
	}
	return Bound{Kind: ToPart, Name: slab, faults: faults{faultf("slab %q has no edge %q%s", slab, edge, didYouMean(edge, names))}}
}
