package hold

import (
	"slices"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Remedy is one change to a slab with which it holds, found by computing it.
type Remedy struct {
	Thick   unit.Length     // of the slab, 0: as drawn
	Section string          // of all its angles, "": as drawn
	Joint   model.JointKind // of all its joints, "": as drawn
	Prop    *geom.Vec       // one more firm support, from the left end and the back edge; nil: none
	With    Slab            // the slab with that change
}

// A slab is made thicker by steps.
const (
	thickStep unit.Length = 5
	mostSteps             = 8
)

// Remedies looks for the least changes with which a slab satisfies ok: a
// thicker slab, a tighter joint with its neighbour, larger angles, a prop under the place where it sinks most. It
// computes them on a coarse mesh.
func Remedies(d *model.Design, j model.Job, part string, ok func(Slab) bool) []Remedy {
	p := d.Part(part)
	try := func(c change) (Slab, bool) {
		s := tried(d, j, part, c)
		return s, s.Trouble == "" && ok(s)
	}
	var out []Remedy
	if more, s, found := leastThicker(try); found {
		out = append(out, Remedy{Thick: p.Slab.Thickness + more, With: s})
	}
	for _, kind := range tighter(d, part) {
		if s, good := try(change{joint: kind}); good {
			out = append(out, Remedy{Joint: kind, With: s})
			break
		}
	}
	for _, section := range largerAngles(d, part) {
		if s, good := try(change{section: section.Name}); good {
			out = append(out, Remedy{Section: section.Name, With: s})
			break
		}
	}
	if drawn, ok := Of(d, j).Of(part); ok && drawn.Trouble == "" {
		at := drawn.lowestOwn
		if s, good := try(change{propped: true, prop: at}); good {
			from := geom.V(at.X, -at.Y)
			out = append(out, Remedy{Prop: &from, With: s})
		}
	}
	return out
}

// leastThicker halves its way to the least step that does it.
func leastThicker(try func(change) (Slab, bool)) (unit.Length, Slab, bool) {
	low, high := 0, mostSteps
	best, good := try(change{thicker: thickStep * unit.Length(high)})
	if !good {
		return 0, best, false
	}
	for high-low > 1 {
		mid := (low + high) / 2
		if s, good := try(change{thicker: thickStep * unit.Length(mid)}); good {
			high, best = mid, s
		} else {
			low = mid
		}
	}
	return thickStep * unit.Length(high), best, true
}

// largerAngles are the sections above the largest one under the slab; none for
// a slab without angles.
func largerAngles(d *model.Design, part string) []stock.AngleSection {
	var now stock.AngleSection
	for _, p := range d.Parts {
		if p.Angle != nil && p.Angle.Under == part && p.Angle.Section.Area > now.Area {
			now = p.Angle.Section
		}
	}
	var out []stock.AngleSection
	for _, s := range stock.Angles() {
		if now.Area > 0 && s.Leg >= now.Leg && s.Thickness >= now.Thickness && s.Area > now.Area && len(out) < 3 {
			out = append(out, s)
		}
	}
	return out
}

// tighter are the kinds above the loosest joint of a slab; none for a slab that
// meets no other. Slabs are not glued where the grain of one crosses that of the
// other, nor over a gap.
func tighter(d *model.Design, part string) []model.JointKind {
	loosest, glued := len(model.JointKinds), true
	for _, j := range d.Joints {
		if j.Slab != part && j.To != part {
			continue
		}
		loosest = min(loosest, slices.Index(model.JointKinds, j.Kind)+1)
		glued = glued && !d.Crossed(j) && d.Part(j.Slab).Slab.Edges[j.Edge].Gap <= model.Closed
	}
	return slices.DeleteFunc(slices.Clone(model.JointKinds[loosest:]), func(k model.JointKind) bool { return k == model.GluedJoint && !glued })
}

// change is one way to change a slab.
type change struct {
	joint   model.JointKind
	thicker unit.Length
	section string
	propped bool
	prop    geom.Vec
}

// tried is a slab with a change, computed on a coarse mesh, once.
func tried(d *model.Design, j model.Job, part string, c change) Slab {
	loads, _ := Filled(j)
	type key struct {
		loads memoKey
		part  string
		change
	}
	return d.Once(key{keyOf(j, loads), part, c}, func() any {
		b := newBench(d, d.Part(part), loads, creep(j, loads))
		b.quick, b.variant.thicker, b.variant.joint = true, c.thicker, c.joint
		if s, err := stock.Angle(c.section); err == nil {
			b.variant.section = &s
		}
		drawn, ok := Of(d, j).Of(part)
		b.movedTop, b.movedOver = drawn.MovedTop, drawn.MovedOver
		if c.propped {
			b.variant.prop = &c.prop
		} else if ok && drawn.Trouble == "" {
			b.known = &drawn.found // a thicker slab is worst where it was
		}
		return b.slab()
	}).(Slab)
}

// Propped is a slab with one more firm support at a place in its own axes,
// computed on a coarse mesh.
func Propped(d *model.Design, j model.Job, part string, at geom.Vec) Slab {
	return tried(d, j, part, change{propped: true, prop: at})
}
