package survey_test

import (
	"math"
	"testing"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// dist makes distance readings "A-B" with the usual accuracy of a class II tape.
func dist(list ...any) []survey.Reading {
	var out []survey.Reading
	for i := 0; i < len(list); i += 3 {
		p, q, l := survey.Point(list[i].(string)), survey.Point(list[i+1].(string)), list[i+2].(int)
		out = append(out, survey.Reading{ID: string(p + "-" + q), Points: []survey.Point{p, q}, Length: unit.Length(l)})
	}
	return out
}

// studio is the print studio: an alcove whose back wall has a niche, eight
// corners from the front of the left wall to the front of the right one, read
// with a steel tape, class II. Invented numbers.
func studio() survey.Network {
	return survey.Network{
		Chain: []survey.Point{"A", "B", "C", "D", "E", "F", "G", "H"},
		Base:  [2]survey.Point{"B", "C"},
		Readings: dist(
			"A", "B", 1400, "B", "C", 912, "C", "D", 242, "D", "E", 784, "E", "F", 242, "F", "G", 675,
			"G", "H", 1391, "A", "H", 2389, "B", "G", 2372, "A", "G", 2764, "B", "H", 2754, "C", "F", 785,
			"C", "E", 818, "D", "F", 823, "A", "D", 1884,
		),
	}
}

func TestStudio(t *testing.T) {
	r := adjust(t, studio())
	for _, p := range r.Points {
		t.Logf("%s %8.1f %8.1f  sd %.2f %.2f", p.Name, p.At.X, p.At.Y, p.SDX, p.SDY)
	}
	for _, o := range r.Readings {
		t.Logf("%s v %.2f r %.3f w %.2f", o.Reading.ID, o.Residual, o.Redundancy, o.W)
	}
	t.Log(r.DOF, r.VTPV, r.Rounds)
	_ = math.Pi
}

func BenchmarkStudio(b *testing.B) {
	n := studio()
	for b.Loop() {
		if _, err := survey.Adjust(n); err != nil {
			b.Fatal(err)
		}
	}
}
