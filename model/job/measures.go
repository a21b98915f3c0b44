package job

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/survey"
	"slabwright/model/unit"
)

// Measures is what to measure in a room for a preset, in the order of walking.
// The template of the job file and the measuring sheet both come from it, so
// that every line of the one has its box on the other. Sizes are those of a
// made-up room with right angles.
type Measures struct {
	Preset   string
	Corners  []string
	At       []geom.Vec // of the corners, the room in front of the back wall, at y below
	Inside   []bool     // corners of the room; the others stick out into it
	Walls    []string   // their names; wall i starts at corner i
	Closed   bool
	Base     [2]string
	Readings []Measure
	Faces    []FaceMeasure
	Floor    []string // corners at which the height of the floor is read
	Height   unit.Length
}

// Measure is one reading to take. Redundancy is its share, 0 to 1, that the
// other readings of the list check; CheckedBy are those that do most of it.
type Measure struct {
	survey.Reading
	Redundancy float64
	CheckedBy  []int
	Jointly    bool // no single one, only the others together
}

// FaceMeasure is a wall long enough to lay a straightedge and hang a plumb line
// on: places along it from its left corner, and heights above the floor.
type FaceMeasure struct {
	Wall  int
	Along []unit.Length
	Up    []unit.Length
}

// MeasuresFor lists what to measure for a preset: all walls, then what holds
// the room, then whatever helps most until every reading is checked and no slip
// that stays unseen can spoil the fit.
func MeasuresFor(p model.Preset) Measures {
	e := exampleRoom(p.Needs)
	m := Measures{Preset: p.Name, Corners: e.corners, Walls: e.walls, Closed: e.closed, Floor: e.corners, Height: 745}
	for i, at := range e.at {
		m.At = append(m.At, geom.V(unit.Length(at[0]), unit.Length(at[1])))
		m.Inside = append(m.Inside, e.inside(i))
	}
	m.Base = [2]string{e.corners[1], e.corners[2]}
	if n := len(e.corners); n > 4 && e.at[1][1] == e.at[n-2][1] {
		m.Base = [2]string{e.corners[1], e.corners[n-2]}
	}
	m.choose()
	m.rank()
	m.faces()
	return m
}

// inside says whether corner i is a corner of the room; ends of an open one are.
func (e example) inside(i int) bool {
	n := len(e.at)
	if !e.closed && (i == 0 || i == n-1) {
		return true
	}
	a, b, c := e.at[(i+n-1)%n], e.at[i], e.at[(i+1)%n]
	return (b[0]-a[0])*(c[1]-b[1])-(b[1]-a[1])*(c[0]-b[0]) < 0
}

// network is the made-up room as read.
func (m Measures) network() survey.Network {
	n := survey.Network{Closed: m.Closed, Base: [2]survey.Point{survey.Point(m.Base[0]), survey.Point(m.Base[1])}, Turns: map[survey.Point]survey.Turn{}}
	for i, c := range m.Corners {
		n.Chain = append(n.Chain, survey.Point(c))
		n.Turns[survey.Point(c)] = survey.Outside
		if m.Inside[i] {
			n.Turns[survey.Point(c)] = survey.Inside
		}
	}
	for _, r := range m.Readings {
		n.Readings = append(n.Readings, r.Reading)
	}
	return n
}

// mostMeasures bounds the list: nobody reads more in one go.
const mostMeasures = 24

// choose finds the readings.
func (m *Measures) choose() {
	n := len(m.Corners)
	for i := range m.Walls {
		m.add(survey.Reading{Kind: survey.Distance, Points: []survey.Point{survey.Point(m.Corners[i]), survey.Point(m.Corners[(i+1)%n])}})
	}
	m.always()
	for len(m.Readings) < mostMeasures {
		next, ok := m.next()
		if !ok || !m.add(next) {
			break
		}
	}
	slices.SortStableFunc(m.Readings, func(a, b Measure) int { return cmp.Compare(m.turnOf(a), m.turnOf(b)) })
}

