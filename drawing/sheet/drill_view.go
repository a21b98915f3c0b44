package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/lists"
	"slabwright/model/unit"
)

// drilling is one wall seen from the room, with what is drilled into it. x runs
// along the wall from its left corner, y up from the floor.
type drilling struct {
	m        *maker
	w        *model.Wall
	figures  unit.Length // height of the figures
	holes    []wallHole
	hangs    []hanging
	right    bool // sizes start at the right corner: the left end is open
	from, to unit.Length
	top      unit.Length
}

// hanging is the outline of a part that will hang on the wall.
type hanging struct {
	part *model.Part
	box  drawing.Rect
}

// heightLine is the height of the line that is struck on every wall.
const (
	heightLine     unit.Length = 1000
	heightLineName             = "+1.000 m"
)

func newDrilling(m *maker, w *model.Wall, holes []wallHole) *drilling {
	d := &drilling{m: m, w: w, figures: drawing.Large, right: startsRight(w, holes)}
	d.holes = numbered(holes, d.right)
	d.hangs = m.hangings(w)
	d.top = heightLine + 80
	lo, hi := w.Length(), unit.Length(0)
	reach := func(x0, x1, z unit.Length) { lo, hi, d.top = min(lo, x0), max(hi, x1), max(d.top, z+80) }
	for _, h := range d.holes {
		reach(h.s, h.s, h.z)
	}
	for _, h := range d.hangs {
		reach(h.box.Min.X, h.box.Max.X, h.box.Max.Y)
	}
	if c := m.b.Room.Ceiling; c > 0 {
		d.top = min(d.top, c)
	}
	// Long bare ends are broken off, never the end at which the sizes start.
	const bare = 400
	d.from, d.to = 0, w.Length()
	if !d.right && hi+bare < d.to {
		d.to = hi + bare/2
	}
	if d.right && lo-bare > 0 {
		d.from = lo - bare/2
	}
	return d
}

// startsRight tells whether sizes along a wall start at its right corner: the
// left end is open, or the holes are all much nearer to the right one.
func startsRight(w *model.Wall, holes []wallHole) bool {
	if w.Next() == nil {
		return false
	}
	if w.Previous() == nil {
		return true
	}
	lo := w.Length()
	for _, h := range holes {
		lo = min(lo, h.s)
	}
	return lo > w.Length()/2
}

// hangings finds the parts that will hang on a wall and where they meet it.
func (m *maker) hangings(w *model.Wall) []hanging {
	const near = 30 // a slab that comes nearer than this to the wall
	var out []hanging
	beside := w.Chord().Shift(-near)
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil || p.Angle != nil }) {
		if a := p.Angle; a != nil {
			if a.Wall == w {
				b := p.Bounds()
				out = append(out, hanging{p, drawing.Rect{Min: geom.V(a.Start, b.Min.Z), Max: geom.V(a.Start+a.Length, b.Max.Z)}})
			}
			continue
		}
		for _, t := range p.Outline().Inside(beside.P, beside.P.Add(beside.D)) {
			l := w.Length()
			box := drawing.Rect{Min: geom.V(l*unit.Length(max(t[0], 0)), p.Slab.Top-p.Slab.Thickness), Max: geom.V(l*unit.Length(min(t[1], 1)), p.Slab.Top)}
			if box.Width() > 2*near { // the end of a slab on the next wall is none
				out = append(out, hanging{p, box})
			}
		}
	}
	return out
}

// corner is the corner at which sizes along the wall start, and its place.
func (d *drilling) corner() (string, unit.Length) {
	if d.right {
		return d.w.To.Name, d.w.Length()
	}
	return d.w.From.Name, 0
}

// off is the distance of a place along the wall from that corner.
func (d *drilling) off(s unit.Length) unit.Length {
	_, at := d.corner()
	return abs(s - at)
}

// elevation is the picture at a scale.
func (d *drilling) elevation(s drawing.Scale) picture {
	p := picture{id: "wall", title: "Wall " + d.w.Name + ", seen from the room", style: d.style()}
	p.view = view.View{Bounds: drawing.Rect{Min: geom.V(d.from, 0), Max: geom.V(d.to, d.top)}}
	p.extra = d.draw
	name, at := d.corner()
	p.ask = append(p.ask, dim.Datum{A: geom.V(at, 0), B: geom.V(at, d.top), Letter: name})
	p.ask = append(p.ask, d.rows()...)
	p.ask = append(p.ask, d.heights()...)
	p.ask = append(p.ask, d.names(s)...)
	return p
}

