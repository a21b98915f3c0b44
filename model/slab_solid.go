package model

import (
	"math"
	"slices"
	"strings"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// naturalStep is the distance of the points of a natural edge.
const naturalStep unit.Length = 15

// Course is the course of an edge at the top face and at the underside, in the
// slab's own axes, from its start to its end. Straight edges have two points.
func (s *SlabPart) Course(i int) (top, under []geom.Vec) {
	e, n := s.Edges[i], len(s.Edges)
	if len(e.Natural) > 0 {
		return s.naturalCourse(i)
	}
	ends := []geom.Vec{e.Start, e.End}
	top, under = slices.Clone(ends), ends
	if next := s.Edges[(i+1)%n]; len(next.Natural) > 0 {
		t, u := s.naturalCourse((i + 1) % n)
		top[1], under[1] = t[0], u[0]
	}
	if prev := s.Edges[(i+n-1)%n]; len(prev.Natural) > 0 {
		t, u := s.naturalCourse((i + n - 1) % n)
		top[0], under[0] = t[len(t)-1], u[len(u)-1]
	}
	return top, under
}

// naturalCourse runs through the stations; its two ends lie on the lines of the
// neighbouring edges.
func (s *SlabPart) naturalCourse(i int) (top, under []geom.Vec) {
	n := len(s.Edges)
	e, before, after := s.Edges[i], s.Edges[(i+n-1)%n], s.Edges[(i+1)%n]
	out := e.End.Sub(e.Start).Unit().Left()
	var x, yt, yu []float64
	for _, st := range e.Natural {
		x, yt, yu = append(x, float64(st.Along)), append(yt, float64(st.Top)), append(yu, float64(st.Under))
	}
	ct, cu := newCurve(x, yt), newCurve(x, yu)
	parts := e.naturalParts()
	along := func(p geom.Vec) float64 { return float64(p.Sub(e.End).Dot(e.Start.Sub(e.End).Unit())) }
	at := func(p geom.Vec, dir geom.Vec, c curve) geom.Vec {
		return p.Add(dir.Mul(c.at(along(p)) / dir.Dot(out)))
	}
	for k, t := range parts {
		p, dir := e.Start.Lerp(e.End, t), out
		switch k {
		case 0:
			dir = before.End.Sub(before.Start).Unit()
		case len(parts) - 1:
			dir = after.Start.Sub(after.End).Unit()
		}
		top, under = append(top, at(p, dir, ct)), append(under, at(p, dir, cu))
	}
	return top, under
}

// naturalParts divides a natural edge, as fractions from its start to its end:
// at the stations, and into even steps where no station is near.
func (e Edge) naturalParts() []float64 {
	length := float64(e.End.Sub(e.Start).Len())
	steps := max(8, math.Ceil(length/float64(naturalStep)))
	parts := []float64{0, 1}
	add := func(t float64) {
		for _, p := range parts {
			if math.Abs(p-t) < 0.4/steps {
				return
			}
		}
		parts = append(parts, t)
	}
	for _, s := range e.Natural {
		if t := 1 - float64(s.Along)/length; t > 0 && t < 1 {
			add(t)
		}
	}
	for k := 1.0; k < steps; k++ {
		add(k / steps)
	}
	slices.Sort(parts)
	return parts
}

// TopOutline is the outline at the top face in the slab's own axes.
func (s *SlabPart) TopOutline() geom.Region {
	return s.outline(func(i int) []geom.Vec { top, _ := s.Course(i); return top })
}

// UnderOutline is the outline at the underside in the slab's own axes.
func (s *SlabPart) UnderOutline() geom.Region {
	return s.outline(func(i int) []geom.Vec { _, under := s.Course(i); return under })
}

func (s *SlabPart) outline(course func(int) []geom.Vec) geom.Region {
	var pts []geom.Vec
	for i := range s.Edges {
		c := course(i)
		pts = append(pts, c[:len(c)-1]...)
	}
	return geom.Polygon(pts...)
}

// finishSlab builds the solid of a slab, when everything that cuts into it is
// known.
func (d *Design) finishSlab(p *Part) {
	s := p.Slab
	g := geom.Slab{Bottom: 0, Top: s.Thickness}
	var bores []geom.Bore
	for i, e := range s.Edges {
		top, under := s.Course(i)
		edge := geom.SlabEdge{Name: e.Surface(), Path: under, EaseTop: e.Ease, EaseUnder: e.Ease}
		if len(e.Natural) > 0 {
			edge.Over, edge.EaseTop, edge.EaseUnder = top, 0, 0
		}
		g.Outline = append(g.Outline, edge)
	}
	for _, f := range s.Features {
		if f.Kind == Bore {
			in := s.Edges[f.Edge].End.Sub(s.Edges[f.Edge].Start).Unit().Left().Mul(-1)
			bores = append(bores, geom.Bore{Name: "bore " + f.Name, At: f.At.Up(f.Height), Dir: in.Up(0), Dia: f.Dia, Depth: f.Depth, Chord: chord})
			continue
		}
		g.Cuts = append(g.Cuts, f.cut())
		if f.Lid != (Lid{}) {
			rebate := f.cut()
			rebate.Name, rebate.Region, rebate.Depth = "lid "+f.Name, f.Rebate(), f.Lid.Thick
			g.Cuts = append(g.Cuts, rebate)
		}
	}
	s.Own = g.Solid().Bored(bores...)
	p.Bodies = []Body{{Name: p.ID, Solid: s.Own.Place(s.Pose), Material: s.Species.Name, Density: s.Species.Density, Colour: woodColour(s.Species)}}
}

// Surface is what the faces of the edge are called in the solid.
func (e Edge) Surface() string { return "edge " + e.Name }

func (f Feature) cut() geom.SlabCut {
	c := geom.SlabCut{Name: string(f.Kind) + " " + f.Name, Region: f.Outline, Depth: f.Depth}
	switch {
	case f.Kind == Through || f.Kind == CutOut:
		c.From = geom.CutThrough
	case f.Face == UnderFace:
		c.From = geom.CutFromUnder
	default:
		c.From = geom.CutFromTop
	}
	return c
}

func woodColour(s stock.Species) Colour {
	for word, c := range woodColours {
		if strings.Contains(strings.ToLower(s.Name), word) {
			return c
		}
	}
	return Colour{200, 170, 130}
}
