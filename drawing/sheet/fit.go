package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// fitSheets is one page for all slabs that are bound at both ends: the size to
// order, with what happens to other sizes as small curves.
func fitSheets(m *maker) []page {
	var all []ordered
	var words, assumed []string
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		f, err := m.b.Design.FitOf(p.ID)
		if err != nil || p.Cut != nil { // what is cut is not ordered
			continue // the findings say why
		}
		for _, w := range f.Ways {
			all = append(all, ordered{p, w})
			if s := w.ShapeText(); s != "" {
				words = append(words, fmt.Sprintf("%d %s: %s.", p.Mark, m.pass(p.ID), m.passAll(s)))
			}
			for _, s := range w.Scribe {
				words = append(words, m.sayf("%d %s, %s edge: its wall is %s off straight; leave %s more wood there and scribe it on the spot.", p.Mark, m.pass(p.ID), m.pass(s.Edge), m.length(s.Bow), m.length(s.OverWood)))
			}
			for _, a := range f.Assumed {
				if s := m.passAll(a.What) + " (" + m.passAll(a.Source) + ")."; !slices.Contains(assumed, s) {
					assumed = append(assumed, s)
				}
			}
		}
	}
	if len(all) == 0 {
		return nil
	}
	f := newListing(m, "order-sizes", m.say("Order sizes"))
	f.table(m.say("Sizes to order"), m.orderTable(all), asIs)
	f.notes(m.say("How to read it"), m.orderNotes(all[0].way))
	m.curves(f, all)
	f.notes(m.say("Shape of the ends"), words)
	f.notes(m.say("Taken for granted"), assumed)
	pages := f.pages(m.say("order list"))
	for i := range pages {
		pages[i].block.Tolerance = m.sayf("sizes to order %s", m.shopTolerance(all[0].way))
	}
	return pages
}

// ordered is one way across a slab.
type ordered struct {
	part *model.Part
	way  model.FitWay
}

func (m *maker) orderTitle(o ordered) string {
	return fmt.Sprintf("%d  %s, %s", o.part.Mark, m.pass(o.part.ID), m.pass(o.way.Name))
}

// orderTable has a row for every slab and way; the second size is at the other
// end of the slab.
func (m *maker) orderTable(all []ordered) table {
	t := table{heads: m.heads("no.", "slab", "between", "size", "drawn", "order", "would do", "fits as drawn"),
		right: []bool{true, false, false, false, true, true, true, true}}
	for _, o := range all {
		w := o.way
		where := m.endsOf(w)
		one := []string{fmt.Sprint(o.part.Mark), m.pass(o.part.ID), m.pass(w.From) + " - " + m.pass(w.To), where[0], m.length(w.Size), m.say("not yet"), "", m.say("unchecked")}
		two := []string{"", "", "", where[1], m.length(w.Other), "", "", ""}
		if len(w.Disputed) > 0 {
			one[7] = m.say("disputed")
		}
		if w.Order != nil {
			one[5], two[5] = m.length(w.Order.Size)+" "+m.shopTolerance(w), m.length(w.OrderOther())+" "+m.shopTolerance(w)
			one[6], one[7] = m.say("none // of the sizes"), m.percent(w.Chance.Fits(0))
			if w.Order.Good {
				one[6] = m.sayf("%s to %s", m.length(w.Order.From), m.length(w.Order.To))
			}
		}
		t.rows = append(t.rows, one, two)
	}
	return t
}

// endsOf says where the two sizes of a way lie on the slab.
func (m *maker) endsOf(w model.FitWay) [2]string {
	if w.Name == "depth" {
		return [2]string{m.say("depth at the left"), m.say("at the right")}
	}
	return [2]string{m.say("length at the back"), m.say("at the front")}
}

// shopTolerance is the tolerance of the shop in the unit of the job.
func (m *maker) shopTolerance(w model.FitWay) string {
	t := w.Wish.Shop
	if t.Plus == t.Minus {
		return "±" + m.length(t.Plus)
	}
	return "+" + m.length(t.Plus) + "/-" + m.length(t.Minus)
}

// percent writes a chance; drawn rooms cannot tell the nearly certain from the
// certain.
func (m *maker) percent(p float64) string {
	switch {
	case p > 0.9995:
		return m.sayf("over %s %%", m.style.Number(99.9, 1))
	case p < 0.0005:
		return m.sayf("under %s %%", m.style.Number(0.1, 1))
	}
	return m.style.Number(100*p, 1) + " %"
}

func (m *maker) orderNotes(w model.FitWay) []string {
	return []string{
		m.sayf("Drawn: the length of the edge on the slab sheet, for sawing on site. Order: the length of the same edge from a shop that keeps %s; both ends of the slab change alike, its angles stay.", m.shopTolerance(w)),
		m.sayf("Fits: it goes in with a gap of %s or more to each wall. Jams: what is delivered does not. Shows: a gap is more than %s wider than drawn (%s between slabs) when the slab lies in place.",
			m.length(w.Wish.Least), m.length(w.Wish.Wider), m.length(w.Wish.WiderJoint)),
		m.sayf("Would do: every size that jams and shows with no more than %s each.", m.percent(1-w.Wish.Sure)),
		m.say("Where it says unchecked or disputed, measure first: no size can be given. The report names the readings."),
	}
}

const (
	curveWidth  unit.Length = 77
	curveHeight unit.Length = 25
	curveLeft   unit.Length = 13 // room for the figures beside the axis
	curveFoot   unit.Length = 6  // room for the figures below it
)

