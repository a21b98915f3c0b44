package bring

import (
	"strings"

	"slabwright/model"
	"slabwright/model/calc/lift"
	"slabwright/model/unit"
)

// Lift is one part set from trestles on its place.
type Lift struct {
	Part        *model.Part
	Mass        unit.Mass
	People      int // smallest team that keeps both the team's rule and the lifting equation, if four can
	Enough      bool
	Share       unit.Mass // of one of them
	Recommended unit.Mass // for one person in this task, 0: out of reach
	From, To    unit.Length
	Grip        string
	Grips       []Grip    // nil: no even places were found
	Trestles    []Trestle // nil: none were found
}

// Where hands are: trestles for the shop, and how far in front of the ankles the
// edge of a board is held. Common practice, no source.
const (
	Trestles unit.Length = 750
	heldOut  unit.Length = 350

	// a board longer than this is guided by two, whatever it weighs
	twoHanded unit.Length = 1500
)

type liftsKey struct{}

// LiftsOf are the parts of wood of a finished design, in the order of mounting,
// each held at its underside; worked out once.
func LiftsOf(d *model.Design) []Lift {
	return d.Once(liftsKey{}, func() any { return lifts(OrderOf(d)) }).([]Lift)
}

func lifts(order Order) []Lift {
	var out []Lift
	for _, w := range order {
		p := w.Part
		if p.Slab == nil {
			continue
		}
		l := Lift{Part: p, Mass: p.Mass(), From: Trestles, To: p.Slab.Top - p.Slab.Thickness, Grip: grip(p.Slab)}
		if w.Last() > 0 { // lifted over its place first
			l.To += w.Last()
		}
		l.People, l.Enough = lift.Hands(l.Mass)
		if long, _, _ := Size(p); long > twoHanded {
			l.People = max(l.People, 2)
		}
		l.Recommended = lift.Task{Out: heldOut, From: l.From, To: l.To, Grip: lift.Fair}.Recommended()
		for l.People < lift.MostHands && l.Recommended > 0 && l.Mass > l.Recommended*unit.Mass(l.People) {
			l.People++
		}
		if l.Grips = Grips(p, l.People); l.People == 3 && l.Grips == nil { // one of three would have half of it
			l.People = 4
			l.Grips = Grips(p, 4)
		}
		l.Share = l.Mass / unit.Mass(l.People)
		l.Trestles = OnTrestles(p)
		out = append(out, l)
	}
	return out
}

// grip says where a slab can be taken: at sawn edges, not at bark, and not where
// a groove has made its edge thin.
func grip(s *model.SlabPart) string {
	waney, grooved := false, false
	for _, e := range s.Edges {
		waney = waney || e.Waney
	}
	for _, f := range s.Features {
		grooved = grooved || f.Kind == model.Groove || f.Kind == model.CutOut
	}
	var not []string
	if waney {
		not = append(not, "by its natural edge, whose bark tears off")
	}
	if grooved {
		not = append(not, "over a groove, where it is thin")
	}
	if not == nil {
		return "under its sawn edges, a quarter of its length from each end"
	}
	return "under its sawn edges, a quarter of its length from each end; not " + strings.Join(not, ", nor ")
}
