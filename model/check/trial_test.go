package check_test

import (
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// trialParams are the knobs of a bench that can be built wrong in every way.
type trialParams struct {
	Surface     unit.Length `is:"745" min:"20" max:"1200" help:"surface"`
	Thickness   unit.Length `is:"45" min:"18" max:"100" help:"thickness"`
	Depth       unit.Length `is:"600" min:"100" max:"1000" help:"depth"`
	SideGap     unit.Length `is:"4" min:"0" max:"40" help:"gap to the side walls"`
	BackGap     unit.Length `is:"4" min:"0" max:"40" help:"gap to the back wall"`
	Eased       unit.Length `is:"0" min:"0" max:"10" help:"chamfer"`
	Natural     bool        `is:"no" help:"natural front"`
	Section     string      `is:"L50x50x6" of:"L40x40x5 L50x50x6 L60x60x6 L80x80x8" help:"steel angle"`
	WrongMass   bool        `is:"no" help:"a section with the mass of another"`
	On          string      `is:"all" of:"all sides back left none" help:"walls with an angle"`
	CleatHigh   unit.Length `is:"0" min:"0" max:"200" help:"cleats this high instead of angles; 0: angles"`
	CleatWide   unit.Length `is:"45" min:"15" max:"100" help:"cleats out from the wall"`
	Mitred      bool        `is:"no" help:"ends of angles mitred"`
	LegUp       bool        `is:"no" help:"wall legs up"`
	ShorterBy   unit.Length `is:"0" min:"0" max:"400" help:"angles shorter than their walls"`
	Anchors     bool        `is:"yes" help:"wall fixings"`
	AnchorEnd   unit.Length `is:"40" min:"1" max:"300" help:"first wall fixing from the end"`
	AnchorHole  unit.Length `is:"11" min:"5" max:"40" help:"wall fixings in the steel"`
	Pitch       unit.Length `is:"300" min:"100" max:"900" help:"wall fixings"`
	Screws      bool        `is:"yes" help:"screws into the slab"`
	ScrewEnd    unit.Length `is:"65" min:"1" max:"200" help:"first screw from the end"`
	Slot        unit.Length `is:"8" min:"0" max:"60" help:"slots for screws, beyond their width"`
	Moving      bool        `is:"no" help:"slots as long as the wood asks for, instead of slot"`
	Into        unit.Length `is:"25" min:"5" max:"60" help:"screws in the wood"`
	HoleAt      unit.Length `is:"0" min:"0" max:"1500" help:"hole near the left wall at this distance from the left end; 0: none"`
	Groove      unit.Length `is:"0" min:"0" max:"60" help:"depth of a groove in the underside; 0: none"`
	Pocket      unit.Length `is:"0" min:"0" max:"200" help:"depth of a pocket; 0: none"`
	ShelfUnder  unit.Length `is:"0" min:"0" max:"3000" help:"shelf on rods with its underside here; 0: none"`
	RodDia      unit.Length `is:"16" min:"6" max:"24" help:"rods of the shelf, diameter"`
	RodInWall   unit.Length `is:"120" min:"20" max:"500" help:"rods of the shelf, in the wall"`
	RodPitch    unit.Length `is:"450" min:"100" max:"2000" help:"rods of the shelf"`
	LegAt       unit.Length `is:"0" min:"0" max:"3000" help:"table leg at this distance from the left end; 0: none"`
	LegBack     unit.Length `is:"300" min:"50" max:"1000" help:"table leg from the back edge"`
	SplitAt     unit.Length `is:"0" min:"0" max:"1500" help:"the bench in two pieces, the left one so long; 0: in one"`
	JointGap    unit.Length `is:"1" min:"0" max:"10" help:"between both"`
	Joint       string      `is:"open" of:"open dowels plates glued" help:"how both are joined"`
	JointLegs   bool        `is:"no" help:"a table leg at each side of the joint"`
	TableAt     unit.Length `is:"0" min:"0" max:"2000" help:"roll-out table, left side; 0: none"`
	TableHeight unit.Length `is:"560" min:"200" max:"900" help:"roll-out table"`
	SeatAt      unit.Length `is:"0" min:"0" max:"2000" help:"somebody sits here; 0: nobody"`
	KeepFree    unit.Length `is:"0" min:"0" max:"2000" help:"height of a space to keep free under the middle; 0: none"`
	Ghost       bool        `is:"no" help:"a part of which no solid could be made"`
}

// trial is a bench between three walls.
var trial = model.NewPreset("trial", "a bench between three walls", bench,
	model.Need{Wall: "left", Help: "left wall"}, model.Need{Wall: "back", Help: "back wall"}, model.Need{Wall: "right", Help: "right wall"})

func bench(s model.Site, p trialParams) *model.Design {
	r := s.Room
	left, back, right := r.Wall("left"), r.Wall("back"), r.Wall("right")
	d := model.NewDesign("trial bench", r)

	end := right.Gap(p.SideGap)
	if p.SplitAt > 0 {
		end = back.Mark(p.SplitAt).Gap(0)
	}
	top := model.Slab(stock.Ash, p.Thickness).Between(left, end).Against(back).Gaps(p.SideGap, p.BackGap).
		Depth(p.Depth).SurfaceAt(p.Surface).Eased(p.Eased)
	if p.Natural {
		top = top.Front(model.NaturalOf(s.Offers.OfferOf(stock.Ash.Name, 1), 6))
	}
	if p.HoleAt > 0 {
		top = top.Hole("cable hole", model.At{X: p.HoleAt, Back: 200}, 60)
	}
	if p.Groove > 0 {
		top = top.Groove("cable run", model.UnderFace, 20, p.Groove, model.At{X: 200, Back: 300}, model.At{X: 600, Back: 300})
	}
	if p.Pocket > 0 {
		top = top.Pocket("driver", model.UnderFace, model.At{X: 200, Back: 300}, 120, 60, p.Pocket)
	}
	d.Add("bench", top)
	if p.SplitAt > 0 {
		p.split(d, left, back, right)
	}
	for _, w := range map[string][]*model.Wall{"all": {left, back, right}, "sides": {left, right}, "back": {back}, "left": {left}}[p.On] {
		if p.SplitAt > 0 && w == right {
			continue // under the other piece
		}
		if p.CleatHigh > 0 {
			d.Add("cleat "+w.Name, p.cleat().Along(w).Under("bench"))
			continue
		}
		d.Add("angle "+w.Name, p.angle().Along(w).Under("bench"))
	}
	if p.LegAt > 0 {
		d.Add("leg", model.Post(60).Under("bench", model.At{X: p.LegAt, Back: p.LegBack}))
	}
	if p.ShelfUnder > 0 {
		d.Add("shelf", model.Shelf(stock.Ash, 40).Between(left, right).Against(back).Gaps(p.SideGap, p.BackGap).
			Depth(240).UndersideAt(p.ShelfUnder).OnRods(model.Rods{Dia: p.RodDia, InWall: p.RodInWall, InShelf: 160, Pitch: p.RodPitch, End: 110}))
	}
	if p.TableAt > 0 {
		d.Add("press table", model.RollOut(stock.Ash, 500, 400, p.TableHeight).Parked("bench", p.TableAt, 40))
	}
	if p.SeatAt > 0 {
		d.SitAt("desk", "bench", p.SeatAt, s.People)
	}
	if p.KeepFree > 0 {
		d.KeepFree(model.Zone{Name: "the plan chest", Kind: model.OtherZone, Plan: geom.Rect(geom.V(600, -500), geom.V(1000, -20)), Height: p.KeepFree})
	}
	if p.Ghost {
		d.Parts = append(d.Parts, &model.Part{ID: "ghost", Kind: model.KindSlab})
	}
	return d
}

// split adds the other piece of the bench, on angles of its own.
func (p trialParams) split(d *model.Design, left, back, right *model.Wall) {
	d.Add("bench end", model.Slab(stock.Ash, p.Thickness).Between(d.EdgeOf("bench", "right").Gap(p.JointGap), right).Against(back).
		Gaps(p.SideGap, p.BackGap).Depth(p.Depth).SurfaceAt(p.Surface).Eased(p.Eased))
	d.Join("bench end", "bench", model.JointKind(p.Joint))
	for _, w := range map[string][]*model.Wall{"all": {back, right}, "sides": {right}, "back": {back}}[p.On] {
		d.Add("end "+w.Name, p.angle().Along(w).Under("bench end"))
	}
	if p.JointLegs {
		d.Add("leg left of the joint", model.Post(60).Under("bench", model.At{X: p.SplitAt - p.SideGap - 60, Back: p.Depth - 80}))
		d.Add("leg right of the joint", model.Post(60).Under("bench end", model.At{X: 60, Back: p.Depth - 80}))
	}
}

func (p trialParams) cleat() model.CleatPiece {
	c := model.Cleat(stock.Ash, p.CleatWide, p.CleatHigh).ClearOf(3)
	if p.Anchors {
		c = c.Anchored(model.Anchors{Hole: p.AnchorHole, Pitch: p.Pitch, End: p.AnchorEnd})
	}
	if p.Screws {
		c = c.ScrewedUp(model.Screws{Hole: 7, Moving: true, Pitch: p.Pitch, End: p.ScrewEnd, Pilot: 4, Into: p.Into})
	}
	return c
}

func (p trialParams) angle() model.AnglePiece {
	section, err := stock.Angle(p.Section)
	if err != nil {
		panic(err) // the parameter is a choice of known sections
	}
	if p.WrongMass {
		section.Mass = stock.L60x60x8.Mass
	}
	a := model.Angle(section).ClearOf(3)
	if p.LegUp {
		a = a.LegUp()
	}
	if p.Mitred {
		a = a.Mitred()
	}
	if p.Anchors {
		a = a.Anchored(model.Anchors{Hole: p.AnchorHole, Pitch: p.Pitch, End: p.AnchorEnd})
	}
	if p.Screws {
		if p.Moving {
			p.Slot = 0
		}
		a = a.ScrewedUp(model.Screws{Hole: 6, Slot: p.Slot, Moving: p.Moving, Pitch: p.Pitch, End: p.ScrewEnd, Pilot: 4, Into: p.Into})
	}
	if p.ShorterBy > 0 {
		a = a.ShorterBy(p.ShorterBy)
	}
	return a
}
