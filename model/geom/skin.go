package geom

import (
	"math"
	"slices"

	"slabwright/model/unit"
)

// flatness is how far the fourth corner of a wall may lie off the plane of the
// other three to count as flat: the rounding of a float64 computation.
const flatness unit.Length = 1e-7

// straight tells whether a vertex keeps to one straight line from a level up
// to the one after level k.
func (s *stack) straight(v int32, from, k int) bool {
	a, c := s.pos[from][v], s.pos[k+1][v]
	for l := from + 1; l <= k; l++ {
		t := float64(s.levels[l]-s.levels[from]) / float64(s.levels[k+1]-s.levels[from])
		if b := s.pos[l][v]; (a != b || b != c) && a.Lerp(c, t).Sub(b).Len() > flatness {
			return false
		}
	}
	return true
}

func (s *stack) at(v int32, level int) Vec3 { return s.pos[level][v].Up(s.z(level)) }

// flat tells whether the four corners of a wall lie in a plane.
func (s *stack) flat(w *wall) bool {
	a, b, c, d := s.at(w.p, w.from), s.at(w.q, w.from), s.at(w.q, w.to), s.at(w.p, w.to)
	n := c.Sub(a).Cross(d.Sub(b)).Unit()
	return math.Abs(b.Sub(a).Dot(n)) < float64(flatness)
}

// wallFaces makes the faces of all walls. Where other faces have a corner on
// an upright edge of a wall, the wall has it too.
func (s *stack) wallFaces() []Face {
	used := s.corners()
	var faces []Face
	for i := range s.walls {
		w := &s.walls[i]
		f := s.flankOf(w.owner)
		g := &s.parts[w.part]
		surface := f.surface
		if a, b := g.bevelled(f, s.levels[w.from]), g.bevelled(f, s.levels[w.to]); a != b {
			surface += " arris"
		}
		side := func(v int32, from, to, step int) []Vec3 {
			var out []Vec3
			for l := from + step; l != to; l += step {
				if used[l][v] {
					out = append(out, s.at(v, l))
				}
			}
			return out
		}
		p0, q0, p1, q1 := s.at(w.p, w.from), s.at(w.q, w.from), s.at(w.p, w.to), s.at(w.q, w.to)
		right, left := side(w.q, w.from, w.to, 1), side(w.p, w.to, w.from, -1)
		if !w.skew {
			loop := slices.Concat([]Vec3{p0, q0}, right, []Vec3{q1, p1}, left)
			faces = append(faces, newFace(surface, f.curved, loop))
			continue
		}
		faces = append(faces,
			newFace(surface, true, slices.Concat([]Vec3{p0, q0}, right, []Vec3{q1})),
			newFace(surface, true, slices.Concat([]Vec3{p0, q1, p1}, left)))
	}
	return faces
}

// bevelled is the part of a flank's shift that comes from its bevels.
func (g *ingredient) bevelled(f *flank, z int64) float64 {
	plain := *f
	plain.lean = 0
	return g.shift(&plain, z)
}

// corners tells which vertices are corners of a face at each level.
func (s *stack) corners() [][]bool {
	used := make([][]bool, len(s.levels))
	for l := range used {
		used[l] = make([]bool, len(s.verts))
	}
	for i := range s.walls {
		w := &s.walls[i]
		for _, l := range [2]int{w.from, w.to} {
			used[l][w.p], used[l][w.q] = true, true
		}
	}
	for _, fl := range s.floors {
		for _, loop := range fl.loops {
			for _, p := range loop {
				used[fl.level][s.ids[p]] = true
			}
		}
	}
	return used
}

// floor is a level face: material ends there going up or going down.
type floor struct {
	level int
	up    bool
	name  string
	loops piece
}

// findFloors finds the level faces. One face belongs to one ingredient, which
// begins or ends there.
func (s *stack) findFloors() {
	for l := range s.levels {
		for _, up := range [2]bool{true, false} {
			in, out := l-1, l
			if !up {
				in, out = l, l-1
			}
			for i := range s.parts {
				if in < 0 || in == len(s.bands) || !s.ends(i, l, up) {
					continue
				}
				cells := s.cover.Select(func(member []bool) bool {
					return member[i] && s.solid(in, member) && !s.solid(out, member) && s.cause(member, l, up) == i
				})
				name := s.parts[i].up
				if !up {
					name = s.parts[i].down
				}
				for _, pc := range cells.pieces {
					s.floors = append(s.floors, floor{l, up, name, pc})
				}
			}
		}
	}
}