// style is that of steel with larger figures.
func (d *drilling) style() dim.Style {
	s := d.m.steelStyle()
	s.Height, s.Crowded = d.figures, drawing.Standard
	s.First, s.Next = 12, 10
	return s
}

// rows gives the running sizes of each row of holes from the corner; rows whose
// holes stand exactly above each other share one. High rows have theirs above.
func (d *drilling) rows() []dim.Request {
	name, at := d.corner()
	type line struct {
		key    string
		side   dim.Side
		points []geom.Vec
		labels []string
	}
	var lines []line
	for i := 0; i < len(d.holes); {
		row := d.holes[i].row
		l := line{side: dim.Below}
		if d.holes[i].z > heightLine {
			l.side = dim.Above
		}
		for ; i < len(d.holes) && d.holes[i].row == row; i++ {
			h := d.holes[i]
			l.key += d.m.length(d.off(h.s)) + " "
			l.points = append(l.points, geom.V(h.s, h.z))
			l.labels = append(l.labels, h.name)
		}
		k := slices.IndexFunc(lines, func(o line) bool { return o.key == l.key && o.side == l.side })
		if k < 0 {
			lines = append(lines, l)
			continue
		}
		for j, n := range l.labels { // the first and the last of the rows name them all
			first, _, _ := strings.Cut(lines[k].labels[j], " to ")
			lines[k].labels[j] = first + " to " + n
		}
	}
	var out []dim.Request
	for _, l := range lines {
		r := dim.Running{Datum: geom.V(at, 0), From: name, Points: l.points, Dir: dim.Horizontal, Side: l.side}
		if l.side == dim.Above {
			r.Datum.Y = d.top
		}
		for k, n := range l.labels {
			r.Labels = append(r.Labels, dim.Label{Text: n + "  " + d.m.length(d.off(l.points[k].X))})
		}
		out = append(out, r)
	}
	if len(d.w.Studs) > 0 {
		r := dim.Running{Datum: geom.V(at, d.top), From: name, Dir: dim.Horizontal, Side: dim.Above}
		for _, s := range d.w.Studs {
			if s > d.from && s < d.to {
				r.Points = append(r.Points, geom.V(s, d.top))
				r.Labels = append(r.Labels, dim.Label{Text: "stud  " + d.m.length(d.off(s))})
			}
		}
		if len(r.Points) > 0 {
			out = append(out, r)
		}
	}
	return out
}

// heights gives the running sizes of rows and seats from the floor, on the side
// of the corner, and the height line.
func (d *drilling) heights() []dim.Request {
	_, at := d.corner()
	side, other, far := dim.LeftOf, dim.RightOf, d.to
	if d.right {
		side, other, far = dim.RightOf, dim.LeftOf, d.from
	}
	r := dim.Running{Datum: geom.V(at, 0), From: "floor", Dir: dim.Vertical, Side: side}
	add := func(z unit.Length, label string) {
		for _, p := range r.Points {
			if abs(p.Y-z) < 0.5 {
				return
			}
		}
		r.Points = append(r.Points, geom.V(at, z))
		r.Labels = append(r.Labels, dim.Label{Prefix: label})
	}
	for i, h := range d.holes {
		if i == 0 || h.row != d.holes[i-1].row {
			add(h.z, rowLetter(h.row)+"  ")
		}
	}
	for _, h := range d.hangs {
		if h.part.Angle != nil {
			add(h.part.Angle.Seat, "seat  ")
		}
	}
	return []dim.Request{r, dim.Level{At: geom.V(far, heightLine), Value: heightLine, Side: other, Label: dim.Label{Text: heightLineName}}}
}

// names says what hangs where and what to keep away from.
func (d *drilling) names(s drawing.Scale) []dim.Request {
	var out []dim.Request
	for _, h := range d.hangs {
		out = append(out, dim.Note{At: geom.V(h.box.Min.X+h.box.Width()*0.62, h.box.Max.Y), Lines: []string{fmt.Sprintf("%d %s", h.part.Mark, h.part.ID)}, OnEdge: true})
	}
	for _, o := range d.w.Obstacles {
		box := d.keep(o)
		if box.Empty() {
			continue
		}
		text := append(drawing.Wrap(o.Name, d.figures, 45), "keep out")
		const size = drawing.Standard
		wide := max(drawing.TextWidth(o.Name, size), drawing.TextWidth("keep out", size)) + 4
		w, h := s.Of(box.Width()), s.Of(box.Height())
		if w > wide && h > 4*size || h > wide && w > 4*size {
			out = append(out, dim.Caption{Loop: box.Corners(), Lines: []string{o.Name, "keep out"}, Height: size})
			continue
		}
		out = append(out, dim.Note{At: geom.V(box.Max.X, box.Centre().Y), Lines: text, OnEdge: true})
	}
	return out
}

