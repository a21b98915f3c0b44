package geom

import "slices"

// seg is a directed segment of the grid. Crossing it from its right to its
// left adds delta to the winding number of its owner.
type seg struct {
	a, b         pt
	owner, delta int32
}

// cut is a point a segment must be led through.
type cut struct {
	seg int32
	at  pt
}

// planarize cuts the segments up so that they meet in end points only, by snap
// rounding: crossings are rounded to the grid, and every segment that passes
// through the pixel of an end point or of a rounded crossing is led through
// its centre. Nothing moves by more than half a step in x or y, no piece
// crosses another and none passes through a vertex, so once is enough.
// (J. D. Hobby, Practical segment intersection with finite precision output,
// Computational Geometry 13, 1999.)
func planarize(segs []seg) []seg {
	boxes := make([]box, len(segs))
	for i, s := range segs {
		boxes[i] = box{
			int32(min(s.a.x, s.b.x)), int32(max(s.a.x, s.b.x)),
			int32(min(s.a.y, s.b.y)), int32(max(s.a.y, s.b.y)), int32(i),
		}
	}
	slices.SortFunc(boxes, func(p, q box) int {
		if p.x0 != q.x0 {
			return int(p.x0) - int(q.x0)
		}
		return int(p.seg) - int(q.seg)
	})
	cuts, crossings := meetings(segs, boxes)
	return split(segs, passings(segs, boxes, crossings, cuts))
}

// box is the extent of a segment; coordinates fit 32 bits.
type box struct{ x0, x1, y0, y1, seg int32 }

// meetings compares all segments whose boxes meet, sweeping from left to right,
// for crossings and for end points in the way of others.
func meetings(segs []seg, boxes []box) (cuts []cut, crossings []pt) {
	var active []box
	for _, b := range boxes {
		e := &segs[b.seg]
		kept := active[:0]
		for _, o := range active {
			if o.x1 < b.x0 {
				continue
			}
			kept = append(kept, o)
			if o.y1 < b.y0 || o.y0 > b.y1 {
				continue
			}
			f := &segs[o.seg]
			fa, fb := orient(e.a, e.b, f.a), orient(e.a, e.b, f.b)
			ea, eb := orient(f.a, f.b, e.a), orient(f.a, f.b, e.b)
			if (fa > 0 && fb < 0 || fa < 0 && fb > 0) && (ea > 0 && eb < 0 || ea < 0 && eb > 0) {
				p := crossing(e.a, e.b, f.a, f.b)
				crossings = append(crossings, p)
				cuts = append(cuts, cut{b.seg, p}, cut{o.seg, p})
			}
			if e.passes(f.a, fa) {
				cuts = append(cuts, cut{b.seg, f.a})
			}
			if e.passes(f.b, fb) {
				cuts = append(cuts, cut{b.seg, f.b})
			}
			if f.passes(e.a, ea) {
				cuts = append(cuts, cut{o.seg, e.a})
			}
			if f.passes(e.b, eb) {
				cuts = append(cuts, cut{o.seg, e.b})
			}
		}
		active = append(kept, b)
	}
	return cuts, crossings
}

// passings adds the cuts of all segments that pass through the pixels of
// crossings, among them those of other segments.
func passings(segs []seg, boxes []box, crossings []pt, cuts []cut) []cut {
	slices.SortFunc(crossings, compare)
	var active []box
	for _, p := range slices.Compact(crossings) {
		x, y := int32(p.x), int32(p.y)
		for len(boxes) > 0 && boxes[0].x0 <= x {
			active = append(active, boxes[0])
			boxes = boxes[1:]
		}
		kept := active[:0]
		for _, o := range active {
			if o.x1 < x {
				continue
			}
			kept = append(kept, o)
			if y < o.y0 || o.y1 < y {
				continue
			}
			if s := &segs[o.seg]; s.passes(p, orient(s.a, s.b, p)) {
				cuts = append(cuts, cut{o.seg, p})
			}
		}
		active = kept
	}
	return cuts
}

// passes tells whether the segment passes through the pixel of p, the square
// of one step around it without its upper and right-hand sides, on the way
// between its end points; o is orient(s.a, s.b, p).
func (s *seg) passes(p pt, o int64) bool {
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	size := max(dx, -dx) + max(dy, -dy)
	if o > size/2 || -o > size/2 || p == s.a || p == s.b ||
		p.x < min(s.a.x, s.b.x) || p.x > max(s.a.x, s.b.x) || p.y < min(s.a.y, s.b.y) || p.y > max(s.a.y, s.b.y) {
		return false
	}
	// It touches a corner of the pixel at most, if 2|o| = size. Of the four
	// the lower left one belongs to the pixel; a falling segment may touch it.
	if dx < 0 {
		o = -o
	}
	return 2*o < size && -2*o < size || 2*o == size && (dx < 0) != (dy < 0)
}

// split replaces every cut segment by its pieces. Snapped points stay in order
// along the segment, to the right or left and up or down alike.
func split(segs []seg, cuts []cut) []seg {
	slices.SortFunc(cuts, func(p, q cut) int {
		if p.seg != q.seg {
			return int(p.seg) - int(q.seg)
		}
		a := segs[p.seg].a
		return int(apart(a, p.at) - apart(a, q.at))
	})
	out := make([]seg, 0, len(segs)+len(cuts))
	for i, s := range segs {
		end := s.b
		for len(cuts) > 0 && cuts[0].seg == int32(i) {
			if p := cuts[0].at; p != s.a && p != end {
				s.b = p
				out = append(out, s)
				s.a = p
			}
			cuts = cuts[1:]
		}
		s.b = end
		out = append(out, s)
	}
	return out
}

// apart is |dx|+|dy|.
func apart(a, b pt) int64 { return max(a.x-b.x, b.x-a.x) + max(a.y-b.y, b.y-a.y) }
