package bring_test

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/bring"
	"slabwright/model/geom"
	"slabwright/model/unit"
	"slabwright/presets"
)

// What hands hold is all the slab weighs, without a moment about its centre of
// gravity (statics: the sum of forces and of moments), on sawn edges alone.
func TestGripsBalance(t *testing.T) {
	none := 0
	for _, preset := range presets.All() {
		d := design(t, preset.Name)
		for _, p := range d.Parts {
			if p.Slab == nil {
				continue
			}
			heart := p.Slab.Pose.Unplan(p.Centroid().Flat())
			for people := 1; people <= 4; people++ {
				at := bring.Grips(p, people)
				if at == nil {
					none++
					continue
				}
				if want := max(2, people); len(at) != want {
					t.Errorf("%s %s: %d places for %d people", preset.Name, p.ID, len(at), people)
				}
				var sum unit.Mass
				var moment geom.Vec
				for _, g := range at {
					sum += g.Share
					moment = moment.Add(g.At.Sub(heart).Mul(float64(g.Share)))
					onSawnEdge(t, p, g)
					if even := float64(p.Mass()) / float64(len(at)); math.Abs(float64(g.Share)/even-1) > 0.25 {
						t.Errorf("%s %s: %d people: one has %.1f kg of %.1f", preset.Name, p.ID, people, float64(g.Share), float64(p.Mass()))
					}
				}
				// a pair can keep no moment across its own line
				if math.Abs(float64(sum-p.Mass())) > 1e-6 || float64(moment.Len()) > 30*float64(p.Mass()) {
					t.Errorf("%s %s: %d people hold %.3f kg of %.3f, moment %.1f kg mm", preset.Name, p.ID, people, float64(sum), float64(p.Mass()), float64(moment.Len()))
				}
			}
		}
	}
	t.Logf("no even places in %d cases", none)
}

func onSawnEdge(t *testing.T, p *model.Part, g bring.Grip) {
	t.Helper()
	for _, e := range p.Slab.Edges {
		if e.Name == g.Edge {
			if e.Waney {
				t.Errorf("%s: held by its natural edge", p.ID)
			}
			if off := geom.Through(e.Start, e.End).Side(g.At); math.Abs(float64(off)) > 0.01 {
				t.Errorf("%s: a hand is %.2f mm off its edge", p.ID, float64(off))
			}
		}
	}
	for _, f := range p.Slab.Features {
		if lo, hi := f.Outline.Bounds(); f.Kind == model.Groove && g.At.X > lo.X && g.At.X < hi.X && g.At.Y > lo.Y && g.At.Y < hi.Y {
			t.Errorf("%s: held over groove %s", p.ID, f.Name)
		}
	}
}

// The lines of trestles have the centre of gravity between them and no cut of the
// underside on them; props stand under the slab, lower than its place.
func TestTrestlesAndProps(t *testing.T) {
	props := 0
	for _, preset := range presets.All() {
		d := design(t, preset.Name)
		for _, w := range bring.OrderOf(d) {
			p := w.Part
			if p.Slab == nil {
				continue
			}
			heart := p.Slab.Pose.Unplan(p.Centroid().Flat())
			if on := bring.OnTrestles(p); on != nil {
				if on[0].X >= heart.X || on[1].X <= heart.X {
					t.Errorf("%s %s tips off its trestles", preset.Name, p.ID)
				}
				for _, x := range on {
					for _, f := range p.Slab.Features {
						cut := f.Kind == model.Through || f.Kind == model.CutOut || f.Face == model.UnderFace
						if lo, hi := f.Outline.Bounds(); cut && hi.Y-lo.Y > 150 && x.X > lo.X && x.X < hi.X {
							t.Errorf("%s %s: a trestle is on %s", preset.Name, p.ID, f.Name)
						}
					}
				}
			}
			for _, q := range w.Props(d) {
				props++
				if under := p.Slab.Top - p.Slab.Thickness; q.High <= under {
					t.Errorf("%s %s: a prop %.0f mm high under a slab at %.0f", preset.Name, p.ID, float64(q.High), float64(under))
				}
				if at := p.Slab.Pose.Plan(q.At); !p.Footprint().Contains(at) {
					t.Errorf("%s %s: a prop beside it", preset.Name, p.ID)
				}
			}
		}
	}
	if props == 0 {
		t.Error("no prop was placed")
	}
}
