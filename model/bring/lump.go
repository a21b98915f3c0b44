package bring

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/motion"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// lump is a convex piece of a part or of the room between two faces with the
// same number of corners. The true thing fills it but for slack.
type lump struct {
	name        string
	bottom, top []geom.Vec3
	slack       unit.Length
}

func prism(name string, outline []geom.Vec, z0, z1, slack unit.Length) lump {
	l := lump{name: name, slack: slack}
	for _, v := range outline {
		l.bottom, l.top = append(l.bottom, v.Up(z0)), append(l.top, v.Up(z1))
	}
	return l
}

// moved carries a lump from one set of axes to another.
func (l lump) moved(to func(geom.Vec3) geom.Vec3) lump {
	out := lump{name: l.name, slack: l.slack}
	for i := range l.bottom {
		out.bottom, out.top = append(out.bottom, to(l.bottom[i])), append(out.top, to(l.top[i]))
	}
	return out
}

// bodies makes convex bodies of lumps; a lump without volume is left out.
func bodies(list []lump) []motion.Body {
	var out []motion.Body
	for _, l := range list {
		if b, err := motion.Between(l.name, l.bottom, l.top); err == nil {
			b.Slack = l.slack
			out = append(out, b)
		}
	}
	return out
}

// lumpsOf are the convex pieces of a part, in the room's axes.
func lumpsOf(p *model.Part) []lump {
	switch {
	case p.Slab != nil:
		return placed(slabLumps(p.ID, p.Slab), p.Slab.Pose)
	case p.Angle != nil:
		return placed(angleLumps(p.ID, p.Angle), p.Angle.Pose())
	case p.Cleat != nil:
		c := p.Cleat
		face := []geom.Vec{geom.V(0, -c.Wide), geom.V(c.Length, -c.Wide), geom.V(c.Length, 0), geom.V(0, 0)}
		return placed([]lump{prism(p.ID, face, -c.High, 0, 0)}, c.Pose())
	case p.Rod != nil:
		return []lump{rodLump(p.ID, p.Rod)}
	}
	var out []lump
	for _, b := range p.Bodies {
		box := b.Solid.Bounds()
		for _, piece := range convex(b.Solid.Footprint()) {
			out = append(out, prism(p.ID, piece, box.Min.Z, box.Max.Z, 0))
		}
	}
	return out
}

func placed(list []lump, pose geom.Pose) []lump {
	for i := range list {
		list[i] = list[i].moved(pose.Space)
	}
	return list
}

// slabLumps are the straight outline, and the strip in which a natural edge runs.
func slabLumps(id string, s *model.SlabPart) []lump {
	var outline []geom.Vec
	var out []lump
	n := len(s.Edges)
	for i, e := range s.Edges {
		outline = append(outline, e.Start)
		var bulge unit.Length
		for _, st := range e.Natural {
			bulge = max(bulge, st.Top, st.Under)
		}
		if bulge > 0 {
			away := e.End.Sub(e.Start).Unit().Left()
			along := func(d geom.Vec) geom.Vec { return d.Unit().Mul(float64(bulge) / d.Unit().Dot(away)) }
			before, after := s.Edges[(i+n-1)%n], s.Edges[(i+1)%n]
			strip := []geom.Vec{e.Start, e.Start.Add(along(before.End.Sub(before.Start))), e.End.Add(along(after.Start.Sub(after.End))), e.End}
			out = append(out, prism(id, strip, 0, s.Thickness, bulge))
		}
	}
	for _, piece := range convex(geom.Polygon(outline...)) {
		out = append(out, prism(id, piece, 0, s.Thickness, 0))
	}
	return out
}

