package hold_test

import (
	"math"
	"testing"

	"slabwright/model"
	"slabwright/model/hold"
	"slabwright/model/stock"
)

// endToEnd is a top of two boards, one behind the other along the grain, each on an
// angle at its outer end alone.
func endToEnd(t testing.TB, kind model.JointKind) *model.Design {
	t.Helper()
	r := room(t)
	d := model.NewDesign("desk", r)
	d.Add("top", model.Slab(stock.Ash, 40).Between(r.Wall("left"), r.Wall("back").Mark(800).Gap(0)).Against(r.Wall("back")).Gaps(5, 5).Depth(300).SurfaceAt(750))
	d.Add("end", model.Slab(stock.Ash, 40).Between(d.EdgeOf("top", "right").Gap(0), r.Wall("right")).Against(r.Wall("back")).Gaps(5, 5).Depth(300).SurfaceAt(750))
	d.Join("end", "top", kind)
	d.Add("angle left", model.Angle(stock.L40x40x5).Along(r.Wall("left")).Under("top").ClearOf(3))
	d.Add("angle right", model.Angle(stock.L40x40x5).Along(r.Wall("right")).Under("end").ClearOf(3))
	finish(t, d)
	return d
}

// What plates pass on in the middle of a beam follows from equilibrium alone: their
// moments are q L2/8 less what hangs out behind the toes, any handbook, and they
// pass no shear; with a person beside the joint they are what the lever says.
func TestPlatesPassTheMoment(t *testing.T) {
	s, ok := hold.Of(endToEnd(t, model.PlateJoint), job(model.Loads{Person: 60, Step: 1.25, Worktop: 40})).Of("top")
	if !ok || s.Trouble != "" {
		t.Fatal(s.Trouble)
	}
	const span, out = 1600.0 - 2*40, 35.0
	seen := 0
	for _, c := range s.Cases {
		if !c.Design {
			continue
		}
		var moment, shear float64
		for _, p := range c.Seams[0].Passed {
			moment += p.Moment
			shear += p.Shear
		}
		person := 0.0
		if c.Person != nil {
			person = 60 * 9.81 * 1.25 * 1.5
			seen++
		}
		q := (c.Total - person) / (span + 2*out)
		want := q*span*span/8 - q*out*out/2
		if c.Person != nil {
			want += person * float64(c.Person.X-40) / 2
		}
		near(t, string(c.Kind)+" "+c.Worst+": moment", moment, want, 0.01)
		if c.Person == nil && math.Abs(shear) > 0.01*c.Total {
			t.Errorf("%s: plates in the middle of an even load pass %v N", c.Kind, shear)
		}
	}
	if seen == 0 {
		t.Error("nobody stands on it")
	}
}
