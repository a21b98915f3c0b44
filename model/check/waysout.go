package check

import (
	"fmt"
	"math"
	"strings"

	"slabwright/model"
	"slabwright/model/find"
	"slabwright/model/unit"
)

// Limits of what is proposed: no thinner slab, no deeper by more than this.
const (
	thinnest unit.Length = 25
	deepest  unit.Length = 300

	leastCleat unit.Length = 30 // a lower one holds no anchor
)

// waysOut proposes what frees a zone, and at what price: raise the surface, a
// thinner slab, another place to sit, a deeper slab, or less steel. Each way
// frees the zone by itself.
func (s Site) waysOut(z model.Zone, inTheWay []intruder) []find.Fix {
	slab := s.slabOf(z)
	if slab == nil {
		return []find.Fix{hint("move what stands there, or move the space")}
	}
	var out []find.Fix
	if lack, ok := s.lift(z, inTheWay); ok {
		out = append(out, s.raise(z, slab, lack)...)
	}
	if fix, ok := s.sitElsewhere(z, slab, 0); ok {
		out = append(out, fix)
	}
	if more, ok := s.deeper(z, slab, inTheWay); ok {
		out = append(out, hint("make %s %.0f mm deeper: it then reaches that much further into the room", slab.ID, float64(more)))
	}
	out = append(out, s.clear(z, slab, inTheWay)...)
	if lack, ok := lackUnder(z, inTheWay); ok && len(out) == 0 {
		if fix, ok := s.sitElsewhere(z, slab, lack); ok {
			out = append(out, hint("do both: %s; %s", s.raise(z, slab, lack)[0].Text, fix.Text))
		}
	}
	for k := range out[min(1, len(out)):] {
		out[k+1].Text = "or " + out[k+1].Text
	}
	if len(out) == 0 {
		out = append(out, hint("there is no place for legs here: sit elsewhere"))
	}
	return out
}

// sitElsewhere proposes the nearest free place for the seat, with the surface
// raised by so much.
func (s Site) sitElsewhere(z model.Zone, slab *model.Part, raised unit.Length) (find.Fix, bool) {
	place, ok := s.freePlace(z, slab, raised)
	if !ok {
		return find.Fix{}, false
	}
	seat, _, _ := s.seatOfZone(z)
	return s.set(hint("sit %.0f mm further %s, with the middle %.0f mm from the left end of %s", math.Abs(float64(place-seat.Centre)), leftOrRight(place-seat.Centre), float64(place), slab.ID), "seat_at", seat.Centre, place), true
}

// lackUnder is by how much the slab itself is too low.
func lackUnder(z model.Zone, inTheWay []intruder) (unit.Length, bool) {
	for _, i := range inTheWay {
		if i.part != nil && i.part.ID == z.Slab {
			return up(z.Height - i.low), true
		}
	}
	return 0, false
}

// rises tells whether something in the way goes up with the surface: the slab,
// and the angles under it.
func (s Site) rises(i intruder) bool {
	return i.part != nil && (i.part.Kind == model.KindSlab || i.part.Bracket() != nil && s.carriesSlab(i.part))
}

// lift is by how much everything in the way must go up, if all of it goes up
// with the surface: the slab and the angles under it. People who share the slab
// count together, so that the one new height serves them all.
func (s Site) lift(z model.Zone, inTheWay []intruder) (unit.Length, bool) {
	var lack unit.Length
	for _, i := range inTheWay {
		if !s.rises(i) {
			return 0, false
		}
		lack = max(lack, z.Height-i.low)
	}
	for _, other := range s.Design.Zones {
		if other.Slab != z.Slab {
			continue
		}
		for _, i := range s.over(other) {
			if i.part != nil && i.part.ID == z.Slab {
				lack = max(lack, other.Height-i.low)
			}
		}
	}
	return up(lack), true
}

// carriesSlab tells whether a bracket is under a worktop, not under a shelf.
func (s Site) carriesSlab(bracket *model.Part) bool {
	p := s.Design.Part(bracket.Bracket().On().Under)
	return p != nil && p.Kind == model.KindSlab
}

// raise gives the surface that clears and the thinner slab that clears, with
// their price.
func (s Site) raise(z model.Zone, slab *model.Part, lack unit.Length) []find.Fix {
	top, t := slab.Slab.Top, slab.Slab.Thickness
	price := "whether that is too high for the elbows is not known, for nobody is described"
	if _, p, ok := s.seatOfZone(z); ok && p.Stature > 0 {
		if r, err := model.LegRoomOf(p); err == nil {
			price = aboveElbows(up(top+lack) - z.Floor - r.Elbow)
		}
	}
	out := []find.Fix{s.set(hint("raise the surface by %.0f mm to %.0f mm: %s", float64(lack), float64(up(top+lack)), price), "surface", top, up(top+lack))}
	if thin := down(t - lack); thin >= thinnest {
		soft := math.Pow(float64(t/thin), 3)
		out = append(out, s.set(hint("take the slab %.0f mm thinner, %.0f mm: it then bends %.1f times as far under the same load", float64(t-thin), float64(thin), soft), "thickness", t, thin))
	}
	return out
}

