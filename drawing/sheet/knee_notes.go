package sheet

import (
	"strings"

	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// notes say what the tables rest on.
func (k kneeSpace) notes(f *flow) {
	m := k.m
	say := []string{
		m.say("Measures of the body are estimates from stature, sex and mass of people measured barefoot and erect; an own measure takes the place of an estimate. Measure thigh, elbow and knee on the person, seated, before the wood is ordered."),
		m.sayf("The chair moves by %s and turns by 30° to both sides about its post; the belly is at the front edge. Armrests, cushions, bags and what stands on the floor were not looked at.", m.named(m.length(sit.Sideways))),
	}
	if !k.s.Told {
		say = append(say, m.say("Nobody is described: room is reckoned for the largest 5 in 100, reach for the smallest 5 in 100."))
	}
	f.text("knee-notes", m.say("Notes"), say...)
}

func (k kneeSpace) nearTable(f *flow) {
	m := k.m
	t := grid{heads: m.heads("mark // letter", "near the legs", "nearest to", "distance"), right: []bool{false, false, false, true}}
	for i, x := range k.s.Things {
		d := m.about(x.Distance)
		if x.Distance < 0 {
			d = m.sayf("%s INTO IT", m.about(-x.Distance))
		}
		t.rows = append(t.rows, []string{letter(i), m.pass(x.Name), m.pass(string(x.Box)), d})
		t.bold = append(t.bold, x.Distance < 0)
	}
	if len(t.rows) > 0 {
		f.long("knee-near", m.sayf("Within %s of the legs, straight or turned", m.named(m.length(sit.Near))), t)
	}
}

// judged are the rules whose findings belong on the sheet, and how they are
// called there.
func (m *maker) judged(x find.Finding) (string, bool) {
	switch x.Rule {
	case "leg-room":
		if strings.HasPrefix(x.Title, "Room to stretch") {
			return m.say("depth for the toes"), true
		}
		return m.say("height over the legs"), true
	case "leg-width":
		return m.say("free width"), true
	case "build-up":
		return m.say("slab and steel at the front"), true
	case "chair-room":
		return m.say("nearest thing, chair turned"), true
	case "elbow-height":
		return m.say("surface above the elbows"), true
	case "head-room":
		return m.say("edge above, in from the front"), true
	case "reach":
		return m.say("grip, in from the front"), true
	}
	return "", false
}

func (k kneeSpace) roomTable(f *flow) {
	m := k.m
	t := grid{heads: m.heads("what", "where // of a check", "needs", "there is", "to spare"), right: []bool{false, false, true, true, true}}
	for _, x := range m.b.Findings {
		label, ok := m.judged(x)
		if !ok || !strings.Contains(x.Title, k.s.Person.Name) || !strings.Contains(x.Title, k.s.Seat.Name) || x.Measured == nil {
			continue
		}
		row := []string{label, k.whereOf(x), "", m.about(unit.Length(x.Measured.Value)), ""}
		if x.Required != nil {
			row[2] = k.required(*x.Required)
		}
		if x.Margin != nil {
			row[4] = m.about(unit.Length(x.Margin.Value))
		}
		t.rows = append(t.rows, row)
		t.bold = append(t.bold, x.Status.Severity() >= find.Warn.Severity())
	}
	if len(t.rows) > 0 {
		f.long("knee-room", m.say("Room that is needed and room that there is"), t)
	}
}

// whereOf names the part, wall or zone that a finding is about.
func (k kneeSpace) whereOf(x find.Finding) string {
	for _, kind := range []model.ZoneKind{model.ThighZone, model.FootZone} {
		if x.Rule == "leg-room" && strings.Contains(x.Title, string(kind)) {
			return k.m.pass(string(kind))
		}
	}
	switch {
	case len(x.Parts) > 1:
		return strings.Join(k.m.passEach(x.Parts[1:]), ", ")
	case len(x.Walls) > 0:
		return strings.Join(k.m.passEach(x.Walls), ", ")
	}
	return strings.Join(k.m.passEach(x.Parts), ", ")
}

func (k kneeSpace) required(l find.Limit) string {
	m := k.m
	at := m.about(unit.Length(l.Value))
	switch l.Relation {
	case find.AtMost:
		return m.sayf("%s at most", at)
	case find.Between:
		return m.sayf("%s to %s", at, m.about(unit.Length(l.High)))
	}
	return at
}

func (k kneeSpace) bodyTable(f *flow) {
	m := k.m
	t := grid{heads: m.heads("body, barefoot", "from // what an estimate", "size // of a body", "9 in 10", "± (sd)"), right: []bool{false, false, true, true, true}}
	for _, x := range k.s.Sizes {
		sd := ""
		if x.SD > 0 {
			sd = m.about(x.SD)
		}
		t.rows = append(t.rows, []string{m.pass(x.Name), m.basis(x.Estimate), m.about(x.Mean), m.sayf("%s to %s", m.about(x.Low), m.about(x.High)), sd})
		t.bold = append(t.bold, x.Basis == body.OwnMeasure)
	}
	f.grid("knee-body", m.sayf("Measures of %s; add %s for the shoe to heights", k.s.Person.Name, m.named(m.length(k.s.Shoe))), t)
}

// basis says in a word what an estimate rests on.
func (m *maker) basis(e body.Estimate) string {
	text := m.pass(string(e.Basis))
	if e.Extrapolated {
		return m.sayf("%s, extrapolated", text)
	}
	return text
}
