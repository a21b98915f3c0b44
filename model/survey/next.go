package survey

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

const (
	// short is the longest offset that is squared off a line by eye, and the
	// shortest worth measuring. Common practice, no source.
	short, tiny unit.Length = 1000, 30
)

// possible lists the readings that a person with a tape, a string and a pencil
// could take, whether taken already or not: distances, offsets from walls and
// from the base, 3-4-5 marks in inside corners, widths between side walls.
func (r *Result) possible() []Reading {
	s := r.system
	out := r.widths()
	for i, a := range s.names {
		for _, b := range s.names[i+1:] {
			out = append(out, Reading{Kind: Distance, Points: []Point{a, b}})
		}
	}
	for _, c := range s.inner() {
		if rd, ok := r.squareOff(c); ok {
			out = append(out, rd)
		}
	}
	return append(out, r.offsets()...)
}

// lines lists the walls and, where it is none, the base.
func (s *system) lines() []wall {
	out := s.walls()
	if s.base.from < 0 || slices.Contains(out, s.base) {
		return out
	}
	return append(out, s.base)
}

// widths are measured at the back, in the middle and at the front of the base
// and of every recess, at depths that a person would choose.
func (r *Result) widths() []Reading {
	var out []Reading
	for _, line := range r.system.lines() {
		left, right, deep := r.niche(line)
		if line != r.system.base && !r.recess(line) || deep < 2*tiny {
			continue
		}
		for _, share := range []float64{0.95, 0.5, 0.1} {
			depth := 10 * math.Floor(share*min(float64(reach), float64(deep))/10)
			if depth > 0 && !r.widthTaken(line, unit.Length(depth), deep/10) {
				out = append(out, r.system.widthAt(line, left, right, unit.Length(depth)))
			}
		}
	}
	return out
}

// widthTaken says whether a width before a line was measured near some depth.
func (r *Result) widthTaken(line wall, depth, near unit.Length) bool {
	for _, w := range r.system.rows {
		if w.kind == Width && w.points[0] == line.from && w.points[1] == line.to && math.Abs(w.a-float64(depth)) < float64(near) {
			return true
		}
	}
	return false
}

// marks of a 3-4-5, the larger first: the larger they are the better.
var marks = [][2]unit.Length{{800, 600}, {400, 300}}

// squareOff is the largest 3-4-5 that the walls at an inside corner leave room
// for.
func (r *Result) squareOff(c int) (Reading, bool) {
	s := r.system
	a, b := s.previous(c), s.next(c)
	if s.turnOf(r.x, c, roughPlay) != Inside {
		return Reading{}, false
	}
	left, right := point(r.x, a).Sub(point(r.x, c)).Len(), point(r.x, b).Sub(point(r.x, c)).Len()
	for _, m := range marks {
		rd := Reading{Kind: SquareOff, Points: []Point{s.names[a], s.names[c], s.names[b]}, A: m[0], B: m[1]}
		if left < right {
			rd.A, rd.B = m[1], m[0]
		}
		if rd.A <= left && rd.B <= right {
			return rd, true
		}
	}
	return Reading{}, false
}

// offsets are measured square from a wall or the base to a corner near it, with
// the foot on the line.
func (r *Result) offsets() []Reading {
	s := r.system
	var out []Reading
	for _, line := range s.lines() {
		a, b := point(r.x, line.from), point(r.x, line.to)
		along := b.Sub(a).Unit()
		for p := range s.names {
			if p == line.from || p == line.to {
				continue
			}
			v := point(r.x, p).Sub(a)
			off, foot := math.Abs(along.Cross(v)), along.Dot(v)
			if off < float64(tiny) || off > float64(short) || foot < 0 || foot > float64(b.Sub(a).Len()) {
				continue
			}
			out = append(out, Reading{Kind: Offset, Points: []Point{s.names[p], s.names[line.from], s.names[line.to]}})
		}
	}
	return out
}
