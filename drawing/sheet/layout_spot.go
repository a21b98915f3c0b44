package sheet

import (
	"math"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// taken is what stands on a piece of paper already, for finding free spots.
type taken struct {
	lines []ink
	boxes []drawing.Rect // around texts and fills
}

// ink is a straight line with half its width.
type ink struct {
	a, b geom.Vec
	half unit.Length
}

func takenBy(items []drawing.Item) *taken {
	t := &taken{}
	t.take(items...)
	return t
}

// take adds items.
func (t *taken) take(items ...drawing.Item) { drawing.Plot(drawing.Sheet{Items: items}, t) }

// Begin, End and the others gather the marks of a sheet.
func (t *taken) Begin(string, string) {}

// End closes a group.
func (t *taken) End() {}

// Lines gathers chains of lines.
func (t *taken) Lines(chains [][]geom.Vec, closed bool, s drawing.Stroke) {
	for _, c := range chains {
		for i := 1; i < len(c); i++ {
			t.lines = append(t.lines, ink{c[i-1], c[i], s.Width / 2})
		}
		if closed && len(c) > 2 {
			t.lines = append(t.lines, ink{c[len(c)-1], c[0], s.Width / 2})
		}
	}
}

// Arc gathers an arc as a chain.
func (t *taken) Arc(c geom.Vec, r unit.Length, from, sweep unit.Angle, s drawing.Stroke) {
	const n = 24
	pts := make([]geom.Vec, n+1)
	for i := range pts {
		pts[i] = c.Add(geom.V(r, 0).Turn(from + sweep*unit.Angle(i)/n))
	}
	t.Lines([][]geom.Vec{pts}, false, s)
}

// Fill gathers the box around a filled area.
func (t *taken) Fill(loops [][]geom.Vec, _ drawing.Ink) {
	for _, l := range loops {
		t.boxes = append(t.boxes, around(l))
	}
}

// Write gathers the box around a text.
func (t *taken) Write(x drawing.Text) {
	q := x.Quad()
	if b := around(q[:]); !b.Empty() {
		t.boxes = append(t.boxes, b)
	}
}

func around(pts []geom.Vec) drawing.Rect {
	r := drawing.Rect{Min: pts[0], Max: pts[0]}
	for _, p := range pts[1:] {
		r = r.Union(drawing.Rect{Min: p, Max: p})
	}
	return r
}

// clear tells whether nothing comes nearer to a rectangle than a gap.
func (t *taken) clear(r drawing.Rect, gap unit.Length) bool {
	r = r.Grow(gap)
	for _, b := range t.boxes {
		if b.Meets(r) {
			return false
		}
	}
	for _, l := range t.lines {
		if l.enters(r) {
			return false
		}
	}
	return true
}

// enters tells whether the line with its width comes into a rectangle.
func (l ink) enters(r drawing.Rect) bool {
	r = r.Grow(l.half)
	if max(l.a.X, l.b.X) <= r.Min.X || min(l.a.X, l.b.X) >= r.Max.X || max(l.a.Y, l.b.Y) <= r.Min.Y || min(l.a.Y, l.b.Y) >= r.Max.Y {
		return false
	}
	t0, t1 := 0.0, 1.0
	clip := func(start, run, low, high unit.Length) bool {
		if run == 0 {
			return low < start && start < high
		}
		a, b := float64((low-start)/run), float64((high-start)/run)
		t0, t1 = max(t0, min(a, b)), min(t1, max(a, b))
		return t0 < t1
	}
	d := l.b.Sub(l.a)
	return clip(l.a.X, d.X, r.Min.X, r.Max.X) && clip(l.a.Y, d.Y, r.Min.Y, r.Max.Y)
}

// spot finds the free rectangle of a size nearest to a place, within a room;
// fits may refuse it.
func (t *taken) spot(room drawing.Rect, near geom.Vec, w, h, gap unit.Length, fits func(drawing.Rect) bool) (drawing.Rect, bool) {
	return t.search(room, near, w, h, gap, 2, fits)
}

func (t *taken) search(room drawing.Rect, near geom.Vec, w, h, gap, step unit.Length, fits func(drawing.Rect) bool) (drawing.Rect, bool) {
	best, found, far := drawing.Rect{}, false, math.Inf(1)
	for y := room.Min.Y; y+h <= room.Max.Y; y += step {
		for x := room.Min.X; x+w <= room.Max.X; x += step {
			r := drawing.Box(x, y, w, h)
			d := float64(r.Centre().Sub(near).Len())
			if d < far && fits(r) && t.clear(r, gap) {
				best, found, far = r, true, d
			}
		}
	}
	return best, found
}

// nearest is spot on a fine grid around a place.
func (t *taken) nearest(room drawing.Rect, near geom.Vec, w, h, gap unit.Length, fits func(drawing.Rect) bool) (drawing.Rect, bool) {
	local := &taken{}
	for _, b := range t.boxes {
		if b.Meets(room) {
			local.boxes = append(local.boxes, b)
		}
	}
	for _, l := range t.lines {
		if l.enters(room) {
			local.lines = append(local.lines, l)
		}
	}
	return local.search(room, near, w, h, gap, 0.5, fits)
}
