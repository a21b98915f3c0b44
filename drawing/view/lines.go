package view

import (
	"math"

	"slabwright/model/geom"
)

// Line is a chain of segments that are drawn in one go, so that dashes run on
// over its corners. Of a closed line the last point joins the first.
type Line struct {
	Points []geom.Vec
	Closed bool
	Stroke
}

// Lines joins the segments of equal stroke into chains. A chain ends where
// more than two of them meet, and round a curved surface at sharp corners, so
// that a natural edge is a line of its own. The order is that of the segments.
func (v View) Lines() []Line {
	var out []Line
	for rest := v.Segments; len(rest) > 0; {
		n := 1
		for n < len(rest) && rest[n].Stroke == rest[0].Stroke {
			n++
		}
		out = chains(out, rest[:n])
		rest = rest[n:]
	}
	return out
}

// corner is the bend at which a line round a curved surface counts as broken:
// the surface has an end there.
const corner = 50 * math.Pi / 180 // rad

func chains(out []Line, segs []Segment) []Line {
	ends := map[geom.Vec][]int{}
	for i, s := range segs {
		ends[s.A] = append(ends[s.A], i)
		ends[s.B] = append(ends[s.B], i)
	}
	// after gives the segment that carries segment i on beyond its end p.
	after := func(i int, p geom.Vec) (int, bool) {
		if len(ends[p]) != 2 {
			return 0, false
		}
		j := ends[p][0] + ends[p][1] - i
		if !segs[i].Curved {
			return j, true
		}
		d, e := p.Sub(segs[i].other(p)).Unit(), segs[j].other(p).Sub(p).Unit()
		return j, d.Dot(e) > math.Cos(corner)
	}
	used := make([]bool, len(segs))
	follow := func(i int, p geom.Vec) Line {
		l := Line{Points: []geom.Vec{p}, Stroke: segs[i].Stroke}
		for first := i; ; {
			used[i] = true
			p = segs[i].other(p)
			j, on := after(i, p)
			if on && j == first && len(l.Points) > 2 {
				l.Closed = true
				return l
			}
			l.Points = append(l.Points, p)
			if !on || used[j] {
				return l
			}
			i = j
		}
	}
	found := map[int]Line{} // by the first segment of the line
	for i, s := range segs {
		for _, p := range []geom.Vec{s.A, s.B} {
			if _, on := after(i, p); !on && !used[i] {
				found[i] = follow(i, p)
			}
		}
	}
	for i, s := range segs {
		if !used[i] {
			found[i] = follow(i, s.A)
		}
		if l, ok := found[i]; ok {
			out = append(out, l)
		}
	}
	return out
}

// other is the end of the segment that is not p.
func (s Segment) other(p geom.Vec) geom.Vec {
	if s.A == p {
		return s.B
	}
	return s.A
}
