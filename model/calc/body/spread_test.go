package body_test

import (
	"math"
	"testing"

	"slabwright/model/calc/body"
)

// A straight line with a normal residual, over people whose stature is normal,
// gives every dimension a normal distribution: mean a + b x, variance
// (b sd)^2 + s^2 (closed form). Its 5th and 95th percentile must be those of
// the people measured. Stature 1756.2 +- 68.6 and 1628.5 +- 64.2 mm: ANSUR II.
func TestFitsGiveTheSpreadOfThePeopleMeasured(t *testing.T) {
	for _, c := range percentiles {
		for _, g := range []struct {
			sex      body.Sex
			mean, sd float64
			want     [3]float64
		}{{body.Male, 1756.2, 68.6, c.men}, {body.Female, 1628.5, 64.2, c.women}} {
			mid := get(t, body.Person{Stature: 1700, Sex: g.sex}, c.dim)
			more := get(t, body.Person{Stature: 1701, Sex: g.sex}, c.dim)
			slope := float64(more.Mean - mid.Mean)
			at := float64(mid.Mean) + slope*(g.mean-1700)
			all := math.Hypot(slope*g.sd, float64(mid.SD))
			// Real tails are not quite normal: the belly is skewed by 6 to 7 mm,
			// and the data are whole millimetres.
			for i, z := range []float64{-1.6449, 1.6449} {
				got, want := at+z*all, g.want[2*i]
				if math.Abs(got-want) > 7.5 || math.Abs(got-want) > 0.08*2*1.6449*all {
					t.Errorf("%s %s: predicted %.0f, measured %.0f", c.dim, g.sex, got, want)
				}
			}
		}
	}
}

// Room is made for the large, reach is reckoned for the small, where nobody is
// described; men's 95th and women's 5th percentile of ANSUR II.
func TestAmpleAndScant(t *testing.T) {
	e := get(t, body.Person{}, body.HipBreadth)
	near(t, "ample hips", e.Ample(), 456, 0.5)
	near(t, "scant hips", e.Scant(), 333, 0.5)
	e = get(t, body.Person{Stature: 1800, Sex: body.Male}, body.HipBreadth)
	if e.Ample() != e.Mean || e.Scant() != e.Mean {
		t.Errorf("somebody described: %+v", e)
	}
}
