package dim

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// scene is a view with its requests, made at random from a seed.
type scene struct {
	loop  []geom.Vec
	wavy  int // the first sides of the loop are a natural edge
	holes []geom.Vec
	want  []Request
}

// randomScene draws a slab out of square, with or without a natural edge, with
// holes, and asks for n things about it.
func randomScene(r *rand.Rand, n int) scene {
	var s scene
	w, h := unit.Length(300+r.IntN(3200)), unit.Length(60+r.IntN(1100))
	skew := func() unit.Length { return unit.Length(r.NormFloat64() * 8) }
	if r.IntN(2) == 0 { // natural edge in front
		s.wavy = 20 + r.IntN(60)
		for i := range s.wavy + 1 {
			t := unit.Length(i) / unit.Length(s.wavy)
			s.loop = append(s.loop, geom.V(w*t, 15*unit.Length(math.Sin(float64(t)*9)+r.Float64())))
		}
	} else {
		s.loop = append(s.loop, geom.V(skew(), skew()), geom.V(w, skew()))
	}
	if r.IntN(3) == 0 { // a corner off
		s.loop = append(s.loop, geom.V(w+skew(), h*0.6), geom.V(w*0.8, h+skew()))
	} else {
		s.loop = append(s.loop, geom.V(w+skew(), h+skew()))
	}
	s.loop = append(s.loop, geom.V(skew(), h+skew()))
	for range 3 + r.IntN(8) {
		s.holes = append(s.holes, geom.V(w*unit.Length(0.05+0.9*r.Float64()), h*unit.Length(0.1+0.8*r.Float64())))
	}
	for range n {
		s.want = append(s.want, s.request(r))
	}
	return s
}

func (s *scene) corner(r *rand.Rand) geom.Vec { return s.loop[r.IntN(len(s.loop))] }

func (s *scene) hole(r *rand.Rand) geom.Vec { return s.holes[r.IntN(len(s.holes))] }

func (s *scene) request(r *rand.Rand) Request {
	dir := Direction(r.IntN(3))
	k := r.IntN(len(s.loop))
	a, b := s.loop[k], s.loop[(k+1)%len(s.loop)]
	switch r.IntN(14) {
	case 0, 1:
		return Linear{A: a, B: b, Dir: dir, Label: Label{Tolerance: "+0/-2"}}
	case 2:
		return Linear{A: s.corner(r), B: s.hole(r), Dir: Direction(r.IntN(2)), Side: Side(r.IntN(5))}
	case 3: // a tiny feature
		return Linear{A: a, B: a.Add(geom.V(unit.Length(1+r.IntN(20)), unit.Length(1+r.IntN(20)))), Dir: Direction(r.IntN(2))}
	case 4:
		return Chain{Points: []geom.Vec{s.corner(r), s.hole(r), s.hole(r), s.hole(r), s.corner(r)}, Dir: Direction(r.IntN(2))}
	case 5:
		return Running{Datum: s.loop[len(s.loop)-1], From: "A", Points: s.holes, Dir: Direction(r.IntN(2))}
	case 6:
		return Across{A: s.corner(r), B: s.corner(r), Label: Label{Reference: r.IntN(2) == 0}}
	case 7:
		k = s.wavy + r.IntN(len(s.loop)-s.wavy)
		return Angle{Vertex: s.loop[k], A: s.loop[max(0, k-1-s.wavy/2)], B: s.loop[(k+1)%len(s.loop)]}
	case 8:
		return Diameter{Centre: s.hole(r), Dia: 20, Count: len(s.holes)}
	case 9:
		return Note{At: s.corner(r), Lines: []string{"natural edge", "do not trim"}, OnEdge: true}
	case 10:
		return Note{At: s.hole(r), Lines: []string{"countersunk"}}
	case 11:
		return Balloon{At: s.hole(r), Number: "12"}
	case 12:
		return Level{At: s.corner(r), Value: 735}
	}
	k = s.wavy + r.IntN(len(s.loop)-s.wavy)
	return Datum{A: s.loop[k], B: s.loop[(k+1)%len(s.loop)], Letter: "B"}
}

