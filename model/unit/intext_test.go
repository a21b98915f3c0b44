package unit_test

import (
	"testing"

	"slabwright/model/unit"
)

// Inches worked out by hand: 745 mm are 29.33 in, 706 are 27.80, 38 are 1.496.
func TestInText(t *testing.T) {
	inch, fine := unit.Style{Unit: "in"}, unit.Style{Unit: "in", Fraction: 32}
	cm, comma := unit.Style{Unit: "cm"}, unit.Style{Decimal: ','}
	for _, c := range []struct {
		style    unit.Style
		in, want string
	}{
		{unit.Style{}, "worktop at 745.5 mm", "worktop at 745.5 mm"},
		{inch, "Thighs need 706 mm above the floor; the worktop is at 745 mm.", `Thighs need 27 13/16" above the floor; the worktop is at 29 5/16".`},
		{fine, "706 mm, then 38 mm", `27 25/32", then 1 1/2"`},
		{inch, "with a gap of 2.0 mm", "with a gap of 2.0 mm"},
		{inch, "between 0 and 30 mm", `between 0" and 1 3/16"`},
		{inch, "at least 25.4 to 50.8 mm", `at least 1" to 2"`},
		{inch, "(-25.4 mm)", `(-1")`},
		{inch, "leans 6 mm per m and weighs 37.5 kg", "leans 6 mm per m and weighs 37.5 kg"},
		{inch, "DIN 18202, M10, 3-4-5, corner A-12", "DIN 18202, M10, 3-4-5, corner A-12"},
		{cm, "worktop at 745.5 mm, gap 0.4 mm", "worktop at 74.55 cm, gap 0.04 cm"},
		{cm, "2372 x 810.6 mm", "237.2 x 81.06 cm"},
		{comma, "goes in by 0.4 mm with 99.7 %, turned by 0.60 degrees; EN 10056-1:2017, version 0.1", "goes in by 0,4 mm with 99,7 %, turned by 0,60 degrees; EN 10056-1:2017, version 0.1"},
		{unit.Style{Unit: "cm", Decimal: ','}, "1176.5 mm", "117,65 cm"},
	} {
		if got := c.style.InText(c.in); got != c.want {
			t.Errorf("%+v: %q\ngave %q\nwant %q", c.style, c.in, got, c.want)
		}
	}
}
