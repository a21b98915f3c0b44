package moisture_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"slabwright/model/calc/moisture"
	"slabwright/model/unit"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, tol)
	}
}

// TestEquilibriumAgainstTheTable holds the equation against all points of the
// handbook's table: 0.2 % at most, and 0.06 % is what the rounding leaves.
func TestEquilibriumAgainstTheTable(t *testing.T) {
	f, err := os.Open("testdata/emc.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 120 {
		t.Fatalf("%d points, want 119", len(rows)-1)
	}
	worst := 0.0
	for _, row := range rows[1:] {
		v := [3]float64{}
		for i := range v {
			if v[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		got, err := moisture.Equilibrium(moisture.Air{Temperature: moisture.Celsius(v[0]), Humidity: moisture.Humidity(v[1])})
		if err != nil {
			t.Fatal(err)
		}
		worst = max(worst, math.Abs(float64(got)-v[2]))
		near(t, row[0]+" C, "+row[1]+" %", float64(got), v[2], 0.2)
	}
	if worst > 0.06 {
		t.Errorf("off by %.3f %% at the worst point", worst)
	}
}

// TestEquilibriumInFahrenheit holds the metric coefficients against the set for
// degrees Fahrenheit of the same equation (Simpson 1998, from memory).
func TestEquilibriumInFahrenheit(t *testing.T) {
	for _, celsius := range []float64{5, 20, 30} {
		for _, percent := range []float64{20, 35, 50, 65, 80} {
			f, h := celsius*9/5+32, percent/100
			w := 330 + 0.452*f + 0.00415*f*f
			k := 0.791 + 0.000463*f - 0.000000844*f*f
			k1 := 6.34 + 0.000775*f - 0.0000935*f*f
			k2 := 1.09 + 0.0284*f - 0.0000904*f*f
			want := 1800 / w * (k*h/(1-k*h) + (k1*k*h+2*k1*k2*k*k*h*h)/(1+k1*k*h+k1*k2*k*k*h*h))
			got, err := moisture.Equilibrium(moisture.Air{Temperature: moisture.Celsius(celsius), Humidity: moisture.Humidity(percent)})
			if err != nil {
				t.Fatal(err)
			}
			near(t, "moisture", float64(got), want, 0.05)
		}
	}
}

func TestEquilibriumRefuses(t *testing.T) {
	for _, a := range []moisture.Air{{-1, 20}, {101, 20}, {50, 99}, {50, -60}, {moisture.Humidity(math.NaN()), 20}, {50, moisture.Celsius(math.NaN())}} {
		if m, err := moisture.Equilibrium(a); err == nil {
			t.Errorf("%v gives %v", a, m)
		}
	}
}

// TestChange: worked examples. The board of white fir, flat sawn, 9.15 in wide,
// from 8 to 11 % and back is that of the Wood Handbook, chapter 13, text below
// equation 13-2 (C_T 0.00245; from memory); the others are hand calculations
// with the handbook's coefficients of white oak.
func TestChange(t *testing.T) {
	inch := func(x float64) unit.Length { return unit.Length(x) * unit.Inch }
	near(t, "white fir, in", float64(moisture.Change(inch(9.15), 0.00245, 8, 11)/unit.Inch), 0.06725, 0.00005)
	near(t, "white fir back, in", float64(moisture.Change(inch(9.15), 0.00245, 11, 8)/unit.Inch), -0.06725, 0.00005)
	near(t, "white oak, flat sawn", float64(moisture.Change(900, 0.00365, 12, 7)), -16.4, 0.05)
	near(t, "white oak, quarter sawn", float64(moisture.Change(900, 0.00180, 12, 7)), -8.1, 0.05)
	near(t, "along the grain", float64(moisture.Change(2300, moisture.Lengthwise, 7, 12)), 1.15, 0.01)
}

// TestChangeAgainstShrinkage holds the linear change against the handbook's
// other equation 13-3, which starts from the shrinkage S from green (30 %) to
// ovendry: size (to - from) / (30*100/S - 30 + from). American beech, S_T 11.9 %
// (table 4-3). The linear form leaves out that the base of S is the green size.
func TestChangeAgainstShrinkage(t *testing.T) {
	const s = 11.9
	for _, c := range []struct{ from, to moisture.Content }{{8, 11}, {12, 7}, {10, 6}} {
		want := 500 * float64(c.to-c.from) / (30*100/s - 30 + float64(c.from))
		near(t, "change", float64(moisture.Change(500, 0.00431, c.from, c.to)), want, 0.01*math.Abs(want))
	}
}

func TestAcross(t *testing.T) {
	for s, want := range map[moisture.Sawn]float64{moisture.Flat: 0.004, moisture.Quarter: 0.002, moisture.Mixed: 0.003} {
		c, err := moisture.Across(0.002, 0.004, s)
		if err != nil {
			t.Fatal(err)
		}
		near(t, string(s), float64(c), want, 1e-12)
	}
	if _, err := moisture.Across(0.002, 0.004, "rift"); err == nil {
		t.Error("an unknown way to saw passes")
	}
}

// TestBow holds the rise against the circle that it stands for.
func TestBow(t *testing.T) {
	const width, thickness, strain = 780., 45., 0.0038
	radius := thickness / strain
	want := radius - math.Sqrt(radius*radius-width*width/4)
	near(t, "rise", float64(moisture.Bow(width, thickness, 0.0038, 1)), want, 0.005*want)
}
