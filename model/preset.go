package model

import (
	"reflect"

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
	Cut    []CutPart // what is already cut
	Wiring Wiring    // grooves, slots and lids that the job adds
}

// Need is a wall that a preset asks the job file for. About is a length that
// suits the preset, for the made-up room of a new job; 0: any.
type Need struct {
	Wall, Help string
	About      unit.Length
}

// Preset is a ready design with parameters. Make one with NewPreset.
type Preset struct {
	Name, Help string
	Params     []Param
	Needs      []Need
	build      func(Site, map[string]Setting) (*Design, faults)
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
		build: func(s Site, set map[string]Setting) (*Design, faults) {
			var p P
			bad := fillParams(reflect.ValueOf(&p).Elem(), params, set)
			return build(s, p), bad
		}}
}

// Build runs the preset. Settings that are out of range or unknown come back
// as findings of the design with their place in the job file, never as a panic;
// the design is built with the nearest value that is allowed.
func (p Preset) Build(s Site, set map[string]Setting) *Design {
	s.Room = s.Room.withCut(s.Cut).withWiring(s.Wiring)
	d, bad := p.build(s, set)
	d.climate = s.House.Climate
	for _, b := range bad {
		d.report("", b)
	}
	d.unmatchedCut(s.Cut)
	d.unmatchedWiring(s.Wiring)
	return d
}
