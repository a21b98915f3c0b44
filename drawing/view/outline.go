package view

import "slabwright/model/geom"

// Outline is the border of the area that a closed skin covers in the view, for
// balloons and for keeping texts clear: outlines run counter-clockwise, holes
// clockwise. A section look gives the outline of what is left of the skin.
func (l Look) Outline(faces []geom.Face) [][]geom.Vec {
	s := Scene{[]Item{{Faces: faces}}}
	skin := project(s, l)
	var lines []piece
	if l.cuts {
		skin, lines, _ = section(skin)
	}
	rims := edges(skin)
	for _, p := range lines {
		rims = append(rims, edge{p.a, p.b, p.stroke})
	}
	h := newHider(s, skin)
	lines = lines[:0]
	for _, e := range rims {
		lines = h.rim(lines, e)
	}
	return loops(coincide(lines, s))
}

// rim appends the stretches of an edge along which there is a face on one side
// only, directed so that the face is on the left.
func (h *hider) rim(out []piece, e edge) []piece {
	if drawn(e.a, e.b) < online {
		return out
	}
	h.cover(e.a, e.b, false)
	h.free = minus(h.free[:0], h.left, h.right)
	out = stretches(out, e, Visible, h.free)
	h.free = minus(h.free[:0], h.right, h.left)
	n := len(out)
	out = stretches(out, e, Visible, h.free)
	for i := n; i < len(out); i++ {
		out[i].a, out[i].b = out[i].b, out[i].a
	}
	return out
}

// loops chains directed lines. What does not close within a few hundredths of
// a millimetre is left out.
func loops(lines []piece) [][]geom.Vec {
	k := newKnots(len(lines))
	var seams []seam
	for _, p := range lines {
		if a, b := k.at(p.a), k.at(p.b); a != b {
			seams = append(seams, seam{from: k.points[b], to: k.points[a]})
		}
	}
	return flatten(chain(seams))
}
