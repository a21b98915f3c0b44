package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// planDims gives the clear widths, the depths, where the seats and the roll-out
// tables are, and the joints behind.
func (m *maker) planDims(tops []*model.Part, w drawing.Rect) []dim.Request {
	var ask []dim.Request
	for _, t := range tops {
		for _, x := range m.widths(t) {
			if x.name != "middle" && -t.Slab.Front().Start.Y < shallow {
				continue // the table has the others
			}
			ask = append(ask, dim.Across{A: x.from, B: x.to, Label: dim.Label{Suffix: " clear"}})
		}
		ask = append(ask, m.planPlaces(t)...)
	}
	ask = append(ask, m.planDepths(tops)...)
	for _, t := range tops {
		for _, o := range m.openings(t) {
			if !m.atSide(t, o) {
				ask = append(ask, dim.Note{At: o.at, Lines: []string{"gap " + m.span(o.least, o.widest)}, OnEdge: true})
			}
		}
	}
	for _, wall := range m.b.Room.Walls {
		for _, o := range wall.Obstacles {
			if at := obstaclePlan(o).Centroid(); w.Grow(-1).Holds(drawing.Rect{Min: at, Max: at}) {
				ask = append(ask, dim.Note{At: at, Lines: []string{shortened(o.Name, mostName), m.upTo(o)}})
			}
		}
	}
	for _, p := range tops {
		for _, l := range p.Outline().Loops()[:1] {
			ask = append(ask, dim.Caption{Loop: l, Lines: m.slabName(p)})
		}
	}
	for _, p := range m.parts(func(p *model.Part) bool { return p.RollOut != nil }) {
		for _, l := range p.Footprint().Loops()[:1] {
			ask = append(ask, dim.Caption{Loop: l, Lines: []string{p.ID}})
		}
	}
	for _, p := range m.shelves(planLevel(tops)) {
		for _, l := range p.Outline().Loops()[:1] {
			ask = append(ask, dim.Caption{Loop: l, Lines: []string{strings.Join(m.stacked2(p), ", ") + " above"}})
		}
	}
	return ask
}

// slabName is the name of a worktop with its height, on one line where the
// worktop is shallow.
func (m *maker) slabName(p *model.Part) []string {
	lines := []string{p.ID, "surface " + m.length(p.Slab.Top)}
	if -p.Slab.Front().Start.Y < shallow {
		return []string{strings.Join(lines, ", ")}
	}
	return lines
}

// upTo says between which heights an obstacle stands.
func (m *maker) upTo(o model.Obstacle) string {
	return m.length(o.Bottom) + " to " + m.length(o.Top) + " up"
}

// mostName is how many letters of a name stand on a drawing.
const mostName = 26

// shallow slabs have one width on the plan.
const shallow unit.Length = 320

// planRings numbers what the plan shows.
func (m *maker) planRings(level unit.Length) []ring {
	var out []ring
	for _, p := range m.parts(func(p *model.Part) bool { return p.Bounds().Min.Z < level }) {
		r := ring{id: "plan-number-" + stem(p.ID), number: fmt.Sprint(p.Mark)}
		for _, l := range outlines(p.Footprint()) {
			r.places = append(r.places, spread(l)...)
		}
		out = append(out, r)
	}
	return out
}

// outlines gives the outer borders of a region, without its holes.
func outlines(r geom.Region) [][]geom.Vec {
	var out [][]geom.Vec
	for _, l := range r.Loops() {
		if turns(l) > 0 {
			out = append(out, l)
		}
	}
	return out
}

// turns is twice the area inside a loop, below zero when it runs clockwise.
func turns(loop []geom.Vec) float64 {
	var sum float64
	for i, a := range loop {
		sum += a.Cross(loop[(i+1)%len(loop)])
	}
	return sum
}

// spread gives places along a closed line: on its long sides at some shares of
// their length, away from corners.
func spread(loop []geom.Vec) []geom.Vec {
	var longest unit.Length
	for i, a := range loop {
		longest = max(longest, loop[(i+1)%len(loop)].Sub(a).Len())
	}
	var out []geom.Vec
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		if b.Sub(a).Len() < longest/2 {
			continue
		}
		for _, t := range []float64{0.5, 0.35, 0.65, 0.2, 0.8} {
			out = append(out, a.Lerp(b, t))
		}
	}
	return out
}

