package saw

import (
	"slices"

	"slabwright/model/unit"
)

// End is a side of the piece that lies on the saw.
type End string

// Ends of a piece: left and right across the grain, low and high along it.
const (
	LeftEnd  End = "left"
	RightEnd End = "right"
	LowEdge  End = "low"
	HighEdge End = "high"
)

// Cut is one saw cut right across the piece that lies on the saw. A rip runs
// along the grain. At is the sawn edge of what is measured, from the sheet's
// origin; EndAt is that at the far end where the cut is slanted. The kerf lies
// Above it (to the right of it, or higher), else below. Setting is the distance
// from the reference edge of the piece; a Track is set from the sheet's own
// axes instead, because that edge is not straight or not sawn parallel.
type Cut struct {
	Rip     bool
	Piece   Rect
	At      unit.Length
	EndAt   unit.Length
	Above   bool
	Setting unit.Length
	From    End
	Track   bool
	Frees   []string // parts that are finished with this cut
}

// Slanted says whether the cut is not parallel to a side.
func (c Cut) Slanted() bool { return c.At != c.EndAt }

// sawing turns places into saw cuts in order.
type sawing struct {
	board   *board
	kerf    grid
	stages  int
	names   func(leaf) []string
	leaves  []leaf
	parts   []part
	cuts    []Cut
	offcuts []box
}

// unitOf is a leaf with the wood that goes with it.
type unitOf struct {
	located
	leaf leaf
	in   box
}

// saw parts the whole board; false if no order of through cuts frees all parts.
func (s *sawing) saw(list []located) bool {
	var units []unitOf
	for _, l := range list {
		f := s.leaves[l.leaf]
		u := unitOf{l, f, box{l.x, l.y, l.x + f.l, l.y + f.w}}
		if f.low {
			u.in.y0 = s.board.in.y0
		}
		if f.high {
			u.in.y1 = s.board.in.y1
		}
		units = append(units, u)
	}
	return s.part(units, s.board.in, s.stages, "", -1)
}

// part parts a box with units; via is the cut that made it.
func (s *sawing) part(units []unitOf, in box, stages int, last string, via int) bool {
	switch len(units) {
	case 0:
		s.offcuts = append(s.offcuts, in)
		return true
	case 1:
		return s.free(units[0], in, via)
	}
	if s.trimAll(units, &in) {
		via = len(s.cuts) - 1
	}
	for _, cross := range s.directions(in) {
		left := stages
		name := map[bool]string{true: "cross", false: "rip"}[cross]
		if stages > 0 && last != "" && last != name {
			if left--; left == 0 {
				continue
			}
		}
		for _, at := range s.edges(units, in, cross) {
			a, b := split(units, at, s.kerf, cross)
			mark, off := len(s.cuts), len(s.offcuts)
			first, second := in, in
			if cross {
				first.x1, second.x0 = at, at+s.kerf
			} else {
				first.y1, second.y0 = at, at+s.kerf
			}
			s.add(!cross, in, at, true)
			if s.part(a, first, left, name, mark) && s.part(b, second, left, name, mark) {
				return true
			}
			s.cuts, s.offcuts = s.cuts[:mark], s.offcuts[:off]
		}
	}
	return false
}

// trimAll takes waste off a side along which two or more units end alike: one cut
// for all of them instead of one for each.
func (s *sawing) trimAll(units []unitOf, in *box) (done bool) {
	around := units[0].in
	for _, u := range units {
		around = box{min(around.x0, u.in.x0), min(around.y0, u.in.y0), max(around.x1, u.in.x1), max(around.y1, u.in.y1)}
	}
	touch := map[End]int{}
	for _, u := range units {
		for _, side := range ends4 {
			if line(u.in, side) == line(around, side) {
				touch[side]++
			}
		}
	}
	for _, side := range ends4 {
		if touch[side] > 1 && line(around, side) != line(*in, side) {
			done = s.trimSide(side, around, in) || done
		}
	}
	return done
}

var ends4 = []End{RightEnd, LeftEnd, HighEdge, LowEdge}

// line is where a side of a box lies.
func line(b box, side End) grid {
	switch side {
	case RightEnd:
		return b.x1
	case LeftEnd:
		return b.x0
	case HighEdge:
		return b.y1
	}
	return b.y0
}

// directions tries cross cuts first on what is longer than wide.
func (s *sawing) directions(in box) []bool {
	cross := in.x1-in.x0 >= in.y1-in.y0
	return []bool{cross, !cross}
}

