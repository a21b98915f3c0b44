package unit

import (
	"errors"
	"math"
	"regexp"
	"strings"
	"testing"
)

// The inch is 25.4 mm and the foot 304.8 mm exactly (international yard and
// pound agreement, 1959; NIST SP 811, appendix B).
func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text string
		bare Length
		want Length
	}{
		{"745", MM, 745},
		{"745 mm", MM, 745},
		{"745mm", MM, 745},
		{" 745.25 ", MM, 745.25},
		{".5", MM, 0.5},
		{"0", MM, 0},
		{"-3", MM, -3},
		{"74.5 cm", MM, 745},
		{"2.39 m", MM, 2390},
		{"29 1/2 in", MM, 749.3},
		{"29-1/2 in", MM, 749.3},
		{`29 1/2"`, MM, 749.3},
		{`1/2"`, MM, 12.7},
		{`-1/16"`, MM, -1.5875},
		{`7' 6 1/2"`, MM, 2298.7},
		{`7'6"`, MM, 2286},
		{"7 ft 6 1/2 in", MM, 2298.7},
		{"7 ft 6.5 in", MM, 2298.7},
		{"-7 ft 6.5 in", MM, -2298.7},
		{"7 feet", MM, 2133.6},
		{"7.5 ft", MM, 2286},
		{"29.5", Inch, 749.3},
		{"29 1/2", Inch, 749.3},
		{"7' 6 1/2", Inch, 2298.7},
		{"1000 m", MM, 1e6},
	} {
		got, err := ParseLength(c.text, c.bare)
		if err != nil || math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("ParseLength(%q, %v) = %v, %v; want %v", c.text, float64(c.bare), got, err, c.want)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	const want = ": expected a length such as 745, 74.5 cm, 2.39 m or 29 1/2 in"
	for text, says := range map[string]string{
		"":             `"" is empty` + want,
		"  ":           `"" is empty` + want,
		"2310,5":       `"2310,5" has a decimal comma` + want + "; write 2310.5",
		"2310,5 mm":    `"2310,5 mm" has a decimal comma` + want + "; write 2310.5 mm",
		"-0,5":         `"-0,5" has a decimal comma` + want + "; write -0.5",
		"2.310,5 mm":   `"2.310,5 mm" has a decimal comma` + want + "; write 2310.5 mm",
		"2,310":        `"2,310" has a comma` + want + "; write 2.310, or 2310 if the comma parts thousands",
		"2,310.5":      `"2,310.5" has a comma` + want + "; write 2310.5",
		"NaN":          `"NaN" is no number` + want,
		".nan":         `".nan" is no number` + want,
		"-Inf":         `"-Inf" is no number` + want,
		"1e3":          `"1e3" has an exponent` + want,
		"1e999":        `"1e999" has an exponent` + want,
		"0x2EA":        `"0x2EA" is no decimal number` + want,
		"2_310":        `"2_310" has an underscore` + want + "; write 2310",
		"+745":         `"+745" has a plus sign` + want + "; write 745",
		"− 3":          `"− 3" has a minus sign that stands alone or is a dash` + want + "; write -3",
		"0745":         `"0745" has a leading zero` + want + "; write 745",
		"2 310":        `"2 310" has a space inside the number` + want + "; write 2310",
		"29 1/2":       `"29 1/2" has a fraction without inches` + want + "; write 29 1/2 in",
		"29 1/3 in":    `"29 1/3 in" has a fraction that is on no tape` + want,
		"1/0 in":       `"1/0 in" has a fraction that is on no tape` + want,
		"29 1/2 mm":    `"29 1/2 mm" has a fraction that is on no tape` + want,
		"7' 6":         `"7' 6" ends without inches` + want + "; write 7' 6 in",
		`7' 14"`:       `"7' 14\"" has 12 inches or more after the feet: expected feet and less than 12 inches`,
		"745.":         `"745." ends with a point` + want + "; write 745",
		"745 MM":       `"745 MM" has its unit in capitals` + want + "; write 745 mm",
		"2.4 M":        `"2.4 M" has its unit in capitals` + want + "; write 2.4 m",
		"745 kg":       `"745 kg" has a unit that does not fit here` + want,
		"about 745":    `"about 745"` + want,
		"mm":           `"mm"` + want,
		"1000.001 m":   `"1000.001 m" is longer than a kilometre: expected a length in a house`,
		"-1000.001 m":  `"-1000.001 m" is longer than a kilometre: expected a length in a house`,
		"74.5 cm 3 mm": `"74.5 cm 3 mm" has a unit that does not fit here` + want,
	} {
		_, err := ParseLength(text, MM)
		var pe *ParseError
		if !errors.As(err, &pe) || err.Error() != says {
			t.Errorf("ParseLength(%q):\n got %v\nwant %v", text, err, says)
		}
	}
	many := make([]byte, 400)
	for i := range many {
		many[i] = '9'
	}
	if _, err := ParseLength(string(many), MM); err == nil {
		t.Error("400 digits were read as a length")
	}
}

