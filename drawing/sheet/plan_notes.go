package sheet

import (
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// planNotes sets the table of widths and the keys beside the plan.
func (m *maker) planNotes(f *flow, tops []*model.Part) {
	t := grid{boxes: true, pitch: 5, heads: m.heads("slab", "at", "clear", "as drawn", "gap left", "gap right", "measured again"), right: []bool{false, false, true, true, true, true, false}}
	for _, p := range tops {
		for _, x := range m.widths(p) {
			t.rows = append(t.rows, []string{m.pass(p.ID), x.name + ", " + m.sayf("%s deep", m.length(x.deep)), m.length(x.clear), m.length(x.wood), m.length(x.left), m.length(x.right), ""})
		}
	}
	if len(t.rows) > 0 {
		f.grid("plan-widths", m.say("Clear widths at this depth, the smaller of surface and underside: measure again before cutting"), t)
	}
	for i, x := range m.planFindings() {
		var lines []string
		for _, y := range x {
			lines = append(lines, m.found(y.Why))
		}
		f.text(fmt.Sprintf("plan-finding-%d", i+1), fmt.Sprintf("%d  %s: %s", i+1, m.pass(string(x[0].Status)), m.found(x[0].Title)), lines...)
	}
	var joints []string
	for _, j := range m.b.Design.Joints {
		joints = append(joints, m.jointText(j))
	}
	if len(joints) > 0 {
		f.text("plan-joints", "", joints...)
	}
	key, h := m.hatchKey("plan-hatches", f.corner(), f.room.Width(), m.b.Room.Walls)
	f.put("plan-key", "", []drawing.Item{key}, h+0.5)
	f.text("plan-notes", "", m.say("Dashed: below the worktop. Double-dotted: above it, or there already. Numbers in rings: parts list."))
}

// planFindings are the findings that keep the job from the shop and have a
// place, those of one place together.
func (m *maker) planFindings() [][]find.Finding {
	var out [][]find.Finding
	for _, f := range m.b.Findings {
		if f.At == nil || f.Status.Severity() < find.Unknown.Severity() {
			continue
		}
		joined := false
		for i, l := range out {
			if flatAt(l[0]).Sub(flatAt(f)).Len() < 30 {
				out[i], joined = append(l, f), true
				break
			}
		}
		if !joined {
			out = append(out, []find.Finding{f})
		}
	}
	return out
}

func flatAt(f find.Finding) geom.Vec {
	return geom.V(unit.Length(f.At[0]), unit.Length(f.At[1]))
}

// planFlags numbers the findings on the plan.
func (m *maker) planFlags() []flag {
	var out []flag
	for i, l := range m.planFindings() {
		text := shortened(m.found(l[0].Why), 62)
		if len(l) > 1 {
			text += m.sayf(", and %d more", len(l)-1)
		}
		out = append(out, flag{fmt.Sprint(i + 1), text, flatAt(l[0])})
	}
	return out
}

// shortened breaks off a text of more than n letters, at a word where it can.
func shortened(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	head := string(r[:n])
	if i := strings.LastIndex(head, " "); i > len(head)/2 {
		return head[:i] + " …"
	}
	return head + "…"
}
