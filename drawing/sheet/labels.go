package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/cut"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// sticker is what is stuck on a piece as soon as it comes off the saw.
type sticker struct {
	mark, name string
	lines      []string
	grain      bool
}

// Size of a label: two beside each other and five in a column fill an upright A4.
const (
	labelWide unit.Length = 80
	labelTall unit.Length = 37
)

// labelSheets are the labels of all pieces that are still to be sawn, to be cut
// apart along their lines. They are upright A4, the paper that sticks.
func labelSheets(m *maker) []page {
	s := m.b.Shopping
	if s == nil {
		return nil
	}
	all := m.labels(s)
	var out []page
	for len(all) > 0 {
		p, left := m.labelPage(all, len(out)+1)
		out, all = append(out, p), left
	}
	return out
}

// labels lists them in the order in which the pieces come off the saw; pieces
// without a plan come last.
func (m *maker) labels(s *cut.Shopping) []sticker {
	var out []sticker
	for _, l := range s.Wood {
		left := slices.Clone(l.Blanks)
		for _, lay := range l.Plan.Layouts {
			for i, c := range lay.Cuts {
				for _, id := range c.Frees {
					if k := slices.IndexFunc(left, func(b cut.Blank) bool { return b.ID == id }); k >= 0 {
						out = append(out, m.woodLabel(l, left[k], m.sayf("from %s, cut %d", lay.Sheet, i+1)))
						left = slices.Delete(left, k, k+1)
					}
				}
			}
		}
		for _, b := range left {
			out = append(out, m.woodLabel(l, b, m.say("from a slab not chosen yet")))
		}
	}
	for _, l := range s.Steel {
		out = append(out, m.steelLabels(l)...)
	}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Cleat != nil && p.Cut == nil }) {
		out = append(out, m.cleatLabel(p))
	}
	return out
}

func (m *maker) cleatLabel(p *model.Part) sticker {
	c := p.Cleat
	return sticker{mark: fmt.Sprint(p.Mark), name: m.pass(p.ID), lines: []string{
		m.profile(c) + " x " + m.length(c.Length), m.pass(p.Material) + ", " + m.kg(p.Mass()), m.sayf("under %s", m.pass(c.Under)),
	}}
}

func (m *maker) woodLabel(l cut.WoodLot, b cut.Blank, from string) sticker {
	out := sticker{mark: b.Mark, name: m.blankName(b), grain: true}
	out.lines = []string{m.blankSize(b) + " x " + m.length(l.Thickness), m.pass(l.Species) + ", " + m.kg(b.Mass), from}
	if b.Edge != "" {
		out.lines = append(out.lines, m.edgeWord(b))
	}
	return out
}

func (m *maker) steelLabels(l cut.SteelLot) []sticker {
	var out []sticker
	done := map[string]bool{}
	add := func(id, from string) {
		p := m.b.Design.Part(id)
		x := pieceIn(l, id)
		done[id] = true
		out = append(out, sticker{mark: fmt.Sprint(p.Mark), name: m.pass(id),
			lines: []string{l.Section + " x " + m.length(x.Length), m.endWord(x.Left, x.Right) + ", " + m.kg(p.Mass()), from}})
	}
	for n, r := range l.Plan.Bars {
		for k, q := range r.Pieces {
			add(q.ID, m.sayf("from bar %d, cut %d", n+1, k+1))
		}
	}
	for _, x := range l.Problem.Pieces {
		if !done[x.ID] {
			add(x.ID, m.say("from a bar not chosen yet"))
		}
	}
	return out
}

// labelPage sets as many labels as a page holds and gives those left.
func (m *maker) labelPage(all []sticker, n int) (page, []sticker) {
	p := m.new(fmt.Sprintf("labels-%d", n), m.say("Labels to stick on"))
	p.sheet.Size = drawing.Size{Name: drawing.A4.Name, Width: drawing.A4.Width, Height: drawing.A4.Height, Revisions: m.size.Revisions}
	p.block.DocumentType, p.block.Tolerance = m.say("labels"), m.say("see the sheet of the part")
	room := drawing.Free(p.sheet.Size)[0]
	y := room.Max.Y - drawing.Small
	for i, line := range drawing.Wrap(m.say("Print at full size, cut along the lines. Stick each on its piece as it comes off the saw: wood on the top face, the arrow along the grain and its point to the right as the part is drawn; steel on the outside of the wall leg, cleats on the back."), drawing.Small, room.Width()) {
		p.sheet.Add(drawing.Group{ID: fmt.Sprintf("note-%d", i+1), Items: []drawing.Item{drawing.Write(geom.V(room.Min.X, y), line, drawing.Small, drawing.Left)}})
		y -= drawing.Small * 1.6
	}
	columns := int(room.Width() / labelWide)
	rows := int((y - room.Min.Y) / labelTall)
	fits := min(len(all), columns*rows)
	for i, l := range all[:fits] {
		corner := geom.V(room.Min.X+labelWide*unit.Length(i%columns), y-labelTall*unit.Length(i/columns+1))
		p.sheet.Add(drawing.Group{ID: fmt.Sprintf("label-%d", i+1), Title: l.name, Items: m.labelItems(l, corner)})
	}
	return p, all[fits:]
}

// labelItems draws one label from its lower left corner: its number large at the
// left, the rest beside it.
func (m *maker) labelItems(l sticker, corner geom.Vec) []drawing.Item {
	const inset, numberRoom unit.Length = 3, 20
	box := drawing.Box(corner.X, corner.Y, labelWide, labelTall)
	out := []drawing.Item{drawing.Outline(box.Corners(), m.lines.Fine())}
	high := drawing.Large * 2
	number := drawing.Write(geom.V(box.Min.X+inset, box.Max.Y-inset-high), l.mark, high, drawing.Left).Strong()
	for number.Width() > numberRoom-inset && number.Height > drawing.Standard {
		number.Height -= 0.5
	}
	out = append(out, number)
	x, y, wide := box.Min.X+numberRoom+inset, box.Max.Y-inset, box.Width()-numberRoom-2*inset
	for i, line := range append([]string{l.name}, l.lines...) {
		h, bold := drawing.Small, i == 0
		if i < 2 {
			h = drawing.Standard
		}
		set := wrapped(line, h, wide, bold)
		if rest := unit.Length(len(l.lines)-i) * drawing.Small * 1.6; y-unit.Length(len(set))*h*1.6-rest < box.Min.Y+1 {
			set = []string{drawing.Fit(line, h, wide*0.9)} // bold is wider
		}
		for _, s := range set {
			t := drawing.Write(geom.V(x, y-h), s, h, drawing.Left)
			t.Bold = bold
			out = append(out, t)
			y -= h * 1.6
		}
	}
	if l.grain {
		at := geom.V(box.Min.X+inset, box.Min.Y+inset+1)
		tip := at.Add(geom.V(numberRoom-inset, 0))
		out = append(out, drawing.Line(at, tip.Sub(geom.V(1, 0)), m.lines.Outline()), drawing.Mark{Kind: drawing.Arrow, At: tip, Dir: geom.V(1, 0), Size: 2 * drawing.ArrowLength, Pen: m.lines.Outline()})
	}
	return out
}