func TestParseNumber(t *testing.T) {
	for text, want := range map[string]float64{"12": 12, "-0.5": -0.5, ".25": 0.25, "-0": 0} {
		if got, err := ParseNumber(text); err != nil || got != want || math.Signbit(got) != (want < 0) {
			t.Errorf("ParseNumber(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"0,5":           `"0,5" has a decimal comma: expected a number such as 12 or 0.5; write 0.5`,
		"9 %":           `"9 %" has a unit that does not fit here: expected a number such as 12 or 0.5`,
		"9999999999999": `"9999999999999" is too large: expected a number such as 12 or 0.5`,
		"1e3":           `"1e3" has an exponent: expected a number such as 12 or 0.5`,
		"\x00\u202e12345678901234567890123456789012345678901234567890": `"\x00\u202e12345678901234567890123456789012345678...": expected a number such as 12 or 0.5`,
	} {
		if _, err := ParseNumber(text); err == nil || err.Error() != want {
			t.Errorf("ParseNumber(%q):\n got %v\nwant %v", text, err, want)
		}
	}
}

func TestParseAngle(t *testing.T) {
	for text, want := range map[string]float64{
		"89.5 deg": 89.5, "89.5": 89.5, "90°": 90, "-2 degrees": -2, "1 degree": 1,
	} {
		got, err := ParseAngle(text)
		if err != nil || math.Abs(got.Degrees()-want) > 1e-12 {
			t.Errorf("ParseAngle(%q) = %v deg, %v; want %v", text, got.Degrees(), err, want)
		}
	}
	for _, text := range []string{"", "89,5", "1.5 rad", "3601", "NaN", "1e2", "90 mm"} {
		if a, err := ParseAngle(text); err == nil {
			t.Errorf("ParseAngle(%q) = %v deg, want an error", text, a.Degrees())
		}
	}
}

// A pound is 0.45359237 kg exactly (NIST SP 811, appendix B).
func TestParseMass(t *testing.T) {
	for text, want := range map[string]float64{"96": 96, "96 kg": 96, "100 lb": 45.359237} {
		got, err := ParseMass(text)
		if err != nil || math.Abs(float64(got)-want) > 1e-12 {
			t.Errorf("ParseMass(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "-96", "96,5 kg", "96 g", "9999999 kg"} {
		if m, err := ParseMass(text); err == nil {
			t.Errorf("ParseMass(%q) = %v kg, want an error", text, m)
		}
	}
}

// A schema that uses the patterns must say the same as the parsers.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"745", `7' 6 1/2"`, "29-1/2 in", "2310,5", "-0", "1/2", "٣", "90°", "96 lb", "2,310 kg", "−3"} {
		f.Add(s)
	}
	pattern := regexp.MustCompile(LengthPattern)
	f.Fuzz(func(t *testing.T, text string) {
		if _, err := ParseAngle(text); err != nil && err.Error() == "" {
			t.Error("empty message")
		}
		if _, err := ParseMass(text); err != nil && err.Error() == "" {
			t.Error("empty message")
		}
		l, err := ParseLength(text, MM)
		tooBig := err != nil && (strings.Contains(err.Error(), "kilometre") || strings.Contains(err.Error(), "12 inches"))
		if match := pattern.MatchString(strings.TrimSpace(text)); match != (err == nil || tooBig) {
			t.Errorf("%q: the pattern says %v, the parser %v", text, match, err)
		}
		if err != nil {
			return
		}
		for _, c := range []struct {
			style Style
			bare  Length
			step  Length
		}{{Style{}, MM, 0.1}, {Style{Unit: "cm"}, CM, 0.1}, {Style{Unit: "in"}, MM, Inch / 16}, {Style{Unit: "in", Fraction: 32}, MM, Inch / 32}} {
			out := c.style.Length(l)
			back, err := ParseLength(out, c.bare)
			if err != nil && math.Abs(float64(l)) < float64(MaxLength)-1 {
				t.Errorf("%q written as %q: %v", text, out, err)
			} else if err == nil && math.Abs(float64(back-l)) > float64(c.step)*0.5001 {
				t.Errorf("%q written as %q comes back as %v", text, out, back)
			}
		}
	})
}

func BenchmarkParseLength(b *testing.B) {
	for b.Loop() {
		if _, err := ParseLength(`7' 6 1/2"`, MM); err != nil {
			b.Fatal(err)
		}
	}
}
