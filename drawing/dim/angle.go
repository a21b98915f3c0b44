package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Radii of the arc of an angle, in the order of liking.
var (
	arcRadii = [...]unit.Length{14, 18, 11, 23, 29, 36, 44, 54}
	arcFar   = [...]unit.Length{66, 80, 100, 125}
)

// angle dimensions the angle between two arms by an arc around their vertex.
func (p *Plate) angle(i int, q Angle) *label {
	s := &p.Style
	a, b := q.A.Sub(q.Vertex), q.B.Sub(q.Vertex)
	if a.Len() < same || b.Len() < same {
		return nil
	}
	sweep := unit.Angle(math.Atan2(a.Cross(b), a.Dot(b)))
	from := a.Angle()
	if sweep < 0 {
		from, sweep, a, b = from+sweep, -sweep, b, a
	}
	text := p.figure(i, q.Label.text(p.Degree(sweep)))
	g := arcs{s: s, text: text, vertex: p.at(q.Vertex), from: from, sweep: sweep}
	g.arms = [2]unit.Length{p.Scale.Of(a.Len()), p.Scale.Of(b.Len())}
	return &label{
		request: i, text: text, places: g.places(arcRadii[:], 0), ends: g.ends,
		more: func() []place { return g.places(arcFar[:], 3*float64(len(arcRadii))) },
	}
}

// arcs is where an angle may be written.
type arcs struct {
	s           *Style
	text        block
	vertex      geom.Vec
	from, sweep unit.Angle
	arms        [2]unit.Length
}

func (g *arcs) places(radii []unit.Length, price float64) []place {
	var out []place
	for k, r := range radii {
		out = append(out, g.at(r, price+3*float64(k))...)
	}
	for k := range out { // an arc may pass through its own figures
		c := &out[k]
		for j := range c.lines {
			if c.box.cut(&c.lines[j], lineClear/2) {
				c.cost += hard
				break
			}
		}
	}
	return out
}

// at gives the places with the arc at radius r: figures over it, or
// beyond either end.
func (g *arcs) at(r unit.Length, price float64) []place {
	var out []place
	w := g.text.width
	plain := g.lines(r, 0, 0)
	for k, share := range [...]unit.Angle{0.5, 0.43, 0.57, 0.36, 0.64, 0.29, 0.71, 0.22, 0.78, 0.15, 0.85} {
		ray := polar(1, g.from+g.sweep*share)
		dir := readable(ray.Left())
		up := dir.Left()
		over := g.text.over(g.s.Above)
		if up.Dot(ray) < 0 && r > w/2 { // figures on the hollow side of the arc
			over += r - unit.Length(math.Sqrt(float64(r*r-w*w/4)))
		}
		at := g.vertex.Add(ray.Mul(float64(r))).Add(up.Mul(float64(over))).Sub(dir.Mul(float64(w / 2)))
		out = append(out, g.text.stand(price+0.7*float64(k), at, dir, plain...))
	}
	more := unit.Angle((g.s.EndSize + tail + 1) / r)
	for side, t := range [...]unit.Angle{g.from - more, g.from + g.sweep + more} {
		end := g.vertex.Add(polar(r, t))
		away := polar(1, t).Left() // the way the arc runs on
		before, after := unit.Angle(0), more
		if side == 0 {
			away = away.Mul(-1)
			before, after = more, 0
		}
		at := end.Add(geom.V(1, -g.text.height/2))
		if away.X < 0 {
			at.X = end.X - 1 - w
		}
		out = append(out, g.text.stand(price+3*outsidePrice+float64(side), at, right, g.lines(r, before, after)...))
	}
	return out
}

// outside tells whether the arrows come from outside.
func (g *arcs) outside(r unit.Length) bool {
	return g.s.End != drawing.Oblique && r*unit.Length(g.sweep) < g.s.arrowRoom()
}

// lines are the chords of the arc, drawn on at its ends, and the arms as far as
// they are missing. The first line starts at the beginning of the arc.
func (g *arcs) lines(r unit.Length, before, after unit.Angle) []line {
	if g.outside(r) {
		more := unit.Angle((g.s.EndSize + tail) / r)
		before, after = max(before, more), max(after, more)
	}
	chain := arcChain(g.vertex, r, g.from-before, g.sweep+before+after)
	var out []line
	for i := 1; i < len(chain); i++ {
		out = append(out, newLine(chain[i-1], chain[i], arrowHalf*g.s.EndSize, ruled))
	}
	for k, t := range [...]unit.Angle{g.from, g.from + g.sweep} {
		if g.s.End == drawing.Oblique {
			at := g.vertex.Add(polar(r, t))
			way := readable(polar(1, t).Left()).Turn(45 * unit.Degree).Mul(float64(g.s.EndSize / 2))
			out = append(out, g.s.fine(at.Sub(way), at.Add(way), ruled))
		}
		if start := g.arms[k] + g.s.Off; start < r {
			out = append(out, g.s.fine(g.vertex.Add(polar(start, t)), g.vertex.Add(polar(r+g.s.Past, t)), reach))
		}
	}
	return out
}

// ends puts the arrows on the arc of a place.
func (g *arcs) ends(c *place) []drawing.Item {
	if g.s.End == drawing.Oblique {
		return nil // drawn with the lines
	}
	r := c.lines[0].a.Sub(g.vertex).Len()
	var out []drawing.Item
	for k, t := range [...]unit.Angle{g.from, g.from + g.sweep} {
		way := polar(1, t).Left()
		if (k == 0) != g.outside(r) { // the arrow points against the turn
			way = way.Mul(-1)
		}
		m := drawing.Mark{Kind: g.s.End, At: g.vertex.Add(polar(r, t)), Dir: way, Size: g.s.EndSize, Pen: g.s.Lines.Fine()}
		out = append(out, m)
	}
	return out
}