// curves sets the curves in rows, as many beside each other as there is room.
func (m *maker) curves(f *listing, all []ordered) {
	var list []ordered
	for _, o := range all {
		if o.way.Order != nil {
			list = append(list, o)
		}
	}
	if len(list) == 0 {
		return
	}
	const tall = curveHeight + curveFoot + headingRoom
	legend, high := m.curveLegend()
	if !f.fresh() && high+columnGutter+tall > f.left() {
		f.next()
	}
	f.add(m.say("legend"), legend, high)
	for len(list) > 0 {
		if !f.fresh() && tall > f.left() {
			f.next()
		}
		n := min(len(list), max(1, int((f.columns[0].Width()+columnGap)/(curveWidth+columnGap))))
		var items []drawing.Item
		for i, o := range list[:n] {
			items = append(items, drawing.Move(m.fitCurve(o), geom.V(unit.Length(i)*(curveWidth+columnGap), 0))...)
		}
		f.add(m.say("what sizes do"), items, tall)
		list = list[n:]
	}
}

// curveLegend tells what the lines of all curves are.
func (m *maker) curveLegend() ([]drawing.Item, unit.Length) {
	const h, line = drawing.Small, 12
	items := []drawing.Item{drawing.Write(geom.V(0, -h), m.say("What other sizes do, in percent, by the size ordered"), h, drawing.Left).Strong()}
	y := -headingRoom - h
	x := unit.Length(0)
	for _, e := range []struct {
		pen  drawing.Pen
		text string
	}{{m.lines.Outline(), m.say("jams")}, {m.lines.Hidden(), m.say("shows too wide a gap")}, {wouldDo, m.say("would do")}, {m.lines.Centre(), m.say("order")}} {
		items = append(items, drawing.Line(geom.V(x, y+h/2), geom.V(x+line, y+h/2), e.pen))
		t := drawing.Write(geom.V(x+line+2, y), e.text, h, drawing.Left)
		items = append(items, t)
		x += line + 2 + t.Width() + 6
	}
	return items, headingRoom + h + 1
}

// wouldDo is the bar on the axis over the sizes that would do.
var wouldDo = drawing.Pen{Width: 1}

// fitCurve draws how often a size jams and how often it shows too wide a gap,
// its upper left corner at the origin.
func (m *maker) fitCurve(o ordered) []drawing.Item {
	const h = drawing.Small
	order := o.way.Order
	points := order.Curve
	first, last := points[0].Size, points[len(points)-1].Size
	bottom := -headingRoom - curveHeight
	plot := drawing.Box(curveLeft, bottom, curveWidth-curveLeft-6, curveHeight)
	at := func(size unit.Length, share float64) geom.Vec {
		return geom.V(plot.Min.X+plot.Width()*(size-first)/max(1, last-first), bottom+curveHeight*unit.Length(share))
	}
	items := []drawing.Item{
		drawing.Write(geom.V(0, -h), drawing.Fit(m.orderTitle(o), h, curveWidth), h, drawing.Left),
		drawing.Line(plot.Min, geom.V(plot.Max.X, bottom), m.lines.Fine()),
		drawing.Line(plot.Min, geom.V(plot.Min.X, plot.Max.Y), m.lines.Fine()),
	}
	for _, share := range []float64{0, 0.5, 1} {
		p := at(first, share)
		items = append(items, drawing.Line(p.Sub(geom.V(1, 0)), p, m.lines.Fine()),
			drawing.Write(p.Sub(geom.V(2, h/2)), fmt.Sprintf("%.0f", 100*share), h, drawing.Right))
	}
	var jams, wide []geom.Vec
	for _, p := range points {
		jams, wide = append(jams, at(p.Size, p.Jams)), append(wide, at(p.Size, p.Wide))
	}
	items = append(items, drawing.Polyline{Points: jams, Pen: m.lines.Outline()}, drawing.Polyline{Points: wide, Pen: m.lines.Hidden()},
		drawing.Line(at(order.Size, 0), at(order.Size, 1), m.lines.Centre()))
	if order.Good {
		items = append(items, drawing.Line(at(order.From-0.4, 0), at(order.To+0.4, 0), wouldDo))
	}
	items = append(items, m.sizeTicks(points[0].Size, last, order.Size, func(s unit.Length) geom.Vec { return at(s, 0) })...)
	return []drawing.Item{drawing.Group{ID: "curve-" + stem(o.part.ID) + "-" + o.way.Name, Title: m.orderTitle(o), Items: items}}
}

// sizeTicks marks whole millimetres on the axis and writes as many of them as
// there is room for; the size to order always.
func (m *maker) sizeTicks(first, last, order unit.Length, at func(unit.Length) geom.Vec) []drawing.Item {
	const h = drawing.Small
	write := func(s unit.Length) drawing.Text {
		t := drawing.Write(at(s).Sub(geom.V(0, h+2.6)), m.length(s), h, drawing.Centre)
		if s == order {
			t = t.Strong()
		}
		return t
	}
	texts := []drawing.Text{write(order)}
	for s := first; s <= last; s++ {
		t := write(s)
		if int(s)%2 == 0 && !slices.ContainsFunc(texts, func(u drawing.Text) bool {
			d := t.At.X - u.At.X
			return max(d, -d) < (t.Width()+u.Width())/2+2
		}) {
			texts = append(texts, t)
		}
	}
	var items []drawing.Item
	for s := first; s <= last; s++ {
		long := unit.Length(0.7)
		if slices.ContainsFunc(texts, func(u drawing.Text) bool { return u.At.X == at(s).X }) {
			long = 1.6
		}
		items = append(items, drawing.Line(at(s).Sub(geom.V(0, long)), at(s), m.lines.Fine()))
	}
	for _, t := range texts {
		items = append(items, t)
	}
	return items
}
