package sheet

import "slabwright/model"

// jointText says how two slabs are joined.
func (m *maker) jointText(j model.Joint) string {
	a, b := m.pass(j.Slab), m.pass(j.To)
	switch j.Kind {
	case model.DowelJoint:
		return m.sayf("Joint of %s and %s: %d dowels Ø%s x %s, glued into %s only.", a, b, len(j.Places), m.length(j.Dia), m.length(j.Length), b)
	case model.PlateJoint:
		n, _ := j.PlateScrews()
		return m.sayf("Joint of %s and %s: %d steel plates %s x %s x %s from below, %d screws.", a, b, len(j.Places), m.length(j.Length), m.length(model.PlateWide), m.length(j.Dia), n)
	case model.GluedJoint:
		return m.sayf("Joint of %s and %s: glued, both are one slab.", a, b)
	}
	return m.sayf("Joint of %s and %s: open, nothing joins them.", a, b)
}
