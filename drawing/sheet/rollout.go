package sheet

import (
	"fmt"
	"strings"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// rollOutSheets gives one sheet per distinct roll-out table: three views that
// stand in line, and the cut list of its boards.
func rollOutSheets(m *maker) []page {
	var out []page
	for _, p := range m.distinct(func(p *model.Part) bool { return p.RollOut != nil }) {
		out = append(out, m.rollOutSheet(p)...)
	}
	return out
}

func (m *maker) rollOutSheet(p *model.Part) []page {
	v := newRollOutView(m, p)
	beside := m.boardTable(p, v.boards).blocks("boards", m.say("Boards"), m.lines)
	beside = append(beside, notesBlock("notes", m.say("Notes"), m.rollOutNotes(p, v.boards)))
	title := fmt.Sprintf("%d  %s", p.Mark, m.pass(p.ID))
	var pages []page
	for _, s := range drawing.Scales {
		if s.Paper > s.Real {
			continue
		}
		l, ok := v.laid(s, beside)
		if !ok {
			continue
		}
		if set := m.sequel(m, l, "roll-out-"+stem(p.ID), title); pages == nil || len(set) < len(pages) {
			pages = set
		}
		if len(pages) == 1 || small(s) {
			break
		}
	}
	for i := range pages {
		b := &pages[i].block
		b.DocumentType, b.Material, b.Mass = m.say("part drawing, wood"), m.pass(p.Material), m.kg(p.Mass())
	}
	return pages
}

// rollOutView draws a roll-out table.
type rollOutView struct {
	m       *maker
	part    *model.Part
	stage   *stage
	boards  []model.Board
	castors []geom.Vec
}

func newRollOutView(m *maker, p *model.Part) *rollOutView {
	v := &rollOutView{m: m, part: p, stage: &stage{}, boards: p.RollOut.Boards}
	pose := geom.Pose{At: p.RollOut.Corner.Up(p.Bounds().Min.Z), Turn: p.RollOut.Turn}
	for _, b := range p.Bodies {
		solid := own(b.Solid, pose)
		v.stage.add(view.Item{ID: stem(b.Name), Title: b.Name, Role: view.Made, Faces: solid.Faces()}, nil, nil)
		box := solid.Bounds()
		if strings.HasPrefix(b.Name, "castor") {
			v.castors = append(v.castors, geom.V((box.Min.X+box.Max.X)/2, (box.Min.Y+box.Max.Y)/2))
		}
	}
	return v
}

// laid puts the three views in line on a page and what belongs to them around:
// in first angle the view from above below the front and the one from the left
// to its right, in third angle the other way round. It tells whether the views
// fit.
func (v *rollOutView) laid(s drawing.Scale, beside []block) (laid, bool) {
	const gap, margin unit.Length = 12, 45
	draw := func(p picture) drawn { return v.m.draw(p, s, geom.V(margin, margin)) }
	views := []drawn{draw(v.front()), draw(v.side()), draw(v.top())}
	front, side, top := views[0].box, views[1].box, views[2].box
	at := []geom.Vec{{}, geom.V(front.Max.X+gap-side.Min.X, 0), geom.V(0, front.Min.Y-gap-top.Max.Y)}
	if v.m.b.Job.Show.Projection == "third" {
		at[1].X, at[2].Y = front.Min.X-gap-side.Max.X, front.Max.Y+gap-top.Min.Y
	}
	all := front
	for i := range views {
		all = all.Union(shifted(views[i].box, at[i]))
	}
	box, ok := newPacker(v.m.size).put(all.Width(), all.Height(), topLeft)
	l := laid{scale: s}
	p := newPacker(v.m.size)
	for i, d := range views {
		to := at[i].Add(box.Min.Sub(all.Min))
		l.items = append(l.items, d.at(to))
		p.take(shifted(d.box, to))
	}
	blocks, over := v.m.besides(p, beside)
	for _, b := range blocks {
		l.items = append(l.items, drawing.Move(b.form.items, b.box.Min)...)
	}
	l.over = over
	return l, ok
}

func (v *rollOutView) picture(id, title string, look view.Look) picture {
	return picture{id: id, title: title, view: view.Of(v.stage.scene, look), paint: v.m.usual(v.stage), style: v.m.woodStyle()}
}

// front has the heights of all boards from the floor.
func (v *rollOutView) front() picture {
	r := v.part.RollOut
	p := v.picture("front", v.m.say("Front"), view.Front())
	var z []geom.Vec
	for _, b := range v.boards {
		if b.Thickness == b.Box.Max.Z-b.Box.Min.Z {
			z = append(z, geom.V(0, b.Box.Min.Z), geom.V(0, b.Box.Max.Z))
		}
	}
	p.ask = append(v.m.row(geom.V(0, 0), v.m.say("floor"), dim.Vertical, dim.LeftOf, z...),
		dim.Linear{A: geom.V(0, r.Height), B: geom.V(r.Width, r.Height), Dir: dim.Horizontal, Side: dim.Above})
	for _, b := range v.boards {
		if b.Thickness == b.Box.Max.X-b.Box.Min.X && b.Box.Min.X <= 0.01 {
			p.ask = append(p.ask, dim.Linear{A: geom.V(b.Box.Min.X, b.Box.Min.Z), B: geom.V(b.Box.Max.X, b.Box.Min.Z), Dir: dim.Horizontal, Side: dim.Below})
		}
	}
	return p
}

// side is seen from the left: the back is on the left.
func (v *rollOutView) side() picture {
	r := v.part.RollOut
	p := v.picture("side", v.m.say("From the left"), view.FromLeft())
	p.ask = []dim.Request{dim.Linear{A: geom.V(0, r.Height), B: geom.V(r.Depth, r.Height), Dir: dim.Horizontal, Side: dim.Above}}
	for _, b := range v.boards {
		if b.Thickness == b.Box.Max.Y-b.Box.Min.Y { // the rail
			p.ask = append(p.ask,
				dim.Linear{A: geom.V(-b.Box.Max.Y, b.Box.Min.Z), B: geom.V(-b.Box.Max.Y, b.Box.Max.Z), Dir: dim.Vertical, Side: dim.LeftOf},
				dim.Linear{A: geom.V(-b.Box.Max.Y, b.Box.Min.Z), B: geom.V(-b.Box.Min.Y, b.Box.Min.Z), Dir: dim.Horizontal, Side: dim.Below})
		}
	}
	return p
}

// top has the castors.
func (v *rollOutView) top() picture {
	p := v.picture("top", v.m.say("From above"), view.Plan())
	p.extra = func(pl dim.Plate) []drawing.Item {
		var out []drawing.Item
		for _, c := range v.castors {
			at := pl.Origin.Add(geom.V(pl.Scale.Of(c.X), pl.Scale.Of(c.Y)))
			arm := geom.V(pl.Scale.Of(v.part.RollOut.Castor*0.4)+2, 0)
			out = append(out, drawing.Line(at.Sub(arm), at.Add(arm), v.m.lines.Centre()), drawing.Line(at.Sub(arm.Left()), at.Add(arm.Left()), v.m.lines.Centre()))
		}
		return out
	}
	along := dim.Running{Datum: geom.V(0, 0), From: v.m.say("left"), Dir: dim.Horizontal, Side: dim.Below}
	across := dim.Running{Datum: geom.V(0, 0), From: v.m.say("back"), Dir: dim.Vertical, Side: dim.LeftOf}
	seen := map[unit.Length]bool{}
	for _, c := range v.castors {
		if !seen[c.X] {
			seen[c.X] = true
			along.Points = append(along.Points, c)
		}
		if !seen[c.Y] { // counted from the back towards the front
			seen[c.Y] = true
			across.Points = append(across.Points, c)
			across.Labels = append(across.Labels, dim.Label{Text: v.m.length(-c.Y)})
		}
	}
	if len(v.castors) > 0 {
		p.ask = []dim.Request{along, across}
	}
	return p
}

// woodStyle is how dimensions of wood look on this paper.
func (m *maker) woodStyle() dim.Style {
	if m.lines == drawing.Dense {
		return dim.Wood.Dense()
	}
	return dim.Wood
}
