package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/calc/saw"
	"slabwright/model/cut"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// cuttingSheets show where to saw: one sheet per slab on offer that is used, one
// per section of bars, then the orders for the wood store and the steel yard.
func cuttingSheets(m *maker) []page {
	s := m.b.Shopping
	if s == nil {
		return nil
	}
	var out []page
	n := 0
	for _, l := range s.Wood {
		for _, lay := range l.Plan.Layouts {
			n++
			out = append(out, m.slabCuts(l, lay, n)...)
		}
	}
	for _, l := range s.Steel {
		if l.Plan.Found {
			out = append(out, m.barCuts(l)...)
		}
	}
	return append(out, m.orders(s)...)
}

// slabCuts is the sheet of one slab on offer.
func (m *maker) slabCuts(l cut.WoodLot, lay saw.Layout, n int) []page {
	v := m.cutView(l, lay)
	c := chapter{name: "layout", title: m.say("layout"), pictures: []picture{v.picture()}}
	c.beside = append(c.beside, m.cutTable(l, lay).blocks("cuts", m.say("Cuts in saw order"), m.lines)...)
	c.beside = append(c.beside, notesBlock("notes", m.say("Notes"), v.notes()))
	pages := m.pages(fmt.Sprintf("saw-slab-%d", n), m.sayf("Saw: %s", lay.Sheet), []chapter{c})
	for i := range pages {
		b := &pages[i].block
		b.DocumentType = m.say("cutting plan")
		b.Material = m.sayf("%s, t = %s", m.pass(l.Species), m.length(v.offer.Thickness))
		b.Tolerance = m.say("see the sheet of the part")
	}
	return pages
}

// cutView draws the layout of a slab.
type cutView struct {
	m     *maker
	lot   cut.WoodLot
	lay   saw.Layout
	sheet saw.Sheet
	offer model.SlabOffer
}

func (m *maker) cutView(l cut.WoodLot, lay saw.Layout) *cutView {
	k := slices.IndexFunc(l.Problem.Sheets, func(s saw.Sheet) bool { return s.ID == lay.Sheet })
	return &cutView{m, l, lay, l.Problem.Sheets[k], l.Offers[k]}
}

// edge gives an edge of the slab from left to right.
func (v *cutView) edge(side saw.Side) []geom.Vec {
	list, flat := v.sheet.Low, unit.Length(0)
	if side == saw.High {
		list, flat = v.sheet.High, v.sheet.Width
	}
	if len(list) == 0 {
		return []geom.Vec{geom.V(0, flat), geom.V(v.sheet.Length, flat)}
	}
	var out []geom.Vec
	for _, s := range list {
		out = append(out, geom.V(s.At, s.Y))
	}
	if out[0].X > 0 {
		out = slices.Insert(out, 0, geom.V(0, out[0].Y))
	}
	if last := out[len(out)-1]; last.X < v.sheet.Length {
		out = append(out, geom.V(v.sheet.Length, last.Y))
	}
	return out
}

// stretchOf gives the part of an edge between two places.
func stretchOf(edge []geom.Vec, x0, x1 unit.Length) []geom.Vec {
	out := []geom.Vec{geom.V(x0, edgeHeight(edge, x0))}
	for _, p := range edge {
		if p.X > x0 && p.X < x1 {
			out = append(out, p)
		}
	}
	return append(out, geom.V(x1, edgeHeight(edge, x1)))
}

func edgeHeight(edge []geom.Vec, x unit.Length) unit.Length {
	for i := 1; i < len(edge); i++ {
		if a, b := edge[i-1], edge[i]; x <= b.X {
			return a.Y + unit.Length(float64(b.Y-a.Y)*float64((x-a.X)/(b.X-a.X)))
		}
	}
	return edge[len(edge)-1].Y
}

