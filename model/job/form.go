package job

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"time"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"slabwright/model"
	"slabwright/model/unit"
)

// form is the description of what may stand in one place of a job file. It
// reads the place and it is the place's JSON Schema.
type form[T any] struct {
	what   string // for messages: "a length from 0 to 300 mm"
	schema schema
	partly bool // what was read with mistakes is still of use: a section
	read   func(r *reader, n ast.Node) (T, bool)
}

// schema is a JSON Schema or a part of one.
type schema map[string]any

// scalar gives the text of a single value as it stands in the file.
func scalar(n ast.Node) (text string, ok bool) {
	switch n.(type) {
	case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode, *ast.InfinityNode, *ast.NanNode, *ast.BoolNode:
		return n.GetToken().Value, true
	}
	return "", false
}

// describe names what stands in a place, for messages.
func describe(n ast.Node) string {
	switch n.(type) {
	case nil, *ast.NullNode:
		return "nothing"
	case *ast.SequenceNode:
		return "a list"
	case *ast.MappingNode, *ast.MappingValueNode:
		return "a section of keys"
	}
	if text, ok := scalar(n); ok {
		return quoted(text)
	}
	return "a form of YAML that a job file does not use"
}

func quoted(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "..."
	}
	return `"` + text + `"`
}

// nearest gives a hint at the word that was probably meant, "" if none is
// alike. A word that is part of another one is alike: "ash", "European ash".
func nearest(word string, words []string) string {
	if len(word) > 60 {
		return ""
	}
	n := model.Nearest(word, words)
	for _, w := range words {
		if n == "" && len(word) > 2 && strings.Contains(strings.ToLower(w), strings.ToLower(word)) {
			n = w
		}
	}
	if n == "" {
		return ""
	}
	return "nearest is " + quoted(n)
}

// wants notes that something else than f's kind of value stands at n.
func wants[T any](r *reader, n ast.Node, f form[T], hint string) {
	r.wrong(nodePlace(n), describe(n), f.what, hint)
}

// nodePlace is where a value starts.
func nodePlace(n ast.Node) place {
	switch m := n.(type) {
	case nil:
		return place{1, 1}
	case *ast.MappingNode:
		if !m.IsFlowStyle && len(m.Values) > 0 {
			return tokenPlace(m.Values[0].Key.GetToken())
		}
	case *ast.MappingValueNode:
		return tokenPlace(m.Key.GetToken())
	}
	return tokenPlace(n.GetToken())
}

// parsed makes a form of a single value from a parser of texts.
func parsed[T any](what string, s schema, parse func(text string) (T, error)) form[T] {
	f := form[T]{what: what, schema: s}
	f.read = func(r *reader, n ast.Node) (T, bool) {
		text, ok := scalar(n)
		if !ok {
			wants(r, n, f, "")
			var none T
			return none, false
		}
		v, err := parse(text)
		if pe, isParse := err.(*unit.ParseError); isParse {
			r.wrong(nodePlace(n), pe.Read, pe.Expected, pe.Hint)
		} else if err != nil {
			r.wrong(nodePlace(n), err.Error(), what, "")
		}
		return v, err == nil
	}
	return f
}

// quantity is a number with a unit, between two bounds.
func quantity[T ~float64](what, unitName, pattern string, low, high float64, in func(T) float64, parse func(string) (T, error)) form[T] {
	if low >= 0 {
		pattern = strings.Replace(pattern, "^-?", "^", 1)
	}
	span := fmt.Sprintf("%s to %s", number(low), number(high))
	if unitName != "" {
		span += " " + unitName
	}
	s := schema{"type": []string{"number", "string"}, "minimum": low, "maximum": high, "pattern": pattern}
	return parsed(what+" from "+span, s, func(text string) (T, error) {
		v, err := parse(text)
		if err != nil {
			return 0, err
		}
		if x := in(v); !(x >= low && x <= high) {
			return 0, &unit.ParseError{Read: quoted(text) + " is out of range", Expected: span, Hint: metresHint(unitName, x, low, high)}
		}
		return v, nil
	})
}

// metresHint tells of a broken number of millimetres too small that would do in metres; "" if none.
func metresHint(unitName string, v, low, high float64) string {
	if mm := v * 1000; unitName == "mm" && v != math.Trunc(v) && v < low && mm >= low && mm <= high {
		return "a bare number is in mm; if it was meant in metres, write " + number(mm)
	}
	return ""
}

func number(v float64) string { return unit.Style{}.Number(v, 6) }

func asIs[T ~float64](v T) float64 { return float64(v) }

