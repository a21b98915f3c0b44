package unit

import (
	"fmt"
	"math"
	"testing"
)

func TestStyleLength(t *testing.T) {
	in16, in32 := Style{Unit: "in"}, Style{Unit: "in", Fraction: 32}
	for _, c := range []struct {
		style Style
		l     Length
		want  string
	}{
		{Style{}, 745, "745"},
		{Style{}, 745.5, "745.5"},
		{Style{}, 745.04, "745"},
		{Style{}, 745.05, "745.1"}, // halves away from zero, on both sides
		{Style{}, -745.05, "-745.1"},
		{Style{}, 0.05, "0.1"},
		{Style{}, 0.04, "0"},
		{Style{}, -0.04, "0"},
		{Style{}, Length(math.Copysign(0, -1)), "0"},
		{Style{}, 100, "100"}, // zeros before the point stay
		{Style{Decimal: ','}, 745.5, "745,5"},
		{Style{Places: 3}, 1.0005, "1.001"},
		{Style{Places: -1}, 745.5, "746"},
		{Style{Unit: "cm"}, 745.5, "74.55"},
		{Style{Unit: "cm"}, 745, "74.5"},
		{Style{Unit: "cm", Places: 1}, 745.5, "74.6"},
		{in16, 0, `0"`},
		{in16, 25.4, `1"`},
		{in16, 749.3, `29 1/2"`},
		{in16, 12.7, `1/2"`},
		{in16, 25.4 * 31.0 / 16, `1 15/16"`},
		{in16, 25.4 * 31.5 / 16, `2"`}, // a half of 1/16 goes up
		{in16, -25.4 * 31.5 / 16, `-2"`},
		{in16, -0.5, `0"`},
		{in16, -749.3, `-29 1/2"`},
		{in32, 25.4 * 31.5 / 16, `1 31/32"`},
		{in32, 0.8, `1/32"`},
		{Style{}, Length(math.NaN()), "?"},
		{in16, Length(math.Inf(-1)), "?"},
		{Style{}, Length(math.Inf(1)), "?"},
	} {
		if got := c.style.Length(c.l); got != c.want {
			t.Errorf("%+v.Length(%v) = %s, want %s", c.style, float64(c.l), got, c.want)
		}
	}
}

func TestStyleNumber(t *testing.T) {
	for _, c := range []struct {
		v      float64
		places int
		want   string
	}{{1.005, 2, "1.01"}, {2.675, 2, "2.68"}, {-2.5, 0, "-3"}, {1e20, 2, "100000000000000000000"}, {1.0 / 3, 9, "0.333333"}} {
		if got := (Style{}).Number(c.v, c.places); got != c.want {
			t.Errorf("Number(%v, %d) = %s, want %s", c.v, c.places, got, c.want)
		}
	}
}

func ExampleStyle_Length() {
	l := 2*M + 298.7*MM
	fmt.Println(Style{}.Length(l))
	fmt.Println(Style{Unit: "cm", Decimal: ','}.Length(l))
	fmt.Println(Style{Unit: "in"}.Length(l))
	// Output:
	// 2298.7
	// 229,87
	// 90 1/2"
}
