package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// seating is where a section meets the bracket that carries a slab at the wall.
type seating struct {
	cutting
	part   *model.Part
	heel   unit.Length // along the line of the section
	x      unit.Length // along the bracket
	anchor *model.BracketHole
	screw  *model.BracketHole
}

// seating finds the bracket at the wall behind, with its holes nearest to the
// section.
func (m *maker) seating(c cutting) (seating, bool) {
	best, found := seating{}, false
	for _, p := range m.parts(func(p *model.Part) bool { return p.Bracket() != nil && p.Bracket().On().Under == c.slab.ID }) {
		a := p.Bracket()
		if _, _, ok := c.along(p.Footprint()); !ok {
			continue
		}
		pose := a.Pose()
		meet, ok := geom.Line{P: pose.At.Flat(), D: geom.V(1, 0).Turn(pose.Turn)}.Meet(c.line)
		if !ok {
			continue
		}
		s := seating{cutting: c, part: p, heel: c.line.Along(meet), x: pose.Unplan(meet).X}
		if found && s.heel < best.heel {
			continue
		}
		s.anchor, s.screw = nearest(a.On(), model.WallLeg, s.x), nearest(a.On(), model.SeatLeg, s.x)
		best, found = s, true
	}
	return best, found
}

func nearest(a *model.Mounted, leg model.Leg, x unit.Length) *model.BracketHole {
	var best *model.BracketHole
	for i := range a.Holes {
		if h := &a.Holes[i]; h.Leg == leg && (best == nil || abs(h.X-x) < abs(best.X-x)) {
			best = h
		}
	}
	return best
}

