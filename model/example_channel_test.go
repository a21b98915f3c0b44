package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
)

// A lid closes a groove flush with the underside: it lies in a rebate wider
// than the groove.
func ExampleSlabPiece_Lidded() {
	room := measured()
	d := model.NewDesign("desk", room)
	p := d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750).
		Groove("cable run", model.UnderFace, 20, 18, model.At{X: 400, Back: 100}, model.At{X: 1200, Back: 100}).Lidded(32, 4))
	d.Finish()
	f := p.Slab.Features[0]
	groove, lid := f.CutLength()
	fmt.Printf("groove %.0f mm long, lid %.0f x %.0f x %.0f mm, %.0f mm deep below it\n",
		float64(groove), float64(lid), float64(f.Lid.Width), float64(f.Lid.Thick), float64(f.Clear()))
	// Output:
	// groove 800 mm long, lid 800 x 32 x 4 mm, 14 mm deep below it
}
