package job

import (
	"fmt"
	"maps"
	"math"
	"strings"

	"slabwright/model/survey"
)

// readings checks the readings and notes the longest one of each wall.
func (p *plan) readings() []survey.Reading {
	var out []survey.Reading
	for _, e := range p.d.readings {
		for _, one := range eachValue(e) {
			if p.reading(one) {
				out = append(out, p.surveyed(one))
			}
		}
		d := e.v
		if d.kind == between && len(d.chain) == 2 && e.at.has("is") {
			p.noteLength(d.chain[0], d.chain[1], e)
			p.noteLength(d.chain[1], d.chain[0], e)
		}
	}
	return out
}

// eachValue is a reading for every value that was taken of the same thing.
func eachValue(e entry[reading]) []entry[reading] {
	out := []entry[reading]{e}
	if !e.at.has("again") {
		return out
	}
	for _, a := range e.v.again {
		one := e
		one.v.is, one.v.angle = a.is, a.angle
		if a.tool != "" {
			one.v.tool, one.v.sd = a.tool, 0
		}
		if a.sd != 0 {
			one.v.sd = a.sd
		}
		one.at = maps.Clone(e.at)
		one.at["is"], one.at[""] = a.at, a.at
		out = append(out, one)
	}
	return out
}

func (p *plan) noteLength(from, to string, e entry[reading]) {
	if i, ok := p.wallOf(from, to); ok {
		p.lengths[i] = max(p.lengths[i], e.v.is)
	}
}

// reading looks up the corners of a reading and judges it by itself.
func (p *plan) reading(e entry[reading]) bool {
	d, good := e.v, e.at.has("is")
	if e.at.has(d.kind) {
		good = p.allKnown(e.at[d.kind], d.chain, joined(d.chain)) && good
	}
	if key := lineKey[d.kind]; key != "" && e.at.has(key) {
		good = p.allKnown(e.at[key], d.line, joined(d.line)) && good
	}
	return good && p.possible(e)
}

// lineKey is the key under which a reading names its line.
var lineKey = map[string]string{offset: "from", width: "along"}

func joined(names []string) string {
	if len(names) == 4 {
		return strings.Join(names[:2], "-") + " to " + strings.Join(names[2:], "-")
	}
	return strings.Join(names, "-")
}

// possible refuses readings that no room can give.
func (p *plan) possible(e entry[reading]) bool {
	d := e.v
	switch d.kind {
	case square:
		if !e.at.has(square, "marks") {
			return false
		}
		low, high := math.Abs(float64(d.marks[0]-d.marks[1])), float64(d.marks[0]+d.marks[1])
		if is := float64(d.is); is <= low || is >= high {
			p.r.wrong(e.at["is"], fmt.Sprintf("%s mm between marks at %s and %s mm", mm(d.is), mm(d.marks[0]), mm(d.marks[1])),
				fmt.Sprintf("more than %s and less than %s mm", number(low), number(high)), "measure again")
			return false
		}
	case offset:
		if !e.at.has(offset, "from") {
			return false
		}
		if d.chain[0] == d.line[0] || d.chain[0] == d.line[1] {
			p.r.wrong(e.at["from"], fmt.Sprintf("corner %s measured from the line %s", quoted(d.chain[0]), joined(d.line)), "a line through two other corners", "")
			return false
		}
		return e.at.has("side") && p.leftToRight(e.at["from"], d.line)
	case width:
		if !e.at.has(width, "along", "depth") {
			return false
		}
		left := p.isWall(e.at[width], d.chain[:2])
		right := p.isWall(e.at[width], d.chain[2:])
		return p.leftToRight(e.at["along"], d.line) && left && right
	}
	return e.at.has(d.kind)
}

// isWall reports whether two corners are the ends of a wall, and notes it if not.
func (p *plan) isWall(at place, names []string) bool {
	_, ok := p.wallOf(names[0], names[1])
	if !ok {
		p.r.wrong(at, quoted(joined(names)), "a wall, its left corner first", "")
	}
	return ok
}

// surveyed is a reading as the adjustment takes it. Its ID is how the file
// writes it, with a number where the same thing was measured again.
func (p *plan) surveyed(e entry[reading]) survey.Reading {
	d := e.v
	s := survey.Reading{Length: d.is, Angle: d.angle, SD: d.sd, AngleSD: d.sdAng, Where: fmt.Sprintf("%s:%d", p.r.file, e.at[""].line)}
	switch d.kind {
	case between:
		s.ID, s.Kind = joined(d.chain), survey.Distance
	case inside:
		s.ID, s.Kind = "angle "+joined(d.chain), survey.Angle
		d.chain = p.walkingOrder(d.chain)
	case square:
		s.ID, s.Kind, s.A, s.B = "square "+joined(d.chain), survey.SquareOff, d.marks[0], d.marks[1]
	case offset:
		s.ID, s.Kind = fmt.Sprintf("offset %s from %s", d.chain[0], joined(d.line)), survey.Offset
		d.chain = append(d.chain[:1:1], d.line...)
		if d.side == "behind" {
			s.Length = -s.Length
		}
	case width:
		s.ID, s.Kind, s.A = fmt.Sprintf("width %s at %s mm", joined(d.chain), mm(d.depth)), survey.Width, d.depth
		d.chain = append(d.line[:2:2], d.chain...)
	}
	if d.tool != "" && d.sd == 0 && d.kind != inside {
		s.SD = survey.Accuracy{Tool: tools[d.tool]}.Length(d.is)
	}
	for _, name := range d.chain {
		s.Points = append(s.Points, survey.Point(name))
	}
	p.taken[s.ID]++
	if n := p.taken[s.ID]; n > 1 {
		s.ID = fmt.Sprintf("%s (%d)", s.ID, n)
	}
	return s
}

// walkingOrder puts three corners so that the angle at the middle one, from the
// first to the third, is the one inside the room.
func (p *plan) walkingOrder(c []string) []string {
	first, middle, third := p.index[c[0]], p.index[c[1]], p.index[c[2]]
	n := len(p.names)
	if (middle-first+n)%n < (third-first+n)%n {
		return c
	}
	return []string{c[2], c[1], c[0]}
}

// leftToRight reports whether a line names its left corner first, as somebody
// in the room sees it, and notes it if not. In a closed room only a wall has a
// left corner.
func (p *plan) leftToRight(at place, line []string) bool {
	_, isWall := p.wallOf(line[0], line[1])
	_, turned := p.wallOf(line[1], line[0])
	if isWall || !turned && (p.d.plan.Closed || p.index[line[0]] < p.index[line[1]]) {
		return true
	}
	p.r.wrong(at, "a line from right to left: "+joined(line), "the left corner first, as somebody in the room sees it", fmt.Sprintf("write %s-%s", line[1], line[0]))
	return false
}
