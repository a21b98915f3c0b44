package geom

import (
	"errors"
	"fmt"
	"math"

	"slabwright/model/unit"
)

// AngleBar describes a length of rolled steel angle as EN 10056-1 draws it:
// sharp at the heel and at the outer edges of both toes, with a root fillet
// between the legs and toe radii on the inner edges.
//
// Its own axes: the heel lies along x and starts at x = 0, in the plane of the
// wall, y = 0. The seat leg is level and points to the right of the heel's
// direction, to y below 0, where the room is; RoomLeft turns it to the other
// side. The seat, the face that carries, is at z = 0: it is the outer face of
// the seat leg when the wall leg hangs below it, and the inner face when LegUp
// puts the wall leg above it, behind the slab. So the heel is at z = 0 with
// the leg down and at minus the thickness with the leg up.
type AngleBar struct {
	SeatWidth, WallWidth unit.Length // of the two legs, measured from the heel
	Thickness            unit.Length
	Root, Toe            unit.Length // radii; 0 for a sharp edge
	Length               unit.Length // along the heel
	Start, End           BarEnd
	LegUp, RoomLeft      bool
	Holes                []BarHole
	Chord                unit.Length // flattening of all rounds; 0 for 0.05 mm
}

// BarEnd is how an end is cut. Both angles are off square; they are positive
// when the edge of the leg is longer than the heel: Plan for the seat leg as
// seen from above, Slope for the wall leg as seen from the room.
type BarEnd struct{ Plan, Slope unit.Angle }

// BarLeg is one of the two legs of an angle.
type BarLeg int

// The legs of an angle.
const (
	SeatLeg BarLeg = iota // level, under the slab
	WallLeg               // upright, on the wall
)

func (l BarLeg) String() string {
	if l == WallLeg {
		return "wall leg"
	}
	return "seat leg"
}

// BarHole is a hole in a leg, bored square to it.
type BarHole struct {
	Name        string
	Leg         BarLeg
	X, FromHeel unit.Length // of its middle: along the heel from its start, across the leg from the heel's outer edge
	Dia         unit.Length
	Slot        unit.Length // makes it longer than its diameter by so much
	Along       bool        // the slot runs along the bar, not across
	// SinkDia is the diameter of a countersink at the leg's inner face, or at
	// the outer one with SinkOuter; 0: none. SinkDepth 0 is a right-angled
	// countersink.
	SinkDia, SinkDepth unit.Length
	SinkOuter          bool
}

// defaultChord is the flattening of an angle's rounds when nothing is said.
const defaultChord unit.Length = 0.05

// longest bounds the length of a bar.
const longest = 100 * unit.M

// steepest bounds the angles of end cuts.
const steepest = 80 * unit.Degree

// Solid builds the bar.
func (b AngleBar) Solid() Solid {
	b = b.settled()
	if err := b.check(); err != nil {
		return fault(fmt.Errorf("angle: %w", err))
	}
	w := barWork{AngleBar: b, section: b.outline()}
	if err := w.ends(); err != nil {
		return fault(fmt.Errorf("angle: %w", err))
	}
	for _, h := range b.Holes {
		c, err := w.bore(h)
		if err != nil {
			return fault(fmt.Errorf("angle, hole %q in the %s: %w", h.Name, h.Leg, err))
		}
		w.bored = append(w.bored, c)
	}
	if err := w.apart(); err != nil {
		return fault(fmt.Errorf("angle, %w", err))
	}
	volume, centroid := w.measure()
	return newSolid(w.faces(true), w.faces(false), volume, w.space(centroid))
}

// SectionArea is the area of the section with its rounds flattened, 0 if there
// is no such section.
func (b AngleBar) SectionArea() unit.Area {
	b = b.settled()
	if b.checkSection() != nil {
		return 0
	}
	var pts []Vec
	for _, s := range b.outline() {
		pts = append(pts, s.at)
	}
	area, _, _ := moments(pts)
	return unit.Area(area)
}

// settled fills in the chord and drops radii below the grid.
func (b AngleBar) settled() AngleBar {
	if b.Chord == 0 {
		b.Chord = defaultChord
	}
	for _, r := range []*unit.Length{&b.Root, &b.Toe} {
		if *r >= 0 && *r < 1.0/perMM {
			*r = 0
		}
	}
	return b
}

