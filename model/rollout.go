package model

import (
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// RollOutPiece describes a table on castors that parks under a slab.
type RollOutPiece struct {
	species       stock.Species
	width, depth  unit.Length
	height        unit.Length
	board         unit.Length
	castor        unit.Length
	under         string
	left, setBack unit.Length
	travel        unit.Length
	faults        faults
}

// RollOut is a table on castors: width along the slab above, depth away from
// the wall, overall height with castors.
func RollOut(s stock.Species, width, depth, height unit.Length) RollOutPiece {
	p := RollOutPiece{species: s, width: width, depth: depth, height: height, board: 27, castor: 60, travel: depth}
	p.faults = p.faults.wood(s).
		within("width of the roll-out table", width, 200, 4000).
		within("depth of the roll-out table", depth, 200, 2000).
		within("height of the roll-out table", height, 150, 2000)
	return p
}

// Boards sets the thickness of its top and sides.
func (p RollOutPiece) Boards(t unit.Length) RollOutPiece {
	p.board = t
	p.faults = p.faults.within("thickness of the boards", t, 12, 60)
	return p
}

// Castors sets the overall height of the castors.
func (p RollOutPiece) Castors(h unit.Length) RollOutPiece {
	p.castor = h
	p.faults = p.faults.within("height of the castors", h, 20, 150)
	return p
}

// Parked puts the table under a slab: its left side at a distance from the
// slab's left end, its front set back from the slab's straight front edge.
func (p RollOutPiece) Parked(under string, fromLeft, setBack unit.Length) RollOutPiece {
	p.under, p.left, p.setBack = under, fromLeft, setBack
	p.faults = p.faults.within("place of the table, from the left end of "+under+",", fromLeft, -4000, 10*unit.M).
		within("set-back of the table from the front of "+under, setBack, -2000, 2000)
	return p
}

// Travels says how far it is rolled out; its own depth when not said.
func (p RollOutPiece) Travels(l unit.Length) RollOutPiece {
	p.travel = l
	p.faults = p.faults.within("way that the table rolls out", l, 0, 5000)
	return p
}

func (p RollOutPiece) place(d *Design, id string) (*Part, faults) {
	bad := p.faults
	if p.under == "" {
		bad = bad.and(faultf("roll-out table %q needs a slab to stand under: Parked(...)", id))
	}
	if p.height < p.castor+3*p.board {
		bad = bad.and(faultf("roll-out table %q: castors of %s and boards of %s leave no room between its shelf and its top", id, inWords(p.castor), inWords(p.board)))
	}
	if len(bad) > 0 {
		return nil, bad
	}
	slab, bad := d.slab(p.under)
	if bad != nil {
		return nil, bad
	}
	front := slab.Slab.Front()
	y := max(front.Start.Y, front.End.Y) + p.setBack // own axes: the front is at negative y
	back := geom.V(p.left, y+p.depth)
	pose := slab.Slab.Pose
	pose.At = pose.Plan(back).Up(d.Room.FloorAt(pose.Plan(back)))
	ro := &RollOutPart{Width: p.width, Depth: p.depth, Height: p.height, Castor: p.castor, Corner: pose.At.Flat(), Turn: pose.Turn, Travel: p.travel, Boards: p.boards()}
	part := &Part{Kind: KindRollOut, Material: p.species.Name, RollOut: ro}
	part.Bodies = p.bodies(pose)
	return part, nil
}

// bodies are the boards and four castors.
func (p RollOutPiece) bodies(pose geom.Pose) []Body {
	var out []Body
	for _, b := range p.boards() {
		s := geom.Prism(geom.Rect(b.Box.Min.Flat(), b.Box.Max.Flat()), b.Box.Min.Z, b.Box.Max.Z, b.Name)
		out = append(out, Body{Name: b.Name, Solid: s.Place(pose), Material: p.species.Name, Density: p.species.Density, Colour: woodColour(p.species)})
	}
	w, dp, c := p.width, p.depth, p.castor
	r := c * 0.4
	for i, at := range []geom.Vec{geom.V(r+10, -r-10), geom.V(w-r-10, -r-10), geom.V(r+10, -dp+r+10), geom.V(w-r-10, -dp+r+10)} {
		s := geom.Prism(geom.Circle(at, r, chord), 0, c, "castor")
		out = append(out, Body{Name: castorName(i), Solid: s.Place(pose), Material: "castor", Density: 2500, Colour: Colour{40, 40, 40}})
	}
	return out
}

func castorName(i int) string { return "castor " + string(rune('1'+i)) }
