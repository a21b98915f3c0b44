package saw

import (
	"container/heap"
	"math"
	"slices"
)

// block is a rectangle built of items by joining two smaller blocks side by side
// or one above the other.
type block struct {
	l, w   grid
	value  float64
	worth  []float64 // at the charges of each bound
	count  []uint64  // eight bits for each item
	hash   uint64
	a, b   int32 // what it is joined of; -1: a single item
	shape  int32
	upward bool
	dv, dh uint8 // changes of direction if it stands beside, or above, another
	bound  float64
}

// builder joins blocks, best bound first, until none can lead to more than
// the floor: an exact search, if it ends (after Viswanathan and Bagchi 1993).
type builder struct {
	q     *limited
	all   []block
	open  []int32
	done  []int32
	seen  map[uint64][]int32
	room  []uint64 // 127 less the limit, per item
	floor float64  // only more than this is looked for
	long  grid
	wide  grid
}

const topBits = 0x8080808080808080

func (q *limited) builder(floor float64) *builder {
	nx, ny := q.p.x.n(), q.p.y.n()
	d := &builder{q: q, seen: map[uint64][]int32{}, floor: floor, long: q.p.x.at[nx-1], wide: q.p.y.at[ny-1]}
	d.room = make([]uint64, (len(q.value)+7)/8)
	for i, n := range q.limit {
		most := 127
		if n > 0 {
			most = min(n, 127)
		}
		d.room[i/8] |= uint64(127-most) << (8 * (i % 8))
	}
	for k, s := range q.p.shapes {
		if s.l <= d.long && s.w <= d.wide {
			d.single(k)
		}
	}
	return d
}

func (d *builder) single(k int) {
	s := d.q.p.shapes[k]
	n := block{l: s.l, w: s.w, value: d.q.value[s.item], count: make([]uint64, len(d.room)), dv: 1, dh: 1, a: -1, b: -1, shape: int32(k)}
	n.count[s.item/8] = 1 << (8 * (s.item % 8))
	n.hash = scatter(uint64(s.item + 1))
	for _, p := range d.q.bounds {
		n.worth = append(n.worth, p.worth[s.item])
	}
	d.add(n)
}

// scatter spreads numbers over 64 bits (splitmix64 of Steele, Lea and Flood 2014).
func scatter(x uint64) uint64 {
	x *= 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// limitOf is a bound on what a block of that size can grow to.
func (d *builder) limitOf(l, w grid, worth ...float64) float64 {
	i, j := d.q.p.x.floor[d.long-l], d.q.p.y.floor[d.wide-w]
	at := int(i)*d.q.p.y.n() + int(j)
	best := math.Inf(1)
	for k, p := range d.q.bounds {
		best = min(best, worth[k]+p.rest[at]+p.paid)
	}
	return best
}

// add keeps a block unless one of the same items is no larger.
func (d *builder) add(n block) {
	n.bound = d.limitOf(n.l, n.w, n.worth...)
	if n.bound <= d.floor+1e-7 {
		return
	}
	if d.q.stages == 0 {
		n.dv, n.dh = 0, 0
	} else if int(min(n.dv, n.dh)) > d.q.stages {
		return
	}
	same := d.seen[n.hash]
	for _, k := range same {
		if o := &d.all[k]; o.l <= n.l && o.w <= n.w && o.dv <= n.dv && o.dh <= n.dh && slices.Equal(o.count, n.count) {
			return
		}
	}
	id := int32(len(d.all))
	d.all = append(d.all, n)
	d.seen[n.hash] = append(same, id)
	heap.Push((*byBound)(d), id)
	if n.value > d.floor+1e-7 {
		d.floor = n.value
		d.q.take(d.place(id, 0, 0, nil))
	}
}

// run joins until nothing is open; false if the budget ran out.
func (d *builder) run() bool {
	for len(d.open) > 0 {
		id := heap.Pop((*byBound)(d)).(int32)
		if d.all[id].bound <= d.floor+1e-7 {
			return true
		}
		d.done = append(d.done, id)
		for _, k := range d.done {
			d.join(id, k)
		}
		if !d.q.b.spend(1+len(d.done)/200) || len(d.all) > mostBlocks {
			return false
		}
	}
	return true
}

// mostBlocks bounds the memory of a search.
const mostBlocks = 3_000_000

// join puts two blocks side by side and one above the other.
func (d *builder) join(i, k int32) {
	a, b := &d.all[i], &d.all[k]
	beside, above := a.l+b.l <= d.long, a.w+b.w <= d.wide
	if !beside && !above {
		return
	}
	var worth [4]float64
	for c := range a.worth {
		worth[c] = a.worth[c] + b.worth[c]
	}
	value := a.value + b.value
	if beside {
		beside = d.limitOf(a.l+b.l, max(a.w, b.w), worth[:]...) > d.floor+1e-7
	}
	if above {
		above = d.limitOf(max(a.l, b.l), a.w+b.w, worth[:]...) > d.floor+1e-7
	}
	if !beside && !above {
		return
	}
	for c, n := range a.count {
		if (n+b.count[c]+d.room[c])&topBits != 0 {
			return
		}
	}
	n := block{value: value, hash: a.hash + b.hash, a: i, b: k, shape: -1}
	n.worth = append(n.worth, worth[:len(a.worth)]...)
	n.count = make([]uint64, len(a.count))
	for c := range n.count {
		n.count[c] = a.count[c] + b.count[c]
	}
	al, aw, bl, bw := a.l, a.w, b.l, b.w
	dv, dh := max(a.dv, b.dv), max(a.dh, b.dh)
	if beside {
		n.l, n.w, n.dv, n.dh = al+bl, max(aw, bw), dv, dv+1
		d.add(n)
	}
	if above {
		n.l, n.w, n.dv, n.dh, n.upward = max(al, bl), aw+bw, dh+1, dh, true
		d.add(n)
	}
}

// place writes a block out.
func (d *builder) place(id int32, x, y grid, out []spot) []spot {
	n := &d.all[id]
	if n.a < 0 {
		return append(out, spot{int(n.shape), x, y})
	}
	out = d.place(n.a, x, y, out)
	if n.upward {
		return d.place(n.b, x, y+d.all[n.a].w, out)
	}
	return d.place(n.b, x+d.all[n.a].l, y, out)
}

// byBound is the open list as a heap, the highest bound first.
type byBound builder

func (h *byBound) Len() int { return len(h.open) }
func (h *byBound) Less(i, j int) bool {
	a, b := &h.all[h.open[i]], &h.all[h.open[j]]
	if a.bound != b.bound {
		return a.bound > b.bound
	}
	return h.open[i] < h.open[j]
}
func (h *byBound) Swap(i, j int) { h.open[i], h.open[j] = h.open[j], h.open[i] }
func (h *byBound) Push(x any)    { h.open = append(h.open, x.(int32)) }
func (h *byBound) Pop() any {
	n := len(h.open) - 1
	x := h.open[n]
	h.open = h.open[:n]
	return x
}
