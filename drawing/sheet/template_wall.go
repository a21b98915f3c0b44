package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// wallBand is how far the strokes of a wall go behind its face.
const wallBand unit.Length = 5

// wallLines draws a face as a line with short strokes behind it; the room is
// to the right of its course.
func wallLines(face []geom.Vec) []drawing.Item {
	out := []drawing.Item{drawing.Polyline{Points: face, Pen: drawing.Pen{Width: 0.5}}}
	const pitch unit.Length = 3.5
	next := pitch / 2
	for i := 1; i < len(face); i++ {
		d := face[i].Sub(face[i-1])
		u, l := d.Unit(), d.Len()
		back := u.Left().Sub(u).Mul(float64(wallBand))
		for ; next < l; next += pitch {
			p := face[i-1].Add(u.Mul(float64(next)))
			out = append(out, drawing.Line(p, p.Add(back), drawing.Dense.Fine()))
		}
		next -= l
	}
	return out
}

// ownFace is the face of a wall at a height, in the axes of a slab, between the
// corners where its neighbours meet it.
func ownFace(w *model.Wall, s *model.SlabPart, z unit.Length) []geom.Vec {
	face := w.Face(z)
	if c, ok := cornerBetween(w.Previous(), w, z); ok {
		face[0] = c
	}
	if c, ok := cornerBetween(w, w.Next(), z); ok {
		face[len(face)-1] = c
	}
	for i, p := range face {
		face[i] = s.Pose.Unplan(p)
	}
	return face
}

// cornerBetween is where two neighbouring walls meet at a height.
func cornerBetween(a, b *model.Wall, z unit.Length) (geom.Vec, bool) {
	if a == nil || b == nil {
		return geom.Vec{}, false
	}
	return a.LineAt(z).Meet(b.LineAt(z))
}

// upTo gives a chain as far as it stays within a distance along a direction
// from its first point.
func upTo(chain []geom.Vec, dir geom.Vec, limit unit.Length) []geom.Vec {
	out := chain[:1:1]
	far := func(p geom.Vec) unit.Length { return unit.Length(p.Sub(chain[0]).Dot(dir)) }
	for i := 1; i < len(chain); i++ {
		a, b := chain[i-1], chain[i]
		if far(b) > limit {
			if run := far(b) - far(a); run > 0 {
				out = append(out, a.Lerp(b, float64((limit-far(a))/run)))
			}
			break
		}
		out = append(out, b)
	}
	return out
}

func reversed(chain []geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(chain))
	for i, p := range chain {
		out[len(chain)-1-i] = p
	}
	return out
}

func shiftedBy(chain []geom.Vec, by geom.Vec) []geom.Vec {
	return mapped(chain, func(p geom.Vec) geom.Vec { return p.Add(by) })
}

// distanceTo is the distance of a point from a chain.
func distanceTo(chain []geom.Vec, p geom.Vec) unit.Length {
	best := unit.Length(math.Inf(1))
	for i := 1; i < len(chain); i++ {
		d := chain[i].Sub(chain[i-1])
		t := 0.0
		if q := d.Dot(d); q > 0 {
			t = min(max(p.Sub(chain[i-1]).Dot(d)/q, 0), 1)
		}
		best = min(best, chain[i-1].Add(d.Mul(t)).Sub(p).Len())
	}
	return best
}
