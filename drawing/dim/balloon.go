package dim

import (
	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Balloons stand in lanes beyond the dimension lines, one lane a side, so that
// those of one side form a row or a column.
const (
	laneGap   unit.Length = 4 // from the dimensions of a side to its lane
	leastLane unit.Length = 15
	slotPitch unit.Length = 4
	slotsNear             = 12 // to either side of the feature
	slotsFar              = 60
)

// lane is the middle line of the balloons of one side.
type lane struct {
	out  geom.Vec
	dist unit.Length // along out, from the origin of the paper
	used bool        // dimensions stand between it and the view
}

func (b *board) lanes() []lane {
	var out []lane
	for _, s := range b.sides {
		if !s.main {
			continue
		}
		l := lane{out: s.out, dist: s.base + leastLane}
		if n := len(s.rows); n > 0 {
			w := s.rows[n-1]
			l.dist = max(l.dist, s.base+w.at+w.outer+laneGap+ringSize/2)
			l.used = true
		}
		out = append(out, l)
	}
	return out
}

func (p *Plate) balloon(i int, q Balloon, lanes []lane) *label {
	s := &p.Style
	text := newBlock(drawing.Large, q.Number)
	tip := p.at(q.At)
	slots := func(from, to int) []place {
		var out []place
		for _, l := range lanes {
			along := l.out.Left()
			foot := l.out.Mul(float64(l.dist)).Add(along.Mul(along.Dot(tip)))
			for k := from; k <= to; k++ {
				out = append(out, s.ringed(&text, tip, foot.Add(along.Mul(float64(k)*float64(slotPitch))), l.used))
				if k > 0 {
					out = append(out, s.ringed(&text, tip, foot.Sub(along.Mul(float64(k)*float64(slotPitch))), l.used))
				}
			}
		}
		return out
	}
	return &label{
		request: i, text: text, places: slots(0, slotsNear),
		more: func() []place { return slots(slotsNear+1, slotsFar) },
		ends: func(c *place) []drawing.Item {
			ring := drawing.Circle{Centre: c.box.mid, Radius: ringSize / 2, Pen: s.Lines.Fine()}
			return []drawing.Item{s.tipMark(tipKind(q.OnEdge), c), ring}
		},
	}
}

// ringed is the place of a balloon with its middle at mid.
func (s *Style) ringed(text *block, tip, mid geom.Vec, used bool) place {
	price := float64(mid.Sub(tip).Len())
	if used {
		price += 10
	}
	end := mid.Add(tip.Sub(mid).Unit().Mul(float64(ringSize / 2)))
	at := mid.Sub(geom.V(text.width/2, text.height/2))
	return newPlace(price, at, right, newBox(mid, right, ringSize, ringSize), []line{s.leader(tip, end)})
}
