package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Style says how lengths are written on sheets and in reports. The zero value
// writes millimetres to a tenth with a decimal point.
type Style struct {
	Unit     string // "mm" (or ""), "cm", "in"
	Decimal  rune   // '.' (or 0), ','
	Fraction int    // smallest part of an inch: 16 (or 0), 32
	Places   int    // most decimals of mm and cm; 0: to a tenth of a millimetre, negative: none
}

// Length writes a length without a unit sign in mm and cm, and with the inch
// sign in inches: 745.5, 74.55 or 29 3/8". Halves round away from zero and
// nothing prints as minus zero. What is no number prints as "?".
func (s Style) Length(l Length) string {
	switch s.Unit {
	case "cm":
		return s.Number(float64(l/CM), places(s.Places, 2))
	case "in":
		return s.inches(l)
	}
	return s.Number(float64(l), places(s.Places, 1))
}

func places(set, usual int) int {
	if set == 0 {
		return usual
	}
	return max(set, 0)
}

// Number writes a number with at most so many decimals (6 at most) and no
// trailing zeros, in the decimal sign of the style.
func (s Style) Number(v float64, places int) string {
	if !finite(v) {
		return "?"
	}
	places = min(max(places, 0), 6)
	text := strconv.FormatFloat(roundHalf(v, places), 'f', places, 64)
	if places > 0 {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	if s.Decimal != 0 && s.Decimal != '.' {
		text = strings.Replace(text, ".", string(s.Decimal), 1)
	}
	return text
}

// Fixed writes a number with so many decimals, zeros too, in the decimal sign of
// the style.
func (s Style) Fixed(v float64, places int) string {
	if !finite(v) {
		return "?"
	}
	text := strconv.FormatFloat(roundHalf(v, places), 'f', places, 64)
	if s.Decimal != 0 && s.Decimal != '.' {
		text = strings.Replace(text, ".", string(s.Decimal), 1)
	}
	return text
}

// roundHalf rounds halves away from zero. A half is what a person would call
// one: 1.005 is, though its nearest float64 lies a little below.
func roundHalf(v float64, places int) float64 {
	p := math.Pow10(places)
	n := v * p
	if math.Abs(n) > 1<<50 { // finer than float64 itself
		return v
	}
	return math.Trunc(n+math.Copysign(0.5+1e-6, n)) / p
}

// inches writes whole inches and a reduced fraction.
func (s Style) inches(l Length) string {
	per := 16
	if s.Fraction == 32 {
		per = 32
	}
	n := roundHalf(float64(l/Inch)*float64(per), 0)
	if !finite(n) || math.Abs(n) > 1<<50 {
		return "?"
	}
	minus := ""
	if n < 0 {
		minus, n = "-", -n
	}
	whole, top := int64(n)/int64(per), int64(n)%int64(per)
	for top > 0 && top%2 == 0 {
		top, per = top/2, per/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf(`%s%d"`, minus, whole)
	case whole == 0:
		return fmt.Sprintf(`%s%d/%d"`, minus, top, per)
	}
	return fmt.Sprintf(`%s%d %d/%d"`, minus, whole, top, per)
}

// finite reports whether v is neither NaN nor infinite.
func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
