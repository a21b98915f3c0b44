package hold

import (
	"slices"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// thicker goes by whole millimetres. Screws go as deep into the wood as drawn: longer
// ones hold it down a little more.
func (s seeker) thicker() (Remedy, bool, bool) {
	n, w, ok := s.least(int(s.wanted.Thicker), func(n int) change { return change{thicker: unit.Length(n)} })
	return Remedy{Thick: s.part.Slab.Thickness + unit.Length(n), With: w}, true, ok
}

// tighter finds the loosest joint that does it.
func (s seeker) tighter() (Remedy, bool, bool) {
	kinds := tighter(s.design, s.part.ID)
	n, w, ok := s.least(len(kinds), func(n int) change { return change{joint: kinds[n-1]} })
	if !ok {
		return Remedy{}, len(kinds) > 0, false
	}
	return Remedy{Joint: kinds[n-1], With: w}, true, true
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

// largerAngles finds the smallest section that does it.
func (s seeker) largerAngles() (Remedy, bool, bool) {
	sections := largerAngles(s.design, s.part.ID)
	n, w, ok := s.least(len(sections), func(n int) change { return change{section: sections[n-1].Name} })
	if !ok {
		return Remedy{}, len(sections) > 0, false
	}
	return Remedy{Section: sections[n-1].Name, With: w}, true, true
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
