package plate

import (
	"errors"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Case is a combination of loads: a multiple of the plates' own weight, and
// more.
type Case struct {
	Weight float64 // 1: own weight once
	Loads  []Load
}

// Result is one load case solved.
type Result struct {
	s  *Solver
	st state
}

// Size is the number of unknowns.
func (s *Solver) Size() int { return s.size }

// ErrTips says that a load turns a plate off what carries it, ErrLoose that
// nothing holds it even while it lies.
var (
	ErrTips  = errTips
	ErrLoose = errLoose
)

// Solve finds deflections, and which links carry, under one load case. Links
// that carry in the result `like` are tried first; nil takes those of the
// description.
func (s *Solver) Solve(c Case, like *Result) (*Result, error) {
	f, err := s.forces(c)
	if err != nil {
		return nil, err
	}
	return s.settled(f, nil, like)
}

// SolveEach solves load cases like Solve, one after the other, and shows each
// answer with the number of its case; it stops at the first trouble that is given
// back. It reads the factored matrix once for three cases, and tries first the
// links that carried in the case before.
func (s *Solver) SolveEach(cases []Case, like *Result, see func(n int, r *Result, err error) error) error {
	for from := 0; from < len(cases); from += 3 {
		now := cases[from:min(from+3, len(cases))]
		forces, faults := make([][]float64, len(now)), make([]error, len(now))
		var ahead [][]float64
		for i, c := range now {
			forces[i], faults[i] = s.forces(c)
			ahead = append(ahead, s.right(forces[i]))
		}
		s.solveAll(ahead)
		factored := s.factored
		for i := range now {
			var r *Result
			err := faults[i]
			if factored != s.factored {
				ahead[i] = nil
			}
			if err == nil {
				r, err = s.settled(forces[i], ahead[i], like)
				if err == nil {
					like = r
				}
			}
			if err := see(from+i, r, err); err != nil {
				return err
			}
		}
	}
	return nil
}

// forces is the right side of a load case.
func (s *Solver) forces(c Case) ([]float64, error) {
	f := make([]float64, s.size)
	s.weight(f, c.Weight)
	for _, l := range c.Loads {
		if !s.push(f, l) {
			return f, errors.New("a load lies beside its plate")
		}
	}
	return f, nil
}

func (s *Solver) settled(f, ahead []float64, like *Result) (*Result, error) {
	var guess []bool
	if like != nil {
		guess = like.st.on
	}
	st, err := s.settle(f, ahead, guess)
	if err != nil {
		return nil, err
	}
	return &Result{s, st}, nil
}

// few is how many links may carry otherwise than in the reference state before it
// is worth a new factorisation, when their columns are there already.
const few = 48

// Settle makes the state of a result the reference of the solver: load cases in
// which nearly the same links carry are then solved sooner. Where little differs
// and is known already it stays as it is.
func (s *Solver) Settle(r *Result) error {
	z := s.unlike(r.st.on)
	if len(z) <= few && !slices.ContainsFunc(z, func(j int) bool { return s.cols[j] == nil }) {
		return nil
	}
	for i := range s.links {
		s.links[i].ref = r.st.on[i]
	}
	return s.refactor()
}

// Force is what a link carries, N: a push or a pull, never negative; either way
// for links that act both ways, positive against deflection.
func (r *Result) Force(link int) float64 { return r.st.force[link] }

// Carries tells whether a link carries.
func (r *Result) Carries(link int) bool { return r.st.on[link] && r.st.force[link] != 0 }

// Deflection of a place on a plate, positive down.
func (r *Result) Deflection(plate int, at geom.Vec) unit.Length {
	g := r.s.grids[plate]
	p := point{float64(at.X), float64(at.Y)}
	c := g.cellAt(p)
	u := r.s.local(g, c, r.st.u)
	var w float64
	for k, f := range c.deflection(p) {
		w += f * u[k]
	}
	return unit.Length(w)
}

func (s *Solver) local(g *grid, c *cell, u []float64) [12]float64 {
	var out [12]float64
	for k, at := range s.unknowns(g, c) {
		out[k] = u[at]
	}
	return out
}

// Sample is the state of a plate at one place.
type Sample struct {
	At         geom.Vec
	Deflection unit.Length // positive down
	Moment     [3]float64  // N, that is N mm per mm of width: along the grain, across it, twisting
	Thick      unit.Length // least thickness near the place
}

// Samples gives the state at the middle of the wood of every cell, leaving out
// cells that are mostly empty.
func (r *Result) Samples(plate int) []Sample {
	s := r.s
	gauges := s.gaugesOf(plate)
	out := make([]Sample, 0, len(gauges))
	for i := range gauges {
		g := &gauges[i]
		u := s.local(s.grids[plate], g.c, r.st.u)
		var w, x, y, xy float64
		for k, v := range u {
			w += g.down[k] * v
			x += g.moment[0][k] * v
			y += g.moment[1][k] * v
			xy += g.moment[2][k] * v
		}
		out = append(out, Sample{
			At:         geom.V(unit.Length(g.c.centre.x), unit.Length(g.c.centre.y)),
			Deflection: unit.Length(w),
			Moment:     [3]float64{x, y, xy},
			Thick:      unit.Length(g.c.thin),
		})
	}
	return out
}

// gauge reads the state of a cell at the middle of its wood: weights of its
// unknowns in the deflection and in the moments along the grain, across it and
// twisting.
type gauge struct {
	c      *cell
	down   [12]float64
	moment [3][12]float64
}

func (s *Solver) gaugesOf(plate int) []gauge {
	if s.gauges == nil {
		s.gauges = make([][]gauge, len(s.grids))
	}
	if s.gauges[plate] != nil {
		return s.gauges[plate]
	}
	g := s.grids[plate]
	out := make([]gauge, 0, len(g.cells))
	for i := range g.cells {
		c := &g.cells[i]
		if c.wooden < 0.3 {
			continue
		}
		out = append(out, gauge{c, c.deflection(c.centre), toGrain(c.moment(c.centre), g.plate.Grain)})
	}
	s.gauges[plate] = out
	return out
}

// Stress at a sample's faces, N/mm2: along and across the grain, and shear in
// the plane. Positive moments pull the underside.
func (s Sample) Stress() (along, across, shear float64) {
	w := float64(s.Thick) * float64(s.Thick) / 6
	return s.Moment[0] / w, s.Moment[1] / w, s.Moment[2] / w
}

// Lowest and Highest are the places that go down most and up most.
func (r *Result) Lowest(plate int) (geom.Vec, unit.Length)  { return r.extreme(plate, 1) }
func (r *Result) Highest(plate int) (geom.Vec, unit.Length) { return r.extreme(plate, -1) }

// extreme looks at the nodes on wood, and at the corners of the outline.
func (r *Result) extreme(plate int, sign float64) (geom.Vec, unit.Length) {
	g := r.s.grids[plate]
	var at geom.Vec
	most := math.Inf(-1)
	for _, c := range g.cells {
		if c.wooden < 0.5 {
			continue
		}
		for _, n := range c.node {
			if w := sign * r.st.u[3*r.s.place[g.first+n]]; w > most {
				most, at = w, geom.V(unit.Length(g.nodes[n].x), unit.Length(g.nodes[n].y))
			}
		}
	}
	for _, loop := range g.plate.Outline.Loops() {
		for _, p := range loop {
			if w := sign * float64(r.Deflection(plate, p)); w > most {
				most, at = w, p
			}
		}
	}
	return at, unit.Length(sign * most)
}
