package dim

import (
	"cmp"
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// label is a lettering that may stand in one of several places.
type label struct {
	request int
	text    block
	places  []place
	order   []int                         // of the places, the cheapest first
	more    func() []place                // places farther off, for when none of the first is free
	ends    func(c *place) []drawing.Item // marks and rings of a place
	now     int                           // index of the chosen place
}

// place is one position of a label with the lines it brings along.
type place struct {
	cost  float64  // of its own: farther off, against habit
	at    geom.Vec // start of the last base line
	dir   geom.Vec
	box   box
	lines []line

	min, max geom.Vec
	weighed  bool
	fixed    float64 // what it costs among the fixed things
}

// stand makes the place of a block whose last base line starts at at.
func (b *block) stand(cost float64, at, dir geom.Vec, lines ...line) place {
	return newPlace(cost, at, dir, b.box(at, dir), lines)
}

func newPlace(cost float64, at, dir geom.Vec, room box, lines []line) place {
	c := place{cost: cost, at: at, dir: dir, box: room, lines: lines, min: room.min, max: room.max}
	for i := range lines {
		l := &lines[i]
		c.min = geom.V(min(c.min.X, l.min.X), min(c.min.Y, l.min.Y))
		c.max = geom.V(max(c.max.X, l.max.X), max(c.max.Y, l.max.Y))
	}
	return c
}

// sort finds the order of the places.
func (l *label) sort() {
	l.order = l.order[:0]
	for k := range l.places {
		l.order = append(l.order, k)
	}
	slices.SortFunc(l.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(l.places[a].cost, l.places[b].cost), cmp.Compare(a, b))
	})
}

// draw gives the items of the chosen place.
func (l *label) draw(s *Style) []drawing.Item {
	c := &l.places[l.now]
	var out []drawing.Item
	for i := 0; i < len(c.lines); { // lines that follow on each other in one stroke
		chain := []geom.Vec{c.lines[i].a, c.lines[i].b}
		for i++; i < len(c.lines) && c.lines[i].a == chain[len(chain)-1]; i++ {
			chain = append(chain, c.lines[i].b)
		}
		out = append(out, drawing.Polyline{Points: chain, Pen: s.Lines.Fine()})
	}
	if l.ends != nil {
		out = append(out, l.ends(c)...)
	}
	return append(out, l.text.items(c.at, c.dir)...)
}

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

// weigh prices a place among the fixed things, once.
func (f *field) weigh(c *place) float64 {
	if c.weighed {
		return c.fixed
	}
	c.weighed = true
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
	c.fixed = sum
	return sum
}

// clash prices two places against each other.
func clash(c, d *place) float64 {
	if c.min.X-textClear > d.max.X || d.min.X-textClear > c.max.X ||
		c.min.Y-textClear > d.max.Y || d.min.Y-textClear > c.max.Y {
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

// fine is a line of a label, drawn with the narrow pen.
func (s *Style) fine(a, b geom.Vec, r role) line { return newLine(a, b, s.Lines.Narrow/2, r) }

// leader takes as much room as the arrow at its tip.
func (s *Style) leader(tip, to geom.Vec) line { return newLine(tip, to, 0.4, lead) }

var right = geom.V(1, 0)

func polar(r unit.Length, t unit.Angle) geom.Vec { return geom.V(r, 0).Turn(t) }
