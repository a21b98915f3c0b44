package hold

import (
	"errors"
	"math"

	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// sweepStep is the largest distance between two places of the person.
const sweepStep unit.Length = 140

// places are where a person is put: all over the slab, and along its edges as
// near as the feet stand on it whole.
func places(outline geom.Region) []geom.Vec {
	lo, hi := outline.Bounds()
	var out []geom.Vec
	for _, x := range steps(lo.X+patch/2, hi.X-patch/2) {
		for _, span := range outline.Inside(geom.V(x, lo.Y), geom.V(x, hi.Y)) {
			y0, y1 := lo.Y+(hi.Y-lo.Y)*unit.Length(span[0]), lo.Y+(hi.Y-lo.Y)*unit.Length(span[1])
			if y1-y0 < patch {
				continue
			}
			for _, y := range steps(y0+patch/2, y1-patch/2) {
				out = append(out, geom.V(x, y))
			}
		}
	}
	return out
}

func steps(low, high unit.Length) []unit.Length {
	if high <= low {
		return []unit.Length{(low + high) / 2}
	}
	n := math.Ceil(float64((high - low) / sweepStep))
	var out []unit.Length
	for k := 0.0; k <= n; k++ {
		out = append(out, low+(high-low)*unit.Length(k/n))
	}
	return out
}

// worst keeps the place where something was largest.
type worst struct {
	at    geom.Vec
	value float64
	found bool
}

func (w *worst) see(at geom.Vec, v float64) {
	if !w.found || v > w.value+1e-9 {
		*w = worst{at, v, true}
	}
}

// found is what a sweep brings home: the worst places for each thing.
type found struct {
	sinks, lifts, along, across, press, joint worst
	carriers                                  []worst // by support: largest force within an anchor's pitch
	tips                                      bool
	tipsAt                                    geom.Vec
	places                                    int
}

// window is the length of a carrier over which a force counts as one: about the
// distance of two anchors.
const window unit.Length = 300

// sweep puts the person on every place, on a coarse mesh.
func (b *bench) sweep(s *plate.Solver, like *plate.Result) (found, error) {
	f := found{carriers: make([]worst, len(b.supports))}
	r, rests := b.recipe(DesignPerson), b.bearings()
	at := places(b.assembly.Plates[0].Outline)
	cases := make([]plate.Case, len(at))
	for i := range at {
		cases[i] = b.loadsOf(s, r, at[i])
	}
	f.places = len(at)
	err := s.SolveEach(cases, like, func(i int, res *plate.Result, err error) error {
		if errors.Is(err, plate.ErrTips) {
			if far := distance(rests, at[i]); !f.tips || far > distance(rests, f.tipsAt) {
				f.tips, f.tipsAt = true, at[i]
			}
			return nil
		}
		if err == nil {
			f.look(b, at[i], res)
		}
		return err
	})
	return f, err
}

func (f *found) look(b *bench, at geom.Vec, res *plate.Result) {
	var down, up float64
	samples := res.Samples(0)
	for _, s := range samples {
		down, up = max(down, float64(s.Deflection)), max(up, -float64(s.Deflection))
	}
	f.sinks.see(at, down)
	f.lifts.see(at, up)
	along, across := extremes(samples)
	f.along.see(at, along.value)
	f.across.see(at, across.value)
	if strain, any := b.strain(res); any {
		f.joint.see(at, strain)
	}
	var most float64
	for i, sup := range b.supports {
		if sup.beside {
			continue
		}
		run, press := readRun(sup, res)
		most = max(most, press.value)
		f.carriers[i].see(at, run.within(window))
	}
	f.press.see(at, most)
}

// within is the largest force on any length of a carrier, N.
func (r Run) within(length unit.Length) float64 {
	var most float64
	for i, from := range r.Line {
		var sum float64
		for _, l := range r.Line[i:] {
			if l.Along-from.Along > length {
				break
			}
			sum += l.Force
		}
		most = max(most, sum)
	}
	return most
}
