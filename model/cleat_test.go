package model_test

import (
	"math"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// TestCleatIsABatten: its volume is that of the box less its holes, by hand: round
// ones pi/4 d2 l, slots with straight flanks as long as they go on. The facets of
// round holes take less than half a thousandth of the whole.
func TestCleatIsABatten(t *testing.T) {
	room := measured()
	d := topped(room)
	p := d.Add("cleat", model.Cleat(stock.Ash, 45, 60).Along(room.Wall("left")).Under("worktop").ClearOf(3).
		Anchored(model.Anchors{Hole: 9, Pitch: 300, End: 60}).
		ScrewedUp(model.Screws{Hole: 7, Moving: true, Pitch: 200, End: 35, Pilot: 4, Into: 28}))
	d.Finish()
	for _, f := range d.Faults() {
		t.Fatal(f.Why)
	}
	c := p.Cleat
	want := 45 * 60 * float64(c.Length)
	slots := 0
	for _, h := range c.Holes {
		r := float64(h.Dia) / 2
		if h.Leg == model.WallLeg {
			want -= math.Pi * r * r * 45
			continue
		}
		if h.Slot > 0 {
			slots++
		}
		want -= (math.Pi*r*r + float64(h.Dia*h.Slot)) * 60
	}
	if got := float64(p.Volume()); math.Abs(got/want-1) > 5e-4 {
		t.Errorf("%.0f mm3, by hand %.0f", got, want)
	}
	if m := float64(stock.Ash.Density.Mass(p.Volume())); math.Abs(float64(p.Mass())-m) > 1e-9 {
		t.Errorf("%.3f kg, density times volume %.3f", float64(p.Mass()), m)
	}
	if slots == 0 {
		t.Error("along the moving side no screw has a slot")
	}
	low, high := c.Levels()
	box := p.Bounds()
	if math.Abs(float64(box.Min.Z-low))+math.Abs(float64(box.Max.Z-high)) > 0.01 || high != c.Seat {
		t.Errorf("from %.2f to %.2f, its solid from %.2f to %.2f", low, high, box.Min.Z, box.Max.Z)
	}
}

// TestCleatMistakes: each is a finding of the description, with a cause.
func TestCleatMistakes(t *testing.T) {
	room := measured()
	right := room.Wall("right")
	anchors := model.Anchors{Hole: 9, Pitch: 300, End: 60}
	for want, p := range map[string]model.CleatPiece{
		"needs a wall":          model.Cleat(stock.Ash, 45, 60).Under("worktop"),
		"needs a slab to carry": model.Cleat(stock.Ash, 45, 60).Along(right),
		"height of the cleat":   model.Cleat(stock.Ash, 45, 10).Along(right).Under("worktop"),
		"width of the cleat":    model.Cleat(stock.Ash, 5, 60).Along(right).Under("worktop"),
		"leaves less than 5 mm": model.Cleat(stock.Ash, 45, 20).Along(right).Under("worktop").Anchored(model.Anchors{Hole: 15, Pitch: 300, End: 60}),
		"come out at the top":   model.Cleat(stock.Ash, 45, 60).Along(right).Under("worktop").Anchored(anchors).ScrewedUp(model.Screws{Hole: 7, Pitch: 300, End: 35, Pilot: 4, Into: 60}),
	} {
		d := topped(room)
		d.Add("cleat", p)
		said := ""
		for _, f := range d.Faults() {
			said += f.Why + "\n"
		}
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said: %s", want, said)
		}
	}
}

// oneCleat is a worktop with a cleat along its right wall.
var oneCleat = model.NewPreset("one cleat", "a worktop on a cleat", func(s model.Site, _ struct{}) *model.Design {
	d := topped(s.Room)
	d.Add("cleat", model.Cleat(stock.Ash, 45, 60).Along(s.Room.Wall("right")).Under("worktop").ClearOf(3).Anchored(model.Anchors{Hole: 9, Pitch: 300, End: 60}))
	return d
}, model.Need{Wall: "right", Help: "right wall"})

// TestCutCleat: a cleat that is already cut keeps its length and its holes; it keeps
// to the corner that it runs into. One told as it is drawn is the same cleat.
func TestCutCleat(t *testing.T) {
	built := func(cut ...model.CutPart) *model.Part {
		d := oneCleat.Build(model.Site{Room: measured(), Cut: cut}, nil)
		d.Finish()
		for _, f := range d.Faults() {
			t.Fatal(f.Why)
		}
		return d.Part("cleat")
	}
	drawn := built()
	p := built(model.CutPart{Part: "cleat", On: "2026-01-10", Length: 500, WallHoles: []unit.Length{60, 440}})
	if c := p.Cleat; c.Length != 500 || len(c.In(model.WallLeg)) != 2 || c.In(model.WallLeg)[1].X != 440 || p.Cut.WantedBar.Length != drawn.Cleat.Length || c.Start != drawn.Cleat.Start {
		t.Errorf("%.0f long from %.1f, drawn %.0f from %.1f, holes %v", c.Length, c.Start, drawn.Cleat.Length, drawn.Cleat.Start, c.Holes)
	}
	told, ok := drawn.CutAsDrawn("2026-01-10")
	if !ok {
		t.Fatal("a cleat cannot be told as cut")
	}
	if same := built(told); same.Cleat.Length != drawn.Cleat.Length || same.Cleat.Start != drawn.Cleat.Start || math.Abs(float64(same.Volume()-drawn.Volume())) > 1e-6 {
		t.Errorf("told as drawn: %+v, drawn %+v", same.Cleat, drawn.Cleat)
	}
}
