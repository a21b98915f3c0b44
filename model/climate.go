package model

import (
	"fmt"

	"slabwright/model/calc/moisture"
	"slabwright/model/find"
)

// Climate is the wood as it comes and the air that it lives in. What is nil or
// empty has not been told.
type Climate struct {
	Moisture       moisture.Content // at delivery, by a meter; 0: not read
	Stored         *moisture.Air    // where the wood lay for weeks before it was cut
	Winter, Summer *moisture.Air    // of the room
	Sawn           moisture.Sawn
	Finished       Finish
}

// Finish tells which faces of a slab are oiled or varnished.
type Finish string

// Finishes of a slab.
const (
	BothFaces Finish = "both faces"
	OneFace   Finish = "one face"
)

// What is taken where a job file does not tell.
var (
	usualMoisture moisture.Content = 9 // joinery for heated rooms
	usualWinter                    = moisture.Air{Humidity: 30, Temperature: 20}
	usualSummer                    = moisture.Air{Humidity: 65, Temperature: 20}
)

const usualClimate = "common practice for heated rooms, no source"

// Seasons is the moisture of the wood when the parts are cut and fitted, and at
// the dry and the damp end of the year.
type Seasons struct {
	Fitting, Dry, Damp moisture.Content
	Untold             []string // what the job file does not tell, in words
	Assumed            []find.Assumption
}

// Seasons follows the wood through the year. What the climate does not tell is
// taken from common practice and stands in Assumed.
func (c Climate) Seasons() Seasons {
	s := Seasons{Fitting: c.Moisture}
	assume := func(what, told string) {
		s.Untold = append(s.Untold, told)
		s.Assumed = append(s.Assumed, find.Assumption{What: what, Source: usualClimate})
	}
	switch {
	case c.Moisture > 0:
	case c.Stored != nil:
		s.Fitting = equilibrium(*c.Stored)
		s.Assumed = append(s.Assumed, find.Assumption{What: fmt.Sprintf("the wood has come to %.1f %% in the air that it is stored in", float64(s.Fitting)), Source: emcSource})
	default:
		s.Fitting = usualMoisture
		assume(fmt.Sprintf("the wood has %.0f %% moisture when it is cut and fitted", float64(usualMoisture)), "how moist the wood is when it is cut")
	}
	air := func(told *moisture.Air, usual moisture.Air, season string) moisture.Content {
		if told != nil {
			return equilibrium(*told)
		}
		assume(fmt.Sprintf("the room has %.0f %% humidity at %.0f °C in %s", float64(usual.Humidity), float64(usual.Temperature), season), fmt.Sprintf("the room's air in %s", season))
		return equilibrium(usual)
	}
	winter, summer := air(c.Winter, usualWinter, "winter"), air(c.Summer, usualSummer, "summer")
	s.Dry, s.Damp = min(winter, summer), max(winter, summer)
	return s
}

const emcSource = "Wood Handbook FPL-GTR-190, equation 4-5"

// equilibrium is the moisture in air that a job file can tell of.
func equilibrium(a moisture.Air) moisture.Content {
	m, err := moisture.Equilibrium(a)
	if err != nil {
		panic(err) // the job file keeps to the bounds of the equation
	}
	return m
}