// depths are how far before the back wall the width is measured: at the back, in
// the middle and at the front edge of a worktop. Common practice, no source.
var depths = []unit.Length{60, 350, 700}

// always adds what every room is measured by, between walls that face each
// other: the width at several depths, both
// diagonals, and 3-4-5 marks in both back corners,
// without which a slip in a side wall cannot be told from one in the diagonal.
func (m *Measures) always() {
	if len(m.Corners) < 4 {
		return
	}
	first, last := slices.Index(m.Corners, m.Base[0]), slices.Index(m.Corners, m.Base[1])
	m.across(first, last)
	m.add(survey.Reading{Kind: survey.Distance, Points: []survey.Point{m.name(first - 1), m.name(last)}})
	m.add(survey.Reading{Kind: survey.Distance, Points: []survey.Point{m.name(first), m.name(last + 1)}})
	m.squareOff(first)
	m.squareOff(last)
	if m.Closed {
		m.across(first-1, first)
	}
}

// name is that of corner i, counted round.
func (m *Measures) name(i int) survey.Point {
	n := len(m.Corners)
	return survey.Point(m.Corners[(i+n)%n])
}

// long is the length of the wall that starts at corner i, counted round.
func (m *Measures) long(i int) unit.Length {
	n := len(m.At)
	return m.At[(i+1+n)%n].Sub(m.At[(i+n)%n]).Len()
}

// across adds widths between the walls on both sides of two corners, as deep as
// these walls reach.
func (m *Measures) across(first, last int) {
	for _, d := range depths {
		if n := len(m.At); m.Inside[(first+n)%n] && m.Inside[last] && d < m.long(first-1) && d < m.long(last) {
			m.add(survey.Reading{Kind: survey.Width, A: d, Points: []survey.Point{m.name(first), m.name(last), m.name(first - 1), m.name(first), m.name(last), m.name(last + 1)}})
		}
	}
}

// squareOff adds 3-4-5 marks at an inside corner, the larger on the longer wall,
// where both walls reach so far.
func (m *Measures) squareOff(i int) {
	a, b := unit.Length(800), unit.Length(600)
	if m.long(i-1) < m.long(i) {
		a, b = b, a
	}
	if m.Inside[i] && a < m.long(i-1) && b < m.long(i) {
		m.add(survey.Reading{Kind: survey.SquareOff, A: a, B: b, Points: []survey.Point{m.name(i - 1), m.name(i), m.name(i + 1)}})
	}
}

// next is the reading that the list lacks most; false when it lacks none.
func (m *Measures) next() (survey.Reading, bool) {
	res, err := survey.Adjust(m.network())
	var trouble *survey.Problem
	if errors.As(err, &trouble) {
		return asked(trouble)
	}
	if res.Loose != nil {
		return asked(res.Loose)
	}
	v := res.Judge(survey.Options{Next: 1})
	enough := len(v.Unchecked) == 0
	for _, d := range v.Deciding {
		enough = enough && d.Damage <= model.SlipBearable
	}
	if enough || len(v.Next) == 0 {
		return survey.Reading{}, false
	}
	return v.Next[0].Reading, true
}

// asked is the first distance that a trouble asks for.
func asked(p *survey.Problem) (survey.Reading, bool) {
	if len(p.Measure) == 0 {
		return survey.Reading{}, false
	}
	return survey.Reading{Kind: survey.Distance, Points: p.Measure[0][:]}, true
}

// add puts a reading on the list with its value in the made-up room; false if
// it is there already.
func (m *Measures) add(r survey.Reading) bool {
	r.ID, r.SD, r.AngleSD = r.Name(), 0, 0
	if slices.ContainsFunc(m.Readings, func(o Measure) bool { return o.ID == r.ID }) {
		return false
	}
	r.Length = m.value(r)
	m.Readings = append(m.Readings, Measure{Reading: r})
	return true
}

