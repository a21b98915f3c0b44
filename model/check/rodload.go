package check

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/rod"
	"slabwright/model/calc/steelangle"
	"slabwright/model/find"
	"slabwright/model/hold"
	"slabwright/model/unit"
)

// wallPress is what the edge of a hole in a wall takes, N/mm2, design value; the
// mouth of the hole, a diameter deep, counts as crumbled.
var wallPress = map[model.WallMake]float64{model.Concrete: 10, model.Brick: 3, model.Aerated: 0.8}

const wallPressSource = "order of the strength of such walls, from memory: concrete 10, solid brick 3, aerated block 0.8 N/mm2"

var rodStrength = Rule{
	ID: "rod-strength", Title: "The rods carry the shelf",
	Basis: "S235, elastic; a stiff rod presses in a straight line over its length in wall and wood; EN 1995-1-1 for wood across the grain",
	Why:   "A rod stands out of the wall like a beam that is built in: the wall crumbles at its mouth, the rod bends, the wood splits in the bore. The front edge droops long before.",
	Run: func(s Site) []find.Finding {
		st := s.statics()
		var out []find.Finding
		for _, slab := range st.Slabs {
			if f, ok := s.rods(slab, st); ok {
				out = append(out, f...)
			}
		}
		if out == nil {
			out = append(out, find.Finding{Status: find.Pass, Why: "Nothing hangs on rods."})
		}
		return out
	},
}

// pressed is the worst rod of a shelf for one thing.
type pressed struct {
	part    *model.Part
	is, may float64 // N/mm2
	force   float64
	arm     unit.Length // of the force, from the face of the wall
	found   bool
}

func (w *pressed) see(p *model.Part, is, may, force float64, arm unit.Length) {
	if !w.found || is/may > w.is/w.may {
		*w = pressed{p, is, may, force, arm, true}
	}
}

// rodOf is the rod of that id, or one like it where one more is tried out.
func (s Site) rodOf(id, shelf string) *model.Part {
	if p := s.Design.Part(id); p != nil && p.Rod != nil {
		return p
	}
	for _, p := range s.Design.Parts {
		if p.Rod != nil && p.Rod.Shelf == shelf {
			return p
		}
	}
	return nil
}

// pressedBy are the rods of a shelf that are used most: as bars of steel, in the
// wood, in a wall of which something is known.
func (s Site) pressedBy(slab hold.Slab) (steel, wood, wall pressed) {
	for _, c := range slab.Cases {
		for _, r := range c.Runs {
			p := s.rodOf(r.Carrier, slab.Part)
			if p == nil || !c.Design {
				continue
			}
			d := p.Rod.Dia
			moment := r.Force * float64(r.FromHeel) // about the face of the wall
			steel.see(p, rod.Stress(d, r.Force, r.FromHeel+d), steelangle.Yield, r.Force, r.FromHeel)
			off := abs(r.FromHeel - p.Rod.Gap - p.Rod.InShelf/2) // of the force from the middle of the bore
			wood.see(p, rod.Pressure(d, p.Rod.InShelf, r.Force, r.Force*float64(off-p.Rod.InShelf/2)), slab.Class.PressOver*c.KMod/woodGamma, r.Force, r.FromHeel)
			if may, known := wallPress[p.Rod.Wall.Make]; known {
				wall.see(p, rod.Pressure(d, p.Rod.InWall-d, r.Force, moment+r.Force*float64(d)), may, r.Force, r.FromHeel)
			}
		}
	}
	return steel, wood, wall
}

// rods judges bending, wood and wall at the rods of a shelf.
func (s Site) rods(slab hold.Slab, st *hold.Statics) ([]find.Finding, bool) {
	any, unsure := false, ""
	for _, p := range s.Design.Parts {
		if p.Rod == nil || p.Rod.Shelf != slab.Part {
			continue
		}
		any = true
		if _, known := wallPress[p.Rod.Wall.Make]; !known {
			unsure = p.Rod.Wall.Name
		}
	}
	if !any {
		return nil, false
	}
	steel, wood, wall := s.pressedBy(slab)
	if !steel.found {
		u := unknown(fmt.Sprintf("what the rods of %s carry is not known: %s.", slab.Part, slab.Trouble), hint("mend the shelf first"))
		u.Parts = []string{slab.Part}
		return []find.Finding{u}, true
	}
	out := []find.Finding{
		s.droop(slab, st),
		s.rod(steel, slab, st, "bends to", "Rods bend no further than they spring back", hint("take a rod of %.0f mm", float64(thicker(steel.part.Rod.Dia, steel.is/steel.may, 3))), func(b hold.Slab) pressed { x, _, _ := s.pressedBy(b); return x }),
		s.rod(wood, slab, st, "presses in the wood by", "The wood holds the rods", hint("take a rod of %.0f mm", float64(thicker(wood.part.Rod.Dia, wood.is/wood.may, 1))), func(b hold.Slab) pressed { _, x, _ := s.pressedBy(b); return x }),
	}
	if wall.found {
		out = append(out, s.rod(wall, slab, st, "presses in the wall by", "The wall holds the rods", deepEnough(wall), func(b hold.Slab) pressed { _, _, x := s.pressedBy(b); return x }))
	}
	if unsure != "" {
		u := unknown(fmt.Sprintf("nobody knows what the wall %s takes from a rod in a hole: it is not solid, or its make is not told.", unsure), hint("fix the rods to a board or plate that is screwed to what stands behind"))
		u.Parts = []string{slab.Part}
		out = append(out, u)
	}
	return out, true
}

