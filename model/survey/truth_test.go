package survey_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// plan is a room that is known exactly: the truth to be found again.
type plan struct {
	name   string
	at     []geom.Vec // clockwise, first wall of the base along x
	base   int        // the base wall goes from this corner to the next
	closed bool
	links  [][2]int // diagonals that are measured besides the walls
	hints  string   // one letter per corner: i inside, o outside, . not told
}

func name(i int) survey.Point { return survey.Point(string(rune('A' + i))) }

// measure reads walls and diagonals of a plan, each off by up to noise.
func (p plan) measure(noise float64, r *rand.Rand) survey.Network {
	n := survey.Network{Closed: p.closed, Base: [2]survey.Point{name(p.base), name(p.base + 1)}, Turns: map[survey.Point]survey.Turn{}}
	links := append([][2]int(nil), p.links...)
	for i := range p.at {
		n.Chain = append(n.Chain, name(i))
		if i > 0 {
			links = append(links, [2]int{i - 1, i})
		}
		if i < len(p.hints) {
			n.Turns[name(i)] = map[byte]survey.Turn{'i': survey.Inside, 'o': survey.Outside, '.': survey.NotTold}[p.hints[i]]
		}
	}
	if p.closed {
		links = append(links, [2]int{len(p.at) - 1, 0})
	}
	for _, l := range links {
		d := float64(p.at[l[0]].Sub(p.at[l[1]]).Len())
		if noise > 0 {
			d = math.Round(d + noise*(2*r.Float64()-1))
		}
		n.Readings = append(n.Readings, survey.Reading{ID: string(name(l[0])) + "-" + string(name(l[1])), Points: []survey.Point{name(l[0]), name(l[1])}, Length: unit.Length(d)})
	}
	return n
}

// off is the largest distance of an adjusted corner from the truth.
func (p plan) off(r *survey.Result) float64 {
	a, b := p.at[p.base], p.at[p.base+1]
	turn := b.Sub(a).Angle()
	far := 0.0
	for i, v := range p.at {
		got, _ := r.At(name(i))
		far = max(far, float64(v.Sub(a).Turn(-turn).Sub(got).Len()))
	}
	return far
}

// plans are shapes that a desk meets: alcoves, niches that go into the wall,
// breasts that come out of it, L-shaped and many-cornered rooms.
func plans() []plan {
	v := geom.V
	return []plan{
		{"alcove with two diagonals", []geom.Vec{v(5, -800), v(0, 0), v(1850, 0), v(1870, -790)}, 1, false, [][2]int{{0, 2}, {1, 3}, {0, 3}}, ""},
		{"alcove, leaning walls, turns told", []geom.Vec{v(-300, -800), v(0, 0), v(1850, 0), v(2250, -700)}, 1, false, [][2]int{{0, 2}, {1, 3}}, ".ii."},
		{"niche into the back wall", []geom.Vec{v(-12, -1400), v(0, 0), v(912, 6), v(905, 250), v(1690, 244), v(1700, -4), v(2372, 0), v(2377, -1390)},
			1, false, [][2]int{{0, 3}, {1, 6}, {0, 6}, {1, 7}, {0, 7}, {2, 4}, {3, 5}, {2, 5}, {0, 5}, {7, 2}}, ""},
		{"breast out of the back wall", []geom.Vec{v(-12, -1400), v(0, 0), v(700, 10), v(708, -340), v(1690, -350), v(1700, 5), v(2372, 0), v(2377, -1390)},
			1, false, [][2]int{{1, 3}, {0, 3}, {0, 4}, {4, 6}, {7, 4}, {7, 3}, {0, 7}, {2, 4}, {3, 5}}, ""},
		{"breast with only its own diagonals, turns told", []geom.Vec{v(0, -1200), v(0, 0), v(700, 10), v(708, -340), v(1690, -350), v(1700, 5), v(2372, 0), v(2377, -1390)},
			1, false, [][2]int{{0, 2}, {1, 3}, {2, 4}, {3, 5}, {4, 6}, {5, 7}}, ".iiooii."},
		{"rectangle", []geom.Vec{v(0, 0), v(3612, 0), v(3598, -2809), v(11, -2794)}, 0, true, [][2]int{{0, 2}, {1, 3}}, ""},
		{"L-shaped room", []geom.Vec{v(0, 0), v(4000, 0), v(4020, -1500), v(2200, -1520), v(2190, -3000), v(10, -3010)},
			0, true, [][2]int{{0, 2}, {0, 3}, {0, 4}, {1, 3}, {1, 5}, {3, 5}, {2, 5}}, ""},
		{"bay", []geom.Vec{v(-700, -1400), v(-600, -500), v(0, 0), v(1500, 0), v(2100, -520), v(2150, -1500)},
			2, false, [][2]int{{1, 3}, {2, 4}, {1, 4}, {0, 2}, {3, 5}, {0, 5}, {0, 4}, {1, 5}}, ""},
		{"sharp corner", []geom.Vec{v(900, -900), v(0, 0), v(2000, 0), v(2600, -1100)}, 1, false, [][2]int{{0, 2}, {1, 3}, {0, 3}}, ""},
		{"stair of a flue", []geom.Vec{v(0, -1500), v(0, 0), v(800, 0), v(810, -300), v(1300, -310), v(1310, -600), v(2000, -600), v(2000, -1500)},
			1, false, [][2]int{{0, 2}, {0, 3}, {0, 4}, {0, 5}, {0, 6}, {1, 3}, {0, 7}, {7, 5}, {7, 3}, {4, 6}}, ""},
		{"closed room with a breast", []geom.Vec{v(0, 0), v(1200, 0), v(1210, -400), v(2300, -395), v(2290, 5), v(3500, 0), v(3510, -2600), v(-8, -2590)},
			0, true, [][2]int{{7, 2}, {7, 3}, {6, 2}, {6, 3}, {7, 1}, {6, 4}, {0, 6}, {5, 7}, {0, 2}, {3, 5}}, ""},
	}
}

