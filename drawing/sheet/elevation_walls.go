package sheet

import (
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// wallPages shows the walls that the front elevation does not show squarely and
// that carry angles or shelves, side by side.
func (m *maker) wallPages() []page {
	var long, short []shot
	for _, w := range m.b.Room.Walls {
		if facesViewer(w) {
			continue
		}
		if hung := m.on(w); len(hung) == 0 {
			continue
		} else if s := m.wallShot(w, hung); w.Length() > 500 {
			long = append(long, s)
		} else {
			short = append(short, s)
		}
	}
	return append(m.rowPages(long), m.rowPages(short)...)
}

// enough is the scale of elevations at which several share a page.
var enough = drawing.Scale{Paper: 1, Real: 10}

// rowPages puts as many shots side by side on a page as stand there without a
// scale that is too small.
func (m *maker) rowPages(shots []shot) []page {
	var out []page
	for len(shots) > 0 {
		blank := m.new(shots[0].id, "")
		blank.block.DocumentType = m.say("arrangement")
		best, scale := m.pictures(blank, shots[0])
		n := 1
		for k := 2; k <= len(shots); k++ {
			pg, s := m.pictures(blank, shots[:k]...)
			if bigger(scale, s) && bigger(enough, s) {
				break
			}
			best, scale, n = pg, s, k
		}
		var names []string
		for _, s := range shots[:n] {
			names = append(names, s.title[strings.LastIndex(s.title, " ")+1:])
		}
		best.sheet.Title = m.sayf("Walls %s, seen from the room", strings.Join(names, ", "))
		out = append(out, best)
		shots = shots[n:]
	}
	return out
}

// on gives the brackets, rods and shelves that hang on a wall.
func (m *maker) on(w *model.Wall) []*model.Part {
	rods := map[string]bool{}
	for _, p := range m.parts(func(p *model.Part) bool { return p.Rod != nil && p.Rod.Wall == w }) {
		rods[p.Rod.Shelf] = true
	}
	return m.parts(func(p *model.Part) bool {
		return p.Bracket() != nil && p.Bracket().On().Wall == w || p.Rod != nil && p.Rod.Wall == w || rods[p.ID]
	})
}

// wallShot looks squarely at a wall, cut in front of what hangs on it.
func (m *maker) wallShot(w *model.Wall, hung []*model.Part) shot {
	var deep unit.Length
	l := w.Chord()
	from, to := l.D.Len(), unit.Length(0)
	for _, p := range hung {
		for _, loop := range p.Footprint().Loops() {
			for _, v := range loop {
				deep = max(deep, -l.Side(v))
				from, to = min(from, l.Along(v)), max(to, l.Along(v))
			}
		}
	}
	f := facing{id: "wall-" + stem(w.Name), title: m.sayf("Wall %s %s-%s", m.pass(w.Name), w.From.Name, w.To.Name)}
	f.plane = l.Shift(-deep - 15)
	f.parts = m.parts(func(p *model.Part) bool { return p.RollOut == nil && p.Rod == nil })
	f.walls = m.uprightWalls(f.plane, -unit.M, l.D.Len()+unit.M)
	f.window = drawing.Rect{Min: geom.V(max(from-beyond, 0), -30), Max: geom.V(min(to+beyond, l.D.Len()), m.highest())}
	if w.Previous() != nil && from < 2*beyond {
		f.window.Min.X = -m.strip()
	}
	if w.Next() != nil && to > l.D.Len()-2*beyond {
		f.window.Max.X = l.D.Len() + m.strip()
	}
	if m.countsFromRight(w) {
		f.window.Max.X = l.D.Len() + m.strip()
	} else {
		f.window.Min.X = -m.strip()
	}
	p := m.elevationShot(f)
	p.ask = m.wallDims(f, w, hung)
	return p
}

// wallDims gives what the front elevation does not tell: where brackets and
// shelves begin and end along the wall, and how high they hang.
func (m *maker) wallDims(f facing, w *model.Wall, hung []*model.Part) []dim.Request {
	var heights, xs []stop
	for _, p := range hung {
		b := p.Bounds()
		switch {
		case p.Bracket() != nil:
			a := p.Bracket().On()
			heights = append(heights, stop{at: geom.V(f.window.Min.X, a.Seat)})
			xs = append(xs, stop{at: geom.V(a.Start, b.Min.Z)}, stop{at: geom.V(a.Start+a.Length, b.Min.Z)})
		case p.Slab != nil:
			heights = append(heights, stop{at: geom.V(f.window.Min.X, p.Slab.Top-p.Slab.Thickness)})
			if from, to, ok := reach(f.plane, p.Footprint()); ok {
				xs = append(xs, stop{at: geom.V(from, b.Min.Z)}, stop{at: geom.V(to, b.Min.Z)})
			}
		}
	}
	datum := geom.V(0, 0)
	c, right := m.countsFrom(w)
	if right {
		datum.X = w.Length()
	}
	ask := m.heights(geom.V(f.window.Min.X, 0), m.say("floor"), heights)
	ask = append(ask, m.ladder(datum, m.cornerName(c), dim.Horizontal, dim.Below, xs)...)
	return append(ask, m.obstacleNotes(f)...)
}

// reach is the stretch of a line beside which a region lies.
func reach(l geom.Line, r geom.Region) (from, to unit.Length, ok bool) {
	for i, loop := range r.Loops() {
		for k, v := range loop {
			x := l.Along(v)
			if i == 0 && k == 0 {
				from, to = x, x
			}
			from, to, ok = min(from, x), max(to, x), true
		}
	}
	return from, to, ok
}
