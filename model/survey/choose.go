package survey

import (
	"math"
	"sort"
)

const (
	roughPlay = 15 * math.Pi / 180  // a sketch may bend a corner the wrong way by this
	finePlay  = 0.3 * math.Pi / 180 // below this a corner counts as straight
	tries     = 10                  // sketches that are adjusted ...
	moreTries = 40                  // ... when angles are guessed in fine steps
	sameAs    = 3.0                 // mm: shapes closer than this are one
)

// Adjust finds the most likely coordinates of all points. Trouble comes back
// as a *Problem: a reading that makes no sense, a point that nothing holds, two
// rooms that fit equally well, a corner that turns the other way than told, or
// no shape near the readings. Readings that contradict each other are no
// trouble: they show in the residuals.
func Adjust(n Network) (*Result, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	s, err := prepare(&n)
	if err != nil {
		return nil, err
	}
	best, assumed, err := s.choose(&n)
	if err != nil {
		return nil, err
	}
	r := s.report(&n, best)
	r.Assumed = s.named(assumed)
	return r, nil
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
	all, guessed := s.candidates(n, 90)
	if guessed && !s.convinces(all) {
		fine, _ := s.candidates(n, 15)
		all = append(all, fine...)
		sort.SliceStable(all, func(i, j int) bool { return all[i].cost < all[j].cost })
	}
	var fitting []candidate
	for _, c := range all {
		if c.sol.settled && s.possible(c.x, 0.1) {
			fitting = append(fitting, c)
		}
	}
	if len(fitting) == 0 {
		if err := s.hangs(all[0]); err != nil {
			return all[0], nil, err
		}
		return all[0], nil, s.astray(all[0])
	}
	if err := s.hangs(fitting[0]); err != nil {
		return fitting[0], nil, err
	}
	var told []candidate
	for _, c := range fitting {
		if len(s.wrong(c.x, finePlay)) == 0 {
			told = append(told, c)
		}
	}
	if len(told) == 0 {
		return fitting[0], nil, s.wrongTurn(fitting[0])
	}
	return s.decide(s.alike(told))
}

// given is the start put in by the caller, if it covers all points.
func (s *system) given(n *Network) []float64 {
	x := make([]float64, 2*len(s.names)+len(s.bowed))
	for i, p := range s.names {
		at, ok := n.Start[p]
		if f, held := s.fixed[i]; held {
			at, ok = f, true
		}
		if !ok {
			return nil
		}
		x[2*i], x[2*i+1] = float64(at.X), float64(at.Y)
	}
	return s.framed(x)
}

// framed brings coordinates into the frame of the base wall, if there is one.
func (s *system) framed(x []float64) []float64 {
	if s.base.from < 0 {
		return x
	}
	return s.moveTo(x, s.base.from, s.base.to)
}

// candidates adjusts the sketches that come near enough, best result first.
// There is always at least one. It also says whether angles had to be guessed.
func (s *system) candidates(n *Network, step float64) ([]candidate, bool) {
	list, guessed := s.sketches(n, step)
	var starts, turned [][]float64
	limit := 4*list[0].score + 50
	for _, k := range list {
		x := s.framed(s.flat(k))
		if k.score > limit || !s.possible(x, 0.3) {
			continue
		}
		if len(s.wrong(x, roughPlay)) > 0 {
			turned = append(turned, x)
			continue
		}
		starts = append(starts, x)
	}
	starts = s.clockwise(starts)
	if len(starts) == 0 {
		starts = append(turned, s.framed(s.flat(list[0])))
	}
	most := tries
	if step < 90 {
		most = moreTries
	}
	var out []candidate
	for _, x := range starts[:min(most, len(starts))] {
		c, new := s.settle(x), true
		for _, o := range out {
			new = new && s.differ(c.x, o.x) > sameAs
		}
		if new {
			out = append(out, c)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].cost < out[j].cost })
	return out, guessed
}

// clockwise leaves out the mirror images: if no reading and no told turn can
// tell left from right, the walking order does.
func (s *system) clockwise(list [][]float64) [][]float64 {
	if s.signed || len(s.fixed) > 0 || s.anyTurnTold() {
		return list
	}
	right, out := 0.0, [][]float64(nil)
	for _, x := range list {
		right = max(right, s.round(x))
	}
	for _, x := range list {
		if right < math.Pi/6 || s.round(x) > -math.Pi/6 {
			out = append(out, x)
		}
	}
	return out
}

func (s *system) anyTurnTold() bool {
	for _, p := range s.inner() {
		if s.turns[p] != NotTold {
			return true
		}
	}
	return false
}

// convinces says whether a shape fits so well, with readings to spare, that
// starts from other angles need not be tried.
func (s *system) convinces(list []candidate) bool {
	for _, c := range list {
		if c.sol.settled && s.spare() > 1 && c.cost < 9*float64(s.spare()) {
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
		new := c.cost <= limit
		for _, o := range out {
			new = new && s.differ(c.x, o.x) > sameAs && !s.covers(o, c)
		}
		if new {
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

// decide picks one of the shapes that fit equally well. A mirror image yields
// to the shape that runs clockwise. An alcove of up to three walls is taken to
// have inside corners. Everything else must be asked.
func (s *system) decide(list []candidate) (candidate, []int, error) {
	if !s.anyTurnTold() {
		var right []candidate
		for _, c := range list {
			if s.round(c.x) > math.Pi/6 {
				right = append(right, c)
			}
		}
		var kept []candidate
		for _, c := range list {
			if len(right) == 0 || s.round(c.x) > -math.Pi/6 {
				kept = append(kept, c)
			}
		}
		list = kept
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
