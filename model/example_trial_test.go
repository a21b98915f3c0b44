package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// What an angle along one more wall would be; the design stays as it is.
func ExampleDesign_Trial() {
	room := measured()
	d := topped(room)
	d.Finish()
	a := d.Trial("one more angle", model.Angle(stock.L50x50x6).Along(room.Wall("back")).Under("worktop"))
	fmt.Println(a.ID, a.Angle.Title(), d.Part("one more angle") == nil)
	// Output:
	// one more angle L50x50x6 x 1593.0 true
}
