package sheet

import (
	"testing"

	"slabwright/model/unit"
)

// TestToleranceInInches: one inch is 25.4 mm exactly (ISO 31-1, international
// inch), so 0.5, 0.3 and 1 mm are 0.01968, 0.01181 and 0.03937 inches. What is
// written allows no more.
func TestToleranceInInches(t *testing.T) {
	m := &maker{style: unit.Style{Unit: "in", Decimal: '.', Fraction: 16}}
	for l, want := range map[unit.Length]string{0.5: `0.019"`, 0.3: `0.011"`, 1: `0.039"`} {
		if got := m.within(l); got != want {
			t.Errorf("%g mm: %s, want %s", float64(l), got, want)
		}
	}
	m.style = unit.Style{Unit: "mm", Decimal: ','}
	if got := m.within(0.5); got != "0,5" {
		t.Errorf("in millimetres: %s, want 0,5", got)
	}
}
