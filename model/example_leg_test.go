package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// Steel hangs under a slab as far as the leg on the wall is long, or no further
// than it is thick where that leg stands up behind the slab.
func ExampleDesign_LegBelow() {
	room := measured()
	d := topped(room)
	d.Add("angle back", model.Angle(stock.L50x50x6).Along(room.Wall("back")).Under("worktop").LegUp())
	fmt.Println("leg up:", d.LegBelow("worktop"))
	d.Add("angle left", model.Angle(stock.L50x50x6).Along(room.Wall("left")).Under("worktop"))
	fmt.Println("leg down:", d.LegBelow("worktop"))
	// Output:
	// leg up: 6
	// leg down: 50
}
