package sheet

import (
	"slices"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

const (
	rodTop    unit.Length = 13.3 // of the strip, above the axes
	rodBelow  unit.Length = 5.6
	pastEnd   unit.Length = 6 // of a strip beyond the line that it starts at
	longest   unit.Length = 4000
	everyMark unit.Length = 100
	footShown unit.Length = 40 // a strip shows the underside of a shelf no further below the axes
)

// rodStrip is what the strip of a shelf shows: along the back edge, which is x
// of the shelf, and up from the axes of the rods.
type rodStrip struct {
	shelf *model.Part
	bores []model.Feature
	rods  []*model.RodPart
	half  unit.Length // from the axes to the underside
	foot  unit.Length // from the axes to the lower line of the strip: the underside, unless the shelf is thick
	datum unit.Length // x from which figures count
	from  string      // what the datum is
	right bool        // the datum is at the right end
	wall  bool        // the datum is a wall
}

// rodTemplates gives a strip for every shelf on hidden rods: the holes in the
// wall and the bores in the shelf must match.
func rodTemplates(m *maker, set *templateSet) {
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		r := m.rodStrip(p)
		if len(r.bores) == 0 {
			continue
		}
		if r.span() > longest {
			set.leave(m.sayf("%s, rods: a strip over %s creeps when taped; mark the rods from the figures.", m.pass(p.ID), m.length(longest)))
			continue
		}
		set.add(m.rodTemplate(r))
	}
}

func (m *maker) rodStrip(p *model.Part) rodStrip {
	s := p.Slab
	r := rodStrip{shelf: p}
	for _, f := range s.Features {
		i := slices.IndexFunc(m.b.Design.Parts, func(q *model.Part) bool { return q.ID == f.For && q.Rod != nil })
		if f.Kind == model.Bore && i >= 0 {
			r.bores, r.rods = append(r.bores, f), append(r.rods, m.b.Design.Parts[i].Rod)
			r.half, r.foot = f.Height, f.Height
		}
	}
	if len(r.bores) == 0 {
		return r
	}
	if r.foot > footShown {
		r.foot = footShown / 2
	}
	i := slices.IndexFunc(s.Edges, func(e model.Edge) bool { return e.Reference })
	i = max(i, 0)
	at := r.rods[0]
	r.from = m.sayf("the shelf's left end, %s from corner %s", m.length(at.At-r.bores[0].At.X), at.Wall.From.Name)
	for _, side := range []int{-1, 0} { // the corner at the left end of the back edge, then at the right one
		if c, ok := m.slabCorner(p, (i+side+len(s.Edges))%len(s.Edges)); ok {
			r.datum, r.right, r.wall = c.next.Start.X+c.off.X, side == 0, true
			r.from = m.sayf("wall %s", m.pass(c.left.Name))
			if r.right {
				r.from = m.sayf("wall %s", m.pass(c.right.Name))
			}
			break
		}
	}
	return r
}

// off is how far a place is from the datum.
func (r rodStrip) off(x unit.Length) unit.Length { return abs(x - r.datum) }

// span is the length from the datum past the last rod.
func (r rodStrip) span() unit.Length {
	var out unit.Length
	for i, f := range r.bores {
		out = max(out, r.off(f.At.X)+r.rods[i].WallHole/2+5)
	}
	return out
}

// at is the place along the strip at a distance from the datum.
func (r rodStrip) at(off unit.Length) unit.Length {
	if r.right {
		return r.datum - off
	}
	return r.datum + off
}

