package dim

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// figures is where the figures of one link of a dimension line may stand. from
// and to are its ends in reading direction.
type figures struct {
	s             *Style
	text          block
	from, to, dir geom.Vec
	before, after bool        // the line may go on beyond from, beyond to
	lean          unit.Length // usual place, off the middle of the link
	tail          unit.Length // how far it does already, for arrows from outside
}

// Prices of habits, in millimetres of leader.
const (
	shiftPrice   = 0.15 // for each millimetre off the middle of the link
	outsidePrice = 6.0  // beyond an extension line
	raisedPrice  = 10.0
	belowPrice   = 14.0 // under the line, against the rule
)

// slides are distances by which figures are moved off their usual place.
var slides = [...]unit.Length{2, 4, 6, 8, 10, 13, 16, 20, 25, 30, 37, 45, 55, 65, 80, 95, 120}

// label gives the places of the figures: over the link, and off it only when
// there is no room or nothing else is free.
func (g *figures) label(request int) *label {
	l := &label{request: request, text: g.text, places: g.inside()}
	if len(l.places) > 0 {
		l.more = func() []place { return append(g.near(), g.far()...) }
	} else {
		l.places, l.more = g.near(), g.far
	}
	return l
}

func (g *figures) near() []place {
	return append(g.outside(nearEnd[:]), g.raise(1, nearLevels)...)
}

func (g *figures) far() []place {
	return append(g.outside(farEnd[:]), g.raise(nearLevels+1, farLevels)...)
}

// inside gives places over the link, in its middle and shifted.
func (g *figures) inside() []place {
	room := (g.to.Sub(g.from).Len() - g.text.width) / 2
	if room < g.s.inset() {
		return nil
	}
	start := g.from.Add(g.dir.Left().Mul(float64(g.text.over(g.s.Above))))
	out := make([]place, 0, 1+2*len(slides))
	add := func(shift unit.Length, price float64) {
		if abs(g.lean+shift) <= room-g.s.inset() || shift == 0 {
			out = append(out, g.text.stand(price, start.Add(g.dir.Mul(float64(room+g.lean+shift))), g.dir))
		}
	}
	add(0, 0)
	for _, d := range slides {
		add(d, shiftPrice*float64(d))
		add(-d, shiftPrice*float64(d)+0.1)
	}
	return out
}

// Levels of raised figures.
const (
	nearLevels = 2
	farLevels  = 7
)

// Gaps between the end of a line and figures outside it.
var (
	nearEnd = [...]unit.Length{1.5, 4, 7, 11, 16}
	farEnd  = [...]unit.Length{22, 30, 40, 52, 66}
)

// outside gives places beyond the ends of the link, over the line drawn on.
func (g *figures) outside(gaps []unit.Length) []place {
	out := make([]place, 0, 2*len(gaps))
	dir := g.dir
	w := g.text.width
	up := dir.Left().Mul(float64(g.text.over(g.s.Above)))
	for i, d := range gaps {
		c := outsidePrice + 0.5*float64(d) + float64(i)
		if g.after {
			start := g.to.Add(dir.Mul(float64(d)))
			out = append(out, g.text.stand(c, start.Add(up), dir, g.onward(g.to, dir, d+w)...))
		}
		if g.before {
			start := g.from.Sub(dir.Mul(float64(d + w)))
			out = append(out, g.text.stand(c+0.2, start.Add(up), dir, g.onward(g.from, dir.Mul(-1), d+w)...))
		}
	}
	return out
}

// onward draws the dimension line on beyond its end, as far as it is missing.
func (g *figures) onward(end, dir geom.Vec, d unit.Length) []line {
	if d <= g.tail {
		return nil
	}
	return []line{g.s.fine(end.Add(dir.Mul(float64(g.tail))), end.Add(dir.Mul(float64(d))), ruled)}
}

// raise gives places off the line, from level to level, with a leader to the
// middle of the link.
func (g *figures) raise(from, to int) []place {
	const aside = 11 // shifts tried to either side
	out := make([]place, 0, 2*(1+2*aside)*(to-from+1))
	h, dir, up := g.text.height, g.dir, g.dir.Left()
	foot := g.from.Lerp(g.to, 0.5)
	add := func(level int, x unit.Length) {
		step := g.s.Above + unit.Length(level)*(h+tierGap)
		c := raisedPrice + 2*float64(level) + 0.3*float64(abs(x))
		if level < 0 {
			step = -g.s.Above + unit.Length(level)*(h+tierGap)
			c = belowPrice - 2*float64(level) + 0.3*float64(abs(x))
		}
		at := foot.Add(dir.Mul(float64(x - g.text.width/2))).Add(up.Mul(float64(step)))
		near := min(max(0, x-g.text.width/2), x+g.text.width/2) // nearest point of the text along the line
		height := step + g.text.low - 0.5
		if level < 0 {
			height = step + g.text.rise() + 0.5
		}
		end := foot.Add(dir.Mul(float64(near))).Add(up.Mul(float64(height)))
		start := foot.Lerp(end, 0.02) // off the line, which it does not cross
		out = append(out, g.text.stand(c, at, dir, g.s.fine(start, end, lead)))
	}
	for level := from; level <= to; level++ {
		add(level, 0)
		add(-level, 0)
		for _, x := range slides[:aside] {
			add(level, x)
			add(level, -x)
			add(-level, x)
			add(-level, -x)
		}
	}
	return out
}

// figures gives the labels of a ruler, one a link.
func (r *ruler) figures(s *Style) []*label {
	var out []*label
	last := len(r.on) - 2
	for i, b := range r.e.texts {
		if r.e.running || b.empty() {
			continue
		}
		g := figures{s: s, text: b, from: r.on[i], to: r.on[i+1], dir: r.e.dir, before: i == 0, after: i == last}
		if r.e.lean != nil {
			g.lean = r.e.lean[i]
		}
		if r.small[i] && (g.before || g.after) {
			g.tail = s.EndSize + tail
		}
		out = append(out, g.label(r.e.request))
	}
	return out
}