// angleLumps are the two legs and the fillet between them, in the angle's axes.
func angleLumps(id string, a *model.AnglePart) []lump {
	leg, t, r, long := a.Section.Leg, a.Section.Thickness, a.Section.Root, a.Length
	left, right := a.Left.Mitre, a.Right.Mitre
	ends := func(y unit.Length) (unit.Length, unit.Length) {
		return unit.Length(math.Tan(float64(left))) * y, long - unit.Length(math.Tan(float64(right)))*y
	}
	l, rr := ends(-leg)
	wl, wr := ends(-t)
	seat := []geom.Vec{geom.V(0, 0), geom.V(l, -leg), geom.V(rr, -leg), geom.V(long, 0)}
	wall := []geom.Vec{geom.V(0, 0), geom.V(wl, -t), geom.V(wr, -t), geom.V(long, 0)}
	out := []lump{prism(id, seat, -t, 0, 0)}
	away, inner := unit.Length(-1), -t // below the seat leg, or above it
	if a.LegUp {
		away, inner = 1, 0
		out = append(out, prism(id, wall, -t, leg-t, 0))
	} else {
		out = append(out, prism(id, wall, -leg, 0, 0))
	}
	// The fillet bulges into the steel: two wedges that meet where it is deepest.
	deep := r * unit.Length(1-math.Sqrt2/2)
	corner, mid := geom.V(-t, inner), geom.V(-t-deep, inner+away*deep)
	for _, tip := range []geom.Vec{geom.V(-t-r, inner), geom.V(-t, inner+away*r)} {
		out = append(out, along(id, []geom.Vec{corner, tip, mid}, ends, r/10))
	}
	return out
}

// along is a prism that runs along x, over an outline in y and z, between its ends at
// each y.
func along(name string, outline []geom.Vec, ends func(y unit.Length) (x0, x1 unit.Length), slack unit.Length) lump {
	l := lump{name: name, slack: slack}
	for _, v := range outline {
		x0, x1 := ends(v.X)
		l.bottom, l.top = append(l.bottom, geom.Vec3{X: x0, Y: v.X, Z: v.Y}), append(l.top, geom.Vec3{X: x1, Y: v.X, Z: v.Y})
	}
	return l
}

// rodSides is the number of sides of the bar round a rod.
const rodSides = 8

// rodLump is a rod as far as it stands out of its wall.
func rodLump(id string, r *model.RodPart) lump {
	l := r.Wall.LineAt(r.Height)
	pose := geom.Pose{At: l.P.Add(l.D.Unit().Mul(float64(r.At))).Up(r.Height), Turn: l.D.Angle()}
	round := r.Dia / 2 / unit.Length(math.Cos(math.Pi/rodSides))
	out := lump{name: id, slack: round - r.Dia/2*unit.Length(math.Cos(math.Pi/rodSides))}
	for i := range rodSides {
		s, c := math.Sincos(2 * math.Pi * float64(i) / rodSides)
		x, z := round*unit.Length(c), round*unit.Length(s)
		out.bottom, out.top = append(out.bottom, pose.Space(geom.Vec3{X: x, Z: z})), append(out.top, pose.Space(geom.Vec3{X: x, Y: -r.Gap - r.InShelf, Z: z}))
	}
	return out
}

// convex cuts a region into convex pieces, along the edges that meet in its inner
// corners.
func convex(r geom.Region) [][]geom.Vec {
	var out [][]geom.Vec
	for _, piece := range r.Pieces() {
		loops := piece.Loops()
		l, inner := innerCorner(loops)
		if !inner {
			out = append(out, loops[0])
			continue
		}
		out = append(out, convex(piece.ClipHalfPlane(l))...)
		out = append(out, convex(piece.ClipHalfPlane(geom.Line{P: l.P, D: l.D.Mul(-1)}))...)
	}
	return out
}

// innerCorner finds the line along which to cut: the edge before an inner corner,
// or the first edge of a hole.
func innerCorner(loops [][]geom.Vec) (geom.Line, bool) {
	if len(loops) > 1 {
		return geom.Through(loops[1][0], loops[1][1]), true
	}
	pts := loops[0]
	n := len(pts)
	for i := range pts {
		a, b, c := pts[i], pts[(i+1)%n], pts[(i+2)%n]
		if b.Sub(a).Unit().Cross(c.Sub(b)) < -0.005 { // beyond the grid
			return geom.Through(a, b), true
		}
	}
	return geom.Line{}, false
}