func (v *cutView) picture() picture {
	p := picture{id: "slab", title: v.m.sayf("%s, as it lies on the saw", v.lay.Sheet), style: v.m.woodStyle(),
		view: view.View{Bounds: drawing.Rect{Max: geom.V(v.sheet.Length, v.sheet.Width)}}, extra: v.draw, after: v.signs}
	p.ask = v.sizes()
	return p
}

func loopOf(r saw.Rect) []geom.Vec {
	return []geom.Vec{geom.V(r.X, r.Y), geom.V(r.X+r.Length, r.Y), geom.V(r.X+r.Length, r.Y+r.Width), geom.V(r.X, r.Y+r.Width)}
}

// blankOf finds a blank of a lot; nil where the plan parted it.
func blankOf(l cut.WoodLot, id string) *cut.Blank {
	for i := range l.Blanks {
		if l.Blanks[i].ID == id {
			return &l.Blanks[i]
		}
	}
	return nil
}

// blankNames are what pieces are called.
func (m *maker) blankNames(l cut.WoodLot, ids []string) []string {
	var out []string
	for _, id := range ids {
		if b := blankOf(l, id); b != nil {
			id = m.blankName(*b)
		}
		out = append(out, id)
	}
	return out
}

// labels are what may be written into a part, the fullest first.
func (v *cutView) labels(q saw.Placed) [][]string {
	name, mark := q.Item, q.Item
	if b := blankOf(v.lot, q.Item); b != nil {
		name, mark = b.Mark+"  "+v.m.blankName(*b), b.Mark
	}
	size := v.m.length(q.Length) + " x " + v.m.length(q.Width)
	if b := blankOf(v.lot, q.Item); b != nil {
		size = v.m.blankSize(*b)
	}
	return [][]string{{name, size}, {name + "   " + size}, {name}, {mark}}
}

// blankSize is length x width as sawn, with both widths of what tapers, and with
// the narrowest and the widest of what has a natural edge.
func (m *maker) blankSize(b cut.Blank) string {
	t := m.length(b.Length) + " x " + m.length(b.Width)
	switch {
	case b.Tapers():
		t += " / " + m.length(b.EndWidth)
	case b.Edge != saw.NoSide:
		_, widest := b.Part.Slab.Blank()
		t = m.sayf("%s to %s", t, m.length(max(b.Width, b.Width+widest-b.Drawn[1])))
	}
	return t
}

// write puts the first of some texts that has room into a rectangle of the slab,
// as near to its middle as it can, lying or upright.
func (v *cutView) write(pl dim.Plate, t *taken, r saw.Rect, texts [][]string, h unit.Length) []drawing.Item {
	at := onPaper(pl, 1)
	room := drawing.Rect{Min: at(geom.V(r.X, r.Y)), Max: at(geom.V(r.X+r.Length, r.Y+r.Width))}.Grow(-0.6)
	for _, lines := range texts {
		for _, upright := range []bool{false, true} {
			var wide unit.Length
			for _, l := range lines {
				wide = max(wide, drawing.TextWidth(l, h))
			}
			tall := h + h*1.6*unit.Length(len(lines)-1)
			w, d := wide+1, tall+1
			if upright {
				w, d = d, w
			}
			box, ok := t.nearest(room, room.Centre(), w, d, 0.3, func(drawing.Rect) bool { return true })
			if !ok {
				continue
			}
			var out []drawing.Item
			for i, l := range lines {
				off := tall/2 - h/2 - h*1.6*unit.Length(i)
				x := drawing.Write(box.Centre().Add(geom.V(0, off)), l, h, drawing.Middle)
				if upright {
					x = drawing.Write(box.Centre().Sub(geom.V(off, 0)), l, h, drawing.Middle).Along(unit.Degree * 90)
				}
				out = append(out, x)
			}
			t.take(out...)
			return out
		}
	}
	return nil
}

