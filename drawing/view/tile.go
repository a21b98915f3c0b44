package view

import (
	"math"
)

// tileSize is the number of corners above which a face is cut up further.
// Measured on a desk: 16 to 64 make no difference.
const tileSize = 32

// maxHalvings bounds the cutting up of faces with all their corners in one
// place.
const maxHalvings = 10

// tile is a piece of a face that hides what is behind it. Large faces are cut
// into strips, so that a short line meets few corners.
type tile struct {
	at   []vertex // corners, loop after loop
	next []int32  // corner after each
	n    vertex   // normal of its plane
	box  box
	near float64 // greatest w
}

// tiles cuts a face up.
func tiles(out []tile, f *face) []tile {
	corners := 0
	for _, l := range f.loops {
		corners += len(l)
	}
	b := boxOfLoops(f.loops)
	if corners > tileSize {
		strip := alongU
		if b.v1-b.v0 > b.u1-b.u0 {
			strip = alongV
		}
		return strips(out, f.loops, f.n, strip, maxHalvings)
	}
	return append(out, newTile(f.loops, f.n))
}

// strips halves loops across one axis until they are small. All cuts of a face
// are parallel, so that neighbours have the same corners.
func strips(out []tile, loops [][]vertex, n vertex, x axis, depth int) []tile {
	corners, lo, hi := 0, math.Inf(1), math.Inf(-1)
	for _, l := range loops {
		corners += len(l)
		for _, p := range l {
			lo, hi = min(lo, x.of(p)), max(hi, x.of(p))
		}
	}
	c := (lo + hi) / 2
	switch {
	case corners == 0:
		return out
	case corners <= tileSize || depth == 0 || c <= lo || c >= hi:
		return append(out, newTile(loops, n))
	}
	low, _ := clip(loops, n, x, c, false)
	high, _ := clip(loops, n, x, c, true)
	return strips(strips(out, low, n, x, depth-1), high, n, x, depth-1)
}

func newTile(loops [][]vertex, n vertex) tile {
	corners := 0
	for _, l := range loops {
		corners += len(l)
	}
	t := tile{n: n, box: boxOfLoops(loops), at: make([]vertex, 0, corners), next: make([]int32, 0, corners)}
	for _, l := range loops {
		first := int32(len(t.at))
		for i := range l {
			t.next = append(t.next, first+int32((i+1)%len(l)))
		}
		t.at = append(t.at, l...)
	}
	t.near = t.at[0].w
	for _, p := range t.at {
		t.near = max(t.near, p.w)
	}
	return t
}

func boxOfLoops(loops [][]vertex) box {
	b := boxOf(loops[0][0], loops[0][0])
	for _, l := range loops {
		for _, p := range l {
			b = b.union(boxOf(p, p))
		}
	}
	return b
}
