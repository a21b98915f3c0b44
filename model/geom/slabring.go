package geom

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// ringCorner is a corner of the outline with the edge that starts there.
type ringCorner struct {
	p    pt
	over Vec // place at the top face
	edge *SlabEdge
}

// ring strings the edges together.
func (s Slab) ring(thickness int64) ([]ringCorner, error) {
	var ring []ringCorner
	for i := range s.Outline {
		e := &s.Outline[i]
		if err := e.check(thickness); err != nil {
			return nil, fmt.Errorf("%s: %w", quoted("edge", e.Name), err)
		}
		last := &s.Outline[(i+len(s.Outline)-1)%len(s.Outline)]
		for j, v := range e.Path {
			p, err := snap(v)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", quoted("edge", e.Name), err)
			}
			c := ringCorner{p: p, over: p.vec(), edge: e}
			if e.Over != nil {
				o, err := snap(e.Over[j])
				if err != nil {
					return nil, fmt.Errorf("%s: %w", quoted("edge", e.Name), err)
				}
				c.over = o.vec()
			}
			if j == 0 {
				if err := meets(last, e, &c); err != nil {
					return nil, err
				}
			}
			if j == len(e.Path)-1 {
				break // the next edge starts there
			}
			ring = append(ring, c)
		}
	}
	if len(ring) < 3 {
		return nil, errors.New("an outline needs three corners or more")
	}
	return slices.CompactFunc(ring, func(a, b ringCorner) bool { return a.p == b.p && a.over == b.over }), nil
}

// meets makes sure that an edge starts where the last one ended, at both
// faces; the place at the top face is that of the natural one of the two.
func meets(last, e *SlabEdge, c *ringCorner) error {
	if len(last.Path) == 0 {
		return fmt.Errorf("%s has no path", quoted("edge", last.Name))
	}
	end, err := snap(last.Path[len(last.Path)-1])
	if err != nil {
		return fmt.Errorf("%s: %w", quoted("edge", last.Name), err)
	}
	if end != c.p {
		return fmt.Errorf("edge %q starts at (%.3f, %.3f), but %q before it ends at (%.3f, %.3f)",
			e.Name, c.p.vec().X, c.p.vec().Y, last.Name, end.vec().X, end.vec().Y)
	}
	if n := len(last.Over); n > 0 && n == len(last.Path) {
		over, err := snap(last.Over[n-1])
		if err != nil {
			return fmt.Errorf("%s: %w", quoted("edge", last.Name), err)
		}
		if e.Over != nil && over.vec() != c.over {
			return fmt.Errorf("natural edges %q and %q do not meet at the top face", last.Name, e.Name)
		}
		c.over = over.vec()
	}
	return nil
}

// simple makes sure that an outline does not cross or touch itself and encloses
// an area.
func simple(where string, pts []Vec, loop []pt) error {
	for i, v := range pts {
		if v == pts[(i+1)%len(pts)] {
			return fmt.Errorf("two corners of the outline fall together at (%.3f, %.3f) at the %s", v.X, v.Y, where)
		}
	}
	r := Polygon(pts...)
	if err := r.Err(); err != nil {
		return err
	}
	var signed float64
	for i, a := range pts {
		signed += a.Cross(pts[(i+1)%len(pts)]) / 2
	}
	if loop != nil {
		signed = float64(area2(loop)) / (2 * perMM * perMM)
	}
	if r.Empty() {
		return fmt.Errorf("the outline at the %s encloses nothing", where)
	}
	if len(r.pieces) != 1 || len(r.pieces[0]) != 1 || math.Abs(math.Abs(signed)-float64(r.Area())) > 1e-6*math.Abs(signed)+1e-3 {
		return fmt.Errorf("the outline crosses or touches itself at the %s", where)
	}
	return nil
}

// turnRound reverses a ring; each corner then starts the edge that ended there.
func turnRound(ring []ringCorner) {
	slices.Reverse(ring)
	first := ring[0].edge
	for i := range ring {
		if i+1 < len(ring) {
			ring[i].edge = ring[i+1].edge
		} else {
			ring[i].edge = first
		}
	}
}