func aboveElbows(over unit.Length) string {
	switch {
	case over > easiest:
		return fmt.Sprintf("it is then %.0f mm above the elbows, %.0f mm more than is easy, and a higher seat would lift the thighs as well", float64(over), float64(over-easiest))
	case over >= 0:
		return fmt.Sprintf("it is then %.0f mm above the elbows, where 0 to %.0f mm are easy", float64(over), float64(easiest))
	}
	return fmt.Sprintf("it is then still %.0f mm below the elbows", -float64(over))
}

// deeper is how much deeper the slab must be for the zone to end before
// everything in the way, where all of it stands at the back: a wall, what is on
// it, an angle along it.
func (s Site) deeper(z model.Zone, slab *model.Part, inTheWay []intruder) (unit.Length, bool) {
	f := frontOf(slab)
	zone := f.extentOf(z.Plan)
	first := zone.far
	for _, i := range inTheWay {
		wall := i.wall
		switch {
		case i.part != nil && i.part.Bracket() != nil:
			wall = i.part.Bracket().On().Wall.Name
		case i.part != nil:
			return 0, false
		}
		if math.Abs(s.Room.Wall(wall).Chord().D.Unit().Cross(f.along)) > 0.2 {
			return 0, false // it stands beside the legs, not before them
		}
		first = min(first, f.extentOf(i.over).near)
	}
	more := up(zone.far - first)
	return more, more > 0 && more <= deepest
}

// clear proposes how what is in the way leaves the zone by itself; of several
// things every one has to, so they make one hint together.
func (s Site) clear(z model.Zone, slab *model.Part, inTheWay []intruder) []find.Fix {
	if len(inTheWay) == 1 {
		return s.without(z, slab, inTheWay[0])
	}
	var each []string
	for _, i := range inTheWay {
		ways := s.without(z, slab, i)
		if lack, ok := s.lift(z, []intruder{i}); ok && i.part.Slab != nil {
			ways = s.raise(z, slab, lack)
		}
		if len(ways) == 0 {
			return nil
		}
		each = append(each, ways[0].Text)
	}
	return []find.Fix{hint("%s", "do all of these: "+strings.Join(each, "; "))}
}

// without proposes how one thing leaves the zone by itself.
func (s Site) without(z model.Zone, slab *model.Part, i intruder) []find.Fix {
	switch {
	case i.part == nil:
		return nil
	case i.part.Bracket() != nil:
		return s.lessBelow(z, slab, i)
	case i.part.RollOut != nil:
		return []find.Fix{s.reparked(z, slab, i)}
	}
	return nil
}

// lessBelow ends a bracket where the legs begin, turns the wall leg of an angle up, or
// takes a lower cleat.
func (s Site) lessBelow(z model.Zone, slab *model.Part, i intruder) []find.Fix {
	b := i.part.Bracket()
	a := b.On()
	var out []find.Fix
	pose := b.Pose()
	first, last := a.Length, unit.Length(0)
	for _, loop := range i.over.Loops() {
		for _, v := range loop {
			x := pose.Unplan(v).X
			first, last = min(first, x), max(last, x)
		}
	}
	end, cut := "left", up(last)
	if a.Length-first < last {
		end, cut = "right", up(a.Length-first)
	}
	across := math.Abs(a.Wall.Chord().D.Unit().Cross(frontOf(slab).along)) > 0.7
	if across && a.Length-cut >= 2*b.Deep() {
		out = append(out, hint("end %s %.0f mm earlier at its %s end: %s is then not carried over that length", i.name, float64(cut), end, slab.ID))
	}
	if c := i.part.Cleat; c != nil && a.Seat-leastCleat-z.Floor >= z.Height {
		out = append(out, hint("take a cleat no higher than %.0f mm under %s there", float64(down(a.Seat-z.Floor-z.Height)), slab.ID))
	}
	if x := i.part.Angle; x != nil && !x.LegUp && a.Seat-x.Section.Thickness-z.Floor >= z.Height {
		out = append(out, hint("turn the wall leg of %s up behind the slab (LegUp, in ready designs wall_leg: up), so that only %.0f mm of steel are below the wood: its wall screws cannot be reached any more once the slab lies, and the slab's lower edge needs a chamfer of %.0f mm for the root", i.name, float64(x.Section.Thickness), float64(x.Section.Root)))
	}
	if len(out) == 0 {
		out = append(out, hint("take %s off that wall and carry %s elsewhere", i.name, slab.ID))
	}
	return out
}
