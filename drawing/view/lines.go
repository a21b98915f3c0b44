package view

import "slabwright/model/geom"

// Line is a chain of segments that are drawn in one go, so that dashes run on
// over its corners. Of a closed line the last point joins the first.
type Line struct {
	Points []geom.Vec
	Closed bool
	Stroke
}

// Lines joins the segments of equal stroke into chains. A chain ends where
// more than two of them meet. The order is that of the segments.
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

func chains(out []Line, segs []Segment) []Line {
	ends := map[geom.Vec][]int{}
	for i, s := range segs {
		ends[s.A] = append(ends[s.A], i)
		ends[s.B] = append(ends[s.B], i)
	}
	used := make([]bool, len(segs))
	// follow walks on from a point as long as exactly two segments meet.
	follow := func(i int, p geom.Vec) []geom.Vec {
		pts := []geom.Vec{p}
		for {
			used[i] = true
			if segs[i].A == p {
				p = segs[i].B
			} else {
				p = segs[i].A
			}
			pts = append(pts, p)
			if len(ends[p]) != 2 {
				return pts
			}
			if i = ends[p][0] + ends[p][1] - i; used[i] {
				return pts
			}
		}
	}
	found := map[int]Line{} // by the first segment of the line
	for i, s := range segs {
		for _, p := range []geom.Vec{s.A, s.B} {
			if !used[i] && len(ends[p]) != 2 {
				found[i] = Line{Points: follow(i, p), Stroke: s.Stroke}
			}
		}
	}
	for i, s := range segs {
		if !used[i] {
			pts := follow(i, s.A)
			found[i] = Line{Points: pts[:len(pts)-1], Closed: true, Stroke: s.Stroke}
		}
		if l, ok := found[i]; ok {
			out = append(out, l)
		}
	}
	return out
}
