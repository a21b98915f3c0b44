package lift

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"slabwright/model/unit"
)

// testdata/handling.yaml, worked: examples of the manual (W3, from memory), of a
// teaching page (W5), printed team figures (W9), and two slab lifts recomputed by
// an independent script (W7, W8).
func TestWorkedExamples(t *testing.T) {
	data, err := os.ReadFile("testdata/handling.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var f struct {
		Worked map[string]struct {
			What string
			RWL  float64 `yaml:"RWL_kg"`
			LI   float64 `yaml:"LI"`
			Full float64 `yaml:"full_precision"`
			Out  float64 `yaml:"out_lb"`
			Kg   []float64
		}
	}
	if err := yaml.Unmarshal(data, &f); err != nil {
		t.Fatal(err)
	}
	near := func(what string, got, want, tol float64) {
		t.Helper()
		if math.Abs(got-want) > tol {
			t.Errorf("%s: %.3f, want %.3f", what, got, want)
		}
	}
	w7 := Task{Out: 350, From: 150, To: 750, Grip: Fair}.Recommended()
	near("W7", float64(w7), f.Worked["W7"].RWL, 0.01)
	near("W7 index", Index(37.5, w7), f.Worked["W7"].LI, 0.01)
	w8 := Task{Out: 400, From: 500, To: 700, Grip: Fair}.Recommended()
	near("W8", float64(w8), f.Worked["W8"].RWL, 0.01)
	near("W8 index", Index(37.5, w8), f.Worked["W8"].LI, 0.01)
	// Inches and pounds; D 48 of the first counts up to the end at 63.
	inch := unit.Inch
	const lb = 0.45359237
	const us = 23 / lb / 51 * 25 / 25.4 // the manual's US constants, 51 lb and 10 in, are rounded: 23 kg and 25 cm give so much less
	near("W3", startOnly(Task{Out: 23 * inch, From: 15 * inch, To: 63 * inch, Grip: Fair})/lb, us*f.Worked["W3"].Full, 0.05)
	near("W5", startOnly(Task{Out: 20 * inch, From: 6 * inch, To: 22 * inch, Grip: Fair})/lb, us*f.Worked["W5"].Out, 0.05)
	near("W9 two", float64(Team(25, 25)), f.Worked["W9"].Kg[0], 0.01)
	near("W9 three", float64(Team(25, 25, 25)), f.Worked["W9"].Kg[1], 0.01)
	near("W9 mixed", float64(Team(25, 16)), f.Worked["W9"].Kg[2], 0.01)
	if !strings.Contains(f.Worked["W7"].What, "H35 V15 D60") || !strings.Contains(f.Worked["W8"].What, "V50 to 70 D25") {
		t.Error("the examples are not those that are computed here")
	}
}

// startOnly is the recommended load at the start alone, over the whole way: a lift
// of no way has a factor of 1 for it.
func startOnly(t Task) float64 {
	way := t.To - t.From
	t.To = t.From
	return float64(t.Recommended()) * (0.82 + 45/float64(max(250, way)))
}

func TestOutOfReach(t *testing.T) {
	for _, x := range []Task{{Out: 640, From: 700, To: 700}, {Out: 300, From: 700, To: 1800}, {Out: 300, From: 0, To: 1760}} {
		if x.Recommended() != 0 || !math.IsInf(Index(10, x.Recommended()), 1) {
			t.Errorf("%+v: %v", x, x.Recommended())
		}
	}
	if best := (Task{Out: 250, From: 750, To: 750}).Recommended(); best != 23 {
		t.Errorf("at best %v", best)
	}
}

func TestHands(t *testing.T) {
	for _, c := range []struct {
		m    unit.Mass
		n    int
		fits bool
	}{{25, 1, true}, {26, 2, true}, {33.3, 2, true}, {37, 3, true}, {50, 4, true}, {59, 4, false}} {
		if n, ok := Hands(c.m); n != c.n || ok != c.fits {
			t.Errorf("%v kg: %d %v", c.m, n, ok)
		}
	}
}
