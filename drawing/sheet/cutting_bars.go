package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// barCuts is the sheet of the bars of one section.
func (m *maker) barCuts(l cut.SteelLot) []page {
	c := chapter{name: "bars", title: m.say("bars")}
	c.pictures = []picture{m.barPicture(l)}
	c.beside = append(c.beside, m.barCutTable(l).blocks("bar-cuts", m.say("Cuts in saw order"), m.lines)...)
	c.beside = append(c.beside, notesBlock("notes", m.say("Notes"), m.barNotes(l)))
	pages := m.pages("saw-"+stem(l.Section), m.sayf("Saw: %s", l.Section), []chapter{c})
	for i := range pages {
		b := &pages[i].block
		b.DocumentType, b.Material, b.Tolerance = m.say("cutting plan"), "S235JR", m.sayf("lengths +0/-%s", m.within(1))
	}
	return pages
}

// barPitch is how far the bars stand apart on paper, barTall how high each is:
// bars are drawn true along, not across.
const (
	barPitch unit.Length = 16
	barTall  unit.Length = 8
)

// mostBarsDrawn is how many bars a sheet shows; the table has them all.
const mostBarsDrawn = 10

func (m *maker) barPicture(l cut.SteelLot) picture {
	rows := l.Plan.Bars[:min(mostBarsDrawn, len(l.Plan.Bars))]
	var long unit.Length
	for _, r := range rows {
		long = max(long, barOf(l, r).Length)
	}
	return picture{id: "bars", title: m.say("Bars, true along, not across"), style: m.woodStyle(),
		view: view.View{Bounds: drawing.Rect{Max: geom.V(long, 1)}},
		extra: func(pl dim.Plate) []drawing.Item {
			var out []drawing.Item
			for i, r := range rows {
				out = append(out, m.barRow(l, r, i, pl)...)
			}
			return out
		}}
}

func barOf(l cut.SteelLot, r saw.BarLayout) saw.Bar {
	return l.Problem.Bars[slices.IndexFunc(l.Problem.Bars, func(b saw.Bar) bool { return b.ID == r.Bar })]
}

func pieceIn(l cut.SteelLot, id string) saw.Piece {
	return l.Problem.Pieces[slices.IndexFunc(l.Problem.Pieces, func(p saw.Piece) bool { return p.ID == id })]
}

// barRow draws one bar with its pieces, heel below.
func (m *maker) barRow(l cut.SteelLot, r saw.BarLayout, n int, pl dim.Plate) []drawing.Item {
	base := -barPitch * unit.Length(n)
	x := func(v unit.Length) unit.Length { return pl.Scale.Of(v) }
	bar := barOf(l, r)
	out := []drawing.Item{
		drawing.Area{Loops: [][]geom.Vec{{geom.V(0, base), geom.V(x(bar.Length), base), geom.V(x(bar.Length), base+barTall), geom.V(0, base+barTall)}}, Ink: drawing.Pale},
		drawing.Write(geom.V(0, base+barTall+1.6), fmt.Sprintf("%d:  %s", n+1, m.barName(bar)), drawing.Small, drawing.Left),
		drawing.Outline([]geom.Vec{geom.V(0, base), geom.V(x(bar.Length), base), geom.V(x(bar.Length), base+barTall), geom.V(0, base+barTall)}, m.lines.Fine()),
	}
	if t := drawing.Write(geom.V(x(bar.Length-r.Rest/2), base+barTall/2), m.sayf("%s left over", m.length(r.Rest)), drawing.Small, drawing.Middle); t.Width() < x(r.Rest)-1.5 {
		out = append(out, t)
	}
	for _, q := range r.Pieces {
		p := pieceIn(l, q.ID)
		a, b := x(q.At), x(q.At+p.Length)
		loop := []geom.Vec{geom.V(a, base), geom.V(b, base), geom.V(b+x(p.Right), base+barTall), geom.V(a+x(p.Left), base+barTall)}
		out = append(out, drawing.Area{Loops: [][]geom.Vec{loop}, Ink: drawing.White}, drawing.Outline(loop, m.lines.Outline()))
		mark := ""
		if part := m.b.Design.Part(q.ID); part != nil {
			mark = fmt.Sprint(part.Mark)
		}
		for _, label := range []string{mark + ":  " + m.length(p.Length), mark} {
			if t := drawing.Write(geom.V((a+b)/2, base+barTall/2), label, drawing.Small, drawing.Middle); t.Width() < b-a-1.5 {
				out = append(out, t)
				break
			}
		}
	}
	return out
}

func (m *maker) barName(b saw.Bar) string {
	return m.sayf("bar of %s", m.length(b.Length))
}

// barCutTable lists the cuts of all bars.
func (m *maker) barCutTable(l cut.SteelLot) table {
	t := table{heads: m.heads("bar", "cut", "part", "length", "near edge ends at", "far edge ends at"), right: []bool{true, true, false, true, true, true}}
	for n, r := range l.Plan.Bars {
		for k, q := range r.Pieces {
			p := pieceIn(l, q.ID)
			name := q.ID
			if part := m.b.Design.Part(q.ID); part != nil {
				name = fmt.Sprintf("%d  %s", part.Mark, m.pass(q.ID))
			}
			far := ""
			if p.Right != 0 {
				far = m.length(q.At + p.Length + p.Right)
			}
			t.rows = append(t.rows, []string{fmt.Sprint(n + 1), fmt.Sprint(k + 1), name, m.length(p.Length), m.length(q.At + p.Length), far})
		}
		t.rows = append(t.rows, []string{fmt.Sprint(n + 1), "", m.say("left over"), m.length(r.Rest), "", ""})
	}
	return t
}

func (m *maker) barNotes(l cut.SteelLot) []string {
	out := []string{
		m.sayf("The saw takes %s for each cut. Lengths are those of the heel; places count from the left end of the bar.", m.length(l.Problem.Kerf)),
		m.say("Saw from the left, mark each piece with its number at once, deburr every end."),
	}
	if len(l.Plan.Bars) > mostBarsDrawn {
		out = append(out, m.sayf("The first %d bars are drawn, the table has all.", mostBarsDrawn))
	}
	return append(out, m.sayf("Price of the bars: %s.", m.money(l.Plan.Objective)))
}
