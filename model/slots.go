package model

import (
	"cmp"
	"math"
	"slices"

	"slabwright/model/calc/moisture"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// slotSpare is what a slot has at each end beyond the travel of its screw.
const slotSpare unit.Length = 0.5

// Gaps that must be left where the wood has swollen most. WallSpare is for dust,
// plaster and what the coefficients do not know.
const (
	WallSpare  unit.Length = 1
	JointSpare unit.Length = 0
)

// driven is a screw through a bracket into a slab.
type driven struct {
	through *Part
	index   int         // of its hole in the bracket
	at      geom.Vec    // in the slab's own axes
	play    unit.Length // of the screw in a round hole, to each side
}

func (s driven) bracket() Bracket { return s.through.Bracket() }

func (s driven) hole() *BracketHole { return &s.bracket().On().Holes[s.index] }

// name is that of the pilot hole in the slab.
func (s driven) name() string { return s.through.ID + " " + s.hole().Name }

// drivenInto gives the screws into a slab: where its pilot holes are.
func (d *Design) drivenInto(slab *Part) []driven {
	at := map[string]geom.Vec{}
	for _, f := range slab.Slab.Features {
		if f.Kind == Pilot {
			at[f.Name] = f.At
		}
	}
	var out []driven
	for _, p := range d.BracketsUnder(slab.ID) {
		for i, h := range p.Bracket().On().Holes {
			s := driven{through: p, index: i}
			if v, ok := at[s.name()]; ok && h.Leg == SeatLeg {
				s.at = v
				if screw, ok := stock.ScrewThrough(h.Dia); ok {
					s.play = (h.Dia - screw.Diameter) / 2
				}
				out = append(out, s)
			}
		}
	}
	return out
}

// travel is how far the wood carries a screw over the year, in the axes of its
// bracket.
func (m Movement) travel(s driven, slab *Part) (along Way, beside unit.Length) {
	for _, to := range []moisture.Content{m.Dry, m.Damp} {
		off := m.at(s.at, to).Turn(slab.Slab.Pose.Turn - s.bracket().Pose().Turn)
		x, y := off.X, off.Y
		if !s.hole().Along {
			x, y = y, x
		}
		along.Plus, along.Minus = max(along.Plus, x), max(along.Minus, -x)
		beside = max(beside, abs(y))
	}
	return along, beside
}

// screwsOf gives the travel of every screw of a slab and the room for it.
func (d *Design) screwsOf(m Movement, slab *Part) []ScrewTravel {
	var out []ScrewTravel
	for _, s := range d.drivenInto(slab) {
		h := s.hole()
		t := ScrewTravel{Through: s.through, Hole: *h, At: s.at, Clearance: s.play}
		t.Travel, t.Beside = m.travel(s, slab)
		off := s.bracket().Pose().Unplan(slab.Slab.Pose.Plan(s.at)) // where it is driven, over the bracket
		middle := h.X - off.X
		if !h.Along {
			middle = -h.FromHeel - off.Y
		}
		t.Room = Way{Plus: h.Slot/2 + s.play + middle, Minus: h.Slot/2 + s.play - middle}
		out = append(out, t)
	}
	return out
}

// letMove decides what stands still in every slab and cuts the slots of moving
// screws as long as the wood asks for.
func (d *Design) letMove() {
	d.holds = map[string]Hold{}
	for _, p := range d.Parts {
		if p.Slab != nil {
			d.holds[p.ID] = d.hold(p)
		}
	}
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		m := d.moving(p)
		m.Held = d.holds[p.ID]
		var last *Part // screws come angle by angle
		for _, s := range d.drivenInto(p) {
			if h := s.hole(); h.moves && !slices.Contains(m.Held.Screws, s.name()) {
				t, _ := m.travel(s, p)
				h.slot(t)
				if last != nil && last != s.through {
					last.build(last.ID)
				}
				last = s.through
			}
		}
		if last != nil {
			last.build(last.ID)
		}
	}
}

// slot makes a hole a slot for a travel, in whole millimetres, its middle where
// half of it is left to both sides.
func (h *BracketHole) slot(t Way) {
	plus, minus := upTo(t.Plus+slotSpare), upTo(t.Minus+slotSpare)
	if math.Mod(float64(plus+minus), 2) != 0 { // the middle keeps to whole millimetres
		if plus < minus {
			plus++
		} else {
			minus++
		}
	}
	h.Slot = plus + minus
	if h.Along {
		h.X += (plus - minus) / 2
	} else {
		h.FromHeel -= (plus - minus) / 2
	}
}

