package saw

import "slices"

// rasterPoints is the number of sizes along one side up to which a table is
// quick to fill.
const rasterPoints = 420

// onRaster sets the problem of one board up on a raster and gives its step.
func (s *sheetSearch) onRaster(k int, left []int, value []float64, coarse grid, up bool) (*limited, []leaf, grid) {
	b := s.boards[k]
	long, wide := b.in.x1-b.in.x0+s.kerf, b.in.y1-b.in.y0+s.kerf
	var leaves []leaf
	all := []grid{long, wide}
	for _, f := range leavesOf(s.parts) {
		if left[f.part] >= 0 && f.l+s.kerf <= long && f.w+s.kerf <= wide {
			leaves = append(leaves, f)
			all = append(all, f.l+s.kerf, f.w+s.kerf)
		}
	}
	g := measure(all...)
	if coarse > g {
		g = coarse
	}
	over := grid(0)
	if up {
		over = g - 1
	}
	var shapes []shape
	for _, f := range leaves {
		shapes = append(shapes, shape{f.part, (f.l + s.kerf + over) / g, (f.w + s.kerf + over) / g, f.across})
	}
	limit := slices.Clone(left)
	for i := range limit {
		limit[i] = max(limit[i], 0)
	}
	return newLimited(long/g, wide/g, shapes, value, limit, s.p.Stages, s.b), leaves, g
}

// quickStep is the raster at which the tables of a board are quick to fill; 0 where
// the sizes as they are will do.
func (s *sheetSearch) quickStep(k int) grid {
	b := s.boards[k]
	coarse := grid(0)
	for {
		q, _, g := s.onRaster(k, s.demand, make([]float64, len(s.demand)), coarse, false)
		if max(q.p.x.n(), q.p.y.n()) <= rasterPoints {
			return coarse
		}
		coarse = max(2*g, (b.in.x1-b.in.x0)/(4*rasterPoints))
	}
}
