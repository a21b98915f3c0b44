package survey

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	// brush is how far a tape may run behind a corner of plaster: it touches and
	// is bent by less than a millimetre. Judgement.
	brush unit.Length = 10
	// vague limits what the uncertainty of the corners adds to that.
	vague unit.Length = 90
	// onward is how far an open room is taken to go on beyond its ends.
	onward unit.Length = 4000
)

// sight tells which straight lines can be drawn in the room.
type sight struct {
	room  geom.Region // widened by what is tolerated
	blind bool        // the walls enclose nothing: every line counts as free
}

// segment is a straight line along which something is measured.
type segment struct{ a, b geom.Vec }

// sight builds the room from its adjusted corners. Where the corners seem to be
// listed from right to left it sees nothing.
func (r *Result) sight() sight {
	if !r.system.closed && r.system.leftTurning(r.x) {
		return sight{blind: true}
	}
	var chain []geom.Vec
	for _, p := range r.system.chain {
		chain = append(chain, point(r.x, p))
	}
	play := brush
	for _, p := range r.Points {
		play = max(play, brush+min(vague, 3*max(p.SDX, p.SDY)))
	}
	loops := [][]geom.Vec{chain}
	if !r.system.closed && len(chain) > 1 {
		loops = [][]geom.Vec{around(chain), ahead(chain, onward/4), ahead(chain, onward/16), chain}
	}
	for _, loop := range loops {
		if simple(loop) {
			room := geom.Polygon(loop...).Grow(play, 1)
			return sight{room, room.Err() != nil || room.Empty()}
		}
	}
	return sight{blind: true}
}

// ahead closes an open chain a little beyond its ends, in the direction of its
// first and last wall.
func ahead(chain []geom.Vec, far unit.Length) []geom.Vec {
	n := len(chain)
	first, last := chain[0].Sub(chain[1]).Unit(), chain[n-1].Sub(chain[n-2]).Unit()
	return append(append([]geom.Vec{}, chain...), chain[n-1].Add(last.Mul(float64(far))), chain[0].Add(first.Mul(float64(far))))
}

// around closes an open chain far out, on a circle round it: the room goes on
// wherever no wall is known.
func around(chain []geom.Vec) []geom.Vec {
	middle, far := geom.Vec{}, onward
	for _, v := range chain {
		middle = middle.Add(v.Mul(1 / float64(len(chain))))
	}
	for _, v := range chain {
		far = max(far, 2*v.Sub(middle).Len())
	}
	loop := ahead(chain, far)
	n := len(loop)
	from, to := float64(loop[n-2].Sub(middle).Angle()), float64(loop[n-1].Sub(middle).Angle())
	sweep := math.Mod(from-to+4*math.Pi, 2*math.Pi) // clockwise, as the walls run
	end, steps := loop[n-1], math.Ceil(sweep/(math.Pi/8))
	loop = loop[:n-1]
	for k := range int(steps) + 1 {
		at := unit.Angle(from - sweep*float64(k)/max(1, steps))
		loop = append(loop, middle.Add(geom.V(4*far, 0).Turn(at)))
	}
	return append(loop, end)
}

// simple says whether corners, in order, run clockwise round an area without
// crossing themselves.
func simple(loop []geom.Vec) bool {
	area := 0.0
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		area += a.Cross(b)
		for j := range i {
			if crossed(a, b, loop[j], loop[(j+1)%len(loop)]) {
				return false
			}
		}
	}
	return len(loop) > 2 && area < 0
}

// gap is the first stretch of a segment that runs behind the walls, as
// fractions of it; false if there is none.
func (v sight) gap(l segment) ([2]float64, bool) {
	if v.blind || l.b.Sub(l.a).Len() < 1 {
		return [2]float64{}, false
	}
	const grain = 1e-4 // of the segment; the ends are rounded to the grid
	from := 0.0
	for _, in := range append(v.room.Inside(l.a, l.b), [2]float64{1, 1}) {
		if in[0] > from+grain {
			return [2]float64{from, in[0]}, true
		}
		from = max(from, in[1])
	}
	return [2]float64{}, false
}

// free says whether all segments run through the room.
func (v sight) free(list []segment) bool {
	for _, l := range list {
		if _, blocked := v.gap(l); blocked {
			return false
		}
	}
	return true
}

// drawn lists the straight lines along which a row is measured.
func (s *system) drawn(w *row, x []float64) []segment {
	p := func(i int) geom.Vec { return point(x, w.points[i]) }
	switch w.kind {
	case Distance:
		return []segment{{p(0), p(1)}}
	case Angle:
		return []segment{{p(1), p(0)}, {p(1), p(2)}}
	case SquareOff:
		u, v := p(0).Sub(p(1)).Unit(), p(2).Sub(p(1)).Unit()
		return []segment{{p(1).Add(u.Mul(w.a)), p(1).Add(v.Mul(w.b))}}
	case Width:
		along := p(1).Sub(p(0)).Unit()
		line := geom.Line{P: p(0).Add(along.Left().Mul(-w.a)), D: along}
		left, ok := line.Meet(geom.Through(p(2), p(3)))
		right, ok2 := line.Meet(geom.Through(p(4), p(5)))
		if !ok || !ok2 {
			return nil
		}
		return []segment{{left, right}}
	case Offset:
		l := geom.Through(p(1), p(2))
		foot := l.P.Add(l.D.Unit().Mul(float64(l.Along(p(0)))))
		return []segment{{p(1), p(2)}, {p(0), foot}}
	}
	return nil
}

