package saw

import (
	"math"
	"slices"
)

// uneven asks whether a selection of parts can be cut from a board that is no
// plain rectangle. A piece that is parted by a cut needs the least for its first
// side and leaves the most to the second, so the search only asks two things: how
// far to the right, or up, a selection reaches at least inside a strip. Both are
// answered for every way to part the selection. Places are tried on a raster;
// loose lets parts be smaller by its step, so that what is impossible loosely is
// impossible.
type uneven struct {
	c     *composites
	board *board
	kerf  grid
	loose bool
	known map[question]grid
	b     *budget
	looks int
	done  bool // the budget ran out: what was not found may exist
}

// question is one reach that was asked for.
type question struct {
	state  int
	up     bool
	a, b   grid // where the strip starts along its reach; its other start
	c, end grid // its other end; the farthest reach
}

const never = grid(math.MaxInt64 / 4)

// rasterStep is the step of the raster of places: 1 mm.
const rasterStep = grid(1000)

func (u *uneven) next(x grid) grid { return (x/rasterStep + 1) * rasterStep }

// fits says whether the whole board yields a selection.
func (u *uneven) fits(state int) bool {
	in := u.board.in
	return u.right(state, in.x0, in.y0, in.y1, in.x1) <= in.x1
}

// lengthOf is how long a leaf is; loosely, as much shorter as its place may be
// off on the raster.
func (u *uneven) lengthOf(f leaf) grid {
	if u.loose {
		return max(f.l-rasterStep, 1)
	}
	return f.l
}

// spotAt is the y of a leaf at x inside a strip; false if it does not lie there.
// in gives the box that it is sawn out of.
func (u *uneven) spotAt(f leaf, x, l, y0, y1 grid, in func(at box) box) (grid, bool) {
	low, high := u.board.band(x, l)
	if f.low && (y0 > u.board.in.y0 || !u.board.naturalLo) || f.high && (y1 < u.board.in.y1 || !u.board.naturalHi) {
		return 0, false
	}
	if !f.low && !f.high {
		return u.board.lowest(x, l, max(low, y0), f.w, min(high, y1), u.kerf, in)
	}
	y := low
	if f.high {
		y = high - f.w
	}
	to := box{x, y, x + l, y + f.w}
	if f.low {
		to.y0 = u.board.in.y0
	} else {
		to.y1 = u.board.in.y1
	}
	ok := y >= max(low, y0) && y+f.w <= min(high, y1) && !slices.ContainsFunc(u.board.keep, to.hits)
	return y, ok && (u.loose || u.board.freeable(to, in(to), u.kerf))
}

// inside is the box of a question up to where a part is cut off, or all of it
// where no cut can be made behind the part.
func (u *uneven) inside(q question, at box) box {
	if u.loose {
		return at // freeing is not asked for
	}
	if q.up {
		in := box{q.b, q.a, q.c, q.end}
		if t := u.board.clear(at.y1, u.kerf, in, false); t+u.kerf <= q.end {
			in.y1 = t
		}
		return in
	}
	in := box{q.a, q.b, q.end, q.c}
	if r := u.board.clear(at.x1, u.kerf, in, true); r+u.kerf <= q.end {
		in.x1 = r
	}
	return in
}

// right is how far right a selection reaches at least that starts at x0 in the
// strip from y0 to y1; never if it ends beyond x1.
func (u *uneven) right(state int, x0, y0, y1, x1 grid) grid {
	return u.ask(question{state, false, x0, y0, y1, x1})
}

// top is how far up a selection reaches at least that starts at y0 in the strip
// from x0 to x1.
func (u *uneven) top(state int, y0, x0, x1, y1 grid) grid {
	return u.ask(question{state, true, y0, x0, x1, y1})
}

func (u *uneven) ask(q question) grid {
	if v, ok := u.known[q]; ok {
		return v
	}
	if u.done || !u.b.spend(1) {
		u.done = true
		return never
	}
	v := never
	if u.possible(q) {
		for i, f := range u.c.leaves {
			if u.c.demand[f.part] > 0 && u.stateOf(i) == q.state {
				v = min(v, u.single(f, q, v))
			}
		}
		u.c.within(q.state, func(a int) {
			v = min(v, u.parted(q, a, q.state-a, v))
		})
	}
	if !u.done {
		u.known[q] = v
	}
	return v
}

func (u *uneven) stateOf(leafIndex int) int {
	f := u.c.leaves[leafIndex]
	state := u.c.one(f.part)
	if f.mate >= 0 {
		state += u.c.one(f.mate)
	}
	return state
}

// possible compares with the sizes of whole rectangles.
func (u *uneven) possible(q question) bool {
	slack := grid(0)
	if u.loose {
		slack = 2 * rasterStep * grid(len(u.c.demand)+8)
	}
	wide, long := q.c-q.b, q.end-q.a
	for _, n := range u.c.list[q.state] {
		l, w := n.l-u.kerf-slack, n.w-u.kerf-slack
		if q.up {
			l, w = w, l
		}
		if l <= long && w <= wide {
			return true
		}
	}
	return false
}

