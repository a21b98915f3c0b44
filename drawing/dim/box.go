package dim

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// box is a rectangle turned so that its long side lies along dir: the room
// that a line of lettering takes.
type box struct {
	mid      geom.Vec
	dir      geom.Vec // of unit length
	hw, hh   unit.Length
	min, max geom.Vec
}

func newBox(mid, dir geom.Vec, width, height unit.Length) box {
	b := box{mid: mid, dir: dir, hw: width / 2, hh: height / 2}
	x := abs(dir.X)*b.hw + abs(dir.Y)*b.hh
	y := abs(dir.Y)*b.hw + abs(dir.X)*b.hh
	b.min, b.max = geom.V(mid.X-x, mid.Y-y), geom.V(mid.X+x, mid.Y+y)
	return b
}

func rectBox(r drawing.Rect) box {
	return newBox(r.Centre(), geom.V(1, 0), r.Width(), r.Height())
}

func quadBox(q [4]geom.Vec) box {
	along := q[1].Sub(q[0])
	if along == (geom.Vec{}) {
		return newBox(q[0], geom.V(1, 0), 0, 0)
	}
	return newBox(q[0].Lerp(q[2], 0.5), along.Unit(), along.Len(), q[3].Sub(q[0]).Len())
}

func (b box) rect() drawing.Rect { return drawing.Rect{Min: b.min, Max: b.max} }

func abs(v unit.Length) unit.Length { return unit.Length(math.Abs(float64(v))) }

// meets tells whether less than clear lies between two boxes.
func (b *box) meets(o *box, clear unit.Length) bool {
	if b.min.X-clear >= o.max.X || o.min.X-clear >= b.max.X ||
		b.min.Y-clear >= o.max.Y || o.min.Y-clear >= b.max.Y {
		return false
	}
	d := o.mid.Sub(b.mid)
	c, s := abs(unit.Length(b.dir.Dot(o.dir))), abs(unit.Length(b.dir.Cross(o.dir)))
	apart := func(dist float64, own, across, up unit.Length) bool {
		return unit.Length(math.Abs(dist)) >= own+c*across+s*up+clear
	}
	return !apart(b.dir.Dot(d), b.hw, o.hw, o.hh) && !apart(b.dir.Cross(d), b.hh, o.hh, o.hw) &&
		!apart(o.dir.Dot(d), o.hw, b.hw, b.hh) && !apart(o.dir.Cross(d), o.hh, b.hh, b.hw)
}

// cut tells whether a line comes closer to the box than clear.
func (b *box) cut(l *line, clear unit.Length) bool {
	g := clear + l.half
	if l.min.X-g >= b.max.X || b.min.X-g >= l.max.X || l.min.Y-g >= b.max.Y || b.min.Y-g >= l.max.Y {
		return false
	}
	p, d := l.a.Sub(b.mid), l.b.Sub(l.a)
	t0, t1 := 0.0, 1.0
	return clip(&t0, &t1, b.dir.Dot(p), b.dir.Dot(d), float64(b.hw+g)) &&
		clip(&t0, &t1, b.dir.Cross(p), b.dir.Cross(d), float64(b.hh+g))
}

// clipped is the part of a line that lies in the box.
func (b *box) clipped(l *line) (t0, t1 float64) {
	p, d := l.a.Sub(b.mid), l.b.Sub(l.a)
	t0, t1 = 0, 1
	clip(&t0, &t1, b.dir.Dot(p), b.dir.Dot(d), float64(b.hw+l.half))
	clip(&t0, &t1, b.dir.Cross(p), b.dir.Cross(d), float64(b.hh+l.half))
	return t0, t1
}

// clip narrows the part of a line between -reach and +reach.
func clip(t0, t1 *float64, start, run, reach float64) bool {
	if run == 0 {
		return math.Abs(start) < reach
	}
	e0, e1 := (-reach-start)/run, (reach-start)/run
	*t0, *t1 = math.Max(*t0, math.Min(e0, e1)), math.Min(*t1, math.Max(e0, e1))
	return *t0 < *t1
}

// role tells what a line is for.
type role uint8

const (
	edge  role = iota // was there before: the view itself
	ruled             // dimension line
	reach             // extension line
	lead              // leader or reference line
	roles
)

// line is a straight line on paper with half of what it takes to either side.
type line struct {
	a, b     geom.Vec
	half     unit.Length
	min, max geom.Vec
	long     float64
	role     role
}

func newLine(a, b geom.Vec, half unit.Length, r role) line {
	return line{
		a: a, b: b, half: half, long: float64(b.Sub(a).Len()), role: r,
		min: geom.V(min(a.X, b.X), min(a.Y, b.Y)), max: geom.V(max(a.X, b.X), max(a.Y, b.Y)),
	}
}

// crossing of two lines: they miss each other, cross, or run one along the other.
type crossing uint8

const (
	misses crossing = iota
	crosses
	runsAlong
)

// beside is how close two lines may run side by side before they read as one:
// the least clear distance of ISO 128-2. Leaders keep farther off.
const (
	beside     = 0.7
	leadBeside = 1.5
	sideBySide = 1 // over more than this length
)

// sliver is the sine of the angle under which a crossing no longer reads as one.
const sliver = 0.13

func (l *line) meet(o *line) crossing {
	gap := unit.Length(beside)
	if l.role == lead || o.role == lead {
		gap = leadBeside
	}
	if l.min.X-gap > o.max.X || o.min.X-gap > l.max.X || l.min.Y-gap > o.max.Y || o.min.Y-gap > l.max.Y {
		return misses
	}
	d, e := l.b.Sub(l.a), o.b.Sub(o.a)
	p, q := d.Cross(o.a.Sub(l.a)), d.Cross(o.b.Sub(l.a))
	r, s := e.Cross(l.a.Sub(o.a)), e.Cross(l.b.Sub(o.a))
	if (p < 0) != (q < 0) && (r < 0) != (s < 0) {
		if math.Abs(d.Cross(e)) < sliver*l.long*o.long {
			return runsAlong
		}
		return crosses
	}
	if off := float64(gap) * l.long; l.long == 0 || math.Abs(p) > off || math.Abs(q) > off {
		return misses
	}
	from, to := d.Dot(o.a.Sub(l.a))/l.long, d.Dot(o.b.Sub(l.a))/l.long
	if math.Min(l.long, math.Max(from, to))-math.Max(0, math.Min(from, to)) > sideBySide {
		return runsAlong
	}
	return misses
}
