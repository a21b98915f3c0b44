package body_test

import (
	"fmt"
	"math"
	"testing"

	"slabwright/model/calc/body"
	"slabwright/model/unit"
)

func get(t *testing.T, p body.Person, d body.Dimension) body.Estimate {
	t.Helper()
	e, err := p.Estimate(d)
	if err != nil {
		t.Fatalf("%s: %v", d, err)
	}
	return e
}

func near(t *testing.T, what string, got unit.Length, want, tol float64) {
	t.Helper()
	if !(math.Abs(float64(got)-want) <= tol) {
		t.Errorf("%s: got %.2f, want %.2f within %g", what, got, want, tol)
	}
}

// Worked figures printed with the fits: "Man 1800: popliteal 443 (p95 465),
// knee 570 (591), thigh top 626 (653), elbow 691 (730), eye 1264 (1290),
// standing elbow 1107 (1135)".
func TestManOf1800(t *testing.T) {
	man := body.Person{Stature: 1800, Sex: body.Male}
	for _, c := range []struct {
		dim       body.Dimension
		mean, p95 float64
	}{
		{body.Popliteal, 443, 465}, {body.Knee, 570, 591}, {body.ThighTop, 626, 653},
		{body.Elbow, 691, 730}, {body.Eye, 1264, 1290}, {body.StandingElbow, 1107, 1135},
	} {
		e := get(t, man, c.dim)
		near(t, string(c.dim)+" mean", e.Mean, c.mean, 0.51)
		near(t, string(c.dim)+" p95", e.High, c.p95, 0.51)
		if e.Extrapolated || e.Basis != body.Stature {
			t.Errorf("%s: %+v", c.dim, e)
		}
	}
}

// Percentiles 5, 50, 95 of ANSUR II as printed with the fits.
var percentiles = []struct {
	dim        body.Dimension
	men, women [3]float64
}{
	{body.Popliteal, [3]float64{390, 430, 471}, [3]float64{350, 387, 428}},
	{body.Knee, [3]float64{509, 553, 602}, [3]float64{469, 510, 557}},
	{body.ThighClearance, [3]float64{157, 180, 207}, [3]float64{145, 167, 191}},
	{body.ElbowRest, [3]float64{197, 246, 291}, [3]float64{189, 233, 276}},
	{body.ButtockKnee, [3]float64{569, 617, 669}, [3]float64{541, 589, 646}},
	{body.ButtockHollow, [3]float64{459, 502, 548}, [3]float64{441, 483, 535}},
	{body.HipBreadth, [3]float64{333, 378, 431}, [3]float64{348, 397, 456}},
	{body.FootLength, [3]float64{250, 271, 293}, [3]float64{226, 246, 268}},
	{body.StandingElbow, [3]float64{1000, 1076, 1160}, [3]float64{927, 1000, 1078}},
	{body.ThighTop, [3]float64{563, 610, 661}, [3]float64{511, 555, 604}},
	{body.Elbow, [3]float64{619, 675, 733}, [3]float64{570, 620, 675}},
	{body.ElbowAboveThigh, [3]float64{16, 65, 110}, [3]float64{17, 65, 111}},
	{body.Eye, [3]float64{1157, 1233, 1315}, [3]float64{1063, 1136, 1212}},
	{body.Head, [3]float64{1265, 1348, 1434}, [3]float64{1167, 1244, 1326}},
	{body.BellyToKnee, [3]float64{299, 364, 423}, [3]float64{307, 362, 413}},
	{body.BellyToToe, [3]float64{443, 521, 592}, [3]float64{434, 503, 566}},
	{body.GripReach, [3]float64{477, 557, 639}, [3]float64{441, 516, 587}},
	{body.Overhead, [3]float64{1719, 1857, 1997}, [3]float64{1570, 1695, 1833}},
	{body.Shoulder, [3]float64{1339, 1439, 1546}, [3]float64{1241.8, 1332, 1433.8}},
}

