package mesh

import (
	"fmt"
	"math"
	"sort"

	"slabwright/model/geom"
)

// detach pairs every side with its opposite and gives each sheet of triangles
// its own vertices, so that afterwards every edge lies between exactly two
// triangles and every vertex has one ring of them. The error names the first
// side without an opposite.
func (m *Mesh) detach() error {
	sides := m.sides()
	link := newGroups(3 * len(m.Triangles))
	join := func(s, o side) {
		link.join(3*s.tri+s.k, 3*o.tri+(o.k+1)%3)
		link.join(3*s.tri+(s.k+1)%3, 3*o.tri+o.k)
	}
	for i, t := range m.Triangles {
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			there, back := sides[[2]int32{a, b}], sides[[2]int32{b, a}]
			if len(there) != len(back) || a == b {
				return m.open(i, a, b, len(there), len(back))
			}
			if len(there) == 1 {
				join(there[0], back[0])
			} else if there[0] == (side{int32(i), int32(k)}) {
				pairs, ok := m.wedges(a, b, there, back)
				if !ok {
					return m.open(i, a, b, len(there), len(back))
				}
				for _, p := range pairs {
					join(p[0], p[1])
				}
			}
		}
	}
	m.separate(link)
	return nil
}

// sides lists, for every directed edge, the triangle sides along it.
func (m *Mesh) sides() map[[2]int32][]side {
	out := make(map[[2]int32][]side, 3*len(m.Triangles))
	store := make([]side, 0, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		for k := range 3 {
			key := [2]int32{t[k], t[(k+1)%3]}
			s := side{int32(i), int32(k)}
			if have := out[key]; have != nil {
				out[key] = append(have, s)
				continue
			}
			store = append(store, s)
			out[key] = store[len(store)-1 : len(store) : len(store)]
		}
	}
	return out
}

func (m *Mesh) open(tri int, a, b int32, there, back int) error {
	return fmt.Errorf("mesh: face %d (%s): the edge from %.3f to %.3f is used %d times one way and %d times the other",
		m.FacetOf[tri], m.Facets[m.FacetOf[tri]].Surface, m.Vertices[a], m.Vertices[b], there, back)
}

// wedges pairs the sides that meet in one edge so that each pair encloses
// material: going around the edge, a triangle that has the material ahead of it
// belongs to the next one. It fails when the sheets do not alternate.
func (m *Mesh) wedges(a, b int32, there, back []side) ([][2]side, bool) {
	axis := m.Vertices[b].Sub(m.Vertices[a]).Unit()
	apex := func(s side) geom.Vec3 {
		w := m.Vertices[m.Triangles[s.tri][(s.k+2)%3]].Sub(m.Vertices[a])
		return w.Sub(axis.Mul(w.Dot(axis)))
	}
	u := apex(there[0]).Unit()
	v := axis.Cross(u)
	type sheet struct {
		side
		turn    float64
		forward bool // closes the material behind it
	}
	var ring []sheet
	add := func(s side, forward bool) {
		w := apex(s)
		turn := math.Atan2(w.Dot(v), w.Dot(u))
		if turn < 0 {
			turn += 2 * math.Pi
		}
		ring = append(ring, sheet{s, turn, forward})
	}
	for i := range there {
		add(there[i], true)
		add(back[i], false)
	}
	sort.SliceStable(ring, func(i, j int) bool { return ring[i].turn < ring[j].turn })
	var pairs [][2]side
	for i, s := range ring {
		next := ring[(i+1)%len(ring)]
		if s.forward == next.forward {
			return nil, false
		}
		if !s.forward {
			pairs = append(pairs, [2]side{s.side, next.side})
		}
	}
	return pairs, true
}

// separate copies a vertex for every group of corners beyond its first.
func (m *Mesh) separate(link groups) {
	owner := make([]int32, len(m.Vertices)) // group that keeps the vertex, plus one
	copies := make(map[int32]int32)
	for i := range m.Triangles {
		for k := range 3 {
			g := link.root(int32(3*i + k))
			v := m.Triangles[i][k]
			switch owner[v] {
			case 0:
				owner[v] = g + 1
			case g + 1:
			default:
				c, ok := copies[g]
				if !ok {
					c = int32(len(m.Vertices))
					copies[g] = c
					m.Vertices = append(m.Vertices, m.Vertices[v])
				}
				m.Triangles[i][k] = c
			}
		}
	}
}

// groups keeps disjoint sets of small numbers.
type groups []int32

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = int32(i)
	}
	return g
}

func (g groups) root(i int32) int32 {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

// join puts two sets together under the lower root, so the outcome does not
// depend on the order.
func (g groups) join(a, b int32) {
	a, b = g.root(a), g.root(b)
	if a > b {
		a, b = b, a
	}
	g[b] = a
}
