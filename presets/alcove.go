package presets

import (
	"fmt"
	"strconv"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// alcoveParams are the parameters of the alcove, in millimetres.
type alcoveParams struct {
	Surface    unit.Length `is:"750" min:"400" max:"1100" help:"worktop surface above the floor"`
	Depth      unit.Length `is:"520" min:"250" max:"900" help:"worktop, back edge to the narrowest place of the natural front"`
	Thickness  unit.Length `is:"40" min:"25" max:"100" help:"worktop, finished"`
	ShelfThick unit.Length `is:"30" min:"18" max:"60" help:"shelves, finished"`
	ShelfDepth unit.Length `is:"280" min:"120" max:"600" help:"shelves"`
	Shelves    int         `is:"3" min:"0" max:"6" help:"how many shelves"`
	FirstShelf unit.Length `is:"1180" min:"800" max:"2000" help:"underside of the lowest shelf above the floor"`
	ShelfStep  unit.Length `is:"330" min:"150" max:"800" help:"from shelf to shelf"`
	ShelvesOn  string      `is:"cleats" of:"cleats angles" help:"what carries the shelves: battens of the same wood, or steel angles"`
	CleatWide  unit.Length `is:"45" min:"25" max:"80" help:"cleats of the shelves, out from the wall"`
	CleatHigh  unit.Length `is:"60" min:"40" max:"120" help:"cleats of the shelves, from the shelf down"`
	SideGap    unit.Length `is:"4" min:"0" max:"30" help:"to the side walls"`
	BackGap    unit.Length `is:"5" min:"0" max:"30" help:"to the back wall"`
	Section    string      `is:"L50x50x5" of:"L40x40x5 L50x50x5 L50x50x6 L60x60x6 L60x60x8" help:"steel angle under the worktop"`
	WallLeg    string      `is:"down" of:"down up" help:"upright leg of the angles: below the slab, or above, behind its edge"`
	LegGap     unit.Length `is:"3" min:"0" max:"30" help:"between the legs of two angles in a corner"`
	LegEnds    string      `is:"square" of:"square mitred" help:"ends of the angles in inside corners: one gives way to the other, or both are mitred"`
	ShorterBy  unit.Length `is:"0" min:"0" max:"400" help:"cut every angle shorter than its wall by this; 0 finds the least"`
	Pitch      unit.Length `is:"300" min:"100" max:"600" help:"largest distance of wall fixings and of screws"`
	Sitting    bool        `is:"yes" help:"somebody sits at it"`
	CableHole  unit.Length `is:"60" min:"20" max:"90" help:"cable hole near the back edge"`
}

// Alcove is a small worktop and shelves between three walls, open to the front.
var Alcove = model.NewPreset("alcove", "a small worktop and shelves between three walls, open to the front", alcove,
	model.Need{Wall: "left", Help: "left wall, from its front end to the back", About: 700},
	model.Need{Wall: "back", Help: "back wall", About: 1460},
	model.Need{Wall: "right", Help: "right wall, from the back to its front end", About: 700})

func alcove(s model.Site, p alcoveParams) *model.Design {
	r := s.Room
	left, back, right := r.Wall("left"), r.Wall("back"), r.Wall("right")

	steel := newLedger(p.Section, p.WallLeg, p.LegGap, p.Pitch, p.ShorterBy, p.Thickness)
	steel.mitred = p.LegEnds == "mitred"
	sideGap, backGap := steel.behind(p.SideGap), steel.behind(p.BackGap)
	d := model.NewDesign("Alcove", r)
	d.Add("worktop", model.Slab(stock.Oak, p.Thickness).
		Between(left, right).Against(back).Gaps(sideGap, backGap).
		Depth(p.Depth).Front(model.NaturalOf(s.Offers.OfferOf(stock.Oak.Name, 1), 7)).
		SurfaceAt(p.Surface).Eased(2).
		Hole("cable hole", model.At{X: 300, Back: 105}, p.CableHole).Serving("cables"))
	steel.carry(d, "worktop", back, left, right)

	light := newLedger("L40x40x5", p.WallLeg, p.LegGap, p.Pitch, p.ShorterBy, p.ShelfThick)
	light.mitred = steel.mitred
	light.into = min(p.ShelfThick-10, 18)
	wood := cleats{stock.Oak, p.CleatWide, p.CleatHigh, p.LegGap, p.Pitch, light.into}
	onCleats := p.ShelvesOn == "cleats"
	shelfSide, shelfBack := p.SideGap, p.BackGap
	if !onCleats {
		shelfSide, shelfBack = light.behind(p.SideGap), light.behind(p.BackGap)
	}
	for i := range p.Shelves {
		number := strconv.Itoa(i + 1)
		name := fmt.Sprintf("shelf %d", i+1)
		d.Add(name, model.Shelf(stock.Oak, p.ShelfThick).
			Between(left, right).Against(back).Gaps(shelfSide, shelfBack).
			Depth(p.ShelfDepth).UndersideAt(p.FirstShelf+unit.Length(i)*p.ShelfStep).Eased(1))
		if onCleats {
			wood.carry(d, name, number, back, left, right)
			continue
		}
		light.named(number).carry(d, name, left, right)
	}
	if p.Sitting {
		d.SitAt("place", "worktop", back.Length()/2-p.SideGap, s.People)
	}
	return d
}