// droopShare is the limit for a front edge, as a share of how far it stands out:
// EN 1995-1-1 table 7.2 for cantilevers, lower end, from memory.
const droopShare = 150

// drooped is how far the rod that bends most lets the front edge of a shelf hang, and
// how far that edge stands out.
func (s Site) drooped(slab hold.Slab) (worst, tip unit.Length, of *model.Part) {
	depth := unit.Length(0)
	for _, e := range s.Design.Part(slab.Part).Slab.Edges {
		depth = max(depth, -e.Start.Y)
	}
	c, _ := slab.Case(hold.Daily)
	for _, r := range c.Runs {
		p := s.rodOf(r.Carrier, slab.Part)
		if p == nil || len(r.Line) == 0 || r.Line[0].Points == nil {
			continue
		}
		held := p.Rod.Dia // behind the face of the wall
		var d unit.Length
		for _, l := range r.Line {
			for _, x := range l.Points { // a bore turns the rod as well as it presses
				d += rod.Droop(p.Rod.Dia, x.Force, x.FromHeel+held, depth+p.Rod.Gap+held)
			}
		}
		if of == nil || d > worst {
			worst, tip, of = d, depth+p.Rod.Gap, p
		}
	}
	return worst, tip, of
}

// droop judges how far the rods of a shelf let its front edge hang under what
// lies on it: each rod is a cantilever in the wall, and the shelf goes straight
// on beyond what presses on it.
func (s Site) droop(slab hold.Slab, st *hold.Statics) find.Finding {
	worst, tip, of := s.drooped(slab)
	f := find.Finding{
		Title: "How far the rods let the front edge droop", Parts: []string{slab.Part, of.ID}, Walls: []string{of.Rod.Wall.Name}, At: at(of.Centroid()),
		Measured: mm(worst), Required: limit(find.AtMost, tip/droopShare),
		Basis:   "cantilever of round steel, straight on beyond the load; front edge at most 1/150 of how far it stands out, EN 1995-1-1 table 7.2 for cantilevers, from memory",
		Why:     fmt.Sprintf("The rods bend under what lies on %s: its front edge, %.0f mm from the wall, droops by %.2f mm at %s.", slab.Part, float64(tip), float64(worst), of.ID),
		Assumed: append([]find.Assumption{{What: fmt.Sprintf("rods drilled dead level, held without play from %.0f mm behind the face of the wall; play in the hole adds to it", float64(of.Rod.Dia)), Source: wallPressSource}}, st.Assumed...),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = append([]find.Fix{hint("take a rod of %.0f mm", float64(thicker(of.Rod.Dia, float64(worst/(tip/droopShare)), 4)))},
			s.remedies(s.Design.Part(slab.Part), hold.Wanted{Of: hold.Sinking, Only: hold.SpanWays, Used: func(b hold.Slab) float64 {
				worst, tip, _ := s.drooped(b)
				return float64(worst / (tip / droopShare))
			}}, func(b hold.Slab) string {
				worst, _, _ := s.drooped(b)
				return fmt.Sprintf("the front edge then droops by %.2f mm", float64(worst))
			})...)
	}
	return f
}

// thicker is the diameter at which a stress that falls with its power is met.
func thicker(dia unit.Length, used float64, power int) unit.Length {
	d := dia
	for ; d < 60; d++ {
		f := 1.0
		for range power {
			f *= float64(dia / d)
		}
		if used*f <= 1 {
			break
		}
	}
	return d
}

// deepEnough says how far a rod must go into the wall.
func deepEnough(w pressed) find.Fix {
	r := w.part.Rod
	for in := r.InWall; in < 600; in += 5 {
		if rod.Pressure(r.Dia, in-r.Dia, w.force, w.force*float64(w.arm+r.Dia)) <= w.may {
			return hint("set the rods %.0f mm deep in the wall", float64(in))
		}
	}
	return hint("rods 600 mm deep in the wall do not do it")
}

func (s Site) rod(w pressed, slab hold.Slab, st *hold.Statics, does, title string, fix find.Fix, of func(hold.Slab) pressed) find.Finding {
	f := find.Finding{
		Title: title, Parts: []string{slab.Part, w.part.ID}, Walls: []string{w.part.Rod.Wall.Name}, At: at(w.part.Centroid()),
		Measured: &find.Quantity{Value: round3(w.is), Unit: "N/mm2"}, Required: &find.Limit{Value: round3(w.may), Relation: find.AtMost, Unit: "N/mm2"},
		Why:     fmt.Sprintf("%s carries %.0f N (design load) and %s %.2f N/mm2.", capital(w.part.ID), w.force, does, w.is),
		Assumed: append([]find.Assumption{{What: fmt.Sprintf("the wall is firm from %.0f mm behind its face", float64(w.part.Rod.Dia)), Source: wallPressSource}}, st.Assumed...),
	}.Judge()
	if f.Status == find.Fail {
		f.Fix = append([]find.Fix{fix}, s.remedies(s.Design.Part(slab.Part), hold.Wanted{Of: hold.Strength, Only: hold.SpanWays, Used: func(b hold.Slab) float64 {
			x := of(b)
			return x.is / x.may
		}}, func(b hold.Slab) string {
			return fmt.Sprintf("%.2f N/mm2 are left", of(b).is)
		})...)
	}
	return f
}
