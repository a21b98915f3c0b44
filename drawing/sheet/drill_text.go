package sheet

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// table lists every hole of the wall: from the corner, above the floor, from
// the height line.
func (d *drilling) table() table {
	name, _ := d.corner()
	t := table{heads: []string{d.m.say("hole"), d.m.sayf("from %s", name), d.m.say("height"), d.m.say("to line"), d.m.say("drill"), d.m.say("item")}, right: []bool{false, true, true, true, false, false}}
	for _, h := range d.holes {
		line := d.m.length(h.z - heightLine)
		if h.z > heightLine {
			line = "+" + line
		}
		t.rows = append(t.rows, []string{h.name, d.m.length(d.off(h.s)), d.m.length(h.z), line, d.drill(h), strings.TrimSpace(fmt.Sprintf("%d %s", h.part.Mark, h.hole))})
	}
	return t
}

// forces lists what every anchor of the wall takes, where that is known.
func (d *drilling) forces() table {
	t := table{heads: d.m.heads("hole", "pull", "shear"), right: []bool{false, true, true}}
	st := hold.Of(d.m.b.Design, d.m.b.Job)
	takes := map[string]hold.AnchorTake{}
	for _, h := range d.holes {
		if h.part.Bracket() == nil {
			continue
		}
		if _, known := takes[h.part.ID+"/"+h.hole]; !known {
			for _, x := range st.Anchors(h.part) {
				takes[h.part.ID+"/"+x.Hole] = x
			}
		}
		if x, ok := takes[h.part.ID+"/"+h.hole]; ok {
			t.rows = append(t.rows, []string{h.name, d.m.kilonewtons(math.Ceil(x.Pull/10) * 10), d.m.kilonewtons(math.Ceil(x.Shear/10) * 10)})
		}
	}
	return t
}

// ground says how to drill into a make of wall.
func (m *maker) ground(k model.WallMake) string {
	switch k {
	case model.Brick:
		return m.say("Solid brick: the whole plug in the brick, plaster counts for nothing; keep off joints and outside corners.")
	case model.Concrete:
		return m.say("Concrete: keep off the reinforcement; blow the holes out.")
	case model.Aerated:
		return m.say("Aerated block: drill without hammer; only anchors approved for aerated block.")
	case model.Hollow:
		return m.say("Hollow block: drill without hammer; only anchors approved for hollow block.")
	case model.Stud:
		return m.say("Timber stud: fixings hold in the studs only. Prove the middle of each stud with a thin drill before the first hole.")
	case model.Plasterboard:
		return m.say("Plasterboard by itself carries no angle: find or build a solid ground behind it first.")
	}
	return m.say("The make of this wall is not known: drill one test hole where it is covered later, then choose the anchor.")
}

// heightLineName is what stands at the line on every wall: its height, in metres
// to the millimetre where the job is not in inches.
func (m *maker) heightLineName() string {
	if m.style.Unit == "in" {
		return "+" + m.length(heightLine)
	}
	return "+" + m.style.Fixed(float64(heightLine/unit.M), 3) + " m"
}

// notes are what to know on the ladder.
func (d *drilling) notes() []string {
	name, _ := d.corner()
	r := d.m.b.Room
	datum := d.m.say("Heights count from the floor.")
	if len(r.Floor) > 0 {
		datum = d.m.sayf("Heights count from the floor at corner %s.", r.Floor[0].Corner)
	}
	line := datum + " " + d.m.sayf("Strike the line %s level and measure every height from it.", d.m.heightLineName())
	for _, f := range r.Floor {
		if (f.Corner == d.w.From.Name || f.Corner == d.w.To.Name) && f.Height != 0 {
			line += " " + d.m.sayf("At corner %s it is %s above the floor.", f.Corner, d.m.length(heightLine-f.Height))
		}
	}
	out := []string{
		d.m.say("HIDDEN SERVICES: the keep-outs are only what was surveyed. Detector, power off, test hole; water, gas and heating run in walls too."),
		line,
		d.m.sayf("Sizes along the wall run from corner %s. Drill one hole, hang the bar level, mark the others through it.", name),
		d.m.say("ANCHORS: only with the approval values of the anchor bought, in this wall. Pull one before trusting all.") + " " + d.m.ground(d.w.Make),
	}
	for _, p := range d.m.parts(func(p *model.Part) bool { return p.Bracket() != nil && p.Bracket().On().Wall == d.w }) {
		for _, s := range append(append([]string{}, p.Bracket().On().Moved...), p.Bracket().On().Unmatched...) {
			out = append(out, fmt.Sprintf("%s: %s.", d.m.pass(p.ID), d.m.pass(s)))
		}
	}
	return append(out, d.m.say("Dust: mask and extraction."))
}
