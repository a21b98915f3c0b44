package bring

import (
	"cmp"
	"math"
	"slices"

	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Lack is a gap that is too narrow on the straight way of a part: By is how far
// the part would have to be shifted, sideways or in height, to pass what has the
// name.
type Lack struct {
	Name string
	By   unit.Length
	Pose motion.Pose // where it is worst
}

// widestLack bounds the shift that is looked for.
const widestLack unit.Length = 1024

// lacks draws the part straight forward at every height it may be lifted to, and
// tells what it meets where that is least, the worst first.
func (a *attempt) lacks() []Lack {
	t := a.t
	fixed := t.fixed(a.there, t.hangsOn(a.there)...)
	forward := t.forward()
	far := geom.Vec3{Y: -forward[len(forward)-1]}
	var out []Lack
	least := unit.Length(math.Inf(1))
	for _, h := range t.lifts() {
		var met []Lack
		var sum unit.Length
		from := motion.Pose{At: geom.Vec3{Z: h}}
		for _, name := range namesOf(fixed) {
			some := slices.DeleteFunc(slices.Clone(fixed), func(b motion.Body) bool { return b.Name != name })
			if by := t.shift(some, from, far); by > 0 {
				met = append(met, Lack{name, by, motion.Follow(t.moving, some, []motion.Pose{from, {At: from.At.Add(far)}}, step).Pose})
				sum += by
			}
		}
		if sum < least {
			out, least = met, sum
		}
	}
	slices.SortStableFunc(out, func(x, y Lack) int { return cmp.Compare(y.By, x.By) })
	return out
}

// shift is the least distance, to a tenth of a millimetre, by which the part has
// to be put aside, up or down so that it passes some bodies on a straight way.
func (t *task) shift(some []motion.Body, from motion.Pose, by geom.Vec3) unit.Length {
	passes := func(dir geom.Vec3, far unit.Length) bool {
		at := from
		at.At = at.At.Add(dir.Mul(float64(far)))
		_, ok := motion.Slide(t.moving, some, at, by)
		return ok
	}
	if passes(geom.Vec3{}, 0) {
		return 0
	}
	best := widestLack
	for _, dir := range []geom.Vec3{{X: 1}, {X: -1}, {Z: 1}, {Z: -1}} {
		lo, hi := unit.Length(0), best
		if !passes(dir, hi) {
			continue
		}
		for hi-lo > 0.1 {
			if mid := (lo + hi) / 2; passes(dir, mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		best = hi
	}
	return best
}

func namesOf(list []motion.Body) []string {
	var out []string
	for _, b := range list {
		if !slices.Contains(out, b.Name) {
			out = append(out, b.Name)
		}
	}
	return out
}

// halves tells whether the part goes in as two halves, one after the other: the
// second past the first, which is in its place.
func (a *attempt) halves() bool {
	left := changed(a.t.own, func(v geom.Vec3) geom.Vec3 { v.X = min(v.X, 0); return v })
	right := changed(a.t.own, func(v geom.Vec3) geom.Vec3 { v.X = max(v.X, 0); return v })
	for _, pair := range [][2][]lump{{left, right}, {right, left}} {
		if a.frees(pair[0], nil) && a.past(pair[0]).frees(pair[1], nil) {
			return true
		}
	}
	return false
}

// past is the attempt with some more standing in the way.
func (a *attempt) past(more []lump) *attempt {
	t := *a.t
	t.room = slices.Concat(t.room, bodies(more))
	return &attempt{t: &t, there: a.there, spent: a.spent}
}
