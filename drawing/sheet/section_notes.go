package sheet

import (
	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// sitting says for everybody at a seat whether the legs are free.
func (m *maker) sitting(f *flow, c cutting) {
	if c.seat == nil {
		return
	}
	var say []string
	t := grid{heads: m.heads("who sits there", "what", "needs", "there is", "to spare"), right: []bool{false, false, true, true, true}}
	for _, z := range c.zones {
		x, ok := m.legFinding(z)
		if !ok || z.Kind == model.FootZone && x.Status == find.Pass {
			continue
		}
		row := []string{z.Person, m.pass(string(z.Kind)), m.length(z.Height), m.say("free // room"), ""}
		if x.Measured != nil {
			row[3] = m.length(unit.Length(x.Measured.Value))
		}
		if x.Margin != nil {
			row[4] = m.length(unit.Length(x.Margin.Value))
		}
		t.rows = append(t.rows, row)
		t.bold = append(t.bold, x.Status.Severity() > find.Warn.Severity())
		if z.Kind == model.ThighZone {
			say = append(say, m.legSentence(z, x, row[4]))
		}
	}
	for _, s := range m.sitters(c) {
		above := c.slab.Slab.Top - s.elbow
		say = append(say, m.elbowSentence(above, s.seat-s.floor))
	}
	if len(t.rows) == 0 {
		return
	}
	before := len(f.items)
	f.large(0.8*drawing.Large, say...)
	for _, z := range c.zones {
		if m.legsFail(c.zones, z.Person) {
			copy(f.items[before:], inRed(f.items[before:]))
			break
		}
	}
	f.grid("sitting", "", t)
	f.text("sitting-notes", "", m.say("Heights above the floor under the seat, in shoes; body sizes are estimates from stature and mass, the figure is a hint. Measure the thigh's top and the elbow on the person, seated, before the wood is ordered."))
}

// elbowSentence says where the elbows are and how high the seat is.
func (m *maker) elbowSentence(above, seat unit.Length) string {
	if above >= 0 {
		return m.sayf("Elbow %s below the surface, seat about %s high.", m.named(m.about(above)), m.named(m.about(seat)))
	}
	return m.sayf("Elbow %s above the surface, seat about %s high.", m.named(m.about(-above)), m.named(m.about(seat)))
}

// legSentence is the answer to whether the legs go under.
func (m *maker) legSentence(z model.Zone, x find.Finding, spare string) string {
	switch x.Status {
	case find.Fail:
		return m.sayf("The legs of %s are NOT free: %s", z.Person, m.found(x.Why))
	case find.Unknown, find.Broken:
		return m.sayf("Not known whether the legs of %s are free: %s", z.Person, m.found(x.Why))
	}
	if x.Margin == nil {
		return m.sayf("The legs of %s are free.", z.Person)
	}
	return m.sayf("The legs of %s are free, with %s to spare over the thighs.", z.Person, m.named(spare))
}
