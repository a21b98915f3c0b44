package model

import (
	"fmt"

	"slabwright/model/survey"
	"slabwright/model/unit"
)

// Pos is a place in a job file; the zero value is "nowhere".
type Pos struct {
	File         string
	Line, Column int
}

// String is "file:line:column", "" for nowhere.
func (p Pos) String() string {
	if p == (Pos{}) {
		return ""
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Job is all that the person has told: what was measured, who will use the
// desk, what is on offer, and which preset with which parameters.
type Job struct {
	Title    string
	Revision string
	History  []Revision
	Surveyed string // date of the survey, ISO 8601; the only date printed
	Author   string
	Show     Show
	Room     RoomPlan
	People   []Person
	Screens  []Screen
	Offers   Offers
	House    House
	Cut      []CutPart
	Loads    Loads
	Wiring   Wiring
	Preset   string
	Settings map[string]Setting // parameters of the preset, by name
	Pos      Pos
}

// Show says how numbers and sheets are written.
type Show struct {
	Paper      string      // "A3" (default), "A4", "A2", "A1"
	Stand      string      // "upright", "lying"; "" leaves it to each sheet
	Ink        string      // "colour" (default), "black"
	Cover      string      // "both" (default), "together", "apart": how the cover shows the desk
	Unit       string      // "mm" (default), "cm", "in"
	Fraction   int         // smallest part of an inch: 16 (default) or 32
	Decimal    string      // "." or ","; that of the language when not said
	Projection string      // "first" (default) or "third"
	Language   string      // "en" (default), "de"
	Natural    unit.Length // how closely models follow a natural edge; 0.5 mm when not said
}

// Revision is one state of a job: its letter or number, the day it was given
// out, and what changed. The last one is the latest.
type Revision struct {
	Mark string
	On   string // day, ISO 8601; "" when not told
	What string
	Pos  Pos
}

// Style says how lengths and numbers are written.
func (s Show) Style() unit.Style {
	out := unit.Style{Unit: s.Unit, Fraction: s.Fraction}
	if s.Decimal == "," {
		out.Decimal = ','
	}
	return out
}

// Setting is a parameter as written in the job file.
type Setting struct {
	Text   string
	Length unit.Length // for lengths
	Number float64     // for counts and plain numbers
	Flag   bool
	Pos    Pos
}

// RoomPlan is a room as measured. Corners are named by the user and listed
// left to right as somebody standing in the room sees the walls.
type RoomPlan struct {
	Corners  []CornerPlan
	Closed   bool // the last corner joins the first by a wall
	Base     [2]string
	At       unit.Length     // height above the floor at which the readings were taken
	Accuracy survey.Accuracy // how well was measured; zero fields are those of survey.Usual
	Ceiling  unit.Length     // 0: not given
	Walls    []WallPlan
	Readings []survey.Reading
	Floor    []FloorMark
	Pos      Pos
}

// CornerPlan is one corner; Bend is "in" for a corner of the room, "out" for
// one that sticks out into it, "" where the readings decide. Pos is where the
// bend was told, or else where the corner is named.
type CornerPlan struct {
	Name string
	Bend string
	Pos  Pos
}

// FloorMark is the height of the floor at a corner, or at a place before a wall,
// above the floor at the mark of height 0.
type FloorMark struct {
	Corner string      // "" for a place before a wall:
	Wall   string      // its name
	Along  unit.Length // from the corner from which the wall counts
	Before unit.Length // square from the wall into the room
	Height unit.Length
	SD     unit.Length // 0: that of a level carried so far
	Pos    Pos
}

// WallPlan is one wall between two neighbouring corners.
type WallPlan struct {
	Name      string // defaults to "A-B"
	From, To  string
	Make      WallMake
	Bow       unit.Length    // at the middle; positive bulges into the room, negative is hollow
	Stations  []Station      // readings of the bow against a straightedge; nil: Bow was read
	Lean      unit.Length    // how far the wall goes back from the room ...
	LeanOver  unit.Length    // ... over this height upwards; 0: plumb
	Plumbs    []survey.Plumb // readings of the lean against a plumb line; nil: Lean was read
	Studs     []unit.Length
	StudsFrom string // corner from which Studs and Obstacles of this wall count; defaults to From
	Obstacles []ObstaclePlan
	Anchor    *Approval // nil: no paper of an anchor at hand
	Pos       Pos

	bowSD  unit.Length // of Bow worked out from Stations; 0: as usual
	leanSD unit.Length // of Lean worked out from Plumbs, per mm of height; 0: as usual
}

// Station is a reading of a wall's face off the straight line from corner to
// corner, positive into the room. Along counts from the corner StudsFrom. A zero
// SD takes that of the straightedge.
type Station struct {
	Along, Off, SD unit.Length
}

// Approval is what an anchor may carry in a wall by its approval or the maker's
// paper: permissible loads of one anchor in service, and the distances from an
// edge and from the next anchor from which on they hold.
type Approval struct {
	Pull, Shear   float64 // N
	Edge, Spacing unit.Length
	Paper         string
}

// called is the wall's name, or its corners where it has none.
func (p WallPlan) called() string {
	if p.Name == "" {
		return p.From + "-" + p.To
	}
	return p.Name
}

// WallMake is what a wall is made of.
type WallMake string

// Kinds of wall. Unknown never passes a check that depends on the wall.
const (
	Brick        WallMake = "solid brick"
	Concrete     WallMake = "concrete"
	Aerated      WallMake = "aerated block"
	Hollow       WallMake = "hollow block"
	Stud         WallMake = "timber stud"
	Plasterboard WallMake = "plasterboard"
	UnknownWall  WallMake = "unknown"
)

// WallMakes lists the kinds of wall in the order of the help texts.
var WallMakes = []WallMake{Brick, Concrete, Aerated, Hollow, Stud, Plasterboard, UnknownWall}

// ObstaclePlan is something on or in a wall, measured along the wall from one
// of its corners and above the floor.
type ObstaclePlan struct {
	Name        string
	Kind        string // one of ObstacleKinds
	From        string // corner from which Start and End count
	Start, End  unit.Length
	Bottom, Top unit.Length
	Depth       unit.Length // how far it stands into the room; 0: hidden in the wall
	Free        unit.Length // kept clear around it, on the wall's face
	Pos         Pos
}

// ObstacleKinds lists what can be on a wall.
var ObstacleKinds = []string{"socket", "switch", "radiator", "rack", "pipe", "cable", "window", "door", "sill", "other"}

// Person is somebody who will use the desk. Zero lengths are "not given".
type Person struct {
	Name    string
	Stature unit.Length
	Mass    unit.Mass
	Sex     string // "female", "male", ""
	Shoe    unit.Length
	Thigh   unit.Length // own measure: thigh clearance above the seat, sitting
	Knee    unit.Length // own measure: knee height above the floor, sitting
	Seat    unit.Length // own measure: underside of the knee above the floor
	Elbow   unit.Length // own measure: elbow above the seat
	Hips    unit.Length // own measure: widest breadth, sitting
	Upper   unit.Length // own measure: back to the front of the knee, sitting
	Eye     unit.Length // own measure: eye above the floor, sitting
	Stand   unit.Length // own measure: elbow above the floor, standing
	Pos     Pos
}

// Screen is a screen on a worktop: the middle of its face along and from the
// slab's back edge, and its visible part above the surface.
type Screen struct {
	Name   string
	On     string // slab
	Along  unit.Length
	Back   unit.Length
	Bottom unit.Length // lower edge of the picture above the surface
	Height unit.Length // of the picture
	Pos    Pos
}

// Offers is what can be bought, with the user's prices in one currency.
type Offers struct {
	Currency  string
	Slabs     []SlabOffer
	Bars      []BarOffer
	Packs     []PackOffer
	KerfWood  unit.Length
	KerfSteel unit.Length
	Pos       Pos
}

// SlabOffer is a slab on offer. Widths are the usable widths of a slab with
// natural edges at stations Every apart along its length.
type SlabOffer struct {
	Name      string
	Species   string
	Length    unit.Length
	Width     unit.Length
	Thickness unit.Length
	Natural   int // number of natural edges, 0 to 2
	Widths    []unit.Length
	Every     unit.Length
	Flaws     []Flaw  // what no part and no saw cut may meet
	Moisture  float64 // percent, 0: not given
	Price     float64
	Count     int    // 0: as many as wanted
	Place     string // where it is sold
	Pos       Pos
}

// Flaw is a knot, a split or a nail in a slab: a rectangle, From its left end and
// Up from its base line, the straight or lower edge.
type Flaw struct {
	From, Up      unit.Length
	Length, Width unit.Length
}

// BarOffer is a steel bar on offer.
type BarOffer struct {
	Section string
	Length  unit.Length
	Price   float64
	Count   int
	Place   string // where it is sold
	Pos     Pos
}

// FixingKind is a kind of thing that holds parts and is sold in packs.
type FixingKind string

// Kinds of fixings.
const (
	WallAnchor FixingKind = "wall anchor"
	WoodScrew  FixingKind = "wood screw"
	CoachScrew FixingKind = "coach screw"
	Castor     FixingKind = "castor"
)

// PackOffer is a pack of fixings on offer. Diameter is that of the screw, Length
// that of the screw or the overall height of a castor; Wall says what an anchor
// is approved for.
type PackOffer struct {
	Name     string
	Kind     FixingKind
	Wall     WallMake
	Diameter unit.Length
	Length   unit.Length
	Pieces   int
	Price    float64 // of the pack
	Place    string  // where it is sold
	Pos      Pos
}

// House is what lies between the street and the room, and the climate in it.
type House struct {
	Way     []Passage
	Climate Climate
	Pos     Pos
}

// Passage is one step of the way in.
type Passage struct {
	Name     string
	Kind     string // one of PassageKinds
	Width    unit.Length
	Height   unit.Length
	Turn     unit.Length // width of the way after the turn
	Pitch    unit.Angle
	Length   unit.Length
	Diagonal unit.Length
	Pos      Pos
}

// PassageKinds lists the steps of a way in.
var PassageKinds = []string{"door", "corridor turn", "stair", "lift", "car"}
