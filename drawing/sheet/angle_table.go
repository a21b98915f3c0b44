package sheet

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/unit"
)

// holeTables lists every hole of a bar, those with the same purpose in one
// table. x counts from end A, y from the heel.
func (m *maker) holeTables(a *model.AnglePart) []block {
	var out []block
	done := map[string]bool{}
	for _, first := range a.Holes {
		heading := fmt.Sprintf("%s: %s", first.Leg, first.For)
		if done[heading] {
			continue
		}
		done[heading] = true
		t := table{heads: []string{"hole", "x from A", "y from heel", "size"}, right: []bool{false, true, true, false}}
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
func (m *maker) holeSize(h model.SteelHole) string {
	s := "Ø" + m.length(h.Dia)
	if h.Slot > 0 {
		s = fmt.Sprintf("slot %s x %s %s", m.length(h.Dia), m.length(h.Dia+h.Slot), map[bool]string{true: "along", false: "across"}[h.Along])
	}
	if h.Sink > 0 {
		s += ", countersunk Ø" + m.length(h.Sink)
	}
	return s
}

// barTable says what bar it is and where it goes.
func (m *maker) barTable(p *model.Part) table {
	a, d := p.Angle, m.b.Design
	alike := d.Alike(p)
	n := len(alike)
	quantity := fmt.Sprint(n)
	if n > 1 {
		quantity += fmt.Sprintf(", together %s", m.kg(p.Mass()*unit.Mass(n)))
	}
	if p.Cut != nil {
		quantity += ", already cut"
	}
	t := table{heads: []string{"quantity", quantity}}
	add := func(what, value string) { t.rows = append(t.rows, []string{what, value}) }
	add("section", a.Section.Name+" EN 10056-1, S235JR EN 10025-2, raw, degreased")
	add("net length", strings.TrimSpace(m.length(a.Length)+" "+m.sawn(p)))
	add("ends", endsOf(m, a))
	add("hand", m.handText(p))
	add("legs", map[bool]string{false: "wall leg down, its toe below the seat", true: "wall leg up, behind the slab"}[a.LegUp])
	for i, q := range alike {
		what := "goes to"
		if i > 0 {
			what = ""
		}
		add(what, m.placeOf(q.Angle))
	}
	return t
}

// placeOf says where an angle hangs.
func (m *maker) placeOf(a *model.AnglePart) string {
	from, off, side := a.Wall.From.Name, a.Start, "end A"
	if a.Wall.Previous() == nil && a.Wall.Next() != nil {
		from, off, side = a.Wall.To.Name, a.Wall.Length()-a.Start-a.Length, "far end"
	}
	return fmt.Sprintf("wall %s, under %s, seat at +%s, %s %s from corner %s", a.Wall.Name, a.Under, m.length(a.Seat), side, m.length(off), from)
}

func endsOf(m *maker, a *model.AnglePart) string {
	if a.Left.Mitre == 0 && a.Right.Mitre == 0 {
		return "both sawn square"
	}
	one := func(e model.End) string {
		if e.Mitre == 0 {
			return "square"
		}
		long := "toe"
		if e.Mitre < 0 {
			long = "heel"
		}
		return fmt.Sprintf("%s° off square, %s longer", m.style.Number(max(e.Mitre, -e.Mitre).Degrees(), 1), long)
	}
	return "A " + one(a.Left) + "; other end " + one(a.Right)
}

// handText says which hand a bar is.
func (m *maker) handText(p *model.Part) string {
	hand, twin := m.b.Design.HandOf(p)
	switch {
	case twin != nil:
		return fmt.Sprintf("%s, mirror image of item %d", hand, twin.Mark)
	case p.Angle.Symmetric():
		return "none, both ends alike"
	}
	return "handed: not to be mirrored"
}

// drilledNote says whether the holes of a leg of a cut bar are there already.
func drilledNote(leg string, holes []unit.Length) string {
	if holes == nil {
		return "The holes of the " + leg + " are not drilled yet: drill them as drawn."
	}
	return "The holes of the " + leg + " are drilled already."
}

// angleNotes are what a yard must not get wrong.
func (m *maker) angleNotes(p *model.Part) []string {
	a := p.Angle
	if c := p.Cut; c != nil {
		return append([]string{
			fmt.Sprintf("Already cut on %s: do not cut. The length is the one measured on the bar.", c.On),
			fmt.Sprintf("A is the left end as seen from the room. Mark it on the bar, with item no. %d.", p.Mark),
			drilledNote("wall leg", c.WallHoles), drilledNote("seat leg", c.ScrewHoles),
		}, a.Moved...)
	}
	out := []string{
		fmt.Sprintf("A is the left end as seen from the room. Mark it on the bar, with item no. %d.", p.Mark),
		fmt.Sprintf("The bar goes between fixed ends: length %s %s. A yard that saws -0/+%s orders %s.", m.length(a.Length), m.shorter(), m.length(2), m.length(a.Length-2)),
		fmt.Sprintf("All holes from end A and from the heel. A rolled leg may be %s wider or narrower: never measure from the toe.", m.length(2)),
	}
	for _, h := range a.Holes {
		if h.Slot > 0 {
			out = append(out, "Slots: across = square to the bar, along = with the bar. The slab moves in them; keep their direction.")
			break
		}
	}
	out = append(out, a.Moved...)
	for _, s := range a.Unmatched {
		out = append(out, strings.ToUpper(s[:1])+s[1:]+".")
	}
	return append(out, "Clamp the bar, no gloves at the drill, sparks away from sawdust and rags, burrs off both faces.")
}
