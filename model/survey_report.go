package model

import (
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// SurveyReport is what the adjustment says about the readings.
type SurveyReport struct {
	Readings   []AdjustedReading
	Redundancy int // readings beyond those that are needed; 0: nothing is checked
	S0         float64
	Loose      string   // what is held only loosely, and what to measure; "" if nothing is
	Squared    []string // corners taken as nearly square for want of readings
	Assumed    []string // corners taken as inside ones for want of readings

	Verdict     survey.Verdict // its Readings are those above, in the same order
	Inseparable [][]string     // groups of readings: a slip in one cannot be told from one in another
	Refused     []Refused
	Faces       []FaceReport
	Levels      []survey.Level // of the floor, at the marked corners
}

// Refused is a reading that nobody can have taken. It was left out, unless the
// room is not determined without it.
type Refused struct {
	Name    string
	Where   string // place in the job file, "" if it has none
	Why     string
	Needed  bool     // kept, since the room hangs on it
	Instead []string // of a needed one: distances, such as "A-E", that would do
}

// FaceReport is how well bow and lean of a wall are known, as far as they were
// read. A bow read once and a lean read at two heights are checked by nothing,
// more of them check each other.
type FaceReport struct {
	Wall   string
	Bow    *unit.Measured // nil: not read; positive into the room
	Lean   *unit.Measured // nil: not read; back from the room, per metre upwards
	Proved bool           // widths or 3-4-5 marks check the bow

	Stations, Plumbs  int               // how many readings bow and lean were worked out from; 0: one alone
	BowTest, LeanTest survey.GlobalTest // these readings against an even bow, an even lean
	Uneven, NotPlane  string            // why these readings are not those of an even bow, of an even lean; "" if they are, or nothing tells
}

// AdjustedReading is one reading against the adjusted room, in mm or degrees.
// Checked is its redundancy, 0 (nothing checks it) to 1.
type AdjustedReading struct {
	Name     string
	Read     float64
	Adjusted float64
	SD       float64
	Unit     string
	Checked  float64
}
