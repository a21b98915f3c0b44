package sheet

import (
	"fmt"
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// barView draws one angle or cleat in its own axes: x along the heel, or the upper
// back arris, from the left end, heights from the seat.
type barView struct {
	m     *maker
	part  *model.Part
	on    *model.Mounted
	a     *model.AnglePart // nil for a cleat
	c     *model.CleatPart
	made  string // tolerance of its length
	stage *stage
	front view.View // the wall leg, or the face of a cleat, seen from the room
	plan  view.View // the seat leg, or the top, seen from above
}

func newBarView(m *maker, p *model.Part) *barView {
	v := &barView{m: m, part: p, on: p.Bracket().On(), a: p.Angle, c: p.Cleat, made: m.sawn(p), stage: &stage{elevation: true}}
	it := view.Item{ID: stem(p.ID), Title: p.ID, Mark: p.Mark, Role: view.Made, DropHidden: true}
	it.Faces = own(p.Bodies[0].Solid, p.Bracket().Pose()).Faces()
	v.stage.add(it, p, nil)
	v.front, v.plan = view.Of(v.stage.scene, view.Front()), view.Of(v.stage.scene, view.Plan())
	return v
}

// up tells whether the wall leg stands up.
func (v *barView) up() bool { return v.a != nil && v.a.LegUp }

// deep is how wide a leg is, or a face of a cleat.
func (v *barView) deep(leg model.Leg) unit.Length {
	switch {
	case v.a != nil:
		return v.a.Section.Leg
	case leg == model.WallLeg:
		return v.c.High
	}
	return v.c.Wide
}

// heel is the height of the outer edge of the heel in the front view.
func (v *barView) heel() unit.Length {
	if v.up() {
		return -v.a.Section.Thickness
	}
	return 0
}

// at is the middle of a hole in the view of its leg.
func (v *barView) at(h model.BracketHole) geom.Vec { return geom.V(h.X, v.off(h.Leg, h.FromHeel)) }

// off is the place of a distance from the heel in the view of a leg.
func (v *barView) off(leg model.Leg, fromHeel unit.Length) unit.Length {
	if leg == model.WallLeg && v.up() {
		return v.heel() + fromHeel
	}
	return -fromHeel
}

// inward is the direction from the heel to the toe in the view of a leg.
func (v *barView) inward(leg model.Leg) unit.Length {
	if v.off(leg, 1) > v.off(leg, 0) {
		return 1
	}
	return -1
}

// of gives the holes of a leg.
func (v *barView) of(leg model.Leg) []model.BracketHole {
	return v.on.In(leg)
}

// lines gives the hole lines of a leg, each once.
func (v *barView) lines(leg model.Leg) []unit.Length {
	var out []unit.Length
	seen := map[unit.Length]bool{}
	for _, h := range v.of(leg) {
		if !seen[h.FromHeel] {
			seen[h.FromHeel] = true
			out = append(out, h.FromHeel)
		}
	}
	return out
}

// legs are the two views, one exactly below the other: in first angle the view
// from above stands below.
func (v *barView) legs(s drawing.Scale) []picture {
	third := v.m.b.Job.Show.Projection == "third"
	upper, lower := model.WallLeg, model.SeatLeg
	if third {
		upper, lower = lower, upper
	}
	return []picture{v.leg(upper, s, dim.Above), v.leg(lower, s, dim.Below)}
}

// leg is the view of a leg with its hole line and all holes from end A.
func (v *barView) leg(leg model.Leg, s drawing.Scale, side dim.Side) picture {
	length := v.on.Length
	p := picture{id: "wall-leg", title: v.title(leg), view: v.front, paint: v.m.usual(v.stage), style: v.m.steelStyle()}
	if leg == model.SeatLeg {
		p.id, p.view = "seat-leg", v.plan
	}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := v.holeLines(pl, leg, 0, length)
		if small(s) && len(v.of(leg)) > 0 {
			c, r := v.ring(leg)
			out = append(out, drawing.Circle{Centre: pl.Origin.Add(geom.V(s.Of(c.X), s.Of(c.Y))), Radius: s.Of(r), Pen: v.m.lines.Fine()})
		}
		return out
	}
	heel, toe := v.off(leg, 0), v.off(leg, v.deep(leg))
	p.ask = append(p.ask, dim.Datum{A: geom.V(0, heel), B: geom.V(0, toe), Letter: "A"})
	var at []geom.Vec
	var labels []dim.Label
	for _, h := range v.of(leg) {
		at = append(at, v.at(h))
		labels = append(labels, dim.Label{Prefix: h.Name + "  "})
	}
	if len(at) > 0 {
		p.ask = append(p.ask, dim.Running{Datum: geom.V(0, heel), From: "A", Points: at, Labels: labels, Dir: dim.Horizontal, Side: side})
	}
	if leg == model.WallLeg {
		p.ask = append(p.ask, dim.Linear{A: geom.V(0, heel), B: geom.V(length, heel), Dir: dim.Horizontal, Side: side, Label: dim.Label{Tolerance: v.made}})
	}
	p.ask = append(p.ask, v.sizes(leg, func(h model.BracketHole) bool { return !small(s) || !v.inDetail(h) })...)
	if !small(s) {
		for _, y := range v.lines(leg) {
			p.ask = append(p.ask, dim.Linear{A: geom.V(length, heel), B: geom.V(length, v.off(leg, y)), Dir: dim.Vertical, Side: dim.RightOf})
		}
	}
	if small(s) && len(v.of(leg)) > 0 {
		c, r := v.ring(leg)
		p.ask = append(p.ask, dim.Note{At: c.Add(geom.V(r*0.7, v.inward(leg)*r*0.7)), Lines: []string{detailLetter(leg)}, OnEdge: true})
	}
	if v.c != nil {
		return v.ofCleat(p, leg)
	}
	p.ask = append(p.ask, dim.Note{At: geom.V(length*3/4, heel), Lines: []string{v.m.say("heel // of an angle")}, OnEdge: true})
	if leg == model.SeatLeg {
		p.ask = append(p.ask, v.cuts()...)
	}
	return p
}

