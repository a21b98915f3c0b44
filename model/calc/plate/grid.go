package plate

import (
	"cmp"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Plate is a flat plate seen from above, in axes of its own.
type Plate struct {
	Outline geom.Region
	Thick   unit.Length
	Thinner []Thinner // disjoint, where wood is cut out
	Wood    Wood
	Grain   unit.Angle // direction of the grain, from x
}

// Thinner is a part of the plate where only Thick is left, bending about its own
// middle. Carved makes it of grooves and pockets.
type Thinner struct {
	Region geom.Region
	Thick  unit.Length
}

// emptiest is the stiffness given to the empty part of a cell through which the
// outline runs, as a share of wood: enough that a cell with a sliver of wood can
// be solved, far too little to carry.
const emptiest = 1e-6

// cell is one rectangle of the grid that holds wood. Moments are about its
// middle.
type cell struct {
	i, j    int           // column, row
	node    [4]int        // counter-clockwise from the lower left
	mid     point         // mm
	half    point         // half its sides, mm
	area    moments       // of the wood
	bend    moments       // of the wood, weighted with t3/12
	shear   moments       // of the wood, weighted with t
	thin    float64       // mm, least thickness in it
	centre  point         // of the wood
	wooden  float64       // share of the cell that is wood
	bending [3][3]float64 // stiffness at its middle, for moments
}

// grid is a plate cut into cells.
type grid struct {
	plate  Plate
	xs, ys []float64
	edges  [][]point // of its outline
	cells  []cell
	index  []int   // cell of (i, j), -1 without wood
	nodes  []point // those that belong to a cell
	first  int     // number of its first node in the system
}

// newGrid cuts a plate into cells with sides of about h. Edges of grooves that
// run along the axes become lines of the grid.
func newGrid(p Plate, h float64) *grid {
	outline := loopsOf(p.Outline)
	g := &grid{plate: p, edges: outline}
	g.plate.Thinner = nil
	for _, t := range p.Thinner {
		if on := t.Region.Intersect(p.Outline); !on.Empty() {
			g.plate.Thinner = append(g.plate.Thinner, Thinner{on, t.Thick})
		}
	}
	hardX, hardY := straightLines(outline), straightLinesY(outline)
	for _, t := range g.plate.Thinner {
		hardX, hardY = append(hardX, straightLines(loopsOf(t.Region))...), append(hardY, straightLinesY(loopsOf(t.Region))...)
	}
	lo, hi := p.Outline.Bounds()
	g.xs = gridLines(float64(lo.X), float64(hi.X), hardX, h)
	g.ys = gridLines(float64(lo.Y), float64(hi.Y), hardY, h)
	g.fill(outline)
	g.number()
	return g
}

func loopsOf(r geom.Region) [][]point {
	var out [][]point
	for _, l := range r.Loops() {
		loop := make([]point, len(l))
		for i, v := range l {
			loop[i] = point{float64(v.X), float64(v.Y)}
		}
		out = append(out, loop)
	}
	return out
}

// straightLines gives the x of every side that runs along y and is longer than
// 50 mm.
func straightLines(loops [][]point) []float64 { return sides(loops, xOf, yOf) }

func straightLinesY(loops [][]point) []float64 { return sides(loops, yOf, xOf) }

func sides(loops [][]point, at, along func(point) float64) []float64 {
	var out []float64
	for _, loop := range loops {
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			if math.Abs(at(p)-at(q)) < 0.01 && math.Abs(along(p)-along(q)) > 50 {
				out = append(out, at(p))
			}
		}
	}
	return out
}

// narrowest is the width of the narrowest groove that every mesh follows, mm: what
// bends in it is read there.
const narrowest = 8

// gridLines divides low..high into even steps of at most about h between the
// hard lines. A hard line nearer to the one before it than a fifth of h and
// than the narrowest groove is left out.
func gridLines(low, high float64, hard []float64, h float64) []float64 {
	slices.Sort(hard)
	near := min(h/5, narrowest)
	stops := []float64{low}
	for _, x := range hard {
		if x-stops[len(stops)-1] > near && high-x > near {
			stops = append(stops, x)
		}
	}
	stops = append(stops, high)
	out := []float64{low}
	for k := 1; k < len(stops); k++ {
		a, b := stops[k-1], stops[k]
		n := math.Max(1, math.Ceil((b-a)/h-0.01))
		for s := 1.0; s <= n; s++ {
			out = append(out, a+(b-a)*s/n)
		}
	}
	return out
}

