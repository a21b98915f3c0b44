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
	extra func(dim.Plate) []drawing.Item // more lines, in paper millimetres
}

// paint gives lines and hatches their look.
type paint struct {
	pen   func(view.Stroke) (drawing.Pen, bool) // false: not drawn
	hatch func(item int) drawing.Pattern
	group func(item int) (id, title string)
}

const (
	titleRoom  unit.Length = 9 // below a view, for its title
	betweenTwo unit.Length = 10
)

// column lays pictures below each other in a room of the sheet, all at the
// largest scale of the series at which they fit, and gives that scale.
func (m *maker) column(room drawing.Rect, pictures ...picture) ([]drawing.Item, drawing.Scale) {
	for i, s := range drawing.Scales {
		if s.Paper > s.Real {
			continue
		}
		items, ok := m.columnAt(room, s, pictures)
		if ok || i == len(drawing.Scales)-1 {
			return items, s
		}
	}
	return nil, drawing.Scale{Paper: 1, Real: 1}
}

func (m *maker) columnAt(room drawing.Rect, s drawing.Scale, pictures []picture) ([]drawing.Item, bool) {
	blocks := make([]drawing.Rect, len(pictures))
	plates := make([]dim.Plate, len(pictures))
	var height, width unit.Length
	for i, p := range pictures {
		plates[i] = m.plate(p, s)
		body := plates[i].Body
		if s.Paper < s.Real && (body.Width() > room.Width() || body.Height() > room.Height()) || body.Width() > room.Width() {
			return nil, false
		}
		blocks[i] = dim.Extent(plates[i], p.ask)
		height += blocks[i].Height() + titleRoom
		width = max(width, blocks[i].Width())
	}
	height += betweenTwo * unit.Length(len(pictures)-1)
	fits := width <= room.Width() && height <= room.Height()
	spare := max(0, room.Height()-height) / unit.Length(len(pictures)+1)
	var out []drawing.Item
	top := room.Max.Y - spare
	for i, p := range pictures {
		b := blocks[i]
		to := geom.V(room.Centre().X-b.Width()/2-b.Min.X, top-b.Max.Y)
		pl := plates[i].MoveTo(plates[i].Origin.Add(to))
		frame := drawing.Rect{Min: geom.V(room.Min.X, top-b.Height()-spare/2), Max: geom.V(room.Max.X, top+spare/2)}
		out = append(out, m.finish(p, pl, frame, s, top-b.Height()-titleRoom+2.5))
		top -= b.Height() + titleRoom + betweenTwo + spare
	}
	return out, fits
}

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

// finish places the dimensions and writes the title below the view.
func (m *maker) finish(p picture, pl dim.Plate, frame drawing.Rect, s drawing.Scale, titleAt unit.Length) drawing.Item {
	if p.extra != nil {
		pl.Drawn = append(pl.Drawn, p.extra(pl)...)
	}
	pl.Frame = frame
	asked, _ := dim.Place(pl, p.ask)
	items := append(append([]drawing.Item(nil), pl.Drawn...), drawing.Group{ID: p.id + "-dimensions", Title: "dimensions", Items: asked})
	if p.title != "" {
		items = append(items, drawing.Write(geom.V(pl.Body.Centre().X, titleAt), p.title+"   "+s.String(), drawing.Standard, drawing.Centre).Strong())
	}
	return drawing.Group{ID: p.id, Title: p.title, Items: items}
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
