package plate

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Assembly is one or more plates with everything that carries them.
type Assembly struct {
	Plates []Plate
	Bodies []Body
	Links  []Link
}

// Body is something that yields apart from the plates: a strip of a leg across
// its width, a rod. It has up to three points; Stiffness is the matrix between
// their deflections and the forces on them, N/mm, everything else of the body
// held.
type Body struct{ Stiffness [][]float64 }

// Acts tells which way a link carries.
type Acts int

// Ways of a link. A push carries when the spot moves down against what it rests
// on, a pull when it lifts off.
const (
	Push Acts = iota
	Pull
	Both
)

// Spot is a place on a plate, in the plate's axes, or a point of a body.
type Spot struct {
	Plate int // counted from 0
	At    geom.Vec
	Slope geom.Vec // not zero: the slope of the plate along this unit vector instead of its deflection
}

// Link is a spring under a spot of a plate. It stands on the ground, on a point
// of a body, or on another plate.
type Link struct {
	On        Spot
	Ground    Ground
	Stiffness float64     // N/mm; N mm per radian for slopes
	Slack     unit.Length // way (or radians) before it carries
	Acts      Acts
	Starts    bool // carries at first; a good guess saves work, nothing else
}

// Ground is what a link stands on; the zero Ground is the firm ground.
type Ground struct {
	Body  int // 1 is the first body, 0 none
	Point int
	Other *Spot
}

// term is a weight on one unknown.
type term struct {
	at int
	by float64
}

// Solver is an assembly cut into cells and factored once for a reference
// state of its links.
type Solver struct {
	grids    []*grid
	links    []link
	place    []int // block of the system for every node and body
	bodies   int   // number of the first body among the blocks
	size     int   // unknowns
	near     [][]int
	bodyK    [][][]float64
	cellK    [][]*[12][12]float64 // stiffness of every cell of every grid; equal ones share it
	mass     []float64            // of the plates, made when needed
	gauges   [][]gauge            // of every grid, made when needed
	fixed    []float64            // right side of slack in links that carry in the reference state
	k        *skyline
	cols     [][]float64 // answers to a unit force in a link, made when needed
	rows     [][]float64 // deflections in all links for each of cols
	patience int         // columns after which a new factorisation is worth it
	factored int         // how often the matrix was factored
}

type link struct {
	terms []term
	k     float64
	slack float64
	one   bool // carries one way only
	ref   bool // carries in the reference state
}

// New cuts the plates into cells of about h and factors the matrix.
func New(a Assembly, h unit.Length) (*Solver, error) {
	s := &Solver{}
	blocks := 0
	for _, p := range a.Plates {
		if p.Outline.Empty() || !(p.Thick > 0) {
			return nil, fmt.Errorf("a plate without area or thickness")
		}
		g := newGrid(p, float64(h))
		g.first = blocks
		blocks += len(g.nodes)
		s.grids = append(s.grids, g)
	}
	s.bodies = blocks
	blocks += len(a.Bodies)
	s.size = 3 * blocks
	for _, b := range a.Bodies {
		s.bodyK = append(s.bodyK, b.Stiffness)
	}
	raw := make([][]term, len(a.Links))
	for i, l := range a.Links {
		raw[i] = s.termsOf(l)
	}
	s.connect(blocks, raw)
	for _, g := range s.grids {
		s.cellK = append(s.cellK, g.stiffnesses())
	}
	for i, l := range a.Links {
		ln := link{k: l.Stiffness, slack: float64(l.Slack), one: l.Acts != Both, ref: l.Starts || l.Acts == Both}
		for _, t := range raw[i] {
			by := t.by
			if l.Acts == Pull {
				by = -by
			}
			ln.terms = append(ln.terms, term{3*s.place[t.at/3] + t.at%3, by})
		}
		s.links = append(s.links, ln)
	}
	return s, s.refactor()
}

// termsOf gives a link's stretch in the unknowns as they are numbered before
// ordering.
func (s *Solver) termsOf(l Link) []term {
	out := s.spotTerms(l.On, 1)
	switch {
	case l.Ground.Other != nil:
		out = append(out, s.spotTerms(*l.Ground.Other, -1)...)
	case l.Ground.Body > 0:
		out = append(out, term{3*(s.bodies+l.Ground.Body-1) + l.Ground.Point, -1})
	}
	return out
}

func (s *Solver) spotTerms(spot Spot, sign float64) []term {
	g := s.grids[spot.Plate]
	p := point{float64(spot.At.X), float64(spot.At.Y)}
	c := g.cellAt(p)
	w := c.deflection(p)
	if spot.Slope != (geom.Vec{}) {
		w = c.slope(p, point{float64(spot.Slope.X), float64(spot.Slope.Y)})
	}
	var out []term
	for k, f := range w {
		if f != 0 {
			out = append(out, term{3*(g.first+c.node[k/3]) + k%3, sign * f})
		}
	}
	return out
}

