package step

import (
	"fmt"
	"slices"

	"slabwright/model/geom"
)

// hull is the skin of a solid as faces that share nodes and edges: flat ones as
// the kernel made them, and round ones in the place of its facets.
type hull struct {
	nodes []geom.Vec3
	flats []flat
	tubes []tube
}

// flat is a plane face: its loops run counter-clockwise seen from outside,
// holes clockwise.
type flat struct {
	normal geom.Vec3
	loops  []loop
	gone   bool // a round face has taken its place
}

// loop is a closed outline; a whole circle is a loop of one bent stop.
type loop []stop

// stop is a node of an outline with the edge that leaves it: a straight line,
// or a bend.
type stop struct {
	node int
	bent bool
	bend bend
}

// bend is a curved edge: which rim of which round face it is.
type bend struct {
	tube, rim int
	forward   bool // runs as the rim does
}

// pair is a directed line between two nodes.
type pair [2]int

// hullOf takes over the faces of a solid and finds its round ones.
func hullOf(s geom.Solid) (*hull, error) {
	h := &hull{}
	index := map[geom.Vec3]int{}
	for _, f := range s.Faces() {
		out := flat{normal: f.Normal}
		for _, l := range f.Loops {
			var stops loop
			for _, p := range l {
				p = geom.Vec3{X: p.X + 0, Y: p.Y + 0, Z: p.Z + 0} // no minus zero: it prints as another number
				i, ok := index[p]
				if !ok {
					i = len(h.nodes)
					index[p] = i
					h.nodes = append(h.nodes, p)
				}
				stops = append(stops, stop{node: i})
			}
			out.loops = append(out.loops, stops)
		}
		h.flats = append(h.flats, out)
	}
	h.findRounds(s.Faces())
	return h, h.closed()
}

// closed makes sure that every edge is used once each way.
func (h *hull) closed() error {
	lines := map[pair]int{}
	bends := map[bend]int{}
	for _, f := range h.flats {
		if f.gone {
			continue
		}
		for _, l := range f.loops {
			for i, a := range l {
				if a.bent {
					bends[a.bend]++
				} else {
					lines[pair{a.node, l.next(i)}]++
				}
			}
		}
	}
	for i := range h.tubes {
		for _, e := range h.tubes[i].boundary() {
			if e.bent {
				bends[e.bend]++
			} else {
				lines[e.line]++
			}
		}
	}
	for l, n := range lines {
		if n != 1 || lines[pair{l[1], l[0]}] != 1 {
			return fmt.Errorf("the skin is open between %v and %v", h.nodes[l[0]], h.nodes[l[1]])
		}
	}
	for b, n := range bends {
		if n != 1 || bends[b.back()] != 1 {
			return fmt.Errorf("the skin is open at the round face %d", b.tube)
		}
	}
	return nil
}

func (l loop) next(i int) int { return l[(i+1)%len(l)].node }

// sides are the lines of a loop without bends.
func (l loop) sides() []pair {
	out := make([]pair, len(l))
	for i, a := range l {
		out[i] = pair{a.node, l.next(i)}
	}
	return out
}

// find is the place of a node, -1 if it is not there.
func (l loop) find(node int) int {
	return slices.IndexFunc(l, func(s stop) bool { return s.node == node })
}
