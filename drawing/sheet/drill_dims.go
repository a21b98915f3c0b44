package sheet

import (
	"fmt"
	"slices"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// elevation is the picture at a scale.
func (d *drilling) elevation(s drawing.Scale) picture {
	p := picture{id: "wall", title: d.m.sayf("Wall %s, seen from the room", d.m.pass(d.w.Name)), style: d.style()}
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
	s.Height, s.Crowded = d.figures, min(d.figures, drawing.Standard)
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
		last   []string // of the same column of holes in other rows
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
			l.last = make([]string, len(l.labels))
			lines = append(lines, l)
			continue
		}
		for j, n := range l.labels { // the first and the last of the rows name them all
			lines[k].last[j] = n
		}
	}
	if d.brief && len(lines) > 2 {
		lines = append(lines[:1], lines[len(lines)-1])
	}
	var out []dim.Request
	for _, l := range lines {
		r := dim.Running{Datum: geom.V(at, 0), From: name, Points: l.points, Dir: dim.Horizontal, Side: l.side}
		if l.side == dim.Above {
			r.Datum.Y = d.top
		}
		for k, n := range l.labels {
			if l.last[k] != "" {
				n = d.m.sayf("%s to %s", n, l.last[k])
			}
			r.Labels = append(r.Labels, dim.Label{Text: n + "  " + d.m.length(d.off(l.points[k].X))})
		}
		out = append(out, r)
	}
	if len(d.w.Studs) > 0 {
		r := dim.Running{Datum: geom.V(at, d.top), From: name, Dir: dim.Horizontal, Side: dim.Above}
		for _, s := range d.w.Studs {
			if s > d.from && s < d.to {
				r.Points = append(r.Points, geom.V(s, d.top))
				r.Labels = append(r.Labels, dim.Label{Text: d.m.say("stud") + "  " + d.m.length(d.off(s))})
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
	r := dim.Running{Datum: geom.V(at, 0), From: d.m.say("floor"), Dir: dim.Vertical, Side: side}
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
		if b := h.part.Bracket(); b != nil {
			add(b.On().Seat, d.m.say("seat // of an angle")+"  ")
		}
	}
	return []dim.Request{r, dim.Level{At: geom.V(far, heightLine), Value: heightLine, Side: other, Label: dim.Label{Text: d.m.heightLineName()}}}
}

// names says what hangs where and what to keep away from.
func (d *drilling) names(s drawing.Scale) []dim.Request {
	var out []dim.Request
	for _, h := range d.hangs {
		name := fmt.Sprintf("%d %s", h.part.Mark, d.m.pass(h.part.ID))
		if d.terse {
			name = fmt.Sprint(h.part.Mark)
		}
		out = append(out, dim.Note{At: geom.V(h.box.Min.X+h.box.Width()*0.62, h.box.Max.Y), Lines: []string{name}, OnEdge: true})
	}
	for _, o := range d.w.Obstacles {
		box := d.keep(o)
		if box.Empty() {
			continue
		}
		size, most := drawing.Standard, 4
		if d.terse {
			size, most = drawing.Small, 1
		}
		lines := append(nameLines(o.Name, size, 45, most), d.m.say("keep out"))
		long, deep := drawing.TextWidth(d.m.say("keep out"), size)+4, (unit.Length(len(lines))*drawing.LinePitch+1)*size
		for _, l := range lines {
			long = max(long, drawing.TextWidth(l, size)+4)
		}
		w, h := s.Of(box.Width()), s.Of(box.Height())
		if w > long && h > deep || h > long && w > deep {
			out = append(out, dim.Caption{Loop: box.Corners(), Lines: lines, Height: size})
			continue
		}
		out = append(out, dim.Note{At: geom.V(box.Max.X, box.Centre().Y), Lines: lines, OnEdge: true, Height: size})
	}
	return out
}

// drill says what to drill for a hole.
func (d *drilling) drill(h wallHole) string {
	a, ok := stock.AnchorThrough(h.dia)
	switch {
	case h.part.Rod != nil:
		return d.m.sayf("Ø%s x %s deep", d.m.length(h.dia), d.m.length(h.inWall))
	case !ok:
		return d.m.say("anchor")
	case d.w.Make == model.Stud:
		return d.m.sayf("coach screw Ø%s", d.m.length(a.Bolt))
	}
	return d.m.sayf("anchor Ø%s", d.m.length(a.Drill))
}
