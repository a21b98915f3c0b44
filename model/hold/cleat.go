package hold

import (
	"math"

	"slabwright/model"
	"slabwright/model/calc/anchor"
	"slabwright/model/calc/batten"
	"slabwright/model/calc/plate"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// onCleat puts the slab on a cleat: at every station a strip of wood that does not
// bend, touched at three places of its depth, pressed together as the slab is: each
// over half of its own thickness. Screws as drawn pull.
func onCleat(a *plate.Assembly, n int, slab, part *model.Part) support {
	c, wood := part.Cleat, a.Plates[n]
	s := support{part: part}
	strip := c.Wide / 3
	beyond := spread(slab, c, strip)
	firm := 1 / (1/yielding(wood) + float64(c.High)/2/weakest().ModulusOver) // N/mm per mm2
	steps := max(2, int(math.Ceil(float64(c.Length/stationStep))))
	for i := range steps + 1 {
		st := station{along: c.Length * unit.Length(i) / unit.Length(steps), width: c.Length / unit.Length(steps)}
		if i == 0 || i == steps {
			st.width /= 2
		}
		for k := range 3 {
			out := strip * (unit.Length(k) + 0.5)
			at := slab.Slab.Pose.Unplan(c.Pose().Plan(geom.V(st.along, -out)))
			if !wood.Outline.Contains(at) {
				continue
			}
			area := unit.Area(st.width * strip)
			st.points = append(st.points, bearing{link: len(a.Links), fromHeel: out, area: area + unit.Area(st.width*beyond), at: at})
			a.Links = append(a.Links, plate.Link{On: plate.Spot{Plate: n, At: at}, Stiffness: firm * float64(area), Starts: k == 2})
		}
		if len(st.points) > 0 {
			s.stations = append(s.stations, st)
		}
	}
	for _, h := range c.In(model.SeatLeg) {
		at, thread := threadIn(slab, c, h)
		s.screws = append(s.screws, pulling(a, n, h, at, thread))
	}
	return s
}

// weakest is the class that is taken for the stiffness of cleats, whatever their
// wood: a soft batten spreads its load less over its anchors, and sinks more.
func weakest() stock.Class {
	c, err := stock.ClassByName(stock.Ungraded)
	if err != nil {
		panic(err) // the class is one of ours
	}
	return c
}

// battenOf is a cleat on its anchors: it bends up and down, and twists.
func battenOf(c *model.CleatPart) anchor.Bar {
	cl, s := weakest(), batten.Section{Wide: c.Wide, High: c.High}
	return anchor.Bar{Bending: cl.ModulusAlong * s.Inertia(), Twist: cl.ShearModulus * s.Torsion(), Anchor: anchorStiffness}
}
