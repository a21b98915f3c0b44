package dim

import (
	"slabwright/drawing"
	"slabwright/model/geom"
)

// Prices in a sum that is to be as low as possible: about millimetres of
// leader that one would accept to avoid the thing.
const (
	hard       = 1000.0 // what must not be: lettering that cannot be read
	tight      = 200.0  // lettering that can be read but stands too close
	onHatch    = 10.0
	alongPrice = 25.0

	mostCrossed = 150.0 // for all that one line crosses: wavy edges have many sides
)

// crossPrice is the price of a crossing, by what the lines are for.
var crossPrice = [roles][roles]float64{
	edge:  {edge: 0, ruled: 2, reach: 1, lead: 1},
	ruled: {edge: 2, ruled: 12, reach: 8, lead: 8},
	reach: {edge: 1, ruled: 8, reach: 3, lead: 4},
	lead:  {edge: 1, ruled: 8, reach: 4, lead: 60},
}

func meetPrice(a, b *line) float64 {
	switch a.meet(b) {
	case crosses:
		return crossPrice[a.role][b.role]
	case runsAlong:
		if a.role != edge || b.role != edge {
			return alongPrice
		}
	}
	return 0
}

// weigh prices a place among the fixed things, once; it leaves out the lines of
// the place when with its lettering alone it comes to limit.
func (f *field) weigh(c *place, limit float64) float64 {
	if c.weighed < lettering {
		c.fixed, c.weighed = f.weighLettering(c), lettering
	}
	if c.weighed < whole && c.cost+c.fixed < limit {
		c.fixed, c.weighed = f.weighLines(c, c.fixed), whole
	}
	return c.fixed
}

func (f *field) weighLettering(c *place) float64 {
	sum := 0.0
	if !f.frame.Holds(drawing.Rect{Min: c.min, Max: c.max}) {
		sum += 2 * hard
	}
	grow := geom.V(textClear+1, textClear+1)
	lines, boxes := f.near(c.box.min.Sub(grow), c.box.max.Add(grow))
	for _, i := range boxes {
		sum += boxPrice(&c.box, &f.boxes[i])
	}
	for _, i := range lines {
		sum += linePrice(&c.box, &f.lines[i])
	}
	for i := range f.areas {
		if a := &f.areas[i]; a.under(&c.box) {
			if a.dark {
				sum += hard
			} else {
				sum += onHatch
			}
		}
	}
	return sum
}

// weighLines adds the price of the lines of a place to a sum.
func (f *field) weighLines(c *place, sum float64) float64 {
	for i := range c.lines {
		l := &c.lines[i]
		lines, boxes := f.alongLine(l)
		met := 0.0
		for _, k := range lines {
			met += meetPrice(l, &f.lines[k])
		}
		sum += min(met, mostCrossed)
		for _, k := range boxes {
			sum += linePrice(&f.boxes[k], l)
		}
	}
	return sum
}

// apart tells whether two rectangles are too far from each other for what is in
// them to clash.
func apart(lo, hi, low, high geom.Vec) bool {
	return lo.X-textClear > high.X || low.X-textClear > hi.X || lo.Y-textClear > high.Y || low.Y-textClear > hi.Y
}

// clash prices two places against each other.
func clash(c, d *place) float64 {
	if apart(c.min, c.max, d.min, d.max) {
		return 0
	}
	sum := boxPrice(&c.box, &d.box)
	for i := range c.lines {
		sum += linePrice(&d.box, &c.lines[i])
		for k := range d.lines {
			sum += meetPrice(&c.lines[i], &d.lines[k])
		}
	}
	for k := range d.lines {
		sum += linePrice(&c.box, &d.lines[k])
	}
	return sum
}

// covered tells whether something fixed lies over the lettering of a place, or
// a line of the place over fixed lettering.
func (f *field) covered(c *place) bool {
	lines, boxes := f.near(c.min, c.max)
	for _, i := range boxes {
		if c.box.meets(&f.boxes[i], 0) || c.strikes(&f.boxes[i]) {
			return true
		}
	}
	for _, i := range lines {
		if c.box.cut(&f.lines[i], 0) {
			return true
		}
	}
	for i := range f.areas {
		if a := &f.areas[i]; a.dark && a.under(&c.box) {
			return true
		}
	}
	return false
}

// struck tells whether something fixed lies over running values.
func (b *box) struck(f *field) bool {
	lines, boxes := f.near(b.min, b.max)
	for _, i := range boxes {
		if o := &f.boxes[i]; *o != *b && b.meets(o, 0) {
			return true
		}
	}
	for _, i := range lines {
		if b.cut(&f.lines[i], 0) {
			return true
		}
	}
	return false
}

// strikes tells whether a line of the place goes through lettering.
func (c *place) strikes(b *box) bool {
	for i := range c.lines {
		if b.cut(&c.lines[i], 0) {
			return true
		}
	}
	return false
}

// strikesItself tells whether an arc passes through its own figures.
func (c *place) strikesItself() bool {
	for i := range c.lines {
		if l := &c.lines[i]; l.role != lead && c.box.cut(l, 0) {
			return true
		}
	}
	return false
}

// spoils tells whether one of two places makes the other unreadable.
func (c *place) spoils(d *place) bool {
	return c.box.meets(&d.box, 0) || c.strikes(&d.box) || d.strikes(&c.box)
}

func boxPrice(a, b *box) float64 {
	switch {
	case !a.meets(b, textClear):
		return 0
	case !a.meets(b, 0):
		return tight
	}
	return hard
}

func linePrice(b *box, l *line) float64 {
	switch {
	case !b.cut(l, lineClear):
		return 0
	case !b.cut(l, 0):
		return tight
	}
	return hard
}
