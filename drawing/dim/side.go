package dim

import (
	"cmp"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// side is one side of the view with its rows of dimension lines, the nearest
// first.
type side struct {
	out  geom.Vec // of unit length
	main bool     // one of the four sides of the body
	base unit.Length
	rows []*row
}

type row struct {
	entries      []*entry
	inner, outer unit.Length
	at           unit.Length // of the line, from the base
}

// skewLimit is the sine of the greatest slope of a line that still stands in
// the rows of a side of the body.
const skewLimit = 0.17

// mainSides are the four sides of the body.
func (p *Plate) mainSides() []*side {
	b := p.Body
	return []*side{
		{out: sideDir[Below], main: true, base: -b.Min.Y},
		{out: sideDir[Above], main: true, base: b.Max.Y},
		{out: sideDir[LeftOf], main: true, base: -b.Min.X},
		{out: sideDir[RightOf], main: true, base: b.Max.X},
	}
}

// board holds the sides of a plate while lines are given their rows.
type board struct {
	p     *Plate
	sides []*side
}

// find gives the side whose rows take a line standing off in direction out.
// Sloping edges get a side of their own.
func (b *board) find(out geom.Vec) *side {
	for _, s := range b.sides {
		limit := skewLimit
		if !s.main {
			limit = 0.03
		}
		if s.out.Dot(out) > 0 && math.Abs(s.out.Cross(out)) < limit {
			return s
		}
	}
	s := &side{out: out, base: unit.Length(math.Inf(-1))}
	b.sides = append(b.sides, s)
	return s
}

// assign gives each entry its side and its row, the shortest first.
func (b *board) assign(entries []*entry) {
	order := slices.Clone(entries)
	slices.SortStableFunc(order, func(x, y *entry) int {
		if d := x.size() - y.size(); abs(d) > 0.05 {
			return cmp.Compare(d, 0)
		}
		return cmp.Compare(rank(x), rank(y))
	})
	for _, e := range order {
		e.fan = fan{}
		if e.running {
			e.fan = e.spread(&b.p.Style, nil)
		}
		best := math.Inf(1)
		var to *side
		var in int
		for _, out := range e.sides {
			s := b.find(out)
			for r := range len(s.rows) + 1 {
				if c := b.cost(e, s, out, r); c < best {
					best, to, in = c, s, r
					e.out = out
				}
			}
		}
		b.put(e, to, in)
	}
	b.sides = slices.DeleteFunc(b.sides, func(s *side) bool { return len(s.rows) == 0 && !s.main })
}

// order lists the sides as their rows take their places: those of sloping edges
// first, which stand nearest to them.
func (b *board) order() []*side {
	n := len(b.p.mainSides())
	return append(slices.Clone(b.sides[n:]), b.sides[:n]...)
}

// rank orders lines of equal length: a chain stands inside the overall size,
// running dimensions outside.
func rank(e *entry) int {
	switch {
	case e.running:
		return 2
	case len(e.u) > 2:
		return 0
	}
	return 1
}

func (b *board) put(e *entry, s *side, r int) {
	if r == len(s.rows) {
		s.rows = append(s.rows, &row{})
	}
	w := s.rows[r]
	w.entries = append(w.entries, e)
	inner, outer := e.depth(&b.p.Style, e.out)
	w.inner, w.outer = max(w.inner, inner), max(w.outer, outer+e.skew(s))
	e.side, e.row = s, r
	for _, q := range e.pts { // a feature beyond the body moves the rows out
		s.base = max(s.base, unit.Length(q.Dot(s.out)))
	}
}

// skew is how much farther one end of the line stands from the base than the
// other.
func (e *entry) skew(s *side) unit.Length {
	return abs(e.size() * unit.Length(e.dir.Dot(s.out)))
}

// Weights of a place for a dimension line, in millimetres of paper.
const (
	crossingWeight = 6    // an extension line crosses a dimension line
	rowWeight      = 2    // one row farther out
	depthWeight    = 0.15 // one millimetre between the features and the side
	runningWeight  = 3    // an extension line ends among running values
	offPaper       = 1e4
)

// cost weighs a row of a side for an entry; it is infinite when the row is taken.
func (b *board) cost(e *entry, s *side, out geom.Vec, r int) float64 {
	before, after := e.reserve(&b.p.Style)
	lo, hi := e.flat[0], e.flat[len(e.flat)-1]
	c := rowWeight * float64(r)
	for k, w := range s.rows {
		for _, o := range w.entries {
			olo, ohi := o.flat[0], o.flat[len(o.flat)-1]
			switch {
			case k == r:
				ob, oa := o.reserve(&b.p.Style)
				if lo-before < ohi+oa-0.3 && olo-ob < hi+after-0.3 {
					return math.Inf(1)
				}
			case k > r:
				c += crossingWeight * float64(within(o.flat, e.flat))
			default:
				c += crossingWeight * float64(within(e.flat, o.flat))
				if o.running {
					c += runningWeight * float64(within(e.flat, []unit.Length{o.fan.lo, o.fan.hi}))
				}
			}
		}
	}
	if s.main {
		deep := 0.0
		for _, q := range e.pts {
			deep += float64(s.base) - q.Dot(out)
		}
		c += depthWeight * deep / float64(len(e.pts))
	} else {
		c += depthWeight * b.inward(e, out)
	}
	return c + b.excess(e, s, out, r)
}

// inward is how much of the body lies on the side of a sloping line where it
// would stand: the line belongs on the other side.
func (b *board) inward(e *entry, out geom.Vec) float64 {
	return max(0, b.p.Body.Centre().Sub(e.pts[0].Lerp(e.pts[len(e.pts)-1], 0.5)).Dot(out))
}

// excess is the price of a row that would leave the frame.
func (b *board) excess(e *entry, s *side, out geom.Vec, r int) float64 {
	if !s.main {
		return 0
	}
	_, outer := e.depth(&b.p.Style, out)
	v := b.p.Style.First + unit.Length(r)*b.p.Style.Next + outer
	for _, w := range s.rows[:r] {
		v += max(0, w.outer+w.inner-b.p.Style.Next)
	}
	f := b.p.Frame
	limit := max(f.Max.Dot(s.out), f.Min.Dot(s.out))
	if float64(s.base+v) > limit {
		return offPaper
	}
	return 0
}

// within counts the stations that lie strictly between the ends of a line and
// on none of its own stations.
func within(u, line []unit.Length) int {
	n := 0
	for _, x := range u {
		if x <= line[0]+0.3 || x >= line[len(line)-1]-0.3 {
			continue
		}
		if i, _ := slices.BinarySearch(line, x-0.3); line[i] > x+0.3 {
			n++
		}
	}
	return n
}
