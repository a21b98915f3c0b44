package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/calc/body"
	"slabwright/model/geom"
	"slabwright/model/sit"
	"slabwright/model/unit"
)

// kneeSheets show for everybody at a seat what the legs take under the
// worktop: section and plan with the boxes of thighs, knees, shins and feet,
// what they sweep on a turning chair, everything near them marked by a letter,
// and the measures that this rests on.
func kneeSheets(m *maker) []page {
	var out []page
	sitters := sit.Of(m.b.Design, m.b.Job.Wiring)
	for _, c := range m.cuttings() {
		for _, s := range sitters {
			if c.seat != nil && s.Seat.Name == c.seat.Name {
				out = append(out, m.kneePages(kneeSpace{m: m, c: c, s: s})...)
			}
		}
	}
	return out
}

// kneeSpace is what the sheet of one sitter shows.
type kneeSpace struct {
	m *maker
	c cutting
	s *sit.Sitter
}

func (m *maker) kneePages(k kneeSpace) []page {
	title := m.sayf("Knee space of %s at %s", k.s.Person.Name, k.s.Seat.Name)
	fresh := func() page {
		pg := m.new("knee-space-"+stem(k.s.Seat.Name)+"-"+stem(k.s.Person.Name), title)
		pg.block.DocumentType = m.say("arrangement")
		return pg
	}
	free := drawing.Free(m.size)
	if len(free) == 1 || free[1].Width() < leastColumn { // small or upright paper: each picture on a page of its own
		a, _ := m.pictures(fresh(), k.section())
		b, _ := m.pictures(fresh(), k.plan())
		return append([]page{a, b}, k.tables(fresh, free[0], drawing.Rect{})...)
	}
	left := drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X, free[0].Max.Y)}
	right := free[0]
	right.Min.X = left.Max.X + 4
	pg := fresh()
	h := m.hang([]drawing.Rect{left}, k.section())
	plan := m.hangAt([]drawing.Scale{h.scale}, []drawing.Rect{right}, []shot{k.plan()})
	if !plan.fits {
		plan = m.hang([]drawing.Rect{right}, k.plan())
	}
	pg.sheet.Add(append(h.items, plan.items...)...)
	pg.sheet.Scale = h.scale.String()
	middle := free[0].Centre().X
	first, second := free[0], free[0]
	first.Max.X, second.Min.X = middle-4, middle+4
	return append([]page{pg}, k.tables(fresh, first, second)...)
}

// tables sets the tables of the sheet in one column a page, or in two.
func (k kneeSpace) tables(fresh func() page, first, second drawing.Rect) []page {
	next := second
	if second.Empty() {
		next = first
	}
	f := k.m.down(first).onto(next)
	k.nearTable(f)
	k.roomTable(f)
	if !second.Empty() {
		f.turn()
	}
	k.bodyTable(f)
	k.notes(f)
	var pages []page
	for i, items := range f.pages() {
		if i != 1 || second.Empty() {
			pg := fresh()
			pg.block.DocumentType = k.m.say("table")
			pg.sheet.Title = k.m.sayf("%s: measures", pg.sheet.Title)
			pages = append(pages, pg)
		}
		pages[len(pages)-1].sheet.Add(items...)
	}
	return pages
}

// overHead is what a section on small paper shows above a head.
const overHead unit.Length = 100

// section is the cut through the seat with the boxes of the legs.
func (k kneeSpace) section() shot {
	m, c := k.m, k.c
	s := m.sectioned(c)
	p := s.shot
	if len(drawing.Free(m.size)) == 1 { // small paper: no higher than a head that rises
		s.window.Max.Y = min(s.window.Max.Y, k.s.Floor+k.s.Of(body.Head).Ample()+k.s.Shoe+overHead)
		p.view = window(p.view, s.window, func(view.Stroke) bool { return true })
	}
	p.id, p.title = "knee-section", m.sayf("Section through %s", k.s.Seat.Name)
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := append(s.walls.draw(m, pl, s.window, s.floor), m.floor(pl, s.window, s.floor))
		return append(out, k.sideBoxes(pl, s.window)...)
	}
	p.under = func(pl dim.Plate) []drawing.Item {
		one := c
		seat := *c.seat
		seat.People = []model.Person{k.s.Person}
		one.seat = &seat
		return append(k.sideFill(pl, s.window), m.figures(pl, one)...)
	}
	p.ask = k.sideDims(s)
	p.rings = k.letters(p.id, func(t sit.Thing) (geom.Vec, bool) {
		at := geom.V(k.x(t.At.Flat()), t.At.Z)
		right, _ := k.s.From(t.At.Flat())
		return at, s.window.Grow(-2).Holds(drawing.Rect{Min: at, Max: at}) && abs(right) < 2*k.s.Boxes[0].Half
	})
	return p
}

