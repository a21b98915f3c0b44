package model_test

import (
	"testing"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// bar is an angle of 600 mm with an anchor hole near its left end.
func bar(change func(*model.AnglePart)) *model.Part {
	a := &model.AnglePart{Section: stock.L50x50x6, Mounted: model.Mounted{Length: 600, Holes: []model.BracketHole{
		{Name: "W1", Leg: model.WallLeg, X: 40, FromHeel: 30, Dia: 11},
		{Name: "S1", Leg: model.SeatLeg, X: 300, FromHeel: 37, Dia: 6, Slot: 8},
	}}}
	if change != nil {
		change(a)
	}
	return &model.Part{Kind: model.KindAngle, Material: "steel S235", Angle: a}
}

func rod(inWall, gap, inShelf unit.Length) *model.Part {
	return &model.Part{Kind: model.KindRod, Material: "steel S235", Rod: &model.RodPart{Dia: 16, InWall: inWall, Gap: gap, InShelf: inShelf}}
}

func shelf(length unit.Length, name string) *model.Part {
	return &model.Part{Kind: model.KindShelf, Material: "European ash", Slab: &model.SlabPart{Thickness: 30,
		Edges: []model.Edge{{Name: "left", To: name, Start: geom.V(0, -200), End: geom.V(0, 0)}, {Name: "back", Reference: true, Start: geom.V(0, 0), End: geom.V(length, 0)},
			{Name: "right", Start: geom.V(length, 0), End: geom.V(length, -200)}, {Name: "front", Start: geom.V(length, -200), End: geom.V(0, -200)}}}}
}

func TestEqualPartsShareAMark(t *testing.T) {
	// Rule: ISO 6433, equal parts have one item number; a mirrored part has its
	// own (trade habit).
	elsewhere := func(a *model.AnglePart) {
		a.Under, a.Seat, a.Start = "another slab", 900, 77
		a.Holes[0].Name, a.Holes[0].For = "W9", "something else"
		a.Holes[0], a.Holes[1] = a.Holes[1], a.Holes[0]
		a.Left.SetBack = 12
	}
	for _, c := range []struct {
		name  string
		parts []*model.Part
		want  []int
	}{
		{"the place does not matter", []*model.Part{bar(nil), bar(elsewhere)}, []int{1, 1}},
		{"numbers follow the first appearance", []*model.Part{bar(nil), rod(100, 3, 100), bar(nil), rod(100, 3, 100), rod(100, 3, 120)}, []int{1, 2, 1, 2, 3}},
		{"length", []*model.Part{bar(nil), bar(func(a *model.AnglePart) { a.Length = 601 })}, []int{1, 2}},
		{"section", []*model.Part{bar(nil), bar(func(a *model.AnglePart) { a.Section = stock.L50x50x5 })}, []int{1, 2}},
		{"place of a hole", []*model.Part{bar(nil), bar(func(a *model.AnglePart) { a.Holes[0].X++ })}, []int{1, 2}},
		{"slot", []*model.Part{bar(nil), bar(func(a *model.AnglePart) { a.Holes[1].Along = true })}, []int{1, 2}},
		{"end cut", []*model.Part{bar(nil), bar(func(a *model.AnglePart) { a.Left.Mitre = unit.Degree })}, []int{1, 2}},
		{"leg up", []*model.Part{bar(nil), bar(func(a *model.AnglePart) { a.LegUp = true })}, []int{1, 2}},
		{"mirrored", []*model.Part{bar(nil), bar(mirror)}, []int{1, 2}},
		{"rods are cut to whole millimetres", []*model.Part{rod(100, 3.1, 100), rod(100, 2.9, 100), rod(100, 4, 100)}, []int{1, 1, 2}},
		{"shelves", []*model.Part{shelf(500, "left"), shelf(500, "niche"), shelf(500.1, "left")}, []int{1, 1, 2}},
		{"other kinds never", []*model.Part{{ID: "a", Kind: "odd"}, {ID: "b", Kind: "odd"}}, []int{1, 2}},
	} {
		d := &model.Design{Room: &model.Room{}, Parts: c.parts}
		d.Finish()
		for i, p := range d.Parts {
			if p.Mark != c.want[i] {
				t.Errorf("%s: part %d has mark %d, want %d", c.name, i+1, p.Mark, c.want[i])
			}
		}
	}
}

// mirror swaps left and right.
func mirror(a *model.AnglePart) {
	for i := range a.Holes {
		a.Holes[i].X = a.Length - a.Holes[i].X
	}
	a.Left, a.Right = a.Right, a.Left
}

func TestHands(t *testing.T) {
	left, right := &model.Wall{Name: "left", Index: 0}, &model.Wall{Name: "right", Index: 2}
	on := func(w *model.Wall, change ...func(*model.AnglePart)) *model.Part {
		return bar(func(a *model.AnglePart) {
			a.Wall = w
			for _, f := range change {
				f(a)
			}
		})
	}
	up := func(a *model.AnglePart) { a.LegUp = true }
	// A bar turned half a turn about the axis into the wall has its leg up and
	// its ends swapped: the same bar, so no mirror image of itself.
	turned := func(a *model.AnglePart) { mirror(a); up(a) }
	symmetric := func(a *model.AnglePart) { a.Holes[0].X = 300 }
	for _, c := range []struct {
		name  string
		parts []*model.Part
		want  []model.Hand
	}{
		{"mirrored on two walls", []*model.Part{on(right, mirror), on(left)}, []model.Hand{"R", "L"}},
		{"equal ones have no hand", []*model.Part{on(left), on(right)}, []model.Hand{"", ""}},
		{"symmetric ones have no hand", []*model.Part{on(left, symmetric), on(right, symmetric, mirror)}, []model.Hand{"", ""}},
		{"leg up is the mirror image in a level plane", []*model.Part{on(left), on(right, up)}, []model.Hand{"L", "R"}},
		{"a turned bar is no mirror image", []*model.Part{on(left), on(right, turned)}, []model.Hand{"", ""}},
	} {
		d := &model.Design{Room: &model.Room{}, Parts: c.parts}
		d.Finish()
		for i, p := range d.Parts {
			hand, twin := d.HandOf(p)
			if hand != c.want[i] || (twin != nil) != (hand != model.NoHand) {
				t.Errorf("%s: part %d has hand %q, twin %v, want %q", c.name, i+1, hand, twin != nil, c.want[i])
			}
		}
	}
	if hand, twin := new(model.Design).HandOf(rod(1, 1, 1)); hand != model.NoHand || twin != nil {
		t.Error("a rod has a hand")
	}
}

func TestAlikeKeepsTheOrder(t *testing.T) {
	d := &model.Design{Room: &model.Room{}, Parts: []*model.Part{bar(nil), rod(100, 3, 100), bar(nil)}}
	d.Finish()
	got := d.Alike(d.Parts[2])
	if len(got) != 2 || got[0] != d.Parts[0] || got[1] != d.Parts[2] {
		t.Errorf("%d parts are alike, want the first and the third", len(got))
	}
}
