package presets

import (
	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// cornerParams are the parameters of the corner, in millimetres.
type cornerParams struct {
	Surface   unit.Length `is:"760" min:"600" max:"1100" help:"surface of both worktops above the floor"`
	Depth     unit.Length `is:"700" min:"400" max:"1000" help:"worktop along the back wall"`
	SideDepth unit.Length `is:"620" min:"300" max:"1000" help:"worktop along the left wall, to the narrowest place of its natural front"`
	Thickness unit.Length `is:"45" min:"25" max:"100" help:"both worktops, finished"`
	SideGap   unit.Length `is:"4" min:"0" max:"30" help:"to the walls at the ends"`
	BackGap   unit.Length `is:"8" min:"0" max:"30" help:"to the walls behind"`
	JointGap  unit.Length `is:"2" min:"0" max:"10" help:"between the two worktops"`
	Joint     string      `is:"open" of:"open dowels plates glued" help:"how the two worktops are joined"`
	Section   string      `is:"L60x60x6" of:"L40x40x5 L50x50x5 L50x50x6 L60x60x6 L60x60x8" help:"steel angle on the walls"`
	WallLeg   string      `is:"down" of:"down up" help:"upright leg of the angles: below the slab, or above, behind its edge"`
	LegGap    unit.Length `is:"3" min:"0" max:"30" help:"between the legs of two angles in a corner"`
	LegEnds   string      `is:"square" of:"square mitred" help:"ends of the angles in inside corners: one gives way to the other, or both are mitred"`
	ShorterBy unit.Length `is:"0" min:"0" max:"400" help:"cut every angle shorter than its wall by this; 0 finds the least"`
	Pitch     unit.Length `is:"220" min:"100" max:"600" help:"largest distance of wall fixings and of screws"`
	LegAt     unit.Length `is:"1650" min:"100" max:"5000" help:"table leg under the front of the left worktop, from its front end"`
	SeatAt    unit.Length `is:"1500" min:"300" max:"6000" help:"middle of the seat, from the left end of the back worktop"`
	CableHole unit.Length `is:"60" min:"20" max:"90" help:"cable hole near the back edge"`
}

// Corner is an L of two worktops in a closed room: one along the back wall from
// wall to wall, one along the left wall from the first to the front wall.
var Corner = model.NewPreset("corner", "two worktops that meet in an L: along the back wall and along the left wall", corner,
	model.Need{Wall: "left", Help: "left wall, from the front to the back", About: 2500},
	model.Need{Wall: "back", Help: "back wall", About: 2800},
	model.Need{Wall: "right", Help: "right wall, from the back to the front", About: 2500},
	model.Need{Wall: "front", Help: "front wall, from the right to the left", About: 2800})

func corner(s model.Site, p cornerParams) *model.Design {
	r := s.Room
	left, back, right, front := r.Wall("left"), r.Wall("back"), r.Wall("right"), r.Wall("front")

	steel := newLedger(p.Section, p.WallLeg, p.LegGap, p.Pitch, p.ShorterBy, p.Thickness)
	steel.mitred = p.LegEnds == "mitred"
	sideGap, backGap := steel.behind(p.SideGap), steel.behind(p.BackGap)
	d := model.NewDesign("Corner desk", r)
	d.Add("back worktop", model.Slab(stock.Oak, p.Thickness).
		Between(left, right).Against(back).Gaps(sideGap, backGap).
		Depth(p.Depth).SurfaceAt(p.Surface).Eased(2).
		Hole("cable hole", model.At{X: 900, Back: 120}, p.CableHole).Serving("cables"))
	d.Add("side worktop", model.Slab(stock.Oak, p.Thickness).
		Between(front, d.EdgeOf("back worktop", "front").Gap(p.JointGap)).Against(left).Gaps(sideGap, backGap).
		Depth(p.SideDepth).Front(model.NaturalOf(s.Offers.OfferOf(stock.Oak.Name, 1), 9)).
		SurfaceAt(p.Surface).Eased(2))
	d.Join("side worktop", "back worktop", model.JointKind(p.Joint))

	steel.carry(d, "back worktop", back, left, right)
	steel.named("side").carry(d, "side worktop", left, front)

	d.Add("leg", model.Post(60).Under("side worktop", model.At{X: p.LegAt, Back: p.SideDepth - 70}))

	d.SitAt("desk", "back worktop", p.SeatAt, s.People)
	return d
}