// edges lists where a cut right across parts the units.
func (s *sawing) edges(units []unitOf, in box, cross bool) []grid {
	var out []grid
	for _, u := range units {
		at := u.in.x1
		if !cross {
			at = u.in.y1
		}
		at = s.board.clear(at, s.kerf, in, cross)
		a, b := split(units, at, s.kerf, cross)
		if len(a) > 0 && len(b) > 0 && len(a)+len(b) == len(units) {
			out = append(out, at)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func split(units []unitOf, at, kerf grid, cross bool) (a, b []unitOf) {
	for _, u := range units {
		lo, hi := u.in.x0, u.in.x1
		if !cross {
			lo, hi = u.in.y0, u.in.y1
		}
		switch {
		case hi <= at:
			a = append(a, u)
		case lo >= at+kerf:
			b = append(b, u)
		}
	}
	return a, b
}

// add notes a cut of a box; above: what is measured lies below the kerf.
func (s *sawing) add(rip bool, in box, at grid, above bool) {
	c := Cut{Rip: rip, Piece: rectOf(in), At: ofGrid(at), EndAt: ofGrid(at), Above: above}
	lo, hi, from, far := in.x0, in.x1, LeftEnd, RightEnd
	if rip {
		lo, hi, from, far = in.y0, in.y1, LowEdge, HighEdge
	}
	c.From, c.Setting = from, ofGrid(at-lo)
	if !above {
		c.From, c.Setting = far, ofGrid(hi-at)
	}
	c.Track = rip && (above && s.rough(in.y0, s.board.in.y0, s.board.naturalLo, s.board.lo) || !above && s.rough(in.y1, s.board.in.y1, s.board.naturalHi, s.board.hi))
	s.cuts = append(s.cuts, c)
}

// rough says whether an edge of a piece is still that of the board and not
// straight.
func (s *sawing) rough(y, outer grid, natural bool, edge []point) bool {
	return y == outer && (natural || !level(edge))
}

func rectOf(b box) Rect {
	return Rect{ofGrid(b.x0), ofGrid(b.y0), ofGrid(b.x1 - b.x0), ofGrid(b.y1 - b.y0)}
}

// free saws one unit out of its box: the order in which no cut meets a keep-out.
func (s *sawing) free(u unitOf, in box, via int) bool {
	var sides []End
	for _, side := range ends4 {
		if line(u.in, side) != line(in, side) {
			sides = append(sides, side)
		}
	}
	mark, off := len(s.cuts), len(s.offcuts)
	for _, row := range permutations(sides) {
		if s.trim(u, in, row) {
			if len(row) > 0 {
				via = len(s.cuts) - 1
			}
			s.finish(u, via)
			return true
		}
		s.cuts, s.offcuts = s.cuts[:mark], s.offcuts[:off]
	}
	return false
}

func permutations(list []End) [][]End {
	if len(list) == 0 {
		return [][]End{nil}
	}
	var out [][]End
	for i, e := range list {
		rest := slices.Delete(slices.Clone(list), i, i+1)
		for _, p := range permutations(rest) {
			out = append(out, append([]End{e}, p...))
		}
	}
	return out
}

// trim cuts waste off the sides of a unit; false if a cut meets a keep-out.
func (s *sawing) trim(u unitOf, in box, sides []End) bool {
	for _, side := range sides {
		if !s.trimSide(side, u.in, &in) {
			return false
		}
	}
	return true
}

// trimSide cuts what lies beyond one side of a rectangle off a box; false, and no
// cut, if that meets a keep-out.
func (s *sawing) trimSide(side End, keep box, in *box) bool {
	rip := side == LowEdge || side == HighEdge
	above := side == RightEnd || side == HighEdge
	at := line(keep, side)
	from, waste, rest := at, *in, *in
	switch side {
	case RightEnd:
		rest.x1, waste.x0 = at, at+s.kerf
	case LeftEnd:
		from = at - s.kerf
		rest.x0, waste.x1 = at, from
	case HighEdge:
		rest.y1, waste.y0 = at, at+s.kerf
	case LowEdge:
		from = at - s.kerf
		rest.y0, waste.y1 = at, from
	}
	if s.board.clear(from, s.kerf, *in, !rip) != from {
		return false
	}
	s.add(rip, *in, at, above)
	if waste.x1 > waste.x0 && waste.y1 > waste.y0 {
		s.offcuts = append(s.offcuts, waste)
	}
	*in = rest
	return true
}

// finish names what a cut frees; a pair is parted by one more, slanted cut.
func (s *sawing) finish(u unitOf, via int) {
	names := s.names(u.leaf)
	if u.leaf.mate >= 0 {
		s.add(true, u.in, 0, true)
		c := &s.cuts[len(s.cuts)-1]
		p := s.parts[u.leaf.part]
		slope := float64(p.end-p.w) / float64(p.l)
		c.At = ofGrid(u.y) + unit.Length((float64(p.w)-slope*float64(u.leaf.at))/1000)
		c.EndAt = c.At + unit.Length(slope*float64(u.leaf.l)/1000)
		c.Setting, c.Frees = c.At-ofGrid(u.in.y0), names
		return
	}
	if p := s.parts[u.leaf.part]; p.w != p.end && !u.leaf.across {
		s.taper(u, p)
		via = len(s.cuts) - 1
	}
	if via >= 0 {
		s.cuts[via].Frees = append(s.cuts[via].Frees, names...)
	}
}

// taper adds the slanted cut of a part that tapers.
func (s *sawing) taper(u unitOf, p part) {
	s.add(true, u.in, 0, !u.leaf.turned)
	c := &s.cuts[len(s.cuts)-1]
	if u.leaf.turned {
		c.At, c.EndAt = ofGrid(u.in.y1-p.end), ofGrid(u.in.y1-p.w)
		c.Setting = ofGrid(p.end)
		return
	}
	c.At, c.EndAt = ofGrid(u.in.y0+p.w), ofGrid(u.in.y0+p.end)
	c.Setting = ofGrid(p.w)
}
