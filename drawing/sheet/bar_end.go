package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/drawing/view"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// ends are the details X and Y: end A of each leg that has holes, at a larger
// scale, within a circle.
func (v *barView) ends() []picture {
	var out []picture
	for _, leg := range []model.Leg{model.WallLeg, model.SeatLeg} {
		if len(v.of(leg)) > 0 {
			out = append(out, v.detail(leg))
		}
	}
	return out
}

func detailLetter(leg model.Leg) string {
	if leg == model.WallLeg {
		return "X"
	}
	return "Y"
}

// ring is the circle of a detail: around end A and the first hole, or around
// the first hole alone where that is far from the end.
func (v *barView) ring(leg model.Leg) (geom.Vec, unit.Length) {
	first := v.of(leg)[0]
	deep := v.deep(leg)
	middle := v.off(leg, deep/2)
	r := max(deep*0.75, first.Dia/2+first.Slot/2+8)
	if first.X > 2*deep {
		return geom.V(first.X, middle), r
	}
	r = max(r, first.X/2+first.Dia/2+first.Slot/2+8)
	return geom.V(min(first.X/2+4, r-10), middle), r
}

// inDetail tells whether a hole is in the circle of the detail of its leg. A
// size is said there when it is that of such a hole.
func (v *barView) inDetail(h model.BracketHole) bool {
	c, r := v.ring(h.Leg)
	for _, o := range v.of(h.Leg) {
		if v.m.holeSize(o) == v.m.holeSize(h) && v.at(o).Sub(c).Len() < r-o.Dia/2 {
			return true
		}
	}
	return false
}

func (v *barView) detail(leg model.Leg) picture {
	c, r := v.ring(leg)
	first := v.of(leg)[0]
	letter := detailLetter(leg)
	p := picture{id: "detail-" + letter, title: v.m.sayf("Detail %s, %s", letter, v.m.legName(v.part, leg)), paint: v.m.usual(v.stage), style: v.m.steelStyle()}
	p.view = within(v.front, c, r)
	if leg == model.SeatLeg {
		p.view = within(v.plan, c, r)
	}
	p.extra = func(pl dim.Plate) []drawing.Item {
		mid := pl.Origin.Add(geom.V(pl.Scale.Of(c.X), pl.Scale.Of(c.Y)))
		up := float64(v.off(leg, first.FromHeel) - c.Y)
		half := unit.Length(math.Sqrt(math.Max(0, float64(r*r)-up*up)))
		return append(v.holeLines(pl, leg, max(0, c.X-half), c.X+half), drawing.Circle{Centre: mid, Radius: pl.Scale.Of(r), Pen: v.m.lines.Fine()})
	}
	seen := func(h model.BracketHole) bool { return v.at(h).Sub(c).Len() < r-h.Dia/2 }
	p.ask = append(v.sizes(leg, seen), dim.Linear{A: geom.V(max(0, c.X-r/2), v.off(leg, 0)), B: v.at(first), Dir: dim.Vertical, Side: dim.LeftOf})
	return p
}

// within cuts a view to a circle.
func within(v view.View, c geom.Vec, r unit.Length) view.View {
	out := view.View{Bounds: drawing.Rect{Min: c.Sub(geom.V(r, r)), Max: c.Add(geom.V(r, r))}}
	for _, s := range v.Segments {
		if a, b, ok := chordOf(s.A, s.B, c, r); ok {
			s.A, s.B = a, b
			out.Segments = append(out.Segments, s)
		}
	}
	return out
}

// chordOf is the part of a straight line inside a circle.
func chordOf(a, b, c geom.Vec, r unit.Length) (geom.Vec, geom.Vec, bool) {
	d, f := b.Sub(a), a.Sub(c)
	qa, qb, qc := d.Dot(d), 2*f.Dot(d), f.Dot(f)-float64(r*r)
	disc := qb*qb - 4*qa*qc
	if qa == 0 || disc <= 0 {
		return a, b, false
	}
	root := math.Sqrt(disc)
	t0, t1 := math.Max(0, (-qb-root)/(2*qa)), math.Min(1, (-qb+root)/(2*qa))
	if t1 <= t0 {
		return a, b, false
	}
	return a.Lerp(b, t0), a.Lerp(b, t1), true
}
