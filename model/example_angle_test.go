package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// topped starts a design with a worktop, for the angles of the examples.
func topped(room *model.Room) *model.Design {
	d := model.NewDesign("desk", room)
	d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750))
	return d
}

// Angles run as far along their walls as the slab does. In a corner the later
// one gives way to the earlier one: by its leg of 50 mm, the 2 mm by which the
// back wall bulges, and the gap of 3 mm.
func ExampleAngle() {
	room := measured()
	d := topped(room)
	for _, wall := range []string{"back", "left", "right"} {
		p := d.Add("angle "+wall, model.Angle(stock.L50x50x6).Along(room.Wall(wall)).Under("worktop").ClearOf(3))
		fmt.Printf("%s: %s, %.0f from its left corner\n", p.ID, p.Angle.Title(), float64(p.Angle.Start))
	}
	// Output:
	// angle back: L50x50x6 x 1593.0, 3 from its left corner
	// angle left: L50x50x6 x 510.0, 634 from its left corner
	// angle right: L50x50x6 x 510.0, 55 from its left corner
}

// What a yard is often told instead, with round numbers.
func ExampleAnglePiece_ShorterBy() {
	room := measured()
	d := topped(room)
	back := model.Angle(stock.L50x50x6).Along(room.Wall("back")).Under("worktop")
	d.Add("100 shorter, in the middle", back.ShorterBy(100))
	d.Add("set back by hand", back.SetBack(10, 60))
	d.Add("free end 80 behind the front", model.Angle(stock.L40x40x5).Along(room.Wall("right")).Under("worktop").FreeEnd(80))
	listParts(d)
	// Output:
	// worktop: 1594.0 x 600.0 x 45
	// 100 shorter, in the middle: L50x50x6 x 1500.0
	// set back by hand: L50x50x6 x 1530.0
	// free end 80 behind the front: L40x40x5 x 522.0
}

// Holes for wall anchors go into the wall leg, holes for screws into the seat
// leg; screws stay away from anchors and get their pilots in the slab. The grain
// runs along the back wall, across this bar, so the wood moves along it.
func ExampleAnglePiece_ScrewedUp() {
	room := measured()
	d := topped(room)
	p := d.Add("angle", model.Angle(stock.L50x50x6).Along(room.Wall("left")).Under("worktop").
		Anchored(model.Anchors{Hole: 11, Pitch: 300, End: 40}).
		ScrewedUp(model.Screws{Hole: 6, Slot: 8, Pitch: 300, End: 65, Pilot: 4, Into: 28}))
	for _, h := range p.Angle.Holes {
		fmt.Printf("%s in the %s at %.0f, %.0f from the heel, slot along the bar: %v\n", h.Name, h.Leg, float64(h.X), float64(h.FromHeel), h.Along)
	}
	fmt.Printf("%d pilots in the worktop\n", len(d.Part("worktop").Slab.Features))
	// Output:
	// W1 in the wall leg at 40, 30 from the heel, slot along the bar: false
	// W2 in the wall leg at 281, 30 from the heel, slot along the bar: false
	// W3 in the wall leg at 522, 30 from the heel, slot along the bar: false
	// S1 in the seat leg at 65, 37 from the heel, slot along the bar: true
	// S2 in the seat leg at 256, 37 from the heel, slot along the bar: true
	// S3 in the seat leg at 497, 37 from the heel, slot along the bar: true
	// 3 pilots in the worktop
}

// With its leg up an angle leaves the knees free, behind a wider gap.
func ExampleAnglePiece_LegUp() {
	room := measured()
	d := model.NewDesign("desk", room)
	d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 10).Depth(600).SurfaceAt(750))
	down := d.Add("down", model.Angle(stock.L50x50x6).Along(room.Wall("left")).Under("worktop"))
	up := d.Add("up", model.Angle(stock.L50x50x6).Along(room.Wall("back")).Under("worktop").LegUp())
	d.Finish()
	for _, p := range []*model.Part{down, up} {
		fmt.Printf("%s: from %.0f to %.0f above the floor\n", p.ID, float64(p.Bounds().Min.Z), float64(p.Bounds().Max.Z))
	}
	// Output:
	// down: from 655 to 705 above the floor
	// up: from 699 to 749 above the floor
}

// Equal bars share a number. Of a bar and its mirror image one would be the left
// and one the right; here there is none.
func ExampleDesign_HandOf() {
	room := measured()
	d := topped(room)
	holes := model.Anchors{Hole: 11, Pitch: 200, End: 40}
	for _, wall := range []string{"left", "right"} {
		d.Add("angle "+wall, model.Angle(stock.L50x50x6).Along(room.Wall(wall)).Under("worktop").Anchored(holes))
	}
	d.Finish()
	for _, p := range d.Parts[1:] {
		hand, other := d.HandOf(p)
		fmt.Printf("%s: number %d, hand %q, mirrored: %v, made %d times\n", p.ID, p.Mark, hand, other != nil, len(d.Alike(p)))
	}
	// Output:
	// angle left: number 2, hand "", mirrored: false, made 2 times
	// angle right: number 2, hand "", mirrored: false, made 2 times
}

func ExampleGapBehind() {
	fmt.Println(model.GapBehind(stock.L60x60x6, 11, 4), model.GapBehind(stock.L60x60x6, 11, 12))
	// Output:
	// 14 18
}
