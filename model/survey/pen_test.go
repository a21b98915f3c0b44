package survey_test

import (
	"testing"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// Slips as people make them, among them one told from life: 374.7 written for
// 373.7 centimetres.
func TestSlipsOfThePen(t *testing.T) {
	for _, c := range []struct {
		read, should unit.Length
		want         string
	}{
		{3747, 3736.6, "a mark of 10 mm miscounted: 3737"},
		{1808, 1708.9, "a mark of 100 mm miscounted: 1708"},
		{2372, 1371.2, "a mark of 1000 mm miscounted: 1372"},
		{1641, 1614.2, "two digits swapped: 1614"},
		{360, 3601.5, "centimetres and millimetres mixed up: 3600"},
		{12050, 1204, "centimetres and millimetres mixed up: 1205"},
		{8000, 800.4, "centimetres and millimetres mixed up: 800"}, // a nought too many, not 0800
		{1800, 1823, ""},
		{1800, 1801, ""},
		{1815.5, 1851.5, ""}, // half millimetres were no swapped digits
	} {
		a := survey.Accused{Reading: survey.Reading{Length: c.read, SD: 1}, ShouldRead: survey.Foretold{Length: unit.Measured{Value: c.should, SD: 1}}}
		if got := a.Pen(); got != c.want {
			t.Errorf("%v for %v: %q, want %q", c.read, c.should, got, c.want)
		}
	}
	angle := survey.Accused{Reading: survey.Reading{Kind: survey.Angle, Angle: 1}, ShouldRead: survey.Foretold{Angle: 1.5}}
	if got := angle.Pen(); got != "" {
		t.Errorf("an angle: %q", got)
	}
}
