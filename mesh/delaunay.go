package mesh

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// delaunay swaps diagonals inside one flat face until every inner edge is
// locally Delaunay, which makes the smallest angle as large as the face allows
// and so leaves no needless sliver. Angles are taken in space; whether a swap
// keeps both triangles upright is decided exactly in the plane.
func delaunay(space []geom.Vec3, plane []geom.Vec, tris [][3]int32) [][3]int32 {
	f := newFan(tris)
	work := make([]side, 0, 3*len(tris))
	for t := range tris {
		for k := range 3 {
			work = append(work, side{int32(t), int32(k)})
		}
	}
	// Each swap raises the smallest angle of its quadrilateral by more than the
	// rounding error, so the loop ends; the cap only guards the machine.
	for budget := 500 * (len(tris) + 10); len(work) > 0 && budget > 0; budget-- {
		s := work[len(work)-1]
		work = work[:len(work)-1]
		o := f.across[s.tri][s.k]
		if o.tri < 0 {
			continue
		}
		p, q, r, t := f.around(s, o)
		if !obtuse(space[r], space[t], space[p], space[q]) ||
			orient(plane[r], plane[p], plane[t]) <= 0 || orient(plane[t], plane[q], plane[r]) <= 0 {
			continue
		}
		work = append(work, f.swap(s, o)...)
	}
	f.raise(space, plane)
	return tris
}

// lowTriangle is the altitude in millimetres below which a triangle is worth
// raising although its angles are the best there are.
const lowTriangle = 100 * SliverBound

// raise swaps the longest side of every low triangle where that makes the lower
// of the two triangles higher: three corners almost in line belong to three
// triangles with a corner far away, even though those have sharper angles.
func (f fan) raise(space []geom.Vec3, plane []geom.Vec) {
	low := func(a, b, c int32) unit.Length { return altitude(space[a], space[b], space[c]) }
	var work []int32
	for i, t := range f.tris {
		if low(t[0], t[1], t[2]) < lowTriangle {
			work = append(work, int32(i))
		}
	}
	// Each swap raises the lowest of two triangles and lowers none below it; the
	// cap only guards the machine.
	for budget := 500 * (len(work) + 10); len(work) > 0 && budget > 0; budget-- {
		i := work[len(work)-1]
		work = work[:len(work)-1]
		s := side{i, longest(space, f.tris[i])}
		o := f.across[s.tri][s.k]
		if o.tri < 0 {
			continue
		}
		p, q, r, t := f.around(s, o)
		before := min(low(p, q, r), low(q, p, t))
		if before >= lowTriangle || min(low(r, p, t), low(t, q, r)) <= before ||
			orient(plane[r], plane[p], plane[t]) <= 0 || orient(plane[t], plane[q], plane[r]) <= 0 {
			continue
		}
		f.swap(s, o)
		work = append(work, s.tri, o.tri)
	}
}

// longest is the number of a triangle's longest side.
func longest(space []geom.Vec3, t [3]int32) int32 {
	best, long := int32(0), unit.Length(-1)
	for k := range int32(3) {
		if l := space[t[(k+1)%3]].Sub(space[t[k]]).Len(); l > long {
			best, long = k, l
		}
	}
	return best
}

// obtuse tells whether the angles under which r and t see the edge pq add up to
// more than half a turn.
func obtuse(r, t, p, q geom.Vec3) bool {
	a, b := p.Sub(r).Unit(), q.Sub(r).Unit()
	c, d := q.Sub(t).Unit(), p.Sub(t).Unit()
	sine := float64(a.Cross(b).Len())*c.Dot(d) + a.Dot(b)*float64(c.Cross(d).Len())
	return sine < -1e-10
}

// side is side k of a triangle, from its corner k to its corner k+1.
type side struct{ tri, k int32 }

// fan is a set of triangles that know their neighbours; across has tri -1 on
// the rim.
type fan struct {
	tris   [][3]int32
	across [][3]side
}

func newFan(tris [][3]int32) fan {
	f := fan{tris, make([][3]side, len(tris))}
	at := make(map[[2]int32]side, 3*len(tris))
	for i, t := range tris {
		for k := range 3 {
			at[[2]int32{t[k], t[(k+1)%3]}] = side{int32(i), int32(k)}
		}
	}
	for i, t := range tris {
		for k := range 3 {
			o, ok := at[[2]int32{t[(k+1)%3], t[k]}]
			if !ok {
				o = side{-1, 0}
			}
			f.across[i][k] = o
		}
	}
	return f
}

// around gives the ends p, q of a common side and the corners r and t that look
// at it from either side.
func (f fan) around(s, o side) (p, q, r, t int32) {
	return f.tris[s.tri][s.k], f.tris[s.tri][(s.k+1)%3], f.tris[s.tri][(s.k+2)%3], f.tris[o.tri][(o.k+2)%3]
}

// swap replaces the common side of two triangles by the other diagonal and
// gives the four outer sides to look at again.
func (f fan) swap(s, o side) []side {
	p, q, r, t := f.around(s, o)
	qr, rp := f.across[s.tri][(s.k+1)%3], f.across[s.tri][(s.k+2)%3]
	pt, tq := f.across[o.tri][(o.k+1)%3], f.across[o.tri][(o.k+2)%3]
	f.tris[s.tri] = [3]int32{r, p, t}
	f.tris[o.tri] = [3]int32{t, q, r}
	f.across[s.tri] = [3]side{rp, pt, {o.tri, 2}}
	f.across[o.tri] = [3]side{tq, qr, {s.tri, 2}}
	outer := []side{{s.tri, 0}, {s.tri, 1}, {o.tri, 0}, {o.tri, 1}}
	for _, x := range outer {
		if n := f.across[x.tri][x.k]; n.tri >= 0 {
			f.across[n.tri][n.k] = x
		}
	}
	return outer
}
