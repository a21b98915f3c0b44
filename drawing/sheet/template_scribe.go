package sheet

import (
	"fmt"
	"math"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	scribeFrom  unit.Length = 3 // a gap that varies less is even to the eye
	scribeUpTo  unit.Length = 30
	scribeNear  unit.Length = 150
	scribeBelow unit.Length = 10.8 // room for figures below the edge
	scribeAbove unit.Length = 9.6
)

// scribeTemplates gives a strip for every stretch of an edge along a wall from
// which its gap varies: the wall's own line, with the gap at stations.
func scribeTemplates(m *maker, set *templateSet) {
	for _, p := range m.parts(func(p *model.Part) bool { return p.Kind == model.KindSlab && p.Slab != nil }) {
		for _, e := range p.Slab.Edges {
			if e.Bound != model.ToWall {
				continue
			}
			for _, w := range m.b.Room.Walls {
				line, ok := besideEdge(p.Slab, e, w)
				if !ok || uneven(line) < scribeFrom-0.05 {
					continue
				}
				if uneven(line) > scribeUpTo {
					set.leave(m.sayf("%s along wall %s: the gap varies by %s, too much to scribe.", m.pass(p.ID), m.pass(w.Name), m.length(uneven(line))))
					continue
				}
				if length := line[len(line)-1].X - line[0].X; length > longest {
					set.leave(m.sayf("%s along wall %s: a strip over %s creeps when taped; scribe it from the wall.", m.pass(p.ID), m.pass(w.Name), m.length(longest)))
					continue
				}
				set.add(m.scribeTemplate(p, e, w, line))
			}
		}
	}
}

// besideEdge is the face of a wall beside an edge of a slab, at its surface:
// x along the edge from its left end, y the gap. ok is false when the wall
// does not run beside the edge.
func besideEdge(s *model.SlabPart, e model.Edge, w *model.Wall) ([]geom.Vec, bool) {
	edge := e.End.Sub(e.Start)
	if !alike(w, s, edge.Unit()) {
		return nil, false
	}
	turned := mapped(ownFace(w, s, s.Top), func(p geom.Vec) geom.Vec { return p.Sub(e.Start).Turn(-edge.Angle()) })
	var out []geom.Vec
	for i := 1; i < len(turned); i++ {
		window := drawing.Rect{Min: geom.V(0, -scribeNear), Max: geom.V(edge.Len(), scribeNear)}
		if a, b, ok := clipLine(window, turned[i-1], turned[i]); ok {
			if len(out) == 0 {
				out = append(out, a)
			}
			out = append(out, b)
		}
	}
	return out, len(out) > 1 && out[len(out)-1].X-out[0].X > scribeNear
}

// uneven is how much the gap varies.
func uneven(line []geom.Vec) unit.Length {
	low, high := unit.Length(math.Inf(1)), unit.Length(math.Inf(-1))
	for _, p := range line {
		low, high = min(low, p.Y), max(high, p.Y)
	}
	return high - low
}

// heightAt is the height of a chain that runs to the right at a place.
func heightAt(line []geom.Vec, x unit.Length) unit.Length {
	for i := 1; i < len(line); i++ {
		if a, b := line[i-1], line[i]; x <= b.X && b.X > a.X {
			return a.Lerp(b, float64((x-a.X)/(b.X-a.X))).Y
		}
	}
	return line[len(line)-1].Y
}

// scribeTemplate draws the straight edge, the wall beside it and the line at an
// even gap from the wall.
func (m *maker) scribeTemplate(p *model.Part, e model.Edge, w *model.Wall, line []geom.Vec) *template {
	first, last := line[0], line[len(line)-1]
	high := first.Y
	for _, q := range line {
		high = max(high, q.Y)
	}
	t := &template{name: m.sayf("%s, %s edge along wall %s", m.pass(p.ID), m.pass(e.Name), m.pass(w.Name)),
		use: m.sayf("The wall's own line: the gap varies by %s. For scribing the edge to an even gap of %s.", m.length(uneven(line)), m.length(e.Gap))}
	t.shape = geom.Rect(geom.V(first.X-1, -scribeBelow), geom.V(last.X+1, high+wallBand+scribeAbove))
	fine := drawing.Dense.Fine()
	a, b := geom.V(first.X, 0), geom.V(last.X, 0)
	t.lines = append(wallLines(line), drawing.Line(a, b, drawing.Dense.Outline()))
	even := mapped(line, func(q geom.Vec) geom.Vec { return q.Sub(geom.V(0, e.Gap)) })
	t.lines = append(t.lines, drawing.Polyline{Points: even, Pen: drawing.Dense.Hidden()})
	station := func(x unit.Length) {
		at := geom.V(x, 0)
		t.lines = append(t.lines, drawing.Line(geom.V(x, -2), geom.V(x, heightAt(line, x)), fine))
		t.labels = append(t.labels, label{lines: []string{fmt.Sprintf("%s: %s", m.length(x), m.length(heightAt(line, x)))}, at: at.Sub(geom.V(0, 2)), toward: geom.V(0, -1), reach: 20})
	}
	start := math.Ceil(float64((first.X + 25) / everyMark))
	station(first.X)
	for k := start; unit.Length(k)*everyMark <= last.X-25; k++ {
		station(unit.Length(k) * everyMark)
	}
	station(last.X)
	for x := first.X + everyMark/2; x < last.X; x += 2 * everyMark {
		t.labels = append(t.labels, note(geom.V(x, -1.5), geom.V(0, -1), m.sayf("slab's %s edge; dashed: even gap of %s", m.pass(e.Name), m.length(e.Gap))))
	}
	for x := first.X + 3*everyMark/2; x < last.X; x += 2 * everyMark {
		t.labels = append(t.labels, note(geom.V(x, high+wallBand), geom.V(0, 1), m.sayf("wall %s, %s up; figures: place along the edge: gap", m.pass(w.Name), m.length(p.Slab.Top))))
	}
	return t
}
