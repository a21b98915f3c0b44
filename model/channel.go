package model

import (
	"fmt"
	"slices"

	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Lid closes a groove flush: a strip Width wide and Thick thick, let into a
// rebate of that size along the whole groove. The zero Lid is none.
type Lid struct{ Width, Thick unit.Length }

// Lidded gives the groove described last a lid that lies flush in a rebate,
// wider than the groove; the groove's depth counts from the face.
func (p SlabPiece) Lidded(width, thick unit.Length) SlabPiece {
	n := len(p.work)
	if n == 0 || p.work[n-1].Kind != Groove {
		p.faults = p.faults.and(faultf("Lidded(%s, %s) does not follow a groove that it could close", plain(width), plain(thick)))
		return p
	}
	return p.lid(n-1, Lid{width, thick})
}

func (p SlabPiece) lid(i int, l Lid) SlabPiece {
	p.work = slices.Clone(p.work)
	p.work[i].Lid, p.work[i].lidded = l, true
	return p
}

// lidWrong says what is wrong with the lid of a groove, "" if nothing.
func (w work) lidWrong() string {
	switch l := w.Lid; {
	case !w.lidded:
	case !(l.Width > w.Dia && l.Width <= 1000):
		return fmt.Sprintf("is %s wide, its lid %s: a lid lies on the wood on both sides of its groove, so that it must be wider", inWords(w.Dia), inWords(l.Width))
	case !(l.Thick > 0 && l.Thick < w.Depth):
		return fmt.Sprintf("is %s deep, its lid %s thick: a lid let in flush is thinner than its groove is deep", inWords(w.Depth), inWords(l.Thick))
	}
	return ""
}

// Rebate is the shape of the rebate of a groove's lid, empty without one.
func (f Feature) Rebate() geom.Region {
	if f.Lid == (Lid{}) {
		return geom.Region{}
	}
	return geom.Strip(f.Path, f.Lid.Width, chord)
}

// Mouth is the shape of work at the face that it is cut from: that of the
// rebate where a groove has a lid.
func (f Feature) Mouth() geom.Region {
	if f.Lid == (Lid{}) {
		return f.Outline
	}
	return f.Rebate()
}

// lidded is the groove as wide as the rebate of its lid.
func (f Feature) lidded() Feature {
	f.Outline = f.Rebate()
	return f
}

// Clear is the depth of a groove below its lid.
func (f Feature) Clear() unit.Length { return f.Depth - f.Lid.Thick }

// CutLength is the length of a groove along its path, and of its lid.
func (f Feature) CutLength() (groove, lid unit.Length) {
	for i := 1; i < len(f.Path); i++ {
		groove += f.Path[i].Sub(f.Path[i-1]).Len()
	}
	if f.Lid != (Lid{}) {
		lid = groove
	}
	return groove, lid
}

// Channel is a groove that the job cuts into the underside of a slab of the
// design, for cables or light.
type Channel struct {
	Name, In     string
	Width, Depth unit.Length
	Path         []At
	Lid          Lid
	Pos          Pos
}

// Slot is a cut-out at the reference edge of a slab through which cables come
// up; X is its middle.
type Slot struct {
	Name, In        string
	X, Width, Depth unit.Length
	Pos             Pos
}

// LidOn is a lid that the job puts on a groove of the design.
type LidOn struct {
	Groove string
	Lid    Lid
	Pos    Pos
}

// CableWork is what work for cables serves.
const CableWork = "cables"

// withWiring is the room with the work that the job's wiring asks for.
func (r *Room) withWiring(w Wiring) *Room {
	if r == nil || len(w.Channels)+len(w.Slots)+len(w.Lids) == 0 {
		return r
	}
	out := *r
	out.wiring = w
	return &out
}

// channelled adds the work that the job's wiring asks for to a slab.
func (d *Design) channelled(id string, p Piece) Piece {
	s, ok := p.(SlabPiece)
	if !ok || d.Room == nil {
		return p
	}
	for _, c := range d.Room.wiring.Channels {
		if c.In == id {
			s = s.Groove(c.Name, UnderFace, c.Width, c.Depth, c.Path...).Serving(CableWork).fromJob(c.Pos)
			if c.Lid != (Lid{}) {
				s = s.Lidded(c.Lid.Width, c.Lid.Thick)
			}
		}
	}
	for _, c := range d.Room.wiring.Slots {
		if c.In == id {
			s = s.CutOut(c.Name, At{X: c.X - c.Width/2}, c.Width, c.Depth).Serving(CableWork).fromJob(c.Pos)
		}
	}
	for _, l := range d.Room.wiring.Lids {
		for i, w := range s.work {
			if w.Kind == Groove && w.Name == l.Groove {
				s = s.lid(i, l.Lid)
			}
		}
	}
	return s
}

// fromJob blames the job file for the work described last.
func (p SlabPiece) fromJob(at Pos) SlabPiece {
	p.work[len(p.work)-1].line = at.String()
	return p
}

// unmatchedWiring reports work of the job for slabs and grooves that the design
// has not.
func (d *Design) unmatchedWiring(w Wiring) {
	var slabs, grooves []string
	for _, p := range d.Parts {
		if p.Slab == nil {
			continue
		}
		slabs = append(slabs, p.ID)
		for _, f := range p.Slab.Features {
			if f.Kind == Groove {
				grooves = append(grooves, f.Name)
			}
		}
	}
	missing := func(what, in string, at Pos) {
		if _, left := d.gone[in]; !left && (d.Part(in) == nil || d.Part(in).Slab == nil) {
			d.report("", fault{what: fmt.Sprintf("%s is to be cut into %q, which is no slab of the design%s", what, in, didYouMean(in, slabs)), line: at.String()})
		}
	}
	for _, c := range w.Channels {
		missing("groove "+c.Name, c.In, c.Pos)
	}
	for _, c := range w.Slots {
		missing("slot "+c.Name, c.In, c.Pos)
	}
	for _, l := range w.Lids {
		if !slices.Contains(grooves, l.Groove) && len(d.gone) == 0 {
			d.report("", fault{what: fmt.Sprintf("a lid is to close the groove %q, which the design has not%s", l.Groove, didYouMean(l.Groove, grooves)), line: l.Pos.String()})
		}
	}
}
