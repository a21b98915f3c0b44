package cut

import (
	"fmt"
	"slices"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Fixing is one kind of thing that holds parts and is sold by the piece. Diameter
// and Length are those of the screw, Length the overall height of a castor; 0
// stands for what is not known.
type Fixing struct {
	Kind             model.FixingKind
	Wall             model.WallMake // what an anchor holds in
	What, Size, Mind string         // in words; sizes in millimetres
	Diameter, Length unit.Length
	Count            int
	For              []string
}

// Fixings gives what holds the angles and cleats of a design, equal things together, and
// the castors of its roll-out tables.
func Fixings(d *model.Design) []Fixing {
	var out []Fixing
	add := func(f Fixing) {
		for i := range out {
			if q := &out[i]; q.What == f.What && q.Size == f.Size {
				q.Count += f.Count
				for _, x := range f.For {
					if !slices.Contains(q.For, x) {
						q.For = append(q.For, x)
					}
				}
				return
			}
		}
		out = append(out, f)
	}
	for _, p := range d.Parts {
		b := p.Bracket()
		if b == nil {
			continue
		}
		for _, h := range b.On().Holes {
			if h.Leg == model.WallLeg {
				add(anchorFor(h, p))
				continue
			}
			add(screwFor(d, h, p))
		}
	}
	for _, p := range d.Parts {
		if r := p.RollOut; r != nil {
			add(Fixing{Kind: model.Castor, What: "swivel castor", Size: fmt.Sprintf("overall height %s", mm(r.Castor)), Mind: "two with brakes", Length: r.Castor, Count: 4, For: []string{p.ID}})
		}
	}
	return out
}

// anchorFor is the wall fixing for a hole, by the make of the wall.
func anchorFor(h model.BracketHole, p *model.Part) Fixing {
	w := p.Bracket().On().Wall
	out := Fixing{Kind: model.WallAnchor, Wall: w.Make, What: fmt.Sprintf("wall anchor, %s", w.Make), Size: holeOf(p, h), Count: 1, For: []string{fmt.Sprintf("wall %s", w.Name)}, Mind: "approved for this wall"}
	x, ok := stock.AnchorThrough(h.Dia)
	out.Diameter = x.Bolt
	switch {
	case w.Make == model.Stud:
		out.Kind, out.What, out.Mind = model.CoachScrew, "coach screw into studs", "60 mm in the stud, plus lining"
		out.Length = through(p, h) + inStud
		if ok {
			out.Size = fmt.Sprintf("%s, washer %s", mm(x.Bolt), mm(x.Washer))
		}
	case ok:
		out.Size = fmt.Sprintf("%s, screw %s, washer %s", mm(x.Drill), mm(x.Bolt), mm(x.Washer))
	}
	if p.Cleat != nil {
		out.Mind = fmt.Sprintf("%s; through %s mm of wood", out.Mind, mm(p.Cleat.Wide))
		out.What = fmt.Sprintf("%s for cleats", out.What)
	}
	if w.Make == model.UnknownWall {
		out.What, out.Mind = "wall anchor, wall not known", "drill a test hole first"
	}
	return out
}

// through is what a hole of a bracket goes through.
func through(p *model.Part, h model.BracketHole) unit.Length {
	switch {
	case p.Angle != nil:
		return p.Angle.Section.Thickness
	case h.Leg == model.WallLeg:
		return p.Cleat.Wide
	}
	return p.Cleat.High
}

// holeOf says the size of a hole for which no fixing is known.
func holeOf(p *model.Part, h model.BracketHole) string {
	if p.Cleat != nil {
		return fmt.Sprintf("wood hole %s", mm(h.Dia))
	}
	return fmt.Sprintf("steel hole %s", mm(h.Dia))
}

// inStud is how deep a coach screw goes into a stud. Common practice, no source.
const inStud unit.Length = 60

// screwFor is the wood screw up into a slab: no longer than its bracket and the pilot
// hole together.
func screwFor(d *model.Design, h model.BracketHole, p *model.Part) Fixing {
	out := Fixing{Kind: model.WoodScrew, What: "wood screw, wide head", Count: 1, For: []string{p.Bracket().On().Under}, Mind: "no longer: the top is near"}
	s, ok := stock.ScrewThrough(h.Dia)
	if !ok {
		out.Size = holeOf(p, h)
		return out
	}
	out.Size, out.Diameter = mm(s.Diameter), s.Diameter
	if into := pilotDepth(d, p); into > 0 {
		out.Length = through(p, h) + into
		out.Size += " x " + mm(out.Length)
	}
	if h.Slot > 0 {
		out.Size = fmt.Sprintf("%s, washer %s", out.Size, mm(s.Head))
	}
	return out
}

// pilotDepth is how deep the pilot holes for a bracket go into its slab.
func pilotDepth(d *model.Design, p *model.Part) unit.Length {
	slab := d.Part(p.Bracket().On().Under)
	if slab == nil || slab.Slab == nil {
		return 0
	}
	for _, f := range slab.Slab.Features {
		if f.Kind == model.Pilot && f.For == p.ID {
			return f.Depth
		}
	}
	return 0
}
