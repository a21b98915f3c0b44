// Package body estimates the size of a person from stature, sex and mass, for
// what a desk needs to know: where thighs, knees, toes, elbows and eyes are.
//
// Basis: regressions fitted to ANSUR II (US Army 2010-12, report
// NATICK/TR-15/007, public data files; 4082 men, 1986 women). Soldiers are
// leaner and sit straighter than the public; they were measured barefoot on a
// hard seat, so add a shoe (Shoe) and take off for slumping (Slump). A person's
// own measure is always better than an estimate and takes its place (Own).
// Elbow rest height cannot be foretold from stature (R2 0.03): measure it.
package body

import (
	"fmt"
	"math"

	"slabwright/model/unit"
)

// Sex selects the fit; the zero value is "not told".
type Sex string

// The sexes told apart by the data.
const (
	NotTold Sex = ""
	Female  Sex = "female"
	Male    Sex = "male"
)

// Person is who will use the desk. Zero stature or mass is "not told". Own
// holds what was measured on the person.
type Person struct {
	Stature unit.Length
	Mass    unit.Mass
	Sex     Sex
	Own     map[Dimension]unit.Length
}

// Basis tells what an estimate rests on.
type Basis string

// The bases, best first.
const (
	OwnMeasure     Basis = "own measure"
	OwnPart        Basis = "own measure of a part, the rest estimated"
	StatureAndMass Basis = "stature and mass"
	Stature        Basis = "stature"
	OneSex         Basis = "5th to 95th percentile of the sex"
	Anybody        Basis = "5th percentile woman to 95th percentile man"
)

// Estimate is a dimension of a person. Nine in ten people of that description
// lie between Low and High. Mean and SD are those of the fit; where nobody is
// described Mean is the median, halfway between the sexes if need be, and SD
// is 0. Extrapolated is set when stature or mass is outside what 99 % of the
// people measured had. The tails are a little fatter than normal: for somebody
// very tall take two standard deviations.
type Estimate struct {
	Dimension    Dimension
	Mean, SD     unit.Length
	Low, High    unit.Length
	Basis        Basis
	Extrapolated bool
	Source       string
}

// Ample is the size that room is made for: the mean of somebody described, the
// 95th percentile where nobody is.
func (e Estimate) Ample() unit.Length {
	if e.SD == 0 {
		return e.High
	}
	return e.Mean
}

// Scant is the size that reach is reckoned with: the mean of somebody
// described, the 5th percentile where nobody is.
func (e Estimate) Scant() unit.Length {
	if e.SD == 0 {
		return e.Low
	}
	return e.Mean
}

// Source is where the fits come from.
const Source = "ANSUR II (NATICK/TR-15/007), own regression; barefoot, erect, hard seat"

// OwnSD is the standard deviation taken for a person's own measure.
const OwnSD unit.Length = 5 // practice, no source: tape over clothes

const (
	z95 = 1.6449 // normal quantile, 95 %
	z99 = 2.5758 // normal quantile, 99.5 %
)

// Estimate gives a dimension of the person. It gives an error for a dimension
// that is not in the table and for numbers that no adult has.
func (p Person) Estimate(d Dimension) (Estimate, error) {
	if err := p.valid(); err != nil {
		return Estimate{}, err
	}
	if _, ok := fits()[key{men, d}]; !ok {
		return Estimate{}, fmt.Errorf("body dimension %q is not in the table", d)
	}
	return p.estimate(d), nil
}

func (p Person) estimate(d Dimension) Estimate {
	if v, ok := p.Own[d]; ok {
		return spread(Estimate{Dimension: d, Mean: v, SD: OwnSD, Basis: OwnMeasure, Source: "measured on the person"})
	}
	if e, ok := p.sum(d); ok {
		return e
	}
	if p.Stature == 0 {
		return p.percentiles(d)
	}
	f := fits()[key{p.rows(), d}]
	e := Estimate{Dimension: d, Basis: Stature, Source: Source, Extrapolated: p.unusual()}
	x := float64(p.Stature)
	mean, sd := f.a+f.b*x, f.s
	if p.Mass > 0 {
		mean, sd = f.a2+f.b2*x+f.c2*float64(p.Mass), f.s2
		e.Basis = StatureAndMass
	}
	// The uncertainty of the fitted line itself grows away from the mean.
	sd *= math.Sqrt(1 + 1/f.n + (x-f.mean)*(x-f.mean)/f.sxx)
	e.Mean, e.SD = unit.Length(mean), unit.Length(sd)
	return spread(e)
}

