package sheet

import (
	"fmt"
	"strings"

	"slabwright/model"
	"slabwright/model/cut"
	"slabwright/model/lists"
	"slabwright/model/unit"
)

// orders are one sheet for the wood store and one for the steel yard, each with
// its own pieces only.
func (m *maker) orders(s *cut.Shopping) []page {
	var out []page
	if len(s.Wood) > 0 {
		out = append(out, m.woodOrder(s)...)
	}
	if len(s.Steel) > 0 {
		out = append(out, m.steelOrder(s)...)
	}
	if len(s.Packs) > 0 {
		out = append(out, m.packOrder(s)...)
	}
	return out
}

// packOrder is the sheet for the shop that sells anchors, screws and castors.
func (m *maker) packOrder(s *cut.Shopping) []page {
	f := newListing(m, "order-fixings", m.say("Order for anchors, screws and castors"))
	t := table{heads: m.heads("what", "size in mm", "wanted", "packs", "pieces", "price", "where"), right: []bool{false, false, true, false, true, true, false}}
	sum := 0.0
	for _, l := range s.Packs {
		row := []string{m.pass(l.Need.What), m.pass(l.Need.Size), fmt.Sprint(l.Count), m.say("none on offer"), "", "", ""}
		if l.Found {
			sum += l.Cost
			row[3], row[4], row[5], row[6] = strings.Join(l.Buys(), ", "), fmt.Sprint(l.Pieces()), m.money(l.Cost), strings.Join(l.Places(), ", ")
		}
		t.rows = append(t.rows, row)
	}
	t.rows = append(t.rows, []string{m.say("together"), "", "", "", "", m.money(sum), ""})
	f.table(m.say("Packs to buy"), t, asIs)
	var second []string
	for _, l := range s.Packs {
		if l.Second != nil {
			second = append(second, m.sayf("%s, second best: %s, %s more.", m.pass(l.Need.What), strings.Join(l.Second.Buys, ", "), m.money(l.Second.More)))
		}
	}
	f.notes(m.say("What another choice costs"), second)
	f.notes(m.say("What to check at the counter"), []string{
		m.say("Anchors: the approval names this wall and this thickness of steel; take its sheet along, its figures go into the job file."),
		m.say("Screws: never longer than the list says, the top is near; heads wide enough for the slots, or washers with them."),
		m.say("Packs are taken to be full and their pieces all good: buy a few more of what is cheap."),
	})
	f.notes(m.say("Not yet settled"), m.passEach(s.PackNotes.Open))
	return m.orderPages(f)
}

func (m *maker) woodOrder(s *cut.Shopping) []page {
	f := newListing(m, "order-wood", m.say("Order for the wood store"))
	t := table{heads: m.heads("no.", "part", "wood", "length x width x thickness", "tolerance", "edges", "holes", "kg"),
		right: []bool{true, false, false, false, false, false, false, true}}
	for _, l := range s.Wood {
		for _, b := range l.Blanks {
			t.rows = append(t.rows, []string{b.Mark, m.blankName(b), m.pass(l.Species),
				m.blankSize(b) + " x " + m.length(l.Thickness), m.blankTolerance(b), m.edgeWord(b), m.holeWord(b.Part), m.tenth(b.Mass)})
		}
	}
	f.table(m.say("Finished pieces, one each"), t, asIs)
	f.table(m.say("Slabs to buy"), m.stockTable(s, true), asIs)
	f.notes(m.say("What another choice costs"), m.choices(s))
	f.notes(m.say("What to check at pick-up"), []string{
		m.say("Moisture in the core, read in the middle of the slab across a fresh cut or with long pins: write the figure down."),
		m.say("Length and width at three places, thickness at the thinnest: what flattening takes comes off it."),
		m.say("Checks at both ends, pith, loose knots: do the parts of the cutting plan keep off them?"),
		m.say("Which face is the good one, and on which side the natural edge lies: mark both with chalk."),
	})
	f.notes(m.say("Not yet settled"), m.passEach(s.WoodNotes.Open))
	f.notes(m.say("Taken for granted"), append(m.passEach(s.WoodNotes.Assumed), m.say("Length runs along the grain, between the farthest corners. What the sheet Order sizes adds is in them. Two widths of a natural edge: the narrowest and the widest place.")))
	return m.orderPages(f)
}

// blankTolerance has the sign that a fit asks for: between walls nothing may be
// longer.
func (m *maker) blankTolerance(b cut.Blank) string {
	if b.Ordered {
		return m.sayf("length +0/-%s, else ±%s", m.within(model.UsualFit.Shop.Minus), m.within(0.5))
	}
	return "±" + m.within(0.5)
}

// blankName is what a piece is called: a board after its table.
func (m *maker) blankName(b cut.Blank) string {
	if b.Board == nil {
		return m.pass(b.ID)
	}
	return m.pass(b.Part.ID) + ": " + m.pass(b.Board.Name)
}

func (m *maker) edgeWord(b cut.Blank) string {
	if b.Edge != "" {
		return m.say("front natural, bark off")
	}
	return m.say("all sawn")
}

