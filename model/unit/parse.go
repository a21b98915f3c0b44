package unit

import (
	"regexp"
	"strconv"
	"strings"
)

// ParseError tells what was read in place of a quantity, what was expected and
// how to mend it.
type ParseError struct {
	Read     string // the text, with what is wrong about it
	Expected string
	Hint     string // what to write instead; "" if unknown
}

// Error puts the three in one line.
func (e *ParseError) Error() string {
	s := e.Read + ": expected " + e.Expected
	if e.Hint != "" {
		s += "; " + e.Hint
	}
	return s
}

// Building blocks of the patterns. They mean the same in RE2 and ECMA-262, so
// that a JSON Schema may use them.
const (
	whole    = `(?:0|[1-9][0-9]*)`
	decimal  = whole + `?\.[0-9]+|` + whole
	fraction = `[0-9]+/(?:2|4|8|16|32|64)`
	inchSign = `(?:inches|inch|in|"|″|”|'')`
	footSign = `(?:feet|foot|ft|'|′|’)`
	mixed    = `(?:` + whole + `[ -])?` + fraction
)

// LengthPattern matches every text that ParseLength takes with bare numbers in
// millimetres; sizes and signs are judged apart.
const LengthPattern = `^-?(?:(` + decimal + `) *(mm|cm|m|` + inchSign + `|` + footSign + `)?` +
	`|(` + mixed + `) *` + inchSign +
	`|(` + whole + `) *` + footSign + ` *(` + decimal + `|` + mixed + `) *` + inchSign + `)$`

// NumberPattern matches every text that ParseNumber takes.
const NumberPattern = `^-?(` + decimal + `)$`

// AnglePattern matches every text that ParseAngle takes.
const AnglePattern = `^-?(` + decimal + `) *(?:degrees|degree|deg|°)?$`

// MassPattern matches every text that ParseMass takes.
const MassPattern = `^(` + decimal + `) *(kg|lb)?$`

var (
	numberText = regexp.MustCompile(NumberPattern)
	lengthText = regexp.MustCompile(LengthPattern)
	angleText  = regexp.MustCompile(AnglePattern)
	massText   = regexp.MustCompile(MassPattern)
)

// MaxLength is the longest length that ParseLength takes: a kilometre, up to
// which plane geometry on a micrometre grid is exact.
const MaxLength = 1000 * M

// The pound is 0.45359237 kg exactly (international yard and pound agreement,
// 1959; NIST SP 811, appendix B).
const pound = 0.45359237

// ParseLength reads a length such as 745, "745 mm", "74.5 cm", "2.39 m",
// "29 1/2 in" or "7' 6 1/2\"". A number without a unit counts in bare. Negative
// lengths are read; whether they make sense is for the caller to say. The error
// is a *ParseError.
func ParseLength(text string, bare Length) (Length, error) {
	t := strings.TrimSpace(text)
	m := lengthText.FindStringSubmatch(t)
	if m == nil && bare == Inch {
		m = lengthText.FindStringSubmatch(t + " in")
	}
	if m == nil {
		return 0, complain(t, "a length such as 745, 74.5 cm, 2.39 m or 29 1/2 in", lengthText)
	}
	var l Length
	switch {
	case m[1] != "":
		l = Length(number(m[1])) * lengthUnit(m[2], bare)
	case m[3] != "":
		l = Length(number(m[3])) * Inch
	default:
		inches := number(m[5])
		if inches >= 12 {
			return 0, &ParseError{quoted(t) + " has 12 inches or more after the feet", "feet and less than 12 inches", ""}
		}
		l = Length(number(m[4]))*Foot + Length(inches)*Inch
	}
	if !(l <= MaxLength) {
		return 0, &ParseError{quoted(t) + " is longer than a kilometre", "a length in a house", ""}
	}
	return Length(signed(t, float64(l))), nil
}

// ParseNumber reads a plain decimal number such as 12 or -0.5, without exponent
// or unit. The error is a *ParseError.
func ParseNumber(text string) (float64, error) {
	t := strings.TrimSpace(text)
	if !numberText.MatchString(t) {
		return 0, complain(t, "a number such as 12 or 0.5", numberText)
	}
	v := number(strings.TrimPrefix(t, "-"))
	if !(v <= 1e12) {
		return 0, &ParseError{quoted(t) + " is too large", "a number such as 12 or 0.5", ""}
	}
	return signed(t, v), nil
}

// ParseAngle reads an angle such as "89.5 deg" or 89.5°; a number without a
// unit counts in degrees. The error is a *ParseError.
func ParseAngle(text string) (Angle, error) {
	t := strings.TrimSpace(text)
	m := angleText.FindStringSubmatch(t)
	if m == nil {
		return 0, complain(t, "an angle in degrees such as 89.5 deg", angleText)
	}
	a := number(m[1])
	if !(a <= 3600) {
		return 0, &ParseError{quoted(t) + " is more than ten turns", "an angle in degrees", ""}
	}
	return Angle(signed(t, a)) * Degree, nil
}

// ParseMass reads a mass such as "96 kg" or "212 lb"; a number without a unit
// counts in kilograms. The error is a *ParseError.
func ParseMass(text string) (Mass, error) {
	t := strings.TrimSpace(text)
	m := massText.FindStringSubmatch(t)
	if m == nil {
		return 0, complain(t, "a mass such as 96 kg", massText)
	}
	kg := number(m[1])
	if m[2] == "lb" {
		kg *= pound
	}
	if !(kg <= 1e6) {
		return 0, &ParseError{quoted(t) + " is heavier than a thousand tonnes", "a mass such as 96 kg", ""}
	}
	return Mass(kg), nil
}

// signed gives the size v the sign that text starts with; there is no minus zero.
func signed(text string, v float64) float64 {
	if text[0] == '-' && v != 0 {
		return -v
	}
	return v
}

// number reads what the patterns let through: 12, 0.5, .5, 1/2, 29 1/2 or
// 29-1/2. Too many digits give infinity, which the callers refuse.
func number(s string) float64 {
	top, bottom, isFraction := strings.Cut(s, "/")
	if !isFraction {
		v, _ := strconv.ParseFloat(s, 64)
		return v
	}
	w := 0.0
	if i := strings.IndexAny(top, " -"); i >= 0 {
		w, top = number(top[:i]), top[i+1:]
	}
	return w + number(top)/number(bottom)
}

func lengthUnit(sign string, bare Length) Length {
	switch sign {
	case "":
		return bare
	case "mm":
		return MM
	case "cm":
		return CM
	case "m":
		return M
	case "ft", "foot", "feet", "'", "′", "’":
		return Foot
	}
	return Inch
}
