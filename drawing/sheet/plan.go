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

// planSheets shows the worktops from above, cut over their surface: walls cut
// and hatched, angles and the roll-out table dashed below, shelves above as
// adjacent outlines.
func planSheets(m *maker) []page {
	tops := m.parts(func(p *model.Part) bool { return p.Kind == model.KindSlab })
	if len(tops) == 0 {
		return nil
	}
	level := tops[0].Slab.Top
	for _, t := range tops {
		level = max(level, t.Slab.Top)
	}
	s := &stage{}
	s.addWalls(m.b.Room, level+100)
	s.addParts(m.parts(func(p *model.Part) bool { return p.Bounds().Min.Z < level })...)
	s.addObstacles(m.b.Room)
	v := view.Of(s.scene, view.PlanAt(level+50))
	pic := picture{id: "plan", title: "Plan, cut above the worktop", view: v, paint: m.usual(s), style: dim.Wood}
	pic.ask = m.planDims(s, v, tops)
	pic.extra = func(pl dim.Plate) []drawing.Item { return m.cornerNames(pl) }
	pg := m.new("plan", "Plan")
	free := drawing.Free(m.size)
	items, scale := m.column(free[0], pic)
	pg.sheet.Add(items...)
	pg.sheet.Scale = scale.String()
	pg.block.DocumentType = "arrangement"
	if len(free) > 1 {
		text, _ := notes(geom.V(free[1].Min.X, free[1].Max.Y), "How to read it", []string{
			"Walls are drawn as adjusted from the readings; nothing is taken as square.",
			"Dashed: under the worktop. Numbers in rings: parts list.",
			"Check every size on site before cutting.",
		}, free[1].Width()-5)
		pg.sheet.Add(drawing.Group{ID: "notes", Items: text})
	}
	return []page{pg}
}

// planDims gives the clear widths between the walls, the depths, and a balloon
// for every part.
func (m *maker) planDims(s *stage, v view.View, tops []*model.Part) []dim.Request {
	var ask []dim.Request
	r := m.b.Room
	for _, w := range r.Walls {
		ask = append(ask, dim.Linear{A: w.From.At, B: w.To.At, Dir: dim.Aligned})
	}
	for _, t := range tops {
		f := t.Slab.Front()
		a, b := t.Slab.Pose.Plan(f.End), t.Slab.Pose.Plan(f.Start)
		back := t.Slab.Pose.Plan(geom.V(f.End.X, 0))
		if t == tops[0] {
			ask = append(ask, dim.Linear{A: a, B: back, Dir: dim.Aligned, Side: dim.LeftOf}, dim.Linear{A: a, B: b, Dir: dim.Horizontal, Side: dim.Below})
		}
	}
	return append(ask, m.balloons(s, v)...)
}

// cornerNames writes the name of every corner into the room, off the corner.
func (m *maker) cornerNames(pl dim.Plate) []drawing.Item {
	var out []drawing.Item
	for i, c := range m.b.Room.Corners {
		in := inward(m.b.Room, i)
		at := pl.Origin.Add(geom.V(pl.Scale.Of(c.At.X), pl.Scale.Of(c.At.Y))).Add(in.Mul(5))
		out = append(out, drawing.Write(at, c.Name, drawing.Standard, drawing.Middle).Strong())
	}
	return out
}

// inward points from a corner into the room, half way between its walls.
func inward(r *model.Room, i int) geom.Vec {
	var d geom.Vec
	for _, w := range r.Walls {
		switch r.Corners[i].Name {
		case w.From.Name, w.To.Name:
			d = d.Sub(w.Chord().D.Unit().Left())
		}
	}
	return d.Unit()
}

// balloons numbers every part once per mark, each leader ending on its lines.
func (m *maker) balloons(s *stage, v view.View) []dim.Request {
	var ask []dim.Request
	seen := map[int]bool{}
	for i, p := range s.parts {
		if p == nil || seen[p.Mark] {
			continue
		}
		c := p.Centroid()
		to := geom.V(c.X, c.Y)
		if v.Bounds.Height() > 0 && s.elevation {
			to = geom.V(c.X, c.Z)
		}
		if a, ok := v.Nearest(i, to); ok {
			seen[p.Mark] = true
			ask = append(ask, dim.Balloon{At: a.At, Number: fmt.Sprint(p.Mark), OnEdge: true})
		}
	}
	return ask
}

// row makes a running dimension of places, none twice.
func row(datum geom.Vec, from string, dir dim.Direction, side dim.Side, points ...geom.Vec) []dim.Request {
	var keep []geom.Vec
	key := func(v geom.Vec) unit.Length {
		if dir == dim.Vertical {
			return v.Y
		}
		return v.X
	}
	for _, p := range points {
		dup := abs(key(p)-key(datum)) < 0.05
		for _, q := range keep {
			dup = dup || abs(key(p)-key(q)) < 0.05
		}
		if !dup {
			keep = append(keep, p)
		}
	}
	if len(keep) == 0 {
		return nil
	}
	return []dim.Request{dim.Running{Datum: datum, From: from, Points: keep, Dir: dir, Side: side}}
}

func abs(l unit.Length) unit.Length {
	if l < 0 {
		return -l
	}
	return l
}
