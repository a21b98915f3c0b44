package model

import (
	"fmt"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/survey"
)

// Name tells where the floor was read.
func (m FloorMark) Name() string {
	switch {
	case m.Wall == "":
		return m.Corner
	case m.Before == 0:
		return fmt.Sprintf("%s at %.0f", m.Wall, float64(m.Along))
	}
	return fmt.Sprintf("%.0f before %s at %.0f", float64(m.Before), m.Wall, float64(m.Along))
}

// where is Name with what is named.
func (m FloorMark) where() string {
	if m.Wall == "" {
		return fmt.Sprintf("corner %q", m.Corner)
	}
	return m.Name()
}

// floorPlace is where in the room a height of the floor was read.
func (r *Room) floorPlace(m FloorMark) (geom.Vec, bool) {
	if m.Wall == "" {
		c, ok := r.Corner(m.Corner)
		return c.At, ok
	}
	w := r.Wall(m.Wall)
	if w.Index < 0 {
		return geom.Vec{}, false
	}
	along := m.Along
	if w.countsFromRight {
		along = w.Length() - along
	}
	u := w.Chord().D.Unit()
	return w.From.At.Add(u.Mul(float64(along))).Sub(u.Left().Mul(float64(m.Before))), true
}

// levels tells how well the floor's heights are known: each mark is a rise from
// the mark at height 0, or else from the first one, with its own spread or that
// of a level carried over that distance.
func (r *Room) levels(p RoomPlan) []survey.Level {
	if len(p.Floor) == 0 {
		return nil
	}
	datum := p.Floor[max(0, slices.IndexFunc(p.Floor, func(m FloorMark) bool { return m.Height == 0 && m.SD == 0 }))]
	n := survey.LevelNet{Datum: survey.Point(datum.Name()), Height: datum.Height, Accuracy: p.Accuracy}
	from, _ := r.floorPlace(datum)
	for _, m := range p.Floor {
		if m.Name() == datum.Name() {
			continue
		}
		to, _ := r.floorPlace(m)
		sd := m.SD
		if sd == 0 {
			sd = p.Accuracy.Rise(to.Sub(from).Len())
		}
		n.Rises = append(n.Rises, survey.Rise{From: n.Datum, To: survey.Point(m.Name()), Rise: m.Height - datum.Height, SD: sd})
	}
	l, err := survey.AdjustLevels(n)
	if err != nil {
		return nil // NewRoom has checked names and heights
	}
	return l.Points
}
