package hold

import (
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// variant is a slab as drawn, or with something changed to see whether it
// helps.
type variant struct {
	class    stock.Class
	thicker  unit.Length
	section  *stock.AngleSection // instead of those drawn
	prop     *geom.Vec           // one more support, in the slab's axes
	joint    model.JointKind     // instead of that of its joints; "": as drawn
	post     string              // that stands elsewhere, by way
	way      geom.Vec
	work     []model.Feature // instead of its own; nil: as drawn
	extra    []*model.Part   // that carry it too
	moreRods int
}

func (v variant) sectionOf(a *model.AnglePart) stock.AngleSection {
	if v.section != nil {
		return *v.section
	}
	return a.Section
}

func (v variant) featuresOf(p *model.Part) []model.Feature {
	if v.work != nil {
		return v.work
	}
	return p.Slab.Features
}
