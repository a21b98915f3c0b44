package drawing

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Item is one thing on a sheet: Polyline, Arc, Circle, Area, Hatch, Text, Mark
// or Group.
type Item interface {
	// move gives the item displaced.
	move(by geom.Vec) Item
	// plot leaves the item's marks on p; c holds what other items impose on it.
	plot(p Plotter, c *context)
}

// Polyline is a chain of straight lines; Closed joins the last point to the
// first.
type Polyline struct {
	Points []geom.Vec
	Closed bool
	Pen    Pen
}

// Arc is part of a circle, from angle From over Sweep (counter-clockwise when
// positive).
type Arc struct {
	Centre      geom.Vec
	Radius      unit.Length
	From, Sweep unit.Angle
	Pen         Pen
}

// Circle is a whole circle line.
type Circle struct {
	Centre geom.Vec
	Radius unit.Length
	Pen    Pen
}

// Area is a filled region: its loops are filled by the even-odd rule, so a
// loop inside another is a hole, whatever its direction. It has no outline.
type Area struct {
	Loops [][]geom.Vec
	Ink   Ink
}

// Hatch fills a region (even-odd) with the lines of a cut material. Texts on
// the sheet are left free.
type Hatch struct {
	Loops   [][]geom.Vec
	Pattern Pattern
}

// Text is one line of lettering. Height is the height of its capitals. At is
// the point of the text named by Align; the text turns about it.
type Text struct {
	At     geom.Vec
	String string
	Height unit.Length
	Align  Align
	Turn   unit.Angle
	Bold   bool
	Ink    Ink
}

// Mark is a terminator or another small sign. Dir is the way it points; only
// its direction counts. Size is its length (arrow, oblique stroke) or its
// diameter (dot, origin); zero takes the house size.
type Mark struct {
	Kind MarkKind
	At   geom.Vec
	Dir  geom.Vec
	Size unit.Length
	Pen  Pen
}

// Group holds items that belong together: a part, a view, a layer. In SVG it
// becomes a group with this id and title. ID must be unique on its sheet;
// Title may be empty.
type Group struct {
	ID    string
	Title string
	Items []Item
}

// Line makes a straight line.
func Line(a, b geom.Vec, pen Pen) Polyline { return Polyline{Points: []geom.Vec{a, b}, Pen: pen} }

// Outline makes a closed line.
func Outline(loop []geom.Vec, pen Pen) Polyline {
	return Polyline{Points: loop, Closed: true, Pen: pen}
}

// Outlines makes a closed line for each loop of a region.
func Outlines(loops [][]geom.Vec, pen Pen) []Item {
	items := make([]Item, len(loops))
	for i, l := range loops {
		items[i] = Outline(l, pen)
	}
	return items
}

// Move gives the items displaced.
func Move(items []Item, by geom.Vec) []Item {
	out := make([]Item, len(items))
	for i, it := range items {
		out[i] = it.move(by)
	}
	return out
}

func moveAll(pts []geom.Vec, by geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(pts))
	for i, p := range pts {
		out[i] = p.Add(by)
	}
	return out
}

func moveLoops(loops [][]geom.Vec, by geom.Vec) [][]geom.Vec {
	out := make([][]geom.Vec, len(loops))
	for i, l := range loops {
		out[i] = moveAll(l, by)
	}
	return out
}

func (x Polyline) move(by geom.Vec) Item { x.Points = moveAll(x.Points, by); return x }
func (x Arc) move(by geom.Vec) Item      { x.Centre = x.Centre.Add(by); return x }
func (x Circle) move(by geom.Vec) Item   { x.Centre = x.Centre.Add(by); return x }
func (x Area) move(by geom.Vec) Item     { x.Loops = moveLoops(x.Loops, by); return x }
func (x Hatch) move(by geom.Vec) Item {
	x.Loops = moveLoops(x.Loops, by)
	x.Pattern.Origin = x.Pattern.Origin.Add(by)
	return x
}
func (x Text) move(by geom.Vec) Item  { x.At = x.At.Add(by); return x }
func (x Mark) move(by geom.Vec) Item  { x.At = x.At.Add(by); return x }
func (x Group) move(by geom.Vec) Item { x.Items = Move(x.Items, by); return x }