// x is where a place in the room lies along the section.
func (k kneeSpace) x(v geom.Vec) unit.Length {
	return unit.Length(v.Sub(k.c.line.P).Dot(k.c.line.D.Unit()))
}

// side is what the section shows of a box.
func (k kneeSpace) side(b sit.Box, w drawing.Rect) geom.Region {
	lo, hi := k.x(k.s.At(0, b.Near)), min(k.x(k.s.At(0, b.Far)), w.Max.X)
	return geom.Rect(geom.V(lo, k.s.Floor+b.Low), geom.V(hi, k.s.Floor+b.High))
}

func (k kneeSpace) sideBoxes(pl dim.Plate, w drawing.Rect) []drawing.Item {
	g := drawing.Group{ID: "knee-boxes", Title: k.m.say("room of the legs")}
	for _, b := range k.s.Boxes {
		for _, l := range k.side(b, w).Loops() {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), k.m.lines.Adjacent()))
		}
	}
	return []drawing.Item{g}
}

func (k kneeSpace) sideFill(pl dim.Plate, w drawing.Rect) []drawing.Item {
	var all []geom.Region
	for _, b := range k.s.Boxes {
		all = append(all, k.side(b, w))
	}
	return []drawing.Item{drawing.Group{ID: "knee-fill", Title: k.m.say("room of the legs"), Items: []drawing.Item{shaded(pl, geom.UnionAll(all...))}}}
}

// shaded fills a region of a view.
func shaded(pl dim.Plate, r geom.Region) drawing.Area {
	var loops [][]geom.Vec
	for _, l := range r.Loops() {
		loops = append(loops, paperChain(pl, l))
	}
	return drawing.Area{Loops: loops, Ink: drawing.Pale}
}

// sideDims gives the heights from the floor under the seat on the left, what is
// looked at and bumped into on the right, and the depths from the belly below.
func (k kneeSpace) sideDims(c sectioned) []dim.Request {
	m, s := k.m, k.s
	front := k.x(s.At(0, 0))
	up := func(h unit.Length) geom.Vec { return geom.V(front, s.Floor+h) }
	tall := func(d body.Dimension) unit.Length { return s.Of(d).Ample() + s.Shoe }
	thigh, knee, foot := s.Boxes[0], s.Boxes[1], s.Boxes[3]
	ask := m.heights(geom.V(front, s.Floor), m.say("floor here"), []stop{
		{at: up(foot.High), name: m.say("feet"), about: true},
		{at: up(s.SeatHeight()), name: m.say("seat // of a person"), about: true},
		{at: up(knee.High), name: m.say("knees, room"), about: true},
		{at: up(thigh.High), name: m.say("thighs, room"), about: true},
		{at: up(s.Underside()), name: m.say("underside")},
		{at: up(s.Surface()), name: m.say("surface")},
		{at: up(tall(body.Elbow)), name: m.say("elbow"), about: true},
		{at: up(tall(body.Eye)), name: m.say("eye"), about: true},
	})
	belly := geom.V(k.x(s.At(0, thigh.Near)), s.Floor)
	along := func(in unit.Length) geom.Vec { return geom.V(k.x(s.At(0, in)), s.Floor) }
	depth := func(in unit.Length, what string) {
		if to := along(in); to.X < c.window.Max.X {
			ask = append(ask, dim.Linear{A: belly, B: to, Dir: dim.Horizontal, Side: dim.Below, Label: dim.Label{Text: m.about(to.X-belly.X) + " " + what}})
		}
	}
	depth(knee.Far, m.say("knees"))
	depth(foot.Far-body.LegStretch.Value, m.say("toes"))
	depth(foot.Far, m.say("legs stretched"))
	return ask
}

// plan is the seat from above with all that the chair lets the legs sweep.
func (k kneeSpace) plan() shot {
	m := k.m
	level := k.s.Slab.Slab.Top
	st := &stage{}
	st.addParts(k.s.Slab)
	w := k.planWindow()
	v := window(view.Of(st.scene, view.PlanAt(level+1)), w, func(s view.Stroke) bool { return s.Kind != view.Hidden })
	p := shot{picture: picture{id: "knee-plan", title: m.say("From above: straight ahead, and what the turning chair sweeps"), view: v, paint: m.usual(st), style: m.joinery()}}
	p.under = func(pl dim.Plate) []drawing.Item {
		var all []geom.Region
		for _, b := range k.s.Boxes {
			all = append(all, b.Sweep)
		}
		area := shaded(pl, geom.UnionAll(all...).Intersect(geom.Rect(w.Min, w.Max)))
		return []drawing.Item{drawing.Group{ID: "knee-sweep-fill", Title: m.say("swept by the legs"), Items: []drawing.Item{area}}}
	}
	p.extra = func(pl dim.Plate) []drawing.Item {
		return append(m.planWalls(pl, level, w), k.below(pl, w), k.sweeps(pl, w))
	}
	p.ask = k.planDims(w)
	p.rings = k.letters(p.id, func(t sit.Thing) (geom.Vec, bool) {
		at := t.At.Flat()
		return at, w.Grow(-2).Holds(drawing.Rect{Min: at, Max: at})
	})
	return p
}