// spread fills Low and High of a normal estimate.
func spread(e Estimate) Estimate {
	e.Low, e.High = e.Mean-z95*e.SD, e.Mean+z95*e.SD
	return e
}

// sum puts a dimension together from its parts when one of them was measured.
func (p Person) sum(d Dimension) (Estimate, bool) {
	s, ok := sums[d]
	if !ok {
		return Estimate{}, false
	}
	_, own1 := p.Own[s.first]
	_, own2 := p.Own[s.second]
	if !own1 && !own2 {
		return Estimate{}, false
	}
	a, b := p.estimate(s.first), p.estimate(s.second)
	e := Estimate{Dimension: d, Basis: OwnPart, Extrapolated: a.Extrapolated || b.Extrapolated, Source: "measured on the person; the rest " + Source}
	if own1 && own2 {
		e.Basis, e.Source = OwnMeasure, "measured on the person"
	}
	e.Mean = a.Mean + unit.Length(s.sign)*b.Mean
	// Parts that nobody described have no standard deviation, only a range.
	a.SD, b.SD = (a.High-a.Low)/(2*z95), (b.High-b.Low)/(2*z95)
	e.SD = unit.Length(math.Hypot(float64(a.SD), float64(b.SD)))
	return spread(e), true
}

// percentiles is the range of a dimension when no stature is told.
func (p Person) percentiles(d Dimension) Estimate {
	w, m := fits()[key{women, d}], fits()[key{men, d}]
	e := Estimate{Dimension: d, Basis: OneSex, Source: Source}
	switch p.Sex {
	case Female:
		e.Low, e.Mean, e.High = w.p5, w.p50, w.p95
	case Male:
		e.Low, e.Mean, e.High = m.p5, m.p50, m.p95
	default:
		e.Basis = Anybody
		e.Low, e.Mean, e.High = min(w.p5, m.p5), (w.p50+m.p50)/2, max(w.p95, m.p95)
	}
	return e
}

// rows names the fit that serves the person.
func (p Person) rows() string {
	switch p.Sex {
	case Female:
		return women
	case Male:
		return men
	}
	return pooled
}

// unusual says whether stature or mass is outside the range of 99 % of the
// people measured; without a sex the range of both together counts.
func (p Person) unusual() bool {
	lo, hi := groups[p.rows()][0], groups[p.rows()][1]
	return p.Stature < lo.stature-z99*lo.statureSD || p.Stature > hi.stature+z99*hi.statureSD ||
		p.Mass > 0 && (p.Mass < lo.mass-z99*lo.massSD || p.Mass > hi.mass+z99*hi.massSD)
}

func (p Person) valid() error {
	if p.Stature != 0 && !(p.Stature >= 1000 && p.Stature <= 2600) {
		return fmt.Errorf("stature of %g mm is not that of an adult (1000 to 2600)", float64(p.Stature))
	}
	if p.Mass != 0 && !(p.Mass >= 25 && p.Mass <= 400) {
		return fmt.Errorf("mass of %g kg is not that of an adult (25 to 400)", float64(p.Mass))
	}
	if p.Sex != NotTold && p.Sex != Female && p.Sex != Male {
		return fmt.Errorf("sex %q is not known; use %q, %q or leave it out", p.Sex, Female, Male)
	}
	for _, d := range Dimensions() {
		if v, ok := p.Own[d]; ok && !(v > 0 && v < 3000) {
			return fmt.Errorf("own measure of %s, %g mm, is not a size of the body", d, float64(v))
		}
	}
	return nil
}
