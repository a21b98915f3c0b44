package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// Cleats of 45 x 60 mm under a worktop: bolts of 8 mm stand 32 mm below the top, four
// of their diameters. In the corner the second one gives way to the first by its
// width, the 2 mm by which the back wall bulges, and the gap of 3 mm.
func ExampleCleat() {
	room := measured()
	d := topped(room)
	for _, wall := range []string{"back", "right"} {
		p := d.Add("cleat "+wall, model.Cleat(stock.Ash, 45, 60).Along(room.Wall(wall)).Under("worktop").ClearOf(3).
			Anchored(model.Anchors{Hole: 9, Pitch: 300, End: 60}).
			ScrewedUp(model.Screws{Hole: 7, Moving: true, Pitch: 300, End: 35, Pilot: 4, Into: 28}))
		h := p.Cleat.Holes[0]
		fmt.Printf("%s: %s, %.0f from its left corner, %s at %.0f, %.0f below its top\n", p.ID, p.Cleat.Title(), float64(p.Cleat.Start), h.Name, float64(h.X), float64(h.FromHeel))
	}
	for _, p := range d.BracketsUnder("worktop") {
		back, _ := model.SetBackFrom(p.Bracket(), room.Wall("right"), false)
		fmt.Printf("%s stands out %.0f, hangs down %.0f\n", p.ID, float64(p.Bracket().Deep()), float64(d.LegBelow("worktop")))
		if p.Cleat.Wall.Name == "right" {
			fmt.Printf("%.0f from the corner\n", float64(back))
		}
	}
	// Output:
	// cleat back: 45 x 60 x 1593.0, 3 from its left corner, W1 at 60, 32 below its top
	// cleat right: 45 x 60 x 535.0, 50 from its left corner, W1 at 60, 32 below its top
	// cleat back stands out 45, hangs down 60
	// cleat right stands out 45, hangs down 60
	// 50 from the corner
}