// sizes are those of the slab as sold.
func (v *cutView) sizes() []dim.Request {
	low, high := v.edge(saw.Low), v.edge(saw.High)
	l := v.sheet.Length
	out := []dim.Request{
		dim.Linear{A: low[0], B: low[len(low)-1], Dir: dim.Horizontal, Side: dim.Below},
		dim.Linear{A: low[0], B: high[0], Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Linear{A: geom.V(l, low[len(low)-1].Y), B: geom.V(l, high[len(high)-1].Y), Dir: dim.Vertical, Side: dim.RightOf},
	}
	return out
}

// draw draws the true shape of the slab, its parts and the kerfs.
func (v *cutView) draw(pl dim.Plate) []drawing.Item {
	at := onPaper(pl, 1)
	var out []drawing.Item
	for _, q := range v.lay.Placed {
		out = append(out, v.part(q, at)...)
	}
	for _, k := range v.sheet.KeepOut {
		q := mapped(loopOf(k), at)
		out = append(out, drawing.Outline(q, v.m.lines.Outline()), drawing.Line(q[0], q[2], v.m.lines.Fine()), drawing.Line(q[1], q[3], v.m.lines.Fine()))
	}
	for i, c := range v.lay.Cuts {
		out = append(out, drawing.Group{ID: fmt.Sprintf("cut-%d", i+1), Title: v.m.sayf("cut %d", i+1), Items: []drawing.Item{drawing.Area{Loops: [][]geom.Vec{mapped(v.kerf(c), at)}, Ink: drawing.Red}}})
	}
	l := v.sheet.Length
	low, high := v.edge(saw.Low), v.edge(saw.High)
	for _, e := range []struct {
		line []geom.Vec
		side saw.Side
	}{{low, saw.Low}, {high, saw.High}} {
		pen := v.m.lines.Outline()
		if slices.Contains(v.sheet.Natural, e.side) {
			pen = v.m.lines.Wavy()
			pen.Width = v.m.lines.Wide
		}
		out = append(out, drawing.Polyline{Points: mapped(e.line, at), Pen: pen})
	}
	for _, x := range []unit.Length{0, l} {
		out = append(out, drawing.Line(at(geom.V(x, edgeHeight(low, x))), at(geom.V(x, edgeHeight(high, x))), v.m.lines.Outline()))
	}
	return out
}

// part draws a part as it is sawn and, inside, as it is finished.
func (v *cutView) part(q saw.Placed, at func(geom.Vec) geom.Vec) []drawing.Item {
	b := blankOf(v.lot, q.Item)
	r := loopOf(q.Rect)
	if b != nil && !q.Across {
		r = sawnLoop(q, b)
	}
	sawn := drawing.Outline(mapped(r, at), v.m.lines.Outline())
	if q.Edge != saw.NoSide {
		edge := stretchOf(v.edge(q.Edge), q.X, q.X+q.Length)
		straight := []geom.Vec{r[3], r[2]}
		if q.Edge == saw.High {
			straight = []geom.Vec{r[0], r[1]}
		}
		r = append(slices.Clone(straight), reversed(edge)...)
		ends := []geom.Vec{edge[0], straight[0], straight[1], edge[len(edge)-1]}
		sawn = drawing.Polyline{Points: mapped(ends, at), Pen: v.m.lines.Outline()}
	}
	out := []drawing.Item{drawing.Area{Loops: [][]geom.Vec{mapped(r, at)}, Ink: drawing.Pale}, sawn}
	if b == nil || b.Board != nil || q.Edge != saw.NoSide || q.Across {
		return out
	}
	region := b.Part.Slab.TopOutline()
	low, _ := region.Bounds()
	for _, loop := range region.Loops() {
		var pts []geom.Vec
		for _, p := range loop {
			pts = append(pts, at(onSheet(q, b.Lying(p.Sub(low)))))
		}
		out = append(out, drawing.Outline(pts, v.m.lines.Adjacent()))
	}
	return out
}

// sawnLoop is a blank as it lies on the sheet: of one that tapers the straight
// side is the low one, unless it is turned.
func sawnLoop(q saw.Placed, b *cut.Blank) []geom.Vec {
	loop := []geom.Vec{{}, geom.V(q.Length, 0), geom.V(q.Length, b.EndWidth), geom.V(0, b.Width)}
	if !b.Tapers() {
		return loopOf(q.Rect)
	}
	for i, p := range loop {
		loop[i] = onSheet(q, p)
	}
	return loop
}

// onSheet gives a point of a blank where the blank lies on the sheet.
func onSheet(q saw.Placed, p geom.Vec) geom.Vec {
	if q.Turned {
		p = geom.V(q.Length-p.X, q.Width-p.Y)
	}
	return geom.V(q.X, q.Y).Add(p)
}

// kerf is the strip that a cut turns to dust, within the wood.
func (v *cutView) kerf(c saw.Cut) []geom.Vec {
	k := v.lot.Problem.Kerf
	if !c.Above {
		k = -k
	}
	p := c.Piece
	if c.Rip {
		return []geom.Vec{geom.V(p.X, c.At), geom.V(p.X+p.Length, c.EndAt), geom.V(p.X+p.Length, c.EndAt+k), geom.V(p.X, c.At+k)}
	}
	low, high := max(p.Y, edgeHeight(v.edge(saw.Low), c.At)), min(p.Y+p.Width, edgeHeight(v.edge(saw.High), c.At))
	return []geom.Vec{geom.V(c.At, low), geom.V(c.At, high), geom.V(c.At+k, high), geom.V(c.At+k, low)}
}

// signs puts the number of each cut beside its kerf, and the grain.
func (v *cutView) signs(pl dim.Plate, t *taken) []drawing.Item {
	t.boxes = slices.DeleteFunc(t.boxes, func(b drawing.Rect) bool { return min(b.Width(), b.Height()) > 7 }) // parts, no texts
	var out []drawing.Item
	for _, q := range v.lay.Placed {
		out = append(out, v.write(pl, t, q.Rect, v.labels(q), v.m.woodStyle().Height)...)
	}
	for i, c := range v.lay.Cuts {
		ring := v.number(pl, t, i, c)
		t.take(ring...)
		out = append(out, drawing.Group{ID: fmt.Sprintf("number-%d", i+1), Title: v.m.sayf("number of cut %d", i+1), Items: ring})
	}
	for _, o := range v.lay.Offcuts {
		size := v.m.length(o.Length) + " x " + v.m.length(o.Width)
		out = append(out, v.write(pl, t, o, [][]string{{v.m.say("left over"), size}, {v.m.say("left over") + "  " + size}, {size}}, drawing.Small)...)
	}
	return append(out, v.grain(pl, t)...)
}

// alongCut are the places along a cut that are tried for its number, nearer the
// middle first; the ends come last.
var alongCut = []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92, 0, 1}

