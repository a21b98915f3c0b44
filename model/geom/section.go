package geom

import (
	"cmp"
	"errors"
	"slices"

	"slabwright/model/unit"
)

// At is the level section of the solid at a height. Where the section changes
// at that height it is the one just above, at the solid's top the one just
// below.
func (s Solid) At(z unit.Length) Region {
	if s.Err() != nil {
		return Region{}
	}
	return levelSection(s.Faces(), z, s.Bounds().Max.Z)
}

func levelSection(faces []Face, z, top unit.Length) Region {
	below := z >= top-onPlane
	return section(faces, func(v Vec3) unit.Length {
		if below {
			return z - v.Z
		}
		return v.Z - z
	}, Vec3.Flat)
}

// Cut is the upright section of the solid along a line in plan: x runs along
// the line from its point P, y is height. Where the section changes at the
// line it is the one just to the left of it.
func (s Solid) Cut(l Line) Region {
	if s.Err() != nil {
		return Region{}
	}
	if !(l.D.Len() > 0) || !finite(l.P.X, l.P.Y, l.D.X, l.D.Y) {
		return faulty(errors.New("a section needs a line with a direction"))
	}
	d := l.D.Unit()
	return section(s.Faces(),
		func(v Vec3) unit.Length { return unit.Length(d.Cross(v.Flat().Sub(l.P))) },
		func(v Vec3) Vec { return V(unit.Length(d.Dot(v.Flat().Sub(l.P))), v.Z) })
}

// onPlane is the distance within which a vertex counts as in the plane of a
// section: less than a grid step, more than placing a solid can make.
const onPlane unit.Length = 1e-6

// section cuts the skin where side is zero and lays the result flat. Vertices
// in the plane count as behind it.
func section(faces []Face, side func(Vec3) unit.Length, flat func(Vec3) Vec) Region {
	c := cutter{ids: map[[2]Vec3]int{}}
	for _, f := range faces {
		var hits []int
		for _, loop := range f.Loops {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				sa, sb := side(a), side(b)
				if (sa > onPlane) != (sb > onPlane) {
					if sa > onPlane {
						a, b, sa, sb = b, a, sb, sa
					}
					hits = append(hits, c.hit(a, b, float64(sa/(sa-sb)), flat))
				}
			}
		}
		c.link(hits)
	}
	var loops [][]pt
	for _, loop := range c.loops() {
		out := make([]pt, len(loop))
		for i, v := range loop {
			p, err := snap(v)
			if err != nil {
				return faulty(err)
			}
			out[i] = p
		}
		loops = append(loops, out)
	}
	return fromRaw(loops, func(w []int32) bool { return w[0]&1 != 0 })
}

// cutter collects the places where a plane cuts the edges of a skin. Every
// edge has two faces, so every place has two neighbours.
type cutter struct {
	ids  map[[2]Vec3]int
	at   []Vec
	next [][]int
}

// hit is the place where the edge from a behind to b before the plane is cut.
func (c *cutter) hit(a, b Vec3, t float64, flat func(Vec3) Vec) int {
	key := [2]Vec3{a, b}
	if n, ok := c.ids[key]; ok {
		return n
	}
	n := len(c.at)
	c.ids[key] = n
	c.at = append(c.at, flat(a).Lerp(flat(b), min(max(t, 0), 1)))
	c.next = append(c.next, nil)
	return n
}

// link joins the places on one face in pairs, in their order along the cut.
func (c *cutter) link(hits []int) {
	if len(hits) < 2 {
		return
	}
	lo, hi := c.at[hits[0]], c.at[hits[0]]
	for _, h := range hits {
		v := c.at[h]
		lo, hi = V(min(lo.X, v.X), min(lo.Y, v.Y)), V(max(hi.X, v.X), max(hi.Y, v.Y))
	}
	slices.SortStableFunc(hits, func(g, h int) int {
		if hi.X-lo.X > hi.Y-lo.Y {
			return cmp.Compare(c.at[g].X, c.at[h].X)
		}
		return cmp.Compare(c.at[g].Y, c.at[h].Y)
	})
	for i := 0; i+1 < len(hits); i += 2 {
		a, b := hits[i], hits[i+1]
		c.next[a], c.next[b] = append(c.next[a], b), append(c.next[b], a)
	}
}

func (c *cutter) loops() [][]Vec {
	var out [][]Vec
	done := make([]bool, len(c.at))
	for start := range c.at {
		var loop []Vec
		for n := start; !done[n]; {
			done[n] = true
			loop = append(loop, c.at[n])
			for _, m := range c.next[n] {
				if !done[m] {
					n = m
					break
				}
			}
		}
		if len(loop) > 2 {
			out = append(out, loop)
		}
	}
	return out
}
