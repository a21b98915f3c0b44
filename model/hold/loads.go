package hold

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Usual loads, taken when nothing is said.
const (
	usualPerson  unit.Mass = 100  // common practice for tables, 1000 N on 100 x 100 mm
	usualStep              = 1.25 // choice of this project: climbing up with care
	usualWorktop           = 50   // kg/m2
	usualShelf             = 100  // kg/m2
)

// Partial factors and combination factors: EN 1990 and EN 1991-1-1, category A
// (worktops) and E (shelves), from memory; EN 1995-1-1 Table 2.3.
const (
	gammaG, gammaQ = 1.35, 1.5
	gammaM         = 1.3
	psi0, psi2     = 0.7, 0.3
	psi2Shelf      = 0.8
)

// kMod is EN 1995-1-1 Table 3.1, solid timber, by service class.
var kMod = map[duration][4]float64{
	permanent: {0, 0.6, 0.6, 0.5},
	longTerm:  {0, 0.7, 0.7, 0.55},
	shortTerm: {0, 0.9, 0.9, 0.7},
}

// kDef is EN 1995-1-1 Table 3.2, solid timber, by service class.
var kDef = [4]float64{0, 0.6, 0.8, 2.0}

type duration int

const (
	permanent duration = iota
	longTerm
	shortTerm
)

// Filled gives the loads with everything that was not said, and what was
// assumed. The heaviest of the people counts when it is more than usual.
func Filled(j model.Job) (model.Loads, []find.Assumption) {
	l := j.Loads
	var assumed []find.Assumption
	assume := func(source, format string, args ...any) {
		assumed = append(assumed, find.Assumption{What: fmt.Sprintf(format, args...), Source: source})
	}
	if l.Person == 0 {
		l.Person = usualPerson
		for _, p := range j.People {
			l.Person = max(l.Person, p.Mass)
		}
		assume("order of furniture tests, from memory; loads: person", "a person of %.0f kg stands or sits anywhere on a worktop, on 100 x 100 mm", float64(l.Person))
	}
	if l.Step == 0 {
		l.Step = usualStep
		assume("choice of this project; loads: step", "climbing up with care presses %.2f times the weight; a jump is not covered", l.Step)
	}
	if l.Worktop == 0 {
		l.Worktop = usualWorktop
		assume("common practice, no source; loads: worktop", "%.0f kg/m2 lie on worktops for years", l.Worktop)
	}
	if l.Shelf == 0 {
		l.Shelf = usualShelf
		assume("order of EN 16121 shelf tests, from memory; loads: shelf", "%.0f kg/m2 lie on shelves for years, and nobody stands or sits on them", l.Shelf)
	}
	if l.Service == 0 {
		l.Service = 1
		assume("EN 1995-1-1 2.3.1.3; loads: service_class", "a heated room, service class 1")
	}
	if l.Grade == "" {
		l.Grade = stock.Ungraded
		assume("engineering judgement; loads: grade", "wood that nobody graded: class %s", l.Grade)
	}
	return l, assumed
}

// creep is the creep factor k_def; wood delivered wet creeps far more while it
// dries under load (EN 1995-1-1 3.2(4), from memory).
func creep(j model.Job, l model.Loads) float64 {
	k := kDef[l.Service]
	if j.House.Climate.Moisture > 20 {
		k++
	}
	return k
}