// OutOfSight lists the readings that cannot have been taken as they are
// written: the straight line runs through a wall, further than a tape that
// brushes a corner.
func (r *Result) OutOfSight() []*Problem {
	var out []*Problem
	v := r.sight()
	for _, o := range r.Readings {
		if p := r.blocked(v, o.Reading); p != nil {
			out = append(out, p)
		}
	}
	return out
}

// blocked tells why a reading cannot have been taken, nil if it can.
func (r *Result) blocked(v sight, rd Reading) *Problem {
	w, err := r.compiled(rd)
	if err != nil {
		return nil
	}
	for _, l := range r.system.drawn(&w, r.x) {
		if gap, hidden := v.gap(l); hidden {
			return r.outOfSight(rd, l, gap)
		}
	}
	return nil
}

// AdjustSeen is Adjust without the readings that cannot have been taken because
// their straight line runs through a wall; it gives these as well. One without
// which the others do not tell the room is kept, and says that it is Needed.
func AdjustSeen(n Network) (*Result, []*Problem, error) {
	r, err := Adjust(n)
	if err != nil {
		return nil, nil, err
	}
	whole, refused := r, []*Problem(nil)
	// Without a refused reading the room is a little different, and may show
	// another one in another light.
	for range 3 {
		next, now := whole.seen(r.sight(), r)
		if sameReadings(now, refused) {
			break
		}
		r, refused = next, now
	}
	return r, refused, nil
}

// seen adjusts again without the readings that run through a wall of another
// result, as far as the room can spare them.
func (whole *Result) seen(v sight, walls *Result) (*Result, []*Problem) {
	r := whole
	var refused []*Problem
	skip := map[int]bool{}
	for i, rd := range whole.network.Readings {
		p := walls.blocked(v, rd)
		if p == nil {
			continue
		}
		skip[i] = true
		n := whole.network
		n.Readings = nil
		for j, o := range whole.network.Readings {
			if !skip[j] {
				n.Readings = append(n.Readings, o)
			}
		}
		if next, _, err := adjust(n); err == nil {
			r = next
		} else {
			p.Needed, skip[i] = true, false
			if trouble := (*Problem)(nil); errors.As(err, &trouble) {
				p.Measure = slices.DeleteFunc(slices.Clone(trouble.Measure), func(m [2]Point) bool {
					return walls.blocked(v, Reading{Kind: Distance, Points: m[:]}) != nil
				})
			}
		}
		refused = append(refused, p)
	}
	return r, refused
}

func sameReadings(a, b []*Problem) bool {
	return slices.EqualFunc(a, b, func(p, q *Problem) bool {
		return p.Reading == q.Reading && p.Where == q.Where && p.Needed == q.Needed
	})
}

func (r *Result) outOfSight(rd Reading, l segment, gap [2]float64) *Problem {
	p := bad(rd, "the straight line from %s to %s runs through %s, so it cannot have been measured",
		r.place(l.a), r.place(l.b), r.through(l, gap))
	p.Trouble = OutOfSight
	return p
}

// place names the point at a place, or gives what it is.
func (r *Result) place(at geom.Vec) string {
	for _, p := range r.Points {
		if p.At.Sub(at).Len() < 1 {
			return string(p.Name)
		}
	}
	return "a mark on the wall"
}

// through names the walls that a segment crosses.
func (r *Result) through(l segment, gap [2]float64) string {
	var walls []string
	for _, w := range r.system.walls() {
		if crossed(l.a, l.b, point(r.x, w.from), point(r.x, w.to)) {
			walls = append(walls, r.system.nameOf(w))
		}
	}
	if len(walls) == 0 { // it leaves from a corner right into the wall
		middle, best := l.a.Lerp(l.b, (gap[0]+gap[1])/2), math.Inf(1)
		for _, w := range r.system.walls() {
			a, b := point(r.x, w.from), point(r.x, w.to)
			t := min(1, max(0, middle.Sub(a).Dot(b.Sub(a))/max(1e-9, b.Sub(a).Dot(b.Sub(a)))))
			if d := float64(middle.Sub(a.Lerp(b, t)).Len()); d < best {
				walls, best = []string{r.system.nameOf(w)}, d
			}
		}
	}
	if len(walls) == 1 {
		return "the wall " + walls[0]
	}
	return fmt.Sprintf("the walls %s", strings.Join(walls, " and "))
}