// single is the reach of a leaf, below a reach that is known.
func (u *uneven) single(f leaf, q question, best grid) grid {
	l := u.lengthOf(f)
	in := func(at box) box { return u.inside(q, at) }
	if !q.up {
		for x := q.a; x+l <= q.end && x+l < best && u.looked(); x = u.next(x) {
			if y, ok := u.spotAt(f, x, l, q.b, q.c, in); ok {
				best = min(best, in(box{x, y, x + l, y + f.w}).x1)
			}
		}
		return best
	}
	for x := q.b; x+l <= q.c && u.looked(); x = u.next(x) {
		if y, ok := u.spotAt(f, x, l, q.a, q.end, in); ok {
			if f.high {
				return u.board.in.y1
			}
			best = min(best, in(box{x, y, x + l, y + f.w}).y1)
		}
	}
	return best
}

// looksPerStep is how many places are looked at for one step of the budget.
const looksPerStep = 32

// looked counts the places that are looked at; false if the budget ran out.
func (u *uneven) looked() bool {
	if u.looks++; u.looks%looksPerStep == 0 && !u.b.spend(1) {
		u.done = true
	}
	return !u.done
}

// parted is the reach of a selection that one cut parts into a and b, a first.
func (u *uneven) parted(q question, a, b int, best grid) grid {
	if !q.up {
		r := u.right(a, q.a, q.b, q.c, q.end)
		if r < best {
			if at := u.board.clear(r, u.kerf, box{q.a, q.b, q.end, q.c}, true); at+u.kerf < min(best, q.end) {
				best = min(best, u.right(b, at+u.kerf, q.b, q.c, q.end))
			}
		}
		return u.least(q, best, func(x1 grid) bool { return u.stacked(a, b, box{q.a, q.b, x1, q.c}) })
	}
	t := u.top(a, q.a, q.b, q.c, q.end)
	if t < best {
		if at := u.board.clear(t, u.kerf, box{q.b, q.a, q.c, q.end}, false); at+u.kerf < min(best, q.end) {
			best = min(best, u.top(b, at+u.kerf, q.b, q.c, q.end))
		}
	}
	return u.least(q, best, func(y1 grid) bool { return u.abreast(a, b, box{q.b, q.a, q.c, y1}) })
}

// stacked says whether b lies above a in a box.
func (u *uneven) stacked(a, b int, in box) bool {
	t := u.top(a, in.y0, in.x0, in.x1, in.y1)
	if t >= in.y1 {
		return false
	}
	at := u.board.clear(t, u.kerf, in, false)
	return at+u.kerf < in.y1 && u.top(b, at+u.kerf, in.x0, in.x1, in.y1) <= in.y1
}

// abreast says whether b lies to the right of a in a box.
func (u *uneven) abreast(a, b int, in box) bool {
	r := u.right(a, in.x0, in.y0, in.y1, in.x1)
	if r >= in.x1 {
		return false
	}
	at := u.board.clear(r, u.kerf, in, true)
	return at+u.kerf < in.x1 && u.right(b, at+u.kerf, in.y0, in.y1, in.x1) <= in.x1
}

// least is the smallest end on the raster at which a question is answered with
// yes, below a reach that is known.
func (u *uneven) least(q question, best grid, yes func(grid) bool) grid {
	high := min(best-1, q.end)
	if high <= q.a || !yes(high) {
		return best
	}
	low := q.a
	for high-low > rasterStep {
		mid := max(low+1, (low+high)/2/rasterStep*rasterStep)
		if mid <= low || mid >= high {
			break
		}
		if yes(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	if u.loose {
		return min(best, max(high-rasterStep, q.a))
	}
	return high
}

// put writes a selection out that the box holds.
func (u *uneven) put(state int, in box, out []located) ([]located, bool) {
	for i, f := range u.c.leaves {
		if u.c.demand[f.part] == 0 || u.stateOf(i) != state {
			continue
		}
		for x := in.x0; x+f.l <= in.x1; x = u.next(x) {
			if y, ok := u.spotAt(f, x, f.l, in.y0, in.y1, func(box) box { return in }); ok {
				return append(out, located{i, x, y}), true
			}
		}
	}
	found := false
	u.c.within(state, func(a int) {
		if found {
			return
		}
		b := state - a
		first, second := in, in
		switch {
		case u.abreast(a, b, in):
			first.x1 = u.right(a, in.x0, in.y0, in.y1, in.x1)
			second.x0 = u.board.clear(first.x1, u.kerf, in, true) + u.kerf
		case u.stacked(a, b, in):
			first.y1 = u.top(a, in.y0, in.x0, in.x1, in.y1)
			second.y0 = u.board.clear(first.y1, u.kerf, in, false) + u.kerf
		default:
			return
		}
		mark := len(out)
		if out, found = u.put(a, first, out); found {
			out, found = u.put(b, second, out)
		}
		if !found {
			out = out[:mark]
		}
	})
	return out, found
}
