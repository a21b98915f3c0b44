package model_test

import (
	"fmt"
	"math"

	"slabwright/model"
	"slabwright/model/stock"
)

// How corners spread together: the standard deviations of a corner are the
// roots of the diagonal.
func ExampleRoom_Covariance() {
	r := measured()
	cov, ok := r.Covariance()
	c := r.Corners[2]
	fmt.Println(ok, len(cov))
	fmt.Printf("%s: %.2f along x, %.2f told by the corner\n", c.Name, math.Sqrt(cov[4][4]), c.SDX)
	// Output:
	// true 8
	// C: 1.09 along x, 1.09 told by the corner
}

// A worktop that was cut before the room was measured again: here it is told
// as it was drawn, with one diagonal measured anew.
func ExamplePart_CutAsDrawn() {
	top := model.NewPreset("top", "a worktop", func(s model.Site, _ struct{}) *model.Design {
		d := model.NewDesign("top", s.Room)
		d.Add("top", model.Slab(stock.Ash, 40).Between(s.Room.Wall("left"), s.Room.Wall("right")).Against(s.Room.Wall("back")).
			Gaps(4, 5).Depth(500).SurfaceAt(750))
		return d
	})
	cut, _ := top.Build(model.Site{Room: measured()}, nil).Part("top").CutAsDrawn("2026-10-02")
	d := top.Build(model.Site{Room: measured(), Cut: []model.CutPart{cut}}, nil)
	d.Finish()
	fmt.Print(cut.Told())
	fmt.Println("cut on", d.Part("top").Cut.On, "and checked:", d.Part("top").Cut.Checked)
	// Output:
	// - part: top
	//   on: 2026-10-02
	//   sizes:
	//     - {edge: left, is: 500}
	//     - {edge: back, is: 1592}
	//     - {edge: right, is: 500}
	//     - {edge: front, is: 1592}
	//     - {between: 1-3, is: 1668.7}
	//     - {between: 2-4, is: 1668.7}
	// cut on 2026-10-02 and checked: true
}
