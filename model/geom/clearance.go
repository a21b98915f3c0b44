package geom

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// Gap3 is how far two bodies are apart.
type Gap3 struct {
	// Distance is the least distance, 0 if they touch. If they overlap it is
	// negative: minus the smaller of Plan and Height, which is how far one
	// must move to come clear. NaN if Err is set.
	Distance unit.Length
	// A and B are the nearest places of the first and the second body; for an
	// overlap both are one place inside it.
	A, B Vec3
	// Plan and Height tell how large an overlap is: its least width seen from
	// above, and how high it is. Both are 0 if there is none.
	Plan, Height unit.Length
	// Overlap is the overlap seen from above, at the height where it is widest.
	Overlap Region
	// Err tells why nothing was measured: the fault of one of the bodies.
	Err error
}

// Zone is a space with a name, such as one to be kept free: the union of
// regions between heights.
type Zone struct {
	Name   string
	Layers []Layer
}

// Clearance measures the distance or the overlap of two solids on their
// layers. Between upright walls and level faces it is exact to the grid;
// where a face slopes or a rod lies it is too small by at most twice
// SliceTolerance, never too large. Overlaps of two micrometres or less, which
// rounding can make, count as touching.
func Clearance(a, b Solid) Gap3 {
	for _, s := range [2]Solid{a, b} {
		if err := s.Err(); err != nil {
			return unmeasured(err)
		}
	}
	return measureGap(a.Layers(), b.Layers())
}

// ClearanceZone measures the distance of a solid from a zone.
func ClearanceZone(s Solid, z Zone) Gap3 {
	if err := s.Err(); err != nil {
		return unmeasured(err)
	}
	for _, l := range z.Layers {
		_, _, err := heights(l.Z0, l.Z1)
		if err == nil {
			err = l.Region.Err()
		}
		if err != nil {
			return unmeasured(fmt.Errorf("zone %q: %w", z.Name, err))
		}
	}
	return measureGap(s.Layers(), z.Layers)
}

// Gap is a lower bound of the distance between anything in two boxes, 0 if
// they touch or overlap.
func (b Box) Gap(c Box) unit.Length {
	x := max(b.Min.X-c.Max.X, c.Min.X-b.Max.X, 0)
	y := max(b.Min.Y-c.Max.Y, c.Min.Y-b.Max.Y, 0)
	z := max(b.Min.Z-c.Max.Z, c.Min.Z-b.Max.Z, 0)
	return Vec3{x, y, z}.Len()
}

func unmeasured(err error) Gap3 {
	return Gap3{Distance: unit.Length(math.NaN()), Err: err}
}

func (l *Layer) box() Box {
	lo, hi := l.Region.Bounds()
	return Box{lo.Up(l.Z0), hi.Up(l.Z1)}
}

// layerPair is a layer of each body.
type layerPair struct{ a, b *Layer }

// common is how far the heights of the two overlap; negative: how far they are
// apart.
func (p layerPair) common() unit.Length { return min(p.a.Z1, p.b.Z1) - max(p.a.Z0, p.b.Z0) }

// touching is the overlap that still counts as touching.
const touching = unit.Length(contact) / perMM

func measureGap(as, bs []Layer) Gap3 {
	type candidate struct {
		least unit.Length // lower bound of the distance
		i, j  int
	}
	var candidates []candidate
	for i := range as {
		for j := range bs {
			if !as[i].Region.Empty() && !bs[j].Region.Empty() {
				candidates = append(candidates, candidate{as[i].box().Gap(bs[j].box()), i, j})
			}
		}
	}
	if len(candidates) == 0 {
		return unmeasured(errors.New("there is nothing to measure between"))
	}
	slices.SortFunc(candidates, func(p, q candidate) int {
		return cmp.Or(cmp.Compare(p.least, q.least), cmp.Compare(p.i, q.i), cmp.Compare(p.j, q.j))
	})
	best := Gap3{Distance: unit.Length(math.Inf(1))}
	var over overlap
	for _, c := range candidates {
		p := layerPair{&as[c.i], &bs[c.j]}
		deep := p.common() > touching
		if c.least >= best.Distance && !(deep && c.least == 0) {
			continue
		}
		g := p.a.Region.Gap(p.b.Region)
		if g.Distance < 0 && deep {
			over.add(p, -g.Distance)
			continue
		}
		if d := besideOrAbove(p, g); d.Distance < best.Distance {
			best = d
		}
	}
	if over.pairs != nil {
		return over.gap()
	}
	return best
}

// besideOrAbove is the distance between two layers that do not overlap.
func besideOrAbove(p layerPair, g Gap) Gap3 {
	level := max(-p.common(), 0)
	beside := max(g.Distance, 0)
	out := Gap3{Distance: unit.Length(math.Hypot(float64(level), float64(beside)))}
	a, b := g.A, g.B
	if g.Distance < 0 { // one above the other
		a = p.a.Region.Intersect(p.b.Region).within()
		b = a
	}
	switch {
	case p.a.Z1 <= p.b.Z0:
		out.A, out.B = a.Up(p.a.Z1), b.Up(p.b.Z0)
	case p.b.Z1 <= p.a.Z0:
		out.A, out.B = a.Up(p.a.Z0), b.Up(p.b.Z1)
	default:
		z := (max(p.a.Z0, p.b.Z0) + min(p.a.Z1, p.b.Z1)) / 2
		out.A, out.B = a.Up(z), b.Up(z)
	}
	return out
}

// within is a place well inside a region: the middle of its largest triangle.
func (r Region) within() Vec {
	var best Vec
	largest := 0.0
	for _, t := range r.Triangles() {
		if a := t[1].Sub(t[0]).Cross(t[2].Sub(t[0])); a > largest {
			largest, best = a, t[0].Add(t[1]).Add(t[2]).Mul(1./3)
		}
	}
	return best
}

// overlap collects the pairs of layers that overlap.
type overlap struct {
	pairs []layerPair
	plan  unit.Length
	deep  layerPair // the pair with the largest overlap in plan
}

func (o *overlap) add(p layerPair, width unit.Length) {
	o.pairs = append(o.pairs, p)
	if width > o.plan {
		o.plan, o.deep = width, p
	}
}

func (o *overlap) gap() Gap3 {
	g := Gap3{Plan: o.plan, Height: o.height(), Overlap: o.deep.a.Region.Intersect(o.deep.b.Region)}
	g.Distance = -min(g.Plan, g.Height)
	lo, hi := max(o.deep.a.Z0, o.deep.b.Z0), min(o.deep.a.Z1, o.deep.b.Z1)
	g.A = g.Overlap.within().Up((lo + hi) / 2)
	g.B = g.A
	return g
}

// height is the longest unbroken stretch of height in which the two overlap.
func (o *overlap) height() unit.Length {
	slices.SortStableFunc(o.pairs, func(p, q layerPair) int {
		return cmp.Compare(max(p.a.Z0, p.b.Z0), max(q.a.Z0, q.b.Z0))
	})
	var longest, lo, hi unit.Length
	for i, p := range o.pairs {
		a, b := max(p.a.Z0, p.b.Z0), min(p.a.Z1, p.b.Z1)
		if i == 0 || a > hi+touching {
			lo, hi = a, b
		}
		hi = max(hi, b)
		longest = max(longest, hi-lo)
	}
	return longest
}
