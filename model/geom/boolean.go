package geom

// combine cuts the plane by the regions of several owners and keeps the faces
// chosen by in from how often they lie in each owner's regions.
func combine(in func(w []int32) bool, owners ...[]Region) Region {
	p, err := partitionOf(owners...)
	if err != nil {
		return faulty(err)
	}
	return newRegion(tidy(p.outline(p.choose(in))))
}

func partitionOf(owners ...[]Region) (*partition, error) {
	var segs []seg
	for o, regions := range owners {
		for _, r := range regions {
			if r.err != nil {
				return nil, r.err
			}
			for _, pc := range r.pieces {
				for _, loop := range pc {
					for i, a := range loop {
						segs = append(segs, seg{a: a, b: loop[(i+1)%len(loop)], owner: int32(o), delta: 1})
					}
				}
			}
		}
	}
	return arrange(segs, len(owners)), nil
}

// Union is the region together with others.
func (r Region) Union(s ...Region) Region { return UnionAll(append([]Region{r}, s...)...) }

// UnionAll is all regions together.
func UnionAll(s ...Region) Region { return combine(positive, s) }

// Intersect is what the region has in common with another.
func (r Region) Intersect(s Region) Region {
	return combine(func(w []int32) bool { return w[0] > 0 && w[1] > 0 }, []Region{r}, []Region{s})
}

// Minus is the region without others.
func (r Region) Minus(s ...Region) Region {
	return combine(func(w []int32) bool { return w[0] > 0 && w[1] <= 0 }, []Region{r}, s)
}

// Xor is what lies in one of two regions but not in both.
func (r Region) Xor(s Region) Region {
	return combine(func(w []int32) bool { return (w[0] > 0) != (w[1] > 0) }, []Region{r}, []Region{s})
}

// Cover is one common subdivision of several regions into cells. Regions
// selected from one Cover share their vertices and edges bit for bit.
type Cover struct {
	p   *partition
	err error
}

// Subdivide cuts the plane along the boundaries of all regions.
func Subdivide(regions ...Region) Cover {
	owners := make([][]Region, len(regions))
	for i, r := range regions {
		owners[i] = []Region{r}
	}
	p, err := partitionOf(owners...)
	return Cover{p, err}
}

// Err is the first fault among the regions.
func (c Cover) Err() error { return c.err }

// Select takes the cells for which in holds; member[i] tells whether the cell
// lies in the i-th region. What lies in no bounded cell is never taken. in
// must not keep member.
func (c Cover) Select(in func(member []bool) bool) CellSet {
	s := CellSet{err: c.err}
	if c.p == nil || c.err != nil || c.p.owners == 0 {
		return s
	}
	member := make([]bool, c.p.owners)
	s.pieces = c.p.outline(c.p.choose(func(w []int32) bool {
		for i, n := range w {
			member[i] = n > 0
		}
		return in(member)
	}))
	return s
}

// CellSet is a selection of cells of a Cover.
type CellSet struct {
	pieces []piece
	err    error
}

// Err is the fault of the Cover.
func (s CellSet) Err() error { return s.err }

// Loops are the outlines of the selection, counter-clockwise, each followed by
// its holes, clockwise. They keep every vertex of the Cover, also those in
// line with their neighbours, so that selections of one Cover fit together.
func (s CellSet) Loops() [][]Vec { return vecLoops(s.pieces) }

// Region is the selection as a region, needless vertices removed.
func (s CellSet) Region() Region {
	if s.err != nil {
		return faulty(s.err)
	}
	return newRegion(tidy(s.pieces))
}
