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
		Base:  [2]survey.Point{"B", "G"},
		Readings: dist(
			"A", "B", 1400, "B", "C", 912, "C", "D", 242, "D", "E", 784, "E", "F", 242, "F", "G", 675,
			"G", "H", 1391, "A", "H", 2389, "B", "G", 2372, "A", "G", 2764, "B", "H", 2754, "C", "F", 785,
			"C", "E", 818, "D", "F", 823, "A", "D", 1884,
		),
	}
}

func TestStudio(t *testing.T) {
	r := adjust(t, studio())
	// Plain geometry of a wall with a bricked-up doorway: about where each
	// corner must be, within the looseness that is reported.
	for p, want := range map[survey.Point][2]float64{
		"A": {-12, -1400}, "B": {0, 0}, "C": {912, 0}, "D": {910, 242}, "E": {1694, 242}, "F": {1697, 0}, "G": {2372, 0}, "H": {2377, -1391},
	} {
		got, _ := r.At(p)
		near(t, string(p)+".x", float64(got.X), want[0], 6)
		near(t, string(p)+".y", float64(got.Y), want[1], 10)
	}
	for _, o := range r.Readings {
		if math.Abs(float64(o.Residual)) > 1 || o.Redundancy < 0 || o.Redundancy > 1 {
			t.Errorf("%s: residual %.2f, redundancy %.3f", o.Reading.ID, o.Residual, o.Redundancy)
		}
	}
	if r.DOF != 2 || r.Unchecked || len(r.Assumed) > 0 {
		t.Errorf("degrees of freedom %d, unchecked %v, assumed %v", r.DOF, r.Unchecked, r.Assumed)
	}
}

// 912 + 785 + 675 = 2372: B, C, F and G are strung in a line, and A-D crosses
// it, so the readings hold the niche like a taut string. The tool must say so.
func TestStudioNicheIsHeldLoosely(t *testing.T) {
	r := adjust(t, studio())
	if r.Loose == nil || r.Loose.Trouble != survey.HeldLoosely || len(r.Loose.Measure) == 0 || len(r.Squared) != 6 {
		t.Fatalf("loose %v, squared %v", r.Loose, r.Squared)
	}
	sd := func(r *survey.Result, i int) unit.Length { return max(r.Points[i].SDX, r.Points[i].SDY) }
	if e := sd(r, 4); e < 4 || e > 15 {
		t.Errorf("corner E is known to %.1f mm; half a degree or so on 785 mm is to be expected", e)
	}
	// Two lines of sight across the room, or a string along the wall, hold it.
	for _, more := range [][]survey.Reading{
		dist("A", "F", 2209, "C", "H", 2022),
		{{ID: "string C", Kind: survey.Offset, Points: []survey.Point{"C", "B", "G"}}, {ID: "string F", Kind: survey.Offset, Points: []survey.Point{"F", "B", "G"}}},
	} {
		n := studio()
		n.Readings = append(n.Readings, more...)
		r := adjust(t, n)
		if r.Loose != nil || len(r.Squared) > 0 || r.DOF != 4 {
			t.Errorf("with %s: %v, squared %v, DOF %d", more[0].ID, r.Loose, r.Squared, r.DOF)
		}
		if e := sd(r, 4); e > 3 {
			t.Errorf("with %s: corner E is known to %.1f mm only", more[0].ID, e)
		}
	}
}

// The shape must not hang on the base wall, and turns told must not change it.
func TestStudioFromOtherSides(t *testing.T) {
	want, err := adjust(t, studio()).Length("A", "E")
	if err != nil {
		t.Fatal(err)
	}
	for _, base := range [][2]survey.Point{{"B", "C"}, {"A", "B"}, {"F", "G"}, {}} {
		n := studio()
		n.Base = base
		n.Turns = map[survey.Point]survey.Turn{"B": survey.Inside, "C": survey.Outside, "D": survey.Inside, "E": survey.Inside, "F": survey.Outside}
		got, err := adjust(t, n).Length("A", "E")
		if err != nil {
			t.Fatal(err)
		}
		near(t, string(base[0]+base[1]), float64(got.Value), float64(want.Value), 1e-6)
		near(t, string(base[0]+base[1])+" sd", float64(got.SD), float64(want.SD), 1e-6)
	}
}

func BenchmarkStudio(b *testing.B) {
	n := studio()
	for b.Loop() {
		if _, err := survey.Adjust(n); err != nil {
			b.Fatal(err)
		}
	}
}
