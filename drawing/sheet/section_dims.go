package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

func number(p *model.Part) string { return fmt.Sprint(p.Mark) }

// sectionDims gives the heights from the floor with what they are, the depths
// that legs need, and what is free above the thighs and under the shelves.
func (m *maker) sectionDims(c cutting, walls upright, front unit.Length, w drawing.Rect) []dim.Request {
	sp := c.slab.Slab
	at := func(z unit.Length) geom.Vec { return geom.V(front, z) }
	stops := []stop{{at: at(sp.Top), name: m.say("surface")}, {at: at(sp.Top - sp.Thickness), name: m.say("underside")}}
	if low := m.b.Room.FloorAt(c.at(front)); low != 0 {
		stops = append(stops, stop{at: at(low), name: m.say("floor here")})
	}
	for _, f := range m.sitters(c) {
		stops = append(stops, stop{at: at(f.elbow), name: m.say("elbow"), about: true}, stop{at: at(f.seat), name: m.say("seat // of a person"), about: true})
	}
	var ask []dim.Request
	var depths []dim.Request
	for _, z := range c.zones {
		box, ok := c.zoneBox(z, walls)
		if !ok {
			continue
		}
		to := box.Max.X
		what := m.say("feet")
		if z.Kind == model.ThighZone {
			stops = append(stops, m.thighStops(z, at)...)
			what = m.say("knees")
		}
		if _, want, _ := c.along(z.Plan); want > to+1 {
			what += m.sayf(", want %s", m.about(want-front))
		}
		if len(c.zones) <= 4 {
			depths = append(depths, dim.Linear{A: geom.V(front, z.Floor), B: geom.V(to, z.Floor), Dir: dim.Horizontal, Side: dim.Below, Label: dim.Label{Text: m.about(to-front) + " " + what}})
		}
	}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Kind == model.KindShelf }) {
		from, to, ok := c.along(p.Outline())
		under := p.Slab.Top - p.Slab.Thickness
		if !ok || under < sp.Top || p.Slab.Top > w.Max.Y {
			continue
		}
		stops = append(stops, stop{at: geom.V(from, under), name: m.pass(p.ID)})
		x := from + (to-from)/3
		if below := m.topBelow(c, x, under); below > 0 {
			ask = append(ask, dim.Across{A: geom.V(x, below), B: geom.V(x, under), Label: dim.Label{Suffix: " " + m.say("free // room")}})
		}
	}
	ask = append(m.heights(geom.V(front, 0), m.say("floor"), stops), ask...)
	ask = append(ask, depths...)
	for _, wall := range m.b.Room.Walls {
		for _, o := range wall.Obstacles {
			from, to, ok := c.along(obstaclePlan(o))
			if ok && to > w.Min.X && from < w.Max.X && o.Bottom < w.Max.Y {
				mid := geom.V((from+to)/2, (o.Bottom+min(o.Top, w.Max.Y))/2)
				ask = append(ask, dim.Note{At: mid, Lines: m.noted(o.Name)})
			}
		}
	}
	return ask
}

// topBelow is the highest surface of a slab below a height at a place.
func (m *maker) topBelow(c cutting, x, z unit.Length) unit.Length {
	var top unit.Length
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		if p.Slab.Top < z && p.Outline().Contains(c.at(x)) {
			top = max(top, p.Slab.Top)
		}
	}
	return top
}

// thighStops are the height that somebody's thighs need, with what is to spare
// over it, and the lowest thing over them.
func (m *maker) thighStops(z model.Zone, at func(unit.Length) geom.Vec) []stop {
	need := z.Floor + z.Height
	f, ok := m.legFinding(z)
	if !ok || f.Margin == nil || f.Measured == nil {
		return []stop{{at: at(need), name: m.say("thighs"), about: true}}
	}
	text := m.sayf("thighs, %s free", m.length(unit.Length(f.Margin.Value)))
	if f.Margin.Value < 0 {
		text = m.sayf("thighs, %s LACKING", m.length(unit.Length(-f.Margin.Value)))
	}
	out := []stop{{at: at(need), name: text, about: true}}
	if len(f.Parts) > 0 && f.Parts[0] != z.Slab {
		out = append(out, stop{at: at(z.Floor + unit.Length(f.Measured.Value)), name: m.sayf("lowest: %s", f.Parts[0])})
	}
	return out
}
