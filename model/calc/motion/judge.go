package motion

import "math"

// sway is how the points of the part move within a box of poses: by half the box
// along each way that shifts it, and round the axes of its turns.
type sway struct {
	at     vec
	shift  vec     // half the box
	long   float64 // its length
	axes   [3]vec  // of turn, roll and tilt as they stand in the middle
	angles [3]float64
	sum    float64 // of the angles
	bend   float64 // share of sum*sum*|p| that bounds what is not linear
}

// sway: a point p turns with an angular velocity of no more than the sum of the
// angles; where one axis alone turns, the second derivative of its place is no
// more than |p| sum^2, where the axes turn each other no more than 4/3 of that.
func swayOf(mid, half coords) sway {
	sa, ca := math.Sincos(mid[Turn])
	sb, cb := math.Sincos(mid[Roll])
	s := sway{
		at: vec{mid[X], mid[Y], mid[Z]}, shift: vec{half[X], half[Y], half[Z]},
		axes:   [3]vec{{0, 0, 1}, {-sa, ca, 0}, {ca * cb, sa * cb, -sb}},
		angles: [3]float64{half[Turn], half[Roll], half[Tilt]},
		bend:   0.5,
	}
	s.long = s.shift.len()
	turning := 0
	for _, a := range s.angles {
		s.sum += a
		if a > 0 {
			turning++
		}
	}
	if turning > 1 {
		s.bend = 2.0 / 3
	}
	return s
}

// along is the sway seen in one direction.
type along struct {
	n     vec
	fixed float64 // of every point
	round [3]vec  // times the point, measured from the part's origin
	bend  float64
}

func (s *sway) along(n vec) along {
	out := along{n: n, fixed: math.Abs(n.x)*s.shift.x + math.Abs(n.y)*s.shift.y + math.Abs(n.z)*s.shift.z, bend: s.bend * s.sum * s.sum}
	for i, a := range s.angles {
		if a > 0 {
			out.round[i] = n.cross(s.axes[i]).mul(a)
		}
	}
	return out
}

// most is how far a point goes to either side; p counts from the part's origin.
func (a *along) most(p vec) float64 {
	return a.fixed + math.Abs(a.round[0].dot(p)) + math.Abs(a.round[1].dot(p)) + math.Abs(a.round[2].dot(p)) + a.bend*p.len()
}

// reachOf bounds where points reach along n in all poses of the box: outer holds
// all of them, inner is reached in every pose.
func (s *sway) reachOf(pts []vec, n vec) (outerLo, outerHi, innerLo, innerHi float64) {
	a := s.along(n)
	outerLo, outerHi, innerLo, innerHi = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range pts {
		d, m := n.dot(p), a.most(p.sub(s.at))
		outerLo, outerHi = min(outerLo, d-m), max(outerHi, d+m)
		innerLo, innerHi = min(innerLo, d+m), max(innerHi, d-m)
	}
	return outerLo, outerHi, innerLo, innerHi
}

// judged is what a look at a box of poses gives: whether it is free, the least
// separation in its middle, and in which direction.
type judged struct {
	state state
	gap   float64
	n     vec
	own   int
}

// judge decides a box of poses round the one in which the part stands.
// Separations above far are not looked into.
func (p *posed) judge(fixed []Body, s *sway, half, clear, far float64) judged {
	out := judged{state: free, gap: far, own: -1}
	for i := range p.bodies {
		a := &p.bodies[i]
		for j := range fixed {
			b := &fixed[j]
			if a.box.gap(b.box) >= half+clear {
				continue
			}
			gap, n := separation(a, b, far)
			if gap < out.gap {
				out.gap, out.n, out.own = gap, n, i
			}
			if gap+touch > half+clear || s.apart(a, b, clear-touch) {
				continue
			}
			out.state = open
			if gap+float64(a.Slack+b.Slack) < clear-half || s.caught(a, b, clear) {
				out.state = shut
				return out
			}
		}
	}
	return out
}

