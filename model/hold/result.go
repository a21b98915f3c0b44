package hold

import (
	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Statics is what the slabs of a design carry and what carries them.
type Statics struct {
	Loads   model.Loads // with all that was assumed
	Assumed []find.Assumption
	Slabs   []Slab
}

// Slab is one slab under all its loads.
type Slab struct {
	Part      string
	Class     stock.Class
	Thick     unit.Length
	Trouble   string // why nothing could be computed, "" if it was
	Falls     bool   // the trouble: it tips off by its own weight
	Tips      bool   // a person tips it off its supports
	TipsAt    geom.Vec
	Walked    bool // somebody may stand on it
	Cases     []Case
	Creep     float64       // k_def
	Years     unit.Length   // deflection after years where the daily case sinks most
	Span      unit.Length   // through the place of the largest deflection
	First     float64       // Hz, lowest natural frequency with what lies there most of the time
	Unknowns  int           // of the finest mesh
	Moved     float64       // share by which the largest deflection moved from the mesh before
	MovedTop  float64       // the same for the largest stress along the grain; of more than a hundredth Along holds an upper bound
	MovedOver float64       // the same across the grain
	Places    int           // places at which the person was put
	Contours  []Contour     // of the case in which a person stands worst; of a shelf, of what lies on it
	Joints    []model.Joint // with other slabs, as they were looked at
	Standing  geom.Vec      // where the person stands worst, in the room

	found     found    // of the sweep
	lowestOwn geom.Vec // where it sinks most, in the slab's own axes
}

// Point is the deflection at a place of the room, positive down.
type Point struct {
	At   geom.Vec
	Down unit.Length
}

// Kind tells what a load case is for.
type Kind string

// Kinds of load case. Service cases carry loads as they are, design cases loads
// times their partial factors.
const (
	OwnWeight    Kind = "own weight"
	Lasting      Kind = "lasting"       // service: own weight and what lies there most of the time
	Daily        Kind = "daily"         // service: own weight, things, all of the spread load
	PersonSinks  Kind = "person"        // service: a person where the slab sinks most
	PersonLifts  Kind = "person lifts"  // service: a person where a corner lifts most
	DesignWeight Kind = "design weight" // design: own weight alone
	DesignSpread Kind = "design spread" // design: own weight, things, spread load
	DesignPerson Kind = "design person" // design: a person where it is worst for something
)

// Case is one load case solved on the finest mesh.
type Case struct {
	Kind     Kind
	Worst    string // what a person stands worst for: "stress along the grain", or a carrier's id
	Design   bool
	KMod     float64
	Person   *geom.Vec   // where the person stands, in the room
	Total    float64     // N, all loads
	Lowest   Point       // of the plate on its bending seat legs; Steel comes on top
	Steel    unit.Length // the most that an angle below it sinks as a bar on its anchors
	Highest  Point       // negative Down where it lifts
	Along    Peak        // bending stress along the grain
	Across   Peak        // bending stress across the grain
	Pressure Peak        // of the wood on a bearing
	Runs     []Run
	Beside   []Run // of the carriers of slabs that are joined to this one
	Seams    []Seam
}

// Sinks is how far the slab sinks at most: as a plate on its seat legs, and with
// the most that one of its angles sinks between and at its anchors.
func (c Case) Sinks() unit.Length { return c.Lowest.Down + c.Steel }

// Peak is a stress and where it is, against its design strength.
type Peak struct {
	At       geom.Vec // in the room
	Value    float64  // N/mm2
	Strength float64  // N/mm2, design value f k_mod / gamma_M
}

// Used is the share of the strength.
func (p Peak) Used() float64 { return p.Value / p.Strength }

// Run is what one carrier takes in a load case.
type Run struct {
	Carrier  string      // id of the angle or rod
	Force    float64     // N, down on the carrier, screws taken off
	Along    unit.Length // of the pushing force, from the carrier's left end
	FromHeel unit.Length // of the pushing force: from the heel, of rods from the wall
	Line     []LineLoad
	Screws   []ScrewPull // those that pull
	BarSag   unit.Length // of an angle at its toe, between and at its anchors
	TipSag   unit.Length // of the toe of its seat leg, in the plate's deflection already
}

// LineLoad is what a strip of a carrier takes.
type LineLoad struct {
	Along    unit.Length // middle of the strip, from the carrier's left end
	Width    unit.Length
	Force    float64     // N
	FromHeel unit.Length // of the force
	Points   []PointLoad // of a rod: what each point of its bore presses
}

// PointLoad is a force at a distance from the heel, or from the wall.
type PointLoad struct {
	FromHeel unit.Length
	Force    float64 // N, below 0 where it lifts
}

// PerMM is the line load, N/mm.
func (l LineLoad) PerMM() float64 { return l.Force / float64(l.Width) }

// ScrewPull is what a screw holds down.
type ScrewPull struct {
	Hole  string
	Along unit.Length
	Force float64 // N
}

// Push is the sum of what presses on the carrier, N.
func (r Run) Push() float64 {
	var sum float64
	for _, l := range r.Line {
		sum += l.Force
	}
	return sum
}

// Peak is the strip with the largest line load.
func (r Run) Peak() LineLoad {
	var best LineLoad
	for _, l := range r.Line {
		if best.Width == 0 || l.PerMM() > best.PerMM() {
			best = l
		}
	}
	return best
}

// Of gives the slab of that id.
func (s *Statics) Of(part string) (Slab, bool) {
	for _, b := range s.Slabs {
		if b.Part == part {
			return b, true
		}
	}
	return Slab{}, false
}

// Case gives the first case of a kind.
func (b *Slab) Case(k Kind) (Case, bool) {
	for _, c := range b.Cases {
		if c.Kind == k {
			return c, true
		}
	}
	return Case{}, false
}

// Worst gives the case in which a measure is largest.
func (b *Slab) Worst(of func(Case) float64) (Case, bool) {
	var best Case
	found := false
	for _, c := range b.Cases {
		if !found || of(c) > of(best) {
			best, found = c, true
		}
	}
	return best, found
}
