package unit

import (
	"regexp"
	"strconv"
	"strings"
)

// InText writes the lengths of an English sentence in the unit of the style:
// numbers, several of them too, that "mm" follows. Those under 3 mm, and what is
// meant per metre, stay in millimetres in an inch style, whose fractions are too
// coarse for them. Numbers before other units get the decimal sign.
func (s Style) InText(sentence string) string {
	return measured.ReplaceAllStringFunc(sentence, func(found string) string {
		if !strings.HasSuffix(found, " mm") {
			return s.signed(found)
		}
		numbers := strings.TrimSuffix(found, " mm")
		switch s.Unit {
		case "", "mm":
			return s.signed(found)
		case "in":
			if fine(numbers) {
				return s.signed(found)
			}
			return figure.ReplaceAllStringFunc(numbers, s.converted)
		}
		return figure.ReplaceAllStringFunc(numbers, s.converted) + " " + s.Unit
	})
}

var (
	figure   = regexp.MustCompile(`[-+]?\d+(?:\.\d+)?`)
	measured = regexp.MustCompile(`(?:^|[^\w.])[-+]?\d+(?:\.\d+)?(?:(?: to | bis | und | and | or |, | x | ± | \+ |/)[-+]?\d+(?:\.\d+)?)* (?:mm per m\b|mm/m\b|mm²|mm\b|W/m\b|W\b|V\b|A\b|kg\b|%|m\b|degrees\b|times\b|N\b)`)
)

// fine tells whether a number is too small for the fractions of an inch.
func fine(numbers string) bool {
	for _, f := range figure.FindAllString(numbers, -1) {
		if v, err := strconv.ParseFloat(f, 64); err == nil && v != 0 && v < 3 && v > -3 {
			return true
		}
	}
	return false
}

func (s Style) converted(number string) string {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return number
	}
	out := s.Length(Length(v))
	if number[0] == '+' {
		return "+" + out
	}
	return out
}

// signed puts the decimal sign of the style into the numbers of a text.
func (s Style) signed(text string) string {
	if s.Decimal == 0 || s.Decimal == '.' {
		return text
	}
	return figure.ReplaceAllStringFunc(text, func(n string) string { return strings.Replace(n, ".", string(s.Decimal), 1) })
}
