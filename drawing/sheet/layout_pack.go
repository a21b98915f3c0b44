package sheet

import (
	"math"
	"slices"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// gapOn is the least distance of two blocks on a page.
func gapOn(size drawing.Size) unit.Length {
	if size.Name == drawing.A4.Name {
		return 4.5
	}
	return 7
}

// pull is the corner of the page that a block likes to be near.
type pull uint8

const (
	topLeft pull = iota
	topRight
	bottomLeft
)

// block is something of a natural size that finds its place on a page: a
// detail, a table, notes. Its forms are listed by preference.
type block struct {
	name  string // what it is, for saying that it stands on the next sheet
	pull  pull
	notes bool // paragraphs, whose forms differ in width alone
	forms []form
}

// form is one way to draw a block: its size, and its items with the lower left
// corner of its box at the origin.
type form struct {
	w, h  unit.Length
	items []drawing.Item
	scale drawing.Scale // of pictures
}

// fieldOf gives the free field of a sheet as rectangles that may overlap, each
// as large as it can be.
func fieldOf(size drawing.Size) []drawing.Rect {
	free := drawing.Free(size)
	if len(free) == 1 {
		return free
	}
	tall := drawing.Rect{Min: free[1].Min, Max: geom.V(free[1].Max.X, free[0].Max.Y)}
	return []drawing.Rect{free[0], tall}
}

// packer puts blocks into the free field of a sheet: it keeps the list of the
// largest free rectangles.
type packer struct {
	gap  unit.Length // between blocks
	all  drawing.Rect
	free []drawing.Rect
}

func newPacker(size drawing.Size) *packer {
	p := &packer{gap: gapOn(size), free: fieldOf(size)}
	p.all = p.free[0]
	for _, r := range p.free[1:] {
		p.all = p.all.Union(r)
	}
	return p
}

func (p *packer) copy() *packer {
	q := *p
	q.free = slices.Clone(p.free)
	return &q
}

// put finds the place of a box nearest to its corner and takes it.
func (p *packer) put(w, h unit.Length, pull pull) (drawing.Rect, bool) {
	best, found, least := drawing.Rect{}, false, math.Inf(1)
	for _, r := range p.free {
		if r.Width() < w-1e-9 || r.Height() < h-1e-9 {
			continue
		}
		b := drawing.Box(r.Min.X, r.Max.Y-h, w, h)
		switch pull {
		case topRight:
			b = drawing.Box(r.Max.X-w, r.Max.Y-h, w, h)
		case bottomLeft:
			b = drawing.Box(r.Min.X, r.Min.Y, w, h)
		}
		if d := p.off(b, pull); d < least {
			best, found, least = b, true, d
		}
	}
	if found {
		p.take(best)
	}
	return best, found
}

// off is how far a box is from the corner of the page that it likes.
func (p *packer) off(b drawing.Rect, pull pull) float64 {
	left, right := float64(b.Min.X-p.all.Min.X), float64(p.all.Max.X-b.Max.X)
	down, up := float64(b.Min.Y-p.all.Min.Y), float64(p.all.Max.Y-b.Max.Y)
	switch pull {
	case topRight:
		return 2*right + up
	case bottomLeft:
		return left + 2*down
	}
	return left + 2*up
}

// take removes a box and the distance around it from what is free.
func (p *packer) take(b drawing.Rect) {
	b = b.Grow(p.gap)
	var cut []drawing.Rect
	for _, r := range p.free {
		if !r.Meets(b) {
			cut = append(cut, r)
			continue
		}
		for _, q := range []drawing.Rect{
			{Min: r.Min, Max: geom.V(b.Min.X, r.Max.Y)},
			{Min: geom.V(b.Max.X, r.Min.Y), Max: r.Max},
			{Min: r.Min, Max: geom.V(r.Max.X, b.Min.Y)},
			{Min: geom.V(r.Min.X, b.Max.Y), Max: r.Max},
		} {
			if !q.Empty() {
				cut = append(cut, q)
			}
		}
	}
	p.free = p.free[:0]
	for i, r := range cut {
		if !inAnother(cut, i) {
			p.free = append(p.free, r)
		}
	}
}

// inAnother tells whether a rectangle lies within another of the list; of two
// equal ones the first stays.
func inAnother(list []drawing.Rect, i int) bool {
	for j, r := range list {
		if j != i && r.Holds(list[i]) && (r != list[i] || j < i) {
			return true
		}
	}
	return false
}

// stretch gives how far a box can move each way before it comes too near to
// one of the others or to the border of the field.
func stretch(b drawing.Rect, others, field []drawing.Rect, gap unit.Length) (left, right, down, up unit.Length) {
	free := func(d geom.Vec) bool {
		m := drawing.Rect{Min: b.Min.Add(d), Max: b.Max.Add(d)}
		held := false
		for _, f := range field {
			held = held || f.Holds(m)
		}
		for _, o := range others {
			held = held && !o.Grow(gap-0.01).Meets(m)
		}
		return held
	}
	reach := func(dir geom.Vec) unit.Length {
		n := 0.0
		for n < 300 && free(dir.Mul(n+1)) {
			n++
		}
		return unit.Length(n)
	}
	return reach(geom.V(-1, 0)), reach(geom.V(1, 0)), reach(geom.V(0, -1)), reach(geom.V(0, 1))
}
