package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// picture is a view with all that is said about it.
type picture struct {
	id    string // of the group on the sheet
	title string // written below the view
	view  view.View
	paint paint
	ask   []dim.Request
	style dim.Style
	extra func(dim.Plate) []drawing.Item         // more lines, in paper millimetres
	after func(dim.Plate, *taken) []drawing.Item // what looks for a free spot among lines and dimensions
}

// paint gives lines and hatches their look.
type paint struct {
	pen   func(view.Stroke) (drawing.Pen, bool) // false: not drawn
	hatch func(item int) drawing.Pattern
	group func(item int) (id, title string)
}

// titleRoom is the room below a view for its title.
const titleRoom unit.Length = 8

// plate draws the lines of a picture at a scale, its origin on the paper's.
func (m *maker) plate(p picture, s drawing.Scale) dim.Plate {
	pl := dim.Plate{Scale: s, Style: p.style, Format: m.length}
	at := func(v geom.Vec) geom.Vec { return geom.V(s.Of(v.X), s.Of(v.Y)) }
	groups := newGroups(p)
	for _, c := range p.view.Cuts {
		loops := make([][]geom.Vec, len(c.Loops))
		for i, l := range c.Loops {
			loops[i] = mapped(l, at)
		}
		groups.add(c.Item, cutFill(loops, p.paint.hatch(c.Item)))
	}
	for _, l := range p.view.Lines() {
		if pen, ok := p.paint.pen(l.Stroke); ok {
			groups.add(l.Item, drawing.Polyline{Points: mapped(l.Points, at), Closed: l.Closed, Pen: pen})
		}
	}
	pl.Drawn = groups.items()
	pl.Body = drawing.Rect{Min: at(p.view.Bounds.Min), Max: at(p.view.Bounds.Max)}
	return pl
}

// cutFill hatches a cut face; one too thin for a hatch is filled (ISO 128-3).
func cutFill(loops [][]geom.Vec, pat drawing.Pattern) drawing.Item {
	if thin(loops) {
		return drawing.Area{Loops: loops}
	}
	return drawing.Hatch{Loops: loops, Pattern: pat}
}

// thin tells whether a cut face is under 2 mm thick on paper.
func thin(loops [][]geom.Vec) bool {
	var area, edge float64
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			area += a.Cross(b) / 2
			edge += float64(b.Sub(a).Len())
		}
	}
	return edge > 0 && 2*area/edge < 2
}

func mapped(pts []geom.Vec, f func(geom.Vec) geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(pts))
	for i, p := range pts {
		out[i] = f(p)
	}
	return out
}

// drawn is a picture on paper, not yet at its place: the origin of the view is
// the origin of the paper.
type drawn struct {
	item   drawing.Item
	box    drawing.Rect // all of it, title included
	body   drawing.Rect // the view alone
	report dim.Report
}

// lacks is the number of letterings that have no place of their own.
func (d drawn) lacks() int {
	n := 0
	for _, t := range d.report.Troubles {
		if t.Why == dim.NoRoom {
			n++
		}
	}
	return n
}

// draw draws a picture at a scale, its dimensions no further from the view than
// the margin allows, its title below.
func (m *maker) draw(p picture, s drawing.Scale, margin geom.Vec) drawn {
	pl := m.plate(p, s)
	if p.extra != nil {
		pl.Drawn = append(pl.Drawn, p.extra(pl)...)
	}
	pl.Frame = drawing.Rect{Min: pl.Body.Min.Sub(margin), Max: pl.Body.Max.Add(margin)}
	pl = m.marked(pl, p, true)
	asked, report := place(pl, p.ask)
	all := pl.Drawn
	if len(asked) > 0 {
		all = append(all, drawing.Group{ID: p.id + "-dimensions", Title: m.say("dimensions"), Items: asked})
	}
	if p.after != nil {
		all = append(all, p.after(pl, takenBy(all))...)
	}
	d := drawn{body: pl.Body, report: report}
	d.box = pl.Body
	if b := drawing.Bounds(all); !b.Empty() {
		d.box = d.box.Union(b)
	}
	if p.title != "" {
		t := m.titled(p.title, s, pl.Body, d.box.Min.Y)
		all = append(all, t...)
		d.box = d.box.Union(drawing.Bounds(t).Grow(0.5))
		d.box.Min.Y -= 2
	}
	d.item = drawing.Group{ID: p.id, Title: p.title, Items: all}
	return d
}

// titled writes the title of a picture and its scale below it, in more than one
// line where it is much wider than the view.
func (m *maker) titled(title string, s drawing.Scale, body drawing.Rect, below unit.Length) []drawing.Item {
	const h = drawing.Standard
	room := max(body.Width()+20, min(110, 0.7*drawing.Free(m.size)[0].Width()))
	lines := drawing.WrapStrong(title, h, room-15) // the scale follows
	lines[len(lines)-1] += "   " + s.String()
	y := below - titleRoom + 2.5
	var out []drawing.Item
	for _, line := range lines {
		out = append(out, drawing.Write(geom.V(body.Centre().X, y), line, h, drawing.Centre).Strong())
		y -= h * 1.6
	}
	return out
}

// at moves a drawn picture so that the origin of its view comes to a place.
func (d drawn) at(origin geom.Vec) drawing.Item {
	return drawing.Move([]drawing.Item{d.item}, origin)[0]
}

// groups gathers the lines of a view by item, so that every part is one group.
type groups struct {
	p     picture
	order []int
	by    map[int][]drawing.Item
}

func newGroups(p picture) *groups { return &groups{p: p, by: map[int][]drawing.Item{}} }

func (g *groups) add(item int, it drawing.Item) {
	if _, ok := g.by[item]; !ok {
		g.order = append(g.order, item)
	}
	g.by[item] = append(g.by[item], it)
}

func (g *groups) items() []drawing.Item {
	var out []drawing.Item
	for _, i := range g.order {
		id, title := g.p.paint.group(i)
		out = append(out, drawing.Group{ID: g.p.id + "-" + id, Title: title, Items: g.by[i]})
	}
	return out
}
