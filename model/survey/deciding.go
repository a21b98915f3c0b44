package survey

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Deciding is a measure of the room on which the fit of a part hangs: what a
// reading of that kind would give. An angle decides by how far it moves the
// end of an arm of that length.
type Deciding struct {
	Name    string
	Reading Reading
	Arm     unit.Length
}

const (
	// reach is how far from the base a worktop is taken to extend, and atBack
	// how far off the base its back width counts. Common practice, no source.
	reach  unit.Length = 800
	atBack unit.Length = 50
	// shallow recesses have no side walls to speak of.
	shallow unit.Length = 20
)

// Deciding lists the measures that decide the fit of a part that lies along
// the base: the widths between the side walls at the back and at the front and
// the slant of these walls, the same for every recess, and for a base that is
// not one wall the lengths along it and the corners that stand off it. Where
// nothing of that kind is, the lengths of all walls decide.
func (r *Result) Deciding() []Deciding {
	s := r.system
	var out []Deciding
	if s.base.from >= 0 {
		out = append(out, r.between(s.base)...)
		out = append(out, r.alongBase()...)
	}
	for _, w := range s.walls() {
		if w != s.base && r.recess(w) {
			out = append(out, r.between(w)...)
		}
	}
	if len(out) == 0 {
		for _, w := range s.walls() {
			out = append(out, s.lengthOf(w))
		}
	}
	return out
}

func (s *system) lengthOf(w wall) Deciding {
	return Deciding{Name: "length " + s.nameOf(w), Reading: Reading{Kind: Distance, Points: []Point{s.names[w.from], s.names[w.to]}}}
}

func (s *system) nameOf(w wall) string { return string(s.names[w.from] + "-" + s.names[w.to]) }

// recess says whether a wall lies between two inside corners, one of which is
// next to an outside corner: the back of a niche, the wall beside a breast.
func (r *Result) recess(w wall) bool {
	turn := func(p int) Turn {
		if p < 0 || r.system.previous(p) < 0 || r.system.next(p) < 0 {
			return NotTold
		}
		return r.system.turnOf(r.x, p, roughPlay)
	}
	beyond := turn(r.system.previous(w.from)) == Outside || turn(r.system.next(w.to)) == Outside
	return beyond && turn(w.from) == Inside && turn(w.to) == Inside
}

// niche is a line between two side walls: their far corners and how deep both
// reach into the room, square to the line; 0 if there are no two.
func (r *Result) niche(line wall) (left, right int, deep unit.Length) {
	s := r.system
	left, right = s.previous(line.from), s.next(line.to)
	if left < 0 || right < 0 || left == right || left == line.to || right == line.from {
		return left, right, 0
	}
	a, b := point(r.x, line.from), point(r.x, line.to)
	along := b.Sub(a).Unit()
	off := func(p int) unit.Length { return unit.Length(-along.Cross(point(r.x, p).Sub(a))) }
	return left, right, max(0, min(off(left), off(right)))
}

// between lists what decides the fit between the side walls of a line.
func (r *Result) between(line wall) []Deciding {
	left, right, deep := r.niche(line)
	front := unit.Length(math.Floor(min(float64(reach), 0.95*float64(deep))))
	if front < shallow {
		return nil
	}
	var out []Deciding
	for _, depth := range []unit.Length{min(atBack, front/4), front} {
		out = append(out, Deciding{
			Name:    fmt.Sprintf("width %.0f mm before %s", float64(depth), r.system.nameOf(line)),
			Reading: r.system.widthAt(line, left, right, depth),
		})
	}
	slant := func(side wall, a, at, b int) Deciding {
		n := r.system.names
		return Deciding{
			Name:    fmt.Sprintf("slant of %s over %.0f mm", r.system.nameOf(side), float64(front)),
			Reading: Reading{Kind: Angle, Points: []Point{n[a], n[at], n[b]}}, Arm: front,
		}
	}
	return append(out, slant(wall{left, line.from}, left, line.from, line.to), slant(wall{line.to, right}, line.from, line.to, right))
}

// widthAt is the width between the side walls of a line at some depth.
func (s *system) widthAt(line wall, left, right int, depth unit.Length) Reading {
	a, b := s.names[line.from], s.names[line.to]
	return Reading{Kind: Width, Points: []Point{a, b, s.names[left], a, b, s.names[right]}, A: depth}
}

// alongBase lists what decides about the corners between the ends of a base
// that is not one wall: the walls that run along it and how far each corner
// stands off it.
func (r *Result) alongBase() []Deciding {
	s := r.system
	a, b := s.base.from, s.base.to
	dir := point(r.x, b).Sub(point(r.x, a)).Unit()
	var out []Deciding
	for p := a; p != b; {
		q := s.next(p)
		if q < 0 || q == a || s.next(a) == b {
			return nil // one wall, or named from right to left
		}
		if w := point(r.x, q).Sub(point(r.x, p)).Unit(); math.Abs(dir.Cross(w)) < math.Sin(float64(20*unit.Degree)) {
			out = append(out, s.lengthOf(wall{p, q}))
		}
		if q != b {
			out = append(out, Deciding{
				Name:    fmt.Sprintf("%s off the line %s", s.names[q], s.nameOf(s.base)),
				Reading: Reading{Kind: Offset, Points: []Point{s.names[q], s.names[a], s.names[b]}},
			})
		}
		p = q
	}
	return out
}
