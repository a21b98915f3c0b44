package wiring

import (
	"container/heap"
	"math"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Network is where cables may run: straight links between places.
type Network struct {
	Places []geom.Vec3
	Links  []Link
}

// Link is a straight piece of a channel between two places of a network. Spare
// is by how much a cable may bulge beyond its ends, where it lies in the open:
// bends may take so much more of it than it is long.
type Link struct {
	A, B  int
	Spare unit.Length
}

// Way is the course of a cable through a network.
type Way struct {
	Places []int       // from start to end
	Links  []int       // between them
	Length unit.Length // along the cable, bends taken round
	Round  unit.Length // radius of its bends
}

// Shortest is the shortest way of a cable through the links that are open,
// whose bends keep a radius. A bend by an angle takes radius x tan(angle/2) of
// each of its two links, so that two bends of one link may be too much for it;
// it does not turn right round. False if there is no way.
//
// It is Dijkstra's method on the directed links, told apart by the room that
// the bend before took of them, which decides what may follow. Lengths count up
// to the end of that bend, so that they never fall.
func Shortest(n Network, from, to int, radius unit.Length, open func(link int) bool) (Way, bool) {
	if from == to {
		return Way{Places: []int{from}, Round: radius}, true
	}
	out := make([][]step, len(n.Places)) // steps that leave a place
	for i, l := range n.Links {
		if !open(i) {
			continue
		}
		out[l.A] = append(out[l.A], step{i, l.A, l.B})
		out[l.B] = append(out[l.B], step{i, l.B, l.A})
	}
	best := map[state]unit.Length{}
	before := map[state]state{}
	queue := &queue{}
	reach := func(s, was state, length unit.Length) {
		if old, ok := best[s]; ok && old <= length {
			return
		}
		best[s], before[s] = length, was
		heap.Push(queue, entry{s, length})
	}
	for _, s := range out[from] {
		reach(state{step: s}, state{}, 0)
	}
	for queue.Len() > 0 {
		e := heap.Pop(queue).(entry)
		if e.length > best[e.state] {
			continue
		}
		if e.there {
			return n.trace(e, before, radius), true
		}
		rest := max(0, n.length(e.step)-e.took)
		if e.to == to {
			end := e.state
			end.there = true
			reach(end, e.state, e.length+rest)
			continue
		}
		for _, s := range out[e.to] {
			took, angle, ok := n.bend(e.step, s, radius)
			if ok && e.took+took <= n.room(e.step)+1e-9 {
				reach(state{step: s, took: took}, e.state, e.length+max(0, rest-took)+radius*unit.Length(angle))
			}
		}
	}
	return Way{}, false
}

// step is a link in one direction.
type step struct{ link, from, to int }

// state is a step with the room that the bend before it took of it; there
// means that its end is the end of the way.
type state struct {
	step
	took  unit.Length
	there bool
}

type entry struct {
	state
	length unit.Length
}

func (n Network) vec(s step) geom.Vec3 { return n.Places[s.to].Sub(n.Places[s.from]) }

func (n Network) length(s step) unit.Length { return n.vec(s).Len() }

// bend tells what a bend from one step into the next takes of each, and its
// angle; false if it turns right round or the next step is too short for it.
func (n Network) bend(a, b step, radius unit.Length) (took unit.Length, angle unit.Angle, ok bool) {
	u, v := n.vec(a).Unit(), n.vec(b).Unit()
	turn := math.Atan2(float64(u.Cross(v).Len()), u.Dot(v))
	if turn > math.Pi-1e-6 {
		return 0, 0, false
	}
	took = radius * unit.Length(math.Tan(turn/2))
	return took, unit.Angle(turn), took <= n.room(b)+1e-9
}

// room is how much bends may take of a link.
func (n Network) room(s step) unit.Length { return n.length(s) + n.Links[s.link].Spare }

// trace follows a way back to its start.
func (n Network) trace(e entry, before map[state]state, radius unit.Length) Way {
	w := Way{Length: e.length, Round: radius, Places: []int{e.to}}
	for s := before[e.state]; ; s = before[s] {
		w.Places, w.Links = append(w.Places, s.from), append(w.Links, s.link)
		if before[s] == (state{}) {
			break
		}
	}
	slices.Reverse(w.Places)
	slices.Reverse(w.Links)
	return w
}

type queue []entry

func (q queue) Len() int { return len(q) }

// Less goes by length; ties by number, so that the way is always the same.
func (q queue) Less(i, j int) bool {
	a, b := q[i], q[j]
	if a.length != b.length {
		return a.length < b.length
	}
	if a.link != b.link {
		return a.link < b.link
	}
	return a.from < b.from
}

func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }

func (q *queue) Push(x any) { *q = append(*q, x.(entry)) }

func (q *queue) Pop() any {
	old := *q
	e := old[len(old)-1]
	*q = old[:len(old)-1]
	return e
}
