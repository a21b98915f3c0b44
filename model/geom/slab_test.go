package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"slabwright/model/unit"
)

// plank is a rectangular slab with the edges front, right, back and left.
func plank(length, depth, thickness unit.Length) Slab {
	a, b, c, d := V(0, 0), V(length, 0), V(length, depth), V(0, depth)
	return Slab{
		Outline: []SlabEdge{
			{Name: "front", Path: []Vec{a, b}},
			{Name: "right", Path: []Vec{b, c}},
			{Name: "back", Path: []Vec{c, d}},
			{Name: "left", Path: []Vec{d, a}},
		},
		Top: thickness,
	}
}

func TestSlabByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(s *Slab)
		volume float64 // by hand
	}{
		{"plain", func(s *Slab) {}, 1000 * 600 * 40},
		{"eased front", func(s *Slab) { s.Outline[0].EaseTop = 4 }, 1000*600*40 - 1000*8},
		// The two prisms of 8 mm2 share a pyramid of base 4 x 4 and height 4 at each corner.
		{"eased all round", func(s *Slab) {
			for i := range s.Outline {
				s.Outline[i].EaseTop = 4
			}
		}, 40*1000*600 - 4*1000*600 + 4./6*(1000*600+4*996*596+992*592)},
		{"leaning front", func(s *Slab) { s.Outline[0].Lean = 12 }, 1000*600*40 + 1000*12*40/2},
		{"pocket", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 100), V(200, 150)), From: CutFromUnder, Depth: 15}}
		}, 1000*600*40 - 100*50*15},
		{"pocket through", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 100), V(200, 150)), Depth: 99}}
		}, 1000*600*40 - 100*50*40},
		{"pockets that meet", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 100), V(200, 150)), Depth: 25},
				{Name: "q", Region: Rect(V(150, 80), V(180, 130)), From: CutFromUnder, Depth: 20}}
		}, 1000*600*40 - 100*50*25 - 30*50*20 + 30*30*5},
		{"groove through an eased edge", func(s *Slab) {
			s.Outline[0].EaseTop = 4
			s.Cuts = []SlabCut{{Name: "g", Region: Rect(V(500, -50), V(530, 300)), Depth: 10}}
		}, 1000*600*40 - 970*8 - 30*300*10},
		{"groove shallower than the arris", func(s *Slab) {
			s.Outline[0].EaseTop = 4
			s.Cuts = []SlabCut{{Name: "g", Region: Rect(V(500, -50), V(530, 300)), Depth: 1}}
		}, 1000*600*40 - 1000*8 - 30*(300-3.5)*1},
		{"square countersink", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "c", Region: Rect(V(100, 100), V(110, 110)), From: CutThrough, Mouth: Bevel{3, 3}, Foot: Bevel{2, 4}}}
		}, 1000*600*40 - 100*33 - 3./6*(100+4*13*13+16*16) - 4./6*(100+4*12*12+14*14)},
		{"rabbet along the back", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "r", Region: Rect(V(-10, 580), V(1010, 610)), From: CutFromUnder, Depth: 10}}
		}, 1000*600*40 - 1000*20*10},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plank(1000, 600, 40)
			c.change(&s)
			solid := s.Solid()
			closed(t, solid)
			near(t, "volume", float64(solid.Volume()), c.volume, 1e-3)
		})
	}
}