// sheetFor puts the scene in the middle of a sheet at the largest scale at which
// its margins find room.
func (s *scene) sheetFor(size drawing.Size, style Style) (Plate, bool) {
	body := around(s.loop)
	room := size.Space()
	for _, sc := range drawing.Scales {
		if sc.Of(body.Width()) > room.Width() || sc.Of(body.Height()) > room.Height() {
			continue
		}
		p := s.plate(sc, style)
		need := Extent(p, s.want).Grow(2)
		if need.Width() > room.Width() || need.Height() > room.Height() {
			continue
		}
		p = p.MoveTo(p.Origin.Add(room.Centre().Sub(need.Centre())))
		p.Frame = room
		return p, true
	}
	return Plate{}, false
}

// plate draws the scene at a scale.
func (s *scene) plate(sc drawing.Scale, style Style) Plate {
	on := make([]geom.Vec, len(s.loop))
	for i, v := range s.loop {
		on[i] = geom.V(sc.Of(v.X), sc.Of(v.Y))
	}
	drawn := []drawing.Item{
		drawing.Polyline{Points: append(append([]geom.Vec{}, on[s.wavy:]...), on[0]), Pen: style.Lines.Outline()},
	}
	if s.wavy > 0 {
		drawn = append(drawn, drawing.Polyline{Points: on[:s.wavy+1], Pen: style.Lines.Wavy()})
	}
	for _, h := range s.holes {
		drawn = append(drawn, drawing.Circle{Centre: geom.V(sc.Of(h.X), sc.Of(h.Y)), Radius: max(0.3, sc.Of(10)), Pen: style.Lines.Outline()})
	}
	return Plate{Scale: sc, Drawn: drawn, Style: style}
}

// sheet is the plate with its dimensions on a sheet.
func (p Plate) sheet(size drawing.Size, items []drawing.Item) drawing.Sheet {
	return drawing.Sheet{Name: "test", Size: size, Items: append(append([]drawing.Item{}, p.Drawn...), items...)}
}

// No figure may be touched or crossed by a line or another figure, and none may
// leave the drawing space (ISO 129-1; the rule is found in teaching texts). The
// judge is drawing.Overlaps, which knows nothing of how places are chosen.
func TestNothingOverlaps(t *testing.T) {
	bad, sets := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 7))
		s := randomScene(r, 3+r.IntN(22))
		style := []Style{Wood, Steel}[seed%2]
		p, ok := s.sheetFor(drawing.A2, style)
		if !ok {
			t.Logf("seed %d: no scale", seed)
			continue
		}
		sets++
		items, rep := Place(p, s.want)
		for _, tr := range rep.Troubles {
			if tr.Why != NoSense {
				t.Logf("seed %d: request %d %T %q: %s", seed, tr.Request, s.want[tr.Request], tr.Text, tr.Why)
			}
		}
		for _, c := range drawing.Overlaps(p.sheet(drawing.A2, items)) {
			bad++
			t.Logf("seed %d: %s", seed, c)
		}
	}
	if bad > 0 || sets < 300 {
		t.Errorf("%d clashes in %d sets", bad, sets)
	}
}

// Where there is too little room, every text that cannot be read is reported.
func TestReportTellsOfEveryClash(t *testing.T) {
	clashes := 0
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 23))
		s := randomScene(r, 20)
		p := s.plate(drawing.Scale{Paper: 1, Real: 20}, []Style{Wood, Steel}[seed%2])
		p = p.MoveTo(geom.V(200, 200))
		p.Frame = p.ready().Body.Grow(14)
		items, rep := Place(p, s.want)
		said := map[string]bool{}
		for _, tr := range rep.Troubles {
			for _, it := range p.items(s.want, tr.Request) {
				if x, ok := it.(drawing.Text); ok {
					said[x.String] = true
				}
			}
		}
		for _, c := range drawing.Overlaps(p.sheet(drawing.A1, items)) {
			clashes++
			if !said[c.Text.String] && !said[c.Other] {
				t.Errorf("seed %d: no word of: %s", seed, c)
			}
		}
	}
	if clashes < 100 {
		t.Errorf("only %d clashes: the test needs less room", clashes)
	}
}

// items are those of one request alone, for the texts it writes.
func (p Plate) items(want []Request, i int) []drawing.Item {
	p.Frame = drawing.Rect{}
	out, _ := Place(p, want[i:i+1])
	return out
}
