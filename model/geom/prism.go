package geom

import (
	"errors"
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Prism is a region between two heights. Its walls are called label, label 2,
// label 3 ..., a new one at every corner sharper than 50 degrees; its level
// faces top and underside.
func Prism(r Region, z0, z1 unit.Length, label string) Solid {
	return Stacked(label, Layer{r, z0, z1})
}

// Cylinder is an upright round bar; its outline leaves the circle by at most
// chord.
func Cylinder(centre Vec, radius, z0, z1, chord unit.Length, label string) Solid {
	return Prism(Circle(centre, radius, chord), z0, z1, label)
}

// Stacked is the union of several layers, which may overlap and stand on one
// another.
func Stacked(label string, layers ...Layer) Solid {
	var parts []ingredient
	for i, l := range layers {
		g := ingredient{name: label, up: "top", down: "underside", region: l.Region}
		var err error
		if g.z0, g.z1, err = heights(l.Z0, l.Z1); err == nil {
			err = l.Region.Err()
		}
		if err == nil && l.Region.Empty() {
			err = errors.New("the region is empty")
		}
		if err != nil {
			return fault(fmt.Errorf("%s, layer %d: %w", label, i+1, err))
		}
		g.flanks = flanksOf(l.Region, label)
		parts = append(parts, g)
	}
	if len(parts) == 0 {
		return fault(fmt.Errorf("%s: a solid without layers", label))
	}
	return build(parts...)
}

// heights rounds two heights to the grid and makes sure they are in order.
func heights(z0, z1 unit.Length) (int64, int64, error) {
	if !finite(z0, z1) || math.Abs(float64(z0)) > limit/perMM || math.Abs(float64(z1)) > limit/perMM {
		return 0, 0, fmt.Errorf("heights %.6g to %.6g mm cannot be built", float64(z0), float64(z1))
	}
	a, b := micrometres(z0), micrometres(z1)
	if a >= b {
		return 0, 0, fmt.Errorf("from height %.6g to %.6g mm nothing is left", float64(z0), float64(z1))
	}
	return a, b, nil
}

func micrometres(l unit.Length) int64 { return int64(math.Round(float64(l) * perMM)) }

func finite(values ...unit.Length) bool {
	for _, v := range values {
		if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
			return false
		}
	}
	return true
}

// crease is the angle from which two neighbouring sides of an outline are two
// surfaces with an edge between them, not one curved surface. It lies above
// the 45 degrees at the corners of the coarsest circle.
const crease = 50 * unit.Degree

// flanksOf makes the flanks of a region's outlines.
func flanksOf(r Region, label string) []flank {
	var out []flank
	namer := surfaces{}
	for _, pc := range r.pieces {
		for _, loop := range pc {
			ring := make([]flank, len(loop))
			for i, p := range loop {
				ring[i] = flank{a: p, b: loop[(i+1)%len(loop)]}
			}
			namer.name(ring, func(int) string { return label })
			out = appendRing(out, ring)
		}
	}
	return out
}

// appendRing adds the flanks of one loop and makes them neighbours.
func appendRing(out, ring []flank) []flank {
	base, n := len(out), len(ring)
	for i := range ring {
		ring[i].prev, ring[i].next = base+(i+n-1)%n, base+(i+1)%n
	}
	return append(out, ring...)
}

// surfaces numbers the surfaces that have the same label.
type surfaces map[string]int

// name gives the flanks of one loop their surfaces: a new one wherever the
// label changes or the outline has a crease.
func (count surfaces) name(ring []flank, label func(i int) string) {
	n := len(ring)
	turn := func(i int) unit.Angle { // before flank i
		e, f := ring[(i+n-1)%n], ring[i]
		u, v := e.b.vec().Sub(e.a.vec()), f.b.vec().Sub(f.a.vec())
		return unit.Angle(math.Abs(math.Atan2(u.Cross(v), u.Dot(v))))
	}
	breaks := func(i int) bool { return label(i) != label((i+n-1)%n) || turn(i) > crease }
	start := 0
	for i := range ring {
		if breaks(i) {
			start = i
			break
		}
	}
	for i := 0; i < n; {
		first := (start + i) % n
		j := i + 1
		bent := false
		for ; j < n && !breaks((start+j)%n); j++ {
			bent = bent || turn((start+j)%n) > 1e-6
		}
		l := label(first)
		count[l]++
		surface := l
		if count[l] > 1 {
			surface = fmt.Sprintf("%s %d", l, count[l])
		}
		for ; i < j; i++ {
			f := &ring[(start+i)%n]
			f.surface, f.curved = surface, bent
		}
	}
}