func TestSlabFaults(t *testing.T) {
	nan := unit.Length(math.NaN())
	for _, c := range []struct {
		name   string
		change func(s *Slab)
		want   string
	}{
		{"no thickness", func(s *Slab) { s.Top = 0 }, "nothing is left"},
		{"not a number", func(s *Slab) { s.Top = nan }, "cannot be built"},
		{"gap in the outline", func(s *Slab) { s.Outline[1].Path[0] = V(999, 0) }, `"right" starts at`},
		{"bow tie", func(s *Slab) {
			s.Outline[1].Path = []Vec{V(1000, 0), V(0, 600)}
			s.Outline[2].Path = []Vec{V(0, 600), V(1000, 600)}
			s.Outline[3].Path = []Vec{V(1000, 600), V(0, 0)}
		}, "crosses or touches itself"},
		{"outside", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(1100, 100), V(1200, 150)), Depth: 5}}
		}, "outside the slab"},
		{"faulty region", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Circle(V(100, 100), nan, 0.1), From: CutThrough}}
		}, "not a positive length"},
		{"depth", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 100), V(200, 150)), Depth: nan}}
		}, "cannot be cut"},
		{"all cut away", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(-1, -1), V(2000, 2000)), From: CutThrough}}
		}, "nothing is left"},
		{"touching holes", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 100), V(200, 150)), From: CutThrough},
				{Name: "q", Region: Rect(V(200, 150), V(300, 200)), From: CutThrough}}
		}, "in a point only"},
		{"line only", func(s *Slab) {
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 100), V(200, 150)), Depth: 20},
				{Name: "q", Region: Rect(V(200, 100), V(300, 150)), From: CutFromUnder, Depth: 20}}
		}, "along a line only"},
		{"pocket in the arris", func(s *Slab) {
			s.Outline[0].EaseTop = 5
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, 3), V(200, 150)), Depth: 20}}
		}, `runs into`},
		{"pocket in the natural edge", func(s *Slab) {
			s.Outline[0].Path = []Vec{V(0, 0), V(500, -20), V(1000, 0)}
			s.Outline[0].Over = []Vec{V(0, 10), V(500, -10), V(1000, 10)}
			s.Cuts = []SlabCut{{Name: "p", Region: Rect(V(100, -50), V(200, 150)), Depth: 20}}
		}, `sloping edge "front"`},
		{"counts", func(s *Slab) { s.Outline[0].Over = []Vec{V(0, 0)} }, "2 points at the underside, but 1"},
		{"arris too large", func(s *Slab) { s.Outline[0].EaseTop, s.Outline[0].EaseUnder = 21, 20 }, "more than the slab is thick"},
		{"arris too large for the edge", func(s *Slab) {
			s.Outline[1].Path = []Vec{V(1000, 0), V(1003, 3), V(1000, 600)}
			s.Outline[1].EaseTop, s.Outline[0].EaseTop = 8, 8
		}, "too short for the slopes"},
		{"arris ends on a straight edge", func(s *Slab) {
			s.Outline[0].Path = []Vec{V(0, 0), V(400, 0)}
			s.Outline[0].EaseTop = 3
			s.Outline = append(s.Outline[:1:1], append([]SlabEdge{{Name: "rest", Path: []Vec{V(400, 0), V(1000, 0)}}}, s.Outline[1:]...)...)
		}, `runs nearly straight on into "rest"`},
	} {
		s := plank(1000, 600, 40)
		c.change(&s)
		solid := s.Solid()
		if err := solid.Err(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: fault %v, want one with %q", c.name, err, c.want)
		}
		if solid.Faces() != nil || solid.Volume() != 0 || !solid.Footprint().Empty() || solid.Place(Pose{Turn: 1}).Err() == nil {
			t.Errorf("%s: a faulty solid has a body", c.name)
		}
	}
}

