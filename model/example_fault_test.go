package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// Mistakes do not panic and do not stop the rest. Each becomes a finding with
// the line of the call.
func ExampleDesign_Faults() {
	room := measured()
	d := model.NewDesign("desk", room)
	d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750).
		Hole("cable hole", model.At{X: 2400, Back: 100}, 60))
	d.Add("shelf", model.Shelf(stock.Ash, 30).
		Between(room.Wall("left"), room.Wall("rihgt")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(200).UndersideAt(1300))
	d.Add("angle", model.Angle(stock.L50x50x6).Along(room.Wall("left")).Under("shelf"))
	d.Finish()
	for _, f := range d.Faults() {
		fmt.Printf("%s, %s: %s\n", f.Line, f.Status, f.Why)
	}
	fmt.Println(len(d.Parts), "part is made")
	// Output:
	// model/example_fault_test.go:18, fail: hole "cable hole" lies outside the slab: the slab is 1594 mm long and 600 mm deep
	// model/example_fault_test.go:20, fail: there is no wall "rihgt" (nearest: "right")
	// model/example_fault_test.go:22, unknown: it needs the slab "shelf", which was left out because of a mistake in model/example_fault_test.go:20
	// 1 part is made
}