// stacked2 names all shelves that hang over the same place as one of them.
func (m *maker) stacked2(p *model.Part) []string {
	var out []string
	for _, q := range m.parts(func(q *model.Part) bool { return q.Kind == model.KindShelf }) {
		if q.Outline().Xor(p.Outline()).Area() < 0.02*p.Outline().Area() {
			out = append(out, q.ID)
		}
	}
	return out
}

// atSide tells whether a joint is one at the ends of a slab, which the widths
// tell already.
func (m *maker) atSide(p *model.Part, o opening) bool {
	turn := float64(o.wall.Chord().D.Angle() - p.Slab.Pose.Turn)
	return math.Abs(math.Sin(turn)) > math.Sqrt2/2
}

// planPlaces says where seats and roll-out tables are, from the wall on the
// left at the front edge.
func (m *maker) planPlaces(t *model.Part) []dim.Request {
	sp := t.Slab
	var stops []stop
	for _, p := range m.parts(func(p *model.Part) bool { return p.RollOut != nil }) {
		r := p.RollOut
		if !sp.TopOutline().Contains(sp.Pose.Unplan(p.Centroid().Flat())) {
			continue
		}
		side := geom.V(1, 0).Turn(r.Turn)
		front := r.Corner.Add(geom.V(0, -r.Depth).Turn(r.Turn))
		stops = append(stops, stop{at: front}, stop{at: front.Add(side.Mul(float64(r.Width)))})
	}
	for _, c := range m.cuttings() {
		if c.seat != nil && c.slab == t {
			stops = append(stops, stop{at: c.at(m.frontOf(c) - markDrop), name: "seat"})
		}
	}
	if len(stops) == 0 {
		return nil
	}
	datum, from := sp.Pose.Plan(sp.Front().End), "left end"
	if ws := m.widths(t); len(ws) > 0 {
		last := ws[len(ws)-1]
		datum = last.from
		if w := m.wallAt(last.from, sp.Top); w != nil {
			from = "wall " + w.Name
		}
	}
	if math.Abs(math.Cos(float64(sp.Pose.Turn))) > math.Sqrt2/2 {
		return ladder(datum, from, dim.Horizontal, dim.Below, stops)
	}
	return ladder(datum, from, dim.Vertical, dim.Auto, stops)
}

// planDepths gives the depth from the front edge of each worktop to the walls
// behind it, one after the other.
func (m *maker) planDepths(tops []*model.Part) []dim.Request {
	var ask []dim.Request
	done := map[*model.Wall]bool{}
	for _, t := range tops {
		sp := t.Slab
		back := geom.V(0, 1).Turn(sp.Pose.Turn)
		side := geom.V(1, 0).Turn(sp.Pose.Turn)
		pts := []geom.Vec{sp.Pose.Plan(sp.Front().Start)}
		if sp.Front().Bound == model.ToPart {
			continue // an infill starts where the worktop ends
		}
		for _, q := range tops {
			for _, o := range m.openings(q) {
				if w := o.wall; !m.atSide(t, o) && !done[w] && w.Chord().D.Dot(side) > 0 {
					done[w] = true
					pts = append(pts, w.To.At)
				}
			}
		}
		slices.SortStableFunc(pts, func(a, b geom.Vec) int { return int(math.Round(a.Sub(b).Dot(back))) })
		keep := pts[:1]
		for _, p := range pts[1:] {
			if q := keep[len(keep)-1]; p.Sub(q).Dot(back) > 15 {
				keep = append(keep, p)
			} else if len(keep) > 1 && p.Sub(q).Dot(side) > 0 {
				keep[len(keep)-1] = p
			}
		}
		switch {
		case len(keep) < 2:
		case math.Abs(float64(back.Y)) > math.Sqrt2/2:
			ask = append(ask, dim.Chain{Points: keep, Dir: dim.Vertical, Side: dim.RightOf})
		default:
			ask = append(ask, dim.Chain{Points: keep, Dir: dim.Horizontal, Side: dim.Below})
		}
	}
	return ask
}

