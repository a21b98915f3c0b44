package survey

import (
	"math"
	"slices"
)

const (
	roughPlay = 15 * math.Pi / 180  // a sketch may bend a corner the wrong way by this
	finePlay  = 0.3 * math.Pi / 180 // below this a corner counts as straight
	sameAs    = 3.0                 // mm: shapes closer than this are one
)

// Adjust finds the most likely coordinates of all points. Trouble comes back
// as a *Problem: a reading that makes no sense, a point that nothing holds, two
// rooms that fit equally well, a corner that turns the other way than told, or
// no shape near the readings. Readings that contradict each other are no
// trouble: they show in the residuals.
func Adjust(n Network) (*Result, error) {
	r, far, err := adjust(n)
	if err != nil {
		return nil, n.blame(far, err)
	}
	return r, nil
}

// reached is how far an adjustment came that led to no room.
type reached struct {
	cost  float64
	spare int
	miss  []float64 // of the readings, in standard deviations
}

// adjust is Adjust without a search for the reading that spoils it.
func adjust(n Network) (*Result, reached, error) {
	if err := n.check(); err != nil {
		return nil, reached{}, err
	}
	s, err := prepare(&n)
	if err != nil {
		return nil, reached{}, err
	}
	best, assumed, err := s.choose(&n)
	if err != nil {
		return nil, reached{best.cost, s.spare(), best.sol.miss[:len(s.rows)]}, err
	}
	r := s.report(&n, best)
	r.Assumed = s.named(assumed)
	return r, reached{}, nil
}

// choose adjusts from several starts and picks the shape that the readings,
// the turns told and the walking order leave.
func (s *system) choose(n *Network) (candidate, []int, error) {
	if x := s.given(n); x != nil {
		c := s.settle(x)
		if err := s.hangs(c); err != nil {
			return c, nil, err
		}
		if !c.sol.settled {
			return c, nil, s.astray(c)
		}
		return c, nil, nil
	}
	all := s.search(n)
	fits := s.rooms(all)
	if len(fits) == 0 {
		if err := s.hangs(all[0]); err != nil {
			return all[0], nil, err
		}
		fits = s.untold(n) // perhaps a corner was told wrongly
		if len(fits) == 0 {
			return all[0], nil, s.astray(all[0])
		}
	}
	if err := s.hangs(fits[0]); err != nil {
		return fits[0], nil, err
	}
	var told []candidate
	for _, c := range fits {
		if len(s.wrong(c.x, finePlay)) == 0 {
			told = append(told, c)
		}
	}
	best := fits[0]
	if len(told) > 0 {
		best = told[0]
	}
	if c, better := s.against(n, best); better {
		return c, nil, s.wrongTurn(c)
	}
	if len(told) == 0 {
		return best, nil, s.wrongTurn(best)
	}
	return s.decide(s.alike(told))
}

// untold gives the rooms that the readings make when nobody tells a turn.
func (s *system) untold(n *Network) []candidate {
	told := s.turns
	s.turns = make([]Turn, len(told))
	fits := s.rooms(s.search(n))
	s.turns = told
	return fits
}

// farBetter is by how much less a shape must miss the readings to be believed
// against what was told of the corners: a tenth of the sum of squares, a third
// of the residuals. Judgement, no source.
const farBetter = 10

// against looks for a shape that turns against what was told and comes far
// nearer to the readings than the best one that turns as told, which misses
// them by more than their accuracy allows.
func (s *system) against(n *Network, best candidate) (candidate, bool) {
	anyTold := slices.ContainsFunc(s.turns, func(t Turn) bool { return t != NotTold })
	if !anyTold || s.spare() < 1 || best.cost <= hopeless(s.spare()) {
		return candidate{}, false
	}
	for _, c := range s.untold(n) {
		if c.held && farBetter*c.cost < best.cost && len(s.wrong(c.x, finePlay)) > 0 {
			return c, true
		}
	}
	return candidate{}, false
}

