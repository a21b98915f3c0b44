package plate

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Contour gives the lines of a plate on which the deflection has a value, cut
// off at the outline. Within a cell a line is straight.
func (r *Result) Contour(plate int, down unit.Length) [][]geom.Vec {
	g := r.s.grids[plate]
	var all chains
	for i := range g.cells {
		c := &g.cells[i]
		var ends []crossing
		for k := range 4 {
			a, b := c.node[k], c.node[(k+1)%4]
			wa, wb := r.node(g, a)-float64(down), r.node(g, b)-float64(down)
			if (wa < 0) == (wb < 0) {
				continue
			}
			t := wa / (wa - wb)
			p, q := g.nodes[a], g.nodes[b]
			ends = append(ends, crossing{[2]int{min(a, b), max(a, b)}, geom.V(unit.Length(p.x+t*(q.x-p.x)), unit.Length(p.y+t*(q.y-p.y)))})
		}
		for k := 0; k+1 < len(ends); k += 2 {
			if g.plate.Outline.Contains(ends[k].at.Lerp(ends[k+1].at, 0.5)) {
				all.add(ends[k], ends[k+1])
			}
		}
	}
	return all.lines()
}

func (r *Result) node(g *grid, n int) float64 { return r.st.u[3*r.s.place[g.first+n]] }

// crossing is where a line meets a side of a cell.
type crossing struct {
	side [2]int
	at   geom.Vec
}

// chains joins pieces that end on the same side.
type chains struct{ list [][]crossing }

func (c *chains) add(a, b crossing) {
	piece := []crossing{a, b}
	for {
		joined := false
		for i, other := range c.list {
			if whole, ok := join(other, piece); ok {
				c.list = append(c.list[:i], c.list[i+1:]...)
				piece, joined = whole, true
				break
			}
		}
		if !joined {
			break
		}
	}
	c.list = append(c.list, piece)
}

// join makes one chain of two that have an end in common.
func join(a, b []crossing) ([]crossing, bool) {
	first, last := a[0].side, a[len(a)-1].side
	switch {
	case last == b[0].side:
		return append(a, b[1:]...), true
	case last == b[len(b)-1].side:
		return append(a, turned(b)[1:]...), true
	case first == b[len(b)-1].side:
		return append(b, a[1:]...), true
	case first == b[0].side:
		return append(turned(b), a[1:]...), true
	}
	return nil, false
}

func turned(a []crossing) []crossing {
	out := make([]crossing, len(a))
	for i, x := range a {
		out[len(a)-1-i] = x
	}
	return out
}

func (c *chains) lines() [][]geom.Vec {
	var out [][]geom.Vec
	for _, chain := range c.list {
		line := make([]geom.Vec, len(chain))
		for i, x := range chain {
			line[i] = x.at
		}
		out = append(out, line)
	}
	return out
}
