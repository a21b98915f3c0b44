// Package wiring computes cables and light at extra-low voltage: resistance and
// voltage drop of copper, runs of light strips, supplies and fuses, how full a
// channel is, and the shortest way of a cable through a network of channels.
// Mains cables are only led and kept apart here: their sizes are an
// electrician's matter.
package wiring

import (
	"math"

	"slabwright/model/unit"
)

// Electrical quantities in SI units.
type (
	Volt        float64
	Ampere      float64
	Watt        float64
	Ohm         float64
	OhmPerMetre float64
	WattPerM    float64 // per metre of strip
)

// Times is the voltage that a current drops over a resistance.
func (r Ohm) Times(i Ampere) Volt { return Volt(float64(r) * float64(i)) }

// Over is the resistance of a length of one conductor.
func (r OhmPerMetre) Over(l unit.Length) Ohm { return Ohm(float64(r) * float64(l) / 1000) }

// Conductor is a flexible copper conductor of class 5.
type Conductor struct {
	SquareMM float64 // nominal cross-section in mm2
	// Resistance is the highest that IEC 60228 table 3 allows at 20 degrees C
	// for plain wires.
	Resistance OhmPerMetre
	// Carries is what the conductor may carry in a two-core flexible cable,
	// laid in free air; in bundles and closed wood much less.
	Carries Ampere
}

const (
	// ConductorSource tells where the resistances are from.
	ConductorSource = "IEC 60228 table 3, class 5, plain copper at 20 degrees C, from memory"
	// CarriesSource tells where the currents are from.
	CarriesSource = "DIN VDE 0298-4 for two-core flexible cables in free air, from memory; halved here for cables in closed channels, common practice, no source"
)

// Conductors are the sizes used for light at extra-low voltage, thinnest first.
var Conductors = []Conductor{
	{0.5, 0.0390, 3}, {0.75, 0.0260, 6}, {1, 0.0195, 10}, {1.5, 0.0133, 16}, {2.5, 0.00798, 25}, {4, 0.00495, 32},
}

// perKelvin is how much the resistance of copper grows by the degree at 20
// degrees C (IEC 60028).
const perKelvin = 0.00393

// At is the resistance at a temperature in degrees C.
func (r OhmPerMetre) At(celsius float64) OhmPerMetre {
	return OhmPerMetre(float64(r) * (1 + perKelvin*(celsius-20)))
}

// FeedDrop is the drop over a feed of two conductors of a length, there and
// back.
func FeedDrop(r OhmPerMetre, l unit.Length, i Ampere) Volt { return 2 * r.Over(l).Times(i) }

// Strip is a light strip that draws its power evenly.
type Strip struct {
	Power      WattPerM
	Supply     Volt
	Pitch      unit.Length // it may be cut at every multiple
	Longest    unit.Length // fed at one end, by its maker; 0: not told
	Resistance OhmPerMetre // of both conductors together
}

// Cut is the longest run that fits into a length: a whole number of pitches.
func (s Strip) Cut(room unit.Length) (run unit.Length, pieces int) {
	if !(s.Pitch > 0) || room < s.Pitch {
		return 0, 0
	}
	pieces = int(math.Floor(float64(room/s.Pitch) + 1e-9))
	return s.Pitch * unit.Length(pieces), pieces
}

// Draw is the power and the current of a run.
func (s Strip) Draw(run unit.Length) (Watt, Ampere) {
	w := Watt(float64(s.Power) * float64(run) / 1000)
	return w, Ampere(float64(w) / float64(s.Supply))
}

// Drop is the drop to the darkest place of a run fed at one end, or at both.
// The current falls evenly along the run, so that the drop to the far end is
// half of what the whole current would drop over the whole run; fed at both
// ends the middle sees a quarter of that. Currents are taken as those at full
// voltage, which is a little too much.
func (s Strip) Drop(run unit.Length, bothEnds bool) Volt {
	_, i := s.Draw(run)
	v := s.Resistance.Over(run).Times(i) / 2
	if bothEnds {
		return v / 4
	}
	return v
}

// Reserve is the part of a supply's power that stays free: a supply loaded to
// 80 % at most lasts longer (common practice, no source).
const Reserve = 0.2

// Supplies are usual powers of supplies for light (common practice, no source).
var Supplies = []Watt{12, 20, 30, 45, 60, 75, 100, 150, 200, 320}

// Supply is the smallest usual supply that keeps the reserve; false if none is
// large enough: the light must be divided then.
func Supply(load Watt) (Watt, bool) {
	for _, s := range Supplies {
		if float64(load) <= float64(s)*(1-Reserve)+1e-9 {
			return s, true
		}
	}
	return 0, false
}

// Fuses are the rated currents of blade fuses (ISO 8820-3, from memory).
var Fuses = []Ampere{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30}

// Fuse is the smallest fuse that a load does not use beyond four fifths and
// that still protects the wire; false if there is none.
func Fuse(load, wire Ampere) (Ampere, bool) {
	for _, f := range Fuses {
		if f >= load/0.8-1e-9 {
			return f, f <= wire
		}
	}
	return 0, false
}

// Dimmers are usual rated currents of dimmers for light at extra-low voltage
// (common practice, no source).
var Dimmers = []Ampere{2, 4, 5, 6, 8, 10, 12, 15, 20}

// Dimmer is the smallest usual dimmer that a load does not use beyond four
// fifths; false if none is large enough.
func Dimmer(load Ampere) (Ampere, bool) {
	for _, d := range Dimmers {
		if load <= d*(1-Reserve)+1e-9 {
			return d, true
		}
	}
	return 0, false
}

// Bundled is what a conductor may carry in a closed channel.
func (c Conductor) Bundled() Ampere { return c.Carries / 2 }

// Feed is the thinnest conductor that carries a current in a closed channel,
// lets a fuse protect it and drops no more than allowed over a length at 40
// degrees C; false if none of them does.
func Feed(i Ampere, l unit.Length, allowed Volt) (Conductor, bool) {
	for _, c := range Conductors {
		if _, ok := Fuse(i, c.Bundled()); ok && FeedDrop(c.Resistance.At(40), l, i) <= allowed {
			return c, true
		}
	}
	return Conductor{}, false
}
