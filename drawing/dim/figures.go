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
	from, to      geom.Vec
	before, after bool        // the line may go on beyond from, beyond to
	tail          unit.Length // how far it does already, for arrows from outside
	raised        int         // levels above the line
}

// Prices of habits, in millimetres of leader.
const (
	shiftPrice   = 0.3 // for each millimetre off the middle of the link
	outsidePrice = 6.0 // beyond an extension line
	raisedPrice  = 10.0
	belowPrice   = 14.0 // under the line, against the rule
)

// slides are distances by which figures are moved off their usual place.
var slides = [...]unit.Length{2, 4, 6, 8, 10, 13, 16, 20, 25, 30, 37, 45, 55, 65, 80, 95, 120}

func (g *figures) places() []place {
	var out []place
	dir := g.to.Sub(g.from).Unit()
	long := g.to.Sub(g.from).Len()
	w, over := g.text.width, g.text.over(g.s.Above)
	at := func(along, up unit.Length) geom.Vec {
		return g.from.Add(dir.Mul(float64(along))).Add(dir.Left().Mul(float64(up)))
	}
	if room := (long - w) / 2; room >= g.s.inset() {
		out = append(out, g.text.stand(0, at(room, over), dir))
		for _, d := range slides {
			if d > room-g.s.inset() {
				break
			}
			c := shiftPrice * float64(d)
			out = append(out, g.text.stand(c, at(room+d, over), dir), g.text.stand(c+0.1, at(room-d, over), dir))
		}
	}
	out = append(out, g.outside(dir, long, over)...)
	return append(out, g.raise(dir, long)...)
}

// outside gives places beyond the ends of the link, over the line drawn on.
func (g *figures) outside(dir geom.Vec, long, over unit.Length) []place {
	var out []place
	w := g.text.width
	up := dir.Left().Mul(float64(over))
	for i, d := range [...]unit.Length{1.5, 4, 7, 11, 16} {
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

// raise gives places off the line with a leader to the middle of the link.
func (g *figures) raise(dir geom.Vec, long unit.Length) []place {
	var out []place
	h := g.text.height
	up := dir.Left()
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
		out = append(out, g.text.stand(c, at, dir, g.s.fine(foot, end, lead)))
	}
	for level := 1; level <= g.raised; level++ {
		add(level, 0)
		add(-level, 0)
		for _, x := range slides[:11] {
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
		g := figures{s: s, text: b, from: r.on[i], to: r.on[i+1], before: i == 0, after: i == last, raised: 2}
		if r.small[i] && (g.before || g.after) {
			g.tail = s.EndSize + tail
		}
		out = append(out, &label{request: r.e.request, text: b, places: g.places()})
	}
	return out
}
