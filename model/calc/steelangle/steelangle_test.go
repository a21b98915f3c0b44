package steelangle_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"slabwright/model/calc/steelangle"
	"slabwright/model/unit"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v within %v", what, got, want, tol)
	}
}

var l60 = steelangle.Shape{Leg: 60, Thickness: 6, Root: 8, Toe: 4}

// TestSectionsAgainstTheTable: the shape gives what the tables print, within
// their rounding: 0.4 %, the centroid and V 0.7 %.
func TestSectionsAgainstTheTable(t *testing.T) {
	f, err := os.Open("testdata/angles.csv")
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
	if len(rows) != 17 {
		t.Fatalf("%d sections, want 16", len(rows)-1)
	}
	for _, row := range rows[1:] {
		v := make([]float64, len(row))
		for i := 1; i < len(row); i++ {
			if v[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		s := steelangle.Shape{Leg: unit.Length(v[1]), Thickness: unit.Length(v[2]), Root: unit.Length(v[3]), Toe: unit.Length(v[4])}.Section()
		near(t, row[0]+" area", s.Area/100, v[5], 0.004*v[5])
		near(t, row[0]+" centroid", float64(s.Centroid)/10, v[6], 0.007*v[6])
		near(t, row[0]+" I", s.I/1e4, v[7], 0.004*v[7])
		near(t, row[0]+" U", s.U/1e4, v[8], 0.004*v[8])
		near(t, row[0]+" V", s.V/1e4, v[9], 0.007*v[9])
		near(t, row[0]+" Wel", s.Wel/1e3, v[10], 0.004*v[10])
	}
}

// TestLeg: hand calculation for L60x60x6 of S235: the line load that brings the
// leg to yield, and how far 1 N/mm bends it where it acts.
func TestLeg(t *testing.T) {
	for arm, want := range map[unit.Length]float64{54: 29.375, 40: 41.47, 30: 58.75} {
		near(t, "load at yield", steelangle.Yield/steelangle.LegStress(l60, 1, arm), want, 0.01)
	}
	tip := steelangle.Shape{Leg: 54, Thickness: 6, Root: 8, Toe: 4}
	near(t, "sag under the load", float64(steelangle.TipSag(tip, 1, 54)), 0.00975, 0.00001)
	// Beyond a load at half its length a cantilever goes on straight: 5/2 of its sag.
	half := steelangle.Shape{Leg: 106, Thickness: 6, Root: 8, Toe: 4}
	near(t, "sag beyond the load", float64(steelangle.TipSag(half, 1, 56)), 2.5*50*50*50/(3*210000*18), 1e-6)
	if s := steelangle.LegStress(l60, 10, 3); s != 0 {
		t.Errorf("a load over the wall leg bends the seat leg: %v", s)
	}
	// A row of 7 mm holes every 70 mm at 44 mm from the heel, load at the toe.
	near(t, "net", steelangle.NetStress(l60, 10, 60, 44, 0.9), 6*10*16/36./0.9, 1e-9)
}

// TestBarStress: with the principal axes at 45 degrees. For two thin legs of
// length b and thickness t the values are known: I_u = t b3/3, I_v = t b3/12,
// centroid b/4 from both; under a moment about a leg's axis the toe of the
// upright leg has 3/2 M/(t b2) x ... (hand calculation below).
func TestBarStress(t *testing.T) {
	s := steelangle.Shape{Leg: 100, Thickness: 0.1, Root: 0, Toe: 0}
	const b, th, m = 100., 0.1, 1000.
	v := s.Section()
	near(t, "U", v.U, th*b*b*b/3, 0.01*v.U)
	near(t, "V", v.V, th*b*b*b/12, 0.01*v.V)
	// Toe of a leg: u = (3/4 - 1/4) b / sqrt 2, w = b / sqrt 2; stress
	// = M/sqrt2 (w / I_u + u / I_v) = M/(2 t b2) (3 + 6).
	near(t, "stress", steelangle.BarStress(s, m), m/(2*th*b*b)*9, 0.02*m/(2*th*b*b)*9)
}

// TestSpan holds the simple beam against handbook cases: P L / 4 and
// P L3 / 48 E I in the middle, a uniform load q L2 / 8 and 5 q L4 / 384 E I.
func TestSpan(t *testing.T) {
	one := steelangle.Span{Length: 300, Loads: []steelangle.Force{{At: 150, Value: 1000}}}
	near(t, "moment", one.Moment(), 75000, 1e-6)
	i := l60.Section().V
	near(t, "sag", float64(one.Sag(l60)), 1000*300*300*300/(48*210000*i), 1e-9)
	var many steelangle.Span
	many.Length = 300
	for k := range 300 {
		many.Loads = append(many.Loads, steelangle.Force{At: unit.Length(k) + 0.5, Value: 2})
	}
	near(t, "moment of a uniform load", many.Moment(), 2*300*300/8, 5)
	near(t, "sag of a uniform load", float64(many.Sag(l60)), 5*2*math.Pow(300, 4)/(384*210000*i), 1e-5)
}

// TestTwistAndCombined: T t / J, and the known cases of von Mises.
func TestTwistAndCombined(t *testing.T) {
	near(t, "twist", steelangle.TwistStress(l60, 10000), 10000*6/(114*216/3.), 1e-9)
	near(t, "shear alone", steelangle.Combined(0, 0, 100), 173.205, 0.001)
	near(t, "tension and compression", steelangle.Combined(100, 100, 0), 173.205, 0.001)
	near(t, "one way", steelangle.Combined(100, 0, 0), 100, 1e-9)
}
