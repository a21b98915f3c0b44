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

// sort puts the cheapest places first.
func (l *label) sort() {
	slices.SortStableFunc(l.places, func(a, b place) int { return cmp.Compare(a.cost, b.cost) })
}

// draw gives the items of the chosen place.
func (l *label) draw(s *Style) []drawing.Item {
	c := &l.places[l.now]
	var out []drawing.Item
	for _, ln := range c.lines {
		out = append(out, drawing.Line(ln.a, ln.b, s.Lines.Fine()))
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
	onHatch    = 10.0
	alongPrice = 25.0
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
		if c.box.meets(&f.boxes[i], textClear) {
			sum += hard
		}
	}
	for _, i := range lines {
		if c.box.cut(&f.lines[i], lineClear) {
			sum += hard
			break
		}
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
		for _, k := range lines {
			sum += meetPrice(l, &f.lines[k])
		}
		for _, k := range boxes {
			if f.boxes[k].cut(l, lineClear) {
				sum += hard
			}
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
	sum := 0.0
	if c.box.meets(&d.box, textClear) {
		sum += hard
	}
	for i := range c.lines {
		if d.box.cut(&c.lines[i], lineClear) {
			sum += hard
		}
		for k := range d.lines {
			sum += meetPrice(&c.lines[i], &d.lines[k])
		}
	}
	for k := range d.lines {
		if c.box.cut(&d.lines[k], lineClear) {
			sum += hard
		}
	}
	return sum
}

// fine is a line of a label, drawn with the narrow pen.
func (s *Style) fine(a, b geom.Vec, r role) line { return newLine(a, b, s.Lines.Narrow/2, r) }

// leader takes as much room as the arrow at its tip.
func (s *Style) leader(tip, to geom.Vec) line { return newLine(tip, to, 0.4, lead) }

var right = geom.V(1, 0)

func polar(r unit.Length, t unit.Angle) geom.Vec { return geom.V(r, 0).Turn(t) }