// connect finds which blocks share an entry, and orders them.
func (s *Solver) connect(blocks int, links [][]term) {
	s.near = make([][]int, blocks)
	join := func(a, b int) {
		if a != b && !slices.Contains(s.near[a], b) {
			s.near[a], s.near[b] = append(s.near[a], b), append(s.near[b], a)
		}
	}
	for _, g := range s.grids {
		for _, c := range g.cells {
			for m, n := range c.node {
				for _, o := range c.node[:m] {
					join(g.first+n, g.first+o)
				}
			}
		}
	}
	for _, terms := range links {
		for i, t := range terms {
			for _, u := range terms[:i] {
				join(t.at/3, u.at/3)
			}
		}
	}
	s.place = order(s.near)
}

// refactor builds and factors the matrix with the links that carry in the
// reference state.
func (s *Solver) refactor() error {
	if s.k == nil {
		s.k = newSkyline(lowest(s.near, s.place))
	} else {
		s.k.clear()
	}
	s.cols, s.rows = make([][]float64, len(s.links)), make([][]float64, len(s.links))
	s.fixed = make([]float64, s.size)
	for n, g := range s.grids {
		for i := range g.cells {
			s.put(g, &g.cells[i], s.cellK[n][i])
		}
	}
	for i, k := range s.bodyK {
		at := 3 * s.place[s.bodies+i]
		for r := range 3 {
			if r >= len(k) {
				s.k.add(at+r, at+r, 1)
				continue
			}
			for c := 0; c <= r; c++ {
				s.k.add(at+r, at+c, k[r][c])
			}
		}
	}
	for _, l := range s.links {
		k := l.k
		if !l.ref {
			continue
		}
		for i, t := range l.terms {
			s.fixed[t.at] += k * l.slack * t.by
			for _, u := range l.terms[:i+1] {
				f := k * t.by * u.by
				s.k.add(t.at, u.at, f)
				if u.at == t.at && u != t {
					s.k.add(t.at, u.at, f)
				}
			}
		}
	}
	s.patience = 8 + s.k.mean()
	s.factored++
	return s.k.factor()
}

func (s *Solver) unknowns(g *grid, c *cell) [12]int {
	var at [12]int
	for n, k := range c.node {
		b := 3 * s.place[g.first+k]
		at[3*n], at[3*n+1], at[3*n+2] = b, b+1, b+2
	}
	return at
}

// put adds the stiffness of a cell.
func (s *Solver) put(g *grid, c *cell, k *[12][12]float64) {
	for m, a := range c.node {
		i := s.place[g.first+a]
		for n, b := range c.node {
			j := s.place[g.first+b]
			if j > i {
				continue
			}
			for r, row := range s.k.block(i, j) {
				by := k[3*m+r][3*n : 3*n+3]
				row[0], row[1], row[2] = row[0]+by[0], row[1]+by[1], row[2]+by[2]
			}
		}
	}
}

// solve gives the answer of the reference system to a right side, which it
// overwrites.
func (s *Solver) solve(f []float64) {
	if from := firstOf(f); from < len(f) {
		s.k.solve(f, from/3)
	}
}

// solveAll does the same for many right sides, three at a time.
func (s *Solver) solveAll(list [][]float64) {
	for ; len(list) >= 3; list = list[3:] {
		three := [3][]float64(list)
		if from := min(firstOf(three[0]), firstOf(three[1]), firstOf(three[2])); from < s.size {
			s.k.solveThree(&three, from/3)
		}
	}
	for _, f := range list {
		s.solve(f)
	}
}

// firstOf is where a right side begins: how many zeros come first.
func firstOf(f []float64) int {
	n := 0
	for n < len(f) && f[n] == 0 {
		n++
	}
	return n
}

// want makes the columns of some links: the answers to a unit force in each, and
// its stretch in every link.
func (s *Solver) want(links []int) {
	var missing []int
	var all [][]float64
	for _, j := range links {
		if s.cols[j] != nil {
			continue
		}
		u := make([]float64, s.size)
		for _, t := range s.links[j].terms {
			u[t.at] += t.by
		}
		missing, all = append(missing, j), append(all, u)
	}
	s.solveAll(all)
	for k, j := range missing {
		s.cols[j], s.rows[j] = all[k], s.stretches(all[k])
	}
}

func (s *Solver) stretches(u []float64) []float64 {
	w := make([]float64, len(s.links))
	for i, l := range s.links {
		w[i] = l.of(u)
	}
	return w
}

func (l *link) of(u []float64) float64 {
	var w float64
	for _, t := range l.terms {
		w += t.by * u[t.at]
	}
	return w
}

// force of a link that carries, N.
func (l *link) force(w float64) float64 { return l.k * (w - l.slack) }

// wants tells whether the link carries at that stretch.
func (l *link) wants(w float64) bool { return !l.one || w > l.slack+1e-12*math.Abs(l.slack) }