// holeWord says whether anything is drilled or cut in a part.
func (m *maker) holeWord(p *model.Part) string {
	n := 0
	switch {
	case p.Slab != nil:
		n = len(p.Slab.Features)
	case p.Bracket() != nil:
		n = len(p.Bracket().On().Holes)
	}
	if n == 0 {
		return m.say("no holes")
	}
	return m.sayf("%d, see its sheet", n)
}

// stockTable lists what is bought of what is on offer.
func (m *maker) stockTable(s *cut.Shopping, wood bool) table {
	t := table{heads: m.heads("qty", "what", "size in mm", "kg as sold", "price", "for", "where"), right: []bool{true, false, false, true, true, false, false}}
	only := *s
	only.Packs = nil
	if wood {
		only.Steel = nil
	} else {
		only.Wood = nil
	}
	sum := 0.0
	for _, b := range lists.BoughtStock(&only) {
		sum += b.Price * float64(b.Count)
		t.rows = append(t.rows, []string{fmt.Sprint(b.Count), m.pass(b.What), m.pass(b.Size), m.tenth(b.Mass), m.money(b.Price * float64(b.Count)), m.forText(b.For), b.Place})
	}
	t.rows = append(t.rows, []string{"", m.say("together"), "", "", m.money(sum), "", ""})
	return t
}

// choices tells the second best sets and what two pieces instead of one change.
func (m *maker) choices(s *cut.Shopping) []string {
	var out []string
	for _, l := range s.Wood {
		if l.Plan.Found {
			out = append(out, m.chosen(m.sayf("%s, %s thick", m.pass(l.Species), m.length(l.Thickness)), l.Plan.Optimal, m.money(l.Plan.Bound)))
			out = append(out, m.secondBest(s, l.Second)...)
		}
		for _, h := range l.Halved {
			switch {
			case h.Found && !l.Plan.Found:
				out = append(out, m.sayf("With %s: %s, together %s.", m.pass(h.What), strings.Join(h.Buys, ", "), m.money(h.Cost)))
			case h.Found && h.More < 0:
				out = append(out, m.sayf("With %s: %s, %s less.", m.pass(h.What), strings.Join(h.Buys, ", "), m.money(-h.More)))
			}
		}
	}
	return out
}

func (m *maker) chosen(what string, optimal bool, bound string) string {
	if optimal {
		return m.sayf("%s: no set of slabs on offer costs less, that is proved.", what)
	}
	return m.sayf("%s: no set of slabs on offer costs less than %s.", what, bound)
}

func (m *maker) secondBest(s *cut.Shopping, c *cut.Choice) []string {
	if c == nil {
		return nil
	}
	return []string{m.sayf("Second best: %s, %s more.", strings.Join(c.Buys, ", "), m.money(c.More))}
}

func (m *maker) steelOrder(s *cut.Shopping) []page {
	f := newListing(m, "order-steel", m.say("Order for the steel yard"))
	t := table{heads: m.heads("no.", "part", "section", "length", "tolerance", "ends", "holes", "kg"), right: []bool{true, false, false, true, false, false, false, true}}
	for _, l := range s.Steel {
		for _, x := range l.Problem.Pieces {
			p := m.b.Design.Part(x.ID)
			t.rows = append(t.rows, []string{fmt.Sprint(p.Mark), m.pass(p.ID), l.Section, m.length(x.Length), m.shorter(), m.endWord(x.Left, x.Right), m.holeWord(p), m.tenth(p.Mass())})
		}
	}
	f.table(m.say("Finished pieces, one each"), t, asIs)
	f.table(m.say("Bars to buy"), m.stockTable(s, false), asIs)
	var second []string
	for _, l := range s.Steel {
		second = append(second, m.secondBest(s, l.Second)...)
	}
	f.notes(m.say("What another choice costs"), second)
	f.notes(m.say("What to check at pick-up"), []string{
		m.say("Lengths with your own tape: a yard that keeps +2 makes bars that jam between walls."),
		m.say("Straight along both legs, legs square to each other, no mill scale where wood will lie on it."),
		m.say("Ends deburred; every piece marked with its number."),
	})
	f.notes(m.say("Not yet settled"), m.passEach(s.SteelNotes.Open))
	f.notes(m.say("Taken for granted"), m.passEach(s.SteelNotes.Assumed))
	return m.orderPages(f)
}

func (m *maker) endWord(left, right unit.Length) string {
	if left == 0 && right == 0 {
		return m.say("both square")
	}
	return m.say("mitred, see its sheet")
}

// money writes a price with the currency of the job, if it names one.
func (m *maker) money(v float64) string {
	t := cut.Money("", v)
	if m.style.Decimal == ',' {
		t = strings.Replace(t, ".", ",", 1)
	}
	return strings.TrimSpace(m.b.Shopping.Currency + " " + t)
}

// orderPages gives the pages of an order: the tolerances stand in its table.
func (m *maker) orderPages(f *listing) []page {
	pages := f.pages(m.say("order list"))
	for i := range pages {
		pages[i].block.Tolerance = m.say("see the table")
	}
	return pages
}
