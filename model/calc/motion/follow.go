package motion

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// shorten leaves out poses of a way that can be passed over.
func (s *search) shorten(way []coords) []Pose {
	f := follower{part: s.part, fixed: s.p.Fixed, reach: s.reach, clear: float64(s.p.Clear)}
	out := []Pose{way[0].pose()}
	for i := 0; i < len(way)-1; {
		next := i + 1
		for j := len(way) - 1; j > i+1; j = i + (j-i)/2 {
			if f.straight(way[i], way[j]) {
				next = j
				break
			}
		}
		out = append(out, way[next].pose())
		i = next
	}
	return out
}

// follower moves a part along a way and measures.
type follower struct {
	part  *posed
	fixed []Body
	reach coords
	clear float64
}

// mostSteps bounds the measurements of one stretch.
const mostSteps = 400

// straight tells whether even motion between two poses keeps clear: from every
// place measured it goes on only as far as what was measured allows.
func (f follower) straight(a, b coords) bool {
	length := f.reach.move(b.minus(a))
	if length == 0 {
		return true
	}
	t := 0.0
	for range mostSteps {
		f.part.to(a.lerp(b, t))
		gap := f.part.closest(f.fixed, far).gap - f.clear + touch
		if gap <= 0 {
			return false
		}
		if t >= 1 {
			return true
		}
		t = min(1, t+gap/length)
	}
	return false
}

// Tight is the closest place of a way.
type Tight struct {
	Gap        unit.Length // at most the true distance; negative: overlap
	Part, Near string      // which bodies
	Pose       Pose
}

// Follow measures a way in steps no longer than asked for, from its first pose to
// its last, and gives the tightest place. Nothing near gives a Gap of infinity.
func Follow(part, fixed []Body, way []Pose, step unit.Length) Tight {
	f := follower{part: newPosed(part), reach: reach(part)}
	out := Tight{Gap: unit.Length(math.Inf(1))}
	look := func(c coords) {
		f.part.to(c)
		n := f.part.closest(fixed, float64(out.Gap))
		if n.own >= 0 {
			out = Tight{unit.Length(n.gap), part[n.own].Name, fixed[n.fixed].Name, c.pose()}
		}
	}
	for i := range way {
		b := way[i].coords()
		if i == 0 {
			look(b)
			continue
		}
		a := way[i-1].coords()
		n := int(math.Ceil(f.reach.move(b.minus(a)) / float64(step)))
		for k := 1; k <= n; k++ {
			look(a.lerp(b, float64(k)/float64(n)))
		}
	}
	return out
}

// Slide tells, exactly, whether a part can be shifted by a distance without
// turning, and if not, which body stops it. Overlaps of a hundredth of a
// millimetre count as touching.
func Slide(part, fixed []Body, from Pose, by geom.Vec3) (stoppedBy string, ok bool) {
	p := newPosed(part)
	p.to(from.coords())
	d := of(by)
	for i := range p.bodies {
		a := &p.bodies[i]
		swept := a.box
		swept.lo = vec{swept.lo.x + min(0, d.x), swept.lo.y + min(0, d.y), swept.lo.z + min(0, d.z)}
		swept.hi = vec{swept.hi.x + max(0, d.x), swept.hi.y + max(0, d.y), swept.hi.z + max(0, d.z)}
		for j := range fixed {
			if swept.gap(fixed[j].box) < 0 && meets(a, &fixed[j], d) {
				return fixed[j].Name, false
			}
		}
	}
	return "", true
}

// meets tells whether a, shifted from 0 to d, ever overlaps b: the stretch in
// which no axis keeps them apart.
func meets(a, b *Body, d vec) bool {
	from, to := 0.0, 1.0
	axis := func(n vec) bool {
		alo, ahi := span(a.points, n)
		blo, bhi := span(b.points, n)
		v := n.dot(d)
		// overlapping while alo + v t < bhi and ahi + v t > blo, by more than touch
		from, to = narrow(from, to, v, bhi-alo-touch)
		from, to = narrow(from, to, -v, ahi-blo-touch)
		return from < to
	}
	for _, n := range b.normals {
		if !axis(n) {
			return false
		}
	}
	for _, n := range a.normals {
		if !axis(n) {
			return false
		}
	}
	for _, e := range a.edges {
		for _, f := range b.edges {
			if n, ok := e.cross(f).unit(); ok && !axis(n) {
				return false
			}
		}
	}
	return true
}

// narrow keeps the t for which v*t < c.
func narrow(from, to, v, c float64) (float64, float64) {
	switch {
	case v > 1e-12:
		to = min(to, c/v)
	case v < -1e-12:
		from = max(from, c/v)
	case c <= 0:
		return 1, 0
	}
	return from, to
}
