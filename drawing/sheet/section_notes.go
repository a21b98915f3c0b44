package sheet

import (
	"fmt"
	"math"

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
	t := grid{heads: []string{"who sits there", "what", "needs", "there is", "to spare"}, right: []bool{false, false, true, true, true}}
	for _, z := range c.zones {
		x, ok := m.legFinding(z)
		if !ok || z.Kind == model.FootZone && x.Status == find.Pass {
			continue
		}
		row := []string{z.Person, string(z.Kind), m.length(z.Height), "free", ""}
		if x.Measured != nil {
			row[3] = m.length(unit.Length(x.Measured.Value))
		}
		if x.Margin != nil {
			row[4] = m.length(unit.Length(x.Margin.Value))
		}
		t.rows = append(t.rows, row)
		t.bold = append(t.bold, x.Status.Severity() > find.Warn.Severity())
		if z.Kind == model.ThighZone {
			say = append(say, legSentence(z, x, row[4]))
		}
	}
	for _, s := range m.sitters(c) {
		above := c.slab.Slab.Top - s.elbow
		say = append(say, fmt.Sprintf("Elbow %.0f mm %s the surface, seat about %.0f mm high.", math.Abs(float64(above)), map[bool]string{true: "below", false: "above"}[above >= 0], float64(s.seat-s.floor)))
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
	f.text("sitting-notes", "", "Heights above the floor under the seat, in shoes; body sizes are estimates from stature and mass, the figure is a hint. Measure the thigh's top and the elbow on the person, seated, before the wood is ordered.")
}

// legSentence is the answer to whether the legs go under.
func legSentence(z model.Zone, x find.Finding, spare string) string {
	switch x.Status {
	case find.Fail:
		return "The legs of " + z.Person + " are NOT free: " + x.Why
	case find.Unknown, find.Broken:
		return "Not known whether the legs of " + z.Person + " are free: " + x.Why
	}
	if x.Margin == nil {
		return "The legs of " + z.Person + " are free."
	}
	return "The legs of " + z.Person + " are free, with " + spare + " mm to spare over the thighs."
}
