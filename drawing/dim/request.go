package dim

import (
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Request is one thing to be said about a view: Linear, Chain, Running, Across,
// Angle, Diameter, Radius, Note, Balloon, Level, Datum or Caption. Points and
// lengths are millimetres of the thing drawn, in the axes of the view.
type Request interface{ points() []geom.Vec }

// Direction is the direction of a dimension line.
type Direction uint8

// Directions: Aligned runs from the first point to the last.
const (
	Horizontal Direction = iota
	Vertical
	Aligned
)

// Side is the side of the view where dimension lines stand.
type Side uint8

// Sides. Auto takes the side where the lines are shortest and cross least. A
// side that does not go with the direction counts as Auto.
const (
	Auto Side = iota
	Below
	Above
	LeftOf
	RightOf
)

// Label is what is written. The measured value stands in it unless Text is set.
type Label struct {
	Text      string // instead of the value
	Prefix    string // before the value: "Ø", "R", "4 x "
	Suffix    string // after value and tolerance
	Tolerance string // after the value: "+0/-2", "±1"
	Reference bool   // in brackets: a size that follows from others
}

// Linear is the distance of two points in a direction, its line outside the view.
type Linear struct {
	A, B geom.Vec
	Dir  Direction
	Side Side
	Label
}

// Chain is a row of distances from each point to the next, on one line. Labels
// may be missing; the first belongs to the first link in reading direction.
// Give no overall size beside a chain without bracketing a link.
type Chain struct {
	Points []geom.Vec
	Dir    Direction
	Side   Side
	Labels []Label
}

// Running is a row of distances from one datum on one line, each value at its
// arrow and turned along its extension line. From names the datum; Labels may
// be missing, the first belongs to the first point.
type Running struct {
	Datum  geom.Vec
	From   string
	Points []geom.Vec
	Dir    Direction
	Side   Side
	Labels []Label
}

// Across is a dimension whose line runs from point to point through the view:
// a diagonal, a clear width at some depth.
type Across struct {
	A, B geom.Vec
	Label
}

// Angle is the angle, below 180 degrees, between the arms from Vertex to A and
// from Vertex to B.
type Angle struct {
	Vertex, A, B geom.Vec
	Label
}

// Diameter is the size of one or more holes: a leader to one circle. Count
// above 1 is written before the size.
type Diameter struct {
	Centre geom.Vec
	Dia    unit.Length
	Count  int
	Label
}

// Radius is the radius of an arc that runs from angle From over Sweep; the
// leader touches it where there is room.
type Radius struct {
	Centre      geom.Vec
	R           unit.Length
	From, Sweep unit.Angle
	Label
}

// Note is a text with a leader. The leader ends in a dot inside an area, in an
// arrow on an edge.
type Note struct {
	At     geom.Vec
	Lines  []string
	OnEdge bool
	Height unit.Length // on paper; zero takes the height of the style
}

// Balloon is a ringed item number outside the view, in a row or column with the
// others.
type Balloon struct {
	At     geom.Vec
	Number string
	OnEdge bool
}

// Level is a height written beside the view, on a line from the point. Value
// is the height above the floor level that the sheet names.
type Level struct {
	At    geom.Vec
	Value unit.Length
	Side  Side // LeftOf, RightOf or Auto
	Label
}

// Datum marks the edge from A to B as a datum edge: a filled triangle on it and
// a boxed letter.
type Datum struct {
	A, B   geom.Vec
	Letter string
}

// Caption is a text inside a region, as near to its middle as there is room.
type Caption struct {
	Loop   []geom.Vec
	Lines  []string
	Height unit.Length // on paper; zero takes the height of the style
	Bold   bool
}

func (q Linear) points() []geom.Vec   { return []geom.Vec{q.A, q.B} }
func (q Chain) points() []geom.Vec    { return q.Points }
func (q Running) points() []geom.Vec  { return append([]geom.Vec{q.Datum}, q.Points...) }
func (q Across) points() []geom.Vec   { return []geom.Vec{q.A, q.B} }
func (q Angle) points() []geom.Vec    { return []geom.Vec{q.Vertex, q.A, q.B} }
func (q Diameter) points() []geom.Vec { return []geom.Vec{q.Centre, geom.V(q.Dia, 0)} }
func (q Radius) points() []geom.Vec {
	return []geom.Vec{q.Centre, geom.V(q.R, 0), geom.V(unit.Length(q.From), unit.Length(q.Sweep))}
}
func (q Note) points() []geom.Vec    { return []geom.Vec{q.At} }
func (q Balloon) points() []geom.Vec { return []geom.Vec{q.At} }
func (q Level) points() []geom.Vec   { return []geom.Vec{q.At, geom.V(q.Value, 0)} }
func (q Datum) points() []geom.Vec   { return []geom.Vec{q.A, q.B} }
func (q Caption) points() []geom.Vec { return q.Loop }
