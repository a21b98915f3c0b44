package presets

import (
	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// studioParams are the parameters of the studio, in millimetres.
type studioParams struct {
	Surface       unit.Length `is:"755" min:"600" max:"1100" help:"worktop surface above the floor"`
	Depth         unit.Length `is:"780" min:"400" max:"1000" help:"worktop, back edge to the narrowest place of the natural front"`
	Thickness     unit.Length `is:"45" min:"25" max:"100" help:"worktop, infill and shelves, finished"`
	SideGap       unit.Length `is:"5" min:"0" max:"30" help:"worktop to the side walls"`
	BackGap       unit.Length `is:"6" min:"0" max:"30" help:"worktop and infill to the walls behind"`
	JointGap      unit.Length `is:"2" min:"0" max:"10" help:"worktop to infill"`
	Joint         string      `is:"open" of:"open dowels plates glued" help:"how infill and worktop are joined"`
	Section       string      `is:"L50x50x6" of:"L40x40x5 L50x50x5 L50x50x6 L60x60x6 L60x60x8" help:"steel angle on the walls"`
	WallLeg       string      `is:"down" of:"down up" help:"upright leg of the angles: below the slab, or above, behind its edge"`
	LegGap        unit.Length `is:"3" min:"0" max:"30" help:"between the legs of two angles in a corner"`
	LegEnds       string      `is:"square" of:"square mitred" help:"ends of the angles in inside corners: one gives way to the other, or both are mitred"`
	ShorterBy     unit.Length `is:"0" min:"0" max:"400" help:"cut every angle shorter than its wall by this; 0 finds the least"`
	Pitch         unit.Length `is:"300" min:"100" max:"600" help:"largest distance of wall fixings and of screws"`
	SeatAt        unit.Length `is:"1700" min:"300" max:"6000" help:"middle of the seat, from the left end of the worktop"`
	TableAt       unit.Length `is:"230" min:"0" max:"6000" help:"left side of the roll-out table, from the left end of the worktop"`
	TableWidth    unit.Length `is:"900" min:"300" max:"2000" help:"roll-out table, along the worktop"`
	TableDepth    unit.Length `is:"480" min:"250" max:"900" help:"roll-out table, front to back"`
	TableHeight   unit.Length `is:"560" min:"200" max:"900" help:"roll-out table with its castors"`
	ShelfUnder    unit.Length `is:"1420" min:"900" max:"2200" help:"underside of the shelves above the floor"`
	ShelfLength   unit.Length `is:"1900" min:"300" max:"4000" help:"long shelf"`
	ShelfDepth    unit.Length `is:"240" min:"120" max:"400" help:"both shelves"`
	SideShelf     unit.Length `is:"620" min:"300" max:"2000" help:"short shelf on the right wall"`
	SideShelfFrom unit.Length `is:"300" min:"0" max:"3000" help:"short shelf, from the back right corner"`
	CableHole     unit.Length `is:"60" min:"20" max:"90" help:"cable holes near the back edge"`
}

// Studio is a print studio: one worktop from wall to wall with an infill in a
// recess of the back wall, two shelves and a roll-out table.
var Studio = model.NewPreset("studio", "wall-to-wall worktop with a recess infill, two shelves, roll-out table", studio,
	model.Need{Wall: "left", Help: "left wall, from its front end to the back", About: 1400},
	model.Need{Wall: "back left", Help: "back wall, from the left corner to the recess", About: 910},
	model.Need{Wall: "niche left", Help: "left cheek of the recess", About: 240},
	model.Need{Wall: "niche back", Help: "back of the recess", About: 780},
	model.Need{Wall: "niche right", Help: "right cheek of the recess", About: 240},
	model.Need{Wall: "back right", Help: "back wall, from the recess to the right corner", About: 680},
	model.Need{Wall: "right", Help: "right wall, from the back to its front end", About: 1400})

func studio(s model.Site, p studioParams) *model.Design {
	r := s.Room
	left, right := r.Wall("left"), r.Wall("right")
	backLeft, backRight := r.Wall("back left"), r.Wall("back right")
	nicheLeft, nicheBack, nicheRight := r.Wall("niche left"), r.Wall("niche back"), r.Wall("niche right")
	whole := r.Straight(backLeft.From.Name, backRight.To.Name)

	steel := newLedger(p.Section, p.WallLeg, p.LegGap, p.Pitch, p.ShorterBy, p.Thickness)
	steel.mitred = p.LegEnds == "mitred"
	sideGap, backGap := steel.behind(p.SideGap), steel.behind(p.BackGap)
	d := model.NewDesign("Print studio", r)
	d.Add("worktop", model.Slab(stock.Ash, p.Thickness).
		Between(left, right).Against(whole).Gaps(sideGap, backGap).
		Depth(p.Depth).Front(model.NaturalOf(s.Offers.OfferOf(stock.Ash.Name, 1), 9)).
		SurfaceAt(p.Surface).Eased(2).
		Hole("cable hole left", model.At{X: 560, Back: 110}, p.CableHole).Serving("cables").
		Hole("cable hole right", model.At{X: 2130, Back: 110}, p.CableHole).Serving("cables").
		Groove("cable run", model.UnderFace, 20, 18, model.At{X: 560, Back: 110}, model.At{X: 2130, Back: 110}).Serving("cables"))
	d.Add("infill", model.Slab(stock.Ash, p.Thickness).
		Between(nicheLeft, nicheRight).Against(nicheBack).Gaps(sideGap, backGap).
		Meeting("worktop", p.JointGap).SurfaceAt(p.Surface).Eased(2))
	d.Join("infill", "worktop", model.JointKind(p.Joint))

	steel.carry(d, "worktop", backLeft, backRight, left, right)
	steel.carry(d, "infill", nicheBack, nicheLeft, nicheRight)

	shelf := model.Shelf(stock.Ash, p.Thickness).Gaps(p.SideGap, 3).Depth(p.ShelfDepth).UndersideAt(p.ShelfUnder).Eased(2).
		OnRods(model.Rods{Dia: 16, InWall: 120, InShelf: 160, Pitch: 450, End: 110})
	d.AddShelf("long shelf", shelf.
		Between(whole.MarkFromRight(p.ShelfLength+p.SideGap), right).Against(whole).
		Groove("light run", model.UnderFace, 18, 12, model.At{X: 40, Back: 200}, model.At{X: p.ShelfLength - 40, Back: 200}).Serving("light"))
	d.AddShelf("short shelf", shelf.
		Between(right.Mark(p.SideShelfFrom), right.Mark(p.SideShelfFrom+p.SideShelf)).Against(right))

	d.Add("roll-out table", model.RollOut(stock.Ash, p.TableWidth, p.TableDepth, p.TableHeight).Parked("worktop", p.TableAt, 40))
	d.SitAt("cutting place", "worktop", p.SeatAt, s.People)
	return d
}
