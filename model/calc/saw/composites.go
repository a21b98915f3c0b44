package saw

// composite is a selection of parts joined to a rectangle by cuts right across,
// kerf included in both sizes.
type composite struct {
	l, w      grid
	low, high bool  // holds parts that need the natural edge of that side
	dv, dh    uint8 // changes of direction if it stands beside, or above, another
	cuts      int
	leaf      int // index of the leaf, -1: joined
	a, b      ref
	up        bool // b stands above a, else to its right
}

// ref names a composite.
type ref struct{ state, index int }

// composites lists for every selection all sizes of rectangles that it can be
// cut from, none larger than another in both directions.
type composites struct {
	states
	leaves []leaf
	kerf   grid
	stages int
	long   grid // most that any sheet has, kerf included
	wide   grid
	list   [][]composite
	b      *budget
}

func newComposites(s states, parts []part, p Problem, kerf, long, wide grid, b *budget) *composites {
	c := &composites{states: s, kerf: kerf, stages: p.Stages, long: long, wide: wide, b: b}
	c.leaves = append(leavesOf(parts), nests(parts, s.demand, kerf)...)
	c.list = make([][]composite, s.n)
	for i, f := range c.leaves {
		if s.demand[f.part] == 0 {
			continue
		}
		state := s.one(f.part)
		n := composite{l: f.l + kerf, w: f.w + kerf, low: f.low, high: f.high, dv: 1, dh: 1, leaf: i}
		if f.mate >= 0 {
			state += s.one(f.mate)
			n.cuts = 1
		}
		c.add(state, n)
	}
	return c
}

// fill works through all selections; false if the budget ran out.
func (c *composites) fill() bool {
	for state := 1; state < c.n; state++ {
		ok := true
		c.within(state, func(part int) {
			if rest := state - part; ok && part <= rest {
				ok = c.join(state, part, rest)
			}
		})
		if !ok {
			return false
		}
	}
	return true
}

func (c *composites) join(state, a, b int) bool {
	for i, x := range c.list[a] {
		for k, y := range c.list[b] {
			if a == b && k < i {
				continue
			}
			c.beside(state, x, y, ref{a, i}, ref{b, k})
			if !x.high && !y.low {
				c.above(state, x, y, ref{a, i}, ref{b, k})
			} else if !y.high && !x.low {
				c.above(state, y, x, ref{b, k}, ref{a, i})
			}
		}
	}
	return c.b.spend(1 + len(c.list[a])*len(c.list[b])/16)
}

func (c *composites) beside(state int, x, y composite, a, b ref) {
	n := composite{l: x.l + y.l, w: max(x.w, y.w), low: x.low || y.low, high: x.high || y.high, leaf: -1, a: a, b: b}
	n.cuts = x.cuts + y.cuts + 1
	if x.w != y.w {
		n.cuts++
	}
	n.dv = max(x.dv, y.dv)
	n.dh = n.dv + 1
	c.add(state, n)
}

func (c *composites) above(state int, x, y composite, a, b ref) {
	n := composite{l: max(x.l, y.l), w: x.w + y.w, low: x.low, high: y.high, leaf: -1, a: a, b: b, up: true}
	n.cuts = x.cuts + y.cuts + 1
	if x.l != y.l {
		n.cuts++
	}
	n.dh = max(x.dh, y.dh)
	n.dv = n.dh + 1
	c.add(state, n)
}

// add keeps a composite that fits some sheet and that no other one dominates.
func (c *composites) add(state int, n composite) {
	if n.l > c.long || n.w > c.wide {
		return
	}
	if c.stages == 0 {
		n.dv, n.dh = 0, 0
	} else if int(min(n.dv, n.dh)) > c.stages {
		return
	}
	list := c.list[state]
	for _, o := range list {
		if o.dominates(n) {
			return
		}
	}
	kept := list[:0:0]
	for _, o := range list {
		if !n.dominates(o) {
			kept = append(kept, o)
		}
	}
	c.list[state] = append(kept, n)
}

// dominates says whether a composite serves wherever another one does.
func (c composite) dominates(o composite) bool {
	if c.l > o.l || c.w > o.w || c.dv > o.dv || c.dh > o.dh || c.low && !o.low || c.high && !o.high {
		return false
	}
	return c.l < o.l || c.w < o.w || c.cuts <= o.cuts
}

// shortest is a bound on the length that a selection takes where so much width
// is there; false if none fits.
func (c *composites) shortest(state int, width grid) (grid, bool) {
	best, ok := grid(0), false
	for _, n := range c.list[state] {
		if n.w-c.kerf <= width && (!ok || n.l-c.kerf < best) {
			best, ok = n.l-c.kerf, true
		}
	}
	return best, ok
}

// box is a rectangle of a sheet on the grid.
type box struct{ x0, y0, x1, y1 grid }

// located is a leaf at its place: the low left corner of its rectangle.
type located struct {
	leaf int
	x, y grid
}

// place writes a composite out into a box that holds it.
func (c *composites) place(r ref, in box, out []located) []located {
	n := c.list[r.state][r.index]
	if n.leaf >= 0 {
		f := c.leaves[n.leaf]
		y := in.y0
		if f.high {
			y = in.y1 - f.w
		}
		return append(out, located{n.leaf, in.x0, y})
	}
	a := c.list[n.a.state][n.a.index]
	first, second := in, in
	if n.up {
		first.y1 = in.y0 + a.w - c.kerf
		second.y0 = in.y0 + a.w
	} else {
		first.x1 = in.x0 + a.l - c.kerf
		second.x0 = in.x0 + a.l
	}
	return c.place(n.b, second, c.place(n.a, first, out))
}
