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

// slabSheets gives one sheet per slab: the top face with every size that is
// needed to cut it, and the underside when there is work in it.
func slabSheets(m *maker) []page {
	var out []page
	for _, p := range m.parts(func(p *model.Part) bool { return p.Slab != nil }) {
		out = append(out, m.slabSheet(p))
	}
	return out
}

func (m *maker) slabSheet(p *model.Part) page {
	pg := m.new("slab-"+stem(p.ID), fmt.Sprintf("%d  %s", p.Mark, p.ID))
	s := &stage{}
	it := view.Item{ID: stem(p.ID), Title: p.ID, Mark: p.Mark, Role: view.Made, DropHidden: true}
	for _, b := range p.Bodies {
		it.Faces = append(it.Faces, own(b.Solid, p.Slab.Pose).Faces()...)
	}
	s.add(it, p, nil)
	top := picture{id: "top-face", title: "Top face", view: view.Of(s.scene, view.Plan()), paint: m.usual(s), style: dim.Wood,
		ask: m.topDims(p.Slab), extra: func(pl dim.Plate) []drawing.Item { return m.grain(pl, p.Slab, 1) }}
	pictures := []picture{top}
	if underWork(p.Slab) {
		pictures = append(pictures, picture{id: "underside", title: "Underside, turned over its long edge", view: view.Of(s.scene, view.Below()), paint: m.usual(s), style: dim.Wood,
			ask: m.underDims(p.Slab), extra: func(pl dim.Plate) []drawing.Item { return m.grain(pl, p.Slab, -1) }})
	}
	free := drawing.Free(m.size)
	items, scale := m.column(free[0], pictures...)
	pg.sheet.Add(items...)
	pg.sheet.Scale = scale.String()
	pg.block.DocumentType = "part drawing, wood"
	pg.block.Material = fmt.Sprintf("%s, t = %s", p.Material, m.length(p.Slab.Thickness))
	pg.block.Mass = m.kg(p.Mass())
	if len(free) > 1 {
		t, box := m.edgeTable(p.Slab).draw(geom.V(free[1].Min.X, free[1].Max.Y), free[1].Width()-4, m.lines)
		text, _ := notes(geom.V(free[1].Min.X, box.Min.Y-3), "", []string{
			fmt.Sprintf("Finished size %s. Datum A: reference edge, datum B: left end of A. Both diagonals belong to this outline.", p.Size()),
			fmt.Sprintf("Lift: %s. Wood dust: mask and extraction.", m.kg(p.Mass())),
		}, free[1].Width()-4)
		pg.sheet.Add(drawing.Group{ID: "edges", Title: "edges", Items: append(t, text...)})
	}
	return pg
}

// edgeTable says of every edge what it runs up to and how it is finished.
func (m *maker) edgeTable(s *model.SlabPart) table {
	t := table{heads: []string{"edge", "corners", "length", "runs up to", "gap", "finish"}, right: []bool{false, false, true, false, true, false}}
	n := len(s.Edges)
	for i, e := range s.Edges {
		finish := "sawn"
		switch {
		case e.Waney:
			finish = "natural edge, do not trim"
		case e.Ease > 0:
			finish = fmt.Sprintf("sawn, arrises %s x 45°", m.length(e.Ease))
		}
		to := e.To
		if e.Bound == model.ToAir {
			to = "free"
		} else if e.Bound == model.ToWall {
			to = "wall " + to
		}
		t.rows = append(t.rows, []string{e.Name, fmt.Sprintf("%d-%d", i+1, (i+1)%n+1), m.length(e.End.Sub(e.Start).Len()), to, m.length(e.Gap), finish})
	}
	return t
}

// topDims gives sides, diagonals, datum edges and the holes by running
// dimensions from the datum edges.
func (m *maker) topDims(s *model.SlabPart) []dim.Request {
	var ask []dim.Request
	n := len(s.Edges)
	corner := make([]geom.Vec, n)
	for i := range s.Edges {
		top, _ := s.Course(i)
		corner[i] = top[0]
	}
	for i, e := range s.Edges {
		a, b := corner[i], corner[(i+1)%n]
		if len(e.Natural) > 0 {
			continue
		}
		ask = append(ask, dim.Linear{A: a, B: b, Dir: dim.Aligned})
		if e.Reference {
			ask = append(ask, dim.Datum{A: a, B: b, Letter: "A"})
		}
		if i == 0 {
			ask = append(ask, dim.Datum{A: a, B: b, Letter: "B"})
		}
	}
	if n == 4 {
		ask = append(ask, dim.Across{A: corner[0], B: corner[2]}, dim.Across{A: corner[1], B: corner[3]})
	}
	ask = append(ask, m.stations(s)...)
	return append(ask, m.holeDims(s, model.TopFace, 1)...)
}

