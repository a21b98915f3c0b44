package geom

import "slices"

// seg is a directed segment of the grid. Crossing it from its right to its
// left adds delta to the winding number of its owner.
type seg struct {
	a, b         pt
	owner, delta int32
	group        int32 // segments of one group are known not to cross each other
	fresh        bool  // not yet compared with the others, whatever its group
}

// cut is a point at which a segment must be split.
type cut struct {
	seg int32
	at  pt
}

// planarize splits the segments until they meet in end points only. Crossings
// are rounded to the grid, which may move a segment over a neighbour less than
// a step away, so it goes round until nothing is left to split. Every split
// point lies in the box of its segment and in order along it, so the sum of
// |dx|+|dy| never grows while each piece keeps at least one step of it: the
// rounds come to an end.
func planarize(segs []seg) []seg {
	for first := true; ; first = false {
		cuts := findCuts(segs, first)
		if len(cuts) == 0 {
			return segs
		}
		segs = split(segs, cuts)
	}
}

// box is the extent of a segment; coordinates fit 32 bits.
type box struct{ x0, x1, y0, y1, seg int32 }

// findCuts compares all segments whose boxes meet, sweeping from left to right.
func findCuts(segs []seg, first bool) []cut {
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
	var cuts []cut
	var active [2][]box // what the sweep line crosses: news, and segments compared before
	for _, b := range boxes {
		e := &segs[b.seg]
		old := 0
		if !first && !e.fresh {
			old = 1
		}
		for k := range 2 - old {
			kept := active[k][:0]
			for _, o := range active[k] {
				if o.x1 < b.x0 {
					continue
				}
				kept = append(kept, o)
				if o.y1 < b.y0 || o.y0 > b.y1 {
					continue
				}
				f := &segs[o.seg]
				if e.fresh || f.fresh || e.group != f.group {
					cuts = compareSegs(cuts, e, f, b.seg, o.seg)
				}
			}
			active[k] = kept
		}
		active[old] = append(active[old], b)
	}
	return cuts
}

// compareSegs adds the points where e and f cut each other.
func compareSegs(cuts []cut, e, f *seg, ei, fi int32) []cut {
	fa, fb := orient(e.a, e.b, f.a), orient(e.a, e.b, f.b)
	if fa > 0 && fb > 0 || fa < 0 && fb < 0 {
		return cuts
	}
	ea, eb := orient(f.a, f.b, e.a), orient(f.a, f.b, e.b)
	if ea > 0 && eb > 0 || ea < 0 && eb < 0 {
		return cuts
	}
	if fa != 0 && fb != 0 && ea != 0 && eb != 0 {
		p := crossing(e.a, e.b, f.a, f.b)
		if p != e.a && p != e.b {
			cuts = append(cuts, cut{ei, p})
		}
		if p != f.a && p != f.b {
			cuts = append(cuts, cut{fi, p})
		}
		return cuts
	}
	if fa == 0 && between(f.a, e.a, e.b) {
		cuts = append(cuts, cut{ei, f.a})
	}
	if fb == 0 && between(f.b, e.a, e.b) {
		cuts = append(cuts, cut{ei, f.b})
	}
	if ea == 0 && between(e.a, f.a, f.b) {
		cuts = append(cuts, cut{fi, e.a})
	}
	if eb == 0 && between(e.b, f.a, f.b) {
		cuts = append(cuts, cut{fi, e.b})
	}
	return cuts
}

// split replaces every cut segment by its pieces, which are fresh again.
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
		s.fresh = false
		if len(cuts) == 0 || cuts[0].seg != int32(i) {
			out = append(out, s)
			continue
		}
		s.fresh = true
		end := s.b
		for len(cuts) > 0 && cuts[0].seg == int32(i) {
			if p := cuts[0].at; p != s.a {
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
