package model

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"slabwright/model/unit"
)

// ParamKind is the type of a parameter.
type ParamKind string

// Kinds of parameters.
const (
	LengthParam ParamKind = "length"
	CountParam  ParamKind = "count"
	FlagParam   ParamKind = "yes/no"
	ChoiceParam ParamKind = "choice"
)

// Param is a named parameter of a preset. Lengths are in millimetres.
type Param struct {
	Name     string
	Kind     ParamKind
	Help     string
	Default  string
	Min, Max float64 // for lengths and counts, mm or plain
	Choices  []string
	field    int
}

// Site is what a design is made for.
type Site struct {
	Room   *Room
	People []Person
	Offers Offers
	House  House
}

// Need is a wall that a preset asks the job file for.
type Need struct{ Wall, Help string }

// Preset is a ready design with parameters. Make one with NewPreset.
type Preset struct {
	Name, Help string
	Params     []Param
	Needs      []Need
	build      func(Site, map[string]Setting) (*Design, []string)
}

// NewPreset makes a preset from a function of a site and a parameter struct.
// Every exported field of P of type unit.Length, int, bool or string is one
// parameter, described by its tag:
//
//	Surface unit.Length `is:"755" min:"600" max:"1100" help:"bench surface above the floor"`
//	Lights  string      `is:"under" of:"none under" help:"where the light is"`
//
// The parameter's name in a job file is the field's name in lower case with
// underscores (LegGap is leg_gap). A wrong tag is a fault in the program and
// panics at start-up, where its author sees it.
func NewPreset[P any](name, help string, build func(Site, P) *Design, needs ...Need) Preset {
	params := readParams(reflect.TypeFor[P]())
	return Preset{Name: name, Help: help, Params: params, Needs: needs,
		build: func(s Site, set map[string]Setting) (*Design, []string) {
			var p P
			unknown := fillParams(reflect.ValueOf(&p).Elem(), params, set)
			return build(s, p), unknown
		}}
}

// Build runs the preset. Settings that are out of range or unknown come back
// as findings of the design, never as a panic.
func (p Preset) Build(s Site, set map[string]Setting) *Design {
	d, bad := p.build(s, set)
	for _, b := range bad {
		d.fault("", "", b)
	}
	return d
}

func readParams(t reflect.Type) []Param {
	var out []Param
	for i := range t.NumField() {
		f := t.Field(i)
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

func fillParams(v reflect.Value, params []Param, set map[string]Setting) (bad []string) {
	for _, p := range params {
		f := v.Field(p.field)
		s, given := set[p.Name]
		switch p.Kind {
		case LengthParam, CountParam:
			x, _ := strconv.ParseFloat(p.Default, 64)
			if given && p.Kind == LengthParam {
				x = float64(s.Length)
			} else if given {
				x = s.Number
			}
			if !(x >= p.Min && x <= p.Max) {
				bad = append(bad, fmt.Sprintf("parameter %s is %v, allowed are %v to %v", p.Name, x, p.Min, p.Max))
				x = min(max(x, p.Min), p.Max)
			}
			if p.Kind == CountParam {
				f.SetInt(int64(x))
			} else {
				f.SetFloat(x)
			}
		case FlagParam:
			f.SetBool(p.Default == "yes")
			if given {
				f.SetBool(s.Flag)
			}
		case ChoiceParam:
			f.SetString(p.Default)
			if given {
				f.SetString(s.Text)
			}
		}
	}
	return bad
}

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
