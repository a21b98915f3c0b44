package job

import (
	"maps"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// reading is one line of the readings before its corners are looked up. kind is
// the key that tells what was measured.
type reading struct {
	kind  string
	chain []string      // the corners under that key
	line  []string      // offset: the line; width: the wall that the width is parallel to
	side  string        // offset: before or behind the line
	marks []unit.Length // square: from the middle corner along both walls
	depth unit.Length   // width: off the wall that it is parallel to
	is    unit.Length
	angle unit.Angle
	tool  string
	sd    unit.Length
	sdAng unit.Angle
	again []again
}

// Kinds of reading, by the key that tells them.
const (
	between = "between"
	inside  = "angle"
	square  = "square"
	offset  = "offset"
	width   = "width"
)

// readingForm describes the five kinds of reading.
func readingForm() form[entry[reading]] {
	type R = reading
	at := func(d *R) *[]string { return &d.chain }
	straight := length(1, 100000)
	is := func(help string) field[R] {
		return need("is", help, straight, func(d *R) *unit.Length { return &d.is })
	}
	sd := may("sd", "standard deviation of the reading; by the tool if nothing is said", length(0.01, 100), func(d *R) *unit.Length { return &d.sd })
	tool := may("tool", "what it was measured with; as for the room if nothing is said", toolForm(), func(d *R) *string { return &d.tool })
	one := func(key string, fields ...field[R]) kind[entry[R]] {
		return kind[entry[R]]{key, record("a reading", fields, func(_ *reader, e *entry[R]) { e.v.kind = key })}
	}
	return byKey("a reading", []kind[entry[R]]{
		one(between,
			need(between, "the two corners, walls and diagonals alike, such as A-B", chain(2), at),
			is("straight distance of the two corners"), againField(againLength(true)), tool, sd),
		one(inside,
			need(inside, "three corners: the angle inside the room, at the middle one", chain(3), at),
			need("is", "the angle inside the room, degrees", angle(1, 359), func(d *R) *unit.Angle { return &d.angle }),
			againField(againAngle()),
			may("tool", "what it was measured with; a protractor if nothing is said", word("a tool", "protractor"), func(d *R) *string { return &d.tool }),
			may("sd", "standard deviation of the reading, degrees", angle(0.001, 10), func(d *R) *unit.Angle { return &d.sdAng })),
		one(square,
			need(square, "three corners: marks on both walls that meet at the middle one", chain(3), at),
			need("marks", "distances of the two marks from the middle corner, towards the first and towards the last corner", list("marks", straight, 2, 2), func(d *R) *[]unit.Length { return &d.marks }),
			is("straight distance of the two marks"), againField(againLength(false)), sd),
		one(offset,
			need(offset, "a corner that lies off a line", chain(1), at),
			need("from", "the line through two other corners, the left one first", chain(2), func(d *R) *[]string { return &d.line }),
			need("side", "before the line, in the room, or behind it, as the back of a niche", word("a side", "before", "behind"), func(d *R) *string { return &d.side }),
			need("is", "square distance of the corner from the line", length(0, 100000), func(d *R) *unit.Length { return &d.is }), againField(againLength(false)), sd),
		one(width,
			need(width, "the two walls between which the width was measured, such as A-B to G-H", twoWalls(), at),
			need("along", "the wall or line that the width is parallel to, the left corner first, such as B-C", chain(2), func(d *R) *[]string { return &d.line }),
			need("depth", "how far before that wall it was measured", length(0, 20000), func(d *R) *unit.Length { return &d.depth }),
			is("the width"), againField(againLength(true)), tool, sd),
	})
}

// tools are the words for what lengths are read with.
var tools = map[string]survey.Tool{"tape I": survey.TapeI, "tape II": survey.TapeII, "tape III": survey.TapeIII, "laser": survey.Laser}

func toolForm() form[string] {
	return word("a tool", slices.Sorted(maps.Keys(tools))...)
}

// twoWalls is a pair of walls by their corners, as in  A-B to G-H: four names.
func twoWalls() form[[]string] {
	const side = namePart + "-" + namePart
	f := form[[]string]{what: "two walls by their corners, such as A-B to G-H", schema: schema{"type": "string", "pattern": "^" + side + " to " + side + "$"}}
	f.read = func(r *reader, n ast.Node) ([]string, bool) {
		t, _ := scalar(n)
		left, right, _ := strings.Cut(t, " to ")
		names := append(strings.Split(left, "-"), strings.Split(right, "-")...)
		if len(names) != 4 || strings.Count(left, "-") != 1 || slices.ContainsFunc(names, func(s string) bool { return !isName(s) }) {
			wants(r, n, f, "")
			return nil, false
		}
		return names, true
	}
	return f
}
