package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	aroundCutOut unit.Length = 15
	leastPaper   unit.Length = 90 // room for the figures of a small one
	edgeNear     unit.Length = 60 // an edge no further than this is shown too
	mostCutTiles             = 4
)

// cutOutTemplates gives the outline of every cut-out that a few sheets can
// show, with the edges of the slab beside it.
func cutOutTemplates(m *maker, set *templateSet) {
	done := map[string]bool{}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		for _, f := range p.Slab.Features {
			if f.Kind != model.CutOut || f.Outline.Intersect(p.Slab.TopOutline()).Empty() || done[fmt.Sprint(p.Mark, f.Name)] {
				continue
			}
			done[fmt.Sprint(p.Mark, f.Name)] = true
			t := m.cutOutTemplate(p, f)
			room := templateRoom()
			if len(tiles(t.shape, geom.V(room.Width(), room.Height()))) > mostCutTiles {
				set.leave(m.sayf("%s, %s: larger than %d sheets; mark it from its sizes.", m.pass(p.ID), m.pass(f.Name), mostCutTiles))
				continue
			}
			set.add(t)
		}
	}
}

// cutOutTemplate shows a cut-out from above in the axes of its slab: the
// outline, the edges beside it, and the distances from both datum edges.
func (m *maker) cutOutTemplate(p *model.Part, f model.Feature) *template {
	t := &template{name: m.pass(p.ID) + ", " + m.pass(f.Name), use: m.say("The opening, through the whole thickness. Lay it on the edges shown, or at its figures: from the left end and from the reference edge.")}
	slab := p.Slab.TopOutline()
	notch := f.Outline.Intersect(slab)
	a, b := notch.Bounds()
	lo, hi := slab.Bounds()
	around := geom.V(max(aroundCutOut, (leastPaper-b.X+a.X)/2), max(aroundCutOut, (leastPaper-b.Y+a.Y)/2))
	window := drawing.Rect{Min: a.Sub(around), Max: b.Add(around)}
	for _, k := range []struct {
		edge, side unit.Length
		at         *unit.Length
		out        unit.Length
	}{{lo.X, a.X, &window.Min.X, -1}, {hi.X, b.X, &window.Max.X, 1}, {lo.Y, a.Y, &window.Min.Y, -1}, {hi.Y, b.Y, &window.Max.Y, 1}} {
		if (k.edge-k.side)*k.out < edgeNear {
			*k.at = k.edge + 6*k.out
		}
	}
	t.shape = geom.Rect(window.Min, window.Max)
	for _, l := range slab.Loops() {
		t.lines = append(t.lines, clipped([]drawing.Item{drawing.Outline(l, drawing.Dense.Fine())}, window)...)
	}
	for _, l := range notch.Loops() {
		t.lines = append(t.lines, drawing.Outline(l, drawing.Dense.Outline()))
	}
	c := a.Lerp(b, 0.5)
	const arm = 8
	for _, d := range []geom.Vec{geom.V(arm, 0), geom.V(0, arm)} {
		t.lines = append(t.lines, drawing.Line(c.Sub(d), c.Add(d), drawing.Dense.Centre()))
	}
	t.labels = append(t.labels,
		label{lines: []string{m.sayf("middle: %s from the left end,", m.length(c.X)), m.sayf("%s from the reference edge", m.length(-c.Y)), m.say("seen from above")}, at: c, toward: geom.V(1, -1), reach: 60},
		note(geom.V(a.X, c.Y), geom.V(1, 0), m.sayf("%s from the left", m.length(a.X))), note(geom.V(b.X, c.Y), geom.V(-1, 0), m.length(b.X)),
		note(geom.V(c.X, b.Y), geom.V(0, -1), m.length(-b.Y)), note(geom.V(c.X, a.Y), geom.V(0, 1), m.sayf("%s from the edge", m.length(-a.Y))))
	return t
}
