package model

import (
	"fmt"

	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// PostPiece describes a bought table leg: a tube with a plate under the slab and
// a foot that can be turned out. It is an immutable value.
type PostPiece struct {
	dia    unit.Length
	under  string
	at     At
	faults faults
}

// postWall is the wall of the tube, postPlate the distance of the four screws of
// its plate, both ways; common sizes, no source.
const (
	postWall  unit.Length = 2
	postPlate unit.Length = 70
)

// Post is a round table leg of a diameter. It stands on the floor.
func Post(dia unit.Length) PostPiece {
	p := PostPiece{dia: dia}
	p.faults = p.faults.within("diameter of the post", dia, 30, 150)
	return p
}

// Under puts it under a slab, with its middle at a place of the slab.
func (p PostPiece) Under(slab string, at At) PostPiece {
	p.under, p.at = slab, at
	return p
}

// PostPart is a table leg.
type PostPart struct {
	Dia    unit.Length
	Height unit.Length // from the floor to the slab
	Middle geom.Vec    // in the room
	Under  string
}

func (p PostPiece) place(d *Design, id string) (*Part, faults) {
	bad := p.faults
	if p.under == "" {
		bad = bad.and(faultf("post %q carries nothing: Under(...)", id))
	}
	if len(bad) > 0 {
		return nil, bad
	}
	slab, bad := d.slab(p.under)
	if bad != nil {
		return nil, bad
	}
	s := slab.Slab
	own := geom.V(p.at.X, -p.at.Back)
	if foot := geom.Circle(own, p.dia/2, chord); !foot.Minus(s.UnderOutline()).Empty() {
		return nil, faults{faultf("post %q does not stand under %q with its whole top", id, p.under)}
	}
	middle := s.Pose.Plan(own)
	floor, under := d.Room.FloorAt(middle), s.Top-s.Thickness
	if under-floor < 100 {
		return nil, faults{faultf("post %q would be %s high: 100 mm at least", id, inWords(under-floor))}
	}
	for i, c := range []geom.Vec{geom.V(-1, -1), geom.V(1, -1), geom.V(1, 1), geom.V(-1, 1)} {
		at := own.Add(c.Mul(float64(postPlate) / 2))
		s.Features = append(s.Features, Feature{
			Name: fmt.Sprintf("%s P%d", id, i+1), Kind: Pilot, Face: UnderFace, At: at, Dia: 3.5, Depth: min(25, s.Thickness-10),
			Outline: geom.Circle(at, 1.75, chord), For: id,
		})
	}
	inner := 1 - 2*postWall/p.dia
	return &Part{
		Kind: KindPost, Material: "steel tube", Bears: []string{slab.ID},
		Post: &PostPart{Dia: p.dia, Height: under - floor, Middle: middle, Under: slab.ID},
		Bodies: []Body{{
			Name: id, Solid: geom.Cylinder(middle, p.dia/2, floor, under, chord, "post"), Material: "steel tube",
			Density: stock.Steel * unit.Density(1-inner*inner), Colour: SteelColour,
		}},
	}, nil
}