func TestPlansAreFoundAgain(t *testing.T) {
	for _, p := range plans() {
		t.Run(p.name, func(t *testing.T) {
			r, err := survey.Adjust(p.measure(0, nil))
			if err != nil {
				t.Fatal(err)
			}
			if r.Loose != nil {
				t.Error(r.Loose)
			}
			near(t, "corner furthest off", p.off(r), 0, 1e-6)
			near(t, "vTPv", r.VTPV, 0, 1e-9)
		})
	}
}

// Readings off by up to 2 mm and rounded to 1 mm must give the same shape.
func TestPlansWithNoise(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for _, p := range plans() {
		for i := range 20 {
			got, err := survey.Adjust(p.measure(2, r))
			if err != nil {
				t.Errorf("%s, draw %d: %v", p.name, i, err)
				continue
			}
			if off := p.off(got); off > 40 {
				t.Errorf("%s, draw %d: corner off by %.1f mm", p.name, i, off)
			}
		}
	}
}

// Any choice of diagonals must give the room, or an answer that says what to
// measure or to tell; following that advice must lead to the room. A wrong
// shape without a word is the worst that can happen.
func TestAdviceLeadsToTheRoom(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	asked := map[survey.Trouble]int{}
	for _, p := range plans() {
		for draw := range 15 {
			q := p
			q.hints, q.links = "", nil
			for a := range q.at {
				for b := a + 2; b < len(q.at); b++ {
					if (!q.closed || a > 0 || b < len(q.at)-1) && r.Float64() < 0.3 {
						q.links = append(q.links, [2]int{a, b})
					}
				}
			}
			label := fmt.Sprintf("%s, draw %d, %v", p.name, draw, q.links)
			n := q.measure(float64(draw%2), r)
			for step := 0; ; step++ {
				res, err := survey.Adjust(n)
				if err == nil {
					if off := q.off(res); off > 60 && res.Loose == nil {
						t.Errorf("%s: corner off by %.0f mm without a word", label, off)
					}
					break
				}
				var problem *survey.Problem
				if !errors.As(err, &problem) || step == 20 {
					t.Errorf("%s: %v", label, err)
					break
				}
				asked[problem.Trouble]++
				if !q.follow(&n, problem) {
					t.Errorf("%s: no way out of %v", label, err)
					break
				}
			}
		}
	}
	if asked[survey.HangsFree] < 50 || asked[survey.TwoShapes] < 30 {
		t.Errorf("advice asked for %v: the draws test little", asked)
	}
}

// follow does what a problem asks for: it measures the first distance, or
// tells the turns of the corners in question.
func (p plan) follow(n *survey.Network, problem *survey.Problem) bool {
	number := func(c survey.Point) int { return int(c[0] - 'A') }
	if len(problem.Measure) > 0 {
		m := problem.Measure[0]
		n.Readings = append(n.Readings, survey.Reading{Points: m[:], Length: p.at[number(m[0])].Sub(p.at[number(m[1])]).Len()})
		return true
	}
	for _, c := range problem.Points {
		i := number(c)
		a, b, d := p.at[(i+len(p.at)-1)%len(p.at)], p.at[i], p.at[(i+1)%len(p.at)]
		n.Turns[c] = survey.Inside
		if b.Sub(a).Cross(d.Sub(b)) > 0 {
			n.Turns[c] = survey.Outside
		}
	}
	return problem.Trouble == survey.TwoShapes && len(problem.Points) > 0
}