// value is what a reading reads in the made-up room, to a tenth of a millimetre.
func (m *Measures) value(r survey.Reading) unit.Length {
	at := func(i int) geom.Vec { return m.At[slices.Index(m.Corners, string(r.Points[i]))] }
	v := 0.0
	switch r.Kind {
	case survey.Distance:
		v = float64(at(0).Sub(at(1)).Len())
	case survey.SquareOff:
		v = math.Hypot(float64(r.A), float64(r.B)) // all its corners are square
	case survey.Offset:
		v = at(2).Sub(at(1)).Unit().Cross(at(1).Sub(at(0)))
	case survey.Width:
		along := at(1).Sub(at(0)).Unit()
		v = math.Abs(along.Dot(at(2).Sub(at(4)))) // its side walls are square to it
	}
	return unit.Length(math.Round(v*10) / 10)
}

// turnOf is when a reading's turn comes: the walls from left to right, then
// across, widths, offsets from a string, 3-4-5 marks.
func (m *Measures) turnOf(r Measure) int {
	first := slices.Index(m.Corners, string(r.Points[0]))
	switch r.Kind {
	case survey.Distance:
		if slices.IndexFunc(m.Readings[:len(m.Walls)], func(w Measure) bool { return w.ID == r.ID }) >= 0 {
			return first
		}
		return 100 + first
	case survey.Width:
		return 200 + first
	case survey.Offset:
		return 300 + first
	}
	return 400 + first
}

// checks is the share of a reading's redundancy that must go with another one
// before that one is said to check it. Judgement.
const checks = 0.1

// start is where the corners of the made-up room are: leaving one reading out
// must not make another room of it.
func (m *Measures) start() map[survey.Point]geom.Vec {
	out := map[survey.Point]geom.Vec{}
	for i, c := range m.Corners {
		out[survey.Point(c)] = m.At[i]
	}
	return out
}

// rank computes how far each reading is checked, and by which: those without
// which its redundancy falls most.
func (m *Measures) rank() {
	res, err := survey.Adjust(m.network())
	if err != nil {
		return
	}
	for i := range m.Readings {
		m.Readings[i].Redundancy = res.Readings[i].Redundancy
	}
	type loss struct {
		by   int
		much float64
	}
	lost := make([][]loss, len(m.Readings))
	for j := range m.Readings {
		n := m.network()
		n.Readings, n.Start = slices.Delete(n.Readings, j, j+1), m.start()
		left, err := survey.Adjust(n)
		for i := range m.Readings {
			if i == j {
				continue
			}
			rest, k := 0.0, i
			if i > j {
				k--
			}
			if err == nil && left.Loose == nil {
				rest = left.Readings[k].Redundancy
			}
			if much := m.Readings[i].Redundancy - rest; much >= checks*m.Readings[i].Redundancy && m.Readings[i].Redundancy > 1e-6 {
				lost[i] = append(lost[i], loss{j, much})
			}
		}
	}
	for i, list := range lost {
		slices.SortStableFunc(list, func(a, b loss) int { return cmp.Compare(math.Round(1e6*b.much), math.Round(1e6*a.much)) })
		m.Readings[i].Jointly = len(list) == 0 || len(list) == len(m.Readings)-1
		for _, l := range list[:min(3, len(list))] {
			m.Readings[i].CheckedBy = append(m.Readings[i].CheckedBy, l.by)
		}
	}
}

// leastFace is the shortest wall that a straightedge tells something of.
const leastFace = 500 * unit.MM

// faces chooses where bow and lean of the walls are read: at the quarters, and
// from ankle to shoulder.
func (m *Measures) faces() {
	for i := range m.Walls {
		l := m.At[(i+1)%len(m.At)].Sub(m.At[i]).Len()
		if l < leastFace {
			continue
		}
		f := FaceMeasure{Wall: i, Up: []unit.Length{100, m.Height, 1400}}
		for _, t := range []float64{0.25, 0.5, 0.75} {
			f.Along = append(f.Along, unit.Length(10*math.Round(t*float64(l)/10)))
		}
		m.Faces = append(m.Faces, f)
	}
}
