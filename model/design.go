package model

import (
	"fmt"

	"slabwright/model/find"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Piece is anything that can be added to a design.
type Piece interface {
	// place makes the part in the room, or says what is wrong.
	place(d *Design, id string) (*Part, faults)
}

// Design is a desk in a room: the parts in the order in which they were added,
// spaces to keep free, and what went wrong on the way.
type Design struct {
	Title string
	Room  *Room
	Parts []*Part
	Zones []Zone
	Seats []Seat
	bad   []find.Finding
	done  bool
}

// NewDesign starts a design for a room.
func NewDesign(title string, room *Room) *Design { return &Design{Title: title, Room: room} }

// Add places a piece under an id. The id names the part in every drawing, list
// and finding; later pieces refer to it. A piece that cannot be made is left
// out and becomes a finding.
func (d *Design) Add(id string, p Piece) *Part {
	line := callLine()
	if d.Part(id) != nil {
		d.fault(id, line, fmt.Sprintf("there are two parts %q", id))
		return nil
	}
	part, bad := p.place(d, id)
	for _, f := range bad {
		d.fault(id, f.line, f.what)
	}
	if part == nil {
		return nil
	}
	part.ID, part.Line, part.Mark = id, line, len(d.Parts)+1
	d.Parts = append(d.Parts, part)
	return part
}

// Part gives the part of that id, nil if there is none.
func (d *Design) Part(id string) *Part {
	for _, p := range d.Parts {
		if p.ID == id {
			return p
		}
	}
	return nil
}

// KeepFree asks for a space that no part enters.
func (d *Design) KeepFree(z Zone) { z.Line = callLine(); d.Zones = append(d.Zones, z) }

// Faults gives what went wrong in the description, one finding each.
func (d *Design) Faults() []find.Finding { return append([]find.Finding(nil), d.bad...) }

func (d *Design) fault(part, line, what string) {
	f := find.Finding{
		Rule: "description", Status: find.Fail, Title: "The description cannot be built as written", Why: what,
		Basis: "the description of the desk", Line: line,
		Fix: []find.Fix{{Text: "mend the call in that line"}},
	}
	if part != "" {
		f.Parts = []string{part}
	}
	d.bad = append(d.bad, f)
}

// slab gives the slab of that id, or a fault that names the nearest one.
func (d *Design) slab(id string) (*Part, faults) {
	var names []string
	for _, p := range d.Parts {
		if p.ID == id && p.Slab != nil {
			return p, nil
		}
		if p.Slab != nil {
			names = append(names, p.ID)
		}
	}
	return nil, faults{faultf("there is no slab %q before this line%s", id, didYouMean(id, names))}
}

// Finish builds every solid and numbers the parts. Parts that cannot be built
// stay in the design without bodies and become findings. Call it once, after
// the last Add.
func (d *Design) Finish() {
	if d.done {
		return
	}
	d.done = true
	for _, p := range d.Parts {
		if p.Slab != nil {
			d.finishSlab(p)
		}
		for _, b := range p.Bodies {
			if err := b.Solid.Err(); err != nil {
				d.fault(p.ID, p.Line, fmt.Sprintf("%s: %v", p.ID, err))
			}
		}
	}
	d.number()
}

// Outline is the slab's outline in the room's axes at its top face.
func (p *Part) Outline() geom.Region {
	if p.Slab == nil {
		return geom.Region{}
	}
	return p.Slab.TopOutline().Place(p.Slab.Pose)
}

// FloorAt is the height of the floor below a place: the level of the nearest
// marked corner, 0 where no corner is marked.
func (r *Room) FloorAt(at geom.Vec) unit.Length {
	var h unit.Length
	best := unit.Length(-1)
	for _, m := range r.Floor {
		if c, ok := r.Corner(m.Corner); ok {
			if dist := c.At.Sub(at).Len(); best < 0 || dist < best {
				best, h = dist, m.Height
			}
		}
	}
	return h
}
