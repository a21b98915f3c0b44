package dim

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/drawing"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// The same view comes out the same, whatever was placed before.
func TestDeterministic(t *testing.T) {
	for seed := range uint64(12) {
		s := randomScene(rand.New(rand.NewPCG(seed, 99)), 25)
		p := s.plate(drawing.Scale{Paper: 1, Real: 10}, Wood)
		first, _ := Place(p, s.want)
		want := drawing.DumpItems(first)
		for range 3 {
			if again, _ := Place(p, s.want); drawing.DumpItems(again) != want {
				t.Fatalf("seed %d differs", seed)
			}
		}
	}
}

// A view that gets the room asked for by Extent stays within it.
func TestExtentIsEnough(t *testing.T) {
	for seed := range uint64(60) {
		s := randomScene(rand.New(rand.NewPCG(seed, 5)), 14)
		p := s.plate(drawing.Scale{Paper: 1, Real: 10}, Wood)
		p = p.MoveTo(geom.V(400, 300))
		p.Frame = Extent(p, s.want).Grow(3)
		_, rep := Place(p, s.want)
		for _, tr := range rep.Troubles {
			if tr.Why == OffPage {
				t.Errorf("seed %d: %v", seed, tr)
			}
		}
	}
}

// Margins by arithmetic: a line 10 off the outline whose extension lines end 2
// beyond, in pens 0.25 wide; figures over a line 10 off the right side stand
// within it.
func TestMargins(t *testing.T) {
	want := []Request{
		Linear{A: geom.V(0, 0), B: geom.V(100, 0), Side: Below},
		Linear{A: geom.V(100, 0), B: geom.V(100, 50), Dir: Vertical, Side: RightOf},
	}
	got := Margins(board100(Wood), want)
	for _, c := range []struct {
		name      string
		got, want unit.Length
	}{{"below", got.Below, 12}, {"right", got.Right, 12}, {"left", got.Left, 0}, {"above", got.Above, 0}} {
		if abs(c.got-c.want) > 0.2 {
			t.Errorf("%s %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestMoveTo(t *testing.T) {
	p := board100(Wood)
	want := []Request{Linear{A: geom.V(0, 0), B: geom.V(100, 0)}, Note{At: geom.V(50, 25), Lines: []string{"here"}}}
	by := geom.V(64, 32) // sums of such numbers are exact
	here, _ := Place(p, want)
	there, _ := Place(p.MoveTo(by), want)
	if drawing.DumpItems(drawing.Move(here, by)) != drawing.DumpItems(there) {
		t.Error("a moved plate is dimensioned otherwise")
	}
}

// Texts that are on the paper already, and places kept for others, stay free.
func TestKeepsOffWhatIsThere(t *testing.T) {
	p := board100(Wood)
	p.Frame = drawing.Box(-60, -60, 220, 170)
	kept := drawing.Box(20, -14, 40, 9)
	p.Kept = []drawing.Rect{kept}
	p.Drawn = append(p.Drawn, drawing.Write(geom.V(50, 58), "VIEW FROM THE FRONT", 5, drawing.Centre))
	items, rep := Place(p, []Request{
		Linear{A: geom.V(0, 0), B: geom.V(100, 0), Side: Below},
		Linear{A: geom.V(0, 50), B: geom.V(100, 50), Side: Above},
		Note{At: geom.V(40, 2), Lines: []string{"a long note about the edge", "in two lines"}},
	})
	if !rep.Clean() {
		t.Error(rep.Troubles)
	}
	for _, it := range items {
		if drawing.Bounds([]drawing.Item{it}).Meets(kept) {
			if _, ok := it.(drawing.Text); ok {
				t.Errorf("%v in the kept place", it)
			}
		}
	}
	s := drawing.Sheet{Name: "kept", Size: drawing.A2, Items: drawing.Move(append(p.Drawn, items...), geom.V(200, 200))}
	for _, c := range drawing.Overlaps(s) {
		t.Error(c)
	}
}

// Item numbers of one side stand in a row or column, ringed, clear of each other
// (ISO 6433 as quoted by teaching texts).
func TestBalloonsInRows(t *testing.T) {
	var want []Request
	for i := range 9 {
		want = append(want, Balloon{At: geom.V(unit.Length(8+9*i), unit.Length(5+(i*17)%40)), Number: string(rune('1' + i))})
	}
	d := placed(t, board100(Wood), want...)
	if len(d.rings) != 9 {
		t.Fatalf("%d rings", len(d.rings))
	}
	lanes := map[geom.Vec]bool{geom.V(0, -15): true, geom.V(0, 65): true, geom.V(-15, 0): true, geom.V(115, 0): true}
	for i, r := range d.rings {
		if !lanes[geom.V(0, r.Centre.Y)] && !lanes[geom.V(r.Centre.X, 0)] {
			t.Errorf("ring %d at %v is out of line", i, r.Centre)
		}
		for _, o := range d.rings[:i] {
			if o.Centre.Sub(r.Centre).Len() < ringSize {
				t.Errorf("rings at %v and %v meet", r.Centre, o.Centre)
			}
		}
	}
}

// A caption stays inside its region and clear of lines in it.
func TestCaptionInside(t *testing.T) {
	loop := []geom.Vec{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 50}, {X: 60, Y: 50}, {X: 60, Y: 18}, {X: 0, Y: 18}}
	p := board100(Wood)
	p.Drawn = []drawing.Item{drawing.Outline(loop, Wood.Lines.Outline()), drawing.Line(geom.V(80, 0), geom.V(80, 50), Wood.Lines.Centre())}
	d := placed(t, p, Caption{Loop: loop, Lines: []string{"bench top", "ash 45"}, Height: 5})
	region := area{loops: [][]geom.Vec{loop}, rect: around(loop)}
	for _, x := range d.texts {
		b := quadBox(x.Quad())
		if !region.takes(&b) {
			t.Errorf("%q at %v leaves the region", x.String, x.At)
		}
		if b.min.X < 80 && b.max.X > 80 {
			t.Errorf("%q at %v lies on the centre line", x.String, x.At)
		}
	}
}

// What finds no room is said, as a warning.
func TestReport(t *testing.T) {
	p := board100(Wood)
	p.Frame = p.Body.Grow(5)
	_, rep := Place(p, []Request{
		Linear{A: geom.V(0, 0), B: geom.V(100, 0), Side: Below},
		Linear{A: geom.V(3, 3), B: geom.V(3, 9)},
		nil,
	})
	why := map[string]int{}
	for _, tr := range rep.Troubles {
		why[tr.Why]++
	}
	if why[NoSense] != 2 || why[OffPage] == 0 {
		t.Errorf("troubles %v", rep.Troubles)
	}
	if k := rep.Troubles[0]; k.Text != "linear" && k.Text != "none" {
		t.Errorf("trouble %+v does not name its kind", k)
	}
	for _, f := range rep.Findings("03-top") {
		if f.Status != find.Warn || f.Rule == "" || f.Title == "" || f.Why == "" {
			t.Errorf("finding %+v", f)
		}
	}
}

// Whatever numbers come in, nothing panics and what comes out can be drawn.
func FuzzPlace(f *testing.F) {
	for _, v := range []float64{0, 1, -1e-9, 3e4, 1e99, math.Inf(1), math.NaN()} {
		f.Add(v, 10.0, 20.0, uint64(3))
		f.Add(5.0, v, v, uint64(8))
	}
	f.Fuzz(func(t *testing.T, x, y, z float64, seed uint64) {
		r := rand.New(rand.NewPCG(seed, 1))
		s := randomScene(r, 5)
		a, b, c := geom.V(unit.Length(x), unit.Length(y)), geom.V(unit.Length(y), unit.Length(z)), geom.V(unit.Length(z), unit.Length(x))
		want := append(s.want,
			Linear{A: a, B: b, Dir: Direction(seed % 5), Side: Side(seed % 7)}, Chain{Points: []geom.Vec{a, b, c, a}, Dir: Aligned},
			Running{Datum: a, Points: []geom.Vec{b, c, b}, Dir: Direction(seed % 3)}, Running{Datum: a}, Chain{},
			Across{A: a, B: c}, Angle{Vertex: a, A: b, B: c}, Diameter{Centre: b, Dia: unit.Length(x)},
			Radius{Centre: c, R: unit.Length(y), From: unit.Angle(z), Sweep: unit.Angle(x)}, Note{At: a}, Note{At: b, Lines: []string{"", "x"}},
			Balloon{At: c}, Balloon{At: a, Number: "1"}, Level{At: b, Value: unit.Length(z)}, Datum{A: a, B: b, Letter: "D"},
			Caption{Loop: []geom.Vec{a, b, c}, Lines: []string{"text"}}, Caption{})
		p := s.plate(drawing.Scale{Paper: 1, Real: 20}, Steel)
		if seed%2 == 0 {
			p.Scale, p.Frame, p.Kept = drawing.Scale{}, drawing.Box(unit.Length(x), unit.Length(y), 100, 100), []drawing.Rect{{Min: a, Max: b}}
		}
		items, _ := Place(p, want)
		if err := drawing.Sound(drawing.Sheet{Name: "fuzz", Size: drawing.A3, Items: items}); err != nil {
			t.Error(err)
		}
	})
}

// What was added around dimension lines moves none of them; lettering keeps
// clear of it. As part of the drawing it would push the row out.
func TestAddedItemsMoveNoLine(t *testing.T) {
	ask := []Request{Linear{A: geom.V(0, 0), B: geom.V(100, 0), Side: Below}}
	sign := drawing.Write(geom.V(50, -8.5), "7", 2.5, drawing.Centre)
	height := func(p Plate) unit.Length {
		y, _ := placed(t, p, ask...).level()
		return y[0]
	}
	p := board100(Wood)
	p.Added = []drawing.Item{sign}
	if y := height(p); !near(y, -10) {
		t.Errorf("the line stands at %v, want -10 as without the sign", y)
	}
	items, _ := Place(p, ask)
	if c := drawing.Overlaps(drawing.Sheet{Size: drawing.A3, Items: drawing.Move(append(items, sign), geom.V(100, 150))}); len(c) > 0 {
		t.Errorf("%v", c)
	}
	q := board100(Wood)
	q.Drawn = append(q.Drawn, sign)
	if y := height(q); y > -11 {
		t.Errorf("the line stands at %v and not beyond the sign", y)
	}
}
