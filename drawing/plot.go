package drawing

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Stroke tells how a line is drawn. Dashes are lengths of ink and gap in turn,
// fitted to the line so that it begins and ends in a dash; none means a
// continuous line. Ends are cut square, corners are mitred.
type Stroke struct {
	Width  unit.Length
	Ink    Ink
	Dashes []unit.Length
	Hatch  bool // the line belongs to a hatch
}

// Plotter receives the marks of a sheet, in order.
type Plotter interface {
	// Begin opens a group, End closes it.
	Begin(id, title string)
	End()
	// Lines draws chains of straight lines in one stroke.
	Lines(chains [][]geom.Vec, closed bool, s Stroke)
	// Arc draws part of a circle; a sweep of a full turn is a circle.
	Arc(centre geom.Vec, radius unit.Length, from, sweep unit.Angle, s Stroke)
	// Fill fills loops by the even-odd rule.
	Fill(loops [][]geom.Vec, ink Ink)
	// Write sets a text.
	Write(t Text)
}

// context is what items of a sheet impose on each other: the boxes of all
// texts, which hatches leave free.
type context struct{ quads [][4]geom.Vec }

// Plot takes a sheet apart into its marks.
func Plot(s Sheet, p Plotter) {
	c := &context{}
	c.gather(s.Items)
	plotAll(s.Items, p, c)
}

func (c *context) gather(items []Item) {
	for _, it := range items {
		switch x := it.(type) {
		case Text:
			c.quads = append(c.quads, x.Quad())
		case Group:
			c.gather(x.Items)
		}
	}
}

func plotAll(items []Item, p Plotter, c *context) {
	for _, it := range items {
		it.plot(p, c)
	}
}

func (x Group) plot(p Plotter, c *context) {
	p.Begin(x.ID, x.Title)
	plotAll(x.Items, p, c)
	p.End()
}

func (x Text) plot(p Plotter, _ *context) { p.Write(x) }
func (x Area) plot(p Plotter, _ *context) { p.Fill(x.Loops, x.Ink) }
