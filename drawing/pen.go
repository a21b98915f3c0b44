package drawing

import "slabwright/model/unit"

// Ink is a colour 0xRRGGBB; the zero value is black. Sheets must be readable
// in black and white: ink never carries meaning alone.
type Ink uint32

// The inks of the house. Red is dark enough to survive a grey copy.
const (
	Black Ink = 0x000000
	Grey  Ink = 0x808080
	Pale  Ink = 0xE6E6E6
	White Ink = 0xFFFFFF
	Red   Ink = 0xB00020
)

// Darkness is 0 for white and 1 for black (luma weights of ITU-R BT.601).
func (k Ink) Darkness() float64 {
	r, g, b := float64(k>>16&255), float64(k>>8&255), float64(k&255)
	return 1 - (0.299*r+0.587*g+0.114*b)/255
}

// Dash is the kind of a line, with the basic type of ISO 128-2:2020 in brackets.
type Dash uint8

// The kinds of lines. Zigzag and Freehand change the course of a line, the
// others interrupt it.
const (
	Solid             Dash = iota // continuous (01)
	Dashed                        // hidden edges (02)
	LongDashDot                   // centre lines, cutting planes (04)
	LongDashDoubleDot             // adjacent parts, end positions (05)
	Dotted                        // sap line, hints (07)
	Zigzag                        // break drawn by machine (01 with zigzags)
	Freehand                      // break drawn by hand, natural edge (01 wavy)
)

// Pen draws a line. Lengths of dashes and gaps follow from Width.
type Pen struct {
	Width unit.Length
	Dash  Dash
	Ink   Ink
}

// In gives the pen another ink.
func (p Pen) In(k Ink) Pen { p.Ink = k; return p }

// LineGroup is a set of line widths that belong together: wide to narrow at
// least 2:1 (ISO 128-2), widths of the series 0.13 ... 2 in steps of root two.
type LineGroup struct{ Wide, Narrow, Letter unit.Length }

// Line groups: Normal for A3 and larger, Dense for crowded A4 sheets.
var (
	Normal = LineGroup{Wide: 0.5, Narrow: 0.25, Letter: 0.35}
	Dense  = LineGroup{Wide: 0.35, Narrow: 0.18, Letter: 0.25}
)

// Outline draws visible edges and outlines (line 01.2).
func (g LineGroup) Outline() Pen { return Pen{Width: g.Wide} }

// Fine draws dimension, extension and leader lines and hatches (line 01.1).
func (g LineGroup) Fine() Pen { return Pen{Width: g.Narrow} }

// Hidden draws hidden edges (line 02.1).
func (g LineGroup) Hidden() Pen { return Pen{Width: g.Narrow, Dash: Dashed} }

// Centre draws centre lines, symmetry lines and back marks (line 04.1).
func (g LineGroup) Centre() Pen { return Pen{Width: g.Narrow, Dash: LongDashDot} }

// Plane draws the ends of cutting planes (line 04.2).
func (g LineGroup) Plane() Pen { return Pen{Width: g.Wide, Dash: LongDashDot} }

// Adjacent draws neighbours that are not part of the work, and end positions
// of moving things (line 05.1).
func (g LineGroup) Adjacent() Pen { return Pen{Width: g.Narrow, Dash: LongDashDoubleDot} }

// Break draws the end of a view that is broken off (line 01.1 with zigzags).
func (g LineGroup) Break() Pen { return Pen{Width: g.Narrow, Dash: Zigzag} }

// Wavy draws a break by hand (line 01.1 freehand).
func (g LineGroup) Wavy() Pen { return Pen{Width: g.Narrow, Dash: Freehand} }

// Sap draws the line between sapwood and heartwood (dotted, trade habit).
func (g LineGroup) Sap() Pen { return Pen{Width: g.Narrow, Dash: Dotted} }