// number is the ringed number of a cut, as near to its kerf as there is room; far
// from it a line leads from beyond an end of the cut.
func (v *cutView) number(pl dim.Plate, t *taken, i int, c saw.Cut) []drawing.Item {
	at := onPaper(pl, 1)
	k := v.kerf(c)
	a, b := at(k[0].Add(k[3]).Mul(0.5)), at(k[1].Add(k[2]).Mul(0.5))
	number := drawing.Write(a, fmt.Sprint(i+1), drawing.Small, drawing.Middle).Strong()
	size := max(number.Width(), number.Height) + 2.6
	ringed := func(r drawing.Rect) []drawing.Item {
		number.At = r.Centre()
		return []drawing.Item{drawing.Circle{Centre: r.Centre(), Radius: size / 2, Pen: v.m.lines.Fine()}, number}
	}
	anywhere := func(drawing.Rect) bool { return true }
	for _, f := range alongCut {
		near := a.Add(b.Sub(a).Mul(f))
		room := drawing.Rect{Min: near.Sub(geom.V(size, size)), Max: near.Add(geom.V(size, size))}
		if r, ok := t.nearest(room, near, size, size, 0.4, anywhere); ok {
			return ringed(r)
		}
	}
	for _, end := range []geom.Vec{a, b} {
		room := drawing.Rect{Min: end.Sub(geom.V(60, 60)), Max: end.Add(geom.V(60, 60))}
		if r, ok := t.nearest(room, end, size, size, 0.4, anywhere); ok {
			to := end.Sub(r.Centre())
			return append(ringed(r), drawing.Line(r.Centre().Add(to.Unit().Mul(float64(size/2))), end, v.m.lines.Fine()))
		}
	}
	return nil
}

