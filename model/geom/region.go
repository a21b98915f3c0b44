package geom

import (
	"slices"

	"slabwright/model/unit"
)

// Region is a bounded part of the plane with straight edges, possibly in
// several pieces and with holes, exact on a grid of one micrometre. It is an
// immutable value; the zero Region is empty. A Region that could not be made
// carries its fault, and every Region made from it carries it on: look at Err
// once at the end of a chain. A faulty Region is otherwise empty.
//
// Parts of a region thinner than a micrometre on average are dropped as dust
// of rounding.
type Region struct {
	pieces []piece
	lo, hi pt
	err    error
}

func newRegion(pieces []piece) Region {
	r := Region{pieces: pieces}
	for i, pc := range pieces {
		for j, p := range pc[0] {
			if i == 0 && j == 0 {
				r.lo, r.hi = p, p
			}
			r.lo = pt{min(r.lo.x, p.x), min(r.lo.y, p.y)}
			r.hi = pt{max(r.hi.x, p.x), max(r.hi.y, p.y)}
		}
	}
	return r
}

// faulty is the empty region with a fault.
func faulty(err error) Region { return Region{err: err} }

// fromRaw makes the region of all places around which the loops wind as in
// asks. The loops may cross themselves and each other.
func fromRaw(loops [][]pt, in func(w []int32) bool) Region {
	var segs []seg
	for _, loop := range loops {
		for i, a := range loop {
			if b := loop[(i+1)%len(loop)]; a != b {
				segs = append(segs, seg{a: a, b: b, delta: 1})
			}
		}
	}
	p := arrange(segs, 1)
	return newRegion(tidy(p.outline(p.choose(in))))
}

func positive(w []int32) bool { return w[0] > 0 }
func nonZero(w []int32) bool  { return w[0] != 0 }

// Err tells why the region could not be made, nil if it could.
func (r Region) Err() error { return r.err }

// Empty tells whether the region has no area.
func (r Region) Empty() bool { return len(r.pieces) == 0 }

// Area is the area inside, holes taken off. It is exact on the grid.
func (r Region) Area() unit.Area {
	var sum int64
	for _, pc := range r.pieces {
		for _, loop := range pc {
			sum += area2(loop)
		}
	}
	return unit.Area(float64(sum) / (2 * perMM * perMM))
}

// Perimeter is the length of all outlines and holes.
func (r Region) Perimeter() unit.Length {
	var sum float64
	for _, pc := range r.pieces {
		for _, loop := range pc {
			sum += around(loop)
		}
	}
	return unit.Length(sum / perMM)
}

// Centroid is the centre of area, the origin if the region is empty.
func (r Region) Centroid() Vec {
	if r.Empty() {
		return Vec{}
	}
	o := r.pieces[0][0][0] // sums stay small when taken about a point of the region
	var sx, sy, sum float64
	for _, pc := range r.pieces {
		for _, loop := range pc {
			for i, p := range loop {
				q := loop[(i+1)%len(loop)]
				c := float64(orient(o, p, q))
				sum += c
				sx += c * float64(p.x-o.x+q.x-o.x)
				sy += c * float64(p.y-o.y+q.y-o.y)
			}
		}
	}
	k := 1 / (3 * sum * perMM)
	return o.vec().Add(Vec{unit.Length(sx * k), unit.Length(sy * k)})
}

// Bounds are the lower left and upper right corners of the smallest upright
// box around the region; the origin twice if it is empty.
func (r Region) Bounds() (lo, hi Vec) { return r.lo.vec(), r.hi.vec() }

// Loops are the outlines, counter-clockwise, each followed by its holes,
// clockwise. No loop passes a point twice; loops may touch each other in
// common vertices. The order is the same for equal regions.
func (r Region) Loops() [][]Vec { return vecLoops(r.pieces) }

func vecLoops(pieces []piece) [][]Vec {
	var out [][]Vec
	for _, pc := range pieces {
		for _, loop := range pc {
			vs := make([]Vec, len(loop))
			for i, p := range loop {
				vs[i] = p.vec()
			}
			out = append(out, vs)
		}
	}
	return out
}

// Pieces are the connected parts, from left to right by their leftmost point.
// Parts that touch in points only are apart.
func (r Region) Pieces() []Region {
	var out []Region
	for _, pc := range r.pieces {
		out = append(out, newRegion([]piece{pc}))
	}
	return out
}

// Contains tells whether p, rounded to the grid, lies in the region or on its
// boundary.
func (r Region) Contains(p Vec) bool {
	q, err := snap(p)
	if err != nil || q.x < r.lo.x || q.x > r.hi.x || q.y < r.lo.y || q.y > r.hi.y {
		return false
	}
	in := false
	for _, pc := range r.pieces {
		for _, loop := range pc {
			for i, a := range loop {
				b := loop[(i+1)%len(loop)]
				if q == a {
					return true
				}
				if a.y == b.y && a.y == q.y && between(q, a, b) {
					return true
				}
				if (a.y <= q.y) == (b.y <= q.y) {
					continue
				}
				o := orient(a, b, q)
				if o == 0 {
					return true
				}
				if (o > 0) == (b.y > a.y) {
					in = !in
				}
			}
		}
	}
	return in
}

// Place turns the region and moves it. A region that is only moved keeps its
// shape exactly; one that is turned is rounded to the grid again.
func (r Region) Place(p Pose) Region {
	if r.err != nil || r.Empty() {
		return r
	}
	if p.Turn == 0 {
		return r.shift(p)
	}
	var loops [][]pt
	for _, pc := range r.pieces {
		for _, loop := range pc {
			moved := make([]pt, len(loop))
			for i, q := range loop {
				m, err := snap(p.Plan(q.vec()))
				if err != nil {
					return faulty(err)
				}
				moved[i] = m
			}
			loops = append(loops, moved)
		}
	}
	return fromRaw(loops, positive)
}

func (r Region) shift(p Pose) Region {
	var out []piece
	for _, pc := range r.pieces {
		var moved piece
		for _, loop := range pc {
			l := make([]pt, len(loop))
			for i, q := range loop {
				m, err := snap(p.Plan(q.vec()))
				if err != nil {
					return faulty(err)
				}
				l[i] = m
			}
			moved = append(moved, l)
		}
		out = append(out, moved)
	}
	return newRegion(out)
}

// Mirror turns the region over about the y axis: x becomes -x.
func (r Region) Mirror() Region {
	if r.err != nil {
		return r
	}
	var out []piece
	for _, pc := range r.pieces {
		var turned piece
		for _, loop := range pc {
			l := make([]pt, len(loop))
			for i, q := range loop {
				l[len(loop)-1-i] = pt{-q.x, q.y}
			}
			turned = append(turned, canonical(l))
		}
		slices.SortFunc(turned[1:], func(a, b []pt) int { return slices.CompareFunc(a, b, compare) })
		out = append(out, turned)
	}
	slices.SortFunc(out, func(a, b piece) int { return slices.CompareFunc(a[0], b[0], compare) })
	return newRegion(out)
}
