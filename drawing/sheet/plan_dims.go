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
			if !x.middle && -t.Slab.Front().Start.Y < shallow {
				continue // the table has the others
			}
			ask = append(ask, dim.Across{A: x.from, B: x.to, Label: dim.Label{Suffix: " " + m.say("clear")}})
		}
	}
	ask = append(ask, m.planPlaces(tops)...)
	ask = append(ask, m.planDepths(tops)...)
	for _, t := range tops {
		for _, o := range m.openings(t) {
			if !m.atSide(t, o) {
				ask = append(ask, dim.Note{At: o.at, Lines: []string{m.sayf("gap %s", m.span(o.least, o.widest))}, OnEdge: true})
			}
		}
	}
	for _, wall := range m.b.Room.Walls {
		for _, o := range wall.Obstacles {
			if at := obstaclePlan(o).Centroid(); w.Grow(-1).Holds(drawing.Rect{Min: at, Max: at}) {
				ask = append(ask, dim.Note{At: at, Lines: append(m.noted(o.Name), m.upTo(o))})
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
			ask = append(ask, dim.Caption{Loop: l, Lines: []string{m.pass(p.ID)}})
		}
	}
	for _, p := range m.shelves(planLevel(tops)) {
		for _, l := range p.Outline().Loops()[:1] {
			ask = append(ask, dim.Caption{Loop: l, Lines: []string{m.sayf("%s above", strings.Join(m.alike(p), ", "))}})
		}
	}
	return ask
}

// slabName is the name of a worktop with its height, on one line where the
// worktop is shallow.
func (m *maker) slabName(p *model.Part) []string {
	lines := []string{m.pass(p.ID), m.sayf("surface %s", m.length(p.Slab.Top))}
	if -p.Slab.Front().Start.Y < shallow {
		return []string{strings.Join(lines, ", ")}
	}
	return lines
}

// upTo says between which heights an obstacle stands.
func (m *maker) upTo(o model.Obstacle) string {
	return m.sayf("%s to %s up", m.length(o.Bottom), m.length(o.Top))
}

// noted is a name in lines short enough for a note.
func (m *maker) noted(name string) []string {
	h := m.joinery().Height
	return nameLines(name, h, 16*h, 4)
}

// nameLines is a name in a few lines no wider than a room; a table has the whole
// of a longer one.
func nameLines(name string, h, room unit.Length, most int) []string {
	lines := drawing.Wrap(name, h, room)
	if len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1:most-1], drawing.Fit(rest, h, room))
	}
	return lines
}

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

// alike names all shelves that hang over the same place as one of them.
func (m *maker) alike(p *model.Part) []string {
	var out []string
	for _, q := range m.parts(func(q *model.Part) bool { return q.Kind == model.KindShelf }) {
		if q.Outline().Xor(p.Outline()).Area() < 0.02*p.Outline().Area() {
			out = append(out, m.pass(q.ID))
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

// planPlaces says where things stand along the back wall and away from it, from
// the origin.
func (m *maker) planPlaces(tops []*model.Part) []dim.Request {
	var along, away []stop
	var front unit.Length
	for _, p := range m.stationsAlongBack() {
		at, beside := inFront(tops, p.at)
		if beside {
			continue // the sheet of its slab has it, and the row of that slab's depth is there
		}
		along = append(along, stop{at: at, name: p.name})
		front = min(front, at.Y)
	}
	for _, p := range m.stationsAwayFromBack() {
		away = append(away, stop{at: p.at, name: p.name})
	}
	o := m.origin()
	ask := m.alongBack(front, along)
	return append(ask, m.ladder(o.At, m.cornerName(o), dim.Vertical, dim.Auto, away)...)
}

// inFront brings a place forward to the front of the worktop that it is over, so that
// its extension line crosses no clear width; beside tells whether that worktop lies
// along a wall at the side.
func inFront(tops []*model.Part, at geom.Vec) (out geom.Vec, beside bool) {
	out = at
	for _, t := range tops {
		low, high := t.Outline().Bounds()
		if at.X < low.X || at.X > high.X {
			continue
		}
		if t.Outline().Contains(at) && math.Abs(math.Cos(float64(t.Slab.Pose.Turn))) < math.Sqrt2/2 {
			beside = true
		}
		out.Y = min(out.Y, low.Y)
	}
	return out, beside
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

// row makes a running dimension of places, none twice.
func (m *maker) row(datum geom.Vec, from string, dir dim.Direction, side dim.Side, points ...geom.Vec) []dim.Request {
	stops := make([]stop, len(points))
	for i, p := range points {
		stops[i].at = p
	}
	return m.ladder(datum, from, dir, side, stops)
}

func abs(l unit.Length) unit.Length {
	if l < 0 {
		return -l
	}
	return l
}
