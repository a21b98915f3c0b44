package sheet

import (
	"cmp"
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/lists"
	"slabwright/model/report"
	"slabwright/model/unit"
)

// mostCovers is how many sheets the cover takes at most.
const mostCovers = 4

// listSheets give the parts list, the buying list and what to measure on site
// before anything is cut, each with the cautions of its act. The number of
// covers is known when all sheets are laid out: the parts list is set once more
// then, in no more room than it had.
func listSheets(m *maker) []page {
	out := m.partsPages(mostCovers)
	for i := range out {
		out[i].finish = func(s drawing.Sheet, b drawing.Block) drawing.Sheet {
			if set := m.partsPages(s.Of - len(m.others)); i < len(set) {
				s.Items = set[i].sheet.Items
			}
			return drawing.Finish(s, b)
		}
	}
	g := newListing(m, "site-check", m.say("Check on site before cutting"))
	g.notes(m.say("How"), []string{
		m.say("Measure again before the first cut and write the figure into the box. Where it is worse than \"stop if\", stop: the sheets rest on other sizes. New readings go into the job file, and all sheets are drawn anew."),
		m.say("Corners: mark both walls at the distance given, measure from mark to mark."),
	})
	g.table(m.say("Measure on site"), m.siteList(), tableForm{by: ladderText, boxes: true})
	g.notes(m.say("On site"), m.cautions(onSite))
	return append(out, g.pages(m.say("check list"))...)
}

// partsPages are the parts list and the buying list; the sheets of the set
// follow on as many covers as are given.
func (m *maker) partsPages(covers int) []page {
	f := newListing(m, "lists", m.say("Parts list and buying list"))
	f.table(m.say("Parts"), m.partsList(covers), asIs)
	f.notes(m.say("Before you act"), m.cautions(making))
	f.notes(m.say("Before you buy"), m.cautions(buying))
	f.table(m.say("To buy"), m.buyingList(), asIs)
	return f.pages(m.say("parts list"))
}

// partsList has the columns of ISO 7573: item, quantity, name, material, size,
// mass, and the sheet that shows it.
func (m *maker) partsList(covers int) table {
	t := table{heads: m.heads("item", "qty", "part", "material", "length x width x thickness", "kg each", "kg all", "sheet"),
		right: []bool{true, true, false, false, false, true, true, true}}
	var parts int
	var mass unit.Mass
	var of []string // materials
	kg := map[string]unit.Mass{}
	for _, i := range lists.Items(m.b.Design) {
		p := i.First()
		parts += i.Count()
		mass += i.Mass()
		if kg[material(p)] == 0 {
			of = append(of, material(p))
		}
		kg[material(p)] += i.Mass()
		t.rows = append(t.rows, []string{
			fmt.Sprint(i.Mark), fmt.Sprint(i.Count()), m.itemName(i), m.pass(material(p)), lists.SizeText(p, m.length),
			m.tenth(p.Mass()), m.tenth(i.Mass()), m.sheetOf(i, covers),
		})
	}
	for _, name := range of {
		t.rows = append(t.rows, []string{"", "", m.say("together"), m.pass(name), "", "", m.tenth(kg[name]), ""})
	}
	t.rows = append(t.rows, []string{"", fmt.Sprint(parts), m.say("all parts together"), "", "", "", m.tenth(mass), ""})
	return t
}

// itemName names the parts of an item: one, two, or the first and the last,
// with its hand where it has one.
func (m *maker) itemName(i lists.Item) string {
	names := m.passEach(i.Names())
	s := names[0]
	switch n := len(names); {
	case n == 2:
		s += ", " + names[1]
	case n > 2:
		s += " ... " + names[n-1]
	}
	if hand, _ := m.b.Design.HandOf(i.First()); hand != model.NoHand {
		s += " (" + m.pass(string(hand)) + ")"
	}
	if c := i.First().Cut; c != nil {
		s += m.sayf(", cut on %s", c.On)
	}
	return s
}

