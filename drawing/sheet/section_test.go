package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
)

// paperArea is the area of hatches and fills in items.
func paperArea(items []drawing.Item) float64 {
	sum := 0.0
	loops := func(list [][]geom.Vec) {
		for _, l := range list {
			sum += turns(l) / 2
		}
	}
	for _, it := range items {
		switch x := it.(type) {
		case drawing.Hatch:
			loops(x.Loops)
		case drawing.Area:
			loops(x.Loops)
		case drawing.Group:
			sum += paperArea(x.Items)
		}
	}
	return sum
}

// What a section hatches is what the exact solids show when cut at that plane,
// at the scale of the sheet.
func TestSectionHatchesTheExactCut(t *testing.T) {
	for _, name := range []string{"studio", "alcove", "corner"} {
		b := roomBuild(t, name, "A3", nil)
		m := newMaker(b)
		pages := presetPages(t, name, "A3")
		for _, c := range m.cuttings() {
			s := pageNamed(t, pages, "section-"+stem(c.name))
			k := 10.0 // every section of the presets finds room at 1:10
			if s.Scale != "1:10" {
				t.Errorf("%s: section %s is drawn at %s", name, c.letter, s.Scale)
				continue
			}
			want := float64(c.slab.Bodies[0].Solid.Cut(c.line).Area()) / (k * k)
			var got float64
			for _, g := range groupsNamed(s.Items, "section-"+stem(c.slab.ID)) {
				got += paperArea(g.Items)
			}
			if math.Abs(got-want) > 0.002*want {
				t.Errorf("%s, section %s: %s is hatched over %.2f mm2, cut it has %.2f", name, c.letter, c.slab.ID, got, want)
			}
		}
	}
}

// The detail shows the angle with its holes open: its face less the two holes.
func TestDetailOpensTheHoles(t *testing.T) {
	b := roomBuild(t, "studio", "A3", nil)
	m := newMaker(b)
	c := m.cuttings()[0]
	s, ok := m.seating(c)
	if !ok {
		t.Fatal("no angle at the wall behind the seat")
	}
	d, _ := m.detailShot(c)
	a := s.part.Angle
	full := 569.0 // L50x50x6: 5.69 cm2, EN 10056-1
	screw := float64(s.screw.Dia)
	if !s.screw.Along {
		screw += float64(s.screw.Slot)
	}
	want := full - float64(a.Section.Thickness)*(float64(s.anchor.Dia)+screw)
	for _, cut := range d.view.Cuts {
		var got float64
		for _, l := range cut.Loops {
			got += turns(l) / 2
		}
		if got < 1000 && math.Abs(got-want) > 2 { // the slab has far more
			t.Errorf("the angle's face with its holes is %.1f mm2, want %.1f", got, want)
		}
	}
}

// The heights of the section say what the check of the leg room says.
func TestSectionTellsTheMargin(t *testing.T) {
	b := roomBuild(t, "studio", "A3", nil)
	m := newMaker(b)
	text := strings.Join(textsOf(pageNamed(t, presetPages(t, "studio", "A3"), "section-cutting-place").Items), "\n")
	for _, z := range b.Design.Zones {
		f, ok := m.legFinding(z)
		if !ok {
			t.Fatalf("no finding for %s", z.Name)
		}
		if z.Kind != model.ThighZone {
			continue
		}
		if want := m.style.Number(f.Margin.Value, 1); !strings.Contains(text, "thighs, "+want+" free") || !strings.Contains(text, "free, with "+want+" mm to spare") {
			t.Errorf("the margin %s is not on the section", want)
		}
	}
}

// A seated figure is as tall as the estimates of its person say.
func TestFigureFollowsTheEstimates(t *testing.T) {
	b := roomBuild(t, "studio", "A3", nil)
	m := newMaker(b)
	c := m.cuttings()[0]
	for _, f := range m.sitters(c) {
		over := slices.IndexFunc(b.Findings, func(x find.Finding) bool {
			return x.Rule == "elbow-height" && x.Title == "Surface and elbows of "+f.person.Name+" at "+c.seat.Name
		})
		if want := float64(c.slab.Slab.Top) - b.Findings[over].Measured.Value; math.Abs(float64(f.elbow)-want) > 0.01 {
			t.Errorf("the elbow of %s is drawn at %.1f, the check has it at %.1f", f.person.Name, float64(f.elbow), want)
		}
		body, _, chair := f.shape(0)
		_, hi := body.Bounds()
		if math.Abs(float64(hi.Y-f.head)) > 2 {
			t.Errorf("the figure's head is at %.0f, estimated at %.0f", float64(hi.Y), float64(f.head))
		}
		if _, top := chair.Bounds(); math.Abs(float64(top.Y-f.seat)) > 0.01 {
			t.Errorf("the chair is at %.0f, the seat at %.0f", float64(top.Y), float64(f.seat))
		}
		if math.Abs(float64(hi.X)-float64(max(f.toKnee, f.toToe))) > 30 {
			t.Errorf("the figure reaches %.0f from the belly, knees %.0f, toes %.0f", float64(hi.X), float64(f.toKnee), float64(f.toToe))
		}
	}
}
