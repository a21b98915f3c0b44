package geom

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// The vertices of a stack move with height: a flank that is eased, leans or
// widens is a line that moves square to itself, and a vertex stays where the
// lines of the walls that meet in it cross. Corners of a natural edge move
// along straight lines of their own.

// shift is how far a flank stands outside its line at a height.
func (g *ingredient) shift(f *flank, z int64) float64 {
	d := float64(f.lean) * float64(z-g.z0) / float64(g.z1-g.z0)
	if f.top.depth > 0 {
		d -= float64(f.top.width) * max(0, float64(z-(g.z1-f.top.depth))/float64(f.top.depth))
	}
	if f.under.depth > 0 {
		d -= float64(f.under.width) * max(0, float64(g.z0+f.under.depth-z)/float64(f.under.depth))
	}
	return d
}

// corner is the place of a corner of an ingredient at a height, before flanks
// are shifted.
func (g *ingredient) corner(p pt, z int64) Vec {
	v := p.vec()
	if d, ok := g.drift[p]; ok {
		v = v.Add(d.Mul(float64(z-g.z0) / float64(g.z1-g.z0)))
	}
	return v
}

// turning tells whether a flank does not stay in line when its corners drift.
func (g *ingredient) turning(f *flank) bool {
	if g.drift == nil {
		return false
	}
	dir := f.b.vec().Sub(f.a.vec()).Unit()
	return math.Abs(dir.Cross(g.drift[f.a])) > 1.5/perMM || math.Abs(dir.Cross(g.drift[f.b])) > 1.5/perMM
}

// mayMeet refuses cuts that meet a natural edge at a vertex p of flank f.
func (s *stack) mayMeet(part, f int, p pt) error {
	if s.parts[part].cuts {
		for i := range s.parts {
			if d := s.parts[i].drift[p]; d != (Vec{}) {
				return fmt.Errorf("%s meets the sloping natural edge at (%.1f, %.1f); cuts must keep inside it", s.parts[part].name, p.vec().X, p.vec().Y)
			}
		}
		return nil
	}
	g := &s.parts[part]
	if fl := &g.flanks[f]; p != fl.a && p != fl.b && g.turning(fl) {
		return fmt.Errorf("%s: a cut meets its sloping edge %q at (%.1f, %.1f); cuts must keep inside it", g.name, fl.surface, p.vec().X, p.vec().Y)
	}
	return nil
}

// line is a wall's line at some level: all v with n.v = d, measured from the
// vertex in question; n points out of the ingredient.
type movingLine struct {
	owner
	n Vec
	d float64
}

// move finds the place of every vertex at every level.
func (s *stack) move() error {
	for l := range s.levels {
		at := make([]Vec, len(s.verts))
		for i, p := range s.verts {
			at[i] = p.vec()
		}
		s.pos = append(s.pos, at)
		if err := s.moveAt(l); err != nil {
			return err
		}
	}
	return nil
}

// moveAt places the vertices of one level.
func (s *stack) moveAt(l int) error {
	z := s.levels[l]
	ideal := make([][]Vec, len(s.parts))
	moving := false
	for i := range s.parts {
		g := &s.parts[i]
		if z < g.z0 || z > g.z1 {
			continue
		}
		moves, err := g.ideal(z)
		if err != nil {
			return err
		}
		ideal[i] = moves
		moving = moving || moves != nil
	}
	if !moving {
		return nil
	}
	lines := make([][]movingLine, len(s.verts))
	for k := max(l-1, 0); k <= l && k < len(s.bands); k++ {
		t := &s.bands[k]
		for i, loop := range t.loops {
			for j, p := range loop {
				o := t.owner[i][j]
				m := s.lineOf(o, z)
				lines[p] = withLine(lines[p], m)
				q := loop[(j+1)%len(loop)]
				lines[q] = withLine(lines[q], m)
			}
		}
	}
	for v, set := range lines {
		if len(set) == 0 {
			continue
		}
		base := s.verts[v].vec()
		for i := range s.parts {
			if _, ok := s.parts[i].drift[s.verts[v]]; ok {
				base = s.parts[i].corner(s.verts[v], z)
			}
		}
		d, err := s.displace(set, s.verts[v], base, ideal, z)
		if err != nil {
			return err
		}
		s.pos[l][v] = base.Add(d)
	}
	return s.unfolded(l)
}

