package hold

import (
	"slices"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// thicker goes by whole millimetres.
func (s seeker) thicker() (Remedy, bool, bool) {
	n, w, ok := s.least(int(s.most), func(n int) change { return change{thicker: unit.Length(n)} })
	return Remedy{Thick: s.part.Slab.Thickness + unit.Length(n), With: w}, true, ok
}

// tighter finds the loosest joint that does it.
func (s seeker) tighter() (Remedy, bool, bool) {
	kinds := tighter(s.design, s.part.ID)
	for _, kind := range kinds {
		c := change{joint: kind}
		if !s.seems(c) {
			continue
		}
		if w, ok := s.does(c); ok {
			return Remedy{Joint: kind, With: w}, true, true
		}
	}
	return Remedy{}, len(kinds) > 0, false
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
	for _, section := range sections {
		c := change{section: section.Name}
		if !s.seems(c) {
			continue
		}
		if w, ok := s.does(c); ok {
			return Remedy{Section: section.Name, With: w}, true, true
		}
	}
	return Remedy{}, len(sections) > 0, false
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
