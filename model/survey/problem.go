package survey

import (
	"fmt"
	"strings"
)

// Trouble is the kind of a Problem.
type Trouble int

// The troubles that keep a network from being adjusted.
const (
	BadReading    Trouble = iota // a reading or a name makes no sense
	HangsFree                    // readings are missing: a point can still move
	HeldLoosely                  // no error: see Result.Loose
	TwoShapes                    // the readings fit two different rooms
	WrongTurn                    // a corner told to be inside is outside, or the other way
	NoAgreement                  // no shape was found near the readings
	Contradiction                // one reading, or one of several, is grossly wrong
	OutOfSight                   // the line of a reading runs through a wall
)

// Problem is why a network could not be adjusted, or a reading not be used.
// Points are the corners it is about, Measure the distances that would mend it,
// the best one first.
type Problem struct {
	Trouble Trouble
	Points  []Point
	Reading string // its ID, "" if it is about no single reading
	Where   string // where that reading stands in the user's file
	Why     string
	Measure [][2]Point
	Accused []Accused // of a Contradiction
	Needed  bool      // OutOfSight: kept all the same, since the room hangs on it
}

// Error says what is wrong, where, and what to measure.
func (p *Problem) Error() string {
	var b strings.Builder
	if p.Where != "" {
		b.WriteString(p.Where + ": ")
	}
	if p.Reading != "" {
		fmt.Fprintf(&b, "reading %q: ", p.Reading)
	}
	b.WriteString(p.Why)
	if len(p.Measure) > 0 {
		b.WriteString("; measure ")
		for i, m := range p.Measure {
			if i > 0 {
				b.WriteString(" or ")
			}
			fmt.Fprintf(&b, "%s to %s", m[0], m[1])
		}
	}
	return b.String()
}

func bad(r Reading, format string, args ...any) *Problem {
	return &Problem{Trouble: BadReading, Points: r.Points, Reading: r.ID, Where: r.Where, Why: fmt.Sprintf(format, args...)}
}

func badNetwork(format string, args ...any) *Problem {
	return &Problem{Trouble: BadReading, Why: fmt.Sprintf(format, args...)}
}
