package model_test

import (
	"fmt"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/stock"
)

// A table leg stands under a corner that no wall carries. The floor is 8 mm lower
// there: 750 - 45 + 8.
func ExamplePost() {
	room := measured()
	d := topped(room)
	p := d.Add("leg", model.Post(60).Under("worktop", model.At{X: 1500, Back: 530}))
	fmt.Printf("%s, %s, %.1f kg, screwed with %d screws\n", p.Kind, p.Size(), float64(p.Mass()), countFor(d, "leg"))
	// Output:
	// table leg, Ø60 x 713, 2.0 kg, screwed with 4 screws
}

func countFor(d *model.Design, id string) int {
	n := 0
	for _, f := range d.Part("worktop").Slab.Features {
		if f.For == id {
			n++
		}
	}
	return n
}

// A leg that cannot stand there is a mistake of the description, with its line.
func TestPostMistakes(t *testing.T) {
	for what, p := range map[string]model.PostPiece{
		"does not stand under": model.Post(60).Under("worktop", model.At{X: 20, Back: 300}),
		"carries nothing":      model.Post(60),
		"no slab \"bench\"":    model.Post(60).Under("bench", model.At{X: 300, Back: 300}),
		"diameter of the post": model.Post(10).Under("worktop", model.At{X: 300, Back: 300}),
		"100 mm at least":      model.Post(60).Under("low", model.At{X: 300, Back: 300}),
	} {
		room := measured()
		d := topped(room)
		d.Add("low", model.Slab(stock.Ash, 40).Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).Gaps(3, 3).Depth(500).SurfaceAt(120))
		if d.Add("leg", p) != nil {
			t.Errorf("%s: the leg was placed", what)
		}
		said := ""
		for _, f := range d.Faults() {
			said += f.Why + "\n"
		}
		if !strings.Contains(said, what) {
			t.Errorf("%q is not said: %s", what, said)
		}
	}
}
