package geom

import (
	"fmt"
	"math"
)

// unfolded makes sure that moving the vertices of a level left every section
// there whole: no side turned round, no outline running into another.
func (s *stack) unfolded(l int) error {
	for k := max(l-1, 0); k <= l && k < len(s.bands); k++ {
		t := &s.bands[k]
		var loops [][]pt
		sum, slack := 0.0, 0.0
		moved := false
		for i, loop := range t.loops {
			at := make([]pt, len(loop))
			for j, p := range loop {
				q := loop[(j+1)%len(loop)]
				a, b := s.pos[l][p], s.pos[l][q]
				o := t.owner[i][j]
				g, f := &s.parts[o.part], s.flankOf(o)
				dir := g.corner(f.b, s.levels[l]).Sub(g.corner(f.a, s.levels[l]))
				if g.cuts {
					dir = dir.Mul(-1)
				}
				static := a == s.verts[p].vec() && b == s.verts[q].vec()
				moved = moved || !static
				if !static && !(b.Sub(a).Dot(dir) > 0) {
					return fmt.Errorf("%s: side %q is too short for the slopes on it: near (%.1f, %.1f) nothing of it would be left at height %.1f; make the slope smaller or the side longer",
						g.name, f.surface, s.verts[p].vec().X, s.verts[p].vec().Y, s.z(l))
				}
				g0, err := snap(a)
				if err != nil {
					return fmt.Errorf("%s: %w", s.parts[0].name, err)
				}
				at[j] = g0
			}
			loops = append(loops, at)
			sum += float64(area2(at))
			slack += around(at)
		}
		if !moved {
			continue
		}
		odd := fromRaw(loops, func(w []int32) bool { return w[0]&1 != 0 })
		if math.Abs(float64(odd.Area())*2*perMM*perMM-sum) > slack {
			return s.clash(k, l, loops)
		}
	}
	return nil
}

// clash names two outlines of a section that run into each other.
func (s *stack) clash(k, l int, loops [][]pt) error {
	t := &s.bands[k]
	name := func(i int) string { return s.flankOf(t.owner[i][0]).surface }
	for i := range loops {
		a := fromRaw(loops[i:i+1], nonZero)
		for j := range i {
			b := fromRaw(loops[j:j+1], nonZero)
			common := a.Intersect(b).Area()
			if common > 0 && common < min(a.Area(), b.Area())-1e-3 {
				return fmt.Errorf("%s: with its slopes %q runs into %q at height %.1f; move them apart or make the slope smaller",
					s.parts[0].name, name(i), name(j), s.z(l))
			}
		}
	}
	return fmt.Errorf("%s: its sloping outline crosses itself at height %.1f; make the slope smaller or its corners blunter", s.parts[0].name, s.z(l))
}
