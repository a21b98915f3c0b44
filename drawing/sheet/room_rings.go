package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// ring is an item number that stands beside its part, in a ring with a leader
// to the best of some places on the part.
type ring struct {
	id, number string
	places     []geom.Vec // in the view
	inside     bool       // the places lie inside the part's outline: the leader ends in a dot
}

const (
	ringClear unit.Length = 0.8
	ringFar   unit.Length = 60
)

// ringSize is the height of an item number and the radius of its ring.
func (m *maker) ringSize(number string) (radius, text unit.Length) {
	text = drawing.Standard
	if m.lines == drawing.Dense {
		text = drawing.Small
	}
	w := drawing.Write(geom.Vec{}, number, text, drawing.Middle).Strong().Width()
	return max(text, unit.Length(math.Hypot(float64(w/2), float64(text/2)))) + 0.5, text
}

// rings places item numbers among what stands on the paper already, each as
// near to its part as there is room, within a frame.
func (m *maker) rings(pl dim.Plate, drawn []drawing.Item, frame drawing.Rect, list []ring) []drawing.Item {
	c := crowdOf(drawn)
	var out []drawing.Item
	for _, r := range list {
		var best drawing.Item
		radius, _ := m.ringSize(r.number)
		low := math.Inf(1)
		for _, v := range r.places {
			at := paperAt(pl, v)
			near := c.near(at, min(ringFar, unit.Length(low)+ringClear)+radius)
			for d := radius + 3; d < ringFar && float64(d) < low; d += 1.5 {
				for k := range 24 {
					dir := geom.V(1, 0).Turn(unit.Angle(k) * 15 * unit.Degree)
					mid := at.Add(dir.Mul(float64(d)))
					if price := float64(d) + near.price(at, mid, radius, frame, low-float64(d)); price < low {
						low, best = price, m.ringed(r, at, mid)
					}
				}
			}
		}
		if best != nil {
			out = append(out, best)
			c.take(best)
		}
	}
	return out
}

func (m *maker) ringed(r ring, at, mid geom.Vec) drawing.Item {
	pen := m.lines.Fine()
	radius, text := m.ringSize(r.number)
	in := at.Sub(mid).Unit()
	mark := drawing.Mark{Kind: drawing.Arrow, At: at, Dir: in, Size: drawing.ArrowLength, Pen: pen}
	if r.inside {
		mark.Kind, mark.Size = drawing.Dot, drawing.DotSize
	}
	return drawing.Group{ID: r.id, Title: m.sayf("part %s", r.number), Items: []drawing.Item{
		drawing.Line(mid.Add(in.Mul(float64(radius))), at, pen), mark,
		drawing.Circle{Centre: mid, Radius: radius, Pen: pen},
		drawing.Write(mid, r.number, text, drawing.Middle).Strong(),
	}}
}

// crowd is what stands on the paper already.
type crowd struct {
	lines []stick
	texts []drawing.Rect

	met int // the line that was in the way of the last look: often of the next, too
}

type stick struct {
	a, b geom.Vec
	box  drawing.Rect // around it
}

func newStick(a, b geom.Vec) stick {
	return stick{a: a, b: b, box: drawing.Rect{Min: a, Max: a}.Union(drawing.Rect{Min: b, Max: b})}
}

// misses tells, by the box around it, that a line lies outside a rectangle.
func (l *stick) misses(r drawing.Rect) bool {
	return l.box.Max.X < r.Min.X || l.box.Min.X > r.Max.X || l.box.Max.Y < r.Min.Y || l.box.Min.Y > r.Max.Y
}

// strikes tells whether a line goes through the number in a ring.
func (l *stick) strikes(mid geom.Vec, radius unit.Length) bool {
	return distance(l.a, l.b, mid) < radius-0.2
}

// enters tells whether a line comes into a rectangle.
func (l *stick) enters(r drawing.Rect) bool {
	if l.misses(r) {
		return false
	}
	_, _, ok := clipLine(r, l.a, l.b)
	return ok
}

func crowdOf(items []drawing.Item) *crowd {
	c := &crowd{}
	drawing.Plot(drawing.Sheet{Items: items}, c)
	return c
}

func (c *crowd) take(it drawing.Item) {
	drawing.Plot(drawing.Sheet{Items: []drawing.Item{it}}, c)
}

