package survey

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// point reads a point out of the list of coordinates.
func point(x []float64, i int) geom.Vec {
	return geom.V(unit.Length(x[2*i]), unit.Length(x[2*i+1]))
}

// inner lists the corners between two walls.
func (s *system) inner() []int {
	if s.closed {
		return s.chain
	}
	return s.chain[min(1, len(s.chain)):max(len(s.chain)-1, min(1, len(s.chain)))]
}

// bend is how far the chain turns to the right at a corner, from -pi to pi:
// positive at an inside corner, negative at an outside one.
func (s *system) bend(x []float64, p int) float64 {
	in := point(x, p).Sub(point(x, s.previous(p)))
	out := point(x, s.next(p)).Sub(point(x, p))
	return math.Atan2(-in.Cross(out), in.Dot(out))
}

// turnOf reads the turn of a corner off the coordinates; NotTold when it is
// straight within the play.
func (s *system) turnOf(x []float64, p int, play float64) Turn {
	switch b := s.bend(x, p); {
	case b > play:
		return Inside
	case b < -play:
		return Outside
	}
	return NotTold
}

// round is how far the whole chain turns to the right.
func (s *system) round(x []float64) float64 {
	sum := 0.0
	for _, p := range s.inner() {
		sum += s.bend(x, p)
	}
	return sum
}

// wrong lists the corners that turn against what was told.
func (s *system) wrong(x []float64, play float64) []int {
	var out []int
	for _, p := range s.inner() {
		if t := s.turnOf(x, p, play); s.turns[p] != NotTold && t != NotTold && t != s.turns[p] {
			out = append(out, p)
		}
	}
	return out
}

// possible says whether the coordinates can be a room at all: no wall crosses
// another, a closed room runs clockwise, and every width ends on its walls.
func (s *system) possible(x []float64, play float64) bool {
	for i := range s.rows {
		if !s.rows[i].onWalls(x, play) {
			return false
		}
	}
	if s.closed && s.round(x) < 0 {
		return false
	}
	w := s.walls()
	for i, a := range w {
		for _, b := range w[:i] {
			if crossed(point(x, a.from), point(x, a.to), point(x, b.from), point(x, b.to)) {
				return false
			}
		}
	}
	return true
}

// walls lists the walls of the chain.
func (s *system) walls() []wall {
	var out []wall
	for _, p := range s.chain {
		if q := s.next(p); q >= 0 {
			out = append(out, wall{p, q})
		}
	}
	return out
}

// crossed says whether two segments cross between their ends.
func crossed(a, b, c, d geom.Vec) bool {
	side := func(p, q, r geom.Vec) float64 { return q.Sub(p).Cross(r.Sub(p)) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// sees says whether a tape can be drawn straight from one point to another:
// it crosses no wall and leaves every corner on the room's side.
func (s *system) sees(x []float64, p, q int) bool {
	a, b := point(x, p), point(x, q)
	for _, w := range s.walls() {
		if crossed(a, b, point(x, w.from), point(x, w.to)) {
			return false
		}
	}
	return s.leaves(x, p, b) && s.leaves(x, q, a)
}

// leaves says whether the direction from corner p to a place lies in the room.
func (s *system) leaves(x []float64, p int, to geom.Vec) bool {
	if s.previous(p) < 0 || s.next(p) < 0 {
		return true
	}
	wide := math.Pi - s.bend(x, p)
	first := point(x, s.previous(p)).Sub(point(x, p))
	dir := to.Sub(point(x, p))
	turn := math.Atan2(first.Cross(dir), first.Dot(dir))
	const play = 0.02 // rad; along a wall is allowed
	return math.Mod(turn+2*math.Pi+play, 2*math.Pi) <= wide+2*play
}

// moveTo turns and shifts coordinates so that point a is the origin and b lies
// on +x, as in the frame of a base wall.
func (s *system) moveTo(x []float64, a, b int) []float64 {
	at := point(x, a)
	dir := point(x, b).Sub(at).Angle()
	out := append([]float64(nil), x...)
	for i := range s.names {
		v := point(x, i).Sub(at).Turn(-dir)
		out[2*i], out[2*i+1] = float64(v.X), float64(v.Y)
	}
	return out
}
