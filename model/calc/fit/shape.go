package fit

import (
	"errors"
	"math"
	"slices"

	"slabwright/model/unit"
)

// Reach is where a side wall stands at a depth, both in the part's own axes:
// Depth from the back, At along the back.
type Reach struct{ Depth, At unit.Length }

// Form is how a part between two walls is best cut.
type Form string

// The forms. Scribe: the walls are too uneven for straight ends.
const (
	Rectangle Form = "rectangle"
	Trapezoid Form = "trapezoid"
	Scribe    Form = "scribe"
)

// Shape is how the space between two side walls looks to a part.
type Shape struct {
	Form     Form
	Clear    unit.Length // what a rectangle finds that lies parallel to the back
	Narrow   unit.Length // least and greatest width between the walls
	Wide     unit.Length
	Open     unit.Length // how much both ends of that rectangle together show at most
	Limit    unit.Length // what both may show
	Uneven   unit.Length // how far the walls stand off straight lines within the part
	Turn     unit.Angle  // turned so, counter-clockwise, a rectangle finds nearly the least width
	TurnOpen unit.Length // and leaves this wedge along the back
}

// visible is how much wider than planned one joint may show; common practice,
// no source.
const visible unit.Length = 4

// Visible is how much wider than planned a joint may show without a scribed
// edge, 4 mm: common practice, no source.
func Visible() unit.Length { return visible }

// ShapeOf compares two side walls, each with two places at least, in order of
// depth; the left one is at the lesser At.
func ShapeOf(left, right []Reach) (Shape, error) {
	if len(left) < 2 || len(right) < 2 {
		return Shape{}, errors.New("a shape needs two places on either wall")
	}
	for _, r := range slices.Concat(left, right) {
		if !finite(float64(r.Depth), float64(r.At)) {
			return Shape{}, errors.New("a wall that is nowhere")
		}
	}
	s := Shape{Limit: 2 * visible, Narrow: unit.Length(math.Inf(1)), Wide: unit.Length(math.Inf(-1))}
	inner, outer := unit.Length(math.Inf(-1)), unit.Length(math.Inf(1))
	for _, l := range left {
		inner = max(inner, l.At)
	}
	for _, r := range right {
		outer = min(outer, r.At)
	}
	s.Clear = outer - inner
	for _, d := range slices.Concat(left, right) {
		w := at(right, d.Depth) - at(left, d.Depth)
		s.Narrow, s.Wide = min(s.Narrow, w), max(s.Wide, w)
	}
	s.Open = s.Wide - s.Clear
	l, r := slope(left), slope(right)
	s.Uneven = max(uneven(left), uneven(right))
	s.Turn = unit.Angle(math.Atan((l + r) / 2))
	s.TurnOpen = unit.Length(float64(s.Narrow) * math.Abs(math.Sin(float64(s.Turn))))
	switch {
	case s.Uneven > s.Limit/2:
		s.Form = Scribe
	case s.Open <= s.Limit:
		s.Form = Rectangle
	default:
		s.Form = Trapezoid
	}
	return s, nil
}

// at is where a wall stands at a depth, between its places and straight on
// beyond them.
func at(wall []Reach, depth unit.Length) unit.Length {
	i := 1
	for i < len(wall)-1 && wall[i].Depth < depth {
		i++
	}
	a, b := wall[i-1], wall[i]
	if a.Depth == b.Depth {
		return b.At
	}
	return a.At + (b.At-a.At)*(depth-a.Depth)/(b.Depth-a.Depth)
}

// slope is how far the wall goes along the back per depth, from end to end.
func slope(wall []Reach) float64 {
	a, b := wall[0], wall[len(wall)-1]
	if a.Depth == b.Depth {
		return 0
	}
	return float64((b.At - a.At) / (b.Depth - a.Depth))
}

// uneven is how far the wall stands off the line between its ends.
func uneven(wall []Reach) unit.Length {
	most := 0.0
	for _, r := range wall {
		line := float64(wall[0].At) + slope(wall)*float64(r.Depth-wall[0].Depth)
		most = max(most, math.Abs(float64(r.At)-line))
	}
	return unit.Length(most)
}

// OverWood is how much an edge must be left longer to be scribed: the bow that
// it meets, what an error of the angle makes over its length, twice the spread
// of its gap, and 2 mm for saw and pencil (common practice, no source).
func OverWood(bow, length unit.Length, askew unit.Angle, gapSD unit.Length) unit.Length {
	return max(0, bow) + length*unit.Length(math.Abs(math.Tan(float64(askew)))) + 2*gapSD + 2
}
