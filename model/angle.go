package model

import (
	"fmt"
	"math"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// AnglePiece describes a steel angle screwed to a wall under a slab. It is an
// immutable value.
type AnglePiece struct {
	section           stock.AngleSection
	wall              *Wall
	under             string
	legUp             bool
	shorter           unit.Length
	shorterGiven      bool
	setLeft, setRight unit.Length
	freeEnd           unit.Length
	clear             unit.Length
	anchors           *Anchors
	screws            *Screws
	faults            faults
}

// Anchors are the wall fixings of an angle: diameter of the hole in the steel,
// largest pitch, distance of the first from each end.
type Anchors struct{ Hole, Pitch, End unit.Length }

// Screws are the wood screws up into the slab: hole diameter in the steel, slot
// length beyond the diameter (across the grain the wood moves), largest pitch,
// distance from each end, pilot diameter and how far the screw goes into the
// wood.
type Screws struct {
	Hole, Slot, Pitch, End unit.Length
	Pilot, Into            unit.Length
}

// Angle is a steel angle of a section. Its seat leg carries the slab, its wall
// leg hangs down from the seat unless LegUp is said.
func Angle(s stock.AngleSection) AnglePiece { return AnglePiece{section: s, clear: 3, freeEnd: 40} }

// Along puts the heel of the angle on a wall.
func (p AnglePiece) Along(w *Wall) AnglePiece {
	p.wall = w
	p.faults = p.faults.and(w.faults...)
	return p
}

// Under lets the angle carry a slab that is already in the design; it runs as
// far along the wall as the slab does.
func (p AnglePiece) Under(slab string) AnglePiece {
	p.under = slab
	return p
}

// LegUp turns the wall leg upwards behind the slab.
func (p AnglePiece) LegUp() AnglePiece {
	p.legUp = true
	return p
}

// ShorterBy makes the angle shorter than its run by a round amount and centres
// it, as a yard is often told. ClearOf finds what is really needed.
func (p AnglePiece) ShorterBy(l unit.Length) AnglePiece {
	p.shorter, p.shorterGiven = l, true
	if !(l >= 0 && l < 2000) {
		p.faults = p.faults.and(faultf("an angle shorter by %.4g mm: 0 to 2000 mm can be described", float64(l)))
	}
	return p
}

// SetBack keeps the ends at fixed distances from the ends of the run.
func (p AnglePiece) SetBack(left, right unit.Length) AnglePiece {
	p.setLeft, p.setRight = left, right
	return p
}

// FreeEnd keeps an end that meets no corner back from the slab's edge.
func (p AnglePiece) FreeEnd(l unit.Length) AnglePiece {
	p.freeEnd = l
	return p
}

// ClearOf sets each end back from its corner until it clears, by the gap, the
// angles that are already in the design there and the neighbouring wall.
func (p AnglePiece) ClearOf(gap unit.Length) AnglePiece {
	p.clear = gap
	return p
}

// Anchored drills the wall leg; holes give way to studs, keep-outs and ends.
func (p AnglePiece) Anchored(a Anchors) AnglePiece {
	p.anchors = &a
	if !(a.Pitch >= 50 && a.Hole > 0 && a.End >= 0) {
		p.faults = p.faults.and(faultf("anchors need a hole above 0 and a pitch of 50 mm or more"))
	}
	return p
}

// ScrewedUp drills the seat leg for screws into the slab and the pilot holes
// into the slab's underside.
func (p AnglePiece) ScrewedUp(s Screws) AnglePiece {
	p.screws = &s
	if !(s.Pitch >= 50 && s.Hole > 0 && s.Slot >= 0 && s.End >= 0) {
		p.faults = p.faults.and(faultf("screws need a hole above 0, a slot of 0 or more and a pitch of 50 mm or more"))
	}
	return p
}

func (p AnglePiece) place(d *Design, id string) (*Part, faults) {
	bad := p.faults
	if p.wall == nil {
		bad = bad.and(faultf("angle %q needs a wall: Along(room.Wall(...))", id))
	}
	if p.under == "" {
		bad = bad.and(faultf("angle %q needs a slab to carry: Under(...)", id))
	}
	if len(bad) > 0 {
		return nil, bad
	}
	slab, bad := d.slab(p.under)
	if bad != nil {
		return nil, bad
	}
	seat := slab.Slab.Top - slab.Slab.Thickness
	r, ok := d.runOn(p.wall, slab, p.section.Leg/2)
	if !ok {
		return nil, faults{faultf("slab %q does not reach the wall %q, so an angle there carries nothing", p.under, p.wall.Name)}
	}
	a := &AnglePart{Section: p.section, Wall: p.wall, LegUp: p.legUp, Seat: seat, Under: p.under}
	a.Left.SetBack, a.Right.SetBack = p.ends(d, r, seat)
	a.Start = r.start + a.Left.SetBack
	a.Length = wholeDown(r.end - a.Right.SetBack - a.Start)
	a.Right.SetBack = r.end - a.Start - a.Length
	if !(a.Length >= 2*p.section.Leg) {
		return nil, faults{faultf("angle %q would be %.1f mm long: too short to be fixed; leave it out or choose smaller set-backs", id, float64(a.Length))}
	}
	part := &Part{Kind: KindAngle, Material: "steel S235", Angle: a, Bears: []string{p.under, p.wall.Name}}
	p.drill(d, slab, id, a)
	part.Bodies = []Body{{Name: id, Solid: a.solid(), Material: "steel S235", Density: stock.Steel, Colour: SteelColour}}
	return part, nil
}

// run is the stretch of a wall along which a slab lies; corner tells whether
// it reaches the wall's corner at that end.
type run struct {
	start, end              unit.Length
	leftCorner, rightCorner bool
}

// runOn finds the stretch: where a line beside the wall, half a leg into the
// room, lies under the slab. It snaps to a corner of the room when it comes
// within a leg and a hand's breadth of it.
func (d *Design) runOn(w *Wall, slab *Part, in unit.Length) (run, bool) {
	chord := w.Chord()
	beside := chord.Shift(-in)
	spans := slab.Outline().Inside(beside.P, beside.P.Add(beside.D))
	if len(spans) == 0 {
		return run{}, false
	}
	l := w.Length()
	r := run{start: l * unit.Length(spans[0][0]), end: l * unit.Length(spans[len(spans)-1][1])}
	near := in + 40
	if r.start < near {
		r.start, r.leftCorner = 0, w.Previous() != nil
	}
	if r.end > l-near {
		r.end, r.rightCorner = l, w.Next() != nil
	}
	return r, r.end > r.start
}

// ends gives the set-backs of both ends of the run.
func (p AnglePiece) ends(d *Design, r run, seat unit.Length) (left, right unit.Length) {
	if p.shorterGiven {
		return p.shorter / 2, p.shorter / 2
	}
	end := func(atCorner bool, fixed unit.Length, corner func() unit.Length) unit.Length {
		switch {
		case fixed > 0:
			return fixed
		case atCorner:
			return corner()
		}
		return p.freeEnd
	}
	left = end(r.leftCorner, p.setLeft, func() unit.Length { return p.cornerSetBack(d, p.wall.Previous(), p.wall, true, seat) })
	right = end(r.rightCorner, p.setRight, func() unit.Length { return p.cornerSetBack(d, p.wall, p.wall.Next(), false, seat) })
	return left, right
}

// wholeDown gives whole millimetres, never more: a yard saws to a millimetre,
// and what is over stays at the right end.
func wholeDown(l unit.Length) unit.Length { return unit.Length(math.Floor(float64(l) + 0.02)) }

// Pose is the angle's own axes in the room: x along the heel from the left
// end, y towards the wall, z up from the seat face.
func (a *AnglePart) Pose() geom.Pose {
	low, high := a.Seat-a.Section.Leg, a.Seat
	if a.LegUp {
		low, high = a.Seat-a.Section.Thickness, a.Seat+a.Section.Leg-a.Section.Thickness
	}
	l := a.Wall.Hull(low, high)
	return geom.Pose{At: l.P.Add(l.D.Unit().Mul(float64(a.Start))).Up(a.Seat), Turn: l.D.Angle()}
}

// Title is how a shop names the bar: section and length.
func (a *AnglePart) Title() string {
	return fmt.Sprintf("%s x %.1f", a.Section.Name, float64(a.Length))
}