func TestPercentilesWithoutStature(t *testing.T) {
	for _, c := range percentiles {
		for i, e := range []body.Estimate{get(t, body.Person{Sex: body.Male}, c.dim), get(t, body.Person{Sex: body.Female, Mass: 70}, c.dim)} {
			want := [][3]float64{c.men, c.women}[i]
			near(t, fmt.Sprint(c.dim, " p5"), e.Low, want[0], 0.51)
			near(t, fmt.Sprint(c.dim, " p50"), e.Mean, want[1], 0.51)
			near(t, fmt.Sprint(c.dim, " p95"), e.High, want[2], 0.51)
			if e.Basis != body.OneSex {
				t.Errorf("%s: basis %q", c.dim, e.Basis)
			}
		}
		e := get(t, body.Person{}, c.dim)
		near(t, fmt.Sprint(c.dim, " anybody, low"), e.Low, min(c.men[0], c.women[0]), 0.51)
		near(t, fmt.Sprint(c.dim, " anybody, high"), e.High, max(c.men[2], c.women[2]), 0.51)
		if e.Basis != body.Anybody || e.Mean <= e.Low || e.Mean >= e.High {
			t.Errorf("%s: %+v", c.dim, e)
		}
	}
}

// The fits at the mean stature must give the mean of the people measured:
// a least squares line runs through the means (property of the method), so the
// median is not far.
func TestFitsRunThroughTheMiddle(t *testing.T) {
	for _, c := range percentiles {
		near(t, string(c.dim)+" men", get(t, body.Person{Stature: 1756.2, Sex: body.Male}, c.dim).Mean, c.men[1], 3.5)
		near(t, string(c.dim)+" women", get(t, body.Person{Stature: 1628.5, Sex: body.Female}, c.dim).Mean, c.women[1], 3.5)
		near(t, string(c.dim)+" men with mass", get(t, body.Person{Stature: 1756.2, Mass: 85.5, Sex: body.Male}, c.dim).Mean, c.men[1], 4.5)
		near(t, string(c.dim)+" women with mass", get(t, body.Person{Stature: 1628.5, Mass: 67.8, Sex: body.Female}, c.dim).Mean, c.women[1], 4.5)
	}
}

// Thigh clearance follows mass, not stature: R2 0.06 from stature, 0.71 with
// mass for men, so the spread falls from 15.1 to 8.4 mm.
func TestMassNarrowsTheThigh(t *testing.T) {
	light := get(t, body.Person{Stature: 1800, Mass: 70, Sex: body.Male}, body.ThighClearance)
	heavy := get(t, body.Person{Stature: 1800, Mass: 110, Sex: body.Male}, body.ThighClearance)
	plain := get(t, body.Person{Stature: 1800, Sex: body.Male}, body.ThighClearance)
	near(t, "40 kg more", heavy.Mean-light.Mean, 40*1.0002, 1e-9)
	near(t, "spread without mass", plain.SD, 15.10, 0.01)
	near(t, "spread with mass", heavy.SD, 8.37, 0.01)
	if heavy.Basis != body.StatureAndMass {
		t.Errorf("basis %q", heavy.Basis)
	}
}

func TestExtrapolated(t *testing.T) {
	for _, c := range []struct {
		p    body.Person
		want bool
	}{
		{body.Person{Stature: 1910, Sex: body.Female}, true}, // 99.5 % of the women stand below 1794
		{body.Person{Stature: 1790, Sex: body.Female}, false},
		{body.Person{Stature: 1910, Sex: body.Male}, false}, // 99.5 % of the men stand below 1933
		{body.Person{Stature: 1940, Sex: body.Male}, true},
		{body.Person{Stature: 1480, Sex: body.Male}, true},
		{body.Person{Stature: 1480}, false},
		{body.Person{Stature: 1440}, true},
		{body.Person{Stature: 1750, Mass: 140, Sex: body.Male}, true},
	} {
		if e := get(t, c.p, body.Elbow); e.Extrapolated != c.want {
			t.Errorf("%+v: extrapolated %v", c.p, e.Extrapolated)
		}
	}
}

