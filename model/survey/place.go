package survey

import (
	"math"
	"sort"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// sketch is a set of rough coordinates, built up point by point.
type sketch struct {
	at    []geom.Vec
	set   []bool
	score float64 // misfit of the readings between placed points
}

// keep is how many sketches are carried along while points are added.
const keep = 48

// sketches places all points from the readings. Every distance to two placed
// points leaves two places, so many sketches arise; the ones that fit worst are
// dropped on the way. turns are the angles to try, in steps of that many
// degrees, at a corner of which no angle and no diagonal is known.
// It also says whether such angles occurred.
func (s *system) sketches(n *Network, step float64) (list []sketch, guessed bool) {
	d := s.linksOf()
	list = []sketch{s.seed(n, d)}
	for {
		p := s.easiest(list[0].set, d)
		if p < 0 {
			break
		}
		ready := s.readyRows(list[0].set, p)
		var next, turned []sketch
		for _, k := range list {
			places, guess := s.places(k, p, d, step)
			guessed = guessed || guess
			for _, at := range places {
				c := sketch{append([]geom.Vec(nil), k.at...), append([]bool(nil), k.set...), k.score}
				c.at[p], c.set[p] = at, true
				x := s.flat(c)
				c.score += s.misfit(x, ready)
				if s.turnedBy(c, x, p) {
					turned = append(turned, c)
				} else {
					next = append(next, c)
				}
			}
		}
		if len(next) == 0 {
			next = turned
		}
		sort.SliceStable(next, func(i, j int) bool { return next[i].score < next[j].score })
		list = next[:min(keep, len(next))]
	}
	return list, guessed
}

// seed is the sketch to start from: given coordinates, or else two points.
func (s *system) seed(n *Network, d links) sketch {
	k := sketch{at: make([]geom.Vec, len(s.names)), set: make([]bool, len(s.names))}
	for p, at := range s.fixed {
		k.at[p], k.set[p] = at, true
	}
	for p, at := range n.Start {
		if i, ok := s.number[p]; ok && !k.set[i] {
			k.at[i], k.set[i] = at, true
		}
	}
	for _, set := range k.set {
		if set {
			return k
		}
	}
	a, b := s.base.from, s.base.to
	if a < 0 {
		a, b = 0, 1
	}
	if d[a][b] == 0 {
		a, b = d.longest(a, b)
	}
	long := d[a][b]
	if long == 0 {
		long = d.typical()
	}
	k.at[b], k.set[a], k.set[b] = geom.V(unit.Length(long), 0), true, true
	return k
}

// easiest picks the next point to place: the one with most distances to placed
// points, then one next to a placed corner, then the first; -1 when all are.
func (s *system) easiest(set []bool, d links) int {
	best, value := -1, -1
	for p := range set {
		if set[p] {
			continue
		}
		v := 0
		for q := range set {
			if set[q] && d[p][q] > 0 {
				v += 4
			}
		}
		if a := s.previous(p); a >= 0 && set[a] {
			v++
		}
		if b := s.next(p); b >= 0 && set[b] {
			v++
		}
		if v > value {
			best, value = p, v
		}
	}
	return best
}

// places gives the places where point p may be in a sketch, and whether its
// direction was guessed.
func (s *system) places(k sketch, p int, d links, step float64) ([]geom.Vec, bool) {
	var near []int
	for q, set := range k.set {
		if set && d[p][q] > 0 {
			near = append(near, q)
		}
	}
	if at := crossings(k, p, near, d); at != nil {
		return at, false
	}
	q, long := -1, d.typical()
	if len(near) > 0 {
		q, long = near[0], d[p][near[0]]
	}
	for _, c := range []int{s.previous(p), s.next(p)} {
		if c >= 0 && k.set[c] && (q < 0 || d[p][c] > 0) {
			q = c
			if d[p][c] > 0 {
				long = d[p][c]
			}
		}
	}
	if q < 0 {
		for i, set := range k.set {
			if set && q < 0 {
				q = i
			}
		}
	}
	var out []geom.Vec
	directions, guessed := s.directions(k, q, p, step)
	for _, dir := range directions {
		out = append(out, k.at[q].Add(geom.V(unit.Length(long), 0).Turn(dir)))
	}
	return out, guessed
}

// crossings are the two points at the known distances from the pair of placed
// points that gives the sharpest crossing; nil if there is no pair.
func crossings(k sketch, p int, near []int, d links) []geom.Vec {
	var out []geom.Vec
	sharp := -1.0
	for i, q := range near {
		for _, r := range near[:i] {
			dq, dr := d[p][q], d[p][r]
			line := k.at[r].Sub(k.at[q])
			base := float64(line.Len())
			if base < 1e-6*(dq+dr) {
				continue
			}
			along := (dq*dq - dr*dr + base*base) / (2 * base)
			high := math.Sqrt(max(0, dq*dq-along*along))
			// Readings that just fail to meet put the point next to the line.
			high = max(high, 0.02*min(dq, dr))
			if s := high * base / (dq * dr); s > sharp {
				sharp = s
				u := line.Unit()
				foot := k.at[q].Add(u.Mul(along))
				out = []geom.Vec{foot.Add(u.Left().Mul(-high)), foot.Add(u.Left().Mul(high))}
			}
		}
	}
	return out
}

// directions are the ways in which p may lie as seen from the placed point q:
// by a known angle at q if there is one; or else guessed, as a square corner or
// all around.
func (s *system) directions(k sketch, q, p int, step float64) ([]unit.Angle, bool) {
	for i := range s.rows {
		r := &s.rows[i]
		wide, ok := r.wide()
		if !ok || r.points[1] != q {
			continue
		}
		a, b := r.points[0], r.points[2]
		w := unit.Angle(wide)
		switch {
		case b == p && k.set[a]:
			from := k.at[a].Sub(k.at[q]).Angle()
			if r.kind == Angle {
				return []unit.Angle{from + w}, false
			}
			return []unit.Angle{from + w, from - w}, false
		case a == p && k.set[b]:
			from := k.at[b].Sub(k.at[q]).Angle()
			if r.kind == Angle {
				return []unit.Angle{from - w}, false
			}
			return []unit.Angle{from - w, from + w}, false
		}
	}
	from, sense, corner := unit.Angle(0), unit.Angle(1), false
	if a := s.previous(q); a >= 0 && k.set[a] && s.next(q) == p {
		from, corner = k.at[a].Sub(k.at[q]).Angle(), true
	} else if b := s.next(q); b >= 0 && k.set[b] && s.previous(q) == p {
		from, sense, corner = k.at[b].Sub(k.at[q]).Angle(), -1, true
	}
	if step == 90 && corner {
		inside, outside := from+sense*90*unit.Degree, from-sense*90*unit.Degree
		switch s.turns[q] {
		case Inside:
			return []unit.Angle{inside}, true
		case Outside:
			return []unit.Angle{outside}, true
		}
		return []unit.Angle{inside, outside, from + 180*unit.Degree}, true
	}
	var out []unit.Angle
	for t := 0.0; t < 360; t += step {
		out = append(out, from+unit.Angle(t)*unit.Degree)
	}
	return out, true
}

// readyRows are the rows that can be computed once p is placed, and only then.
func (s *system) readyRows(set []bool, p int) []int {
	var out []int
	for i, r := range s.rows {
		with, ready := false, r.kind != Bow
		for _, q := range r.points {
			with = with || q == p
			ready = ready && (set[q] || q == p)
		}
		if with && ready {
			out = append(out, i)
		}
	}
	return out
}

// misfit judges a rough sketch by some readings: 5 cm count 1, and no reading
// counts more than 100, so that a slip does not outweigh the rest.
func (s *system) misfit(x []float64, rows []int) float64 {
	sum := 0.0
	for _, i := range rows {
		r := &s.rows[i]
		v := r.miss(r.value(x, len(s.names)).v)
		if r.kind == Angle {
			v *= 1000 // on a wall of 1 m
		}
		if !(math.Abs(v) < 500) {
			v = 500
		}
		sum += v * v / 2500
		if !r.onWalls(x, 0.3) {
			sum += 100
		}
	}
	return sum
}

// turnedBy says whether placing p made a corner turn against what was told.
func (s *system) turnedBy(k sketch, x []float64, p int) bool {
	for _, c := range []int{s.previous(p), p, s.next(p)} {
		if c < 0 || s.turns[c] == NotTold {
			continue
		}
		a, b := s.previous(c), s.next(c)
		if a < 0 || b < 0 || !k.set[a] || !k.set[c] || !k.set[b] {
			continue
		}
		if t := s.turnOf(x, c, roughPlay); t != NotTold && t != s.turns[c] {
			return true
		}
	}
	return false
}

// flat is the list of coordinates of a sketch, with straight walls.
func (s *system) flat(k sketch) []float64 {
	x := make([]float64, 2*len(s.names)+len(s.bowed))
	for i, at := range k.at {
		x[2*i], x[2*i+1] = float64(at.X), float64(at.Y)
	}
	return x
}