// drill says what to drill for a hole.
func (d *drilling) drill(h wallHole) string {
	a, ok := lists.AnchorFor(h.dia)
	switch {
	case h.part.Rod != nil:
		return fmt.Sprintf("Ø%s x %s deep", d.m.length(h.dia), d.m.length(h.inWall))
	case !ok:
		return "anchor"
	case d.w.Make == model.Stud:
		return fmt.Sprintf("coach screw Ø%s", d.m.length(a.Bolt))
	}
	return fmt.Sprintf("anchor Ø%s", d.m.length(a.Drill))
}

// keep is the part of an obstacle's keep-out that the picture shows.
func (d *drilling) keep(o model.Obstacle) drawing.Rect {
	start, end, bottom, top := o.Keep()
	return drawing.Rect{Min: geom.V(max(start, d.from), max(bottom, 0)), Max: geom.V(min(end, d.to), min(top, d.top))}
}

// draw draws the wall and all that is on it.
func (d *drilling) draw(pl dim.Plate) []drawing.Item {
	g := d.m.lines
	at := func(p geom.Vec) geom.Vec { return pl.Origin.Add(geom.V(pl.Scale.Of(p.X), pl.Scale.Of(p.Y))) }
	line := func(x0, y0, x1, y1 unit.Length, pen drawing.Pen) drawing.Item {
		return drawing.Line(at(geom.V(x0, y0)), at(geom.V(x1, y1)), pen)
	}
	box := func(r drawing.Rect, pen drawing.Pen) drawing.Item {
		return drawing.Outline(mapped(r.Corners(), at), pen)
	}
	wall := drawing.Pen{Width: 0.7}
	edge := func(x unit.Length, corner bool) drawing.Item {
		if corner {
			return line(x, 0, x, d.top, wall)
		}
		return line(x, 0, x, d.top, g.Break())
	}
	top := g.Break()
	if d.top == d.m.b.Room.Ceiling {
		top = wall
	}
	out := []drawing.Item{
		line(d.from, 0, d.to, 0, wall), line(d.from, d.top, d.to, d.top, top),
		edge(d.from, d.from == 0 && d.w.Previous() != nil), edge(d.to, d.to == d.w.Length() && d.w.Next() != nil),
		line(d.from, heightLine, d.to, heightLine, g.Centre()),
	}
	for _, s := range d.w.Studs {
		if s > d.from && s < d.to {
			out = append(out, line(s, 0, s, d.top, g.Centre()))
		}
	}
	for _, o := range d.w.Obstacles {
		k := d.keep(o)
		if k.Empty() {
			continue
		}
		out = append(out, drawing.Hatch{Loops: [][]geom.Vec{mapped(k.Corners(), at)}, Pattern: drawing.Pattern{Material: drawing.Plain, Pitch: 3, Width: g.Narrow}}, box(k, g.Fine()))
		thing := drawing.Rect{Min: geom.V(max(o.Start, d.from), max(o.Bottom, 0)), Max: geom.V(min(o.End, d.to), min(o.Top, d.top))}
		if !thing.Empty() {
			out = append(out, box(thing, g.Outline()))
		}
	}
	for _, h := range d.hangs {
		out = append(out, box(h.box, g.Adjacent()))
	}
	for _, h := range d.holes {
		out = append(out, d.cross(at(geom.V(h.s, h.z)), pl.Scale.Of(h.dia/2))...)
	}
	return out
}

// cross marks a hole: its circle, never too small to see, and both centre
// lines.
func (d *drilling) cross(c geom.Vec, r unit.Length) []drawing.Item {
	r = max(r, 0.8)
	arm := r + 1.5
	return []drawing.Item{
		drawing.Circle{Centre: c, Radius: r, Pen: d.m.lines.Outline()},
		drawing.Line(c.Sub(geom.V(arm, 0)), c.Add(geom.V(arm, 0)), d.m.lines.Fine()),
		drawing.Line(c.Sub(geom.V(0, arm)), c.Add(geom.V(0, arm)), d.m.lines.Fine()),
	}
}
