package plate

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Gravity is the acceleration of free fall, m/s2.
const Gravity = 9.81

// Load presses a plate down, evenly over a region, or over the whole plate when
// the region is empty. What lies beside the plate does not count: a load keeps
// its force however little of its region is on the plate.
type Load struct {
	Plate  int
	Region geom.Region
	Force  float64 // N in all
}

// Spread is an even pressure over a plate, N/mm2.
func (s *Solver) Spread(plate int, pressure float64) Load {
	return Load{Plate: plate, Force: pressure * float64(s.grids[plate].plate.Outline.Area())}
}

// push adds a load to a right side and tells whether any of it is on the plate.
func (s *Solver) push(f []float64, l Load) bool {
	g := s.grids[l.Plate]
	if l.Region.Empty() {
		return s.pushOn(f, g, l.Force, g.cells, func(c *cell) moments { return c.area })
	}
	lo, hi := l.Region.Bounds()
	var on [][]point
	if size := hi.Sub(lo); float64(l.Region.Area()) > (1-1e-9)*float64(size.X*size.Y) { // an upright rectangle
		on = between(between(g.edges, xOf, float64(lo.X), float64(hi.X)), yOf, float64(lo.Y), float64(hi.Y))
	} else {
		on = loopsOf(g.plate.Outline.Intersect(l.Region))
	}
	return s.pushOn(f, g, l.Force, g.columns(float64(lo.X), float64(hi.X)), func(c *cell) moments {
		if float64(hi.Y) <= c.mid.y-c.half.y || float64(lo.Y) >= c.mid.y+c.half.y {
			return moments{}
		}
		in := between(between(on, xOf, c.mid.x-c.half.x, c.mid.x+c.half.x), yOf, c.mid.y-c.half.y, c.mid.y+c.half.y)
		return momentsOf(in, c.mid)
	})
}

// pushOn spreads a force on cells, after the area of each that it presses.
func (s *Solver) pushOn(f []float64, g *grid, force float64, cells []cell, area func(*cell) moments) bool {
	type pressed struct {
		c *cell
		m moments
	}
	var all []pressed
	var sum float64
	for i := range cells {
		c := &cells[i]
		if m := area(c); m[0] > 0 {
			all, sum = append(all, pressed{c, m}), sum+m[0]
		}
	}
	if sum <= 0 {
		return false
	}
	for _, p := range all {
		for n, v := range p.c.pressed(p.m) {
			f[3*s.place[g.first+p.c.node[n]]] += v * force / sum
		}
	}
	return true
}

// masses spreads the mass of the plates on the deflections of the nodes, in
// tonnes: N = t mm/s2.
func (s *Solver) masses() []float64 {
	if s.mass != nil {
		return s.mass
	}
	s.mass = make([]float64, s.size)
	for _, g := range s.grids {
		for i := range g.cells {
			c := &g.cells[i]
			for n, v := range c.pressed(c.shear) { // weighted with the thickness
				s.mass[3*s.place[g.first+c.node[n]]] += v * float64(g.plate.Wood.Density) * 1e-12
			}
		}
	}
	return s.mass
}

// Plates is how many plates there are.
func (s *Solver) Plates() int { return len(s.grids) }

// Mass is the mass of a plate.
func (s *Solver) Mass(plate int) unit.Mass {
	var m unit.Mass
	g := s.grids[plate]
	for _, c := range g.cells {
		m += g.plate.Wood.Density.Mass(unit.Volume(c.shear[0]))
	}
	return m
}

// weight adds a multiple of the plates' own weight.
func (s *Solver) weight(f []float64, share float64) {
	for i, m := range s.masses() {
		f[i] += share * m * Gravity * 1000
	}
}
