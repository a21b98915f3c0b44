package geom

import (
	"fmt"
	"math"
	"slices"

	"slabwright/model/unit"
)

// A stack is a body made of regions between heights: some add material, some
// cut it away. All regions are cut up together once, so that the skin of the
// whole stack shares its vertices. Between two heights the vertices of the
// outlines may move, which gives eased arrises, countersinks and leaning or
// natural edges; see loft.go.

// ingredient is one region of a stack between two heights in micrometres.
type ingredient struct {
	name     string // what it is called in faults
	up, down string // names of the level faces it makes, by the way they look
	region   Region
	cuts     bool // takes material away
	z0, z1   int64
	flanks   []flank
	drift    map[pt]Vec // how far corners move from z0 to z1
}

// flank is one side of an ingredient's outline, the region on its left.
type flank struct {
	a, b       pt
	prev, next int // neighbours round the loop
	surface    string
	curved     bool
	lean       unit.Length // how far out it moves from z0 to z1
	top, under bevel
}

// bevel draws a flank in by width over the last depth micrometres before a
// face; a negative width widens.
type bevel struct {
	width unit.Length
	depth int64
}

// stack is a body under construction.
type stack struct {
	parts  []ingredient
	cover  Cover
	levels []int64 // heights where something changes, in micrometres
	verts  []pt
	ids    map[pt]int32
	owners map[edge][]owner
	bands  []tier
	walls  []wall
	floors []floor
	pos    [][]Vec // place of every vertex at every level
}

// edge runs between two vertices, the material on its left.
type edge struct{ p, q int32 }

// owner is a flank of an ingredient.
type owner struct{ part, flank int }

// tier is what lies between two neighbouring levels.
type tier struct {
	loops  [][]int32 // outlines of the material
	owner  [][]owner // of the edge that starts at each vertex
	wall   [][]int   // likewise
	byEdge map[edge]int
}

// wall is an upright or sloping face over one edge, across several tiers when
// nothing changes between them.
type wall struct {
	edge
	owner
	from, to int  // levels
	skew     bool // not flat: made of two triangles, p below to q above being common
}

// build makes the solid, or one that carries the fault.
func build(parts ...ingredient) Solid {
	s := &stack{parts: parts, ids: map[pt]int32{}, owners: map[edge][]owner{}}
	for _, step := range []func() error{s.cut, s.tiers, s.move, s.raise} {
		if err := step(); err != nil {
			return fault(err)
		}
	}
	if len(s.walls) == 0 {
		return fault(fmt.Errorf("%s: nothing is left of it", parts[0].name))
	}
	faces := append(s.wallFaces(), s.floorFaces()...)
	volume, centroid := s.measure()
	return newSolid(faces, faces, volume, centroid)
}

// cut subdivides the plane and finds whose flank every edge is.
func (s *stack) cut() error {
	var regions []Region
	for i := range s.parts {
		g := &s.parts[i]
		regions = append(regions, g.region)
		s.levels = append(s.levels, g.z0, g.z1)
		for _, f := range g.flanks {
			s.levels = append(s.levels, g.z1-f.top.depth, g.z0+f.under.depth)
		}
	}
	slices.Sort(s.levels)
	s.levels = slices.Compact(s.levels)
	s.cover = Subdivide(regions...)
	if err := s.cover.Err(); err != nil {
		return err
	}
	for i := range s.parts {
		g := &s.parts[i]
		known := make(map[[2]pt]int, len(g.flanks))
		for j, f := range g.flanks {
			known[[2]pt{f.a, f.b}] = j
		}
		cells := s.cover.Select(func(member []bool) bool { return member[i] })
		for _, pc := range cells.pieces {
			for _, loop := range pc {
				for j, p := range loop {
					q := loop[(j+1)%len(loop)]
					f, ok := known[[2]pt{p, q}]
					if !ok {
						f = g.flankNear(p, q)
					}
					if err := s.mayMeet(i, f, p); err != nil {
						return err
					}
					e := edge{s.id(p), s.id(q)}
					if g.cuts {
						e.p, e.q = e.q, e.p
					}
					s.owners[e] = append(s.owners[e], owner{i, f})
				}
			}
		}
	}
	return nil
}

func (s *stack) id(p pt) int32 {
	if n, ok := s.ids[p]; ok {
		return n
	}
	n := int32(len(s.verts))
	s.ids[p] = n
	s.verts = append(s.verts, p)
	return n
}

