package sheet

import (
	"fmt"
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// wayIn draws every step of the way into the room with the slab that has least
// room in it, and lists how it is held there.
func (m *maker) wayIn() []block {
	t := table{heads: m.heads("step of the way in", "slab with least room", "carried", "room left"), right: []bool{false, false, false, true}}
	var drawn []picture
	for i, step := range m.b.Job.House.Way {
		p, how := tightest(step, m.parts(func(p *model.Part) bool { return p.Slab != nil }))
		if p == nil {
			continue
		}
		name := step.Name
		if name == "" {
			name = m.pass(step.Kind)
		}
		name = fmt.Sprintf("%d  %s", i+1, name)
		left := m.about(how.Left)
		if how.Left < 0 {
			left = m.sayf("does not pass: %s", left)
		}
		t.rows = append(t.rows, []string{name, m.pass(p.ID), m.pass(how.How), left})
		if lines := passing(step, p, how); lines != nil {
			drawn = append(drawn, m.passage(i+1, name, lines))
		}
	}
	if t.rows == nil {
		return nil
	}
	out := t.blocks("way-in", m.say("The way in"), m.lines)
	for some := range slices.Chunk(drawn, mostInStrip) {
		if whole := m.strips(some); whole.within(drawing.Free(m.size)[0]) {
			out = append(out, whole)
			continue
		}
		for few := range slices.Chunk(some, mostOnSmall) { // long names on small paper
			out = append(out, m.strips(few))
		}
	}
	return out
}

// mostInStrip is how many steps of the way in stand together, mostOnSmall how many
// where these find no room on a page.
const (
	mostInStrip = 6
	mostOnSmall = 2
)

// within says whether a form of a block finds room in a rectangle.
func (b block) within(r drawing.Rect) bool {
	return slices.ContainsFunc(b.forms, func(f form) bool { return f.w <= r.Width() && f.h <= r.Height() })
}

// strips sets pictures in their order, from left to right and row by row, in rows
// of different lengths and at two scales.
func (m *maker) strips(list []picture) block {
	const margin unit.Length = 30
	b := block{name: list[0].title, pull: topRight}
	for _, s := range []drawing.Scale{{Paper: 1, Real: 50}, {Paper: 1, Real: 100}} {
		var set []drawn
		for _, p := range list {
			set = append(set, m.draw(p, s, geom.V(margin, margin)))
		}
		for _, n := range []int{6, 3, 2, 1} {
			if n < 2*len(list) || n == 1 {
				b.forms = append(b.forms, strip(set, s, n, gapOn(m.size)))
			}
		}
	}
	return b
}

// strip sets pictures in rows of so many, their titles in line.
func strip(list []drawn, s drawing.Scale, n int, gap unit.Length) form {
	f := form{scale: s}
	var at geom.Vec // upper left corner of the next row
	for row := range slices.Chunk(list, n) {
		var high unit.Length
		for _, d := range row {
			high = max(high, d.box.Height())
		}
		at.X = 0
		for _, d := range row {
			f.items = append(f.items, d.at(geom.V(at.X, at.Y-high).Sub(d.box.Min)))
			at.X += d.box.Width() + gap
		}
		f.w = max(f.w, at.X-gap)
		at.Y -= high + gap
	}
	f.h = -at.Y - gap
	f.items = drawing.Move(f.items, geom.V(0, f.h))
	return f
}

// tightest is the part that has least room in a step of the way in.
func tightest(step model.Passage, parts []*model.Part) (*model.Part, bring.Carried) {
	var tight *model.Part
	least := bring.Carried{Left: unit.Length(math.Inf(1))}
	for _, p := range parts {
		if c := bring.Through(step, p); c.Left < least.Left {
			tight, least = p, c
		}
	}
	return tight, least
}

// passageLines are the walls of a step and the part in it, in millimetres.
type passageLines struct {
	walls [][]geom.Vec // open chains
	part  []geom.Vec   // its outline
}

// unmeasuredHeight stands for a passage whose height nobody told.
const unmeasuredHeight unit.Length = 2100

// passing draws doors and stairs as their openings, corners and cars from above.
func passing(step model.Passage, p *model.Part, c bring.Carried) *passageLines {
	long, wide, thick := bring.Size(p)
	across, up := wide, thick // of the part, seen along its length
	if c.How != bring.Flat {
		across, up = thick, wide
	}
	high := step.Height
	if high == 0 {
		high = unmeasuredHeight
	}
	switch step.Kind {
	case "door", "stair":
		w := step.Width
		x := (w - across) / 2
		frame := [][]geom.Vec{{geom.V(0, 0), geom.V(0, high), geom.V(w, high), geom.V(w, 0), geom.V(0, 0)}}
		return &passageLines{frame, []geom.Vec{geom.V(x, 100), geom.V(x+across, 100), geom.V(x+across, 100+up), geom.V(x, 100+up)}}
	case "corridor turn":
		if c.How == bring.OnEnd {
			long, across = wide, thick
		}
		return corner(step.Width, step.Turn, long, across)
	case "car":
		l, w := step.Length, step.Width
		mid := geom.V(l/2, w/2)
		turn := unit.Angle(0)
		if long > l {
			turn = unit.Angle(math.Acos(min(1, float64(l/long))))
		}
		return &passageLines{[][]geom.Vec{{geom.V(0, 0), geom.V(l, 0), geom.V(l, w), geom.V(0, w), geom.V(0, 0)}}, turned(mid, long, min(wide, w), turn)}
	}
	return nil
}

func turned(mid geom.Vec, long, wide unit.Length, turn unit.Angle) []geom.Vec {
	var out []geom.Vec
	for _, v := range []geom.Vec{geom.V(-long/2, -wide/2), geom.V(long/2, -wide/2), geom.V(long/2, wide/2), geom.V(-long/2, wide/2)} {
		out = append(out, mid.Add(v.Turn(turn)))
	}
	return out
}

// corner is a right-angled corner from above, with the part at the angle at which
// it is closest to the inner corner: its outer side touches both outer walls.
func corner(a, b, long, wide unit.Length) *passageLines {
	tight, room := unit.Angle(0), math.Inf(1)
	for deg := unit.Angle(5); deg <= 85; deg++ {
		s, c := math.Sincos(float64(deg * unit.Degree))
		if r := float64(a)*s + float64(b)*c - float64(long)*s*c; r < room {
			tight, room = deg*unit.Degree, r
		}
	}
	s, c := math.Sincos(float64(tight))
	p, q := geom.V(long*unit.Length(c), 0), geom.V(0, long*unit.Length(s))
	in := q.Sub(p).Unit().Left().Mul(-float64(wide))
	leg := max(long, a, b) + 300
	return &passageLines{
		[][]geom.Vec{{geom.V(0, leg), geom.V(0, 0), geom.V(leg, 0)}, {geom.V(a, leg), geom.V(a, b), geom.V(leg, b)}},
		[]geom.Vec{p, q, q.Add(in), p.Add(in)},
	}
}

// passage is the picture of one step of the way in.
func (m *maker) passage(n int, name string, l *passageLines) picture {
	bounds := drawing.Rect{Min: l.part[0], Max: l.part[0]}
	for _, chain := range append(l.walls, l.part) {
		for _, v := range chain {
			bounds = bounds.Union(drawing.Rect{Min: v, Max: v})
		}
	}
	p := picture{id: fmt.Sprintf("way-step-%d", n), title: name, style: m.joinery(), view: view.View{Bounds: bounds}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		g := drawing.Group{ID: fmt.Sprintf("way-walls-%d", n), Title: name}
		for _, chain := range l.walls {
			g.Items = append(g.Items, drawing.Polyline{Points: paperChain(pl, chain), Pen: m.wallPen()})
		}
		g.Items = append(g.Items, drawing.Outline(paperChain(pl, l.part), m.lines.Fine()))
		return []drawing.Item{g}
	}
	return p
}
