package survey

import (
	"math"
	"slices"

	"slabwright/model/geom"
)

// trimmed is a network adjusted without some of its readings.
type trimmed struct {
	*Result
	of []int // number in the whole network of each of its readings
}

func (r *Result) whole() trimmed {
	t := trimmed{Result: r}
	for i := range r.Readings {
		t.of = append(t.of, i)
	}
	return t
}

// renumber turns numbers of its readings into those of the whole network.
func (t trimmed) renumber(list []int) {
	for k, i := range list {
		list[k] = t.of[i]
	}
}

// loudest is the reading with the largest residual in standard deviations of
// it, as number in the whole network; -1 when none is above the critical value.
func (t trimmed) loudest() int {
	worst, at := Critical, -1
	for i, o := range t.Readings {
		if w := math.Abs(o.W); w > worst*(1+1e-6) {
			worst, at = w, t.of[i]
		}
	}
	return at
}

// peaceful says whether nothing contradicts in a network any more.
func (t trimmed) peaceful() bool {
	return t.loudest() < 0 && (t.DOF == 0 || t.VTPV <= hopeless(t.DOF))
}

// ignored is the standard deviation of a bow that is left out: it stays as an
// unknown, since the other readings may tell it.
const ignored = 1e4 // mm

// With adjusts again with more readings, from the shape of this result on. They
// come last among the readings of the new result.
func (r *Result) With(more ...Reading) (*Result, error) {
	n := r.network
	n.Readings = append(slices.Clone(n.Readings), more...)
	n.Start = r.places()
	next, _, err := adjust(n)
	return next, err
}

// places are the adjusted coordinates, to start from.
func (r *Result) places() map[Point]geom.Vec {
	out := map[Point]geom.Vec{}
	for _, p := range r.Points {
		out[p.Name] = p.At
	}
	return out
}

// without adjusts again, leaving out some readings, from the shape of another
// result on. When that leads nowhere it starts afresh, if it may: a gross slip
// can have bent the shape so far that it leads astray.
func (r *Result) without(skip []int, from *Result, afresh bool) (trimmed, error) {
	if len(skip) == 0 {
		return r.whole(), nil
	}
	n, t, kept := r.network, trimmed{}, 0
	n.Readings = nil
	for i, rd := range r.network.Readings {
		if slices.Contains(skip, i) {
			if rd.Kind != Bow {
				continue
			}
			rd.SD = ignored
			kept++
		}
		n.Readings, t.of = append(n.Readings, rd), append(t.of, i)
	}
	n.Start = from.places()
	near, _, err := adjust(n)
	if afresh && (err != nil || near.DOF > kept && near.VTPV > hopeless(near.DOF-kept)) {
		n.Start = r.network.Start
		if far, _, e := adjust(n); e == nil && (err != nil || far.VTPV < near.VTPV) {
			near, err = far, nil
		}
	}
	if err != nil {
		return t, err
	}
	near.DOF -= kept
	near.summarise()
	t.Result = near
	return t, nil
}
