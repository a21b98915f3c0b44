package geom

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// Slab describes a slab of wood between two level faces: an outline whose
// edges may be eased, lean or be natural, and cuts from either face.
type Slab struct {
	// Outline is the closed outline at the underside, edge by edge, in either
	// direction: every path starts where the one before it ended.
	Outline     []SlabEdge
	Bottom, Top unit.Length // heights
	Cuts        []SlabCut
}

// SlabEdge is one named edge of a slab. Its faces carry the name as Surface, a
// number behind it from the second crease or use on, and " arris" behind that
// on eased arrises.
type SlabEdge struct {
	Name string
	Path []Vec // at the underside, two points or more
	// Over makes the edge a natural or scribed one: the same number of points,
	// at the top face. Optional.
	Over []Vec
	// Lean is how far the top face stands out beyond the underside, square to
	// the edge; negative: recedes. Optional, not together with Over.
	Lean unit.Length
	// EaseTop and EaseUnder take the arrises off at 45 degrees. Optional.
	EaseTop, EaseUnder unit.Length
}

// CutFrom tells from which face a cut is made.
type CutFrom int

// The ways to cut into a slab.
const (
	CutFromTop CutFrom = iota
	CutFromUnder
	CutThrough
)

// SlabCut is a hole, pocket, groove or cut-out. Cuts may overlap each other
// and run out through upright, eased and evenly leaning edges; natural edges
// they must leave alone.
type SlabCut struct {
	Name   string
	Region Region
	From   CutFrom
	Depth  unit.Length // from its face; from the slab's thickness on it goes through
	// Mouth widens the cut towards the face that it starts from, the top face
	// if it goes through: a countersink, an eased rim. Foot does so at the
	// underside of a cut that is made CutThrough. Optional.
	Mouth, Foot Bevel
}

// Bevel is a slope that widens a cut by Width over the last Depth before a
// face. The zero Bevel is none.
type Bevel struct{ Width, Depth unit.Length }

// EdgesOf makes plain edges of the outline of a region in one piece without
// holes, named edge 1, edge 2 and so on counter-clockwise from its lowest left
// corner.
func EdgesOf(r Region) []SlabEdge {
	loops := r.Loops()
	if len(loops) != 1 {
		return nil
	}
	var out []SlabEdge
	for i, a := range loops[0] {
		out = append(out, SlabEdge{Name: fmt.Sprintf("edge %d", i+1), Path: []Vec{a, loops[0][(i+1)%len(loops[0])]}})
	}
	return out
}

// Solid builds the slab.
func (s Slab) Solid() Solid {
	body, err := s.blank()
	if err != nil {
		return fault(fmt.Errorf("slab: %w", err))
	}
	parts := []ingredient{body}
	for _, c := range s.Cuts {
		g, err := c.ingredient(body)
		if err != nil {
			return fault(fmt.Errorf("slab, %s: %w", quoted("cut", c.Name), err))
		}
		parts = append(parts, g)
	}
	return build(parts...)
}

func quoted(what, name string) string { return fmt.Sprintf("%s %q", what, name) }

// blank is the slab without its cuts.
func (s Slab) blank() (ingredient, error) {
	g := ingredient{name: "slab", up: "top", down: "underside"}
	var err error
	if g.z0, g.z1, err = heights(s.Bottom, s.Top); err != nil {
		return g, err
	}
	ring, err := s.ring(g.z1 - g.z0)
	if err != nil {
		return g, err
	}
	loop := make([]pt, len(ring))
	pts := make([]Vec, len(ring))
	over := make([]Vec, len(ring))
	for i, c := range ring {
		loop[i], pts[i], over[i] = c.p, c.p.vec(), c.over
	}
	if err := simple("underside", pts, loop); err != nil {
		return g, err
	}
	if area2(loop) < 0 {
		turnRound(ring)
		slices.Reverse(loop)
		slices.Reverse(over)
	}
	if err := simple("top face", over, nil); err != nil {
		return g, err
	}
	// All corners stay, also those in line: they may move apart at the top.
	g.region = newRegion([]piece{{canonical(loop)}})
	flanks := make([]flank, len(ring))
	for i, c := range ring {
		flanks[i] = flank{a: c.p, b: ring[(i+1)%len(ring)].p, lean: c.edge.Lean,
			top:   bevel{c.edge.EaseTop, micrometres(c.edge.EaseTop)},
			under: bevel{c.edge.EaseUnder, micrometres(c.edge.EaseUnder)}}
		if d := c.over.Sub(c.p.vec()); d != (Vec{}) {
			if g.drift == nil {
				g.drift = map[pt]Vec{}
			}
			g.drift[c.p] = d
		}
	}
	surfaces{}.name(flanks, func(i int) string { return ring[i].edge.Name })
	g.flanks = appendRing(nil, flanks)
	return g, nil
}

