package unit

import (
	"regexp"
	"strconv"
	"strings"
)

// suspicion is a usual way in which a quantity goes wrong, and how to mend it.
type suspicion struct {
	looks *regexp.Regexp
	says  string
	mend  string // what to put for looks; the result is offered if it can be read; "": no offer
}

// suspicions in the order in which they are tried.
var suspicions = []suspicion{
	{regexp.MustCompile(`^$`), "is empty", ""},
	{regexp.MustCompile(`(?i)^[-+.]*(?:nan|inf)`), "is no number", ""},
	{regexp.MustCompile(`^(-?[0-9]{1,3})\.([0-9]{3}),([0-9]+)`), "has a decimal comma", "$1$2.$3"},
	{regexp.MustCompile(`([0-9]),([0-9]+)`), "has a decimal comma", "$1.$2"},
	{regexp.MustCompile(`([0-9])_+`), "has an underscore", "$1"},
	{regexp.MustCompile(`(?i)^-?0[xob]`), "is no decimal number", ""},
	{regexp.MustCompile(`(?i)^-?[0-9.]+e[-+]?[0-9]+`), "has an exponent", ""},
	{regexp.MustCompile(`^\+ *(.)`), "has a plus sign", "$1"},
	{regexp.MustCompile(`^[−–] *|^- +`), "has a minus sign that stands alone or is a dash", "-"},
	{regexp.MustCompile(`^(-?)0+([0-9])`), "has a leading zero", "$1$2"},
	{regexp.MustCompile(`([0-9]) +([0-9]{3})\b`), "has a space inside the number", "$1$2"},
	{regexp.MustCompile(`/(?:2|4|8|16|32|64)$`), "has a fraction without inches", "$0 in"},
	{regexp.MustCompile(`/`), "has a fraction that is on no tape", ""},
	{regexp.MustCompile(`((?:feet|foot|ft|['′’]) *[0-9.]+)$`), "ends without inches", "$1 in"},
	{regexp.MustCompile(`(.)\.$`), "ends with a point", "$1"},
	{regexp.MustCompile(`([0-9]) *MM$`), "has its unit in capitals", "$1 mm"},
	{regexp.MustCompile(`([0-9]) *C[Mm]$`), "has its unit in capitals", "$1 cm"},
	{regexp.MustCompile(`([0-9]) *M$`), "has its unit in capitals", "$1 m"},
	{regexp.MustCompile(`[0-9] *[^0-9. ]+$`), "has a unit that does not fit here", ""},
}

// thousands is a comma that may part thousands as well as decimals.
var thousands = regexp.MustCompile(`^-?[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:[^0-9,]|$)`)

// complain finds out why a text does not match the pattern of a quantity.
func complain(t, expected string, pattern *regexp.Regexp) error {
	e := &ParseError{Read: quoted(t), Expected: expected}
	for _, s := range suspicions {
		if !s.looks.MatchString(t) {
			continue
		}
		e.Read += " " + s.says
		if mended := s.looks.ReplaceAllString(t, s.mend); s.mend != "" && pattern.MatchString(mended) {
			e.Hint = "write " + mended
		}
		if plain := strings.ReplaceAll(t, ",", ""); thousands.MatchString(t) && pattern.MatchString(plain) {
			e.Read = quoted(t) + " has a comma"
			if e.Hint == "" {
				e.Hint = "write " + plain
			} else {
				e.Hint += ", or " + plain + " if the comma parts thousands"
			}
		}
		break
	}
	return e
}

// quoted gives a text in quotes, shortened where it is long.
func quoted(t string) string {
	const most = 40
	if r := []rune(t); len(r) > most {
		t = string(r[:most]) + "..."
	}
	return strconv.Quote(t)
}
