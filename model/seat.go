package model

import (
	"fmt"

	"slabwright/model/calc/body"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Seat is a place at a worktop where people sit: its middle along the slab's
// back edge from the left end.
type Seat struct {
	Name   string
	At     string // slab
	Centre unit.Length
	People []Person
	Line   string
}

// Widths and depths of leg room that do not depend on the person.
const (
	legWidth   unit.Length = 600 // German office practice: leg room 600 wide
	footHeight unit.Length = 120 // EN 527-1: foot room 120 high ...
	footDepth  unit.Length = 800 // ... to a depth of 800
)

// SitAt keeps the leg room of everybody in the list free under a slab. Without
// people the room serves 5th percentile women to 95th percentile men.
func (d *Design) SitAt(name, slab string, centre unit.Length, people []Person) {
	s := Seat{Name: name, At: slab, Centre: centre, People: people, Line: callLine()}
	part, bad := d.slab(slab)
	if bad == nil {
		front := part.Slab.Front() // runs from right to left
		if !inside(centre, front.End.X, front.Start.X) {
			bad = faults{faultf("seat %q: its middle is %s from the left end of %q, whose front is %.0f mm long", name, inWords(centre), slab, float64(front.Start.X-front.End.X))}
		}
	}
	if bad != nil {
		for _, f := range bad {
			d.report("", f)
		}
		return
	}
	if len(people) == 0 {
		people = []Person{{Name: "anybody"}}
	}
	d.Seats = append(d.Seats, s)
	for _, p := range people {
		legs, err := LegRoomOf(p)
		if err != nil {
			d.report("", faultf("%s: %v", p.Name, err))
			continue
		}
		d.Zones = append(d.Zones, legs.zones(d.Room, part, s)...)
	}
}

// LegRoom is the space that a sitting person's legs need under a worktop whose
// front edge touches the belly.
type LegRoom struct {
	Person    string
	Thigh     unit.Length // height above the floor up to the knees' depth
	KneeDepth unit.Length
	Foot      unit.Length // height beyond the knees
	FootDepth unit.Length
	Width     unit.Length
	Elbow     unit.Length // surface at elbow height
	SDThigh   unit.Length
	SDElbow   unit.Length
	Assumed   []find.Assumption
}

// LegRoomOf estimates the leg room of a person; own measures take the place of
// estimates. Somebody not described gets the 95th percentile of everybody.
func LegRoomOf(p Person) (LegRoom, error) {
	b := p.Body()
	s, err := b.Sitting()
	if err != nil {
		return LegRoom{}, err
	}
	shoe, from := p.ShoeOf()
	r := LegRoom{
		Person:    p.Name,
		Thigh:     max(s.ThighTop.Ample(), s.Knee.Ample()) + shoe + body.OverThigh.Value,
		KneeDepth: s.BellyToKnee.Ample() + body.BeforeKnee.Value,
		Foot:      footHeight, FootDepth: footDepth,
		Width:   max(legWidth, s.HipBreadth.Ample()+2*body.Beside.Value),
		Elbow:   s.Elbow.Mean + shoe,
		SDThigh: s.ThighTop.SD, SDElbow: s.Elbow.SD,
	}
	what := fmt.Sprintf("thigh top %.0f mm above the floor, barefoot (%s", float64(s.ThighTop.Ample()), s.ThighTop.Basis)
	if s.ThighTop.SD > 0 {
		what += fmt.Sprintf("; sd %.0f", float64(s.ThighTop.SD))
	}
	what += ")"
	r.Assumed = []find.Assumption{
		{What: what, Source: s.ThighTop.Source},
		{What: fmt.Sprintf("shoe %.0f mm", float64(shoe)), Source: from},
		{What: fmt.Sprintf("%.0f mm to move the thigh", float64(body.OverThigh.Value)), Source: body.OverThigh.Source},
		{What: fmt.Sprintf("leg room %.0f wide, knees %.0f deep, feet %.0f high to a depth of %.0f", float64(r.Width), float64(r.KneeDepth), float64(r.Foot), float64(r.FootDepth)), Source: "EN 527-1 foot room; German office practice for the width"},
	}
	if s.ThighTop.Extrapolated {
		r.Assumed = append(r.Assumed, find.Assumption{What: "this stature or mass is outside what was measured: extrapolated, add one more finger's breadth", Source: s.ThighTop.Source})
	}
	return r, nil
}

// Body is the person for the estimates of the body, own measures included.
func (p Person) Body() body.Person {
	b := body.Person{Stature: p.Stature, Mass: p.Mass, Sex: body.Sex(p.Sex), Own: map[body.Dimension]unit.Length{}}
	for d, v := range map[body.Dimension]unit.Length{
		body.ThighClearance: p.Thigh, body.Knee: p.Knee, body.Popliteal: p.Seat, body.ElbowRest: p.Elbow,
		body.HipBreadth: p.Hips, body.ButtockKnee: p.Upper, body.Eye: p.Eye, body.StandingElbow: p.Stand,
	} {
		if v > 0 {
			b.Own[d] = v
		}
	}
	return b
}

// ShoeOf is how much the soles of a person add to every height, and where that
// comes from.
func (p Person) ShoeOf() (thickness unit.Length, source string) {
	if p.Shoe > 0 {
		return p.Shoe, "as told"
	}
	a := body.Shoe(body.Sex(p.Sex))
	return a.Value, a.Source
}

// Zone is a space that is kept free, made of prisms in the room's axes. Floor
// is where its height counts from.
type Zone struct {
	Name    string
	Person  string
	Seat    string
	Slab    string // the worktop that it lies under
	Kind    ZoneKind
	Plan    geom.Region
	Floor   unit.Length
	Height  unit.Length // needed above the floor
	SD      unit.Length
	Assumed []find.Assumption
	Line    string
}

// ZoneKind tells what a zone is for.
type ZoneKind string

// Kinds of zones.
const (
	ThighZone ZoneKind = "thighs and knees"
	FootZone  ZoneKind = "feet"
	OtherZone ZoneKind = "kept free"
)

// Solid is the zone as a prism.
func (z Zone) Solid() geom.Solid { return geom.Prism(z.Plan, z.Floor, z.Floor+z.Height, z.Name) }

// zones places the leg room under a slab.
func (r LegRoom) zones(room *Room, slab *Part, s Seat) []Zone {
	sp := slab.Slab
	f := sp.Front()
	front := geom.Through(f.End, f.Start) // left to right
	t := float64((s.Centre - front.P.X) / front.D.X)
	mid := front.P.Lerp(front.P.Add(front.D), t)
	box := func(near, far unit.Length) geom.Region {
		along, in := front.D.Unit(), front.D.Unit().Left()
		corner := func(x, y unit.Length) geom.Vec {
			return mid.Add(along.Mul(float64(x))).Add(in.Mul(float64(y)))
		}
		return geom.Polygon(corner(-r.Width/2, near), corner(r.Width/2, near), corner(r.Width/2, far), corner(-r.Width/2, far)).
			Place(geom.Pose{At: sp.Pose.At, Turn: sp.Pose.Turn})
	}
	floor := room.FloorAt(sp.Pose.Plan(mid))
	zone := func(kind ZoneKind, near, far, height unit.Length) Zone {
		return Zone{Name: fmt.Sprintf("%s of %s at %s", kind, r.Person, s.Name), Person: r.Person, Seat: s.Name, Slab: slab.ID, Kind: kind,
			Plan: box(near, far), Floor: floor, Height: height, SD: r.SDThigh, Assumed: r.Assumed, Line: s.Line}
	}
	var bulge unit.Length // a natural edge keeps the belly further out
	for _, n := range f.Natural {
		bulge = max(bulge, n.Top, n.Under)
	}
	return []Zone{zone(ThighZone, -bulge, r.KneeDepth, r.Thigh), zone(FootZone, r.KneeDepth, r.FootDepth, r.Foot)}
}