func TestOwnMeasures(t *testing.T) {
	p := body.Person{Stature: 1910, Mass: 96, Sex: body.Female, Own: map[body.Dimension]unit.Length{body.Popliteal: 475, body.ElbowRest: 240}}
	e := get(t, p, body.Elbow)
	near(t, "elbow, both parts measured", e.Mean, 715, 0)
	near(t, "its spread", e.SD, math.Hypot(5, 5), 1e-9)
	if e.Basis != body.OwnMeasure || e.Extrapolated {
		t.Errorf("%+v", e)
	}
	thigh := get(t, p, body.ThighClearance)
	e = get(t, p, body.ThighTop)
	near(t, "thigh top, seat measured", e.Mean, 475+float64(thigh.Mean), 1e-9)
	near(t, "its spread", e.SD, math.Hypot(5, float64(thigh.SD)), 0.01)
	if e.Basis != body.OwnPart || !e.Extrapolated {
		t.Errorf("%+v", e)
	}
	e = get(t, body.Person{Own: map[body.Dimension]unit.Length{body.ThighTop: 640}}, body.ThighTop)
	if e.Mean != 640 || e.SD != body.OwnSD || e.Basis != body.OwnMeasure {
		t.Errorf("%+v", e)
	}
}

// Somebody of 1910 mm needs about 700 mm for her thighs and a surface near
// 740 mm for her elbows, shoes on: the conflict of a thick slab.
func TestTallSitter(t *testing.T) {
	s, err := body.Person{Stature: 1910, Mass: 96, Sex: body.Female}.Sitting()
	if err != nil {
		t.Fatal(err)
	}
	shoe := body.ShoeMen.Value
	near(t, "thighs", s.ThighTop.Mean+shoe+body.OverThigh.Value, 700, 10)
	near(t, "elbows", s.Elbow.Mean+shoe, 740, 10)
	near(t, "knee before belly", s.BellyToKnee.Mean, -230.23+0.42058*1910-1.3832*96, 1e-9)
	if !s.ThighTop.Extrapolated {
		t.Error("not marked as extrapolated")
	}
}

func TestBadPeople(t *testing.T) {
	for _, p := range []body.Person{
		{Stature: -1}, {Stature: 191}, {Stature: unit.Length(math.NaN())}, {Stature: unit.Length(math.Inf(1))}, {Mass: unit.Mass(math.NaN())},
		{Mass: 4000}, {Sex: "men"}, {Own: map[body.Dimension]unit.Length{body.Elbow: unit.Length(math.NaN())}},
	} {
		if _, err := p.Estimate(body.Elbow); err == nil {
			t.Errorf("%+v: no error", p)
		}
		if _, err := p.Sitting(); err == nil {
			t.Errorf("%+v sitting: no error", p)
		}
	}
	if _, err := (body.Person{}).Estimate("nose"); err == nil {
		t.Error("nose: no error")
	}
}

func TestTableIsComplete(t *testing.T) {
	for _, d := range body.Dimensions() {
		for _, s := range []body.Sex{body.Female, body.Male, body.NotTold} {
			e := get(t, body.Person{Stature: 1700, Mass: 75, Sex: s}, d)
			if !(e.SD > 4 && e.SD < 50 && e.Low < e.Mean && e.Mean < e.High && e.Source != "") {
				t.Errorf("%s %s: %+v", d, s, e)
			}
		}
	}
}

func TestShoes(t *testing.T) {
	// Shoes +25 men, +45 women outdoors (open anthropometry tables after Pheasant).
	for s, want := range map[body.Sex]unit.Length{body.Male: 25, body.Female: 45, body.NotTold: 25} {
		if got := body.Shoe(s).Value; got != want {
			t.Errorf("%q: %v", s, got)
		}
	}
}

func ExamplePerson_Estimate() {
	e, _ := body.Person{Stature: 1800, Sex: body.Male}.Estimate(body.ThighTop)
	fmt.Printf("%.0f mm, 5 to 95 %%: %.0f to %.0f, from %s\n", e.Mean, e.Low, e.High, e.Basis)
	// Output: 626 mm, 5 to 95 %: 599 to 653, from stature
}
