package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// A table on castors parks under a slab and rolls out.
func ExampleRollOut() {
	room := measured()
	d := topped(room)
	p := d.Add("table", model.RollOut(stock.Ash, 700, 450, 560).Boards(24).Castors(70).
		Parked("worktop", 100, 40).Travels(600))
	listParts(d)
	fmt.Printf("of %d bodies, %.1f kg\n", len(p.Bodies), float64(p.Mass()))
	// Output:
	// worktop: 1594.0 x 600.0 x 45
	// table: 700 x 450 x 560
	// of 9 bodies, 20.3 kg
}

// Somebody sits at the worktop: the legs need their room.
func ExampleDesign_SitAt() {
	room := measured()
	d := topped(room)
	d.SitAt("desk place", "worktop", 800, []model.Person{{Name: "Kim", Stature: 1750, Sex: "female", Shoe: 25}})
	for _, z := range d.Zones {
		fmt.Printf("%s: %.0f high\n", z.Name, float64(z.Height))
	}
	legs, _ := model.LegRoomOf(model.Person{Name: "Kim", Stature: 1750, Sex: "female", Shoe: 25, Thigh: 165, Seat: 450})
	fmt.Printf("measured on herself: %.0f\n", float64(legs.Thigh))
	// Output:
	// thighs and knees of Kim at desk place: 646 high
	// feet of Kim at desk place: 120 high
	// measured on herself: 660
}

// A space that has nothing to do with sitting, such as the swing of a door.
func ExampleDesign_KeepFree() {
	room := measured()
	d := topped(room)
	d.KeepFree(model.Zone{Name: "drawer", Kind: model.OtherZone, Height: 400,
		Plan: geom.Rect(geom.V(1100, -600), geom.V(1550, -50))})
	fmt.Printf("%d zone, %.0f litres\n", len(d.Zones), float64(d.Zones[0].Solid().Volume())*1e-6)
	// Output:
	// 1 zone, 99 litres
}

// A preset is a function of a site and of parameters with their bounds.
func ExampleNewPreset() {
	type params struct {
		Height unit.Length `is:"750" min:"500" max:"1100" help:"surface above the floor"`
		Wood   string      `is:"ash" of:"ash oak" help:"what it is made of"`
	}
	ledge := model.NewPreset("ledge", "a ledge between two walls", func(s model.Site, p params) *model.Design {
		wood := map[string]stock.Species{"ash": stock.Ash, "oak": stock.Oak}[p.Wood]
		d := model.NewDesign("Ledge", s.Room)
		d.Add("ledge", model.Slab(wood, 35).
			Between(s.Room.Wall("left"), s.Room.Wall("right")).Against(s.Room.Wall("back")).
			Gaps(3, 4).Depth(300).SurfaceAt(p.Height))
		return d
	}, model.Need{Wall: "left"}, model.Need{Wall: "back"}, model.Need{Wall: "right"})

	for _, p := range ledge.Params {
		fmt.Printf("%s, a %s: %s; %s when not said\n", p.Name, p.Kind, p.Help, p.Default)
	}
	d := ledge.Build(model.Site{Room: measured()}, map[string]model.Setting{
		"wood":   {Text: "oak"},
		"height": {Length: 5000, Pos: model.Pos{File: "job.yaml", Line: 31, Column: 9}},
	})
	part := d.Part("ledge")
	fmt.Printf("%s at %.0f\n", part.Material, float64(part.Slab.Top))
	for _, f := range d.Faults() {
		fmt.Println(f.Line, f.Why)
	}
	// Output:
	// height, a length: surface above the floor; 750 when not said
	// wood, a choice: what it is made of; ash when not said
	// European oak at 1100
	// job.yaml:31:9 parameter height is 5000 mm, allowed are 500 to 1100 mm
}
