package sheet

import (
	"fmt"
	"math"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// tableWidth is how wide a table stands when nothing is wrapped.
func (m *maker) tableWidth(t grid) unit.Length {
	var sum unit.Length
	for _, w := range t.columns(10 * unit.M) {
		sum += w
	}
	return sum
}

// readings lists what was measured, what it became, and leaves a box for the
// reading on site. Readings that nothing checks stand in bold, and so do suspects.
// A bar shows how far a reading is off, up to where it becomes suspicious.
func (m *maker) readings() grid {
	t := grid{heads: m.heads("reading", "measured", "adjusted", "differs", "checked", "ticks: suspect", "measured again"), right: []bool{false, true, true, true}, boxes: true, barred: 5}
	for i, x := range m.b.Room.Survey.Readings {
		unchecked, suspected, bar := m.unchecked(x), false, math.NaN()
		if v := m.b.Room.Survey.Verdict; i < len(v.Readings) && !unchecked {
			suspected, bar = v.Readings[i].Suspected, v.Readings[i].W/survey.Critical
		}
		checked := fmt.Sprintf("%.0f %%", 100*x.Checked)
		switch {
		case unchecked:
			checked = m.say("NO")
		case suspected:
			checked = m.say("SUSPECT")
		}
		t.rows = append(t.rows, []string{m.pass(x.Name), m.reading(x.Read, x.Unit), m.reading(x.Adjusted, x.Unit), m.signed(x.Adjusted-x.Read, x.Unit),
			checked, "", ""})
		t.bold, t.bars = append(t.bold, unchecked || suspected), append(t.bars, bar)
	}
	return t
}

// unchecked tells whether a slip in a reading would stay unseen.
func (m *maker) unchecked(x model.AdjustedReading) bool {
	return m.b.Room.Survey.Redundancy == 0 || x.Checked < 1e-6
}

func (m *maker) readingsHead() string {
	s := m.b.Room.Survey
	if s.Redundancy == 0 {
		return m.sayf("%d readings, none more than needed: NOTHING checks them", len(s.Readings))
	}
	return m.sayf("%d readings, %d more than needed", len(s.Readings), s.Redundancy)
}

func (m *maker) reading(v float64, u string) string {
	if u == "deg" {
		return m.style.Number(v, 2) + "°"
	}
	return m.length(unit.Length(v))
}

func (m *maker) signed(v float64, u string) string {
	s := m.reading(v, u)
	if v > 0 && strings.Trim(s, "0.,°") != "" {
		return "+" + s
	}
	return s
}

// wallTable lists the walls with all that was said of them.
func (m *maker) wallTable() grid {
	t := grid{heads: m.heads("wall", "", "length", "sd", "make", "bow", "lean per m", "on it, from the corner named"), right: []bool{false, false, true, true, false, true, true}}
	for _, w := range m.b.Room.Walls {
		t.rows = append(t.rows, []string{m.pass(w.Name), w.From.Name + "-" + w.To.Name, m.length(w.Length()), m.fine(w.SD), m.pass(string(w.Make)), m.bow(w), m.lean(w), m.onWallText(w)})
	}
	return t
}

func (m *maker) bow(w *model.Wall) string {
	switch {
	case w.Bow > 0:
		return m.sayf("%s out", m.length(w.Bow))
	case w.Bow < 0:
		return m.sayf("%s hollow", m.length(-w.Bow))
	}
	return "-"
}

func (m *maker) lean(w *model.Wall) string {
	d := unit.Length(w.Lean * 1000)
	switch {
	case d > 0.05:
		return m.sayf("%s back", m.length(d))
	case d < -0.05:
		return m.sayf("%s in", m.length(-d))
	}
	return "-"
}

// onWallText lists studs and obstacles as they were measured.
func (m *maker) onWallText(w *model.Wall) string {
	p := m.planOf(w)
	var out []string
	if len(p.Studs) > 0 {
		from := p.StudsFrom
		if from == "" {
			from = p.From
		}
		var at []string
		for _, s := range p.Studs {
			at = append(at, m.length(s))
		}
		out = append(out, m.sayf("%s: studs %s", from, strings.Join(at, ", ")))
	}
	for _, o := range p.Obstacles {
		from := o.From
		if from == "" {
			from = p.From
		}
		out = append(out, m.sayf("%s: %s %s-%s, %s-%s up", from, o.Name, m.length(o.Start), m.length(o.End), m.length(o.Bottom), m.length(o.Top)))
	}
	if len(out) == 0 {
		return "-"
	}
	return strings.Join(out, "; ")
}

// surveyText says how to use the sheet on site.
func (m *maker) surveyText(f *flow) {
	key, h := m.hatchKey("survey-hatches", f.corner(), f.room.Width(), m.b.Room.Walls)
	f.put("survey-hatch-key", "", []drawing.Item{key}, h+1)
	lines := []string{m.sayf("Read every distance again before cutting and write it into its box. A difference above %s: stop and look for the slip.", m.named(m.length(3))),
		m.say("Grey: distances across the room. Dotted: kept free for what is on the wall. Bow: out is towards the room.")}
	for _, x := range m.b.Room.Survey.Readings {
		if m.unchecked(x) {
			lines = append(lines, m.say("Bold readings are checked by no other: a slip there stays unseen."))
			break
		}
	}
	f.text("survey-notes", "", append(lines, m.toMeasure()...)...)
}

// toMeasure says what the bars are, which readings to take again and which one
// more helps most.
func (m *maker) toMeasure() []string {
	s := m.b.Room.Survey
	var lines []string
	if s.Redundancy > 0 {
		lines = append(lines, m.sayf("Bars: how far a reading is off the others for its accuracy. Beyond the ticks, at %s standard deviations, it is suspect.", m.style.Number(survey.Critical, 1)))
	}
	for _, x := range s.Verdict.Suspects {
		var names []string
		for _, a := range x.Readings {
			names = append(names, s.Readings[a.Index].Name)
		}
		if len(names) == 1 {
			lines = append(lines, m.sayf("Measure again: %s. It contradicts the others.", names[0]))
		} else {
			lines = append(lines, m.sayf("Measure all of these again, one of them is wrong and nothing tells which: %s.", strings.Join(names, "; ")))
		}
	}
	if len(s.Verdict.Next) > 0 {
		lines = append(lines, m.sayf("The further reading that helps most: %s.", m.pass(s.Verdict.Next[0].Reading.Name())))
	}
	return lines
}