// title names the view of a leg.
func (v *barView) title(leg model.Leg) string {
	switch {
	case v.c != nil && leg == model.WallLeg:
		return v.m.say("Face, seen from the room")
	case v.c != nil:
		return v.m.say("Top, seen from above")
	case leg == model.WallLeg:
		return v.m.say("Wall leg, seen from the room")
	}
	return v.m.say("Seat leg, seen from above")
}

// sizes says the size of the holes of a leg, each once with its count, at the
// first hole of that size that is shown.
func (v *barView) sizes(leg model.Leg, shown func(model.BracketHole) bool) []dim.Request {
	var out []dim.Request
	count := map[string]int{}
	for _, h := range v.of(leg) {
		count[v.m.holeSize(h)]++
	}
	for _, h := range v.of(leg) {
		size := v.m.holeSize(h)
		n := count[size]
		if n == 0 || !shown(h) {
			continue
		}
		delete(count, size)
		if h.Slot == 0 && h.Sink == 0 {
			out = append(out, dim.Diameter{Centre: v.at(h), Dia: h.Dia, Count: n})
			continue
		}
		out = append(out, dim.Note{At: v.at(h).Add(geom.V(h.Dia/2, 0)), Lines: v.m.sizeLines(n, h), OnEdge: true})
	}
	return out
}

// sizeLines says the size of n holes in short lines.
func (m *maker) sizeLines(n int, h model.BracketHole) []string {
	out := []string{fmt.Sprintf("%d × Ø%s", n, m.length(h.Dia))}
	if h.Slot > 0 {
		out = []string{fmt.Sprintf("%d × %s", n, m.say("slot")), m.slotSize(h)}
	}
	if h.Sink > 0 {
		out = append(out, m.sunk(h))
	}
	return out
}

// cuts gives the angles of ends that are not cut square, in the view of the
// seat leg.
func (v *barView) cuts() []dim.Request {
	a := v.a
	var out []dim.Request
	end := func(e model.End, x, in unit.Length) {
		if e.Mitre != 0 {
			heel := geom.V(x, 0)
			toe := geom.V(x-in*unit.Length(math.Tan(float64(e.Mitre))), -a.Section.Leg)
			out = append(out, dim.Angle{Vertex: heel, A: heel.Add(geom.V(in, 0)), B: toe})
		}
	}
	end(a.Left, 0, a.Section.Leg)
	end(a.Right, a.Length, -a.Section.Leg)
	return out
}

// holeLines draws the back marks of a leg as centre lines, a little beyond the
// bar, and a cross line through each hole.
func (v *barView) holeLines(pl dim.Plate, leg model.Leg, from, to unit.Length) []drawing.Item {
	at := func(p geom.Vec) geom.Vec { return pl.Origin.Add(geom.V(pl.Scale.Of(p.X), pl.Scale.Of(p.Y))) }
	pen := v.m.lines.Centre()
	var out []drawing.Item
	for _, y := range v.lines(leg) {
		a, b := at(geom.V(from, v.off(leg, y))), at(geom.V(to, v.off(leg, y)))
		out = append(out, drawing.Line(a.Sub(geom.V(2, 0)), b.Add(geom.V(2, 0)), pen))
	}
	for _, h := range v.of(leg) {
		if h.X < from || h.X > to {
			continue
		}
		c := at(v.at(h))
		r := pl.Scale.Of(h.Dia/2) + 1
		if h.Slot > 0 && !h.Along {
			r += pl.Scale.Of(h.Slot / 2)
		}
		out = append(out, drawing.Line(c.Sub(geom.V(0, r)), c.Add(geom.V(0, r)), v.m.lines.Fine()))
	}
	return out
}

// steelStyle is how dimensions of steel look on this paper.
func (m *maker) steelStyle() dim.Style {
	if m.lines == drawing.Dense {
		return dim.Steel.Dense()
	}
	return dim.Steel
}