// ideal is how far the start of each flank moves when nothing else is near,
// nil if no flank moves at this height.
func (g *ingredient) ideal(z int64) ([]Vec, error) {
	moving := len(g.drift) > 0
	for i := range g.flanks {
		moving = moving || g.shift(&g.flanks[i], z) != 0
	}
	if !moving {
		return nil, nil
	}
	out := make([]Vec, len(g.flanks))
	for i := range g.flanks {
		f, e := &g.flanks[i], &g.flanks[g.flanks[i].prev]
		df, de := g.shift(f, z), g.shift(e, z)
		if df == 0 && de == 0 {
			continue
		}
		v, ok := mitre(g.normal(e, z), de, g.normal(f, z), df)
		if !ok {
			return nil, fmt.Errorf("%s: edge %q runs nearly straight on into %q, but is cut to another slope; the slope cannot end there", g.name, e.surface, f.surface)
		}
		out[i] = v
	}
	return out, nil
}

// normal points out of the region, square to the flank.
func (g *ingredient) normal(f *flank, z int64) Vec {
	return g.corner(f.b, z).Sub(g.corner(f.a, z)).Unit().Left().Mul(-1)
}

func (s *stack) lineOf(o owner, z int64) movingLine {
	g := &s.parts[o.part]
	f := &g.flanks[o.flank]
	return movingLine{o, g.normal(f, z), g.shift(f, z)}
}

func withLine(set []movingLine, m movingLine) []movingLine {
	for _, have := range set {
		if have.owner == m.owner {
			return set
		}
	}
	return append(set, m)
}

// mitre is the displacement that moves a corner onto both of two moved lines.
// It fails where the lines are so nearly parallel that the corner would run
// away along them.
func mitre(m Vec, dm float64, n Vec, dn float64) (Vec, bool) {
	if math.Abs(dm-dn) < 1e-9 {
		sum := m.Add(n)
		k := 1 + m.Dot(n)
		return sum.Mul(dm / k), k > 5e-3
	}
	det := m.Cross(n)
	v := Vec{unit.Length((dm*float64(n.Y) - dn*float64(m.Y)) / det), unit.Length((dn*float64(m.X) - dm*float64(n.X)) / det)}
	return v, math.Abs(det) > 0.05
}

// displace finds how far a vertex moves from the lines of its walls.
func (s *stack) displace(set []movingLine, p pt, base Vec, ideal [][]Vec, z int64) (Vec, error) {
	still := true
	for _, m := range set {
		still = still && m.d == 0
	}
	if still {
		return s.slide(set[0], len(set) == 1, p, base, ideal, z), nil
	}
	// The two lines that cross at the widest angle fix the vertex.
	var e, f movingLine
	widest := 0.0
	for i, m := range set {
		for _, n := range set[i+1:] {
			if c := math.Abs(m.n.Cross(n.n)); c > widest {
				widest, e, f = c, m, n
			}
		}
	}
	if widest < 1e-4 {
		e = set[0]
		for _, m := range set {
			if m.n.Dot(e.n) < 0 || math.Abs(m.d-e.d) > 1e-9 {
				return Vec{}, s.meetingFault(set, p)
			}
		}
		return s.slide(e, true, p, base, ideal, z), nil
	}
	v, ok := mitre(e.n, e.d, f.n, f.d)
	if !ok {
		return Vec{}, s.meetingFault(set, p)
	}
	for _, m := range set {
		if math.Abs(m.n.Dot(v)-m.d) > 5e-3 {
			return Vec{}, s.meetingFault(set, p)
		}
	}
	return v, nil
}

func (s *stack) meetingFault(set []movingLine, p pt) error {
	a, b := set[0], set[len(set)-1]
	return fmt.Errorf("%s: sloping edge %q and %q of %s do not meet cleanly at (%.1f, %.1f); keep the cut away from the sloping edge or let it cross squarely",
		s.parts[a.part].name, s.flankOf(a.owner).surface, s.flankOf(b.owner).surface, s.parts[b.part].name, p.vec().X, p.vec().Y)
}

// slide moves a vertex in the middle of a moved flank: square to it where
// there is room, in proportion between the moved corners where there is not.
func (s *stack) slide(m movingLine, alone bool, p pt, base Vec, ideal [][]Vec, z int64) Vec {
	square := m.n.Mul(m.d)
	moves := ideal[m.part]
	if moves == nil || !alone {
		return square
	}
	g := &s.parts[m.part]
	f := &g.flanks[m.flank]
	if p == f.a {
		return moves[m.flank]
	}
	if p == f.b {
		return moves[f.next]
	}
	a, b := g.corner(f.a, z), g.corner(f.b, z)
	along := Through(a, b)
	t, whole := float64(along.Along(base)), float64(b.Sub(a).Len())
	dir := along.D.Unit()
	if dir.Dot(moves[m.flank]) < t && t < whole+dir.Dot(moves[f.next]) {
		return square
	}
	return moves[m.flank].Lerp(moves[f.next], t/whole)
}