// randomSlab draws a slab with eased, leaning and natural edges and with cuts
// of every kind. Some of them cannot be built.
func randomSlab(r *rand.Rand) Slab {
	s := plank(pick(r, 400, 3000), pick(r, 200, 900), pick(r, 18, 80))
	l, d := s.Outline[0].Path[1].X, s.Outline[1].Path[1].Y
	s.Bottom = pick(r, -10, 800)
	s.Top += s.Bottom
	for i := range s.Outline {
		e := &s.Outline[i]
		if r.IntN(2) == 0 {
			e.EaseTop, e.EaseUnder = pick(r, 0, 5), pick(r, 0, 3)
		}
		if r.IntN(4) == 0 {
			e.Lean = pick(r, -8, 8)
		}
	}
	if r.IntN(2) == 0 {
		n := 3 + r.IntN(40)
		front := &s.Outline[0]
		front.Lean = 0
		front.Path, front.Over = nil, nil
		for i := range n + 1 {
			x := l * unit.Length(i) / unit.Length(n)
			dy, dx := pick(r, -15, 0), pick(r, -3, 3)
			if i == 0 || i == n {
				dx, dy = 0, 0
			}
			front.Path = append(front.Path, V(x, dy))
			front.Over = append(front.Over, V(x+dx, dy-pick(r, -5, 12)))
		}
		front.Over[0].X, front.Over[n].X = 0, l
	}
	for i := range r.IntN(8) {
		c := SlabCut{Name: fmt.Sprint("cut ", i), From: CutFrom(r.IntN(3)), Depth: pick(r, 1, 60)}
		at := V(pick(r, 0.05, 0.95)*l, pick(r, 0.1, 0.9)*d)
		switch r.IntN(5) {
		case 0:
			c.Region = Circle(at, pick(r, 1, 30), 0.05)
		case 1:
			c.Region = Slot(at, at.Add(V(pick(r, 5, 60), 0).Turn(unit.Angle(pick(r, 0, 6)))), pick(r, 4, 12), 0.05)
		case 2:
			c.Region = Strip([]Vec{V(at.X, d+10), at, V(at.X+pick(r, -100, 100), at.Y)}, pick(r, 4, 20), 0.1)
		case 3:
			c.Region = Rect(at, at.Add(V(pick(r, 10, 200), pick(r, 10, 200))))
		case 4:
			c.Region = star(r, at, 5+r.IntN(9), 60)
		}
		if r.IntN(2) == 0 {
			c.Mouth = Bevel{pick(r, 0.5, 4), pick(r, 0.5, 4)}
		}
		s.Cuts = append(s.Cuts, c)
	}
	return s
}

func TestRandomSlabsAreClosed(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 0))
	built := 0
	for i := range 600 {
		s := randomSlab(r)
		solid := s.Solid()
		if solid.Err() != nil {
			continue
		}
		built++
		if !t.Run(fmt.Sprint("slab ", i), func(t *testing.T) { closed(t, solid) }) {
			t.Fatalf("%+v", s.Outline)
		}
	}
	if built < 500 {
		t.Errorf("only %d of 600 slabs could be built", built)
	}
}

// Cuts on a lattice meet each other and the outline in every way there is; the
// volume is counted in cubes of 10 mm.
func TestLatticeSlabs(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 0))
	built, faults := 0, 0
	for i := range 500 {
		s := plank(100, 60, 40)
		var free [10][6][4]bool
		for j := range 1 + r.IntN(6) {
			x, y := r.IntN(11)-1, r.IntN(7)-1
			l, d, h := 1+r.IntN(5), 1+r.IntN(4), 1+r.IntN(4)
			c := SlabCut{Name: fmt.Sprint("cut ", j), From: CutFrom(r.IntN(3)), Depth: unit.Length(10 * h),
				Region: Rect(V(unit.Length(10*x), unit.Length(10*y)), V(unit.Length(10*(x+l)), unit.Length(10*(y+d))))}
			if c.Region.Intersect(Rect(V(0, 0), V(100, 60))).Empty() {
				continue
			}
			s.Cuts = append(s.Cuts, c)
			for a := max(x, 0); a < min(x+l, 10); a++ {
				for b := max(y, 0); b < min(y+d, 6); b++ {
					for z := range 4 {
						free[a][b][z] = free[a][b][z] || c.From == CutThrough || c.From == CutFromTop && z >= 4-h || c.From == CutFromUnder && z < h
					}
				}
			}
		}
		solid := s.Solid()
		if err := solid.Err(); err != nil {
			if !strings.Contains(err.Error(), "hangs together") && !strings.Contains(err.Error(), "nothing is left") {
				t.Fatal(err)
			}
			faults++
			continue
		}
		built++
		closed(t, solid)
		full := 0.0
		for _, plane := range free {
			for _, row := range plane {
				for _, out := range row {
					if !out {
						full += 1000
					}
				}
			}
		}
		near(t, fmt.Sprint("volume of slab ", i), float64(solid.Volume()), full, 1e-6)
	}
	if built < 300 || faults < 20 {
		t.Errorf("%d built, %d faults", built, faults)
	}
}
