package sheet

import (
	"math"

	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// origin is the corner of the room that figures along the back wall and away
// from it count from, on the plan as on elevations: the left end of the
// leftmost wall that faces the viewer and carries something. A corner that no
// tape can be hooked on, at the end of what was measured, serves where there is
// no other.
func (m *maker) origin() model.Corner {
	lo, hi := m.stretch()
	price := func(c model.Corner, carries bool) float64 {
		p := float64(max(lo-beyond-c.At.X, c.At.X-hi-beyond, 0)) + 1e-6*float64(c.At.X)
		if !carries {
			p += 1e6
		}
		if c.Angle == 0 {
			p += 1e9
		}
		return p
	}
	best, low := m.b.Room.Corners[0], math.Inf(1)
	for _, w := range m.b.Room.Walls {
		if !facesViewer(w) {
			continue
		}
		for _, c := range []model.Corner{w.From, w.To} {
			if p := price(c, len(m.on(w)) > 0); p < low {
				best, low = c, p
			}
		}
	}
	return best
}

// facesViewer tells whether the front elevation shows a wall squarely.
func facesViewer(w *model.Wall) bool { return w.Chord().D.Unit().X > math.Sqrt2/2 }

// stretch is from where to where parts stand along the back wall.
func (m *maker) stretch() (lo, hi unit.Length) {
	for i, p := range m.parts(func(p *model.Part) bool { return p.Rod == nil }) {
		b := p.Bounds()
		if i == 0 {
			lo, hi = b.Min.X, b.Max.X
		}
		lo, hi = min(lo, b.Min.X), max(hi, b.Max.X)
	}
	return lo, hi
}

// countsFrom is the corner that figures along a wall count from, on its
// elevation as on its drilling plan, and whether that is its right end: the
// origin where the wall has it, otherwise the left end, unless that is open or
// all holes are much nearer to the right one.
func (m *maker) countsFrom(w *model.Wall) (c model.Corner, right bool) {
	if m.countsFromRight(w) {
		return w.To, true
	}
	return w.From, false
}

func (m *maker) countsFromRight(w *model.Wall) bool {
	switch o := m.origin().Name; {
	case w.Next() == nil:
		return false
	case w.Previous() == nil:
		return true
	case o == w.From.Name || o == w.To.Name:
		return o == w.To.Name
	}
	lo := w.Length()
	for _, h := range m.wallHoles(w) {
		lo = min(lo, h.s)
	}
	return lo > w.Length()/2
}

// cornerName is what stands at the 0 of figures that count from a corner.
func (m *maker) cornerName(c model.Corner) string { return m.sayf("corner %s", c.Name) }

// alongBack gives places along the back wall from the origin; the figures hang
// from a height or a depth of the view.
func (m *maker) alongBack(at unit.Length, stops []stop) []dim.Request {
	o := m.origin()
	return m.ladder(geom.V(o.At.X, at), m.cornerName(o), dim.Horizontal, dim.Below, stops)
}

// station is where something stands that plan and front elevation both show.
type station struct {
	at    geom.Vec // on the plan
	under unit.Length
	name  string
}

// stationsAlongBack are the ends of roll-out tables, shelves, angles and cleats along the
// back wall, table legs and seats. What runs up to a wall has no end there.
func (m *maker) stationsAlongBack() []station {
	var out []station
	ends := func(p *model.Part, z unit.Length) {
		b := p.Bounds()
		y := (b.Min.Y + b.Max.Y) / 2
		free := m.b.Room.Plan(z)
		for _, end := range []struct{ x, way unit.Length }{{b.Min.X, -1}, {b.Max.X, 1}} {
			if free.Contains(geom.V(end.x+40*end.way, y)) {
				out = append(out, station{at: geom.V(end.x, y), under: b.Min.Z})
			}
		}
	}
	for _, p := range m.parts(func(p *model.Part) bool { return true }) {
		switch {
		case p.RollOut != nil:
			ends(p, p.Bounds().Max.Z)
		case p.Kind == model.KindShelf:
			ends(p, p.Slab.Top)
		case p.Bracket() != nil && facesViewer(p.Bracket().On().Wall):
			ends(p, p.Bracket().On().Seat)
		case p.Post != nil:
			out = append(out, station{at: p.Post.Middle, under: p.Bounds().Min.Z, name: m.pass(p.ID)})
		}
	}
	for _, c := range m.cuttings() {
		if c.seat != nil && math.Abs(float64(c.line.D.Unit().Y)) > math.Sqrt2/2 {
			out = append(out, station{at: c.at(m.frontOf(c)), name: m.say("seat // of a person")})
		}
	}
	return out
}

// stationsAwayFromBack are table legs, and seats that look along the back wall.
func (m *maker) stationsAwayFromBack() []station {
	var out []station
	for _, p := range m.parts(func(p *model.Part) bool { return p.Post != nil }) {
		out = append(out, station{at: p.Post.Middle, name: m.pass(p.ID)})
	}
	for _, c := range m.cuttings() {
		if c.seat != nil && math.Abs(float64(c.line.D.Unit().Y)) <= math.Sqrt2/2 {
			out = append(out, station{at: c.at(m.frontOf(c)), name: m.say("seat // of a person")})
		}
	}
	return out
}
