package drawing

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// dashForm is the make-up of an interrupted line in multiples of its width:
// one dash that stretches, then the fixed gaps and dots up to the next dash.
// ISO 128-2: dot 0.5 d, gap 3 d, dash 12 d, long dash 24 d.
type dashForm struct {
	dash, least float64
	rest        []float64
}

var dashForms = map[Dash]dashForm{
	Dashed:            {12, 3, []float64{3}},
	LongDashDot:       {24, 6, []float64{3, 0.5, 3}},
	LongDashDoubleDot: {24, 6, []float64{3, 0.5, 3, 0.5, 3}},
	Dotted:            {1, 0.5, []float64{3}},
}

// fitDashes gives the dashes for a line of this length. Only the dashes
// stretch, so that an open line begins and ends with a whole dash and a closed
// one has no seam (ISO 128-2 gives the same rule for computer drawings). A line
// too short for two dashes stays continuous.
func fitDashes(p Pen, length unit.Length, closed bool) []unit.Length {
	form, ok := dashForms[p.Dash]
	if !ok || !(p.Width > 0) {
		return nil
	}
	d, l := float64(p.Width), float64(length)
	rest := 0.0
	for _, r := range form.rest {
		rest += r * d
	}
	dashes := math.Round((l-form.dash*d)/(form.dash*d+rest)) + 1
	gaps := dashes - 1
	if closed {
		dashes = math.Round(l / (form.dash*d + rest))
		gaps = dashes
	}
	if dashes < 2 {
		dashes, gaps = 2, 1
		if closed {
			gaps = 2
		}
	}
	dash := (l - gaps*rest) / dashes
	if !(dash >= form.least*d) {
		return nil
	}
	out := []unit.Length{unit.Length(dash)}
	for _, r := range form.rest {
		out = append(out, unit.Length(r*d))
	}
	return out
}

func (p Pen) stroke(dashes []unit.Length) Stroke {
	return Stroke{Width: p.Width, Ink: p.Ink, Dashes: dashes}
}

func (x Polyline) plot(p Plotter, _ *context) {
	if len(x.Points) < 2 {
		return
	}
	switch x.Pen.Dash {
	case Solid:
		p.Lines([][]geom.Vec{x.Points}, x.Closed, x.Pen.stroke(nil))
	case Zigzag:
		p.Lines([][]geom.Vec{zigzag(x.chain())}, false, x.Pen.stroke(nil))
	case Freehand:
		p.Lines([][]geom.Vec{freehand(x.chain())}, false, x.Pen.stroke(nil))
	default:
		for _, run := range x.runs() {
			closed := x.Closed && len(run) == len(x.Points)
			p.Lines([][]geom.Vec{run}, closed, x.Pen.stroke(fitDashes(x.Pen, length(run, closed), closed)))
		}
	}
}

// chain is the line as an open chain, its first point repeated when closed.
func (x Polyline) chain() []geom.Vec {
	if !x.Closed {
		return x.Points
	}
	return append(append([]geom.Vec{}, x.Points...), x.Points[0])
}

// cornerTurn is the change of direction from which on a corner of a dashed
// line gets a dash on both sides.
const cornerTurn = 20 * unit.Degree

// runs cuts the line at its corners. A closed line without a corner comes back
// whole, without its first point repeated.
func (x Polyline) runs() [][]geom.Vec {
	pts := x.Points
	n := len(pts)
	if x.Closed {
		first := -1
		for i := range pts {
			if isCorner(pts[(i+n-1)%n], pts[i], pts[(i+1)%n]) {
				first = i
				break
			}
		}
		if first < 0 {
			return [][]geom.Vec{pts}
		}
		pts = append(append(append([]geom.Vec{}, pts[first:]...), pts[:first]...), pts[first])
	}
	var out [][]geom.Vec
	from := 0
	for i := 1; i < len(pts)-1; i++ {
		if isCorner(pts[i-1], pts[i], pts[i+1]) {
			out = append(out, pts[from:i+1])
			from = i
		}
	}
	return append(out, pts[from:])
}

func isCorner(a, b, c geom.Vec) bool {
	u, v := b.Sub(a), c.Sub(b)
	return math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) > float64(cornerTurn)
}

func length(pts []geom.Vec, closed bool) unit.Length {
	var sum unit.Length
	for i := 1; i < len(pts); i++ {
		sum += pts[i].Sub(pts[i-1]).Len()
	}
	if closed {
		sum += pts[0].Sub(pts[len(pts)-1]).Len()
	}
	return sum
}

const fullTurn = unit.Angle(2 * math.Pi)

func (x Arc) plot(p Plotter, _ *context) {
	l := x.Radius * unit.Length(math.Abs(float64(x.Sweep)))
	p.Arc(x.Centre, x.Radius, x.From, x.Sweep, x.Pen.stroke(fitDashes(x.Pen, l, false)))
}

func (x Circle) plot(p Plotter, _ *context) {
	l := x.Radius * unit.Length(fullTurn)
	p.Arc(x.Centre, x.Radius, 0, fullTurn, x.Pen.stroke(fitDashes(x.Pen, l, true)))
}