// markDrop is how far in front of the front edge the lower end of a section
// mark lies, in the room.
const markDrop unit.Length = 130

// sectionMarks draws both ends of every cutting plane, with the letter and an
// arrow the way one looks (ISO 128-3).
func (m *maker) sectionMarks(pl dim.Plate, w drawing.Rect) []drawing.Item {
	var out []drawing.Item
	for _, c := range m.cuttings() {
		d := c.line.D
		low := paperAt(pl, c.at(m.frontOf(c)-markDrop))
		top := low
		for _, e := range w.Grow(20).Corners() {
			if a := e.Sub(c.line.P).Dot(d); a > top.Sub(paperAt(pl, c.line.P)).Dot(d)*float64(pl.Scale.Real)/float64(pl.Scale.Paper) {
				top = paperAt(pl, c.line.P.Add(d.Mul(a)))
			}
		}
		g := drawing.Group{ID: "mark-" + stem(c.letter), Title: "section " + c.letter}
		for _, end := range []struct {
			at  geom.Vec
			dir float64
		}{{low, 1}, {top, -1}} {
			g.Items = append(g.Items, m.planeEnd(end.at, d.Mul(end.dir), d.Left(), c.letter)...)
		}
		out = append(out, g)
	}
	return out
}

// planeEnd is one end of a cutting plane: a wide stroke of 6 mm, an arrow that
// points at it, the letter behind the arrow.
func (m *maker) planeEnd(at, in, look geom.Vec, letter string) []drawing.Item {
	const stroke, shaft = 6, 7
	h := drawing.Large
	if m.lines == drawing.Dense {
		h = drawing.Standard
	}
	inner := at.Add(in.Mul(stroke))
	tail := at.Sub(look.Mul(shaft))
	return []drawing.Item{
		drawing.Line(at, inner, drawing.Pen{Width: m.lines.Wide}),
		drawing.Line(tail, at, m.lines.Fine()),
		drawing.Mark{Kind: drawing.Arrow, At: at, Dir: look, Size: 3, Pen: m.lines.Fine()},
		drawing.Write(tail.Sub(look.Mul(3.5)), letter, h, drawing.Middle).Strong(),
	}
}

// planObstacles draws what is on the walls, and what is hidden in them, as
// neighbours.
func (m *maker) planObstacles(pl dim.Plate, w drawing.Rect) drawing.Item {
	g := drawing.Group{ID: "plan-obstacles", Title: "obstacles"}
	frame := geom.Rect(w.Min, w.Max)
	for _, wall := range m.b.Room.Walls {
		for _, o := range wall.Obstacles {
			for _, l := range obstaclePlan(o).Intersect(frame).Loops() {
				g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Adjacent()))
			}
		}
	}
	return g
}

// obstaclePlan is the place of an obstacle on the floor plan; what is hidden in
// the wall is shown 40 mm deep behind its face.
func obstaclePlan(o model.Obstacle) geom.Region {
	if o.Depth > 0 {
		return o.Solid().Footprint()
	}
	l := o.Wall.Chord()
	u, out := l.D.Unit(), l.D.Unit().Left().Mul(40)
	a, b := l.P.Add(u.Mul(float64(o.Start))), l.P.Add(u.Mul(float64(o.End)))
	return geom.Polygon(a, b, b.Add(out), a.Add(out))
}

// wallAt is the wall whose face passes a place, nil if there is none.
func (m *maker) wallAt(p geom.Vec, z unit.Length) *model.Wall {
	for _, w := range m.b.Room.Walls {
		l := w.LineAt(z)
		if s := l.Along(p); abs(l.Side(p)) < abs(w.Bow)+1 && s > -1 && s < l.D.Len()+1 {
			return w
		}
	}
	return nil
}

// row makes a running dimension of places, none twice.
func row(datum geom.Vec, from string, dir dim.Direction, side dim.Side, points ...geom.Vec) []dim.Request {
	stops := make([]stop, len(points))
	for i, p := range points {
		stops[i].at = p
	}
	return ladder(datum, from, dir, side, stops)
}

func abs(l unit.Length) unit.Length {
	if l < 0 {
		return -l
	}
	return l
}
