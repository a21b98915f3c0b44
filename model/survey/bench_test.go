package survey_test

import (
	"testing"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// hall is a closed room of thirty corners, breasts and niches along its back
// wall, with 120 distances: the walls, every second corner, and lines from the
// two front corners and the side walls.
func hall() survey.Network {
	p := plan{name: "hall", closed: true, at: []geom.Vec{geom.V(0, 0)}}
	x := unit.Length(0)
	for i := range 7 {
		in := unit.Length(-230)
		if i%2 == 1 {
			in = 210
		}
		a := x + 420 + unit.Length(i%3)*7
		b := a + 510 + unit.Length(i%2)*11
		p.at = append(p.at, geom.V(a, unit.Length(i)), geom.V(a+4, in), geom.V(b, in+3), geom.V(b-2, 5))
		x = b
	}
	p.at = append(p.at[:len(p.at)-1], geom.V(x+10, -3600), geom.V(-12, -3590))
	n, base := len(p.at), map[[2]int]bool{}
	link := func(i, j int) {
		a, b := min(i, j), max(i, j)
		if len(p.links)+n < 120 && b-a > 1 && b-a < n-1 && !base[[2]int{a, b}] {
			base[[2]int{a, b}] = true
			p.links = append(p.links, [2]int{a, b})
		}
	}
	for i := range n {
		link(i, (i+2)%n)
	}
	for i := range n {
		link(i, n-1)
		link(i, n-2)
		link(i, n-3)
	}
	for i := range n {
		p.hints += map[bool]string{true: "i", false: "o"}[turnsRight(p.at[(i+n-1)%n], p.at[i], p.at[(i+1)%n])]
	}
	net := p.measure(0, nil)
	for i := range net.Readings {
		net.Readings[i].ID = ""
	}
	return net
}

func turnsRight(a, b, c geom.Vec) bool { return b.Sub(a).Cross(c.Sub(b)) < 0 }

func TestHall(t *testing.T) {
	n := hall()
	r := adjust(t, n)
	if len(n.Chain) != 30 || len(n.Readings) != 120 || r.DOF != 120-57 || r.Loose != nil {
		t.Errorf("%d corners, %d readings, %d to spare, %v", len(n.Chain), len(n.Readings), r.DOF, r.Loose)
	}
	near(t, "vTPv of exact readings", r.VTPV, 0, 1e-6)
}

// BenchmarkHall adjusts thirty corners with 120 readings, covariance included;
// below 20 ms is asked for.
func BenchmarkHall(b *testing.B) {
	n := hall()
	for b.Loop() {
		if _, err := survey.Adjust(n); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkJudge judges that room: tests, reliability, candidates.
func BenchmarkJudge(b *testing.B) {
	r := adjust(b, hall())
	for b.Loop() {
		r.Judge(survey.Options{})
	}
}

// BenchmarkJudgeSlip judges it with a slip of 40 mm, to be found and explained.
func BenchmarkJudgeSlip(b *testing.B) {
	n := hall()
	n.Readings[50].Length += 40
	r := adjust(b, n)
	for b.Loop() {
		r.Judge(survey.Options{})
	}
}
