package check

import (
	"math"
	"sync"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// shape is a part made simple for measuring: a slab as one upright prism that
// holds it, everything else as it is. Slicing a slab with a natural edge takes
// longer than all rules together, and most distances do not need it.
type shape struct {
	solids []geom.Solid
	simple bool
	bounds geom.Box
}

// shapes remembers the shape of every part for all rules.
type shapes map[*model.Part]func() shape

func shapesOf(d *model.Design) shapes {
	out := shapes{}
	for _, p := range d.Parts {
		out[p] = sync.OnceValue(func() shape { return shapeOf(p) })
	}
	return out
}

func shapeOf(p *model.Part) shape {
	out := shape{bounds: p.Bounds()}
	if p.Slab == nil || len(p.Bodies) == 0 {
		for _, b := range p.Bodies {
			out.solids = append(out.solids, b.Solid)
		}
		return out
	}
	sp := p.Slab
	plan := sp.TopOutline().Union(sp.UnderOutline())
	for _, f := range sp.Features {
		if f.Kind == model.Through || f.Kind == model.CutOut {
			plan = plan.Minus(f.Outline)
		}
	}
	out.solids = []geom.Solid{geom.Prism(plan.Place(sp.Pose), out.bounds.Min.Z, out.bounds.Max.Z, p.ID)}
	out.simple = true
	return out
}

// gap is the least signed distance of two parts. It is taken from their simple
// shapes where these keep apart, upright against upright, and from the solids
// as they are where they meet or where a natural edge is what is nearest.
func (s shapes) gap(a, b *model.Part) (geom.Gap3, bool) {
	p, q := s[a](), s[b]()
	g, ok := least(p.solids, q.solids)
	if ok && (p.simple || q.simple) && (g.Distance < contact || onNatural(a, g.A) || onNatural(b, g.B)) {
		return least(solidsOf(a), solidsOf(b))
	}
	return g, ok
}

// gapTo is the same against something that is no part.
func (s shapes) gapTo(p *model.Part, box geom.Solid) (geom.Gap3, bool) {
	x := s[p]()
	g, ok := least(x.solids, []geom.Solid{box})
	if ok && x.simple && (g.Distance < contact || onNatural(p, g.A)) {
		return least(solidsOf(p), []geom.Solid{box})
	}
	return g, ok
}

func solidsOf(p *model.Part) []geom.Solid {
	var out []geom.Solid
	for _, b := range p.Bodies {
		out = append(out, b.Solid)
	}
	return out
}

// least is the least signed distance of any two of two sets of solids.
func least(as, bs []geom.Solid) (geom.Gap3, bool) {
	var best geom.Gap3
	found := false
	for _, x := range as {
		for _, y := range bs {
			if found && x.Bounds().Gap(y.Bounds()) > max(0, best.Distance) {
				continue
			}
			if g := geom.Clearance(x, y); g.Err == nil && (!found || g.Distance < best.Distance) {
				best, found = g, true
			}
		}
	}
	return best, found
}

// onNatural tells whether a place is on a natural edge of a slab, within the
// flattening of its curve.
func onNatural(p *model.Part, at geom.Vec3) bool {
	if p.Slab == nil {
		return false
	}
	v := p.Slab.Pose.Unplan(at.Flat())
	for i, e := range p.Slab.Edges {
		if len(e.Natural) == 0 {
			continue
		}
		top, under := p.Slab.Course(i)
		if min(distanceToPath(v, top), distanceToPath(v, under)) < 0.5 {
			return true
		}
	}
	return false
}

// farthest stands for "no bound yet".
const farthest unit.Length = math.MaxFloat32