// fill integrates the wood of every cell.
func (g *grid) fill(outline [][]point) {
	nx, ny := len(g.xs)-1, len(g.ys)-1
	zones := make([][][]point, len(g.plate.Thinner))
	for k, t := range g.plate.Thinner {
		zones[k] = loopsOf(t.Region)
	}
	q := g.plate.Wood.inPlane(g.plate.Grain)
	g.index = make([]int, nx*ny)
	for i := range nx {
		strip := between(outline, xOf, g.xs[i], g.xs[i+1])
		thinner := make([][][]point, len(zones))
		for k := range zones {
			thinner[k] = between(zones[k], xOf, g.xs[i], g.xs[i+1])
		}
		for j := range ny {
			g.index[i*ny+j] = -1
			c := cell{i: i, j: j, mid: point{(g.xs[i] + g.xs[i+1]) / 2, (g.ys[j] + g.ys[j+1]) / 2}, half: point{(g.xs[i+1] - g.xs[i]) / 2, (g.ys[j+1] - g.ys[j]) / 2}}
			c.area = momentsOf(between(strip, yOf, g.ys[j], g.ys[j+1]), c.mid)
			whole := 4 * c.half.x * c.half.y
			if c.area[0] < 1e-6*whole {
				continue
			}
			g.weigh(&c, thinner, whole, q)
			g.index[i*ny+j] = len(g.cells)
			g.cells = append(g.cells, c)
		}
	}
}

// weigh fills in the stiffness of a cell's wood.
func (g *grid) weigh(c *cell, thinner [][][]point, whole float64, q [3][3]float64) {
	t := float64(g.plate.Thick)
	c.thin, c.wooden = t, c.area[0]/whole
	c.centre = point{c.mid.x + c.area[1]/c.area[0], c.mid.y + c.area[2]/c.area[0]}
	full := moments{whole, 0, 0, whole * c.half.x * c.half.x / 3, 0, whole * c.half.y * c.half.y / 3}
	if c.wooden > 1-1e-9 {
		c.area = full // to the last digit, so that equal cells are equal
	}
	c.bend.add(c.area, t*t*t/12)
	c.shear.add(c.area, t)
	for k, z := range g.plate.Thinner {
		if len(thinner[k]) == 0 {
			continue
		}
		m := momentsOf(between(thinner[k], yOf, g.ys[c.j], g.ys[c.j+1]), c.mid)
		if m[0] <= 1e-6*whole {
			continue
		}
		left := float64(z.Thick)
		c.thin = min(c.thin, left)
		c.bend.add(m, (left*left*left-t*t*t)/12)
		c.shear.add(m, left-t)
	}
	mean := c.bend[0] / c.area[0]
	for a := range 3 {
		for b := range 3 {
			c.bending[a][b] = q[a][b] * mean
		}
	}
	if c.wooden < 1-1e-9 {
		c.bend.add(full, emptiest*t*t*t/12)
		c.shear.add(full, emptiest*t)
	}
}

// number gives a number to every node of a cell, column by column.
func (g *grid) number() {
	nx, ny := len(g.xs), len(g.ys)
	used := make([]int, nx*ny)
	for _, c := range g.cells {
		for _, k := range c.corners(ny) {
			used[k] = 1
		}
	}
	for k := range used {
		if used[k] == 1 {
			used[k] = len(g.nodes)
			g.nodes = append(g.nodes, point{g.xs[k/ny], g.ys[k%ny]})
		}
	}
	for i := range g.cells {
		for k, at := range g.cells[i].corners(ny) {
			g.cells[i].node[k] = used[at]
		}
	}
}

func (c cell) corners(ny int) [4]int {
	k := c.i*ny + c.j
	return [4]int{k, k + ny, k + ny + 1, k + 1}
}

// cellAt finds the cell of a point; a point beside the wood belongs to the
// nearest cell.
func (g *grid) cellAt(p point) *cell {
	ny := len(g.ys) - 1
	i := clamp(search(g.xs, p.x), len(g.xs)-1)
	j := clamp(search(g.ys, p.y), ny)
	if k := g.index[i*ny+j]; k >= 0 {
		return &g.cells[k]
	}
	best, least := 0, math.Inf(1)
	for k, c := range g.cells {
		dx, dy := math.Max(0, math.Abs(p.x-c.mid.x)-c.half.x), math.Max(0, math.Abs(p.y-c.mid.y)-c.half.y)
		if d := dx*dx + dy*dy; d < least {
			best, least = k, d
		}
	}
	return &g.cells[best]
}

// columns are the cells that reach between two places along x.
func (g *grid) columns(low, high float64) []cell {
	from, _ := slices.BinarySearchFunc(g.cells, low, func(c cell, x float64) int { return cmp.Compare(g.xs[c.i+1], x) })
	to, _ := slices.BinarySearchFunc(g.cells, high, func(c cell, x float64) int { return cmp.Compare(g.xs[c.i], x) })
	return g.cells[from:max(from, to)]
}

func search(xs []float64, x float64) int {
	k, found := slices.BinarySearch(xs, x)
	if found {
		return k
	}
	return k - 1
}

func clamp(k, n int) int { return max(0, min(k, n-1)) }
