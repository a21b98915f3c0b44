// Package drawing holds the sheets of a job as plain values in millimetres of
// paper. The origin is the lower left corner of the trimmed sheet, x runs to
// the right and y up; angles are counter-clockwise.
//
// A sheet is a list of items: lines, arcs, filled areas, hatches, texts and
// terminators, held together in named groups. Nothing here knows an output
// format: Plot takes a sheet apart into strokes, fills and texts, and package
// render hands those on to SVG and PDF. Dump gives the stable text form that
// golden tests compare.
package drawing

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Sheet is one sheet of paper. A builder fills Name, Title, Size, Scale and
// Items; Finish adds the frame, the title block and the print gauge.
type Sheet struct {
	Name   string // stem of the file name, such as "03-slab-top"
	Title  string // what the sheet shows, for the title block and the bookmarks
	Size   Size
	Scale  string // main scale as written on the sheet, such as "1:10"
	Number int    // place in the set, from 1
	Of     int    // number of sheets in the set
	Stamp  string // "not for the shop" and the like; empty when nothing failed
	Items  []Item
}

// Add appends items to the sheet.
func (s *Sheet) Add(items ...Item) { s.Items = append(s.Items, items...) }

// Size is a trimmed sheet of the ISO A series with its orientation.
type Size struct {
	Name          string
	Width, Height unit.Length
	Revisions     int // rows of the table of revisions, on the title block
}

// Trimmed sizes after ISO 5457:1999 (ISO 216): A4 stands, the others lie.
var (
	A4 = Size{Name: "A4", Width: 210, Height: 297}
	A3 = Size{Name: "A3", Width: 420, Height: 297}
	A2 = Size{Name: "A2", Width: 594, Height: 420}
	A1 = Size{Name: "A1", Width: 841, Height: 594}
)

// Turned swaps portrait and landscape.
func (s Size) Turned() Size { return Size{s.Name, s.Height, s.Width, s.Revisions} }

// Paper is the whole trimmed sheet.
func (s Size) Paper() Rect { return Rect{geom.V(0, 0), geom.V(s.Width, s.Height)} }

// Rect is an axis-parallel rectangle on the sheet.
type Rect struct{ Min, Max geom.Vec }

// Box makes a rectangle from its lower left corner and its size.
func Box(x, y, width, height unit.Length) Rect {
	return Rect{geom.V(x, y), geom.V(x+width, y+height)}
}

// Width and Height are the sides of the rectangle.
func (r Rect) Width() unit.Length  { return r.Max.X - r.Min.X }
func (r Rect) Height() unit.Length { return r.Max.Y - r.Min.Y }

// Centre is the middle of the rectangle.
func (r Rect) Centre() geom.Vec { return r.Min.Lerp(r.Max, 0.5) }

// Empty tells whether the rectangle has no area.
func (r Rect) Empty() bool { return r.Max.X <= r.Min.X || r.Max.Y <= r.Min.Y }

// Grow moves all four sides outwards by d (inwards when d is negative).
func (r Rect) Grow(d unit.Length) Rect {
	return Rect{geom.V(r.Min.X-d, r.Min.Y-d), geom.V(r.Max.X+d, r.Max.Y+d)}
}

// Union is the smallest rectangle around both.
func (r Rect) Union(o Rect) Rect {
	return Rect{
		geom.V(min(r.Min.X, o.Min.X), min(r.Min.Y, o.Min.Y)),
		geom.V(max(r.Max.X, o.Max.X), max(r.Max.Y, o.Max.Y)),
	}
}

// Meets tells whether the rectangles share more than a border.
func (r Rect) Meets(o Rect) bool {
	return r.Min.X < o.Max.X && o.Min.X < r.Max.X && r.Min.Y < o.Max.Y && o.Min.Y < r.Max.Y
}

// Holds tells whether o lies inside r, borders included.
func (r Rect) Holds(o Rect) bool {
	return r.Min.X <= o.Min.X && o.Max.X <= r.Max.X && r.Min.Y <= o.Min.Y && o.Max.Y <= r.Max.Y
}

// Corners are the four corners, counter-clockwise from the lower left.
func (r Rect) Corners() []geom.Vec {
	return []geom.Vec{r.Min, geom.V(r.Max.X, r.Min.Y), r.Max, geom.V(r.Min.X, r.Max.Y)}
}
