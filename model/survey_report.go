package model

// SurveyReport is what the adjustment says about the readings.
type SurveyReport struct {
	Readings   []AdjustedReading
	Redundancy int // readings beyond those that are needed; 0: nothing is checked
	S0         float64
	Loose      string   // what is held only loosely, and what to measure; "" if nothing is
	Squared    []string // corners taken as nearly square for want of readings
	Assumed    []string // corners taken as inside ones for want of readings
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
