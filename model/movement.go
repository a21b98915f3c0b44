package model

import (
	"fmt"
	"slices"

	"slabwright/model/calc/moisture"
	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Movement is how a slab swells and shrinks over the year, from the day it was
// fitted. Places are in the slab's own axes; the grain runs along x.
type Movement struct {
	Seasons
	Sawn          moisture.Sawn
	Across, Along moisture.Coefficient
	Held          Hold
	Edges         []EdgeTravel
	Screws        []ScrewTravel
	length, width unit.Length
}

// Hold is what keeps a slab in its place: the point that stands still.
type Hold struct {
	By     HoldKind
	At     geom.Vec
	Screws []string // those in round holes, as angle and hole
}

// HoldKind tells what holds a slab.
type HoldKind string

// What holds a slab. One that nothing holds may move to any side.
const (
	ByScrews HoldKind = "screws in round holes"
	ByRods   HoldKind = "rods"
	ByNone   HoldKind = "nothing"
)

// EdgeTravel is how far an edge goes out and in over the year, square to
// itself, where it goes furthest; at a joint both slabs count.
type EdgeTravel struct {
	Edge
	Out, In unit.Length
	Crossed bool // a joint with a slab whose grain runs across
}

// ScrewTravel is how far the wood carries a screw from where it was driven:
// along its slot towards Plus (the right end of the angle, or the wall) and
// Minus, and Beside it. Room is how far the hole in the steel lets it go.
type ScrewTravel struct {
	Through           *Part // its bracket
	Hole              BracketHole
	At                geom.Vec // where it is driven, in the slab's own axes
	Travel, Room      Way
	Beside, Clearance unit.Length
}

// Way is how far something goes to both sides.
type Way struct{ Plus, Minus unit.Length }

// Movement tells how a slab of a finished design moves.
func (d *Design) Movement(id string) (Movement, error) {
	p, bad := d.slab(id)
	if bad != nil {
		return Movement{}, fmt.Errorf("%s", bad[0].what)
	}
	m := d.moving(p)
	m.Held = d.holds[id]
	if m.Held.By == "" {
		m.Held.By = ByNone
	}
	m.Edges, m.Screws = d.edgesOf(m, p), d.screwsOf(m, p)
	return m, nil
}

// moving gives the coefficients of a slab and its seasons. A slab of which
// nobody told how it is sawn counts as flat sawn, which moves most.
func (d *Design) moving(p *Part) Movement {
	s := p.Slab.Species
	m := Movement{Seasons: d.climate.Seasons(), Sawn: d.climate.Sawn, Along: moisture.Lengthwise}
	if m.Sawn == "" {
		m.Sawn = moisture.Flat
		m.Assumed = append(m.Assumed, find.Assumption{What: "the slab is flat sawn, which moves most", Source: "no way of sawing in the job file"})
	}
	across, err := moisture.Across(moisture.Coefficient(s.Radial), moisture.Coefficient(s.Tangential), m.Sawn)
	if err != nil {
		panic(err) // the job file knows the ways to saw
	}
	m.Across = across
	m.Assumed = append(m.Assumed, find.Assumption{What: fmt.Sprintf("%s moves %.2f %% of its width for each per cent of moisture", s.Name, 100*float64(across)), Source: s.Source})
	m.length, m.width = p.Slab.Blank()
	return m
}

// Width and Length give how much the slab grows over its width and its length
// from the day of fitting to a moisture; below zero it shrinks.
func (m Movement) Width(to moisture.Content) unit.Length {
	return moisture.Change(m.width, m.Across, m.Fitting, to)
}

// Length is Width along the grain.
func (m Movement) Length(to moisture.Content) unit.Length {
	return moisture.Change(m.length, m.Along, m.Fitting, to)
}

// at is how far a place of the slab has gone when the wood has come to a
// moisture, in the slab's own axes.
func (m Movement) at(v geom.Vec, to moisture.Content) geom.Vec {
	off := v.Sub(m.Held.At)
	return geom.V(moisture.Change(off.X, m.Along, m.Fitting, to), moisture.Change(off.Y, m.Across, m.Fitting, to))
}

// span is how far an edge that runs from a to b goes along a direction n over
// the year: out and in. A slab that nothing holds may go all its way there.
func (m Movement) span(a, b, n geom.Vec) (out, in unit.Length) {
	for _, to := range []moisture.Content{m.Dry, m.Damp} {
		if m.Held.By == ByNone {
			all := m.Length(to)*abs(n.X) + m.Width(to)*abs(n.Y)
			out, in = max(out, all), max(in, -all)
			continue
		}
		for _, v := range []geom.Vec{a, b} {
			off := unit.Length(m.at(v, to).Dot(n))
			out, in = max(out, off), max(in, -off)
		}
	}
	return out, in
}

// edgesOf gives the travel of every edge. At a joint the other slab moves too.
func (d *Design) edgesOf(m Movement, p *Part) []EdgeTravel {
	var out []EdgeTravel
	for _, e := range p.Slab.Edges {
		n := e.End.Sub(e.Start).Unit().Left()
		t := EdgeTravel{Edge: e}
		t.Out, t.In = m.span(e.Start, e.End, n)
		if other := d.Part(e.To); e.Bound == ToPart && other != nil && other.Slab != nil {
			o := d.moving(other)
			o.Held = d.holds[other.ID]
			own := func(v geom.Vec) geom.Vec { return other.Slab.Pose.Unplan(p.Slab.Pose.Plan(v)) }
			turn := p.Slab.Pose.Turn - other.Slab.Pose.Turn
			closes, opens := o.span(own(e.Start), own(e.End), n.Turn(turn+180*unit.Degree))
			t.Out, t.In = t.Out+closes, t.In+opens
			t.Crossed = crossed(p, other)
		}
		out = append(out, t)
	}
	return out
}

// OpenJoint is the least gap, in tenths of a millimetre, at which a joint of a
// slab stays open over the year, each slab held where it is then held best.
// False when there is none up to 30 mm.
func (d *Design) OpenJoint(id, edge string) (unit.Length, bool) {
	for gap := unit.Length(0); gap <= 30; {
		trial := d.withGap(id, edge, gap)
		m, err := trial.Movement(id)
		if err != nil {
			return 0, false
		}
		need := gap
		for _, t := range m.Edges {
			if t.Name == edge {
				need = JointSpare + upTo(10*t.Out)/10
			}
		}
		if need <= gap {
			return gap, true
		}
		gap = need
	}
	return 0, false
}

// withGap is the same design with another gap at one edge, its slabs held
// anew. Nothing is moved.
func (d *Design) withGap(id, edge string, gap unit.Length) *Design {
	out := &Design{climate: d.climate, holds: map[string]Hold{}}
	for _, p := range d.Parts {
		if p.ID == id {
			slab, part := *p.Slab, *p
			slab.Edges = slices.Clone(slab.Edges)
			for i := range slab.Edges {
				if slab.Edges[i].Name == edge {
					slab.Edges[i].Gap = gap
				}
			}
			part.Slab = &slab
			p = &part
		}
		out.Parts = append(out.Parts, p)
	}
	for _, p := range out.Parts {
		if p.Slab != nil {
			out.holds[p.ID] = out.hold(p)
		}
	}
	return out
}
