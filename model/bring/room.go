package bring

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Walls are built as far as this behind their faces; where that would stick out
// of a pier on its other side, less.
var backing = []unit.Length{200, 100, 50, 20}

// roomLumps are the walls, what stands out from them, floor and ceiling. Beyond
// the two ends of an open room nobody has measured: nothing is taken to be there.
func roomLumps(r *model.Room) []lump {
	high := r.Ceiling
	if high == 0 {
		high = unmeasuredCeiling
	}
	var out []lump
	plan := r.Plan(r.At)
	for _, w := range r.Walls {
		out = append(out, wallLump(w, plan, high))
		for _, o := range w.Obstacles {
			if o.Depth > 0 {
				box := o.Solid()
				for _, piece := range convex(box.Footprint()) {
					out = append(out, prism(o.Name, piece, o.Bottom, o.Top, 0))
				}
			}
		}
	}
	low, far := r.Walls[0].From.At, r.Walls[0].From.At
	for _, c := range r.Corners {
		low = geom.V(min(low.X, c.At.X), min(low.Y, c.At.Y))
		far = geom.V(max(far.X, c.At.X), max(far.Y, c.At.Y))
	}
	wide := geom.V(4*unit.M, 4*unit.M)
	all := rectangle(low.Sub(wide), far.Add(wide))
	floor := unit.Length(math.Inf(1))
	for _, c := range r.Corners {
		floor = min(floor, r.FloorAt(c.At))
	}
	out = append(out, prism("the floor", all, floor-300, floor, 0))
	if r.Ceiling > 0 {
		out = append(out, prism("the ceiling", all, r.Ceiling, r.Ceiling+300, 0))
	}
	return out
}

// unmeasuredCeiling is how high walls are looked at where no ceiling is told.
const unmeasuredCeiling unit.Length = 2300

func rectangle(a, b geom.Vec) []geom.Vec {
	return []geom.Vec{a, geom.V(b.X, a.Y), b, geom.V(a.X, b.Y)}
}

// wallLump is a wall behind its face, which may lean and bulge; a hollow one is
// taken as straight.
func wallLump(w *model.Wall, plan geom.Region, high unit.Length) lump {
	l := lump{name: fmt.Sprintf("the wall %s", w.Name), slack: max(0, -w.Bow)}
	for _, deep := range backing {
		var faces [2][]geom.Vec3
		for i, z := range []unit.Length{-100, high} {
			faces[i] = level(append(face(w, z), corner(w, w.Next(), z, deep), corner(w.Previous(), w, z, deep)), z)
		}
		l.bottom, l.top = faces[0], faces[1]
		var shape []geom.Vec
		for _, v := range l.bottom {
			shape = append(shape, v.Flat())
		}
		if geom.Polygon(shape...).Intersect(plan).Grow(-8, 1).Empty() {
			break
		}
	}
	return l
}

func level(pts []geom.Vec, z unit.Length) []geom.Vec3 {
	var out []geom.Vec3
	for _, v := range pts {
		out = append(out, v.Up(z))
	}
	return out
}

// face is a wall's face from corner to corner at a height.
func face(w *model.Wall, z unit.Length) []geom.Vec {
	a, b := corner(w.Previous(), w, z, 0), corner(w, w.Next(), z, 0)
	if w.Bow <= 0 {
		return []geom.Vec{a, b}
	}
	out := w.Face(z)
	out[0], out[len(out)-1] = a, b
	return out
}

// corner is where two neighbouring walls meet, so far behind their faces; at an
// open end, square behind the wall's own end.
func corner(a, b *model.Wall, z, deep unit.Length) geom.Vec {
	square := func(w *model.Wall, t float64) geom.Vec {
		l := w.LineAt(z)
		return l.P.Add(l.D.Mul(t)).Add(l.D.Unit().Left().Mul(float64(deep)))
	}
	switch {
	case a == nil:
		return square(b, 0)
	case b == nil:
		return square(a, 1)
	}
	end := square(a, 1)
	if p, ok := a.LineAt(z).Shift(deep).Meet(b.LineAt(z).Shift(deep)); ok && p.Sub(end).Len() < 4*deep+100 {
		return p
	}
	return end
}