// stations gives the width of a natural edge from the reference edge at every
// measured station, and the least width.
func (m *maker) stations(s *model.SlabPart) []dim.Request {
	f := s.Front()
	if len(f.Natural) == 0 {
		return nil
	}
	top, _ := s.Course(len(s.Edges) - 1)
	var points []geom.Vec
	for _, st := range f.Natural {
		x := f.End.X + st.Along
		for i := range top[:len(top)-1] {
			a, b := top[i], top[i+1] // from right to left
			if x <= a.X && x >= b.X && a.X > b.X {
				points = append(points, a.Lerp(b, float64((a.X-x)/(a.X-b.X))))
				break
			}
		}
	}
	var ask []dim.Request
	for _, p := range points {
		ask = append(ask, dim.Across{A: geom.V(p.X, 0), B: p})
	}
	return append(ask, row(geom.V(0, 0), "B", dim.Horizontal, dim.Below, points...)...)
}

// holeDims gives the work seen on one face; flip is 1 from above, -1 from
// below, where y points the other way.
func (m *maker) holeDims(s *model.SlabPart, face model.Face, flip unit.Length) []dim.Request {
	var ask []dim.Request
	var xs, ys []geom.Vec
	sizes := map[unit.Length]int{}
	for _, f := range s.Features {
		seen := f.Kind == model.Through || f.Kind == model.CutOut || f.Face == face
		if !seen || f.Kind == model.Bore {
			continue
		}
		at := func(v geom.Vec) geom.Vec { return geom.V(v.X, v.Y*flip) }
		switch f.Kind {
		case model.Through, model.Pilot:
			xs, ys = append(xs, at(f.At)), append(ys, at(f.At))
			if sizes[f.Dia] == 0 {
				text := dim.Label{}
				if f.Kind == model.Pilot {
					text.Suffix = fmt.Sprintf(", %s deep", m.length(f.Depth))
				}
				ask = append(ask, dim.Diameter{Centre: at(f.At), Dia: f.Dia, Count: count(s, f), Label: text})
			}
			sizes[f.Dia]++
		default:
			lo, hi := f.Outline.Bounds()
			xs = append(xs, at(lo), at(hi))
			ys = append(ys, at(lo), at(hi))
			ask = append(ask, dim.Note{At: at(f.Outline.Centroid()), Lines: []string{fmt.Sprintf("%s %s", f.Kind, f.Name), depthText(m, f)}})
		}
	}
	ask = append(ask, row(geom.V(0, 0), "B", dim.Horizontal, dim.Above, xs...)...)
	return append(ask, row(geom.V(0, 0), "A", dim.Vertical, dim.RightOf, ys...)...)
}

func depthText(m *maker, f model.Feature) string {
	if f.Kind == model.CutOut {
		return "through"
	}
	if f.Kind == model.Groove {
		return fmt.Sprintf("%s wide, %s deep", m.length(f.Dia), m.length(f.Depth))
	}
	return m.length(f.Depth) + " deep"
}

func count(s *model.SlabPart, f model.Feature) int {
	n := 0
	for _, g := range s.Features {
		if g.Kind == f.Kind && g.Dia == f.Dia {
			n++
		}
	}
	return n
}

func (m *maker) underDims(s *model.SlabPart) []dim.Request {
	return m.holeDims(s, model.UnderFace, -1)
}

func underWork(s *model.SlabPart) bool {
	for _, f := range s.Features {
		if f.Face == model.UnderFace {
			return true
		}
	}
	return false
}

// grain draws the grain arrow near the middle of the slab: a double-headed
// arrow along the fibre.
func (m *maker) grain(pl dim.Plate, s *model.SlabPart, flip unit.Length) []drawing.Item {
	top := s.TopOutline()
	c := top.Centroid()
	at := pl.Origin.Add(geom.V(pl.Scale.Of(c.X), pl.Scale.Of(c.Y*flip)))
	a, b := at.Add(geom.V(-14, 0)), at.Add(geom.V(14, 0))
	pen := m.lines.Outline()
	return []drawing.Item{
		drawing.Line(a, b, pen),
		drawing.Mark{Kind: drawing.Arrow, At: a, Dir: geom.V(-1, 0), Pen: pen},
		drawing.Mark{Kind: drawing.Arrow, At: b, Dir: geom.V(1, 0), Pen: pen},
		drawing.Write(at.Add(geom.V(0, 1.2)), "grain", drawing.Small, drawing.Centre),
	}
}
