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
	more    func() []place                // places farther off, for when none of the first is free; it may set the next
	ends    func(c *place) []drawing.Item // marks and rings of a place
	now     int                           // index of the chosen place
	rest    bool                          // the choice stands: nothing within reach has moved since

	min, max geom.Vec // around all places
}

// place is one position of a label with the lines it brings along.
type place struct {
	cost  float64  // of its own: farther off, against habit
	at    geom.Vec // start of the last base line
	dir   geom.Vec
	box   box
	lines []line

	min, max geom.Vec
	weighed  weighing
	fixed    float64 // what it costs among the fixed things, as far as weighed
}

// weighing tells how much of a place has been priced among the fixed things.
type weighing uint8

const (
	_ weighing = iota
	lettering
	whole
)

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

// sort finds the order of the places, and the room that they take.
func (l *label) sort() {
	l.order = l.order[:0]
	for k := range l.places {
		l.order = append(l.order, k)
		c := &l.places[k]
		if k == 0 {
			l.min, l.max = c.min, c.max
		}
		l.min = geom.V(min(l.min.X, c.min.X), min(l.min.Y, c.min.Y))
		l.max = geom.V(max(l.max.X, c.max.X), max(l.max.Y, c.max.Y))
	}
	l.rest = false
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

// fine is a line of a label, drawn with the narrow pen.
func (s *Style) fine(a, b geom.Vec, r role) line { return newLine(a, b, s.Lines.Narrow/2, r) }

// leader takes as much room as the arrow at its tip.
func (s *Style) leader(tip, to geom.Vec) line { return newLine(tip, to, 0.4, lead) }

var right = geom.V(1, 0)

func polar(r unit.Length, t unit.Angle) geom.Vec { return geom.V(r, 0).Turn(t) }
