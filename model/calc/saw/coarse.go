package saw

import "slices"

// rasterPoints is the number of sizes along one side up to which a table is
// quick to fill.
const rasterPoints = 200

// scaled are the leaves that fit a plain board, on a raster of its own.
type scaled struct {
	leaves     []leaf
	shapes     []shape
	long, wide grid
	step       grid
}

// onRaster puts a board and the leaves that fit it on a raster: with up, sizes are
// rounded up to it, else down.
func (s *sheetSearch) onRaster(k int, left []int, coarse grid, up bool) scaled {
	b := s.boards[k]
	long, wide := b.in.x1-b.in.x0+s.kerf, b.in.y1-b.in.y0+s.kerf
	out := scaled{}
	all := []grid{long, wide}
	for _, f := range leavesOf(s.parts) {
		if left[f.part] >= 0 && f.l+s.kerf <= long && f.w+s.kerf <= wide {
			out.leaves = append(out.leaves, f)
			all = append(all, f.l+s.kerf, f.w+s.kerf)
		}
	}
	out.step = max(measure(all...), coarse)
	over := grid(0)
	if up {
		over = out.step - 1
	}
	out.long, out.wide = long/out.step, wide/out.step
	for _, f := range out.leaves {
		out.shapes = append(out.shapes, shape{f.part, (f.l + s.kerf + over) / out.step, (f.w + s.kerf + over) / out.step, f.across})
	}
	return out
}

// limits are the counts with 0 for what is made and for what has no limit; what
// is made has no leaf.
func limits(left []int) []int {
	out := slices.Clone(left)
	for i := range out {
		out[i] = max(out[i], 0)
	}
	return out
}

// limited sets the problem of the most value up.
func (s *sheetSearch) limited(on scaled, left []int, value []float64, b *budget) *limited {
	return newLimited(on.long, on.wide, on.shapes, value, limits(left), s.p.Stages, b)
}

// quickStep is the raster at which the tables of a board are quick to fill; 0
// where the sizes as they are will do.
func (s *sheetSearch) quickStep(k int) grid {
	coarse := grid(0)
	for {
		on := s.onRaster(k, s.demand, coarse, false)
		if points(on, s.demand, 40*rasterPoints) <= rasterPoints {
			return coarse
		}
		coarse = max(on.step*3/2+1, on.long*on.step/(6*rasterPoints))
	}
}

// points is the number of sizes on the longer raster; one longer than most is not
// counted.
func points(on scaled, demand []int, most grid) int {
	if max(on.long, on.wide) > most {
		return int(max(on.long, on.wide))
	}
	var ls, ws []grid
	var ns []int
	for _, s := range on.shapes {
		ls, ws, ns = append(ls, s.l), append(ws, s.w), append(ns, demand[s.item])
	}
	return max(newRaster(on.long, ls, ns).n(), newRaster(on.wide, ws, ns).n())
}
