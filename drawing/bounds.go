package drawing

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Bounds is the smallest rectangle around the marks that the items leave,
// half the widths of the lines included. It is Empty when there are none.
func Bounds(items []Item) Rect {
	b := &bounder{emptyRect}
	plotAll(items, b, &context{})
	return b.r
}

type bounder struct{ r Rect }

func (b *bounder) Begin(string, string) {}
func (b *bounder) End()                 {}

func (b *bounder) Lines(chains [][]geom.Vec, _ bool, s Stroke) {
	b.r = b.r.Union(bounds(chains).Grow(s.Width / 2))
}

func (b *bounder) Arc(c geom.Vec, r unit.Length, from, sweep unit.Angle, s Stroke) {
	pts := []geom.Vec{arcPoint(c, r, from), arcPoint(c, r, from+sweep)}
	lo, hi := min(from, from+sweep), max(from, from+sweep)
	if hi-lo > fullTurn {
		lo, hi = 0, fullTurn
	}
	const quarter = fullTurn / 4
	for k := math.Ceil(float64(lo / quarter)); unit.Angle(k)*quarter <= hi; k++ {
		pts = append(pts, arcPoint(c, r, unit.Angle(k)*quarter))
	}
	b.Lines([][]geom.Vec{pts}, false, s)
}

func (b *bounder) Fill(loops [][]geom.Vec, _ Ink) { b.r = b.r.Union(bounds(loops)) }

func (b *bounder) Write(t Text) {
	q := t.Quad()
	b.r = b.r.Union(bounds([][]geom.Vec{q[:]}))
}

func arcPoint(c geom.Vec, r unit.Length, t unit.Angle) geom.Vec { return c.Add(geom.V(r, 0).Turn(t)) }
