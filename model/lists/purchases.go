package lists

import (
	"fmt"
	"slices"

	"slabwright/model"
	"slabwright/model/cut"
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
	for _, kinds := range [][]model.Kind{{model.KindSlab, model.KindShelf}, {model.KindRollOut}, {model.KindAngle}, {model.KindCleat}, {model.KindRod}, {model.KindPost}} {
		for _, i := range items {
			if slices.Contains(kinds, i.First().Kind) && i.First().Cut == nil {
				b.item(i)
			}
		}
	}
	for _, f := range cut.Fixings(d) {
		b.add(Purchase{What: f.What, Size: f.Size, Count: f.Count, For: f.For, Mind: f.Mind, InMM: true})
	}
	for _, j := range d.Joints {
		b.joint(j)
	}
	return b.list
}

// joint adds what a joint takes.
func (b *basket) joint(j model.Joint) {
	names := []string{j.Slab, j.To}
	switch j.Kind {
	case model.DowelJoint:
		b.add(Purchase{What: "dowel, beech, fluted", Size: j.Size(), Count: len(j.Places), For: names, Mind: "glued into one of both only", InMM: true})
	case model.PlateJoint:
		n, size := j.PlateScrews()
		b.add(Purchase{What: "flat steel plate, 4 holes", Size: j.Size(), Count: len(j.Places), For: names, Mind: "holes 30 and 75 mm from its middle", InMM: true})
		b.add(Purchase{What: "wood screw for plates", Size: mm(size), Count: n, For: names, Mind: "no longer: the top is near", InMM: true})
	}
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
	case p.Cleat != nil:
		line.What, line.Mind = fmt.Sprintf("%s batten, planed", p.Material), "straight grain, no knot at an edge"
	case p.Rod != nil:
		line.What, line.Mind = "round bar, S235JR", "ends chamfered 1 mm x 45°"
	case p.Post != nil:
		line.What, line.Mind = "table leg, steel", "with screws, foot ±10 mm"
	case p.RollOut != nil:
		line.What, line.Mind = fmt.Sprintf("%s boards", p.Material), "overall: see its cut list"
	}
	b.add(line)
}
