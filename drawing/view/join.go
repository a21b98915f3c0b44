package view

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// join puts the ends of lines that meet on the very same point, makes one line
// of pieces in line with each other, and sorts by item, kind and surface.
func join(lines []piece) []piece {
	slices.SortStableFunc(lines, func(p, q piece) int {
		a, b := p.stroke, q.stroke
		return cmp.Or(
			cmp.Compare(a.Item, b.Item), cmp.Compare(a.Kind, b.Kind),
			strings.Compare(a.Surface, b.Surface), cmp.Compare(flag(a.Curved), flag(b.Curved)),
		)
	})
	out := make([]piece, 0, len(lines))
	for len(lines) > 0 {
		n := 1
		for n < len(lines) && lines[n].stroke == lines[0].stroke {
			n++
		}
		out = newWeb(lines[:n]).merge(out)
		lines = lines[n:]
	}
	return out
}

func flag(b bool) int {
	if b {
		return 1
	}
	return 0
}

// web holds lines of one stroke with their ends, numbered 2i and 2i+1, tied in
// knots. Lines shorter than a knot are left out.
type web struct {
	knots knots
	parts []piece
	at    []int32 // knot of each end
	first []int32 // an end at each knot
	next  []int32 // next end at the same knot, -1: none
}

func newWeb(lines []piece) *web {
	w := &web{
		knots: newKnots(len(lines)), parts: make([]piece, 0, len(lines)),
		at: make([]int32, 0, 2*len(lines)), next: make([]int32, 0, 2*len(lines)),
	}
	for _, p := range lines {
		a, b := w.knots.at(p.a), w.knots.at(p.b)
		if a == b {
			continue
		}
		w.parts = append(w.parts, piece{w.knots.points[a], w.knots.points[b], p.stroke})
		w.tie(a)
		w.tie(b)
	}
	return w
}

func (w *web) tie(knot int32) {
	for int(knot) >= len(w.first) {
		w.first = append(w.first, -1)
	}
	w.at, w.next = append(w.at, knot), append(w.next, w.first[knot])
	w.first[knot] = int32(len(w.at) - 1)
}

// point is the place of an end.
func (w *web) point(end int32) vertex { return w.knots.points[w.at[end]] }

// merge appends the lines, those that carry on straight made one.
func (w *web) merge(out []piece) []piece {
	links := w.links()
	used := make([]bool, len(w.parts))
	for i, p := range w.parts {
		if used[i] {
			continue
		}
		a := int32(2 * i)
		for links[a] >= 0 && links[a]/2 != int32(i) {
			a = links[a] ^ 1
		}
		b := a ^ 1
		used[b/2] = true
		for links[b] >= 0 && !used[links[b]/2] {
			b = links[b] ^ 1
			used[b/2] = true
		}
		p.a, p.b = w.point(a), w.point(b)
		out = append(out, p)
	}
	return out
}

// links gives for each end the end that carries it on straight, -1 for none.
func (w *web) links() []int32 {
	links := make([]int32, len(w.at))
	for e := range links {
		links[e] = -1
	}
	for _, first := range w.first {
		for e := first; e >= 0; e = w.next[e] {
			for f := w.next[e]; f >= 0; f = w.next[f] {
				if links[e] < 0 && links[f] < 0 && inLine(w.point(e^1), w.point(e), w.point(f^1), w.parts[e/2].stroke.Curved) {
					links[e], links[f] = f, e
				}
			}
		}
	}
	return links
}

// inLine tells whether a line goes on straight from a over p to b. Pieces of
// curves are joined only where they are exactly in line, lest a fine curve
// lose its bend step by step.
func inLine(a, p, b vertex, curved bool) bool {
	if (a.u-p.u)*(b.u-p.u)+(a.v-p.v)*(b.v-p.v) >= 0 {
		return false
	}
	if curved {
		return offLine(p, a, b) <= 1e-9
	}
	return offLine(p, a, b) <= straight
}

// knots are points at which lines meet; points less than coincident apart are
// one knot, that of the first.
type knots struct {
	points []vertex
	cells  map[[2]int64]int32 // a knot in each cell
	next   []int32            // next knot in the same cell, -1: none
}

// cellsPerMM is the fineness of the cells in which knots are looked up.
const cellsPerMM = 10

func newKnots(n int) knots {
	return knots{cells: make(map[[2]int64]int32, n), points: make([]vertex, 0, n), next: make([]int32, 0, n)}
}

// at gives the knot of a point.
func (k *knots) at(p vertex) int32 {
	cell := func(x float64) int64 { return int64(math.Floor(x * cellsPerMM)) }
	for i := cell(p.u - coincident); i <= cell(p.u+coincident); i++ {
		for j := cell(p.v - coincident); j <= cell(p.v+coincident); j++ {
			id, some := k.cells[[2]int64{i, j}]
			for ; some && id >= 0; id = k.next[id] {
				if drawn(p, k.points[id]) < coincident {
					return id
				}
			}
		}
	}
	home := [2]int64{cell(p.u), cell(p.v)}
	before, some := k.cells[home]
	if !some {
		before = -1
	}
	id := int32(len(k.points))
	k.points, k.next = append(k.points, p), append(k.next, before)
	k.cells[home] = id
	return id
}
