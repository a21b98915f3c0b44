package view

import (
	"cmp"
	"math"
	"slices"
)

const (
	// flush is how far behind a face a line must lie to be hidden by it, in
	// mm: parts that lie on each other may be a rounding of the kernel apart.
	flush = 0.002
	// online is how near to a line a corner counts as on it, in mm. It takes
	// up rounding only: corners that are on the line are on it exactly.
	online = 1e-7
	// speck is the shortest change of visibility worth drawing, in mm.
	speck = 0.02
)

// hider compares lines with the faces in front of them.
type hider struct {
	tiles       []tile
	grid        *grid
	left, right []span    // what covers the line on either side
	sides       []float64 // distance of the corners of a tile to the left of the line
	where       []float64 // place of the corners along the line
	cross       []float64 // where the border of a tile crosses the line
	hidden      []span
	free        []span
}

// newHider takes the faces of the skin that hide something.
func newHider(s Scene, skin []face) *hider {
	h := &hider{}
	for i := range skin {
		f := &skin[i]
		it := s.Items[f.item]
		if f.front() && !it.SeeThrough && !it.Role.over() {
			h.tiles = tiles(h.tiles, f)
		}
	}
	// The grid gives first what was added last: the nearest, which may settle
	// the matter.
	slices.SortStableFunc(h.tiles, func(a, b tile) int { return cmp.Compare(a.near, b.near) })
	h.grid = gridOf(h.tiles)
	return h
}

func gridOf(tiles []tile) *grid {
	var b box
	for i, t := range tiles {
		if i == 0 {
			b = t.box
		}
		b = b.union(t.box)
	}
	g := newGrid(b, len(tiles))
	for _, t := range tiles {
		g.add(t.box)
	}
	return g
}

// split appends the visible and the hidden stretches of an edge.
func (h *hider) split(out []piece, e edge, it Item) []piece {
	size := drawn(e.a, e.b)
	if size < online {
		return out
	}
	h.hidden = h.hidden[:0]
	if !it.Role.over() {
		h.cover(e.a, e.b, true)
		h.hidden = settle(common(h.hidden, h.left, h.right), speck/size)
	}
	h.free = minus(h.free[:0], whole, h.hidden)
	out = stretches(out, e, Visible, h.free)
	if !it.DropHidden {
		out = stretches(out, e, Hidden, h.hidden)
	}
	return out
}

func stretches(out []piece, e edge, k Kind, spans []span) []piece {
	for _, s := range spans {
		p := piece{e.a, e.b, e.stroke}
		p.stroke.Kind = k
		if s.lo > 0 {
			p.a = e.a.lerp(e.b, s.lo)
		}
		if s.hi < 1 {
			p.b = e.a.lerp(e.b, s.hi)
		}
		out = append(out, p)
	}
	return out
}

// cover finds the stretches of the line a-b along which faces lie immediately
// to its left and to its right; with behind only faces in front of the line
// count. A line along the border of a face is covered on one side, and so
// stays visible unless another face takes over on the other side.
func (h *hider) cover(a, b vertex, behind bool) {
	h.left, h.right = h.left[:0], h.right[:0]
	reach := boxOf(a, b).grow(online)
	deepest := math.Inf(-1)
	if behind {
		deepest = min(a.w, b.w)
	}
	h.grid.near(a, b, func(id int32) bool {
		t := &h.tiles[id]
		if t.near < deepest || !t.box.meets(reach) {
			return true
		}
		lo, hi := 0.0, 1.0
		if behind {
			lo, hi = t.behind(a, b)
		}
		return lo >= hi || !h.coverBy(t, a, b, span{lo, hi})
	})
	h.left, h.right = union(h.left, online), union(h.right, online)
}

// behind gives the stretch of the line that lies behind the plane of the tile.
func (t *tile) behind(a, b vertex) (lo, hi float64) {
	da, db := t.n.dot(a.sub(t.at[0])), t.n.dot(b.sub(t.at[0]))
	switch {
	case da >= -flush && db >= -flush:
		return 0, 0
	case da > 0:
		return da / (da - db), 1
	case db > 0:
		return 0, da / (da - db)
	}
	return 0, 1
}

// coverBy adds the stretches within s that the tile covers, and tells whether
// that is all of the line. It counts where the line, moved by next to nothing
// to the left or to the right, crosses the border: corners on the line are
// then on its other side.
func (h *hider) coverBy(t *tile, a, b vertex, s span) bool {
	size := drawn(a, b)
	du, dv := (b.u-a.u)/size, (b.v-a.v)/size
	h.sides, h.where = h.sides[:0], h.where[:0]
	some, touch := 0, false
	for _, p := range t.at {
		side := du*(p.v-a.v) - dv*(p.u-a.u)
		switch {
		case side > online:
			some |= 1
		case side < -online:
			some |= 2
		default:
			side, touch = 0, true
		}
		h.sides = append(h.sides, side)
		h.where = append(h.where, (du*(p.u-a.u)+dv*(p.v-a.v))/size)
	}
	if some == 0 || !touch && some != 3 {
		return false
	}
	nl, nr := len(h.left), len(h.right)
	h.left = h.crossings(h.left, t, s, false)
	if touch {
		h.right = h.crossings(h.right, t, s, true)
	} else {
		h.right = append(h.right, h.left[nl:]...)
	}
	return isWhole(h.left[nl:]) && isWhole(h.right[nr:])
}

func isWhole(s []span) bool { return len(s) == 1 && s[0] == whole[0] }

// crossings appends the stretches between the borders of the tile, with the
// corners on the line taken to be on its left or on its right.
func (h *hider) crossings(out []span, t *tile, s span, left bool) []span {
	h.cross = h.cross[:0]
	for i, j := range t.next {
		si, sj := h.sides[i], h.sides[j]
		if (si > 0 || si == 0 && left) == (sj > 0 || sj == 0 && left) {
			continue
		}
		h.cross = append(h.cross, (h.where[i]*sj-h.where[j]*si)/(sj-si))
	}
	slices.Sort(h.cross)
	for i := 0; i+1 < len(h.cross); i += 2 {
		lo, hi := max(h.cross[i], s.lo), min(h.cross[i+1], s.hi)
		if lo < hi {
			out = append(out, span{lo, hi})
		}
	}
	return out
}
