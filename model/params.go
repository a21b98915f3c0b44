package model

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"slabwright/model/unit"
)

// readParams reads the tags of a parameter struct.
func readParams(t reflect.Type) []Param {
	var out []Param
	for i := range t.NumField() {
		f := t.Field(i)
		if !f.IsExported() {
			continue
		}
		p := Param{Name: snake(f.Name), Help: f.Tag.Get("help"), Default: f.Tag.Get("is"), field: i}
		switch {
		case f.Type == reflect.TypeFor[unit.Length]():
			p.Kind = LengthParam
		case f.Type.Kind() == reflect.Int:
			p.Kind = CountParam
		case f.Type.Kind() == reflect.Bool:
			p.Kind = FlagParam
		case f.Type.Kind() == reflect.String:
			p.Kind, p.Choices = ChoiceParam, strings.Fields(f.Tag.Get("of"))
		default:
			panic(fmt.Sprintf("parameter %s: a parameter is a unit.Length, an int, a bool or a string", f.Name))
		}
		if p.Kind == LengthParam || p.Kind == CountParam {
			p.Min, p.Max = tagNumber(f, "min"), tagNumber(f, "max")
			if d := tagNumber(f, "is"); d < p.Min || d > p.Max {
				panic(fmt.Sprintf("parameter %s: default %v outside %v to %v", f.Name, d, p.Min, p.Max))
			}
		}
		if p.Kind == ChoiceParam && !slices.Contains(p.Choices, p.Default) {
			panic(fmt.Sprintf("parameter %s: default %q is none of its choices %q", f.Name, p.Default, p.Choices))
		}
		if p.Help == "" {
			panic(fmt.Sprintf("parameter %s has no help text", f.Name))
		}
		out = append(out, p)
	}
	return out
}

func tagNumber(f reflect.StructField, key string) float64 {
	v, err := strconv.ParseFloat(f.Tag.Get(key), 64)
	if err != nil {
		panic(fmt.Sprintf("parameter %s: tag %s is no number", f.Name, key))
	}
	return v
}

// fillParams puts settings and defaults into a parameter struct. A setting that
// cannot be taken as it stands gives way to what can, and becomes a fault.
func fillParams(v reflect.Value, params []Param, set map[string]Setting) (bad faults) {
	var names []string
	for _, p := range params {
		names = append(names, p.Name)
		s, given := set[p.Name]
		if !given {
			s = p.usual()
		}
		if wrong := p.fill(v.Field(p.field), s); wrong != "" {
			bad = append(bad, fault{what: "parameter " + p.Name + " is " + wrong, line: s.Pos.String()})
		}
	}
	for _, name := range slices.Sorted(maps.Keys(set)) {
		if !slices.Contains(names, name) {
			bad = append(bad, fault{what: fmt.Sprintf("there is no parameter %q%s", name, didYouMean(name, names)), line: set[name].Pos.String()})
		}
	}
	return bad
}

// usual is the default as a setting.
func (p Param) usual() Setting {
	x, _ := strconv.ParseFloat(p.Default, 64) // not used for texts and flags
	return Setting{Text: p.Default, Length: unit.Length(x), Number: x, Flag: p.Default == "yes"}
}

// fill puts a setting into its field and says what is wrong with it, if it is.
func (p Param) fill(f reflect.Value, s Setting) (wrong string) {
	switch p.Kind {
	case FlagParam:
		f.SetBool(s.Flag)
	case ChoiceParam:
		if !slices.Contains(p.Choices, s.Text) {
			wrong = fmt.Sprintf("%q, allowed are %s", s.Text, strings.Join(p.Choices, ", "))
			s = p.usual()
		}
		f.SetString(s.Text)
	case LengthParam:
		x := p.nearest(float64(s.Length))
		if x != float64(s.Length) {
			wrong = fmt.Sprintf("%s, allowed are %v to %v mm", inWords(s.Length), p.Min, p.Max)
		}
		f.SetFloat(x)
	case CountParam:
		x := math.Round(p.nearest(s.Number))
		if x != s.Number {
			wrong = fmt.Sprintf("%s, allowed are whole numbers from %v to %v", count(s.Number), p.Min, p.Max)
		}
		f.SetInt(int64(x))
	}
	return wrong
}

// nearest is the nearest number that is allowed; the default for no number.
func (p Param) nearest(x float64) float64 {
	if math.IsNaN(x) {
		return p.usual().Number
	}
	return min(max(x, p.Min), p.Max)
}

// count writes a count for a message, whatever it is.
func count(x float64) string {
	if math.IsNaN(x) {
		return "no number"
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}

// snake writes a field's name as it stands in a job file.
func snake(name string) string {
	var b strings.Builder
	for i, r := range name {
		if r >= 'A' && r <= 'Z' {
			if i > 0 {
				b.WriteByte('_')
			}
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
