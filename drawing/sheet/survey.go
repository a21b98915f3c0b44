package sheet

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// surveySheets shows the room as adjusted from the readings, and every reading
// beside it with a box to write it in again on site.
func surveySheets(m *maker) []page {
	pg := m.new("survey", m.say("Room as surveyed, at desk height"))
	pg.block.DocumentType = m.say("survey")
	free := drawing.Free(m.size)
	if len(free) == 1 {
		return m.surveyPages(pg, free[0])
	}
	// The table of readings claims its width; the picture takes the rest.
	need := m.tableWidth(m.readings())
	big := drawing.Rect{Min: free[0].Min, Max: geom.V(free[0].Max.X-need-6, free[0].Max.Y)}
	right := drawing.Rect{Min: geom.V(big.Max.X+6, free[0].Min.Y), Max: free[0].Max}
	h := m.hang([]drawing.Rect{big}, m.surveyShot())
	pg.sheet.Add(h.items...)
	pg.sheet.Scale = h.scale.String()
	f := m.down(right)
	f.grid("readings", m.readingsHead(), m.readings())
	m.surveyText(f)
	low := m.down(drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X-2, free[1].Max.Y-2)})
	low.grid("walls", m.say("Walls, left to right"), m.wallTable())
	if f.full || low.full || low.tooWide() {
		return m.surveyPages(m.new("survey", m.say("Room as surveyed, at desk height")), free[0])
	}
	pg.sheet.Add(f.items...)
	pg.sheet.Add(low.items...)
	return []page{pg}
}

// surveyPages gives the picture a page of its own and the tables the next ones.
func (m *maker) surveyPages(pg page, room drawing.Rect) []page {
	pg.block.DocumentType = m.say("survey")
	pg, _ = m.pictures(pg, m.surveyShot())
	pages := []page{pg}
	f := m.down(room).onto(room)
	f.long("walls", m.say("Walls, left to right"), m.wallTable())
	f.long("readings", m.readingsHead(), m.readings())
	m.surveyText(f)
	for i, items := range f.pages() {
		next := m.new(fmt.Sprintf("readings-%d", i+1), m.say("Readings, as measured and as adjusted"))
		next.block.DocumentType = m.say("survey")
		next.sheet.Add(items...)
		pages = append(pages, next)
	}
	return pages
}

// surveyShot is the floor plan at the height of the readings.
func (m *maker) surveyShot() shot {
	r := m.b.Room
	w := m.outer(r.At)
	v := view.View{Bounds: w.Grow(-m.strip() - 10)}
	p := shot{picture: picture{id: "survey", title: m.sayf("Room as adjusted, %s above the floor", m.length(r.At)), view: v, paint: m.usual(&stage{}), style: m.joinery()}}
	p.extra = func(pl dim.Plate) []drawing.Item {
		out := m.planWalls(pl, r.At, w)
		out = append(out, m.diagonals(pl), m.planObstacles(pl, w), m.studs(pl))
		return append(out, m.keepOuts(pl))
	}
	p.ask = m.surveyDims()
	return p
}

// diagonals draws the lines of the readings that do not run along a wall.
func (m *maker) diagonals(pl dim.Plate) drawing.Item {
	g := drawing.Group{ID: "diagonals", Title: m.say("readings across the room")}
	pen := m.lines.Fine().In(drawing.Grey)
	for _, rd := range m.b.Job.Room.Readings {
		if len(rd.Points) != 2 {
			continue
		}
		a, okA := m.b.Room.Corner(string(rd.Points[0]))
		b, okB := m.b.Room.Corner(string(rd.Points[1]))
		if okA && okB && !m.alongWall(a.Name, b.Name) {
			g.Items = append(g.Items, drawing.Line(paperAt(pl, a.At), paperAt(pl, b.At), pen))
		}
	}
	return g
}

func (m *maker) alongWall(a, b string) bool {
	for _, w := range m.b.Room.Walls {
		if w.From.Name == a && w.To.Name == b || w.From.Name == b && w.To.Name == a {
			return true
		}
	}
	return false
}

// studs marks the studs of framed walls by their axes.
func (m *maker) studs(pl dim.Plate) drawing.Item {
	g := drawing.Group{ID: "studs", Title: m.say("studs")}
	for _, w := range m.b.Room.Walls {
		l := w.Chord()
		out := l.D.Unit().Left()
		for _, s := range w.Studs {
			at := l.P.Add(l.D.Unit().Mul(float64(s)))
			g.Items = append(g.Items, drawing.Line(paperAt(pl, at.Sub(out.Mul(30))), paperAt(pl, at.Add(out.Mul(float64(m.strip()+30)))), m.lines.Centre()))
		}
	}
	return g
}

// keepOuts draws the stretch of wall that every obstacle keeps free.
func (m *maker) keepOuts(pl dim.Plate) drawing.Item {
	const deep = 60
	g := drawing.Group{ID: "keep-outs", Title: m.say("kept free")}
	for _, w := range m.b.Room.Walls {
		l := w.Chord()
		u, in := l.D.Unit(), l.D.Unit().Left().Mul(-1)
		for _, o := range w.Obstacles {
			from, to, _, _ := o.Keep()
			a, b := l.P.Add(u.Mul(float64(from))), l.P.Add(u.Mul(float64(to)))
			d := in.Mul(float64(max(o.Depth, deep)))
			g.Items = append(g.Items, drawing.Outline(paperChain(pl, []geom.Vec{a, b, b.Add(d), a.Add(d)}), m.lines.Sap()))
		}
	}
	return g
}

// surveyDims gives the wall lengths, the corners with their angles, and names
// what is on the walls.
func (m *maker) surveyDims() []dim.Request {
	r := m.b.Room
	var ask []dim.Request
	for _, w := range r.Walls {
		ask = append(ask, dim.Linear{A: w.From.At, B: w.To.At, Dir: dim.Aligned})
	}
	for _, c := range r.Corners {
		text := c.Name
		if c.Angle != 0 {
			text += "  " + degrees(m.style, c.Angle)
		}
		ask = append(ask, dim.Note{At: c.At, Lines: []string{text}})
	}
	for _, w := range r.Walls {
		for _, o := range w.Obstacles {
			ask = append(ask, dim.Note{At: obstaclePlan(o).Centroid(), Lines: m.noted(o.Name)})
		}
	}
	return ask
}

// degrees writes an angle to a hundredth of a degree.
func degrees(s unit.Style, a unit.Angle) string { return s.Number(a.Degrees(), 2) + "°" }

// planOf is what was written about a wall.
func (m *maker) planOf(w *model.Wall) model.WallPlan {
	for _, p := range m.b.Job.Room.Walls {
		if p.From == w.From.Name && p.To == w.To.Name {
			return p
		}
	}
	return model.WallPlan{}
}