// widest is the way along which a box of poses is best cut: the one that leaves
// the separation the least certain.
func (s *sway) widest(j judged, p *posed, ways []Way, half, reach coords) Way {
	a := s.along(j.n)
	sway := coords{math.Abs(a.n.x) * half[X], math.Abs(a.n.y) * half[Y], math.Abs(a.n.z) * half[Z]}
	if j.own >= 0 {
		for _, v := range p.bodies[j.own].points {
			q := v.sub(s.at)
			for i := range a.round {
				sway[int(Turn)+i] = max(sway[int(Turn)+i], math.Abs(a.round[i].dot(q))+a.bend*q.len()*s.angles[i]/max(s.sum, 1e-12))
			}
		}
	}
	best, most := ways[0], -1.0
	for _, w := range ways {
		if x := sway[w] + lastResort*half[w]*reach[w]; x > most {
			best, most = w, x
		}
	}
	return best
}

// lastResort is the weight of a box's plain size where its cut is chosen.
const lastResort = 0.1

// apart tells whether one direction keeps two bodies apart in every pose.
func (s *sway) apart(a, b *Body, by float64) bool {
	along := func(n vec) bool {
		l, h := span(b.points, n)
		if lo, hi := span(a.points, n); max(l-hi, lo-h) <= by {
			return false
		}
		lo, hi, _, _ := s.reachOf(a.points, n)
		return max(l-hi, lo-h) > by
	}
	for _, list := range [][]vec{b.normals, a.normals} {
		for _, n := range list {
			if along(n) {
				return true
			}
		}
	}
	for _, e := range a.edges {
		for _, f := range b.edges {
			if n, ok := e.cross(f).unit(); ok && along(n) {
				return true
			}
		}
	}
	return false
}

// caught tells whether two bodies overlap, or come closer than they may, in every
// pose: two sections when no side of either keeps them apart in any, two bodies in
// space when a corner of one is inside the other, or that near to it, in all.
func (s *sway) caught(a, b *Body, clear float64) bool {
	slack := float64(a.Slack + b.Slack)
	if len(a.edges) == 0 {
		return s.overlaps(a, b, clear-slack)
	}
	for _, p := range a.points {
		if a.Slack == 0 && s.staysIn(p, b, clear-slack) {
			return true
		}
	}
	for _, q := range b.points {
		if b.Slack == 0 && s.stays(q, a, clear-slack) {
			return true
		}
	}
	return false
}

// overlaps tells whether sections overlap by more than -by along every normal in
// every pose.
func (s *sway) overlaps(a, b *Body, by float64) bool {
	for k, n := range b.normals {
		_, _, lo, hi := s.reachOf(a.points, n)
		if max(b.spans[k][0]-hi, lo-b.spans[k][1]) >= by {
			return false
		}
	}
	for _, n := range a.normals { // they turn with the part: b moves as seen from it
		lo, hi := span(a.points, n)
		m := s.along(n)
		l, h := math.Inf(1), math.Inf(-1)
		for _, q := range b.points {
			d, most := n.dot(q), m.most(q.sub(s.at))+s.sum*s.long
			l, h = min(l, d+most), max(h, d-most)
		}
		if max(l-hi, lo-h) >= by {
			return false
		}
	}
	return true
}

// staysIn: a corner of the part is inside a fixed body in every pose.
func (s *sway) staysIn(p vec, b *Body, by float64) bool {
	for k, n := range b.normals {
		a := s.along(n)
		d, m := n.dot(p), a.most(p.sub(s.at))
		if d+m > b.spans[k][1]+by || d-m < b.spans[k][0]-by {
			return false
		}
	}
	return true
}

// stays: a corner of a fixed body is inside the part in every pose.
func (s *sway) stays(q vec, a *Body, by float64) bool {
	for _, n := range a.normals {
		lo, hi := span(a.points, n)
		v := s.along(n)
		d, m := n.dot(q), v.most(q.sub(s.at))+s.sum*s.long
		if d+m > hi+by || d-m < lo-by {
			return false
		}
	}
	return true
}
