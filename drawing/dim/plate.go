package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Plate is one view placed on paper. Everything in it is paper; only requests
// come in the millimetres of the thing drawn.
type Plate struct {
	Origin geom.Vec                 // where the point 0, 0 of the view lies
	Scale  drawing.Scale            // of the view; the zero value is 1:1
	Body   drawing.Rect             // what dimension lines stand around; when empty, the bounds of Drawn
	Drawn  []drawing.Item           // the view and whatever else is on the paper already
	Added  []drawing.Item           // what came to stand around the dimension lines of these requests: lettering keeps clear of it, the lines stay
	Frame  drawing.Rect             // nothing leaves it; when empty there is no limit
	Kept   []drawing.Rect           // places kept free for others
	Style  Style                    // the zero value is Wood
	Format func(unit.Length) string // writes a length; nil writes millimetres to a tenth
	Degree func(unit.Angle) string  // writes an angle; nil writes degrees to a tenth
	// Mark gives what stands behind a figure of a request, such as the sign of a
	// revision; nil for nothing.
	Mark func(request int, figure string) string
}

// signed gives lines of a note with their marks.
func (p *Plate) signed(request int, lines []string) []string {
	if p.Mark == nil {
		return lines
	}
	out := make([]string, len(lines))
	for k, s := range lines {
		out[k] = s + p.Mark(request, s)
	}
	return out
}

// figure is the block of a figure with its mark.
func (p *Plate) figure(request int, text string) block {
	if p.Mark != nil {
		text += p.Mark(request, text)
	}
	return newBlock(p.Style.Height, text)
}

// MoveTo gives the plate, and all on it, with its origin elsewhere. Frame and
// Kept stay.
func (p Plate) MoveTo(origin geom.Vec) Plate {
	by := origin.Sub(p.Origin)
	p.Origin = origin
	p.Drawn, p.Added = drawing.Move(p.Drawn, by), drawing.Move(p.Added, by)
	p.Body = drawing.Rect{Min: p.Body.Min.Add(by), Max: p.Body.Max.Add(by)}
	return p
}

// Margin is the room around the body of a view, in millimetres of paper.
type Margin struct{ Left, Right, Below, Above unit.Length }

// Margins is the room that the requests would take around the body if there
// were no frame: what to add to a view before its scale is chosen. Drawn must
// be at the scale of the plate.
func Margins(p Plate, requests []Request) Margin {
	body, all := p.ready().Body, Extent(p, requests)
	return Margin{
		Left: body.Min.X - all.Min.X, Right: all.Max.X - body.Max.X,
		Below: body.Min.Y - all.Min.Y, Above: all.Max.Y - body.Max.Y,
	}
}

// Extent is the rectangle around the body and all that the requests would add
// if there were no frame.
func Extent(p Plate, requests []Request) drawing.Rect {
	p.Frame, p.Kept = drawing.Rect{}, nil
	items, _ := Place(p, requests)
	all := p.ready().Body
	if b := drawing.Bounds(items); !b.Empty() {
		all = all.Union(b)
	}
	return all
}

// limitless is the frame of a plate that has none.
var limitless = drawing.Box(-1e6, -1e6, 2e6, 2e6)

// ready fills what the caller left out.
func (p Plate) ready() Plate {
	if p.Scale.Real <= 0 || p.Scale.Paper <= 0 {
		p.Scale = drawing.Scale{Paper: 1, Real: 1}
	}
	if p.Body.Empty() {
		p.Body = drawing.Bounds(p.Drawn)
	}
	if p.Body.Empty() || !finite(p.Body.Min) || !finite(p.Body.Max) {
		p.Body = drawing.Rect{Min: p.Origin, Max: p.Origin}
	}
	if p.Frame.Empty() || !finite(p.Frame.Min) || !finite(p.Frame.Max) {
		p.Frame = limitless
	}
	if p.Style == (Style{}) {
		p.Style = Wood
	}
	if p.Format == nil {
		p.Format = unit.Style{}.Length
	}
	if p.Degree == nil {
		p.Degree = func(a unit.Angle) string { return unit.Style{}.Number(a.Degrees(), 1) + "°" }
	}
	return p
}

// at is the place of a point of the view on paper.
func (p *Plate) at(v geom.Vec) geom.Vec {
	return p.Origin.Add(geom.V(p.Scale.Of(v.X), p.Scale.Of(v.Y)))
}

// farthest is how far from the origin of the paper a point may lie, as in
// package drawing.
const farthest = 1e5

func finite(v geom.Vec) bool {
	return math.Abs(float64(v.X)) <= farthest && math.Abs(float64(v.Y)) <= farthest
}

// text is what a label says about a value.
func (l *Label) text(value string) string {
	if l.Text != "" {
		value = l.Text
	}
	s := l.Prefix + value
	if l.Tolerance != "" {
		s += " " + l.Tolerance
	}
	s += l.Suffix
	if l.Reference {
		s = "(" + s + ")"
	}
	return s
}
