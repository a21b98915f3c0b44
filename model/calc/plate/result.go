package plate

import (
	"errors"
	"math"

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
	f := make([]float64, s.size)
	s.weight(f, c.Weight)
	for _, l := range c.Loads {
		if !s.push(f, l) {
			return nil, errors.New("a load lies beside its plate")
		}
	}
	var guess []bool
	if like != nil {
		guess = like.st.on
	}
	st, err := s.settle(f, guess)
	if err != nil {
		return nil, err
	}
	return &Result{s, st}, nil
}

// Settle makes the state of a result the reference of the solver: load cases in
// which nearly the same links carry are then solved sooner.
func (s *Solver) Settle(r *Result) error {
	same := true
	for i := range s.links {
		same = same && s.links[i].ref == r.st.on[i]
		s.links[i].ref = r.st.on[i]
	}
	if same {
		return nil
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
	g := r.s.grids[plate]
	out := make([]Sample, 0, len(g.cells))
	for i := range g.cells {
		c := &g.cells[i]
		if c.wooden < 0.3 {
			continue
		}
		u := r.s.local(g, c, r.st.u)
		var w float64
		for k, f := range c.deflection(c.centre) {
			w += f * u[k]
		}
		out = append(out, Sample{
			At:         geom.V(unit.Length(c.centre.x), unit.Length(c.centre.y)),
			Deflection: unit.Length(w),
			Moment:     toGrain(c.momentAt(&u, c.centre), g.plate.Grain),
			Thick:      unit.Length(c.thin),
		})
	}
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