func (b AngleBar) check() error {
	if err := b.checkSection(); err != nil {
		return err
	}
	if !(b.Length > 0) || b.Length > longest {
		return fmt.Errorf("a length of %.6g mm cannot be made", float64(b.Length))
	}
	for _, a := range [4]unit.Angle{b.Start.Plan, b.Start.Slope, b.End.Plan, b.End.Slope} {
		if !(math.Abs(float64(a)) <= float64(steepest)) {
			return fmt.Errorf("an end cut %.1f degrees off square cannot be made, %.0f at most", a.Degrees(), steepest.Degrees())
		}
	}
	return nil
}

func (b AngleBar) checkSection() error {
	if !finite(b.SeatWidth, b.WallWidth, b.Thickness, b.Root, b.Toe, b.Chord) {
		return errors.New("its sizes must be numbers")
	}
	if err := checkChord(b.Chord); err != nil {
		return err
	}
	least := min(b.SeatWidth, b.WallWidth)
	switch {
	case b.Thickness < 1.0/perMM || b.Root < 0 || b.Toe < 0 || b.Toe > b.Thickness || max(b.SeatWidth, b.WallWidth) > 1000:
		return fmt.Errorf("a section %g x %g x %g mm with radii %g and %g mm cannot be made",
			float64(b.SeatWidth), float64(b.WallWidth), float64(b.Thickness), float64(b.Root), float64(b.Toe))
	case b.Thickness+b.Root+b.Toe >= least:
		return fmt.Errorf("thickness and radii of %g, %g and %g mm leave no flat on a leg of %g mm",
			float64(b.Thickness), float64(b.Root), float64(b.Toe), float64(least))
	}
	return nil
}

// sectionCorner is a corner of the section with the surface that starts there.
// The section is drawn with x across the seat leg and y across the wall leg,
// both from the heel, counter-clockwise.
type sectionCorner struct {
	at      Vec
	surface string
	curved  bool
}

// Surfaces of the flats that may have holes.
const (
	seatOuter = "seat leg outer"
	seatInner = "seat leg inner"
	wallOuter = "wall leg outer"
	wallInner = "wall leg inner"
)

// outline draws the section.
func (b AngleBar) outline() []sectionCorner {
	t, r, e := b.Thickness, b.Root, b.Toe
	out := []sectionCorner{{V(0, 0), seatOuter, false}, {V(b.SeatWidth, 0), "seat leg toe", false}}
	out = b.arc(out, V(b.SeatWidth-e, t-e), e, 0, 90*unit.Degree, "seat leg toe radius")
	out = append(out, sectionCorner{V(b.SeatWidth-e, t), seatInner, false})
	out = b.arc(out, V(t+r, t+r), r, -90*unit.Degree, -180*unit.Degree, "fillet")
	out = append(out, sectionCorner{V(t, t+r), wallInner, false})
	out = b.arc(out, V(t-e, b.WallWidth-e), e, 0, 90*unit.Degree, "wall leg toe radius")
	out = append(out, sectionCorner{V(t-e, b.WallWidth), "wall leg toe", false})
	out = append(out, sectionCorner{V(0, b.WallWidth), wallOuter, false})
	return withoutDoubles(out)
}

// arc adds the corners of a quarter round, without the last one.
func (b AngleBar) arc(out []sectionCorner, c Vec, r unit.Length, from, to unit.Angle, surface string) []sectionCorner {
	if r == 0 {
		return out
	}
	half := math.Acos(max(1-finest(b.Chord)/float64(r), math.Sqrt2/2))
	n := math.Ceil(math.Pi / 4 / half)
	for i := range int(n) {
		a := from + (to-from)*unit.Angle(float64(i)/n)
		out = append(out, sectionCorner{c.Add(V(r, 0).Turn(a)), surface, true})
	}
	return out
}

// withoutDoubles drops corners with no side behind them, such as those of the
// flat at a toe that is all round.
func withoutDoubles(in []sectionCorner) []sectionCorner {
	var out []sectionCorner
	for i, c := range in {
		if next := in[(i+1)%len(in)].at; next.Sub(c.at).Len() > 1e-6 {
			out = append(out, c)
		}
	}
	return out
}
