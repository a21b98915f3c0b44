package render_test

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// demo is a sheet that uses every kind of item: a slab seen from above with its
// dimensions, sections of all materials, and every pen.
func demo(size drawing.Size, number int) drawing.Sheet {
	s := drawing.Sheet{
		Name: "03-slab-top", Title: "Front board, ash, natural edge", Size: size,
		Scale: "1:10", Number: number, Of: 8,
	}
	room := drawing.Free(size)[0]
	s.Add(drawing.Group{ID: "view top", Title: "Front board seen from above", Items: slab(room.Min.Add(geom.V(22, room.Height()-70)))})
	s.Add(drawing.Group{ID: "materials", Items: swatches(room.Min.Add(geom.V(4, 62)))})
	s.Add(drawing.Group{ID: "pens", Items: pens(room.Min.Add(geom.V(4, 4)))})
	return drawing.Finish(s, drawing.Block{
		Owner: "A. Joiner", DocumentType: "part drawing", Number: "SW-0103", Revision: "B",
		Issued: "2026-11-03", Surveyed: "2026-11-03", Creator: "slabwright",
		Material: "ash, oiled, 9 % ±1 %", Mass: "37.4 kg", Tolerance: "steel ISO 2768-1 c, timber ±0.5, thickness ±0.3",
		Status: "no finding failed",
	})
}

// slab is a board of 1200 x 300 at 1:10 with holes, a natural edge and sizes.
func slab(at geom.Vec) []drawing.Item {
	g := drawing.Normal
	loop := []geom.Vec{at, at.Add(geom.V(120, 0)), at.Add(geom.V(120, 32))}
	for x := unit.Length(115); x > 0; x -= 5 {
		loop = append(loop, at.Add(geom.V(x, 31+unit.Length(1.2*math.Sin(float64(x)/9)))))
	}
	loop = append(loop, at.Add(geom.V(0, 30)))
	items := []drawing.Item{
		drawing.Outline(loop, g.Outline()),
		drawing.Line(at.Add(geom.V(-4, 15)), at.Add(geom.V(124, 15)), g.Centre()),
		drawing.Line(at.Add(geom.V(0, 3.5)), at.Add(geom.V(120, 3.5)), g.Hidden()),
		drawing.Arc{Centre: at.Add(geom.V(120, 0)), Radius: 12, From: 90 * unit.Degree, Sweep: 90 * unit.Degree, Pen: g.Adjacent()},
		drawing.Write(at.Add(geom.V(60, 20)), "natural edge, do not trim", drawing.Standard, drawing.Centre),
	}
	for i := range 4 {
		c := at.Add(geom.V(15+30*unit.Length(i), 8))
		items = append(items, drawing.Circle{Centre: c, Radius: 1.1, Pen: g.Outline()},
			drawing.Line(c.Add(geom.V(-2.5, 0)), c.Add(geom.V(2.5, 0)), g.Centre()),
			drawing.Line(c.Add(geom.V(0, -2.5)), c.Add(geom.V(0, 2.5)), g.Centre()))
	}
	items = append(items, size(at, at.Add(geom.V(120, 0)), 10, "1200 +0 / -1")...)
	items = append(items, size(at, at.Add(geom.V(0, 30)), -10, "300 ±0.5")...)
	return items
}

// size draws a dimension at distance d to the right of the line from a to b.
func size(a, b geom.Vec, d unit.Length, text string) []drawing.Item {
	fine := drawing.Normal.Fine()
	u := b.Sub(a).Unit()
	out := u.Left().Mul(-float64(d))
	p, q := a.Add(out), b.Add(out)
	e := out.Unit()
	over := p.Lerp(q, 0.5).Add(u.Left().Mul(1))
	return []drawing.Item{
		drawing.Line(a.Add(e.Mul(1.5)), p.Add(e.Mul(2)), fine),
		drawing.Line(b.Add(e.Mul(1.5)), q.Add(e.Mul(2)), fine),
		drawing.Line(p, q, fine),
		drawing.Mark{Kind: drawing.Arrow, At: p, Dir: u.Mul(-1)},
		drawing.Mark{Kind: drawing.Arrow, At: q, Dir: u},
		drawing.Write(over, text, drawing.Standard, drawing.Centre).Along(u.Angle()),
	}
}

var materials = []drawing.Material{
	drawing.Plain, drawing.Steel, drawing.Masonry, drawing.Aerated, drawing.Concrete,
	drawing.StudWall, drawing.Plaster, drawing.EndGrain, drawing.LongGrain, drawing.SheetBoard,
}

// swatches shows every hatch in a box with a hole and its name in it.
func swatches(at geom.Vec) []drawing.Item {
	var items []drawing.Item
	for i, m := range materials {
		p := at.Add(geom.V(34*unit.Length(i%5), -30*unit.Length(i/5)))
		box := drawing.Box(p.X, p.Y, 30, 26)
		loops := [][]geom.Vec{box.Corners(), drawing.Box(p.X+19, p.Y+4, 7, 5).Corners()}
		items = append(items, drawing.Hatch{Loops: loops, Pattern: drawing.Pattern{Material: m}})
		items = append(items, drawing.Outlines(loops, drawing.Normal.Outline())...)
		items = append(items, drawing.Write(box.Centre().Add(geom.V(0, 3)), m.String(), drawing.Small, drawing.Middle))
	}
	return items
}

// pens shows every kind of line, with terminators on some.
func pens(at geom.Vec) []drawing.Item {
	g := drawing.Normal
	var items []drawing.Item
	for i, p := range []struct {
		name string
		pen  drawing.Pen
	}{
		{"outline", g.Outline()}, {"fine", g.Fine()}, {"hidden", g.Hidden()}, {"centre", g.Centre()}, {"plane", g.Plane()},
		{"adjacent", g.Adjacent()}, {"break", g.Break()}, {"wavy", g.Wavy()}, {"sap", g.Sap().In(drawing.Red)},
	} {
		q := at.Add(geom.V(58*unit.Length(i%3), 20-9*unit.Length(i/3)))
		items = append(items, drawing.Line(q, q.Add(geom.V(34, 0)), p.pen),
			drawing.Write(q.Add(geom.V(36, 0)), p.name, drawing.Small, drawing.MiddleLeft))
	}
	return append(items,
		drawing.Mark{Kind: drawing.Dot, At: at, Pen: g.Fine()},
		drawing.Mark{Kind: drawing.Origin, At: at.Add(geom.V(58, 2)), Pen: g.Fine()},
		drawing.Mark{Kind: drawing.Oblique, At: at.Add(geom.V(0, 11)), Dir: geom.V(1, 0), Pen: g.Fine()},
		drawing.Mark{Kind: drawing.OpenArrow, At: at.Add(geom.V(92, 20)), Dir: geom.V(1, 0), Pen: g.Fine()},
		drawing.Mark{Kind: drawing.Flag, At: at.Add(geom.V(116, 2)), Dir: geom.V(0, -1)},
	)
}
