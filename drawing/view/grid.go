package view

import "math"

// box is an axis-parallel box in a view.
type box struct{ u0, v0, u1, v1 float64 }

func boxOf(a, b vertex) box {
	return box{min(a.u, b.u), min(a.v, b.v), max(a.u, b.u), max(a.v, b.v)}
}

func (b box) union(o box) box {
	return box{min(b.u0, o.u0), min(b.v0, o.v0), max(b.u1, o.u1), max(b.v1, o.v1)}
}

func (b box) grow(d float64) box { return box{b.u0 - d, b.v0 - d, b.u1 + d, b.v1 + d} }

func (b box) meets(o box) bool {
	return b.u0 <= o.u1 && o.u0 <= b.u1 && b.v0 <= o.v1 && o.v0 <= b.v1
}

// grid finds things near a line. Things are numbered in the order in which
// they are added.
type grid struct {
	at     box
	nu, nv int
	su, sv float64 // cells per mm
	cells  []int32 // first entry of each cell, -1: none
	thing  []int32 // of each entry
	next   []int32 // entry in the same cell, -1: none
	asked  []int32 // number of the last query that met the thing
	query  int32
}

// newGrid makes a grid over a box for about n things.
func newGrid(at box, n int) *grid {
	w, h := at.u1-at.u0, at.v1-at.v0
	cells := math.Min(float64(2*n+1), 1<<12)
	side := math.Max(math.Sqrt(w*h/cells), math.Max(w, h)/256)
	g := &grid{at: at, nu: 1, nv: 1}
	if side > 0 && !math.IsInf(side, 0) {
		g.nu, g.nv = int(w/side)+1, int(h/side)+1
		g.su, g.sv = 1/side, 1/side
	}
	g.thing, g.next, g.asked = make([]int32, 0, 2*n), make([]int32, 0, 2*n), make([]int32, 0, n)
	g.cells = make([]int32, g.nu*g.nv)
	for i := range g.cells {
		g.cells[i] = -1
	}
	return g
}

func (g *grid) column(u float64) int { return min(max(int((u-g.at.u0)*g.su), 0), g.nu-1) }
func (g *grid) row(v float64) int    { return min(max(int((v-g.at.v0)*g.sv), 0), g.nv-1) }

// add enters the next thing, which lies in box b.
func (g *grid) add(b box) {
	id := int32(len(g.asked))
	g.asked = append(g.asked, -1)
	for j := g.row(b.v0); j <= g.row(b.v1); j++ {
		for i := g.column(b.u0); i <= g.column(b.u1); i++ {
			g.enter(i, j, id)
		}
	}
}

// addLine enters the next thing, which is a line.
func (g *grid) addLine(a, b vertex) {
	id := int32(len(g.asked))
	g.asked = append(g.asked, -1)
	g.walk(a, b, func(i, j int) bool { g.enter(i, j, id); return true })
}

func (g *grid) enter(i, j int, id int32) {
	c := &g.cells[j*g.nu+i]
	g.thing = append(g.thing, id)
	g.next = append(g.next, *c)
	*c = int32(len(g.thing) - 1)
}

// near calls visit once for every thing in the cells that the line a-b
// touches, until it says stop by returning false. Of the things in a cell the
// one added last comes first.
func (g *grid) near(a, b vertex, visit func(id int32) bool) {
	q := g.query
	g.query++
	g.walk(a, b, func(i, j int) bool {
		for e := g.cells[j*g.nu+i]; e >= 0; e = g.next[e] {
			if id := g.thing[e]; g.asked[id] != q {
				g.asked[id] = q
				if !visit(id) {
					return false
				}
			}
		}
		return true
	})
}

// walk calls visit for every cell within coincident of the line, until it
// returns false.
func (g *grid) walk(a, b vertex, visit func(i, j int) bool) {
	if a.v > b.v {
		a, b = b, a
	}
	for j := g.row(a.v - coincident); j <= g.row(b.v+coincident); j++ {
		u0, u1 := min(a.u, b.u), max(a.u, b.u)
		if g.sv > 0 && b.v-a.v > coincident {
			lo := g.at.v0 + float64(j)/g.sv
			t0 := min(max((lo-coincident-a.v)/(b.v-a.v), 0), 1)
			t1 := min(max((lo+1/g.sv+coincident-a.v)/(b.v-a.v), 0), 1)
			p, q := a.u+(b.u-a.u)*t0, a.u+(b.u-a.u)*t1
			u0, u1 = min(p, q), max(p, q)
		}
		for i := g.column(u0 - coincident); i <= g.column(u1+coincident); i++ {
			if !visit(i, j) {
				return
			}
		}
	}
}
