package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// drilling is one wall seen from the room, with what is drilled into it. x runs
// along the wall from its left corner, y up from the floor.
type drilling struct {
	m        *maker
	w        *model.Wall
	figures  unit.Length // height of the figures
	brief    bool        // sizes of the lowest and the highest row only; the others are in the table
	terse    bool        // parts by their numbers alone, names of keep-outs in one line
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
	heightLine unit.Length = 1000
)

func newDrilling(m *maker, w *model.Wall, holes []wallHole) *drilling {
	d := &drilling{m: m, w: w, figures: drawing.Large, right: m.countsFromRight(w)}
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

// hangings finds the parts that will hang on a wall and where they meet it.
func (m *maker) hangings(w *model.Wall) []hanging {
	const near = 30 // a slab that comes nearer than this to the wall
	var out []hanging
	beside := w.Chord().Shift(-near)
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil || p.Bracket() != nil }) {
		if x := p.Bracket(); x != nil {
			if a := x.On(); a.Wall == w {
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
