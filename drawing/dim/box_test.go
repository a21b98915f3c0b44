package dim

import (
	"math/rand/v2"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

func randomBox(r *rand.Rand) box {
	at := geom.V(unit.Length(r.Float64()*40), unit.Length(r.Float64()*40))
	return newBox(at, polar(1, unit.Angle(r.Float64()*7)), unit.Length(1+15*r.Float64()), unit.Length(1+5*r.Float64()))
}

// has tells whether a point lies in the box grown by d, by its own axes.
func (b *box) has(p geom.Vec, d unit.Length) bool {
	v := p.Sub(b.mid)
	return abs(unit.Length(b.dir.Dot(v))) <= b.hw+d && abs(unit.Length(b.dir.Cross(v))) <= b.hh+d
}

// Boxes and lines against points sampled in them: what shares a point meets,
// and what meets shares a point of a dense sample when grown a little.
func TestBoxesAgainstSamples(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	const n = 40
	for range 2000 {
		a, b := randomBox(r), randomBox(r)
		l := newLine(randomBox(r).mid, randomBox(r).mid, 0, lead)
		shared, nearly, hit, close := false, false, false, false
		for i := range n + 1 {
			u := float64(i)/n*2 - 1
			p := l.a.Lerp(l.b, (u+1)/2)
			hit, close = hit || a.has(p, -0.01), close || a.has(p, 1)
			for j := range n + 1 {
				v := float64(j)/n*2 - 1
				q := a.mid.Add(a.dir.Mul(u * float64(a.hw))).Add(a.dir.Left().Mul(v * float64(a.hh)))
				shared, nearly = shared || b.has(q, -0.01), nearly || b.has(q, 0.4)
			}
		}
		if got := a.meets(&b, 0); got && !nearly || !got && shared {
			t.Fatalf("boxes %+v and %+v: meets is %v", a, b, got)
		}
		if got := a.cut(&l, 0); got && !close || !got && hit {
			t.Fatalf("box %+v, line %v %v: cut is %v", a, l.a, l.b, got)
		}
	}
}

// Look-ups in the grid against all lines and boxes one by one.
func TestFieldFindsAll(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	region := drawing.Box(10, 10, 25, 20) // things lie beyond it as well
	f := newField(region, region)
	for range 150 {
		f.addLine(newLine(randomBox(r).mid, randomBox(r).mid, 0.1, edge))
		f.addBox(randomBox(r))
	}
	for range 400 {
		b := randomBox(r)
		lines, boxes := f.near(b.min, b.max)
		got := len(lines) + len(boxes)
		gotLines, gotBoxes := map[int]bool{}, map[int]bool{}
		for _, i := range lines {
			gotLines[i] = true
		}
		for _, i := range boxes {
			gotBoxes[i] = true
		}
		if got != len(gotLines)+len(gotBoxes) {
			t.Fatal("something was found twice")
		}
		for i := range f.lines {
			if b.cut(&f.lines[i], -0.11) && !gotLines[i] {
				t.Fatalf("line %d is missing", i)
			}
		}
		for i := range f.boxes {
			if b.meets(&f.boxes[i], 0) && !gotBoxes[i] {
				t.Fatalf("box %d is missing", i)
			}
		}
		probe := newLine(randomBox(r).mid, randomBox(r).mid, 0, lead)
		lines, _ = f.alongLine(&probe)
		met := map[int]bool{}
		for _, i := range lines {
			met[i] = true
		}
		for i := range f.lines {
			if probe.meet(&f.lines[i]) != misses && !met[i] {
				t.Fatalf("line %d along the probe is missing", i)
			}
		}
	}
}

func TestCrossings(t *testing.T) {
	l := newLine(geom.V(0, 0), geom.V(10, 0), 0, edge)
	for _, c := range []struct {
		a, b geom.Vec
		want crossing
	}{
		{geom.V(5, -5), geom.V(5, 5), crosses},
		{geom.V(5, 1), geom.V(5, 5), misses},
		{geom.V(2, 0.5), geom.V(8, 0.5), runsAlong},
		{geom.V(2, 0.8), geom.V(8, 0.8), misses},
		{geom.V(10, 0), geom.V(20, 0), misses}, // goes on where the other ends
		{geom.V(0, -0.5), geom.V(10, 0.5), runsAlong},
		{geom.V(12, -1), geom.V(12, 1), misses},
	} {
		m := newLine(c.a, c.b, 0, edge)
		if got := l.meet(&m); got != c.want {
			t.Errorf("%v %v: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}
