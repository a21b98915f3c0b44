package sheet

import (
	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// section is the profile with all that matters across the bar: both legs,
// thickness, root radius, back marks, and which leg is on the wall. It is seen
// from end A, so the wall is on the left.
func (v *barView) section() picture {
	a, sec := v.a, v.a.Section
	solid := v.stage.scene
	p := picture{id: "profile", title: v.m.say("Section, seen from end A"), paint: v.m.usual(v.stage), style: v.m.steelStyle()}
	p.view = view.Of(solid, view.Section(geom.Line{P: geom.V(v.clearOfHoles(), 0), D: geom.V(0, -1)}))
	p.extra = v.neighbours
	heel := v.heel()
	toe := v.off(model.WallLeg, sec.Leg)
	inner := v.off(model.WallLeg, sec.Thickness) // of the seat leg's lower or upper face
	root := geom.V(sec.Thickness+sec.Root, inner-sec.Root)
	from := 90 * unit.Degree
	seatSide := dim.Above
	if a.LegUp {
		root.Y, from = inner+sec.Root, 180*unit.Degree
		seatSide = dim.Below
	}
	p.ask = []dim.Request{
		dim.Linear{A: geom.V(0, heel), B: geom.V(sec.Leg, heel), Dir: dim.Horizontal, Side: seatSide},
		dim.Linear{A: geom.V(0, heel), B: geom.V(0, toe), Dir: dim.Vertical, Side: dim.LeftOf},
		dim.Linear{A: geom.V(sec.Leg, heel), B: geom.V(sec.Leg, inner), Dir: dim.Vertical, Side: dim.RightOf},
		dim.Radius{Centre: root, R: sec.Root, From: from, Sweep: 90 * unit.Degree},
	}
	for _, y := range v.lines(model.WallLeg) {
		p.ask = append(p.ask, dim.Linear{A: geom.V(0, heel), B: geom.V(0, v.off(model.WallLeg, y)), Dir: dim.Vertical, Side: dim.LeftOf, Label: dim.Label{Suffix: " W"}})
	}
	for _, y := range v.lines(model.SeatLeg) {
		p.ask = append(p.ask, dim.Linear{A: geom.V(0, heel), B: geom.V(y, heel), Dir: dim.Horizontal, Side: seatSide, Label: dim.Label{Suffix: " S"}})
	}
	return p
}

// clearOfHoles is a place along the bar where a cut meets no hole: the middle
// of the widest gap between hole edges.
func (v *barView) clearOfHoles() unit.Length {
	at, best := v.on.Length/2, unit.Length(0)
	edges := []unit.Length{0}
	for _, h := range v.on.Holes {
		edges = append(edges, h.X)
	}
	edges = append(edges, v.on.Length)
	for _, x := range edges {
		next := v.on.Length
		for _, y := range edges {
			if y > x {
				next = min(next, y)
			}
		}
		if next-x > best {
			at, best = (x+next)/2, next-x
		}
	}
	return at
}

// neighbours shows the hole lines through the legs, the wall behind the wall
// leg and the slab on the seat.
func (v *barView) neighbours(pl dim.Plate) []drawing.Item {
	at := func(x, y unit.Length) geom.Vec { return pl.Origin.Add(geom.V(pl.Scale.Of(x), pl.Scale.Of(y))) }
	g, sec := v.m.lines, v.a.Section
	var out []drawing.Item
	for _, y := range v.lines(model.WallLeg) {
		z := v.off(model.WallLeg, y)
		out = append(out, drawing.Line(at(0, z).Sub(geom.V(2.5, 0)), at(sec.Thickness, z).Add(geom.V(2.5, 0)), g.Centre()))
	}
	thick := v.off(model.WallLeg, sec.Thickness)
	for _, y := range v.lines(model.SeatLeg) {
		lo, hi := min(v.heel(), thick), max(v.heel(), thick)
		out = append(out, drawing.Line(at(y, lo).Sub(geom.V(0, 2.5)), at(y, hi).Add(geom.V(0, 2.5)), g.Centre()))
	}
	// The wall: a line beyond both ends of the leg. The slab: its lower corner.
	low, high := min(v.heel(), v.off(model.WallLeg, sec.Leg)), max(v.heel(), v.off(model.WallLeg, sec.Leg))
	const gap, reach unit.Length = 0.7, 9
	free, along := at(0, low), geom.V(0, -1) // the end of the wall leg where the wall goes on
	text := geom.V(-1.5, -reach)
	if v.a.LegUp {
		free, along, text = at(0, high), geom.V(0, 1), geom.V(-1.5, reach-drawing.Small)
	}
	toe := at(sec.Leg, 0)
	return append(out,
		drawing.Line(free.Add(along.Mul(float64(gap))), free.Add(along.Mul(float64(reach))), g.Adjacent()),
		drawing.Write(free.Add(text), v.m.say("wall"), drawing.Small, drawing.Right),
		drawing.Line(toe.Add(geom.V(gap, 0)), toe.Add(geom.V(reach+3, 0)), g.Adjacent()),
		drawing.Write(toe.Add(geom.V(3, 1.2)), v.m.say("slab"), drawing.Small, drawing.Left),
	)
}
