package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// How far the wood goes: nobody told of the air of the room, so 30 to 65 % are
// assumed. The screws of the back angle hold the worktop; those at the sides go
// in slots.
func ExampleDesign_Movement() {
	room := measured()
	d := topped(room)
	for _, wall := range []string{"back", "left"} {
		d.Add("angle "+wall, model.Angle(stock.L50x50x6).Along(room.Wall(wall)).Under("worktop").
			ScrewedUp(model.Screws{Hole: 6, Moving: true, Pitch: 300, End: 65, Pilot: 4, Into: 28}))
	}
	d.Finish()
	m, _ := d.Movement("worktop")
	fmt.Printf("width %+.1f to %+.1f\n", float64(m.Width(m.Dry)), float64(m.Width(m.Damp)))
	fmt.Printf("held by %s, %.0f from the back edge\n", m.Held.By, float64(-m.Held.At.Y))
	for _, s := range m.Screws {
		if s.Hole.Slot > 0 {
			fmt.Printf("%s of %s: slot of %.0f\n", s.Hole.Name, s.Through.ID, float64(s.Hole.Slot))
		}
	}
	// Output:
	// width -6.4 to +6.8
	// held by screws in round holes, 26 from the back edge
	// S1 of angle left: slot of 12
	// S2 of angle left: slot of 8
	// S3 of angle left: slot of 4
}

// A board in front of a worktop: how wide their joint must be.
func ExampleDesign_OpenJoint() {
	room := measured()
	d := topped(room)
	d.Add("board", model.Slab(stock.Ash, 45).Between(room.Wall("left"), room.Wall("right")).Against(d.EdgeOf("worktop", "front").Gap(1)).
		Gaps(3, 4).Depth(200).SurfaceAt(750))
	for _, slab := range []string{"worktop", "board"} {
		d.Add("angle of "+slab, model.Angle(stock.L50x50x6).Along(room.Wall("right")).Under(slab).SetBack(0, 0).
			ScrewedUp(model.Screws{Hole: 6, Moving: true, Pitch: 150, End: 40, Pilot: 4, Into: 28}))
	}
	d.Finish()
	gap, ok := d.OpenJoint("board", "back")
	fmt.Printf("%.1f mm, %v\n", float64(gap), ok)
	// Output:
	// 4.0 mm, true
}
