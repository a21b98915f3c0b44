package survey

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// fitting is the task of fitting the coordinates of a system to its readings,
// about the starting coordinates from.
type fitting struct {
	*system
	rows []row     // those of the system, then assumptions
	from []float64 // all coordinates; the held ones stay
	x    []float64 // scratch
}

func (s *system) fitting(from []float64, assumed []row) *fitting {
	rows := append(append([]row(nil), s.rows...), assumed...)
	return &fitting{s, rows, from, make([]float64, len(from))}
}

// freedoms is how many rows keep a free network from floating.
func (s *system) freedoms() int {
	if s.free {
		return 3
	}
	return 0
}

func (f *fitting) dims() (int, int) { return len(f.rows) + f.freedoms(), len(f.unknown) }

func (f *fitting) size() []float64 {
	out := make([]float64, len(f.unknown))
	for i := range out {
		out[i] = f.system.size(f.from) + 1
	}
	return out
}

// all gives the full list of coordinates for values of the unknowns.
func (f *fitting) all(u []float64) []float64 {
	copy(f.x, f.from)
	for i, k := range f.unknown {
		f.x[k] = u[i]
	}
	return f.x
}

// values picks the unknowns out of the full list.
func (s *system) values(x []float64) []float64 {
	u := make([]float64, len(s.unknown))
	for i, k := range s.unknown {
		u[i] = x[k]
	}
	return u
}

func (f *fitting) linear(u []float64, jacobian *mat.Dense, miss []float64) {
	x := f.all(u)
	jacobian.Zero()
	for i := range f.rows {
		r := &f.rows[i]
		v := r.value(x, len(f.names))
		miss[i] = r.miss(v.v) / r.sd
		for k, d := range v.d {
			// Points on top of each other have no direction and no derivative.
			if e := r.slot(k, len(f.names)); e >= 0 && f.column[e] >= 0 && math.Abs(d) < 1e12 {
				j := f.column[e]
				jacobian.Set(i, j, jacobian.At(i, j)+d/r.sd)
			}
		}
	}
	if f.free {
		for k, g := range f.floating(x) {
			for j, v := range g {
				jacobian.Set(len(f.rows)+k, j, v)
			}
			miss[len(f.rows)+k] = 0
		}
	}
}

// floating gives the three ways in which a free network may move without any
// reading noticing, over the unknowns: two shifts and a turn about its middle,
// each of length 1 and square to the others. Used as rows of the adjustment
// they are the inner constraints: no shift, no turn against the start.
func (s *system) floating(x []float64) [3][]float64 {
	m := float64(len(s.names))
	cx, cy := 0.0, 0.0
	for i := range s.names {
		cx += x[2*i] / m
		cy += x[2*i+1] / m
	}
	var g [3][]float64
	for k := range g {
		g[k] = make([]float64, len(s.unknown))
	}
	spin := 0.0
	for i := range s.names {
		spin = math.Hypot(spin, math.Hypot(x[2*i]-cx, x[2*i+1]-cy))
	}
	for i := range s.names {
		jx, jy := s.column[2*i], s.column[2*i+1]
		g[0][jx], g[1][jy] = 1/math.Sqrt(m), 1/math.Sqrt(m)
		g[2][jx], g[2][jy] = -(x[2*i+1]-cy)/spin, (x[2*i]-cx)/spin
	}
	return g
}

// backTo lays the adjusted points of a free network on its start: same middle,
// and no turn, in the sense of the inner constraints.
func (s *system) backTo(start, x []float64) []float64 {
	middle := func(x []float64) geom.Vec {
		var m geom.Vec
		for i := range s.names {
			m = m.Add(point(x, i).Mul(1 / float64(len(s.names))))
		}
		return m
	}
	a, b := middle(start), middle(x)
	sin, cos := 0.0, 0.0
	for i := range s.names {
		p, q := point(x, i).Sub(b), point(start, i).Sub(a)
		sin += p.Cross(q)
		cos += p.Dot(q)
	}
	turn := unit.Angle(math.Atan2(sin, cos))
	out := append([]float64(nil), x...)
	for i := range s.names {
		v := point(x, i).Sub(b).Turn(turn).Add(a)
		out[2*i], out[2*i+1] = float64(v.X), float64(v.Y)
	}
	return out
}
