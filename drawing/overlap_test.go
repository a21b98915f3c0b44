package drawing_test

import (
	"math/rand/v2"
	"testing"

	"slabwright/drawing"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// clashes names what the texts of an A3 sheet with these items clash with.
func clashes(items ...drawing.Item) map[string]int {
	out := map[string]int{}
	for _, c := range drawing.Overlaps(drawing.Sheet{Size: drawing.A3, Items: items}) {
		out[c.With]++
	}
	return out
}

func TestOverlapsFindsEachKind(t *testing.T) {
	text := drawing.Write(geom.V(100, 100), "2300 ±1", 3.5, drawing.Left) // 3.5 high, about 17 wide
	turned := text.Along(90 * unit.Degree)
	fine := drawing.Normal.Fine()
	for name, c := range map[string]struct {
		items []drawing.Item
		want  string
	}{
		"alone":             {[]drawing.Item{text}, ""},
		"dimension line":    {[]drawing.Item{text, drawing.Line(geom.V(90, 99), geom.V(130, 99), fine)}, ""},
		"line through":      {[]drawing.Item{text, drawing.Line(geom.V(90, 101), geom.V(130, 101), fine)}, "line"},
		"line by its width": {[]drawing.Item{text, drawing.Line(geom.V(90, 99.3), geom.V(130, 99.3), drawing.Pen{Width: 1.5})}, "line"},
		"line inside":       {[]drawing.Item{text, drawing.Line(geom.V(102, 101), geom.V(104, 102), fine)}, "line"},
		"line beside":       {[]drawing.Item{turned, drawing.Line(geom.V(102, 101), geom.V(104, 102), fine)}, ""},
		"line at turned":    {[]drawing.Item{turned, drawing.Line(geom.V(90, 110), geom.V(99, 110), fine)}, "line"},
		"circle around":     {[]drawing.Item{text, drawing.Circle{Centre: geom.V(108, 102), Radius: 20, Pen: fine}}, ""},
		"circle across":     {[]drawing.Item{text, drawing.Circle{Centre: geom.V(108, 102), Radius: 5, Pen: fine}}, "line"},
		"arc elsewhere": {[]drawing.Item{text, drawing.Arc{Centre: geom.V(108, 98), Radius: 5, From: 180 * unit.Degree,
			Sweep: 180 * unit.Degree, Pen: fine}}, ""},
		"arc across": {[]drawing.Item{text, drawing.Arc{Centre: geom.V(108, 98), Radius: 5, From: 180 * unit.Degree,
			Sweep: -180 * unit.Degree, Pen: fine}}, "line"},
		"text on text": {[]drawing.Item{text, drawing.Write(geom.V(110, 102), "x", 3.5, drawing.Left)}, "text"},
		"two lines":    {[]drawing.Item{text, drawing.Write(geom.V(100, 93.35), "below g", 3.5, drawing.Left)}, ""},
		"hatch":        {[]drawing.Item{text, drawing.Hatch{Loops: [][]geom.Vec{drawing.Box(80, 80, 60, 60).Corners()}}}, ""},
		"black fill":   {[]drawing.Item{text, drawing.Area{Loops: [][]geom.Vec{drawing.Box(80, 80, 60, 60).Corners()}}}, "fill"},
		"pale fill":    {[]drawing.Item{text, drawing.Area{Loops: [][]geom.Vec{drawing.Box(80, 80, 60, 60).Corners()}, Ink: drawing.Pale}}, ""},
		"fill in hole": {[]drawing.Item{text, drawing.Area{Loops: [][]geom.Vec{
			drawing.Box(60, 60, 100, 100).Corners(), drawing.Box(80, 80, 60, 60).Corners()}}}, ""},
		"arrow":         {[]drawing.Item{text, drawing.Mark{Kind: drawing.Arrow, At: geom.V(105, 101), Dir: geom.V(1, 0)}}, "fill"},
		"off the sheet": {[]drawing.Item{drawing.Write(geom.V(405, 100), "2300", 3.5, drawing.Left)}, "outside"},
		"in the margin": {[]drawing.Item{drawing.Write(geom.V(12, 100), "2300", 3.5, drawing.Left)}, "outside"},
		"in a group":    {[]drawing.Item{drawing.Group{ID: "a", Items: []drawing.Item{text, drawing.Group{ID: "b", Items: []drawing.Item{text}}}}}, "text"},
	} {
		got := clashes(c.items...)
		if (c.want == "") != (len(got) == 0) || c.want != "" && got[c.want] == 0 {
			t.Errorf("%s: found %v, want %q", name, got, c.want)
		}
	}
}

func TestOverlapsFindsTheFrame(t *testing.T) {
	s := drawing.Sheet{Size: drawing.A3, Title: "x", Name: "x"}
	block := drawing.A3.BlockBox()
	s.Add(drawing.Write(geom.V(block.Min.X-3, block.Min.Y+20), "too far", 3.5, drawing.Left))
	found := map[string]bool{}
	for _, c := range drawing.Overlaps(drawing.Finish(s, fullBlock)) {
		found[c.With] = true
	}
	if !found["frame"] {
		t.Errorf("a text across the title block: found %v", found)
	}
}

// Against brute force: a line clashes when one of many points along it lies in
// the box of the text.
func TestOverlapsAgainstSampling(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	hits := 0
	for range 3000 {
		text := drawing.Write(geom.V(200, 150), "Äg 300", 7, drawing.Middle).Along(unit.Angle(rnd.Float64() * 7))
		p := func() geom.Vec {
			return geom.V(unit.Length(180+40*rnd.Float64()), unit.Length(130+40*rnd.Float64()))
		}
		a, b := p(), p()
		q := text.Quad()
		box := [][]geom.Vec{q[:]}
		deepest := unit.Length(0)
		for i := range 400 {
			if s := a.Lerp(b, float64(i)/399); inside(box, s) {
				deepest = max(deepest, toEdge(box, s))
			}
		}
		got := len(clashes(text, drawing.Line(a, b, drawing.Pen{Width: 1e-9}))) > 0
		if deepest > 0.1 != got && (deepest > 0.1 || deepest == 0 && nearest(box, a, b) > 0.1) {
			t.Fatalf("line %v %v: found %v, sampled %v", a, b, got, deepest)
		}
		if got {
			hits++
		}
	}
	if hits < 300 || hits > 2700 {
		t.Errorf("%d hits of 3000 make no test", hits)
	}
}

func nearest(box [][]geom.Vec, a, b geom.Vec) unit.Length {
	best := unit.Length(1e9)
	for i := range 400 {
		best = min(best, toEdge(box, a.Lerp(b, float64(i)/399)))
	}
	return best
}

func BenchmarkOverlaps(b *testing.B) {
	s := framed(drawing.A3)
	for i := range 300 {
		y := unit.Length(80 + 0.6*float64(i))
		s.Add(drawing.Write(geom.V(40+unit.Length(i%7)*40, y), "1234 ±0.5", 2.5, drawing.Left))
		s.Add(drawing.Line(geom.V(40, y), geom.V(300, y), drawing.Normal.Fine()))
	}
	for b.Loop() {
		drawing.Overlaps(s)
	}
}