// detailShot shows how the slab sits on the wall: edge, joint, bracket, anchor
// and screw. The holes are those nearest to the section, drawn into its plane.
func (m *maker) detailShot(c cutting) (shot, bool) {
	s, ok := m.seating(c)
	if !ok {
		return shot{}, false
	}
	a := s.on()
	st := &stage{elevation: true}
	st.addParts(m.parts(func(p *model.Part) bool { return p == s.part || p == c.slab })...)
	w := s.window(m)
	v := window(view.Of(st.scene, view.Section(c.line)), w, func(x view.Stroke) bool { return x.Kind == view.Cut })
	s.drill(st, &v)
	face := m.faceBehind(c, s.heel)
	p := shot{picture: picture{id: "detail", title: m.sayf("How %s sits on the wall %s", m.pass(c.slab.ID), m.pass(a.Wall.Name)), view: v, paint: m.cutPaint(st, c.line), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item { return s.fixings(m, pl, w, face) }
	p.ask = s.dims(m, w, face)
	p.rings = m.cutRings(st, v, w)
	for i := range p.rings {
		p.rings[i].id = "detail-" + p.rings[i].id
	}
	return p, true
}

func (s seating) on() *model.Mounted { return s.part.Bracket().On() }

// legs are the lower and the upper end of the wall leg.
func (s seating) legs() (low, high unit.Length) { return s.part.Bracket().Levels() }

// up tells whether the wall leg of an angle stands up.
func (s seating) up() bool { return s.part.Angle != nil && s.part.Angle.LegUp }

// solid is how thick the bracket is: along an anchor, and along a screw.
func (s seating) solid() (anchor, screw unit.Length) {
	if c := s.part.Cleat; c != nil {
		return c.Wide, c.High
	}
	t := s.part.Angle.Section.Thickness
	return t, t
}

func (s seating) window(m *maker) drawing.Rect {
	low, high := s.legs()
	return drawing.Rect{Min: geom.V(s.heel-s.part.Bracket().Deep()-30, low-4), Max: geom.V(s.heel+46, max(high, s.slab.Slab.Top)+4)}
}

// faceBehind is where the section meets the wall's face at a height of the slab.
func (m *maker) faceBehind(c cutting, heel unit.Length) unit.Length {
	z := c.slab.Slab.Top - c.slab.Slab.Thickness/2
	best := heel
	for _, s := range m.b.Room.Plan(z).Inside(c.at(heel-300), c.at(heel+300)) {
		if to := heel - 300 + 600*unit.Length(s[1]); abs(to-heel) < 60 {
			best = to
		}
	}
	return best
}

// anchorHeight is the height of the anchor's axis.
func (s seating) anchorHeight() unit.Length { return s.part.Bracket().HeightOf(*s.anchor) }

// fixings draws the wall, and the axes of anchor and screw with their holes.
func (s seating) fixings(m *maker, pl dim.Plate, w drawing.Rect, face unit.Length) []drawing.Item {
	a := s.on()
	wall := drawing.Rect{Min: geom.V(face, w.Min.Y), Max: w.Max}
	out := []drawing.Item{
		drawing.Group{ID: "detail-wall", Title: m.sayf("wall %s", m.pass(a.Wall.Name)), Items: []drawing.Item{
			drawing.Hatch{Loops: [][]geom.Vec{paperChain(pl, wall.Corners())}, Pattern: drawing.Pattern{Material: wallHatch(a.Wall.Make), Width: m.lines.Narrow}},
			drawing.Line(paperAt(pl, wall.Min), paperAt(pl, geom.V(face, w.Max.Y)), m.wallPen()),
		}},
	}
	g := drawing.Group{ID: "detail-fixings", Title: m.say("anchor and screw")}
	for _, h := range s.holes() {
		a, b := geom.V(h.box.Min.X, h.box.Max.Y), geom.V(h.box.Max.X, h.box.Min.Y) // along the axis, both sides
		if h.upright {
			a, b = b, a
		}
		g.Items = append(g.Items, drawing.Line(paperAt(pl, h.box.Min), paperAt(pl, b), h.pen(m)), drawing.Line(paperAt(pl, a), paperAt(pl, h.box.Max), h.pen(m)))
		if h.blind {
			g.Items = append(g.Items, drawing.Line(paperAt(pl, geom.V(h.box.Min.X, h.box.Max.Y)), paperAt(pl, h.box.Max), h.pen(m)))
		}
	}
	for _, axis := range s.axes() {
		g.Items = append(g.Items, drawing.Line(paperAt(pl, axis[0]), paperAt(pl, axis[1]), m.lines.Centre()))
	}
	g.Items = append(g.Items, drawing.Line(paperAt(pl, geom.V(w.Min.X, a.Seat-4)), paperAt(pl, geom.V(w.Min.X, s.slab.Slab.Top+4)), m.lines.Break()))
	return append(out, g)
}

// bored is a hole as the section shows it.
type bored struct {
	box     drawing.Rect
	in      *model.Part
	upright bool // its axis
	blind   bool
}

func (h bored) pen(m *maker) drawing.Pen {
	if h.blind {
		return m.lines.Fine()
	}
	return m.lines.Outline()
}

// holes are the holes for anchor and screw, and the pilot hole in the wood.
func (s seating) holes() []bored {
	a := s.on()
	stand, under := s.solid()
	var out []bored
	if s.anchor != nil {
		z, r := s.anchorHeight(), s.anchor.Dia/2
		out = append(out, bored{drawing.Rect{Min: geom.V(s.heel-stand, z-r), Max: geom.V(s.heel, z+r)}, s.part, false, false})
	}
	if s.screw != nil {
		x, r := s.heel-s.screw.FromHeel, s.screw.Dia/2
		if !s.screw.Along {
			r += s.screw.Slot / 2
		}
		out = append(out, bored{drawing.Rect{Min: geom.V(x-r, a.Seat-under), Max: geom.V(x+r, a.Seat)}, s.part, true, false})
		if p, ok := s.pilot(); ok {
			out = append(out, bored{drawing.Rect{Min: geom.V(x-p.Dia/2, a.Seat), Max: geom.V(x+p.Dia/2, a.Seat+p.Depth)}, s.slab, true, true})
		}
	}
	return out
}

// axes are the axes of anchor and screw.
func (s seating) axes() [][2]geom.Vec {
	var out [][2]geom.Vec
	stand, under := s.solid()
	if s.anchor != nil {
		z := s.anchorHeight()
		out = append(out, [2]geom.Vec{geom.V(s.heel-stand-24, z), geom.V(s.heel+40, z)})
	}
	if s.screw != nil {
		x, seat := s.heel-s.screw.FromHeel, s.on().Seat
		top := seat + 20
		if p, ok := s.pilot(); ok {
			top = seat + p.Depth + 4
		}
		out = append(out, [2]geom.Vec{geom.V(x, seat-under-16), geom.V(x, top)})
	}
	return out
}

// drill takes the holes out of the cut faces, so that no hatch runs through them.
func (s seating) drill(st *stage, v *view.View) {
	for i, c := range v.Cuts {
		for _, h := range s.holes() {
			if st.parts[c.Item] == h.in {
				v.Cuts[i].Loops = loopsRegion(v.Cuts[i].Loops).Minus(geom.Rect(h.box.Min, h.box.Max)).Loops()
			}
		}
	}
}

// pilot is the hole in the slab for the screw.
func (s seating) pilot() (model.Feature, bool) {
	for _, f := range s.slab.Slab.Features {
		if f.Kind == model.Pilot && f.For == s.part.ID {
			return f, true
		}
	}
	return model.Feature{}, false
}

// section names what carries: an angle as it is sold, a cleat in the unit of the job.
func (s seating) section(m *maker) string {
	if c := s.part.Cleat; c != nil {
		return m.profile(c)
	}
	return s.part.Bracket().Profile()
}

// body is a place in the bracket that is free of holes.
func (s seating) body() geom.Vec {
	seat := s.on().Seat
	if c := s.part.Cleat; c != nil {
		return geom.V(s.heel-c.Wide*0.2, seat-c.High*0.85)
	}
	return geom.V(s.heel-s.part.Angle.Section.Leg*0.35, seat-s.part.Angle.Section.Thickness/2)
}

// dims gives the joint, the leg, the places of the holes and what goes in.
func (s seating) dims(m *maker, w drawing.Rect, face unit.Length) []dim.Request {
	a, deep := s.on(), s.part.Bracket().Deep()
	stand, under := s.solid()
	t := s.slab.Slab
	low, high := s.legs()
	edge := s.heel
	if _, to, ok := s.along(s.slab.Outline()); ok {
		edge = to
	}
	ask := []dim.Request{
		dim.Linear{A: geom.V(edge, t.Top), B: geom.V(face, t.Top), Dir: dim.Horizontal, Side: dim.Above, Label: dim.Label{Suffix: " " + m.say("gap")}},
		dim.Linear{A: geom.V(w.Min.X, a.Seat), B: geom.V(w.Min.X, t.Top), Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Linear{A: geom.V(s.heel-stand, low), B: geom.V(s.heel-stand, high), Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Note{At: s.body(), Lines: []string{s.section(m)}, OnEdge: false},
	}
	below := func(x unit.Length, what string) dim.Request {
		return dim.Linear{A: geom.V(s.heel, low), B: geom.V(x, a.Seat-under), Dir: dim.Horizontal, Side: dim.Below, Label: dim.Label{Suffix: what}}
	}
	ask = append(ask, below(s.heel-deep, ""))
	if s.screw != nil {
		x := s.heel - s.screw.FromHeel
		ask = append(ask, below(x, " "+m.say("screw")))
		lines := []string{m.sayf("screw, hole Ø%s", m.length(s.screw.Dia))}
		if s.screw.Slot > 0 {
			lines[0] = m.sayf("screw, slot %s x %s", m.length(s.screw.Dia), m.length(s.screw.Dia+s.screw.Slot))
		}
		if p, ok := s.pilot(); ok {
			lines = append(lines, m.sayf("pilot Ø%s, %s deep", m.length(p.Dia), m.length(p.Depth)))
		}
		ask = append(ask, dim.Note{At: geom.V(x, a.Seat-under-12), Lines: lines, OnEdge: true})
	}
	if s.anchor != nil {
		z := s.anchorHeight()
		from := high
		if s.up() {
			from = low
		}
		ask = append(ask,
			dim.Linear{A: geom.V(s.heel+36, from), B: geom.V(s.heel+36, z), Dir: dim.Vertical, Side: dim.RightOf},
			dim.Note{At: geom.V(s.heel-stand-20, z), Lines: []string{m.sayf("anchor, hole Ø%s", m.length(s.anchor.Dia)), m.sayf("in %s", m.pass(string(a.Wall.Make)))}, OnEdge: true})
	}
	return ask
}