// flankNear is the flank that a piece from p to q came from; rounding may have
// moved its ends off by a grid step.
func (g *ingredient) flankNear(p, q pt) int {
	best, near := 0, math.Inf(1)
	for i, f := range g.flanks {
		d, _ := toSegment(p.vec(), f.a, f.b)
		e, _ := toSegment(q.vec(), f.a, f.b)
		if backwards := (f.b.x-f.a.x)*(q.x-p.x)+(f.b.y-f.a.y)*(q.y-p.y) < 0; backwards {
			d += 1e30 // only when there is no other
		}
		if d+e < near {
			best, near = i, d+e
		}
	}
	return best
}

// solid tells whether there is material between level k and the next one.
func (s *stack) solid(k int, member []bool) bool {
	if k < 0 || k+1 >= len(s.levels) {
		return false
	}
	in := false
	for i := range s.parts {
		if g := &s.parts[i]; member[i] && s.active(i, k) {
			if g.cuts {
				return false
			}
			in = true
		}
	}
	return in
}

func (s *stack) active(part, k int) bool {
	g := &s.parts[part]
	return k >= 0 && k+1 < len(s.levels) && g.z0 <= s.levels[k] && s.levels[k+1] <= g.z1
}

// tiers outlines the material between neighbouring levels.
func (s *stack) tiers() error {
	for k := 0; k+1 < len(s.levels); k++ {
		cells := s.cover.Select(func(member []bool) bool { return s.solid(k, member) })
		t := tier{byEdge: map[edge]int{}}
		passed := map[int32]bool{}
		for _, pc := range cells.pieces {
			for _, loop := range pc {
				ids := make([]int32, len(loop))
				for j, p := range loop {
					ids[j] = s.id(p)
					if passed[ids[j]] {
						return fmt.Errorf("%s: at (%.1f, %.1f) the material hangs together in a point only; move one of the cuts or corners that meet there",
							s.parts[0].name, p.vec().X, p.vec().Y)
					}
					passed[ids[j]] = true
				}
				own := make([]owner, len(loop))
				for j := range ids {
					own[j] = s.ownerOf(edge{ids[j], ids[(j+1)%len(ids)]}, k)
				}
				t.loops, t.owner = append(t.loops, ids), append(t.owner, own)
			}
		}
		s.bands = append(s.bands, t)
	}
	return nil
}

// ownerOf is the flank that bounds the material at an edge of tier k.
func (s *stack) ownerOf(e edge, k int) owner {
	for _, o := range s.owners[e] {
		if s.active(o.part, k) {
			return o
		}
	}
	panic("geom: an edge of a stack without a flank")
}

// raise puts up the walls, each over as many tiers as it stays the same.
func (s *stack) raise() error {
	for k := range s.bands {
		t := &s.bands[k]
		for i, loop := range t.loops {
			t.wall = append(t.wall, make([]int, len(loop)))
			for j, p := range loop {
				e, o := edge{p, loop[(j+1)%len(loop)]}, t.owner[i][j]
				w := -1
				if k > 0 {
					if below, ok := s.bands[k-1].byEdge[e]; ok && s.extends(below, o, k) {
						w = below
					}
					if _, ok := s.bands[k-1].byEdge[edge{e.q, e.p}]; ok {
						v := s.verts[p].vec().Lerp(s.verts[e.q].vec(), 0.5)
						return fmt.Errorf("%s: at (%.1f, %.1f, %.1f) the material hangs together along a line only; change a depth or move a cut",
							s.parts[0].name, v.X, v.Y, length(s.levels[k]))
					}
				}
				if w < 0 {
					w = len(s.walls)
					s.walls = append(s.walls, wall{edge: e, owner: o, from: k})
				}
				s.walls[w].to = k + 1
				t.wall[i][j], t.byEdge[e] = w, w
			}
		}
	}
	for i := range s.walls {
		w := &s.walls[i]
		w.skew = !s.flat(w)
	}
	s.findFloors()
	return nil
}

// extends tells whether a wall goes on straight through tier k.
func (s *stack) extends(below int, o owner, k int) bool {
	w := &s.walls[below]
	return w.owner == o && s.straight(w.p, w.from, k) && s.straight(w.q, w.from, k)
}

func (s *stack) z(level int) unit.Length { return length(s.levels[level]) }

func (s *stack) flankOf(o owner) *flank { return &s.parts[o.part].flanks[o.flank] }
