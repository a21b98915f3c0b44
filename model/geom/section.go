package geom

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"slabwright/model/unit"
)

// SliceTolerance is how far layers may stand outside the true skin where it
// slopes or is round in a lying direction. Slopes higher than 16 mm may take
// more than the 64 layers there are between two heights of a body at most, and
// are bounded more coarsely, to the 64th part of the slope's height.
const SliceTolerance unit.Length = 0.25

// mostSlices bounds the number of layers between two neighbouring heights of
// a body: slopes that would take more are bounded more coarsely.
const mostSlices = 64

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

// slicesOf cuts a skin into layers. Between two heights without a slope the
// layer is the section; else it is what the slice covers seen from above: the
// section at its top and all that looks up within it.
func slicesOf(faces []Face) []Layer {
	var zs []unit.Length
	lo, hi := make([]unit.Length, len(faces)), make([]unit.Length, len(faces))
	for i, f := range faces {
		lo[i], hi[i] = f.Loops[0][0].Z, f.Loops[0][0].Z
		for _, v := range f.Loops[0] {
			zs = append(zs, v.Z)
			lo[i], hi[i] = min(lo[i], v.Z), max(hi[i], v.Z)
		}
	}
	slices.Sort(zs)
	zs = slices.CompactFunc(zs, func(a, b unit.Length) bool { return math.Abs(float64(a-b)) < float64(onPlane) })
	var out []Layer
	for i := 0; i+1 < len(zs); i++ {
		var here []Face
		for j, f := range faces {
			if lo[j] < zs[i+1]-onPlane && hi[j] > zs[i]+onPlane {
				here = append(here, f)
			}
		}
		out = append(out, sliceBetween(here, zs[i], zs[i+1])...)
	}
	return out
}

// sliceBetween makes the layers between two heights from the faces that pass
// between them; no face begins or ends there.
func sliceBetween(faces []Face, lo, hi unit.Length) []Layer {
	var slopes []Face // those that look up
	sloping, n := false, 1.0
	for _, f := range faces {
		if steep := math.Abs(float64(f.Normal.Z)); steep > 1e-9 {
			n = max(n, math.Ceil(float64(hi-lo)*steep/float64(SliceTolerance)))
			sloping = true
			if f.Normal.Z > 0 {
				slopes = append(slopes, f)
			}
		}
	}
	n = min(n, mostSlices)
	var out []Layer
	for i := range int(n) {
		a, b := lo+(hi-lo)*unit.Length(float64(i)/n), lo+(hi-lo)*unit.Length(float64(i+1)/n)
		var r Region
		if sloping {
			r = shadow(levelSection(faces, b, b), slopes, a, b)
		} else {
			r = levelSection(faces, (a+b)/2, hi)
		}
		if !r.Empty() {
			out = append(out, Layer{r, a, b})
		}
	}
	return out
}

// shadow is a section together with what the slopes below it cover between two
// heights. Most sides are sides of two pieces, one on each side, and drop out
// before the region is made.
func shadow(section Region, slopes []Face, lo, hi unit.Length) Region {
	var loops [][]pt
	for _, pc := range section.pieces {
		loops = append(loops, pc...)
	}
	for _, f := range slopes {
		loop := clip(f.Loops[0], func(v Vec3) unit.Length { return v.Z - lo })
		loop = clip(loop, func(v Vec3) unit.Length { return hi - v.Z })
		at := make([]pt, len(loop))
		for i, v := range loop {
			p, err := snap(v.Flat())
			if err != nil {
				return faulty(err)
			}
			at[i] = p
		}
		loops = append(loops, at)
	}
	net := map[[2]pt]int32{}
	each := func(visit func(key [2]pt, delta int32)) {
		for _, loop := range loops {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				if a.before(b) {
					visit([2]pt{a, b}, 1)
				} else if b.before(a) {
					visit([2]pt{b, a}, -1)
				}
			}
		}
	}
	each(func(key [2]pt, delta int32) { net[key] += delta })
	var segs []seg
	each(func(key [2]pt, _ int32) {
		if n := net[key]; n != 0 {
			segs = append(segs, seg{a: key[0], b: key[1], delta: n})
			net[key] = 0
		}
	})
	p := arrange(segs, 1)
	return newRegion(tidy(p.outline(p.choose(positive))))
}

// clip keeps what lies where side is not negative (I. E. Sutherland and G. W.
// Hodgman's clipping; the pieces of a bent loop stay joined along the cut).
func clip(loop []Vec3, side func(Vec3) unit.Length) []Vec3 {
	var out []Vec3
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		sa, sb := side(a), side(b)
		if sa >= 0 {
			out = append(out, a)
		}
		if sa > 0 && sb < 0 || sa < 0 && sb > 0 {
			out = append(out, a.Add(b.Sub(a).Mul(float64(sa/(sa-sb)))))
		}
	}
	return out
}