// upTo gives whole millimetres, never less.
func upTo(l unit.Length) unit.Length { return unit.Length(math.Ceil(float64(l) - 1e-9)) }

// hold finds what stands still: the rods of a shelf; otherwise, among the screws
// that may sit in round holes, the row that leaves most room at walls, at joints
// and in slots across the legs, and of equal ones the nearest to the back. Along
// the grain all screws hold alike, so that the middle stands still.
func (d *Design) hold(slab *Part) Hold {
	if slices.ContainsFunc(d.Parts, func(p *Part) bool { return p.Rod != nil && p.Rod.Shelf == slab.ID }) {
		e := slab.Slab.referenceEdge()
		return Hold{By: ByRods, At: e.Start.Lerp(e.End, 0.5)}
	}
	all := d.drivenInto(slab)
	may := slices.DeleteFunc(slices.Clone(all), func(s driven) bool { return s.hole().Slot > 0 || s.hole().moves })
	if len(may) == 0 {
		may = slices.DeleteFunc(slices.Clone(all), func(s driven) bool { return !s.hole().moves })
	}
	if len(may) == 0 {
		return Hold{By: ByNone, At: middleOf(all)}
	}
	slices.SortStableFunc(may, func(a, b driven) int { return cmp.Compare(b.at.Y, a.at.Y) })
	m := d.moving(slab)
	best := unit.Length(math.Inf(-1))
	var held Hold
	for _, s := range may {
		m.Held = Hold{By: ByScrews, At: geom.V(m.length/2, s.at.Y)}
		if spare := d.spare(m, slab, all); spare > best+0.05 {
			best, held = spare, m.Held
		}
	}
	m.Held = held
	for _, s := range may {
		if t, _ := m.travel(s, slab); max(t.Plus, t.Minus) <= s.play {
			held.Screws = append(held.Screws, s.name())
		}
	}
	return held
}

// middleOf is the middle of screws.
func middleOf(list []driven) geom.Vec {
	var sum geom.Vec
	for _, s := range list {
		sum = sum.Add(s.at.Mul(1 / float64(len(list))))
	}
	return sum
}

// spare is the least room left over the year at the walls and joints of a slab
// and in the slots across the legs of its angles.
func (d *Design) spare(m Movement, slab *Part, screws []driven) unit.Length {
	least := unit.Length(math.Inf(1))
	for _, e := range slab.Slab.Edges {
		least = min(least, m.spareAt(e, e.Start, e.End)-d.meets(slab, d.Part(e.To), e))
	}
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		for _, e := range p.Slab.Edges {
			if e.Bound == ToPart && e.To == slab.ID {
				own := func(v geom.Vec) geom.Vec { return slab.Slab.Pose.Unplan(p.Slab.Pose.Plan(v)) }
				least = min(least, m.spareAt(e, own(e.End), own(e.Start))-d.meets(slab, p, e))
			}
		}
	}
	for _, s := range screws {
		if h := s.hole(); h.moves && !h.Along {
			t, _ := m.travel(s, slab)
			fromHeel := -s.bracket().Pose().Unplan(slab.Slab.Pose.Plan(s.at)).Y
			heel, toe := s.bracket().grows(*h, fromHeel)
			least = min(least, heel-t.Plus-slotSpare, toe-t.Minus-slotSpare)
		}
	}
	return least
}

// meets is how far another slab, whose grain runs across, comes into a joint
// along its grain, wherever it is held.
func (d *Design) meets(slab, other *Part, e Edge) unit.Length {
	if e.Bound != ToPart || other == nil || other.Slab == nil || !crossed(slab, other) {
		return 0
	}
	m := d.moving(other)
	return max(0, m.Length(m.Dry), m.Length(m.Damp)) / 2
}

// crossed tells whether the grain of two slabs runs across each other.
func crossed(a, b *Part) bool {
	return math.Abs(math.Sin(float64(a.Slab.Pose.Turn-b.Slab.Pose.Turn))) > math.Sqrt2/2
}

// spareAt is the room left at an edge that runs from a to b.
func (m Movement) spareAt(e Edge, a, b geom.Vec) unit.Length {
	if e.Bound != ToWall && e.Bound != ToPart {
		return unit.Length(math.Inf(1))
	}
	out, _ := m.span(a, b, b.Sub(a).Unit().Left())
	if e.Bound == ToPart {
		return e.Gap - out - JointSpare
	}
	return e.Gap - out - WallSpare
}
