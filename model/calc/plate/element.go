package plate

// Each node has three unknowns: deflection w (down), slopes bx and by. A field
// over a cell is a value at its middle and its growth along the cell's own
// coordinates r and s, which run from -1 to 1.
type strain [3][12]float64 // middle, along r, along s

var cornerR = [4]float64{-1, 1, 1, -1}
var cornerS = [4]float64{-1, -1, 1, 1}

// curvatures are (bx,x; by,y; bx,y + by,x) of a cell.
func (c *cell) curvatures() [3]strain {
	var k [3]strain
	a, b := c.half.x, c.half.y
	for n := range 4 {
		r, s := cornerR[n], cornerS[n]
		// d/dx of the shape function is r/(4a) (1 + s S), d/dy s/(4b) (1 + r R).
		k[0][0][3*n+1], k[0][2][3*n+1] = r/(4*a), r*s/(4*a)
		k[1][0][3*n+2], k[1][1][3*n+2] = s/(4*b), r*s/(4*b)
		k[2][0][3*n+1], k[2][1][3*n+1] = s/(4*b), r*s/(4*b)
		k[2][0][3*n+2], k[2][2][3*n+2] = r/(4*a), r*s/(4*a)
	}
	return k
}

// shears are the assumed transverse strains (w,x - bx; w,y - by): taken at the
// middles of the sides, even across from one to the other.
func (c *cell) shears() [2]strain {
	var g [2]strain
	a, b := c.half.x, c.half.y
	side := func(st *strain, along, n, m, dof int, half, sign float64) {
		for k, f := range [2]float64{0.5, 0.5 * sign} {
			at := k * along
			st[at][3*m] += f / (2 * half)
			st[at][3*n] -= f / (2 * half)
			st[at][3*n+dof] -= f / 2
			st[at][3*m+dof] -= f / 2
		}
	}
	side(&g[0], 2, 0, 1, 1, a, -1)
	side(&g[0], 2, 3, 2, 1, a, 1)
	side(&g[1], 1, 0, 3, 2, b, -1)
	side(&g[1], 1, 1, 2, 2, b, 1)
	return g
}

// scaled gives the moments in the cell's own coordinates: index pairs (p, q) of
// middle, r, s.
func (c *cell) scaled(m moments) [3][3]float64 {
	a, b := c.half.x, c.half.y
	r, s, rs := m[1]/a, m[2]/b, m[4]/(a*b)
	return [3][3]float64{{m[0], r, s}, {r, m[3] / (a * a), rs}, {s, rs, m[5] / (b * b)}}
}

// equals tells whether two cells have the same stiffness.
func (c *cell) equals(d *cell) bool {
	return c.half == d.half && c.bend == d.bend && c.shear == d.shear
}

// stiffness integrates a cell.
func (c *cell) stiffness(q [3][3]float64, g [2][2]float64) [12][12]float64 {
	var k [12][12]float64
	kappa, gamma := c.curvatures(), c.shears()
	bend, shear := c.scaled(c.bend), c.scaled(c.shear)
	for i := range 3 {
		for j := range 3 {
			if q[i][j] != 0 {
				addProduct(&k, &kappa[i], &kappa[j], &bend, q[i][j])
			}
		}
	}
	for i := range 2 {
		for j := range 2 {
			if g[i][j] != 0 {
				addProduct(&k, &gamma[i], &gamma[j], &shear, g[i][j])
			}
		}
	}
	return k
}

// stiffnesses are those of all cells; equal ones that follow each other share it.
func (g *grid) stiffnesses() []*[12][12]float64 {
	q, t := g.plate.Wood.inPlane(g.plate.Grain), g.plate.Wood.transverse(g.plate.Grain)
	out := make([]*[12][12]float64, len(g.cells))
	for i := range g.cells {
		if i > 0 && g.cells[i].equals(&g.cells[i-1]) {
			out[i] = out[i-1]
			continue
		}
		k := g.cells[i].stiffness(q, t)
		out[i] = &k
	}
	return out
}

// addProduct adds f times the integral of one strain times another.
func addProduct(k *[12][12]float64, u, v *strain, m *[3][3]float64, f float64) {
	for p := range 3 {
		var t [12]float64
		w0, w1, w2 := f*m[p][0], f*m[p][1], f*m[p][2]
		for b := range 12 {
			t[b] = w0*v[0][b] + w1*v[1][b] + w2*v[2][b]
		}
		for a := range 12 {
			if x := u[p][a]; x != 0 {
				for b := range 12 {
					k[a][b] += x * t[b]
				}
			}
		}
	}
}

// deflection gives the weights of the cell's unknowns in w at a point. Between
// the nodes w follows the slopes: a parabola along every side.
func (c *cell) deflection(p point) [12]float64 {
	r, s := (p.x-c.mid.x)/c.half.x, (p.y-c.mid.y)/c.half.y
	var w [12]float64
	for n := range 4 {
		w[3*n] = (1 + cornerR[n]*r) * (1 + cornerS[n]*s) / 4
		w[3*n+1] = -cornerR[n] * c.half.x / 8 * (1 - r*r) * (1 + cornerS[n]*s)
		w[3*n+2] = -cornerS[n] * c.half.y / 8 * (1 - s*s) * (1 + cornerR[n]*r)
	}
	return w
}

// slope gives the weights of the cell's unknowns in the slope along d.
func (c *cell) slope(p point, d point) [12]float64 {
	r, s := (p.x-c.mid.x)/c.half.x, (p.y-c.mid.y)/c.half.y
	var w [12]float64
	for n := range 4 {
		f := (1 + cornerR[n]*r) * (1 + cornerS[n]*s) / 4
		w[3*n+1], w[3*n+2] = f*d.x, f*d.y
	}
	return w
}

// pressed spreads an even pressure over an area of the cell on its nodes.
func (c *cell) pressed(m moments) [4]float64 {
	a, b := c.half.x, c.half.y
	var f [4]float64
	for n := range 4 {
		r, s := cornerR[n], cornerS[n]
		f[n] = (m[0] + r*m[1]/a + s*m[2]/b + r*s*m[4]/(a*b)) / 4
	}
	return f
}

// moment gives the weights of the cell's unknowns in the moments (mx, my, mxy) per
// width at a point, N.
func (c *cell) moment(p point) [3][12]float64 {
	r, s := (p.x-c.mid.x)/c.half.x, (p.y-c.mid.y)/c.half.y
	var m [3][12]float64
	for j, st := range c.curvatures() {
		for a := range 12 {
			kappa := st[0][a] + r*st[1][a] + s*st[2][a]
			for i := range 3 {
				m[i][a] -= c.bending[i][j] * kappa
			}
		}
	}
	return m
}
