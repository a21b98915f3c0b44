package plate

import (
	"fmt"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// BenchmarkSolve cuts, factors and solves one plate on supports that only push,
// at growing numbers of unknowns.
func BenchmarkSolve(b *testing.B) {
	for _, h := range []unit.Length{66, 36.5, 25, 16, 11.4, 8.05} {
		a := Assembly{Plates: []Plate{top(set, 2300, 900, 45)}, Links: strip(2300, 900, 3, 30, 40, Push)}
		s, err := New(a, h)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprint(s.Size()), func(b *testing.B) {
			for b.Loop() {
				s, err := New(a, h)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := s.Solve(Case{Weight: 1}, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkFactor is the cutting and the factorisation alone.
func BenchmarkFactor(b *testing.B) {
	for _, h := range []unit.Length{66, 36.5, 25, 16, 11.4, 8.05} {
		a := Assembly{Plates: []Plate{top(set, 2300, 900, 45)}, Links: strip(2300, 900, 3, 30, 40, Push)}
		s, err := New(a, h)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprint(s.Size()), func(b *testing.B) {
			for b.Loop() {
				if _, err := New(a, h); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkNext is one more load case on a factored plate.
func BenchmarkNext(b *testing.B) {
	s, err := New(Assembly{Plates: []Plate{top(set, 2300, 900, 45)}, Links: strip(2300, 900, 3, 30, 40, Push)}, 36.5)
	if err != nil {
		b.Fatal(err)
	}
	dead, err := s.Solve(Case{Weight: 1}, nil)
	if err == nil {
		err = s.Settle(dead)
	}
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := s.Solve(Case{Weight: 1, Loads: []Load{{Region: geom.Rect(geom.V(1500, 700), geom.V(1600, 800)), Force: 1000}}}, dead); err != nil {
			b.Fatal(err)
		}
	}
}
