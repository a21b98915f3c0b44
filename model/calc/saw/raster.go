package saw

import "slices"

// raster holds the sizes that sums of item sizes can take along one direction,
// up to the whole length; other cuts can be moved to these without loss
// (normal patterns: Herz 1972; Christofides and Whitlock 1977).
type raster struct {
	at    []grid
	floor []int32 // index of the largest size not above a length
}

// newRaster collects the sums of sizes, each at most limit times, 0 for any
// number. Sizes beyond whole are ignored.
func newRaster(whole grid, sizes []grid, limit []int) raster {
	hit := make([]bool, whole+1)
	hit[0] = true
	least := whole
	for i, s := range sizes {
		if s > whole {
			continue
		}
		least = min(least, s)
		if limit[i] == 0 || grid(limit[i])*s > whole {
			for x := s; x <= whole; x++ {
				hit[x] = hit[x] || hit[x-s]
			}
			continue
		}
		for range limit[i] {
			for x := whole; x >= s; x-- {
				hit[x] = hit[x] || hit[x-s]
			}
		}
	}
	r := raster{floor: make([]int32, whole+1)}
	for x := range hit {
		if hit[x] && grid(x) <= whole-least || x == 0 || grid(x) == whole {
			r.at = append(r.at, grid(x))
		}
		r.floor[x] = int32(len(r.at) - 1)
	}
	r.at = slices.Clip(r.at)
	return r
}

func (r raster) n() int { return len(r.at) }

// differences gives for each i and each k <= i the index of the largest size not
// above at[i] - at[k].
func (r raster) differences() [][]int32 {
	out := make([][]int32, len(r.at))
	for i, x := range r.at {
		out[i] = make([]int32, i+1)
		for k := range out[i] {
			out[i][k] = r.floor[x-r.at[k]]
		}
	}
	return out
}

// halves is one way to divide a size: the index of the smaller side and of what is
// left for the other.
type halves struct{ part, rest int32 }

// divisions lists the ways to divide each size that no other way dominates: the
// smaller side as large as it can be without making the rest smaller (raster
// points: Scheithauer and Terno 1996).
func (r raster) divisions(d [][]int32) [][]halves {
	out := make([][]halves, len(r.at))
	for i := range r.at {
		for k := int32(1); int(k) < i; k++ {
			rest := d[i][k]
			if rest < k {
				break
			}
			if d[i][rest] == k {
				out[i] = append(out[i], halves{k, rest})
			}
		}
	}
	return out
}
