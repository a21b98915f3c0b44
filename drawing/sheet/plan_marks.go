package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// markDrop is how far in front of the front edge the lower end of a section
// mark lies, in the room.
const markDrop unit.Length = 130

// mark is one end of a cutting plane: its letter, and an arrow the way one
// looks (ISO 128-3). It stands at a place or further along the plane, where its
// letter can be read.
type mark struct {
	letter   string
	at       geom.Vec // in the view
	in, look geom.Vec
}

const (
	markStroke unit.Length = 6
	markShaft  unit.Length = 7 // of the arrow, longer where the letter has no room
	markFar    unit.Length = 60
)

// sectionMarks are both ends of every cutting plane.
func (m *maker) sectionMarks(w drawing.Rect) []mark {
	var out []mark
	for _, c := range m.cuttings() {
		d := c.line.D.Unit()
		low := c.at(m.frontOf(c) - markDrop)
		top := low
		for _, e := range w.Grow(20).Corners() {
			if a := e.Sub(c.line.P).Dot(d); a > top.Sub(c.line.P).Dot(d) {
				top = c.line.P.Add(d.Mul(a))
			}
		}
		out = append(out, mark{c.letter, low, d, d.Left()}, mark{c.letter, top, d.Mul(-1), d.Left()})
	}
	return out
}

// marks places the ends of cutting planes among what stands on the paper
// already, each as near to its place as there is room.
func (m *maker) marks(pl dim.Plate, drawn []drawing.Item, frame drawing.Rect, list []mark) []drawing.Item {
	c := crowdOf(drawn)
	ends := map[string][]drawing.Item{}
	var out []drawing.Item
	for _, k := range list {
		at := paperAt(pl, k.at)
		best, low := k.drawn(m, at, markShaft), math.Inf(1)
		for _, far := range []unit.Length{markFar, 4 * markFar} {
			near := c.near(at, 2*far)
			for shaft := markShaft; shaft < markFar/2; shaft += 3 {
				for off := -far; off <= far; off++ {
					price := math.Abs(float64(off)) + float64(shaft-markShaft)
					if off < 0 {
						price *= 3 // over what is cut
					}
					if price >= low {
						continue
					}
					end := k.drawn(m, at.Sub(k.in.Mul(float64(off))), shaft)
					if frame.Holds(drawing.Bounds(end).Grow(0.5)) {
						if price += near.over(end); price < low {
							best, low = end, price
						}
					}
				}
			}
			if !math.IsInf(low, 1) {
				break
			}
		}
		c.take(drawing.Group{Items: best})
		if ends[k.letter] = append(ends[k.letter], best...); len(ends[k.letter]) > len(best) {
			out = append(out, drawing.Group{ID: "mark-" + stem(k.letter), Title: m.sayf("section %s", k.letter), Items: ends[k.letter]})
		}
	}
	return out
}

// over is what items cost beside their distance: infinite where a text meets
// anything, or a line a text.
func (c *crowd) over(items []drawing.Item) float64 {
	own := crowdOf(items)
	for _, t := range own.texts {
		if !c.clear(t.Grow(0.8)) {
			return math.Inf(1)
		}
	}
	sum := 0.0
	for _, l := range own.lines {
		for _, t := range c.texts {
			if _, _, ok := clipLine(t.Grow(0.6), l.a, l.b); ok {
				return math.Inf(1)
			}
		}
		for i := range c.lines {
			if o := &c.lines[i]; !o.misses(l.box) && crossed(l.a, l.b, o.a, o.b) {
				sum += 2
			}
		}
	}
	return sum
}

// drawn is a mark at a place of the paper: a wide stroke, an arrow that points
// at it, the letter behind the arrow.
func (k mark) drawn(m *maker, at geom.Vec, shaft unit.Length) []drawing.Item {
	h := drawing.Large
	if m.lines == drawing.Dense {
		h = drawing.Standard
	}
	tail := at.Sub(k.look.Mul(float64(shaft)))
	return []drawing.Item{
		drawing.Line(at, at.Add(k.in.Mul(float64(markStroke))), drawing.Pen{Width: m.lines.Wide}),
		drawing.Line(tail, at, m.lines.Fine()),
		drawing.Mark{Kind: drawing.Arrow, At: at, Dir: k.look, Size: drawing.ArrowLength, Pen: m.lines.Fine()},
		drawing.Write(tail.Sub(k.look.Mul(3.5)), k.letter, h, drawing.Middle).Strong(),
	}
}

// planObstacles draws what is on the walls, and what is hidden in them, as
// neighbours.
func (m *maker) planObstacles(pl dim.Plate, w drawing.Rect) drawing.Item {
	g := drawing.Group{ID: "plan-obstacles", Title: m.say("obstacles")}
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