// material names the material as one orders it.
func material(p *model.Part) string {
	if p.Angle != nil || p.Rod != nil {
		return "S235JR"
	}
	return p.Material
}

// tenth writes a mass in a column, always to a tenth of a kilogram.
func (m *maker) tenth(x unit.Mass) string { return m.style.Fixed(float64(x), 1) }

// sheetOf gives the numbers of the sheets that show how an item is made; of
// rods those that show where they are drilled for.
func (m *maker) sheetOf(i lists.Item, covers int) string {
	p := i.First()
	kinds := map[string]bool{"slab": p.Slab != nil, "angle": p.Angle != nil, "cleat": p.Cleat != nil, "roll": p.RollOut != nil}
	walls := map[string]bool{}
	for _, q := range i.Parts {
		if q.Rod != nil {
			walls[m.sayf("Drilling, wall %s", m.pass(q.Rod.Wall.Name))] = true
		}
	}
	var out []string
	for k, pg := range m.others {
		kind, _, _ := strings.Cut(pg.sheet.Name, "-")
		mark, _, _ := strings.Cut(pg.sheet.Title, " ")
		wall, _, _ := strings.Cut(pg.sheet.Title, ":")
		if kinds[kind] && mark == fmt.Sprint(i.Mark) || walls[wall] {
			out = append(out, fmt.Sprint(covers+k+1))
		}
	}
	return strings.Join(out, ", ")
}

// buyingList is what is bought, without prices.
func (m *maker) buyingList() table {
	t := table{heads: []string{m.say("qty"), m.say("what"), m.buyingSize(), m.say("kg"), m.say("for"), m.say("mind")}, right: []bool{true, false, false, true, false, false}}
	for _, p := range append(lists.Purchases(m.b.Design), lists.Wired(m.b.Design, m.b.Job.Wiring)...) {
		mass := ""
		if p.Mass > 0 {
			mass = m.tenth(p.Mass)
		}
		t.rows = append(t.rows, []string{fmt.Sprint(p.Count), m.pass(p.What), m.sizeOf(p), mass, m.forText(p.For), m.pass(p.Mind)})
	}
	return t
}

// buyingSize is the head of the sizes; inches carry their sign.
func (m *maker) buyingSize() string {
	if m.style.Unit == "in" {
		return m.say("size")
	}
	return m.sayf("size in %s", cmp.Or(m.style.Unit, "mm"))
}

// sizeOf is the size to ask for: of wood and steel in the unit of the job, of
// screws and castors in millimetres, as they are sold.
func (m *maker) sizeOf(p lists.Purchase) string {
	switch {
	case p.Part != nil:
		return lists.SizeText(p.Part, m.length)
	case p.InMM && m.style.Unit != "" && m.style.Unit != "mm":
		return m.pass(p.Size) + " mm"
	}
	return m.pass(p.Size)
}

// forText keeps a list of names short.
func (m *maker) forText(names []string) string {
	for i, n := range names {
		names[i] = m.pass(n)
	}
	if n := len(names); n > 3 {
		return names[0] + " ... " + names[n-1]
	}
	return strings.Join(names, ", ")
}

// actList is the list on which a caution stands.
type actList uint8

const (
	making actList = iota
	buying
	onSite
)

// listOf tells the list of a caution by a word of its act.
func listOf(c report.Caution) actList {
	act := strings.ToLower(c.Act)
	switch {
	case strings.Contains(act, "order"), strings.Contains(act, "anchor"):
		return buying
	case strings.Contains(act, "wall"), strings.Contains(act, "electric"):
		return onSite
	}
	return making
}

// cautions gives those of one list.
func (m *maker) cautions(list actList) []string {
	var out []string
	for _, c := range report.Cautions(m.b.Design) {
		if listOf(c) == list {
			out = append(out, m.pass(c.Act)+": "+m.pass(c.Text))
		}
	}
	return out
}
