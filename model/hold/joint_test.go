package hold_test

import (
	"testing"

	"slabwright/model"
	"slabwright/model/hold"
	"slabwright/model/stock"
)

// halves is a top of two boards side by side, each on an angle at both ends.
func halves(t testing.TB, kind model.JointKind) *model.Design {
	t.Helper()
	r := room(t)
	d := model.NewDesign("desk", r)
	d.Add("top", model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("right")).Against(r.Wall("back")).Gaps(5, 5).Depth(300).SurfaceAt(750))
	d.Add("front", model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("right")).Against(d.EdgeOf("top", "front").Gap(0)).Gaps(5, 0).Depth(300).SurfaceAt(750))
	d.Join("front", "top", kind)
	for _, slab := range []string{"top", "front"} {
		for _, w := range []string{"left", "right"} {
			d.Add("angle "+w+" "+slab, model.Angle(stock.L50x50x6).Along(r.Wall(w)).Under(slab).ClearOf(3))
		}
	}
	finish(t, d)
	return d
}

// Glued, two boards are one of twice the width (closed: the same board drawn in
// one piece, on the same angles); every looser joint lets the loaded one sink
// further, an open one most.
func TestJointsFromOpenToGlued(t *testing.T) {
	loads := model.Loads{Person: 80, Worktop: 40}
	sink := map[model.JointKind]float64{}
	for _, kind := range model.JointKinds {
		s, ok := hold.Of(halves(t, kind), job(loads)).Of("front")
		if !ok || s.Trouble != "" {
			t.Fatal(s.Trouble)
		}
		c, _ := s.Case(hold.PersonSinks)
		sink[kind] = float64(c.Lowest.Down)
		for _, c := range s.Cases {
			var sum float64
			for _, r := range append(c.Runs, c.Beside...) {
				sum += r.Force
			}
			near(t, string(kind)+": sum of the carriers", sum, c.Total, 1e-5)
			if (kind == model.OpenJoint) != (len(c.Beside) == 0) {
				t.Errorf("%s: %d carriers beside", kind, len(c.Beside))
			}
		}
	}
	for i, kind := range model.JointKinds[1:] {
		if looser := model.JointKinds[i]; sink[kind] >= sink[looser] {
			t.Errorf("%s: sinks by %.3f, %s by %.3f", kind, sink[kind], looser, sink[looser])
		}
	}
	whole := desk(t, 600, false, stock.L50x50x6, "left", "right")
	w := top(t, whole, loads)
	c, _ := w.Case(hold.PersonSinks)
	near(t, "a board of twice the width", sink[model.GluedJoint], float64(c.Lowest.Down), 0.02)
}

// Both boards take part in a load on one of them; with dowels they do so only
// after 0.3 mm of play, of which the loaded board sinks a part further than with
// plates, which have none.
func TestDowelsHavePlay(t *testing.T) {
	loads := model.Loads{Person: 80, Worktop: 1e-9}
	sink := func(kind model.JointKind) float64 {
		s, _ := hold.Of(halves(t, kind), job(loads)).Of("front")
		c, _ := s.Case(hold.PersonSinks)
		return float64(c.Lowest.Down)
	}
	if dowels, plates := sink(model.DowelJoint), sink(model.PlateJoint); dowels-plates < 0.1 || dowels-plates > 0.4 {
		t.Errorf("dowels with 0.3 mm of play: sinks by %.3f, without play %.3f", dowels, plates)
	}
}

// A tighter joint is offered where it makes a slab hold, the loosest that does.
func TestJointAsRemedy(t *testing.T) {
	d := halves(t, model.OpenJoint)
	loads := model.Loads{Person: 80, Worktop: 40}
	drawn, _ := hold.Of(d, job(loads)).Of("front")
	open, _ := drawn.Case(hold.PersonSinks)
	for _, c := range []struct {
		share float64
		want  model.JointKind
	}{{0.95, model.DowelJoint}, {0.88, model.PlateJoint}, {0.845, model.GluedJoint}} {
		limit := c.share * float64(open.Lowest.Down)
		ok := func(s hold.Slab) bool {
			x, found := s.Case(hold.PersonSinks)
			return found && float64(x.Lowest.Down) <= limit
		}
		var got model.JointKind
		used := func(s hold.Slab) float64 {
			if ok(s) {
				return 1
			}
			return 2
		}
		found, _ := hold.Remedies(d, job(loads), "front", hold.Wanted{Used: used, Thicker: 40})
		for _, r := range found {
			if r.Joint != "" {
				got = r.Joint
				if !ok(r.With) {
					t.Errorf("%s does not do it", got)
				}
			}
		}
		if got != c.want {
			t.Errorf("to sink by %.2f of that with an open joint: %q, not %q", c.share, got, c.want)
		}
	}
}
