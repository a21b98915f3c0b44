package sheet

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/geom"
)

// Every part of the order is in a step, every slab in one of its own, and every
// step has its picture.
func TestMountingShowsEveryStep(t *testing.T) {
	for _, preset := range []string{"studio", "corner"} {
		m := newMaker(roomBuild(t, preset, "A3", nil))
		order := bring.OrderOf(m.b.Design)
		steps := order.Steps()
		n := 0
		for _, s := range steps {
			n += len(s.Ways)
			if _, ok := s.Slab(); ok && len(s.Ways) > 1 {
				t.Errorf("%s: a slab shares its step with %d others", preset, len(s.Ways)-1)
			}
		}
		if n != len(order) {
			t.Errorf("%s: %d of %d parts are in steps", preset, n, len(order))
		}
		drawn := 0
		for _, p := range mountingSheets(m) {
			for _, it := range p.sheet.Items {
				if g, ok := it.(drawing.Group); ok && len(g.Items) > 3 {
					drawn++
				}
			}
		}
		if drawn != len(steps) {
			t.Errorf("%s: %d of %d steps are drawn", preset, drawn, len(steps))
		}
	}
}

// In a corner 1000 by 1000 the panel that just passes, G4b of
// model/calc/passage/testdata/geometry.yaml, touches the inner corner with its
// inner side when it is drawn.
func TestTheCornerIsDrawnWhereItIsTight(t *testing.T) {
	l := corner(1000, 1000, 2708.427, 60)
	inner := geom.V(1000, 1000)
	side := geom.Through(l.part[2], l.part[3])
	if off := math.Abs(float64(side.Side(inner))); off > 0.5 {
		t.Errorf("%.2f mm off the inner corner", off)
	}
	for _, v := range l.part[:2] {
		if min(math.Abs(float64(v.X)), math.Abs(float64(v.Y))) > 1e-6 {
			t.Errorf("its outer side does not touch the outer walls: %v", v)
		}
	}
}

func BenchmarkMounting(b *testing.B) {
	build := roomBuild(b, "studio", "A3", nil)
	for b.Loop() {
		mountingSheets(newMaker(build))
	}
}

func BenchmarkCarrying(b *testing.B) {
	build := roomBuild(b, "studio", "A3", nil)
	for b.Loop() {
		carryingSheets(newMaker(build))
	}
}

// A slab that is turned in has its moves on the sheet, numbered, in the language
// of the sheet.
func TestTurnedSlabHasItsMoves(t *testing.T) {
	for language, words := range map[string][]string{
		"en": {"1. Hold it in front of its place", "Lower its left end", "Lower it 40 mm"},
		"de": {"1. Vor seinen Platz halten", "Linkes Ende", "40 mm senken"},
	} {
		m := newMaker(roomBuild(t, "corner", "A3", func(j *model.Job) { j.Show.Language = language }))
		var all []string
		for _, pg := range mountingSheets(m) {
			all = append(all, textsOf(pg.sheet.Items)...)
		}
		text := strings.Join(all, " ")
		for _, w := range words {
			if !strings.Contains(text, w) {
				t.Errorf("%s: %q is missing in %q", language, w, text)
			}
		}
		if language == "de" && (strings.Contains(text, "its left") || strings.Contains(text, "lower it")) {
			t.Errorf("English moves on a German sheet: %q", text)
		}
	}
}

// The steps of the way in are read in their order: from left to right, row by
// row.
func TestWayInStandsInOrder(t *testing.T) {
	for _, paper := range []string{"A3", "A4"} {
		m := newMaker(roomBuild(t, "studio", paper, nil))
		var last geom.Vec
		n := 0
		for _, pg := range carryingSheets(m) {
			for _, g := range groupsNamed(pg.sheet.Items, "way-walls-") {
				at := drawing.Bounds(g.Items).Centre()
				if n > 0 && at.X < last.X && at.Y > last.Y {
					t.Errorf("%s: %s stands before the one before it", paper, g.ID)
				}
				if n++; g.ID != fmt.Sprintf("way-walls-%d", n) {
					t.Errorf("%s: %s is the picture number %d", paper, g.ID, n)
				}
				last = at
			}
		}
		if n != len(m.b.Job.House.Way) {
			t.Errorf("%s: %d of %d steps are drawn", paper, n, len(m.b.Job.House.Way))
		}
	}
}