// rooms keeps what can be a room and runs the right way round.
func (s *system) rooms(list []candidate) []candidate {
	var out []candidate
	for _, c := range list {
		if c.sol.settled && s.possible(c.x, 0.1) && !s.mirrored(c.x) {
			out = append(out, c)
		}
	}
	return out
}

// mirrored says whether a shape runs the wrong way round and no reading could
// tell.
func (s *system) mirrored(x []float64) bool {
	return !s.signed && len(s.fixed) == 0 && s.leftTurning(x)
}

// leftTurning says whether the chain turns to the left as a whole, against the
// walking order. Only if every corner was told it may.
func (s *system) leftTurning(x []float64) bool {
	if s.round(x) > -math.Pi/6 {
		return false
	}
	for _, p := range s.inner() {
		if s.turns[p] == NotTold {
			return true
		}
	}
	return false
}

// spare is the number of degrees of freedom: readings beyond those needed.
func (s *system) spare() int { return len(s.rows) + s.freedoms() - len(s.unknown) }

// alike keeps the shapes that explain the readings as well as the best one
// does: less than three standard deviations apart. Shapes that lie on each
// other are one, and so are shapes whose every point is where the better one
// has it, within three of its standard deviations.
func (s *system) alike(list []candidate) []candidate {
	best := list[0].cost
	limit := best + 9*max(1, best/float64(max(1, s.spare())))
	var out []candidate
	for _, c := range list {
		fresh := c.cost <= limit
		for _, o := range out {
			fresh = fresh && s.differ(c.x, o.x) > sameAs && !s.covers(o, c)
		}
		if fresh {
			out = append(out, c)
		}
	}
	return out
}

// covers says whether the points of another shape are where this one has them,
// within three standard deviations.
func (s *system) covers(c, other candidate) bool {
	if !c.held {
		return false
	}
	for j, e := range s.unknown {
		if !(math.Abs(c.x[e]-other.x[e]) <= 3*math.Sqrt(c.prec.q.At(j, j))) {
			return false
		}
	}
	return true
}

// decide picks one of the shapes that fit equally well. An alcove of up to
// three walls is taken to have inside corners. Everything else must be asked.
func (s *system) decide(list []candidate) (candidate, []int, error) {
	// Readings with a sense need not tell left from right, as a wall found
	// straight; then the walking order does.
	var right []candidate
	for _, c := range list {
		if !s.leftTurning(c.x) {
			right = append(right, c)
		}
	}
	if len(right) > 0 {
		list = right
	}
	if len(list) == 1 {
		return list[0], nil, nil
	}
	if in := s.inner(); !s.closed && len(in) > 0 && len(in) <= 2 {
		var allIn []candidate
		for _, c := range list {
			inside := true
			for _, p := range in {
				inside = inside && s.turnOf(c.x, p, finePlay) == Inside
			}
			if inside {
				allIn = append(allIn, c)
			}
		}
		if len(allIn) == 1 {
			return allIn[0], s.contested(list), nil
		}
	}
	if p := s.twoShapes(list); len(p.Points)+len(p.Measure) > 0 {
		return list[0], nil, p
	}
	return list[0], nil, nil // they differ by no more than their readings do
}

// contested lists the corners of which nobody told the turn and that are inside
// in one shape and not in another.
func (s *system) contested(list []candidate) []int {
	var out []int
	for _, p := range s.inner() {
		for _, c := range list[1:] {
			if s.turns[p] == NotTold && s.turnOf(c.x, p, finePlay) != s.turnOf(list[0].x, p, finePlay) {
				out = append(out, p)
				break
			}
		}
	}
	return out
}

// differ is how far apart two shapes are, laid on each other at the base.
func (s *system) differ(x, y []float64) float64 {
	if len(s.fixed) == 0 {
		a, b := s.base.from, s.base.to
		if a < 0 {
			a, b = 0, 1
		}
		x, y = s.moveTo(x, a, b), s.moveTo(y, a, b)
	}
	far := 0.0
	for i := range s.names {
		far = max(far, float64(point(x, i).Sub(point(y, i)).Len()))
	}
	return far
}
