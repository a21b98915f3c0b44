package dim

import (
	"math"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// extension is an extension line: where it runs, square to the dimension line,
// and from where to where along the way out.
type extension struct {
	r        *ruler
	u        unit.Length
	from, to unit.Length
}

// extend draws the extension lines of rulers. Where several would lie on each
// other the one that ends farthest out is drawn for all.
func extend(rulers []*ruler, f *field, s *Style) {
	var list []extension
	for _, r := range rulers {
		for i, p := range r.e.pts {
			foot := unit.Length(r.e.out.Dot(f.slide(p, r.e.out)))
			x := extension{r, r.e.u[i], min(foot+s.Off, r.e.dist-0.5), r.e.dist + s.Past}
			if !x.joined(list) {
				list = append(list, x)
			}
		}
	}
	for _, x := range list {
		e := x.r.e
		at := func(v unit.Length) geom.Vec { return e.dir.Mul(float64(x.u)).Add(e.out.Mul(float64(v))) }
		x.r.lines = append(x.r.lines, newLine(at(x.from), at(x.to), s.Lines.Narrow/2, reach))
	}
}

// joined merges x into an extension line in the same place; false if there is
// none.
func (x *extension) joined(list []extension) bool {
	const off = 0.1
	for i := range list {
		o := &list[i]
		if o.r.e.out == x.r.e.out && abs(o.u-x.u) < off {
			o.from, o.to = min(o.from, x.from), max(o.to, x.to)
			return true
		}
	}
	return false
}

// slide follows lines of the view from p in direction out to where they end,
// so that no extension line runs along an edge.
func (f *field) slide(p, out geom.Vec) geom.Vec {
	const off = 0.3 // lines this near are taken for the same
	for range 8 {
		next := p
		probe := newLine(p, p.Add(out.Mul(beside)), 0, reach)
		lines, _ := f.alongLine(&probe)
		for _, i := range lines {
			l := &f.lines[i]
			if l.role != edge {
				continue
			}
			a, b := l.a.Sub(p), l.b.Sub(p)
			if math.Abs(out.Cross(a)) > off || math.Abs(out.Cross(b)) > off {
				continue
			}
			from, to := min(out.Dot(a), out.Dot(b)), max(out.Dot(a), out.Dot(b))
			if from <= off && to > next.Sub(p).Dot(out)+off {
				next = p.Add(out.Mul(to))
			}
		}
		if next == p {
			return p
		}
		p = next
	}
	return p
}
