package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// datum marks an edge: a filled triangle on it and a boxed letter off it.
func (p *Plate) datum(i int, q Datum) *label {
	s := &p.Style
	a, b := p.at(q.A), p.at(q.B)
	if b.Sub(a).Len() < same {
		return nil
	}
	text := newBlock(s.Height, q.Letter)
	out := b.Sub(a).Unit().Left()
	if p.Body.Centre().Sub(a).Dot(out) > 0 {
		out = out.Mul(-1)
	}
	frame := geom.V(max(datumSize, text.width+2), max(datumSize, text.rise()-text.low+2))
	spread := func(from, to int) []place {
		places := make([]place, 0, 25*8*(to-from+1))
		for k := range 25 {
			t := 0.02 + 0.04*float64(k)
			foot := a.Lerp(b, t)
			tip := foot.Add(out.Mul(float64(drawing.FlagSize)))
			for _, d := range [...]unit.Length{2, 5, 9, 14, 20, 28, 40, 55} {
				for aside := from; aside <= to; aside++ {
					near := tip.Add(out.Mul(float64(d))).Add(out.Left().Mul(float64(aside) * 9))
					mid := near.Add(out.Mul(float64(abs(out.X)*frame.X/2 + abs(out.Y)*frame.Y/2)))
					price := float64(d) + 10*math.Abs(t-0.14) + 5*math.Abs(float64(aside)) // habit: near the start of the edge
					at := mid.Sub(geom.V(text.width/2, (text.rise()+text.low)/2))
					places = append(places, newPlace(price, at, right, newBox(mid, right, frame.X, frame.Y),
						[]line{newLine(foot, tip, drawing.FlagSize/2, lead), s.fine(tip, near, lead)}))
				}
			}
		}
		return places
	}
	return &label{request: i, text: text, places: spread(0, 0), ends: func(c *place) []drawing.Item {
		return []drawing.Item{
			drawing.Mark{Kind: drawing.Flag, At: c.lines[0].a, Dir: out, Size: drawing.FlagSize, Pen: s.Lines.Fine()},
			drawing.Outline(c.box.rect().Corners(), s.Lines.Fine()),
		}
	}, more: func() []place { return append(spread(-3, -1), spread(1, 3)...) }}
}