// planWindow is what the legs sweep, with a little around it.
func (k kneeSpace) planWindow() drawing.Rect {
	at := k.s.At(0, k.s.Pivot()-60)
	w := drawing.Rect{Min: at, Max: at}
	for _, b := range k.s.Boxes {
		lo, hi := b.Sweep.Bounds()
		w = w.Union(drawing.Rect{Min: lo, Max: hi})
	}
	for _, t := range k.s.Things {
		w = w.Union(drawing.Rect{Min: t.At.Flat(), Max: t.At.Flat()})
	}
	return w.Grow(k.m.strip())
}

// below draws angles, legs and tables under the worktop, dashed.
func (k kneeSpace) below(pl dim.Plate, w drawing.Rect) drawing.Item {
	m := k.m
	frame := geom.Rect(w.Min, w.Max)
	g := drawing.Group{ID: "knee-below", Title: m.say("carriers below")}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab == nil && p.Rod == nil && p.Bounds().Min.Z < k.s.Slab.Slab.Top }) {
		for _, l := range outlines(p.Footprint().Intersect(frame)) {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Hidden()))
		}
	}
	return g
}

// sweeps draws every box straight ahead and what it sweeps, and the post of the
// chair.
func (k kneeSpace) sweeps(pl dim.Plate, w drawing.Rect) drawing.Item {
	m, s := k.m, k.s
	frame := geom.Rect(w.Min, w.Max)
	g := drawing.Group{ID: "knee-sweeps", Title: m.say("swept by the legs")}
	for _, b := range s.Boxes {
		if b.Kind == sit.Shin { // under the knees
			continue
		}
		for _, l := range b.Sweep.Intersect(frame).Loops() {
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, l), m.lines.Fine()))
		}
		straight := []geom.Vec{s.At(-b.Half, b.Near), s.At(b.Half, b.Near), s.At(b.Half, b.Far), s.At(-b.Half, b.Far)}
		g.Items = append(g.Items, drawing.Outline(paperChain(pl, straight), m.lines.Adjacent()))
	}
	post := paperAt(pl, s.At(0, s.Pivot()))
	arm := geom.V(3, 0)
	g.Items = append(g.Items, drawing.Line(post.Sub(arm), post.Add(arm), m.lines.Centre()), drawing.Line(post.Sub(arm.Left()), post.Add(arm.Left()), m.lines.Centre()))
	return g
}

// planDims are the widths: of the hips, and from the middle of the seat to what
// is beside it.
func (k kneeSpace) planDims(w drawing.Rect) []dim.Request {
	s, thigh := k.s, k.s.Boxes[0]
	deep := thigh.Near + (thigh.Far-thigh.Near)*0.25
	ask := []dim.Request{dim.Across{A: s.At(-thigh.Half, deep), B: s.At(thigh.Half, deep), Label: dim.Label{Text: k.m.about(2 * thigh.Half)}}}
	deep = thigh.Near + (thigh.Far-thigh.Near)*0.6
	for i, side := range []sit.Side{s.Left, s.Right} {
		to := s.At(side.Free, deep)
		if i == 0 {
			to = s.At(-side.Free, deep)
		}
		if w.Holds(drawing.Rect{Min: to, Max: to}) && side.Free > 0 {
			ask = append(ask, dim.Across{A: s.At(0, deep), B: to, Label: dim.Label{Text: k.m.about(side.Free)}})
		}
	}
	return ask
}

// letter marks a thing near the legs.
func letter(i int) string {
	const usable = "ABCDEFGHJKLMNPRSTUVWXYZ"
	if i < len(usable) {
		return usable[i : i+1]
	}
	return usable[i%len(usable):i%len(usable)+1] + usable[i/len(usable)-1:i/len(usable)]
}

// letters ring everything near the legs that a view shows.
func (k kneeSpace) letters(view string, place func(sit.Thing) (geom.Vec, bool)) []ring {
	var out []ring
	for i, t := range k.s.Things {
		if at, ok := place(t); ok {
			out = append(out, ring{id: view + "-near-" + stem(letter(i)), number: letter(i), places: []geom.Vec{at}})
		}
	}
	return out
}
