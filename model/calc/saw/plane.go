package saw

// plane solves the unlimited problem: the most that guillotine cuts get out of
// every rectangle up to the whole, with items of given worth in any number. It
// is exact: dynamic programming over normal patterns.
type plane struct {
	x, y   raster
	dx, dy [][]int32
	cx, cy [][]halves
	rows   []bool // x indices that are filled
	cols   []bool
	shapes []shape
	f      []float64 // at x index * y count + y index
}

// shape is an item as it may lie, kerf included.
type shape struct {
	item   int
	l, w   grid
	across bool
}

func newPlane(length, width grid, shapes []shape, limit []int) *plane {
	var ls, ws []grid
	var ns []int
	for _, s := range shapes {
		if s.l <= length && s.w <= width {
			ls, ws, ns = append(ls, s.l), append(ws, s.w), append(ns, limit[s.item])
		}
	}
	p := &plane{x: newRaster(length, ls, ns), y: newRaster(width, ws, ns), shapes: shapes}
	p.dx, p.dy = p.x.differences(), p.y.differences()
	p.cx, p.cy = p.x.divisions(p.dx), p.y.divisions(p.dy)
	p.rows, p.cols = reached(p.cx), reached(p.cy)
	p.f = make([]float64, p.x.n()*p.y.n())
	return p
}

// effort is about how many steps one solution takes.
func (p *plane) effort() int {
	nx, ny := p.x.n(), p.y.n()
	return nx * ny * (nx + ny) / 4
}

// reached are the sizes that cutting the whole can lead to.
func reached(cuts [][]halves) []bool {
	out := make([]bool, len(cuts))
	out[len(cuts)-1] = true
	for i := len(cuts) - 1; i > 0; i-- {
		if !out[i] {
			continue
		}
		for _, c := range cuts[i] {
			out[c.part], out[c.rest] = true, true
		}
	}
	return out
}

// all makes the next solution fill the whole table.
func (p *plane) all() {
	for i := range p.rows {
		p.rows[i] = true
	}
	for j := range p.cols {
		p.cols[j] = true
	}
}

// solve fills the table for the worth of each item: for the sizes that cutting
// the whole can lead to, or for all of them.
func (p *plane) solve(worth []float64) {
	nx, ny := p.x.n(), p.y.n()
	p.items(worth)
	for i := range nx {
		if !p.rows[i] {
			continue
		}
		row := p.f[i*ny : (i+1)*ny]
		for _, c := range p.cx[i] {
			a, b := p.f[int(c.part)*ny:(int(c.part)+1)*ny], p.f[int(c.rest)*ny:(int(c.rest)+1)*ny]
			for j, v := range a {
				if v += b[j]; v > row[j] {
					row[j] = v
				}
			}
		}
		for j := 1; j < ny; j++ {
			if !p.cols[j] {
				continue
			}
			best := row[j]
			for _, c := range p.cy[j] {
				if v := row[c.part] + row[c.rest]; v > best {
					best = v
				}
			}
			row[j] = best
		}
	}
}

// items fills the table with the best single item of each size.
func (p *plane) items(worth []float64) {
	nx, ny := p.x.n(), p.y.n()
	clear(p.f)
	for _, s := range p.shapes {
		if s.l > p.x.at[nx-1] || s.w > p.y.at[ny-1] {
			continue
		}
		i, j := p.above(p.x, s.l), p.above(p.y, s.w)
		p.f[i*ny+j] = max(p.f[i*ny+j], worth[s.item])
	}
	for i := range nx {
		row := p.f[i*ny : (i+1)*ny]
		if i > 0 {
			for j, v := range p.f[(i-1)*ny : i*ny] {
				row[j] = max(row[j], v)
			}
		}
		for j := 1; j < ny; j++ {
			row[j] = max(row[j], row[j-1])
		}
	}
}

// above is the index of the smallest size not below a length.
func (p *plane) above(r raster, l grid) int {
	i := int(r.floor[l])
	if r.at[i] < l {
		i++
	}
	return i
}

// whole is the value of the whole rectangle.
func (p *plane) whole() float64 { return p.f[len(p.f)-1] }

// spot is a shape at a place.
type spot struct {
	shape int
	x, y  grid
}

// trace gives a layout that reaches the value of a rectangle.
func (p *plane) trace(i, j int, x, y grid, worth []float64, out []spot) []spot {
	ny := p.y.n()
	v := p.f[i*ny+j]
	if v <= 0 {
		return out
	}
	same := func(a float64) bool { return a >= v-1e-9*(1+v) }
	for k, s := range p.shapes {
		if s.l <= p.x.at[i] && s.w <= p.y.at[j] && same(worth[s.item]) {
			return append(out, spot{k, x, y})
		}
	}
	for _, c := range p.cx[i] {
		if k, r := int(c.part), int(c.rest); same(p.f[k*ny+j] + p.f[r*ny+j]) {
			out = p.trace(k, j, x, y, worth, out)
			return p.trace(r, j, x+p.x.at[k], y, worth, out)
		}
	}
	for _, c := range p.cy[j] {
		if k, r := int(c.part), int(c.rest); same(p.f[i*ny+k] + p.f[i*ny+r]) {
			out = p.trace(i, k, x, y, worth, out)
			return p.trace(i, r, x, y+p.y.at[k], worth, out)
		}
	}
	panic("saw: the table has a value that no cut reaches")
}

// beside gives for every rectangle in the low left corner, by what is left of
// both sides, a bound on what the rest of the sheet is worth when the rectangle
// grows to the whole by cuts right across.
func (p *plane) beside() []float64 {
	nx, ny := p.x.n(), p.y.n()
	out := make([]float64, nx*ny)
	wide := make([]int, ny) // size of the rectangle whose rest is y.at[j]
	for j := range wide {
		wide[j] = int(p.y.floor[p.y.at[ny-1]-p.y.at[j]])
	}
	for i := range nx {
		row := out[i*ny : (i+1)*ny]
		long := int(p.x.floor[p.x.at[nx-1]-p.x.at[i]])
		if i > 0 {
			copy(row, out[(i-1)*ny:i*ny])
		}
		for k := 1; k <= i; k++ {
			f, rest := p.f[k*ny:(k+1)*ny], out[int(p.dx[i][k])*ny:(int(p.dx[i][k])+1)*ny]
			for j := range row {
				if v := rest[j] + f[wide[j]]; v > row[j] {
					row[j] = v
				}
			}
		}
		for j := 1; j < ny; j++ {
			best := max(row[j], row[j-1])
			f := p.f[long*ny : (long+1)*ny]
			for k := 1; k <= j; k++ {
				if v := row[p.dy[j][k]] + f[k]; v > best {
					best = v
				}
			}
			row[j] = best
		}
	}
	return out
}
