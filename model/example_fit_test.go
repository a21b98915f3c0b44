package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/calc/fit"
)

// How surely the worktop goes in between the walls, and what to order from a
// shop that keeps +0/-2; and from one that keeps +-0.5 when 3 mm must be left.
func ExampleDesign_FitOf() {
	d := topped(measured())
	f, _ := d.FitOf("worktop")
	w := f.Ways[0]
	fmt.Printf("%s from %s to %s: %.1f drawn, order %.0f +0/-2\n", w.Name, w.From, w.To, float64(w.Size), float64(w.Order.Size))
	fmt.Printf("as drawn it fits with %.1f\n", w.Chance.Fits(0))

	f, _ = d.FitWith("worktop", model.FitWish{Least: 3, Wider: 4, Sure: 0.95, Shop: fit.Tolerance{Plus: 0.5, Minus: 0.5}})
	fmt.Printf("with 3 mm left: %.1f, order %.0f\n", f.Ways[0].Chance.Fits(0), float64(f.Ways[0].Order.Size))
	// Output:
	// length from left to right: 1594.0 drawn, order 1593 +0/-2
	// as drawn it fits with 0.9
	// with 3 mm left: 0.2, order 1591
}
