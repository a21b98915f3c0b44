package survey

import (
	"fmt"
	"math"
)

// Pen tells which slip of the eye or the pen would explain an accused length:
// a mark of the tape miscounted, two digits swapped, centimetres for
// millimetres. "" if none comes near enough; it is a hint and no proof.
func (a Accused) Pen() string {
	if a.Reading.Kind.angular() {
		return ""
	}
	read, should := math.Abs(float64(a.Reading.Length)), math.Abs(float64(a.ShouldRead.Length.Value))
	near := func(v float64) bool { return math.Abs(v-should) <= min(3, a.ShouldRead.Within(a.Reading)) }
	if near(read) {
		return ""
	}
	for _, v := range swapped(read) {
		if near(v) {
			return fmt.Sprintf("two digits swapped: %.0f", v)
		}
	}
	for _, step := range []float64{10, 100, 1000} {
		for _, v := range []float64{read - step, read + step} {
			if near(v) {
				return fmt.Sprintf("a mark of %.0f mm miscounted: %.0f", step, v)
			}
		}
	}
	for _, f := range []float64{10, 0.1} {
		if near(f * read) {
			return fmt.Sprintf("centimetres and millimetres mixed up: %.0f", f*read)
		}
	}
	return ""
}

// swapped gives the whole millimetres with two neighbouring digits swapped.
func swapped(v float64) []float64 {
	if v != math.Trunc(v) || v >= 1e6 {
		return nil
	}
	digits := fmt.Sprintf("%.0f", v)
	var out []float64
	for i := 1; i < len(digits); i++ {
		d := []byte(digits)
		if d[i] == d[i-1] || i == 1 && d[i] == '0' { // with a nought in front it is another number of digits
			continue
		}
		d[i], d[i-1] = d[i-1], d[i]
		n := 0.0
		for _, c := range d {
			n = 10*n + float64(c-'0')
		}
		out = append(out, n)
	}
	return out
}