func (e *SlabEdge) check(thickness int64) error {
	switch {
	case len(e.Path) < 2:
		return errors.New("a path needs two points or more")
	case e.Over != nil && len(e.Over) != len(e.Path):
		return fmt.Errorf("%d points at the underside, but %d at the top face", len(e.Path), len(e.Over))
	case e.Over != nil && e.Lean != 0:
		return errors.New("both a lean and a course at the top face are given")
	case !finite(e.Lean, e.EaseTop, e.EaseUnder) || math.Abs(float64(e.Lean)) > 1000:
		return errors.New("its lean and arrises must be sizes that can be cut")
	case e.EaseTop < 0 || e.EaseUnder < 0:
		return errors.New("an arris cannot be eased by less than nothing")
	case micrometres(e.EaseTop+e.EaseUnder) > thickness:
		return fmt.Errorf("arrises of %.4g and %.4g mm are more than the slab is thick", float64(e.EaseTop), float64(e.EaseUnder))
	}
	return nil
}

// ingredient is the cut as part of a stack.
func (c SlabCut) ingredient(body ingredient) (ingredient, error) {
	g := ingredient{name: quoted("cut", c.Name), up: c.Name + " floor", down: c.Name + " floor",
		region: c.Region, cuts: true, z0: body.z0, z1: body.z1}
	if err := c.Region.Err(); err != nil {
		return g, err
	}
	if c.Region.Intersect(body.region).Empty() {
		return g, errors.New("it lies outside the slab")
	}
	through := c.From == CutThrough
	if !through {
		if !(c.Depth > 0) || math.IsInf(float64(c.Depth), 0) {
			return g, fmt.Errorf("a depth of %.4g mm cannot be cut", float64(c.Depth))
		}
		switch d := micrometres(min(c.Depth, length(body.z1-body.z0))); {
		case d == 0:
			return g, fmt.Errorf("a depth of %.4g mm is too little", float64(c.Depth))
		case c.From == CutFromTop:
			g.z0 = g.z1 - d
		default:
			g.z1 = g.z0 + d
		}
	}
	if !through && c.Foot != (Bevel{}) {
		return g, errors.New("only a cut that is made through has a foot")
	}
	mouth, foot, err := c.bevels(g.z1 - g.z0)
	if err != nil {
		return g, err
	}
	g.flanks = flanksOf(c.Region, c.Name)
	for i := range g.flanks {
		if c.From == CutFromUnder {
			g.flanks[i].under = mouth
		} else {
			g.flanks[i].top, g.flanks[i].under = mouth, foot
		}
	}
	return g, nil
}

// bevels turns the slopes of a cut into those of its flanks, which move out.
func (c SlabCut) bevels(depth int64) (mouth, foot bevel, err error) {
	for _, b := range [2]Bevel{c.Mouth, c.Foot} {
		if !finite(b.Width, b.Depth) || b.Width < 0 || b.Depth < 0 || (micrometres(b.Width) > 0) != (micrometres(b.Depth) > 0) {
			return mouth, foot, fmt.Errorf("a slope of %.4g by %.4g mm cannot be cut", float64(b.Width), float64(b.Depth))
		}
	}
	if micrometres(c.Mouth.Depth+c.Foot.Depth) > depth {
		return mouth, foot, fmt.Errorf("its slopes of %.4g and %.4g mm are deeper than the cut", float64(c.Mouth.Depth), float64(c.Foot.Depth))
	}
	return bevel{-c.Mouth.Width, micrometres(c.Mouth.Depth)}, bevel{-c.Foot.Width, micrometres(c.Foot.Depth)}, nil
}
