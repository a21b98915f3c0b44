package step

import (
	"math"
)

// edges writes every vertex and every edge once.
type edges struct {
	*file
	h        *hull
	vertices map[int]ref
	lines    map[pair]ref
	bends    map[bend]ref
}

// solid writes a hull as a solid bounded by its faces.
func (f *file) solid(h *hull, name string) ref {
	e := &edges{f, h, map[int]ref{}, map[pair]ref{}, map[bend]ref{}}
	var faces []ref
	for _, p := range h.flats {
		if !p.gone {
			faces = append(faces, e.plane(p))
		}
	}
	for i := range h.tubes {
		faces = append(faces, e.tube(i))
	}
	return f.put("MANIFOLD_SOLID_BREP", name, f.put("CLOSED_SHELL", "", faces))
}

// plane writes a flat face.
func (e *edges) plane(p flat) ref {
	var bounds []ref
	for i, l := range p.loops {
		var ring []ref
		for k, s := range l {
			if s.bent {
				ring = append(ring, e.oriented(e.arc(s.bend), s.bend.forward))
			} else {
				ring = append(ring, e.line(pair{s.node, l.next(k)}))
			}
		}
		bounds = append(bounds, e.bound(ring, i == 0))
	}
	at := e.h.nodes[p.loops[0][0].node]
	surface := e.put("PLANE", "", e.axes(at, p.normal, frameOf(at, p.normal).u))
	return e.put("ADVANCED_FACE", "", bounds, surface, true)
}

// tube writes a round face.
func (e *edges) tube(i int) ref {
	t := e.h.tubes[i]
	var ring []ref
	for _, b := range t.boundary() {
		if b.bent {
			ring = append(ring, e.oriented(e.arc(b.bend), b.bend.forward))
		} else {
			ring = append(ring, e.line(b.line))
		}
	}
	return e.put("ADVANCED_FACE", "", []ref{e.bound(ring, true)}, e.surface(t), !t.inside)
}

// surface is a cylinder, or a cone that widens along its axis.
func (e *edges) surface(t tube) ref {
	r0, r1 := float64(t.radius[0]), float64(t.radius[1])
	dir, at := t.dir, t.at
	if r0 == r1 {
		return e.put("CYLINDRICAL_SURFACE", "", e.axes(at, dir, frameOf(at, dir).u), r0)
	}
	high := float64(t.rim[1].centre.Sub(t.rim[0].centre).Len())
	if r1 < r0 {
		dir, at, r0, r1 = dir.Mul(-1), t.rim[1].centre, r1, r0
	}
	return e.put("CONICAL_SURFACE", "", e.axes(at, dir, frameOf(at, dir).u), r0, math.Atan2(r1-r0, high))
}

func (e *edges) bound(ring []ref, outer bool) ref {
	keyword := "FACE_BOUND"
	if outer {
		keyword = "FACE_OUTER_BOUND"
	}
	return e.put(keyword, "", e.put("EDGE_LOOP", "", ring), true)
}

func (e *edges) oriented(edge ref, forward bool) ref {
	return e.put("ORIENTED_EDGE", "", raw("*"), raw("*"), edge, forward)
}

func (e *edges) vertex(n int) ref {
	if _, ok := e.vertices[n]; !ok {
		e.vertices[n] = e.put("VERTEX_POINT", "", e.point(e.h.nodes[n]))
	}
	return e.vertices[n]
}

// line is a use of the straight edge between two nodes.
func (e *edges) line(p pair) ref {
	forward := p[0] < p[1]
	if !forward {
		p = pair{p[1], p[0]}
	}
	if _, ok := e.lines[p]; !ok {
		a, b := e.h.nodes[p[0]], e.h.nodes[p[1]]
		curve := e.put("LINE", "", e.point(a), e.put("VECTOR", "", e.direction(b.Sub(a)), 1.0))
		e.lines[p] = e.put("EDGE_CURVE", "", e.vertex(p[0]), e.vertex(p[1]), curve, true)
	}
	return e.oriented(e.lines[p], forward)
}

// arc is the curved edge of a rim: part of a circle, or of an ellipse where the
// plane stands askew to the axis.
func (e *edges) arc(b bend) ref {
	b.forward = true
	if _, ok := e.bends[b]; !ok {
		t := e.h.tubes[b.tube]
		m := t.rim[b.rim]
		r := float64(t.radius[b.rim])
		slope := math.Abs(m.normal.Dot(t.dir))
		var curve ref
		if slope > 1-1e-12 {
			curve = e.put("CIRCLE", "", e.axes(m.centre, m.normal, e.h.nodes[m.from].Sub(m.centre)), r)
		} else {
			far := t.dir.Sub(m.normal.Mul(t.dir.Dot(m.normal))) // the long axis lies under the cylinder's
			curve = e.put("ELLIPSE", "", e.axes(m.centre, m.normal, far), r/slope, r)
		}
		e.bends[b] = e.put("EDGE_CURVE", "", e.vertex(m.from), e.vertex(m.to), curve, true)
	}
	return e.bends[b]
}