// grain is the arrow along the fibre, in the slab where there is room, else below.
func (v *cutView) grain(pl dim.Plate, t *taken) []drawing.Item {
	long := max(26, drawing.TextWidth(v.m.say("grain"), drawing.Small)+1)
	below := drawing.Rect{Min: pl.Body.Min.Sub(geom.V(0, 60)), Max: pl.Body.Max.Add(geom.V(0, 40))}
	r, ok := t.spot(below, pl.Body.Centre(), long, 5.5, 1.5, func(drawing.Rect) bool { return true })
	if !ok {
		return nil
	}
	return (&workpiece{maker: v.m}).grainArrow(r)
}

// cutTable lists the cuts in saw order.
func (m *maker) cutTable(l cut.WoodLot, lay saw.Layout) table {
	t := table{heads: m.heads("cut", "what lies on the saw", "kind", "set", "from", "comes off finished"), right: []bool{true, false, false, true, false, false}}
	for i, c := range lay.Cuts {
		set, from := m.length(c.Setting), m.sideWord(c.From)
		switch {
		case c.Slanted():
			set, from = m.length(c.At-c.Piece.Y)+" / "+m.length(c.EndAt-c.Piece.Y), m.say("low edge, marks left / right, track")
		case c.Track:
			set, from = m.length(c.At), m.say("base line, marks, track")
		}
		kind := m.say("cross cut")
		if c.Rip {
			kind = m.say("rip")
		}
		t.rows = append(t.rows, []string{fmt.Sprint(i + 1), m.length(c.Piece.Length) + " x " + m.length(c.Piece.Width), kind, set, from, strings.Join(m.blankNames(l, c.Frees), ", ")})
	}
	return t
}

func (m *maker) sideWord(e saw.End) string {
	switch e {
	case saw.LeftEnd:
		return m.say("left end")
	case saw.RightEnd:
		return m.say("right end")
	case saw.LowEdge:
		return m.say("low edge")
	}
	return m.say("high edge")
}

// notes say how to read the layout and what it rests on.
func (v *cutView) notes() []string {
	m := v.m
	out := []string{
		m.sayf("Dark strips between the lines are saw kerfs of %s, true to scale. Saw in the order of the numbers: every cut runs right across what lies on the saw.", m.length(v.lot.Problem.Kerf)),
		m.say("Sizes are those of the blanks, with what the sheet Order sizes adds. Dash-dot lines show the finished part; its own sheet has the sizes."),
		m.say("The base line is a straight chalk line along the low edge; the ends as sold are taken to be square and free of checks: look, and mark the layout on the slab before the first cut."),
	}
	if len(v.sheet.Natural) > 0 && len(v.offer.Widths) > 0 {
		var w []string
		for _, x := range v.offer.Widths {
			w = append(w, m.length(x))
		}
		out = append(out, m.sayf("Usable widths every %s from the left end: %s.", m.length(v.offer.Every), strings.Join(w, ", ")))
	}
	if len(v.sheet.KeepOut) > 0 {
		out = append(out, m.say("Crossed boxes are flaws that no part and no cut meets."))
	}
	if v.offer.Natural == 2 {
		out = append(out, m.say("Both natural edges are taken to lie evenly about a straight middle line; lay the outline on the slab and see."))
	}
	if v.offer.Thickness > v.lot.Thickness {
		out = append(out, m.sayf("The slab is %s thick and is planed to %s.", m.length(v.offer.Thickness), m.length(v.lot.Thickness)))
	}
	return append(out, m.sayf("Price of the slab: %s.", m.money(v.offer.Price)))
}
