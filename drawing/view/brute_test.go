package view

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// seen is the slow truth about a point: looking along a ray beside it, is
// there a front face of a casting item before it? Unsure where the point lies
// a hair's breadth from deciding.
func seen(s Scene, skin []face, at, beside vertex) (visible, unsure bool) {
	visible = true
	for i := range skin {
		f := &skin[i]
		it := s.Items[f.item]
		if !f.front() || it.SeeThrough || it.Role.over() || !contains(f.loops, beside) {
			continue
		}
		switch d := f.n.dot(at.sub(f.loops[0][0])); {
		case d < -2*flush:
			visible = false
		case d < -online:
			unsure = true
		}
	}
	return visible, unsure
}

// contains counts crossings of a ray to the right.
func contains(loops [][]vertex, at vertex) bool {
	in := false
	for _, l := range loops {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			if (p.v > at.v) != (q.v > at.v) && at.u < p.u+(at.v-p.v)/(q.v-p.v)*(q.u-p.u) {
				in = !in
			}
		}
	}
	return in
}

// probe finds the truth about a point of a line from points beside it: hidden
// if it is so on both sides. Unsure if that depends on how far beside.
func probe(s Scene, skin []face, a, b vertex, t float64) (k Kind, unsure bool) {
	at := a.lerp(b, t)
	size := drawn(a, b)
	du, dv := (b.u-a.u)/size, (b.v-a.v)/size
	k = Hidden
	for _, side := range []float64{1, -1} {
		near, n := seen(s, skin, at, vertex{u: at.u - side*dv*1e-4, v: at.v + side*du*1e-4})
		far, m := seen(s, skin, at, vertex{u: at.u - side*dv*5e-3, v: at.v + side*du*5e-3})
		unsure = unsure || near != far || n || m
		if near {
			k = Visible
		}
	}
	return k, unsure
}

// checkSight compares random points of all lines with the slow truth, and the
// lines of the finished view with the lines before thinning out.
func checkSight(t *testing.T, s Scene, l Look, rnd *rand.Rand, samples int) {
	t.Helper()
	skin := project(s, l)
	var raw []piece
	if l.cuts {
		skin, raw, _ = section(skin)
	}
	h := newHider(s, skin)
	for _, e := range edges(skin) {
		raw = h.split(raw, e, s.Items[e.stroke.Item])
	}
	if len(raw) == 0 {
		t.Fatal("no lines")
	}
	v := Of(s, l)
	vague := 0
	for range samples {
		p := raw[rnd.IntN(len(raw))]
		at := 0.001 + 0.998*rnd.Float64()
		want, unsure := probe(s, skin, p.a, p.b, at)
		if unsure || drawn(p.a, p.b) < 2*speck {
			vague++
			continue
		}
		q := p.a.lerp(p.b, at)
		if got := p.stroke.Kind; got != want && !(got == Cut && want == Visible) {
			t.Fatalf("%v: item %d at %v: %v, by ray %v", l, p.stroke.Item, q, p.stroke.Kind, want)
		}
		if !drawnAt(v, q.flat(), p.stroke.Kind) {
			t.Fatalf("%v: %v line of item %d at %v is not in the view", l, p.stroke.Kind, p.stroke.Item, q)
		}
	}
	if vague > samples/10 {
		t.Errorf("%v: %d of %d points undecided", l, vague, samples)
	}
	for range samples {
		seg := v.Segments[rnd.IntN(len(v.Segments))]
		q := seg.A.Lerp(seg.B, rnd.Float64())
		ok := false
		for _, p := range raw {
			ok = ok || p.stroke == seg.Stroke && nearestOn(p.a.flat(), p.b.flat(), q).Sub(q).Len() < 2*speck
		}
		if !ok {
			t.Fatalf("%v: the view has a line at %v from nowhere: %+v", l, q, seg)
		}
	}
}

// drawnAt tells whether there is a line at a point that shows as much as kind.
func drawnAt(v View, p geom.Vec, k Kind) bool {
	for _, s := range v.Segments {
		if s.Kind <= k && nearestOn(s.A, s.B, p).Sub(p).Len() < 2*speck {
			return true
		}
	}
	return false
}

// randomBoxes on a coarse raster lie flush, stand in and upon each other.
func randomBoxes(rnd *rand.Rand, n int) Scene {
	var s Scene
	for range n {
		var lo, hi [3]unit.Length
		for i := range lo {
			lo[i] = unit.Length(10 * rnd.IntN(6))
			hi[i] = lo[i] + unit.Length(10*(1+rnd.IntN(4)))
		}
		s.Items = append(s.Items, boxAt(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]))
	}
	return s
}

func TestSightOfRandomBoxes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 14))
	for range 25 {
		s := randomBoxes(rnd, 6)
		for _, l := range []Look{
			Plan(), Below(), Front(), FromLeft(), FromRight(), Isometric(),
			Facing(geom.Through(geom.V(0, 0), geom.V(3, 1))),
			PlanAt(25), PlanAt(30), // between the faces and in them
			Section(geom.Through(geom.V(25, 0), geom.V(25, 1))), Section(geom.Through(geom.V(30, 1), geom.V(30, 0))),
			Section(geom.Through(geom.V(0, 10), geom.V(50, 47))),
			Axonometric(unit.Angle(rnd.Float64()*6), unit.Angle(rnd.Float64()*3-1.5)),
		} {
			checkSight(t, s, l, rnd, 60)
		}
	}
}

func TestSightOfDesk(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 71))
	s := desk()
	for _, l := range []Look{Plan(), Front(), FromRight(), Isometric(), Axonometric(-0.4, -0.3), PlanAt(715), Section(geom.Through(geom.V(900, 900), geom.V(870, -700)))} {
		checkSight(t, s, l, rnd, 250)
	}
}

func TestLengthIsKept(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 41))
	for range 20 {
		var s Scene
		for i := range 5 { // apart from each other, so that no lines fall together
			r := func(n float64) unit.Length { return unit.Length(300 + 100*n*rnd.Float64()) }
			x := unit.Length(i) * 700
			s.Items = append(s.Items, boxAt(x, r(5), r(5), x+r(3), 1000+r(9), 1000+r(9)))
		}
		turn, tilt := 0.2+rnd.Float64(), 0.2+rnd.Float64()
		l := Axonometric(unit.Angle(turn), unit.Angle(tilt))
		want := 0.0
		for _, it := range s.Items {
			for _, f := range it.Faces {
				for _, loop := range f.Loops {
					for i, p := range loop { // every edge twice
						want += float64(l.Project(loop[(i+1)%len(loop)]).Sub(l.Project(p)).Len()) / 2
					}
				}
			}
		}
		if got := total(Of(s, l).Segments); math.Abs(got-want) > 1e-9*want {
			t.Errorf("turn %.3f tilt %.3f: lines of %.9f mm in the view, %.9f mm of edges", turn, tilt, got, want)
		}
	}
}
