package geom

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// TestPasses compares the pixel test with clipping in rational numbers: a
// segment that has more than a point in common with the closed pixel runs
// through it, one that touches it does so in a corner, which counts if it is
// the lower left one.
func TestPasses(t *testing.T) {
	r := rand.New(rand.NewPCG(43, 44))
	corners := 0
	for range 20000 {
		random := func() pt { return pt{r.Int64N(13), r.Int64N(13)} }
		s, p := seg{a: random(), b: random()}, random()
		if s.a == s.b || p == s.a || p == s.b {
			continue
		}
		want, corner := clipped(s, p)
		if corner {
			corners++
		}
		if got := s.passes(p, orient(s.a, s.b, p)); got != want {
			t.Fatalf("%v passes %v: %v, want %v", s, p, got, want)
		}
	}
	if corners < 50 {
		t.Errorf("only %d corners were touched", corners)
	}
}

func clipped(s seg, p pt) (passes, corner bool) {
	lo, hi := big.NewRat(0, 1), big.NewRat(1, 1)
	for _, c := range [2][3]int64{{s.a.x, s.b.x, p.x}, {s.a.y, s.b.y, p.y}} {
		d := c[1] - c[0]
		if d == 0 {
			if c[2] != c[0] {
				return false, false
			}
			continue
		}
		u, v := big.NewRat(2*(c[2]-c[0])-1, 2*d), big.NewRat(2*(c[2]-c[0])+1, 2*d)
		if u.Cmp(v) > 0 {
			u, v = v, u
		}
		if lo.Cmp(u) < 0 {
			lo = u
		}
		if hi.Cmp(v) > 0 {
			hi = v
		}
	}
	switch lo.Cmp(hi) {
	case -1:
		return true, false
	case 1:
		return false, false
	}
	at := func(a, b int64) *big.Rat {
		return new(big.Rat).Add(big.NewRat(a, 1), new(big.Rat).Mul(lo, big.NewRat(b-a, 1)))
	}
	return at(s.a.x, s.b.x).Cmp(big.NewRat(2*p.x-1, 2)) == 0 && at(s.a.y, s.b.y).Cmp(big.NewRat(2*p.y-1, 2)) == 0, true
}

// TestPlanarize: after one pass no two pieces meet except in end points, no
// piece has left the segment by more than a step, and end points are kept.
func TestPlanarize(t *testing.T) {
	r := rand.New(rand.NewPCG(45, 46))
	for i := range 400 {
		size := []int64{12, 60, 1000, limit}[i%4]
		var segs []seg
		for len(segs) < 25 {
			a, b := pt{r.Int64N(2*size) - size, r.Int64N(2*size) - size}, pt{r.Int64N(2*size) - size, r.Int64N(2*size) - size}
			if i%8 >= 4 { // bundles
				a, b = pt{-size + r.Int64N(4), r.Int64N(9)}, pt{size - r.Int64N(4), r.Int64N(9)}
			}
			if a != b {
				segs = append(segs, seg{a: a, b: b, owner: int32(len(segs)), delta: 1})
			}
		}
		out := planarize(segs)
		ends := map[int32]pt{}
		for j, e := range out {
			s := segs[e.owner]
			if at, begun := ends[e.owner]; begun && at != e.a || !begun && e.a != s.a {
				t.Fatalf("%d: piece %v does not follow", i, e)
			}
			ends[e.owner] = e.b
			if o := orient(s.a, s.b, e.b); e.b != s.b && !s.passes(e.b, o) {
				t.Fatalf("%d: %v has left %v", i, e, s)
			}
			for _, f := range out[:j] {
				fa, fb, ea, eb := orient(e.a, e.b, f.a), orient(e.a, e.b, f.b), orient(f.a, f.b, e.a), orient(f.a, f.b, e.b)
				if fa == 0 && between(f.a, e.a, e.b) || fb == 0 && between(f.b, e.a, e.b) ||
					ea == 0 && between(e.a, f.a, f.b) || eb == 0 && between(e.b, f.a, f.b) ||
					signOf(fa)*signOf(fb) < 0 && signOf(ea)*signOf(eb) < 0 {
					t.Fatalf("%d: pieces %v and %v meet", i, e, f)
				}
			}
		}
		for o, at := range ends {
			if at != segs[o].b {
				t.Fatalf("%d: segment %v ends in %v", i, segs[o], at)
			}
		}
	}
}