// Begin opens a group.
func (c *crowd) Begin(string, string) {}

// End closes a group.
func (c *crowd) End() {}

// Lines gathers chains of lines.
func (c *crowd) Lines(chains [][]geom.Vec, closed bool, s drawing.Stroke) {
	for _, l := range chains {
		for i := 1; i < len(l); i++ {
			c.lines = append(c.lines, newStick(l[i-1], l[i]))
		}
		if closed && len(l) > 2 {
			c.lines = append(c.lines, newStick(l[len(l)-1], l[0]))
		}
	}
}

// Arc gathers an arc as a chain.
func (c *crowd) Arc(mid geom.Vec, r unit.Length, from, sweep unit.Angle, s drawing.Stroke) {
	const n = 16
	pts := make([]geom.Vec, n+1)
	for i := range pts {
		pts[i] = mid.Add(geom.V(r, 0).Turn(from + sweep*unit.Angle(i)/n))
	}
	c.Lines([][]geom.Vec{pts}, false, s)
}

// Fill gathers the borders of an area.
func (c *crowd) Fill(loops [][]geom.Vec, ink drawing.Ink) {
	if ink.Darkness() > 0.3 {
		c.Lines(loops, true, drawing.Stroke{})
	}
}

// Write gathers the box of a text.
func (c *crowd) Write(t drawing.Text) {
	q := t.Quad()
	r := drawing.Rect{Min: q[0], Max: q[0]}
	for _, p := range q[1:] {
		r = r.Union(drawing.Rect{Min: p, Max: p})
	}
	if !r.Empty() {
		c.texts = append(c.texts, r)
	}
}

// near is the part of a crowd around a place.
func (c *crowd) near(at geom.Vec, d unit.Length) *crowd {
	out := &crowd{}
	box := drawing.Rect{Min: at, Max: at}.Grow(d)
	for i := range c.lines {
		if c.lines[i].enters(box) {
			out.lines = append(out.lines, c.lines[i])
		}
	}
	for _, t := range c.texts {
		if t.Meets(box) {
			out.texts = append(out.texts, t)
		}
	}
	return out
}

// price is what a ring with its leader costs beyond its distance; infinite
// where it could not be read or would cost more than most.
func (c *crowd) price(at, mid geom.Vec, radius unit.Length, frame drawing.Rect, most float64) float64 {
	box := drawing.Rect{Min: mid, Max: mid}.Grow(radius + ringClear)
	if !frame.Holds(box) {
		return math.Inf(1)
	}
	if c.met < len(c.lines) && c.lines[c.met].strikes(mid, radius) {
		return math.Inf(1)
	}
	edge := mid.Add(at.Sub(mid).Unit().Mul(float64(radius)))
	for _, t := range c.texts {
		if t.Meets(box) {
			return math.Inf(1)
		}
		if _, _, ok := clipLine(t.Grow(0.6), edge, at); ok {
			return math.Inf(1)
		}
	}
	all := box.Union(drawing.Rect{Min: at, Max: at})
	sum := 0.0
	for i := range c.lines {
		l := &c.lines[i]
		if l.misses(all) {
			continue
		}
		if !l.misses(box) { // else it runs farther from the ring than what counts
			if l.strikes(mid, radius) {
				c.met = i
				return math.Inf(1)
			}
			if distance(l.a, l.b, mid) < radius+ringClear {
				sum += 14
			}
		}
		if crossed(l.a, l.b, edge, at) {
			sum += 3
		}
		if sum > most {
			return math.Inf(1)
		}
	}
	return sum
}

// distance is how far a point is from a piece of a line.
func distance(a, b, p geom.Vec) unit.Length {
	d := b.Sub(a)
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = min(1, max(0, p.Sub(a).Dot(d)/l))
	}
	return p.Sub(a.Lerp(b, t)).Len()
}

// crossed tells whether two pieces of lines cross; touching ends do not count.
func crossed(a, b, c, d geom.Vec) bool {
	u, v := b.Sub(a), d.Sub(c)
	p, q := u.Cross(c.Sub(a)), u.Cross(d.Sub(a))
	r, s := v.Cross(a.Sub(c)), v.Cross(b.Sub(c))
	return (p > 0) != (q > 0) && (r > 0) != (s > 0)
}
