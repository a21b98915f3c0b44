package corner_test

import (
	"math"
	"math/rand"
	"testing"

	"slabwright/model/calc/corner"
	"slabwright/model/unit"
)

type pt struct{ x, y float64 }

// rect is a leg as a rectangle 3 m long, counter-clockwise: the brute force
// knows nothing of strips without end.
func rect(theta float64, l corner.Leg, second bool) []pt {
	s, w := float64(l.SetBack), float64(l.Width)
	if !second {
		return []pt{{s, 0}, {s + 3000, 0}, {s + 3000, w}, {s, w}}
	}
	sn, cs := math.Sincos(theta)
	at := func(a, b float64) pt { return pt{a*cs + b*sn, a*sn - b*cs} }
	return []pt{at(s, w), at(s+3000, w), at(s+3000, 0), at(s, 0)}
}

// clip cuts a convex polygon by the edges of another (Sutherland-Hodgman).
func clip(a, b []pt) []pt {
	for i := range b {
		p, q := b[i], b[(i+1)%len(b)]
		in := func(r pt) float64 { return (q.x-p.x)*(r.y-p.y) - (q.y-p.y)*(r.x-p.x) }
		var out []pt
		for j := range a {
			c, d := a[j], a[(j+1)%len(a)]
			u, v := in(c), in(d)
			if u >= 0 {
				out = append(out, c)
			}
			if (u > 0 && v < 0) || (u < 0 && v > 0) {
				k := u / (u - v)
				out = append(out, pt{c.x + k*(d.x-c.x), c.y + k*(d.y-c.y)})
			}
		}
		a = out
	}
	return a
}

func area(a []pt) float64 {
	s := 0.0
	for i, p := range a {
		q := a[(i+1)%len(a)]
		s += (p.x*q.y - p.y*q.x) / 2
	}
	return s
}

// gap is the least distance of the corners of each from the edges of the other.
func gap(a, b []pt) float64 {
	d := math.Inf(1)
	one := func(a, b []pt) {
		for _, r := range a {
			for i := range b {
				p, q := b[i], b[(i+1)%len(b)]
				dx, dy := q.x-p.x, q.y-p.y
				k := min(1, max(0, ((r.x-p.x)*dx+(r.y-p.y)*dy)/(dx*dx+dy*dy)))
				d = min(d, math.Hypot(r.x-p.x-k*dx, r.y-p.y-k*dy))
			}
		}
	}
	one(a, b)
	one(b, a)
	return d
}

// draw makes a random corner; set-backs below zero only at an arris.
func draw(r *rand.Rand) (theta float64, a, b corner.Leg) {
	theta = (30 + 300*r.Float64()) * math.Pi / 180
	lo := 0.0
	if theta > math.Pi {
		lo = -60
	}
	leg := func() corner.Leg {
		return corner.Leg{SetBack: unit.Length(lo + r.Float64()*(120-lo)), Width: unit.Length(20 + 80*r.Float64())}
	}
	return theta, leg(), leg()
}

func TestCheckAgainstClipping(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	clashes, arrises := 0, 0
	for i := range 20000 {
		theta, a, b := draw(r)
		p, q := rect(theta, a, false), rect(theta, b, true)
		want := area(clip(p, q))
		got, err := corner.Check(unit.Angle(theta), a, b)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(got.Overlap)-want) > 1e-4 || got.Free != (want < 1e-6) {
			t.Fatalf("case %d, %.3f deg %v %v: overlap %v free %v, clipping gives %v", i, theta*180/math.Pi, a, b, got.Overlap, got.Free, want)
		}
		if got.Free && math.Abs(float64(got.Clearance)-gap(p, q)) > 1e-6 {
			t.Fatalf("case %d, %.3f deg %v %v: clearance %v, brute force %v", i, theta*180/math.Pi, a, b, got.Clearance, gap(p, q))
		}
		if !got.Free {
			clashes++
			if theta > math.Pi {
				arrises++
			}
		}
	}
	if clashes < 2000 || arrises < 500 {
		t.Errorf("only %d clashes, %d at an arris: the cases test little", clashes, arrises)
	}
}

// A set-back must give the clearance asked for, and 0.01 mm less must not.
func TestSetBacksAreEnoughAndLeast(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	for i := range 5000 {
		theta, a, b := draw(r)
		th, g := unit.Angle(theta), unit.Length(r.Intn(4))
		apart := func(l1, l2 corner.Leg) float64 {
			p, q := rect(theta, l1, false), rect(theta, l2, true)
			if area(clip(p, q)) > 1e-7 {
				return -1
			}
			return gap(p, q)
		}
		s, err := corner.Alike(th, a.Width, b.Width, g)
		if err != nil {
			t.Fatal(err)
		}
		at := func(s unit.Length) float64 {
			return apart(corner.Leg{SetBack: s, Width: a.Width}, corner.Leg{SetBack: s, Width: b.Width})
		}
		if c := at(s + 1e-5); c < float64(g)-1e-6 {
			t.Fatalf("case %d, %.3f deg, %v and %v wide: alike %v leaves %v of %v", i, theta*180/math.Pi, a.Width, b.Width, s, c, g)
		}
		// no leg may run into the other's wall
		lowest := unit.Length(0)
		if theta < math.Pi {
			s1, _ := corner.Start(th, a.Width)
			s2, _ := corner.Start(th, b.Width)
			lowest = max(s1, s2)
		}
		if c := at(s - 0.01); s > lowest+0.01 && c >= float64(g) {
			t.Fatalf("case %d, %.3f deg, %v and %v wide: alike %v is not the least, %v left", i, theta*180/math.Pi, a.Width, b.Width, s, c)
		}

		s, err = corner.Butt(th, b, a.Width, g)
		if err != nil {
			t.Fatal(err)
		}
		at = func(s unit.Length) float64 { return apart(corner.Leg{SetBack: s, Width: a.Width}, b) }
		if c := at(s + 1e-5); c < float64(g)-1e-6 {
			t.Fatalf("case %d, %.3f deg, butt %v against %v: leaves %v of %v", i, theta*180/math.Pi, s, b, c, g)
		}
		bound := -b.Width
		if theta < math.Pi {
			bound, _ = corner.Start(th, a.Width)
		}
		if s < bound-1e-9 {
			t.Fatalf("case %d: butt %v below its bound %v", i, s, bound)
		}
		if c := at(s - 0.01); s > bound+0.01 && c >= float64(g) {
			t.Fatalf("case %d, %.3f deg, butt %v against %v is not the least, %v left", i, theta*180/math.Pi, s, b, c)
		}
	}
}
