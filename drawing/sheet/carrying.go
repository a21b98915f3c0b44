package sheet

import (
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model/bring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// carryingSheets show every slab from above as it is carried: its centre of
// gravity, where hands take it and what each then holds, where trestles and props
// stand, and the way in.
func carryingSheets(m *maker) []page {
	order := bring.OrderOf(m.b.Design)
	lifts := bring.LiftsOf(m.b.Design)
	if len(lifts) == 0 {
		return nil
	}
	c := chapter{name: "slabs", title: m.say("slabs")}
	for _, l := range lifts {
		c.pictures = append(c.pictures, m.carried(l, order))
	}
	c.beside = m.liftTable(lifts).blocks("carrying-lifts", m.say("Who carries what"), m.lines)
	c.beside = append(c.beside, notesBlock("carrying-notes", m.say("Mind"), []string{
		m.say("Triangles: hands, under sawn edges, never at a natural edge. Quartered circle: centre of gravity. Dashed lines across: trestles. Squares: props before it is lowered for the last time."),
		m.say("Shares are for a slab held level and still. On a stair most of the weight is with the lower ones: one more there. The lifting equation is not made for stairs, nor for kneeling under a desk."),
		m.say("Gloves without loose cuffs, shoes with caps; one gives the word. Nobody lets go before props or angles carry."),
	}))
	c.beside = append(c.beside, m.wayIn()...)
	pages := m.pages("carrying", m.say("Carrying plan"), []chapter{c})
	for i := range pages {
		pages[i].block.DocumentType = m.say("carrying plan")
	}
	return pages
}

// Signs on the carrying plan, on paper.
const (
	heartSign unit.Length = 2
	handSign  unit.Length = 4
	propSign  unit.Length = 2.4
)

// carried draws a slab from above in its own axes.
func (m *maker) carried(l bring.Lift, order bring.Order) picture {
	outline := l.Part.Slab.TopOutline()
	low, high := outline.Bounds()
	heart := l.Part.Slab.Pose.Unplan(l.Part.Centroid().Flat())
	var props []bring.Prop
	for _, w := range order {
		if w.Part == l.Part {
			props = w.Props(m.b.Design)
		}
	}
	p := picture{id: "carried-" + stem(l.Part.ID), title: m.sayf("%s, %s", m.pass(l.Part.ID), m.kg(l.Mass)), style: m.joinery()}
	p.view = view.View{Bounds: drawing.Rect{Min: low, Max: high}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		g := drawing.Group{ID: "slab-" + stem(l.Part.ID), Title: l.Part.ID}
		for _, loop := range outline.Loops() {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, loop), m.lines.Outline()))
		}
		return []drawing.Item{g, m.heart(paperAt(pl, heart), stem(l.Part.ID)), m.hands(pl, l, heart), m.trestles(pl, l, props)}
	}
	for i, g := range l.Grips {
		text := m.kg(g.Share)
		if l.People == 1 {
			text = [2]string{m.say("left hand"), m.say("right hand")}[i]
		}
		p.ask = append(p.ask, dim.Note{At: g.At, Lines: []string{text}, OnEdge: true})
	}
	return p
}

// heart draws a centre of gravity: a circle with two quarters filled.
func (m *maker) heart(at geom.Vec, id string) drawing.Item {
	g := drawing.Group{ID: "heart-" + id, Title: m.say("centre of gravity"), Items: []drawing.Item{drawing.Circle{Centre: at, Radius: heartSign, Pen: m.lines.Fine()}}}
	for _, from := range []unit.Angle{0, 180} {
		quarter := []geom.Vec{at}
		for k := range 7 {
			quarter = append(quarter, at.Add(geom.V(heartSign, 0).Turn((from+unit.Angle(k)*15)*unit.Degree)))
		}
		g.Items = append(g.Items, drawing.Area{Loops: [][]geom.Vec{quarter}})
	}
	return g
}

// hands draws a triangle outside the edge at every grip, its tip on the edge.
func (m *maker) hands(pl dim.Plate, l bring.Lift, heart geom.Vec) drawing.Item {
	g := drawing.Group{ID: "hands-" + stem(l.Part.ID), Title: m.sayf("hands on %s", l.Part.ID)}
	for _, h := range l.Grips {
		in := geom.V(0, 1)
		for _, e := range l.Part.Slab.Edges {
			if e.Name == h.Edge {
				in = e.End.Sub(e.Start).Unit().Left().Mul(-1)
			}
		}
		at := paperAt(pl, h.At)
		back := at.Sub(in.Mul(float64(handSign)))
		side := in.Left().Mul(float64(handSign / 3))
		g.Items = append(g.Items, drawing.Area{Loops: [][]geom.Vec{{at, back.Add(side), back.Sub(side)}}})
	}
	return g
}

// trestles draws the lines of trestles and the heads of props.
func (m *maker) trestles(pl dim.Plate, l bring.Lift, props []bring.Prop) drawing.Item {
	g := drawing.Group{ID: "trestles-" + stem(l.Part.ID), Title: m.sayf("what holds %s", l.Part.ID)}
	for _, t := range l.Trestles {
		g.Items = append(g.Items, drawing.Line(paperAt(pl, geom.V(t.X, t.Near)), paperAt(pl, geom.V(t.X, t.Far)), m.lines.Hidden()))
	}
	for _, q := range props {
		at := paperAt(pl, q.At)
		g.Items = append(g.Items, drawing.Outline(drawing.Box(at.X-propSign/2, at.Y-propSign/2, propSign, propSign).Corners(), m.lines.Fine()))
	}
	return g
}

// liftTable says who carries what, and where things stand, from the left end of
// the back edge.
func (m *maker) liftTable(lifts []bring.Lift) table {
	t := table{heads: m.heads("slab", "kg", "people", "kg each // of people", "kg by the equation", "hands, from the left / from the back", "trestles at"), right: []bool{false, true, true, true, true, false, false}}
	for _, l := range lifts {
		people := fmt.Sprint(l.People)
		if !l.Enough {
			people = m.say("4 and a lift table")
		}
		equation := m.say("out of reach")
		if l.Recommended > 0 {
			equation = m.tenth(l.Recommended)
		}
		hands, on := m.say("no even places: straps or a board"), m.say("no whole line across")
		if l.Grips != nil {
			var list []string
			for _, g := range l.Grips {
				list = append(list, m.about(g.At.X)+" / "+m.about(-g.At.Y))
			}
			hands = strings.Join(list, "; ")
		}
		if l.Trestles != nil {
			on = m.about(l.Trestles[0].X) + ", " + m.about(l.Trestles[1].X)
		}
		t.rows = append(t.rows, []string{m.pass(l.Part.ID), m.tenth(l.Mass), people, m.tenth(l.Share), equation, hands, on})
	}
	return t
}
