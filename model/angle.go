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
	setGiven          bool
	freeEnd           unit.Length
	clear             unit.Length
	mitred            bool
	fastened
	faults faults
}

// Angle is a steel angle of a section. Its seat leg carries the slab, its wall
// leg hangs down from the seat unless LegUp is said.
func Angle(s stock.AngleSection) AnglePiece {
	p := AnglePiece{section: s, clear: 3, freeEnd: 40}
	if !(s.Thickness > 0 && s.Leg > s.Thickness && s.Leg < 1000) {
		p.faults = faults{faultf("an angle section without legs: take one such as stock.L50x50x6")}
	}
	return p
}

// Along puts the heel of the angle on a wall.
func (p AnglePiece) Along(w *Wall) AnglePiece {
	p.wall = w
	p.faults = p.faults.and(w.bound().faults...)
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

// GapBehind is the gap between a slab and its wall when wall legs of a section
// stand up in it: the leg, and behind the slab's edge the gap that is wanted, or
// what the root of the angle and the heads of its anchors need.
func GapBehind(s stock.AngleSection, anchorHole, gap unit.Length) unit.Length {
	a, _ := stock.AnchorThrough(anchorHole)
	return s.Thickness + max(gap, s.Root, a.Head+1)
}

// ShorterBy makes the angle shorter than its run by a round amount and centres
// it, as a yard is often told. ClearOf finds what is really needed.
func (p AnglePiece) ShorterBy(l unit.Length) AnglePiece {
	p.shorter, p.shorterGiven = l, true
	p.faults = p.faults.within("length by which the angle is shorter", l, 0, 2000)
	return p
}

// SetBack keeps the ends at fixed distances from the ends of the run.
func (p AnglePiece) SetBack(left, right unit.Length) AnglePiece {
	p.setLeft, p.setRight, p.setGiven = left, right, true
	p.faults = p.faults.within("set-back of the left end", left, 0, 5000).within("set-back of the right end", right, 0, 5000)
	return p
}

// FreeEnd keeps an end that meets no corner back from the slab's edge.
func (p AnglePiece) FreeEnd(l unit.Length) AnglePiece {
	p.freeEnd = l
	p.faults = p.faults.within("set-back of a free end", l, 0, 2000)
	return p
}

// ClearOf sets each end back from its corner until it clears, by the gap, the
// angles that are already in the design there and the neighbouring wall.
func (p AnglePiece) ClearOf(gap unit.Length) AnglePiece {
	p.clear = gap
	p.faults = p.faults.within("gap between angles in a corner", gap, 0, 200)
	return p
}

// Mitred cuts the ends that run into inside corners along the middle of the corner,
// so that two such angles meet there with the gap of ClearOf between their cuts,
// instead of one giving way to the other.
func (p AnglePiece) Mitred() AnglePiece {
	p.mitred = true
	return p
}

// Anchored drills the wall leg; holes give way to studs, keep-outs and ends.
func (p AnglePiece) Anchored(a Anchors) AnglePiece {
	p.anchors, p.anchorsLine = &a, callLine()
	p.faults = a.within(p.faults)
	return p
}

// ScrewedUp drills the seat leg for screws into the slab and the pilot holes
// into the slab's underside.
func (p AnglePiece) ScrewedUp(s Screws) AnglePiece {
	p.screws, p.screwsLine = &s, callLine()
	p.faults = s.within(p.faults)
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
	if p.mitred && (p.shorterGiven || p.setGiven) {
		bad = bad.and(faultf("angle %q is Mitred and has a ShorterBy or a SetBack: only one of them can decide how long it is (in ready designs leg_ends and shorter_by)", id))
	}
	if p.shorterGiven && p.setGiven {
		bad = bad.and(faultf("angle %q has a ShorterBy and a SetBack: only one of them can decide how long it is", id))
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
	if !ok { // behind a wide gap only the toe may lie under the slab
		r, ok = d.runOn(p.wall, slab, p.section.Leg-1)
	}
	if !ok {
		return nil, faults{faultf("slab %q does not reach the wall %q, so an angle there carries nothing", p.under, p.wall.Name)}
	}
	a := &AnglePart{Mounted: Mounted{Wall: p.wall, Seat: seat, Under: p.under}, Section: p.section, LegUp: p.legUp}
	a.Left.SetBack, a.Right.SetBack = p.ends(d, r, a)
	a.Start = r.start + a.Left.SetBack
	a.Length = wholeDown(r.end - a.Right.SetBack - a.Start)
	a.Right.SetBack = r.end - a.Start - a.Length
	if !(a.Length >= 2*p.section.Leg) {
		return nil, faults{faultf("angle %q would be %s long: too short to be fixed; leave it out or choose smaller set-backs", id, inWords(max(a.Length, 0)))}
	}
	part := &Part{Kind: KindAngle, Material: "steel S235", Angle: a, Bears: []string{p.under, p.wall.Name}}
	if c, ok := d.cutOf(id); ok {
		part.Cut, bad = a.cutTo(c, r)
	}
	bad = bad.and(p.drill(slab, id, part)...)
	part.build(id)
	return part, bad
}

// run is the stretch of a wall along which a slab lies; corner tells whether
// it reaches the wall's corner at that end.
type run struct {
	start, end              unit.Length
	leftCorner, rightCorner bool
}

// runOn finds the stretch: where a line beside the wall, so far into the room,
// lies under the slab. It snaps to a corner of the room when it comes
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
func (p AnglePiece) ends(d *Design, r run, a *AnglePart) (left, right unit.Length) {
	switch {
	case p.shorterGiven:
		return p.shorter / 2, p.shorter / 2
	case p.setGiven:
		return p.setLeft, p.setRight
	}
	left, right = d.cornerEnds(r, a, p.clear, p.freeEnd)
	if p.mitred && r.leftCorner {
		left = p.mitre(a, true, left)
	}
	if p.mitred && r.rightCorner {
		right = p.mitre(a, false, right)
	}
	return left, right
}

// wholeDown gives whole millimetres, never more: a yard saws to a millimetre,
// and what is over stays at the right end.
func wholeDown(l unit.Length) unit.Length { return unit.Length(math.Floor(float64(l) + 0.02)) }

// Pose is the angle's own axes in the room: x along the heel from the left
// end, y towards the wall, z up from the seat face.
func (a *AnglePart) Pose() geom.Pose {
	l := a.Wall.Hull(a.Levels())
	return geom.Pose{At: l.P.Add(l.D.Unit().Mul(float64(a.Start))).Up(a.Seat), Turn: l.D.Angle()}
}

// Levels gives the heights of its lower and its upper end above the floor.
func (a *AnglePart) Levels() (low, high unit.Length) {
	if a.LegUp {
		return a.Seat - a.Section.Thickness, a.Seat + a.Section.Leg - a.Section.Thickness
	}
	return a.Seat - a.Section.Leg, a.Seat
}

// Deep is how far the seat leg stands out from the heel.
func (a *AnglePart) Deep() unit.Length { return a.Section.Leg }

// Profile is the section of the angle.
func (a *AnglePart) Profile() string { return a.Section.Name }

// HeightOf is the height of a hole of the wall leg above the floor.
func (a *AnglePart) HeightOf(h BracketHole) unit.Length {
	if a.LegUp {
		return a.Seat - a.Section.Thickness + h.FromHeel
	}
	return a.Seat - h.FromHeel
}

// grows is how far a slot may grow from the middle of its hole.
func (a *AnglePart) grows(h BracketHole, at unit.Length) (heel, toe unit.Length) {
	return at - h.Dia/2 - a.Section.Thickness - a.Section.Root, a.Section.Leg - at - toeFactor*h.Dia
}

// Title is how a shop names the bar: section and length.
func (a *AnglePart) Title() string {
	return fmt.Sprintf("%s x %.1f", a.Section.Name, float64(a.Length))
}

// LegBelow is how far brackets hang below the underside of a slab.
func (d *Design) LegBelow(slab string) unit.Length {
	var below unit.Length
	for _, p := range d.BracketsUnder(slab) {
		low, _ := p.Bracket().Levels()
		below = max(below, p.Bracket().On().Seat-low)
	}
	return below
}