func (m *maker) rodTemplate(r rodStrip) *template {
	span := r.span()
	a, b := r.at(-pastEnd), r.at(span)
	low := -r.half - rodBelow
	t := &template{name: m.sayf("%s, rods in the wall", m.pass(r.shelf.ID)),
		use: m.sayf("For the wall and for the shelf's back edge. Starts at %s; its line level, %s above the floor.", r.from, m.length(r.rods[0].Height))}
	t.shape = geom.Rect(geom.V(min(a, b), low), geom.V(max(a, b), rodTop))
	fine, level := drawing.Dense.Fine(), drawing.Dense.Centre()
	start, end := geom.V(r.datum, 0), geom.V(b, 0)
	t.lines = append(t.lines, drawing.Line(start, end, level),
		drawing.Line(start.Sub(geom.V(0, r.foot)), end.Sub(geom.V(0, r.foot)), drawing.Dense.Outline()))
	m.rodEnd(t, r)
	for x := everyMark; x <= span; x += everyMark {
		p := geom.V(r.at(x), -r.foot)
		t.lines = append(t.lines, drawing.Line(p, p.Add(geom.V(0, 2)), fine))
		t.labels = append(t.labels, label{lines: []string{m.length(x)}, at: p, toward: geom.V(0, -1), reach: 6})
	}
	for i, f := range r.bores {
		c, hole := geom.V(f.At.X, 0), r.rods[i].WallHole/2
		t.lines = append(t.lines, drawing.Circle{Centre: c, Radius: hole, Pen: drawing.Dense.Outline()},
			drawing.Line(c.Sub(geom.V(0, hole+2)), c.Add(geom.V(0, hole+2)), fine),
			drawing.Line(c.Sub(geom.V(hole, 0)), c.Add(geom.V(hole, 0)), fine))
		t.labels = append(t.labels, label{lines: []string{m.sayf("rod %d", i+1), m.length(r.off(f.At.X))}, at: c, toward: geom.V(1, 0.6), reach: 28})
	}
	for x := everyMark / 2; x < span; x += 2 * everyMark {
		t.labels = append(t.labels, label{lines: []string{
			m.sayf("LEVEL, %s above the floor", m.length(r.rods[0].Height)),
			m.sayf("wall Ø%s, shelf Ø%s", m.length(r.rods[0].WallHole), m.length(r.bores[0].Dia)),
		}, at: geom.V(r.at(x), 0), toward: geom.V(0, -1), reach: 40},
			label{lines: []string{r.footWords(m)}, at: geom.V(r.at(x), -r.foot), toward: geom.V(0, 1), reach: 30})
	}
	m.roomCorners(t, r, span)
	return t
}

// footWords says what the lower line of the strip is.
func (r rodStrip) footWords(m *maker) string {
	if r.foot == r.half {
		return m.say("shelf's underside")
	}
	return m.sayf("shelf's underside is %s below the level", m.length(r.half))
}

// rodEnd draws what the strip starts at.
func (m *maker) rodEnd(t *template, r rodStrip) {
	top, low, in := geom.V(r.datum, rodTop), geom.V(r.datum, -r.foot-rodBelow), geom.V(r.at(1)-r.at(0), 0)
	end, text := geom.V(r.datum, 0), []string{m.sayf("cut here: %s", r.from)}
	if r.wall {
		text = []string{m.sayf("cut along the face of %s;", r.from), m.say("thin line: end of the shelf")}
		face := []geom.Vec{low, top} // the room is to the right of its course
		end.X = 0
		if r.right {
			face = reversed(face)
			end.X = r.shelfRight()
		}
		t.lines = append(t.lines, wallLines(face)...)
	}
	t.lines = append(t.lines, drawing.Line(end.Sub(geom.V(0, r.foot)), end.Add(geom.V(0, min(r.half, rodTop))), drawing.Dense.Outline()))
	t.labels = append(t.labels, label{lines: text, at: geom.V(r.datum, -r.foot/2), toward: in, reach: 40})
}

// shelfRight is the right end of the shelf's back edge.
func (r rodStrip) shelfRight() unit.Length {
	for _, e := range r.shelf.Slab.Edges {
		if e.Reference {
			return e.End.X
		}
	}
	return 0
}

// roomCorners marks the corners of walls behind the shelf: they prove the place
// of the strip.
func (m *maker) roomCorners(t *template, r rodStrip, span unit.Length) {
	s := r.shelf.Slab
	for _, w := range m.b.Room.Walls {
		c, ok := cornerBetween(w.Previous(), w, s.Top-s.Thickness/2)
		if !ok {
			continue
		}
		p := s.Pose.Unplan(c)
		off := p.X - r.datum
		if r.right {
			off = -off
		}
		if off < 10 || off > span || p.Y < -1 || p.Y > 40 {
			continue
		}
		t.lines = append(t.lines, drawing.Line(geom.V(p.X, -r.foot-rodBelow), geom.V(p.X, rodTop), drawing.Dense.Adjacent()))
		t.labels = append(t.labels, label{lines: []string{m.sayf("corner %s", w.From.Name)}, at: geom.V(p.X, -r.foot/2), toward: geom.V(1, 0), upright: true, reach: 12})
	}
}
