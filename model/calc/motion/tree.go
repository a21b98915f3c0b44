package motion

// state is what is known of a box of poses.
type state uint8

const (
	open    state = iota // not decided
	free                 // no pose in it collides
	unclear              // too small to be cut on
	shut                 // every pose in it collides
)

// cell is a box of poses: a leaf of the tree, or cut in two.
type cell struct {
	lo, hi coords
	way    Way // along which it is cut, or is to be cut
	at     float64
	kids   [2]int32 // 0: a leaf
	state  state
	gap    float64 // in its middle
	half   float64 // how far any pose in it is from its middle at most
	past   float64 // beyond the line, in its middle
	beside []int32 // neighbours; nil: to be found
}

func (c *cell) mid() coords { return c.lo.lerp(c.hi, 0.5) }
func (c *cell) leaf() bool  { return c.kids[0] == 0 }

func (c *cell) holds(q coords) bool {
	for i := range q {
		if q[i] < c.lo[i] || q[i] > c.hi[i] {
			return false
		}
	}
	return true
}

// at finds the leaf that holds a pose.
func (s *search) at(q coords) int32 {
	i := int32(0)
	for !s.cells[i].leaf() {
		c := &s.cells[i]
		i = c.kids[0]
		if q[c.way] > c.at {
			i = c.kids[1]
		}
	}
	return i
}

// beside gives the leaves that share a face with a leaf.
func (s *search) beside(i int32) []int32 {
	if s.cells[i].beside == nil {
		out := make([]int32, 0, 8)
		s.collect(0, i, &out)
		s.cells[i].beside = out
	}
	return s.cells[i].beside
}

func (s *search) collect(at, of int32, out *[]int32) {
	c, b := &s.cells[at], &s.cells[of]
	if !c.leaf() {
		if b.lo[c.way] <= c.at {
			s.collect(c.kids[0], of, out)
		}
		if b.hi[c.way] >= c.at {
			s.collect(c.kids[1], of, out)
		}
		return
	}
	if at == of || c.state >= unclear {
		return
	}
	touching := 0
	for _, w := range s.p.Ways {
		lo, hi := max(c.lo[w], b.lo[w]), min(c.hi[w], b.hi[w])
		if lo > hi {
			return
		}
		if lo == hi {
			touching++
		}
	}
	if touching == 1 {
		*out = append(*out, at)
	}
}

// cornered is how many times the distance of two bodies may be what their faces
// and edges tell.
const cornered = 3

// cut halves a leaf along its way.
func (s *search) cut(i int32) {
	for _, n := range s.beside(i) {
		s.cells[n].beside = nil
	}
	c := s.cells[i]
	way := c.way
	c.at = (c.lo[way] + c.hi[way]) / 2
	low, high := c.hi, c.lo
	low[way], high[way] = c.at, c.at
	c.kids = [2]int32{s.add(c.lo, low, c.state == free), s.add(high, c.hi, c.state == free)}
	c.beside = nil
	s.cells[i] = c
	s.tree.grow(len(s.cells))
	for _, kid := range c.kids {
		if s.cells[kid].state < unclear {
			s.offerFromAround(kid)
		}
	}
}

// add makes a leaf and measures it.
func (s *search) add(lo, hi coords, isFree bool) int32 {
	c := cell{lo: lo, hi: hi}
	c.half = s.reach.move(hi.minus(lo)) / 2
	s.part.to(c.mid())
	s.looks++
	width := hi.minus(lo).times(0.5)
	sway := swayOf(c.mid(), width)
	j := judged{state: free, gap: c.half}
	if !isFree {
		j = s.part.judge(s.p.Fixed, &sway, c.half, float64(s.p.Clear), c.half+max(0, float64(s.p.Clear))+1)
	}
	c.state, c.gap, c.way = j.state, j.gap, sway.widest(j, s.part, s.p.Ways, width, s.reach)
	c.gap -= float64(s.p.Clear)
	c.past = s.part.beyond(s.out, float64(s.p.Beyond))
	if r := float64(s.p.Roomy); r > 0 && s.to == nil && c.past+c.half >= 0 && c.state != shut {
		// the separation is less than the distance, in corners well less
		c.past = min(c.past, cornered*s.part.closest(s.p.Fixed, r).gap-r)
	}
	s.cells = append(s.cells, c)
	return int32(len(s.cells) - 1)
}
