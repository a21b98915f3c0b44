package model_test

import (
	"fmt"
	"math"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

var (
	nan  = unit.Length(math.NaN())
	inf  = unit.Length(math.Inf(1))
	huge = unit.Length(1e300)
)

// good is a slab that can be made in an alcove of 1600 x 1200; the mistakes of
// the tests are made on it.
func good(r *model.Room) model.SlabPiece {
	return model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750)
}

func hung(r *model.Room) model.SlabPiece {
	return model.Shelf(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).
		Gaps(3, 4).Depth(250).UndersideAt(1400)
}

func steel(r *model.Room) model.AnglePiece {
	return model.Angle(stock.L50x50x6).Along(r.Wall("back")).Under("desk")
}

// TestMistakesBecomeFindings makes one mistake at a time. Every one is a
// finding that names the line of the call; the parts before and after it stand.
func TestMistakesBecomeFindings(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	for _, m := range mistakes {
		file, line := runtime.FuncForPC(reflect.ValueOf(m.make).Pointer()).FileLine(reflect.ValueOf(m.make).Pointer())
		want := fmt.Sprintf("model/fault_cases_test.go:%d", line+1)
		if !strings.HasSuffix(file, "fault_cases_test.go") {
			t.Fatalf("the mistake stands in %s", file)
		}
		d := model.NewDesign("desk", r)
		d.Add("desk", good(r))
		d.Add("bar", steel(r))
		m.make(d, r)
		d.Add("shelf after it", hung(r))
		d.Finish()
		said := false
		for _, f := range d.Faults() {
			if f.Rule != "description" || f.Status != find.Fail || len(f.Fix) == 0 || f.Basis == "" {
				t.Errorf("line %d: %+v", line, f)
			}
			if f.Line != want {
				t.Errorf("line %d: %q names the line %s", line, f.Why, f.Line)
			}
			said = said || strings.Contains(f.Why, m.says)
		}
		if !said {
			t.Errorf("line %d: want a finding that says\n\t%s", line, m.says)
			for _, f := range d.Faults() {
				t.Log(f.Why)
			}
		}
		for _, id := range []string{"desk", "bar", "shelf after it"} {
			if p := d.Part(id); p == nil || len(p.Bodies) != 1 || p.Volume() <= 0 {
				t.Errorf("line %d: the mistake takes %q away", line, id)
			}
		}
	}
}

// TestMistakesSpareTheRest: a slab loses only the work that cannot be done, an
// angle only its holes.
func TestMistakesSpareTheRest(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	desk := d.Add("desk", good(r).
		Hole("outside", model.At{X: 9000, Back: 100}, 60).
		Groove("one place", model.UnderFace, 20, 10, model.At{X: 200, Back: 100}).Serving("light").
		Hole("cable", model.At{X: 300, Back: 100}, 60).Serving("cables"))
	bar := d.Add("bar", steel(r).Anchored(model.Anchors{Hole: 11, Pitch: 300, End: 40}).
		ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 60, Pilot: 4, Into: 60}))
	d.Finish()
	if len(d.Faults()) != 3 {
		t.Errorf("%d faults, want 3: %v", len(d.Faults()), d.Faults())
	}
	if f := desk.Slab.Features; len(f) != 1 || f[0].Name != "cable" || f[0].For != "cables" {
		t.Errorf("the desk's work is %v", f)
	}
	if h := bar.Angle.Holes; len(h) == 0 || h[0].Leg != model.WallLeg {
		t.Errorf("the bar's holes are %v", h)
	}
}

// TestPartsThatWaitAreUnknown: one mistake is one failure. What needs the part
// that was left out is unknown and points to the line to mend.
func TestPartsThatWaitAreUnknown(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	d.Add("desk", good(r).Depth(-1))
	d.Add("bar", steel(r))
	d.Add("infill", model.Slab(stock.Ash, 45).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Meeting("desk", 1).SurfaceAt(750))
	d.Add("side", good(r).Between(d.EdgeOf("desk", "front"), r.Wall("right")))
	d.Add("table", model.RollOut(stock.Ash, 600, 400, 500).Parked("desk", 0, 0))
	d.SitAt("seat", "desk", 500, nil)
	d.Finish()
	bad := d.Faults()
	if len(bad) != 6 {
		t.Fatalf("%d findings, want 6: %v", len(bad), bad)
	}
	for i, f := range bad {
		if i == 0 {
			if f.Status != find.Fail {
				t.Errorf("the mistake is %s", f.Status)
			}
			continue
		}
		if f.Status != find.Unknown || !strings.Contains(f.Why, `it needs the slab "desk", which was left out because of a mistake in `+bad[0].Line) || f.Line == bad[0].Line {
			t.Errorf("%s %s: %s", f.Line, f.Status, f.Why)
		}
	}
	if len(d.Parts)+len(d.Zones)+len(d.Seats) != 0 {
		t.Errorf("%d parts, %d zones, %d seats", len(d.Parts), len(d.Zones), len(d.Seats))
	}
}

// TestOutOfReach: an angle cannot carry a slab that is not at its wall, and
// nothing can be added to a finished design.
func TestOutOfReach(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	d.Add("desk", good(r).Between(r.Wall("left"), r.Wall("back").Mark(900)))
	d.Add("bar", model.Angle(stock.L50x50x6).Along(r.Wall("right")).Under("desk"))
	d.Finish()
	d.Add("late", good(r))
	bad := d.Faults()
	if len(bad) != 2 || !strings.Contains(bad[0].Why, `slab "desk" does not reach the wall "right", so an angle there carries nothing`) || !strings.Contains(bad[1].Why, `"late" is added after Finish`) {
		t.Errorf("%v", bad)
	}
}

// TestFaultsDoNotSpread: pieces are values; a mistake on a copy leaves the other
// copy as it was.
func TestFaultsDoNotSpread(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	base := good(r).Hole("a", model.At{X: 300, Back: 100}, 60)
	_ = base.Depth(-1)
	_ = base.Hole("b", model.At{X: 9000, Back: 100}, 60)
	_ = base.Serving("nothing")
	p := d.Add("desk", base.Hole("c", model.At{X: 500, Back: 100}, 60))
	sound(t, d)
	if f := p.Slab.Features; len(f) != 2 || f[0].Name != "a" || f[1].Name != "c" || f[0].For != "" {
		t.Errorf("features %v", f)
	}
}

// TestScrewsThatMiss: behind a gap of 36 mm the line of screws, 37 mm from the
// heel, has no wood above it. The slab stays whole and the bar has no holes that
// nobody needs.
func TestScrewsThatMiss(t *testing.T) {
	r := roomAt(t, false, alcove(90, 90), threeWalls()...)
	d := model.NewDesign("desk", r)
	desk := d.Add("desk", good(r).Gaps(3, 36))
	bar := d.Add("bar", steel(r).ScrewedUp(screws))
	d.Finish()
	bad := d.Faults()
	if len(bad) != 1 || bad[0].Status != find.Fail || !strings.Contains(bad[0].Why, `of the screws of "bar" miss "desk": they stand 37 mm from its back, where the slab has no wood`) {
		t.Errorf("%v", bad)
	}
	if len(bar.Angle.Holes)+len(desk.Slab.Features) != 0 || desk.Volume() <= 0 {
		t.Errorf("holes %v, pilots %v", bar.Angle.Holes, desk.Slab.Features)
	}
}
