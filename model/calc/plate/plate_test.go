package plate

import (
	"math"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// set is the hardwood-like set of the CalculiX references.
var set = Wood{Along: 11000, Over: 750, Poisson: 0.43, Shear: 690, ShearAlong: 690, ShearRolling: 60, Density: 700}

// isotropic has nu = 0.3.
var isotropic = Wood{Along: 10000, Over: 10000, Poisson: 0.3, Shear: 10000 / 2.6, ShearAlong: 1e8, ShearRolling: 1e8}

// rigid takes the transverse shear out: the thin plate of Kirchhoff.
func (w Wood) rigid() Wood {
	w.ShearAlong, w.ShearRolling = 1e8, 1e8
	return w
}

func top(w Wood, a, b, t unit.Length) Plate {
	return Plate{Outline: geom.Rect(geom.V(0, 0), geom.V(a, b)), Thick: t, Wood: w}
}

// line puts n + 1 links on a line, each with its share of k per mm.
func line(a, b geom.Vec, n int, k float64, acts Acts) []Link {
	var out []Link
	l := float64(b.Sub(a).Len())
	for i := 0; i <= n; i++ {
		share := l / float64(n)
		if i == 0 || i == n {
			share /= 2
		}
		out = append(out, Link{On: Spot{At: a.Lerp(b, float64(i)/float64(n))}, Stiffness: k * share, Acts: acts, Starts: true})
	}
	return out
}

// threeSides carries a top along the lines `in` from the back and both sides.
func threeSides(a, b, in unit.Length, n int, k float64, acts Acts) []Link {
	l := line(geom.V(in, in), geom.V(in, b), n, k, acts)
	l = append(l, line(geom.V(a-in, in), geom.V(a-in, b), n, k, acts)...)
	return append(l, line(geom.V(in, in), geom.V(a-in, in), 2*n, k, acts)...)
}

// fourSides carries a top along its outline.
func fourSides(a, b unit.Length, n int, k float64) []Link {
	return append(threeSides(a, b, 0, n, k, Both), line(geom.V(0, b), geom.V(a, b), 2*n, k, Both)...)
}

// strip carries a top on strips 60 mm wide, spread on lines across them.
func strip(a, b unit.Length, across, n int, k float64, acts Acts) []Link {
	var out []Link
	for q := 0; q <= across; q++ {
		share := 60 / float64(across)
		if q == 0 || q == across {
			share /= 2
		}
		ls := threeSides(a, b, 60*unit.Length(q)/unit.Length(across), n, k*share, acts)
		for i := range ls {
			ls[i].Starts = q == across
		}
		out = append(out, ls...)
	}
	return out
}

func solver(t testing.TB, h unit.Length, links []Link, plates ...Plate) *Solver {
	t.Helper()
	s, err := New(Assembly{Plates: plates, Links: links}, h)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func solve(t testing.TB, s *Solver, c Case) *Result {
	t.Helper()
	r, err := s.Solve(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// near complains when got differs from want by more than a share of want.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if d := math.Abs(got-want) / math.Abs(want); !(d <= share) {
		t.Errorf("%s is %.6g, the reference says %.6g: %.2f %% off, allowed %.2f %%", what, got, want, 100*d, 100*share)
	}
}

// momentNear averages the moments of the samples around a place.
func momentNear(r *Result, at geom.Vec, within unit.Length) [3]float64 {
	var m [3]float64
	n := 0.0
	for _, s := range r.Samples(0) {
		if s.At.Sub(at).Len() < within {
			for i := range m {
				m[i] += s.Moment[i]
			}
			n++
		}
	}
	for i := range m {
		m[i] /= n
	}
	return m
}
