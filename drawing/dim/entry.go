package dim

import (
	"cmp"
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// entry is one dimension line outside the view, not yet on its side: the
// features it measures, in reading direction, and what is written.
type entry struct {
	request int
	dir     geom.Vec // reading direction of the line
	pts     []geom.Vec
	u       []unit.Length // stations along dir
	flat    []unit.Length // stations along the side of the sheet that dir is nearest to
	texts   []block       // one a link, or one a station when running
	running bool
	datum   int // station of the datum, when running
	sides   []geom.Vec

	side *side
	row  int
	out  geom.Vec    // from the view to the line, square to dir
	dist unit.Length // of the line from the origin of the paper, along out
	fan  fan
	lean []unit.Length // shift of the figures of each link off its middle
}

// size orders dimension lines: the shortest stands nearest to the view.
func (e *entry) size() unit.Length { return e.u[len(e.u)-1] - e.u[0] }

// on is the place of a station on the line.
func (e *entry) on(i int) geom.Vec {
	return e.dir.Mul(float64(e.u[i])).Add(e.out.Mul(float64(e.dist)))
}

// textOut tells whether lettering over the line stands on its far side.
func (e *entry) textOut(out geom.Vec) bool { return e.dir.Left().Dot(out) > 0 }

// same is how near two features may lie, on the thing drawn, to count as one.
const same unit.Length = 0.005

// station is a feature on its way into an entry.
type station struct {
	p     geom.Vec    // on paper
	u     unit.Length // on paper, along the line
	value unit.Length // on the thing drawn
	label Label
	datum bool
}

// along is the reading direction of a dimension line.
func along(d Direction, pts []geom.Vec) geom.Vec {
	switch d {
	case Horizontal:
		return geom.V(1, 0)
	case Vertical:
		return geom.V(0, 1)
	}
	return readable(pts[len(pts)-1].Sub(pts[0]))
}

// stations sorts features along a line and joins those that coincide.
func (p *Plate) stations(dir geom.Vec, pts []geom.Vec) []station {
	list := make([]station, len(pts))
	for i, v := range pts {
		on := p.at(v)
		list[i] = station{p: on, u: unit.Length(on.Dot(dir)), value: unit.Length(v.Dot(dir))}
	}
	return list
}

func join(list []station) []station {
	slices.SortStableFunc(list, func(a, b station) int { return cmp.Compare(a.value, b.value) })
	return slices.CompactFunc(list, func(a, b station) bool {
		return abs(b.value-a.value) < same
	})
}

func (e *entry) take(list []station) {
	for _, s := range list {
		e.pts = append(e.pts, s.p)
		e.u = append(e.u, s.u)
		switch {
		case abs(e.dir.Y) < skewLimit:
			e.flat = append(e.flat, s.p.X)
		case abs(e.dir.X) < skewLimit:
			e.flat = append(e.flat, s.p.Y)
		default:
			e.flat = append(e.flat, s.u)
		}
	}
}

// linear makes the entry of a single distance, nil when it measures nothing.
func (p *Plate) linear(q Linear) *entry {
	return p.chain(Chain{[]geom.Vec{q.A, q.B}, q.Dir, q.Side, []Label{q.Label}})
}

func (p *Plate) chain(q Chain) *entry {
	if len(q.Points) < 2 {
		return nil
	}
	e := &entry{dir: along(q.Dir, q.Points)}
	list := join(p.stations(e.dir, q.Points))
	if len(list) < 2 {
		return nil
	}
	e.take(list)
	for i := 1; i < len(list); i++ {
		var l Label
		if i <= len(q.Labels) {
			l = q.Labels[i-1]
		}
		e.texts = append(e.texts, newBlock(p.Style.Height, l.text(p.Format(list[i].value-list[i-1].value))))
	}
	e.sides = p.outward(e, q.Side)
	return e
}

func (p *Plate) running(q Running) *entry {
	pts := q.points()
	if len(pts) < 2 {
		return nil
	}
	e := &entry{dir: along(q.Dir, pts), running: true}
	list := p.stations(e.dir, pts)
	zero := list[0].value
	list[0].datum = true
	list[0].label.Suffix = " " + q.From
	if q.From == "" {
		list[0].label.Suffix = ""
	}
	for i := range list[1:] {
		if i < len(q.Labels) {
			list[i+1].label = q.Labels[i]
		}
	}
	list = slices.DeleteFunc(list, func(s station) bool { // features on the datum itself
		return !s.datum && math.Abs(float64(s.value-zero)) < float64(same)
	})
	list = join(list)
	if len(list) < 2 {
		return nil
	}
	e.take(list)
	for i, s := range list {
		if s.datum {
			e.datum = i
		}
		e.texts = append(e.texts, newBlock(p.Style.Height, s.label.text(p.Format(abs(s.value-zero)))))
	}
	e.sides = p.outward(e, q.Side)
	return e
}

// outward lists the directions in which the line of an entry may stand off the
// view, the preferred first.
func (p *Plate) outward(e *entry, s Side) []geom.Vec {
	up := e.dir.Left()
	ways := []geom.Vec{up.Mul(-1), up}
	if e.dir.X < e.dir.Y { // read from the right: the left side first
		ways[0], ways[1] = ways[1], ways[0]
	}
	if wanted := sideDir[s]; math.Abs(up.Dot(wanted)) > 0.1 {
		if up.Dot(wanted) > 0 {
			return []geom.Vec{up}
		}
		return []geom.Vec{up.Mul(-1)}
	}
	return ways
}

var sideDir = map[Side]geom.Vec{
	Below: {X: 0, Y: -1}, Above: {X: 0, Y: 1}, LeftOf: {X: -1, Y: 0}, RightOf: {X: 1, Y: 0},
}

// small tells whether a link is too short for terminators inside.
func (e *entry) small(i int, s *Style) bool {
	return s.End != drawing.Oblique && e.u[i+1]-e.u[i] < s.arrowRoom()
}

// inset is the least distance of figures from an extension line.
func (s *Style) inset() unit.Length {
	if s.End == drawing.Oblique {
		return s.EndSize/2 + lineClear
	}
	return lineClear + 0.2
}

// wide tells whether the figures of a link do not fit between its extension lines.
func (e *entry) wide(i int, s *Style) bool {
	return e.texts[i].width+2*s.inset() > e.u[i+1]-e.u[i]
}

// reserve is the room that a line takes beyond its first and its last station.
func (e *entry) reserve(s *Style) (before, after unit.Length) {
	last := len(e.u) - 2
	if e.running {
		f := e.spread(s, nil)
		return e.u[0] - f.lo, f.hi - e.u[last+1]
	}
	if e.small(0, s) {
		before = s.EndSize + tail
	}
	if e.small(last, s) {
		after = s.EndSize + tail
	}
	if e.wide(last, s) {
		after = max(after, e.texts[last].width+2)
	} else if e.wide(0, s) {
		before = max(before, e.texts[0].width+2)
	}
	return before, after
}

// tiers is how many levels of raised figures a chain needs for links in its
// midst that are too short for theirs.
func (e *entry) tiers(s *Style) int {
	if e.running {
		return 0
	}
	need, room := unit.Length(0), unit.Length(0)
	for i := 1; i < len(e.u)-2; i++ {
		if e.wide(i, s) {
			need += e.texts[i].width + 2
			room += e.u[i+1] - e.u[i]
		}
	}
	if need == 0 {
		return 0
	}
	return min(3, int(math.Ceil(float64(need/(room+30)))))
}

// depth is the room that a line takes towards the view and away from it.
func (e *entry) depth(s *Style, out geom.Vec) (inner, outer unit.Length) {
	if e.running {
		return originR, e.fan.depth(s)
	}
	figures := s.Above + s.Height + unit.Length(e.tiers(s))*(s.Height+tierGap)
	if e.textOut(out) {
		return 1, max(s.Past, figures)
	}
	return figures, s.Past
}

// tierGap is the distance between levels of raised figures.
const tierGap unit.Length = 1.8