// floorFaces makes the level faces.
func (s *stack) floorFaces() []Face {
	var faces []Face
	for _, fl := range s.floors {
		var loops [][]Vec3
		for _, loop := range fl.loops {
			out := make([]Vec3, len(loop))
			for i, p := range loop {
				out[i] = s.at(s.ids[p], fl.level)
			}
			if !fl.up {
				slices.Reverse(out)
			}
			loops = append(loops, out)
		}
		faces = append(faces, newFace(fl.name, false, loops...))
	}
	return faces
}

// ends tells whether an ingredient can make a level face at a level: material
// that ends there or a cut that starts.
func (s *stack) ends(part, l int, up bool) bool {
	g := &s.parts[part]
	if up != g.cuts {
		return g.z1 == s.levels[l]
	}
	return g.z0 == s.levels[l]
}

// cause is the first ingredient that makes a level face at a cell. Cuts come
// last among the ingredients and go first here.
func (s *stack) cause(member []bool, l int, up bool) int {
	for i := len(s.parts) - 1; i >= 0; i-- {
		if member[i] && s.ends(i, l, up) {
			return i
		}
	}
	return -1
}

// newFace makes a face from its loops; the normal is that of the whole loop
// (M. E. Newell's sum over its edges).
func newFace(surface string, curved bool, loops ...[]Vec3) Face {
	var n Vec3
	for i, a := range loops[0] {
		b := loops[0][(i+1)%len(loops[0])]
		o := loops[0][0]
		n = n.Add(a.Sub(o).Cross(b.Sub(o)))
	}
	return Face{Loops: loops, Normal: n.Unit(), Surface: surface, Curved: curved}
}

// measure gives volume and centroid by the prismatoid formula: between two
// levels the area of the section, and its moments, are polynomials of at most
// the third degree in height, for which Simpson's rule is exact.
func (s *stack) measure() (unit.Volume, Vec3) {
	var v, mx, my, mz float64
	o := s.verts[0].vec()
	for k := range s.bands {
		z0, z1 := float64(s.z(k)), float64(s.z(k+1))
		for i, weight := range [3]float64{1, 4, 1} {
			t := float64(i) / 2
			area, sx, sy := s.section(k, t, o)
			w := weight / 6 * (z1 - z0)
			v += w * area
			mx += w * sx
			my += w * sy
			mz += w * area * (z0 + t*(z1-z0))
		}
	}
	c := Vec3{unit.Length(mx / v), unit.Length(my / v), unit.Length(mz / v)}
	return unit.Volume(v), c.Add(o.Up(0))
}

// section gives the area and the first moments about o of the section a
// fraction t of the way up tier k.
func (s *stack) section(k int, t float64, o Vec) (area, sx, sy float64) {
	b := &s.bands[k]
	z := float64(s.levels[k]) + t*float64(s.levels[k+1]-s.levels[k])
	for i, loop := range b.loops {
		var pts []Vec
		for j, p := range loop {
			pts = append(pts, s.pos[k][p].Lerp(s.pos[k+1][p], t).Sub(o))
			if w := &s.walls[b.wall[i][j]]; w.skew {
				lo, hi := float64(s.levels[w.from]), float64(s.levels[w.to])
				pts = append(pts, s.pos[w.from][w.p].Lerp(s.pos[w.to][w.q], (z-lo)/(hi-lo)).Sub(o))
			}
		}
		a, x, y := moments(pts)
		area, sx, sy = area+a, sx+x, sy+y
	}
	return area, sx, sy
}

// moments are the signed area of a polygon and its first moments.
func moments(pts []Vec) (area, sx, sy float64) {
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		c := a.Cross(b)
		area += c / 2
		sx += c * float64(a.X+b.X) / 6
		sy += c * float64(a.Y+b.Y) / 6
	}
	return area, sx, sy
}
