package sheet

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/unit"
)

// holeTables lists every hole of a bar, those with the same purpose in one
// table. x counts from end A, y from the heel, of a cleat from its top or from the
// wall.
func (m *maker) holeTables(p *model.Part) []block {
	a := p.Bracket().On()
	var out []block
	done := map[string]bool{}
	for _, first := range a.Holes {
		heading := fmt.Sprintf("%s: %s", m.legName(p, first.Leg), m.pass(first.For))
		if done[heading] {
			continue
		}
		done[heading] = true
		t := table{heads: append(m.heads("hole", "x from A"), m.across(p, first.Leg), m.say("size")), right: []bool{false, true, true, false}}
		for _, h := range a.Holes {
			if h.Leg == first.Leg && h.For == first.For {
				t.rows = append(t.rows, []string{h.Name, m.length(h.X), m.length(h.FromHeel), m.holeSize(h)})
			}
		}
		for _, b := range t.blocks(fmt.Sprintf("holes-%d", len(done)), strings.ToUpper(heading[:1])+heading[1:], m.lines) {
			out = append(out, unbroken(b))
		}
	}
	return out
}

// holeSize says the size of a hole, the direction of a slot and the
// countersink.
func (m *maker) holeSize(h model.BracketHole) string {
	s := "Ø" + m.length(h.Dia)
	if h.Slot > 0 {
		s = m.say("slot") + " " + m.slotSize(h)
	}
	if h.Sink > 0 {
		s += ", " + m.sunk(h)
	}
	return s
}

// sunk says the size of a countersink.
func (m *maker) sunk(h model.BracketHole) string { return m.sayf("countersunk Ø%s", m.length(h.Sink)) }

// slotSize is width and length of a slot, and which way it runs.
func (m *maker) slotSize(h model.BracketHole) string {
	way := m.say("across")
	if h.Along {
		way = m.say("along")
	}
	return fmt.Sprintf("%s x %s %s", m.length(h.Dia), m.length(h.Dia+h.Slot), way)
}

// barTable says what bar it is and where it goes.
func (m *maker) barTable(p *model.Part) table {
	bar, alike := p.Bracket().On(), m.b.Design.Alike(p)
	n := len(alike)
	quantity := fmt.Sprint(n)
	if n > 1 {
		quantity += m.sayf(", together %s", m.kg(p.Mass()*unit.Mass(n)))
	}
	if p.Cut != nil {
		quantity += m.say(", already cut")
	}
	t := table{heads: []string{m.say("quantity"), quantity}}
	add := func(what, value string) { t.rows = append(t.rows, []string{what, value}) }
	section := ""
	if c := p.Cleat; c != nil {
		section = m.sayf("%s out from the wall, %s high, %s", m.length(c.Wide), m.length(c.High), m.pass(p.Material))
	} else {
		section = m.sayf("%s EN 10056-1, S235JR EN 10025-2, raw, degreased", p.Angle.Section.Name)
	}
	add(m.say("section // of a bar"), section)
	add(m.say("net length"), strings.TrimSpace(m.length(bar.Length)+" "+m.sawn(p)))
	add(m.say("ends"), endsOf(m, bar))
	if a := p.Angle; a != nil {
		add(m.say("hand // of a bar"), m.handText(p))
		add(m.say("legs // of a bar"), map[bool]string{false: m.say("wall leg down, its toe below the seat"), true: m.say("wall leg up, behind the slab")}[a.LegUp])
	}
	for i, q := range alike {
		what := m.say("goes to")
		if i > 0 {
			what = ""
		}
		add(what, m.placeOf(q.Bracket().On()))
	}
	return t
}

// placeOf says where a bracket hangs.
func (m *maker) placeOf(a *model.Mounted) string {
	where := m.sayf("wall %s, under %s, seat at +%s", m.pass(a.Wall.Name), m.pass(a.Under), m.length(a.Seat))
	if a.Wall.Previous() == nil && a.Wall.Next() != nil {
		return where + m.sayf(", far end %s from corner %s", m.length(a.Wall.Length()-a.Start-a.Length), a.Wall.To.Name)
	}
	return where + m.sayf(", end A %s from corner %s", m.length(a.Start), a.Wall.From.Name)
}

func endsOf(m *maker, a *model.Mounted) string {
	if a.Left.Mitre == 0 && a.Right.Mitre == 0 {
		return m.say("both sawn square")
	}
	one := func(e model.End) string {
		if e.Mitre == 0 {
			return m.say("square // cut")
		}
		long := m.say("toe // of an angle")
		if e.Mitre < 0 {
			long = m.say("heel // of an angle")
		}
		return m.sayf("%s° off square, %s longer", m.style.Number(max(e.Mitre, -e.Mitre).Degrees(), 1), long)
	}
	return m.sayf("A %s; other end %s", one(a.Left), one(a.Right))
}

// handText says which hand a bar is.
func (m *maker) handText(p *model.Part) string {
	hand, twin := m.b.Design.HandOf(p)
	switch {
	case twin != nil:
		return m.sayf("%s, mirror image of item %d", hand, twin.Mark)
	case p.Angle.Symmetric():
		return m.say("none, both ends alike")
	}
	return m.say("handed: not to be mirrored")
}

// drilledNote says whether the holes of a leg of a cut bar are there already.
func (m *maker) drilledNote(leg model.Leg, holes []unit.Length) string {
	if holes == nil {
		return m.sayf("The holes of the %s are not drilled yet: drill them as drawn.", m.pass(string(leg)))
	}
	return m.sayf("The holes of the %s are drilled already.", m.pass(string(leg)))
}

// angleNotes are what a yard must not get wrong.
func (m *maker) angleNotes(p *model.Part) []string {
	a := p.Angle
	if c := p.Cut; c != nil {
		return append([]string{
			m.sayf("Already cut on %s: do not cut. The length is the one measured on the bar.", c.On),
			m.sayf("A is the left end as seen from the room. Mark it on the bar, with item no. %d.", p.Mark),
			m.drilledNote(model.WallLeg, c.WallHoles), m.drilledNote(model.SeatLeg, c.ScrewHoles),
		}, m.passEach(a.Moved)...)
	}
	out := []string{
		m.sayf("A is the left end as seen from the room. Mark it on the bar, with item no. %d.", p.Mark),
		m.sayf("The bar goes between fixed ends: length %s %s. A yard that saws -0/+%s orders %s.", m.length(a.Length), m.shorter(), m.length(2), m.length(a.Length-2)),
		m.sayf("All holes from end A and from the heel. A rolled leg may be %s wider or narrower: never measure from the toe.", m.length(2)),
	}
	for _, h := range a.Holes {
		if h.Slot > 0 {
			out = append(out, m.say("Slots: across = square to the bar, along = with the bar. The slab moves in them; keep their direction."))
			break
		}
	}
	out = append(out, m.passEach(a.Moved)...)
	for _, s := range a.Unmatched {
		out = append(out, capital(m.pass(s))+".")
	}
	return append(out, m.say("Clamp the bar, no gloves at the drill, sparks away from sawdust and rags, burrs off both faces."))
}
