package dim

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Sizes of the sign of a level: an open triangle standing with its point on the
// line, the height written over the line beside it (ISO 129-1, elevations).
const (
	signWidth  unit.Length = 3.5
	signHeight unit.Length = 2.5
	levelGap   unit.Length = 1
)

// level gives the label of a height, on a line from the point to the left or
// the right of the view.
func (p *Plate) level(i int, q Level) *label {
	s := &p.Style
	value := p.Format(q.Value)
	switch {
	case value == p.Format(0):
		value = "±" + value
	case q.Value > 0:
		value = "+" + value
	}
	text := p.figure(i, q.Label.text(value))
	point := p.at(q.At)
	reach := func(starts ...unit.Length) []place { return p.levels(q, &text, point, starts) }
	return &label{
		request: i, text: text, ends: s.levelSign,
		places: reach(6, 14, 22, 30, 40, 50), more: func() []place { return reach(65, 80, 100, 120, 150) },
	}
}

// levels gives the places whose signs begin at some distances from the body.
func (p *Plate) levels(q Level, text *block, point geom.Vec, starts []unit.Length) []place {
	var places []place
	for _, out := range []geom.Vec{sideDir[LeftOf], sideDir[RightOf]} {
		if (q.Side == LeftOf || q.Side == RightOf) && sideDir[q.Side] != out {
			continue
		}
		off := max(p.Body.Max.Dot(out), p.Body.Min.Dot(out)) - point.Dot(out) // to the side of the body
		for _, d := range starts {
			for _, rise := range [...]unit.Length{0, 4, -4, 6, -6, 9, -9, 13, -13, 18, -18} {
				start := unit.Length(max(off, 0)) + d
				c := float64(d) + depthWeight*off + 1.5*float64(abs(rise))
				places = append(places, p.Style.levelled(c, text, point, out, start, rise))
			}
		}
	}
	return places
}

// levelled is the place of a level whose sign begins start from the point in
// direction out; rise bends the line there where levels lie close.
func (s *Style) levelled(price float64, text *block, point, out geom.Vec, start, rise unit.Length) place {
	long := signWidth + levelGap + text.width + 0.5
	a := point.Add(out.Mul(float64(s.Off)))
	var chain []geom.Vec
	b := point.Add(out.Mul(float64(start)))
	if rise != 0 {
		chain = append(chain, point.Add(out.Mul(float64(start-4))))
		b.Y += rise
	}
	end := b.Add(out.Mul(float64(long)))
	chain = append(chain, b, end)
	var lines []line
	for _, q := range chain {
		lines = append(lines, s.fine(a, q, lead)) // like leaders: levels keep their order
		a = q
	}
	west := geom.V(min(b.X, end.X), b.Y)
	at := west.Add(geom.V(signWidth+levelGap, text.over(s.Above)))
	room := text.box(at, right).rect().Union(drawing.Rect{Min: west.Add(geom.V(0, 0.6)), Max: west.Add(geom.V(signWidth, signHeight))})
	return newPlace(price, at, right, rectBox(room), lines)
}

// levelSign draws the triangle.
func (s *Style) levelSign(c *place) []drawing.Item {
	last := c.lines[len(c.lines)-1]
	tip := geom.V(last.min.X+signWidth/2, last.a.Y)
	loop := []geom.Vec{tip, tip.Add(geom.V(signWidth/2, signHeight)), tip.Add(geom.V(-signWidth/2, signHeight))}
	return []drawing.Item{drawing.Outline(loop, s.Lines.Fine())}
}