// length is a length; a bare number is in millimetres.
func length(low, high unit.Length) form[unit.Length] {
	return quantity("a length", "mm", unit.LengthPattern, float64(low), float64(high), asIs,
		func(t string) (unit.Length, error) { return unit.ParseLength(t, unit.MM) })
}

// angle is an angle; a bare number is in degrees.
func angle(low, high float64) form[unit.Angle] {
	return quantity("an angle", "degrees", unit.AnglePattern, low, high, unit.Angle.Degrees, unit.ParseAngle)
}

// mass is a mass; a bare number is in kilograms.
func mass(low, high float64) form[unit.Mass] {
	return quantity("a mass", "kg", unit.MassPattern, low, high, asIs, unit.ParseMass)
}

// plain is a number without a unit.
func plain(what string, low, high float64) form[float64] {
	return quantity(what, "", unit.NumberPattern, low, high, asIs, unit.ParseNumber)
}

// percent is a number of per cent, with or without the sign.
func percent(low, high float64) form[float64] {
	return quantity("a number", "%", strings.TrimSuffix(unit.NumberPattern, "$")+" *%?$", low, high, asIs,
		func(t string) (float64, error) { return unit.ParseNumber(strings.TrimSuffix(t, "%")) })
}

// count is a whole number.
func count(low, high int) form[int] {
	span := fmt.Sprintf("a whole number from %d to %d", low, high)
	s := schema{"type": "integer", "minimum": low, "maximum": high}
	return parsed(span, s, func(text string) (int, error) {
		v, err := unit.ParseNumber(text)
		if err != nil {
			return 0, err
		}
		if v != float64(int(v)) || int(v) < low || int(v) > high {
			return 0, &unit.ParseError{Read: quoted(text), Expected: span}
		}
		return int(v), nil
	})
}

// yesNo is yes or no.
func yesNo() form[bool] {
	s := schema{"enum": []any{"yes", "no", true, false}}
	return parsed("yes or no", s, func(text string) (bool, error) {
		switch text {
		case "yes", "true":
			return true, nil
		case "no", "false":
			return false, nil
		}
		return false, fmt.Errorf("%s", quoted(text))
	})
}

const textPattern = `^[^\x00-\x20\x7f][^\x00-\x1f\x7f]*$`

var textShape = regexp.MustCompile(textPattern)

// text is a line of free text. Numbers count as text, as in  revision: 3.
func text() form[string] {
	const most = 200
	s := schema{"type": []string{"string", "number"}, "pattern": textPattern, "maxLength": most}
	f := form[string]{what: "text in one line", schema: s}
	f.read = func(r *reader, n ast.Node) (string, bool) {
		t, ok := scalar(n)
		if _, isFlag := n.(*ast.BoolNode); !ok || isFlag {
			wants(r, n, f, "")
			return "", false
		}
		if !textShape.MatchString(t) || len([]rune(t)) > most {
			r.wrong(nodePlace(n), describe(n), fmt.Sprintf("text of 1 to %d characters in one line, without a blank before it", most), "")
			return "", false
		}
		return t, true
	}
	return f
}

// word is one word of a list.
func word[W ~string](what string, words ...W) form[W] {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	f := form[W]{what: what + ": " + strings.Join(list, ", "), schema: schema{"enum": list}}
	f.read = func(r *reader, n ast.Node) (W, bool) {
		t, ok := scalar(n)
		if !ok || !slices.Contains(list, t) {
			wants(r, n, f, nearest(t, list))
			return "", false
		}
		return W(t), true
	}
	return f
}

// oneOf is one of two whole numbers.
func oneOf(a, b int) form[int] {
	what := fmt.Sprintf("%d or %d", a, b)
	return parsed(what, schema{"enum": []int{a, b}}, func(text string) (int, error) {
		v, err := unit.ParseNumber(text)
		if err != nil || v != float64(a) && v != float64(b) {
			return 0, &unit.ParseError{Read: quoted(text), Expected: what}
		}
		return int(v), nil
	})
}

// date is a day as in ISO 8601.
func date() form[string] {
	const shape = `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`
	s := schema{"type": "string", "pattern": shape, "format": "date"}
	return parsed("a day as in 2026-09-12", s, func(text string) (string, error) {
		if _, err := time.Parse(time.DateOnly, text); err != nil {
			return "", fmt.Errorf("%s is no day of the calendar", quoted(text))
		}
		return text, nil
	})
}

// isMissing reports whether nothing stands after a key.
func isMissing(n ast.Node) bool {
	null, ok := n.(*ast.NullNode)
	return ok && null.GetToken().Type == token.ImplicitNullType
}
