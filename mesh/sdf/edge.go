// Package sdf gives natural edges their living shape. The bark side between the
// two arrises of a slab is defined as an implicit body, bulging and gently
// uneven, and sampled as finely as a tolerance asks; everything else of the
// slab stays exactly as it is.
package sdf

import (
	"fmt"
	"strings"

	"slabwright/mesh"
	"slabwright/model/unit"
)

// Edge is one natural edge of a slab that lies flat: both arrises are level.
type Edge struct {
	// Surface is the name of the edge: of all flat faces between its arrises
	// that are called so, or so with a number behind. The new surface gets it.
	Surface string
	// Bulge is how far the edge stands out before its flat faces at most. It
	// becomes less in hollows too tight for it and nothing at both ends.
	Bulge unit.Length
	// Grain is the length of one wave of the unevenness; 0 stands for 60 mm.
	Grain unit.Length
	// Tolerance is how far the middle of any new triangle or side may be off
	// the body.
	Tolerance unit.Length
}

// usualGrain is a wave that reads as wood at arm's length; a matter of taste.
const usualGrain = 60 * unit.MM

// Shape replaces the flat faces of the edge by the surface of its body. The
// arrises and the end edges stay where they are; flat faces along them get
// additional vertices on straight edges where the surface needs them. A closed
// mesh stays closed. Do it in the part's own axes: the unevenness follows the
// place, so that the same slab looks the same wherever it lies.
//
// The error says which input is unfit: faces that are not one strip between two
// level arrises with the same number of corners, arrises that fold, or a
// tolerance too fine for the number of samples allowed.
func Shape(m mesh.Mesh, e Edge) (mesh.Mesh, error) {
	if e.Grain == 0 {
		e.Grain = usualGrain
	}
	out, err := shape(m, e)
	if err != nil {
		return mesh.Mesh{}, fmt.Errorf("natural edge %q: %w", e.Surface, err)
	}
	return out, nil
}

func shape(m mesh.Mesh, e Edge) (mesh.Mesh, error) {
	if err := e.check(); err != nil {
		return mesh.Mesh{}, err
	}
	h, err := cutOut(m, e)
	if err != nil {
		return mesh.Mesh{}, err
	}
	b, err := newBody(e, h.places(h.lower), h.places(h.upper))
	if err != nil {
		return mesh.Mesh{}, err
	}
	n, err := netFor(b, e.Tolerance)
	if err != nil {
		return mesh.Mesh{}, err
	}
	return h.fill(n), nil
}

// check finds sizes no body can be built with. Comparisons are written so that
// a NaN fails them.
func (e Edge) check() error {
	for _, l := range [...]struct {
		name      string
		v, lo, hi unit.Length
	}{
		{"bulge", e.Bulge, 0, 100},
		{"grain", e.Grain, 5, 10 * unit.M},
		{"tolerance", e.Tolerance, 0.01, 10},
	} {
		if !(l.v >= l.lo && l.v <= l.hi) {
			return fmt.Errorf("%s %g mm is not within %g and %g mm", l.name, float64(l.v), float64(l.lo), float64(l.hi))
		}
	}
	return nil
}

// owns tells whether a facet is one of those to be replaced.
func (e Edge) owns(f mesh.Facet) bool {
	rest, ok := strings.CutPrefix(f.Surface, e.Surface)
	if !ok || rest == "" {
		return ok
	}
	number, ok := strings.CutPrefix(rest, " ")
	return ok && number != "" && strings.Trim(number, "0123456789") == ""
}
