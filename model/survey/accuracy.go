package survey

import (
	"fmt"
	"math"

	"slabwright/model/find"
	"slabwright/model/unit"
)

// Tool is what lengths are read with.
type Tool int

// The tools for lengths.
const (
	TapeII Tool = iota
	TapeI
	TapeIII
	Laser
)

// tape holds the constants of EU measuring instruments directive 2014/32/EU,
// annex X (MI-008): the most permissible error is a + bL mm, L in metres rounded
// up, plus c when the measure starts at its end face or hook.
var tapes = map[Tool]struct {
	name    string
	a, b, c float64
}{
	TapeI:   {"class I tape", 0.1, 0.1, 0.1},
	TapeII:  {"class II tape", 0.3, 0.2, 0.2},
	TapeIII: {"class III tape", 0.6, 0.4, 0.3},
}

// Accuracy is how well a person reads with the tools at hand, as standard
// deviations. A zero field takes its value from Usual.
type Accuracy struct {
	Tool       Tool
	NoHook     bool        // lengths start at a mark on the tape, not at its end
	Touch      unit.Length // reading one end of a tape
	Corner     unit.Length // what plaster hides in an inside corner
	SquareOff  unit.Length // distance of the marks of a 3-4-5
	Offset     unit.Length
	Bow        unit.Length
	Protractor unit.Angle
}

// Usual is the accuracy taken when nothing is told: a class II tape with a
// hook. All but the tape is common practice without a source.
var Usual = Accuracy{
	Tool:       TapeII,
	Touch:      0.5,
	Corner:     0.8,
	SquareOff:  1.0,
	Offset:     1.0,
	Bow:        0.7,
	Protractor: 0.2 * unit.Degree,
}

func (a Accuracy) filled() Accuracy {
	fill := func(v *unit.Length, usual unit.Length) {
		if *v == 0 {
			*v = usual
		}
	}
	fill(&a.Touch, Usual.Touch)
	fill(&a.Corner, Usual.Corner)
	fill(&a.SquareOff, Usual.SquareOff)
	fill(&a.Offset, Usual.Offset)
	fill(&a.Bow, Usual.Bow)
	if a.Protractor == 0 {
		a.Protractor = Usual.Protractor
	}
	return a
}

// Length is the standard deviation of a length read with the tool. For a tape
// it is sqrt((MPE/sqrt 3)^2 + 2 touch^2 + corner^2): the permissible error as a
// rectangular distribution, two ends to read, a corner to hit. For a laser it
// is half of 2 mm, grown by 0.1 mm per metre beyond 5 m (makers' 95 % figures),
// and 1 mm for hitting the corner.
func (a Accuracy) Length(l unit.Length) unit.Length {
	a = a.filled()
	t, ok := tapes[a.Tool]
	if !ok {
		own := (2 + 0.1*max(0, float64(l)/1000-5)) / 2
		return unit.Length(math.Hypot(own, 1))
	}
	mpe := t.a + t.b*math.Ceil(float64(l)/1000)
	if !a.NoHook {
		mpe += t.c
	}
	touch, corner := float64(a.Touch), float64(a.Corner)
	return unit.Length(math.Sqrt(mpe*mpe/3 + 2*touch*touch + corner*corner))
}

// of gives the standard deviation of a reading, in mm or rad: its own or, if
// it has none, that of the tool.
func (a Accuracy) of(r Reading) float64 {
	own := float64(r.SD)
	if r.Kind.angular() {
		own = float64(r.AngleSD)
	}
	if own != 0 {
		return own
	}
	a = a.filled()
	switch r.Kind {
	case Angle, Interior:
		return float64(a.Protractor)
	case SquareOff:
		return float64(a.SquareOff)
	case Offset:
		return float64(a.Offset)
	case Bow:
		return float64(a.Bow)
	}
	return float64(a.Length(r.Length))
}

// Assumptions lists what the accuracy rests on, for a report.
func (a Accuracy) Assumptions() []find.Assumption {
	a = a.filled()
	const practice = "common practice, no source"
	list := []find.Assumption{{
		What:   "laser: 2 mm (95 %) to 5 m, 0.1 mm more per metre beyond, 1 mm standard deviation to hit the corner",
		Source: "makers' data sheets; the corner common practice",
	}}
	if t, ok := tapes[a.Tool]; ok {
		hook := t.c
		if a.NoHook {
			hook = 0
		}
		list = []find.Assumption{
			{What: fmt.Sprintf("%s: permissible error %.1f + %.1f mm per metre begun, %.1f mm for the hook", t.name, t.a, t.b, hook), Source: "directive 2014/32/EU, annex X (MI-008)"},
			{What: fmt.Sprintf("reading an end of the tape %.1f mm, inside corner %.1f mm", a.Touch, a.Corner), Source: practice},
		}
	}
	return append(list, find.Assumption{
		What: fmt.Sprintf("3-4-5 %.1f mm, offset %.1f mm, bow %.1f mm, protractor %.1f degrees",
			a.SquareOff, a.Offset, a.Bow, a.Protractor.Degrees()),
		Source: practice,
	})
}
