package model

import (
	"fmt"
	"slices"
	"sync"

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
	Title  string
	Room   *Room
	Parts  []*Part
	Zones  []Zone
	Seats  []Seat
	Joints []Joint
	bad    []find.Finding
	gone   map[string]string // parts that were left out, and the line to blame
	done   bool

	climate Climate
	holds   map[string]Hold // what stands still in each slab

	fitting sync.Mutex
	fits    map[string]Fit // answers of FitOf, by part
	memo    memo
}

// NewDesign starts a design for a room.
func NewDesign(title string, room *Room) *Design { return &Design{Title: title, Room: room} }

// Add places a piece under an id. The id names the part in every drawing, list
// and finding; later pieces refer to it. A shelf on rods brings its rods as
// parts of their own. A piece that cannot be made is left out and becomes a
// finding, and so do the pieces that need it; Add then gives nil.
func (d *Design) Add(id string, p Piece) *Part {
	line := callLine()
	if what := d.refuse(id, p); what != "" {
		d.report(id, fault{what: what, line: line})
		return nil
	}
	p = d.channelled(id, p)
	part, bad := p.place(d, id)
	if c, ok := d.cutOf(id); ok && part != nil {
		bad = bad.and(d.asCut(part, p, c)...)
	}
	for _, f := range bad {
		d.report(id, f)
	}
	if part == nil {
		if d.gone == nil {
			d.gone = map[string]string{}
		}
		d.gone[id] = bad[0].line
		return nil
	}
	part.ID, part.Line, part.Mark = id, line, len(d.Parts)+1
	d.Parts = append(d.Parts, part)
	if s, ok := p.(SlabPiece); ok && s.rods != nil {
		s.hang(d, part)
	}
	return part
}

// refuse says why nothing can be added under an id, "" if it can.
func (d *Design) refuse(id string, p Piece) string {
	switch {
	case d.done:
		return fmt.Sprintf("%q is added after Finish", id)
	case id == "":
		return "a part needs a name: it stands on the sheets and in the lists"
	case p == nil:
		return fmt.Sprintf("there is nothing to add as %q", id)
	case d.Part(id) != nil:
		return fmt.Sprintf("there are two parts %q: every part needs a name of its own", id)
	}
	return ""
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
func (d *Design) KeepFree(z Zone) {
	z.Line = callLine()
	var bad faults
	if err := z.Plan.Err(); err != nil || z.Plan.Empty() {
		bad = bad.and(faultf("the space to keep free %q has no plan", z.Name))
	}
	bad = bad.within("height of the space to keep free", z.Height, 1, 10*unit.M).
		within("floor of the space to keep free", z.Floor, -10*unit.M, 10*unit.M)
	for _, f := range bad {
		d.report("", f)
	}
	if bad == nil {
		d.Zones = append(d.Zones, z)
	}
}

// Faults gives what went wrong in the description, one finding each.
func (d *Design) Faults() []find.Finding { return append([]find.Finding(nil), d.bad...) }

// report makes a finding of a fault. Pieces that only wait for another one are
// unknown, not wrong.
func (d *Design) report(part string, bad fault) {
	f := find.Finding{
		Rule: "description", Status: find.Fail, Title: "The description cannot be built as written", Why: bad.what,
		Basis: "the description of the desk", Line: bad.line,
		Fix: []find.Fix{{Text: "mend the call in that line"}},
	}
	if bad.waits {
		f.Status, f.Title = find.Unknown, "A part waits for another one"
		f.Fix = []find.Fix{{Text: "mend the other one first"}}
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
		if p.Slab != nil && p.ID == id {
			return p, nil
		}
		if p.ID == id {
			return nil, faults{faultf("%q is no slab, its kind is %s", id, p.Kind)}
		}
		if p.Slab != nil {
			names = append(names, p.ID)
		}
	}
	if line, ok := d.gone[id]; ok {
		f := faultf("it needs the slab %q, which was left out because of a mistake in %s", id, line)
		f.waits = true
		return nil, faults{f}
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
	d.letMove()
	for _, p := range d.Parts {
		if p.Slab != nil {
			d.finishSlab(p)
		}
		p.Bodies = slices.DeleteFunc(p.Bodies, func(b Body) bool {
			err := b.Solid.Err()
			if err != nil {
				d.report(p.ID, fault{what: fmt.Sprintf("%s: %v", p.ID, err), line: p.Line})
			}
			return err != nil
		})
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
