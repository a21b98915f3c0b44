package lists

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// Purchase is one line of the buying list.
type Purchase struct {
	What  string
	Size  string // in millimetres, as one asks for it
	Count int
	Mass  unit.Mass // of all; 0 where it is not known
	For   []string
	Mind  string // what to mind when buying
}

// Purchases gives what is bought, equal things together, without prices: wood,
// steel, then what holds them.
func Purchases(d *model.Design) []Purchase {
	var b basket
	for _, i := range Items(d) {
		b.item(i)
	}
	for _, p := range d.Parts {
		if p.Angle != nil {
			b.fixings(d, p)
		}
	}
	for _, p := range d.Parts {
		if p.RollOut != nil {
			b.add(Purchase{What: "swivel castor", Size: fmt.Sprintf("overall height %s", mm(p.RollOut.Castor)), Count: 4, For: []string{p.ID}, Mind: "two with brakes"})
		}
	}
	return b.list
}

// basket gathers equal purchases.
type basket struct{ list []Purchase }

func (b *basket) add(p Purchase) {
	for i := range b.list {
		if q := &b.list[i]; q.What == p.What && q.Size == p.Size {
			q.Count += p.Count
			q.Mass += p.Mass
			q.For = with(q.For, p.For...)
			return
		}
	}
	b.list = append(b.list, p)
}

func (b *basket) item(i Item) {
	p := i.First()
	line := Purchase{Size: p.Size(), Count: i.Count(), Mass: i.Mass(), For: i.Names()}
	switch {
	case p.Slab != nil:
		line.What, line.Mind = p.Material+" slab", "finished size: order longer, wider and thicker"
	case p.Angle != nil:
		line.What, line.Mind = "steel angle EN 10056-1, S235JR", "length +0/-1"
	case p.Rod != nil:
		line.What, line.Mind = "round bar EN 10060, S235JR", "sawn square, ends chamfered 1 x 45°"
	case p.RollOut != nil:
		line.What, line.Mind = p.Material+" boards of a roll-out table", "overall size: see its cut list"
	default:
		line.What = p.Material
	}
	b.add(line)
}

// fixings are the anchors and screws of an angle with their washers.
func (b *basket) fixings(d *model.Design, p *model.Part) {
	for _, h := range p.Angle.Holes {
		if h.Leg == model.WallLeg {
			b.add(anchorFor(h, p.Angle.Wall))
			continue
		}
		b.add(screwFor(d, h, p))
	}
}

// AnchorFor is the largest wall anchor whose screw passes a hole in the steel;
// false when there is none. What it carries stands in the approval of the one
// that is bought.
func AnchorFor(hole unit.Length) (anchor stock.Anchor, ok bool) {
	for _, a := range stock.Anchors() {
		if a.Hole <= hole {
			anchor, ok = a, true
		}
	}
	return anchor, ok
}

// ScrewFor is the thickest wood screw that passes a hole in the steel; false
// when there is none.
func ScrewFor(hole unit.Length) (screw stock.Screw, ok bool) {
	for _, s := range stock.Screws() {
		if s.Hole <= hole {
			screw, ok = s, true
		}
	}
	return screw, ok
}

// anchorFor is the wall fixing for a hole, by the make of the wall.
func anchorFor(h model.SteelHole, w *model.Wall) Purchase {
	out := Purchase{What: "wall anchor with screw and washer, for " + string(w.Make), Count: 1, For: []string{"wall " + w.Name}, Mind: "only with approval values for this wall"}
	a, ok := AnchorFor(h.Dia)
	switch {
	case !ok:
		out.Size = "hole in the steel " + mm(h.Dia)
	case w.Make == model.Stud:
		out.What, out.Mind = "coach screw with washer, into the studs", "length by the lining: 60 in the stud"
		out.Size = fmt.Sprintf("%s, washer %s, hole in the steel %s", mm(a.Bolt), mm(a.Washer), mm(h.Dia))
	default:
		out.Size = fmt.Sprintf("%s with screw %s, washer %s, hole in the steel %s", mm(a.Drill), mm(a.Bolt), mm(a.Washer), mm(h.Dia))
	}
	if w.Make == model.UnknownWall {
		out.Mind = "make of the wall not known: drill a test hole first"
	}
	return out
}

// screwFor is the wood screw for a hole of the seat leg: no longer than steel
// and pilot hole together.
func screwFor(d *model.Design, h model.SteelHole, p *model.Part) Purchase {
	out := Purchase{What: "wood screw with wide head and washer", Count: 1, For: []string{p.Angle.Under}, Mind: "longer ones come through the top"}
	s, ok := ScrewFor(h.Dia)
	if !ok {
		out.Size = "hole in the steel " + mm(h.Dia)
		return out
	}
	out.Size = mm(s.Diameter)
	if into := pilotDepth(d, p); into > 0 {
		out.Size += " x " + mm(p.Angle.Section.Thickness+into)
	}
	if h.Slot > 0 {
		out.Size += fmt.Sprintf(", washer %s over the slot", mm(s.Head))
	}
	return out
}

// pilotDepth is how deep the pilot holes for an angle go into its slab.
func pilotDepth(d *model.Design, p *model.Part) unit.Length {
	slab := d.Part(p.Angle.Under)
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
