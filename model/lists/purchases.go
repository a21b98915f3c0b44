package lists

import (
	"fmt"
	"slices"

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
	Mind  string      // what to mind when buying
	Part  *model.Part // whose size it is; nil for what is sold by its own size
	InMM  bool        // Size is bare millimetres
}

// Purchases gives what is bought, equal things together, without prices: wood,
// steel, then what holds them.
func Purchases(d *model.Design) []Purchase {
	var b basket
	items := Items(d)
	for _, kinds := range [][]model.Kind{{model.KindSlab, model.KindShelf}, {model.KindRollOut}, {model.KindAngle}, {model.KindRod}, {model.KindPost}} {
		for _, i := range items {
			if slices.Contains(kinds, i.First().Kind) && i.First().Cut == nil {
				b.item(i)
			}
		}
	}
	for _, p := range d.Parts {
		if p.Angle != nil {
			b.fixings(d, p)
		}
	}
	for _, p := range d.Parts {
		if p.RollOut != nil {
			b.add(Purchase{What: "swivel castor", Size: fmt.Sprintf("overall height %s", mm(p.RollOut.Castor)), Count: 4, For: []string{p.ID}, Mind: "two with brakes", InMM: true})
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

// item adds what an item is made of.
func (b *basket) item(i Item) {
	p := i.First()
	line := Purchase{What: fmt.Sprintf("%s slab", p.Material), Size: SizeText(p, mm), Count: i.Count(), Mass: i.Mass(), For: i.Names(), Mind: "finished: order oversize", Part: p}
	switch {
	case p.Angle != nil:
		line.What, line.Mind = "steel angle, S235JR", "length +0/-1 mm"
	case p.Rod != nil:
		line.What, line.Mind = "round bar, S235JR", "ends chamfered 1 mm x 45°"
	case p.Post != nil:
		line.What, line.Mind = "table leg, steel", "with screws, foot ±10 mm"
	case p.RollOut != nil:
		line.What, line.Mind = fmt.Sprintf("%s boards", p.Material), "overall: see its cut list"
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

// anchorFor is the wall fixing for a hole, by the make of the wall.
func anchorFor(h model.SteelHole, w *model.Wall) Purchase {
	out := Purchase{What: fmt.Sprintf("wall anchor, %s", w.Make), Size: fmt.Sprintf("steel hole %s", mm(h.Dia)), Count: 1, For: []string{fmt.Sprintf("wall %s", w.Name)}, Mind: "approved for this wall", InMM: true}
	a, ok := stock.AnchorThrough(h.Dia)
	switch {
	case w.Make == model.Stud && ok:
		out.What, out.Mind = "coach screw into studs", "60 mm in the stud, plus lining"
		out.Size = fmt.Sprintf("%s, washer %s", mm(a.Bolt), mm(a.Washer))
	case w.Make == model.Stud:
		out.What, out.Mind = "coach screw into studs", "60 mm in the stud, plus lining"
	case ok:
		out.Size = fmt.Sprintf("%s, screw %s, washer %s", mm(a.Drill), mm(a.Bolt), mm(a.Washer))
	}
	if w.Make == model.UnknownWall {
		out.What, out.Mind = "wall anchor, wall not known", "drill a test hole first"
	}
	return out
}

// screwFor is the wood screw for a hole of the seat leg: no longer than steel
// and pilot hole together.
func screwFor(d *model.Design, h model.SteelHole, p *model.Part) Purchase {
	out := Purchase{What: "wood screw, wide head", Count: 1, For: []string{p.Angle.Under}, Mind: "no longer: the top is near", InMM: true}
	s, ok := stock.ScrewThrough(h.Dia)
	if !ok {
		out.Size = fmt.Sprintf("steel hole %s", mm(h.Dia))
		return out
	}
	out.Size = mm(s.Diameter)
	if into := pilotDepth(d, p); into > 0 {
		out.Size += " x " + mm(p.Angle.Section.Thickness+into)
	}
	if h.Slot > 0 {
		out.Size = fmt.Sprintf("%s, washer %s", out.Size, mm(s.Head))
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
