package dim_test

import (
	"fmt"

	"slabwright/drawing"
	"slabwright/drawing/dim"
	"slabwright/model/geom"
)

// A board of 2400 x 600 at the largest scale that leaves room for its sizes.
func Example() {
	want := []dim.Request{
		dim.Linear{A: geom.V(0, 0), B: geom.V(2400, 0), Label: dim.Label{Tolerance: "+0/-2"}},
		dim.Linear{A: geom.V(0, 0), B: geom.V(0, 600), Dir: dim.Vertical},
		dim.Across{A: geom.V(0, 0), B: geom.V(2400, 600)},
		dim.Diameter{Centre: geom.V(300, 520), Dia: 60},
	}
	room := drawing.A3.Space()
	for _, scale := range drawing.Scales {
		view := drawing.Box(0, 0, scale.Of(2400), scale.Of(600))
		p := dim.Plate{Scale: scale, Drawn: []drawing.Item{drawing.Outline(view.Corners(), drawing.Normal.Outline())}}
		need := dim.Extent(p, want)
		if need.Width() > room.Width() || need.Height() > room.Height() {
			continue
		}
		p = p.MoveTo(room.Centre().Sub(need.Centre()))
		p.Frame = room
		items, report := dim.Place(p, want)
		fmt.Println(scale, report.Clean())
		for _, it := range items {
			if t, ok := it.(drawing.Text); ok {
				fmt.Println(t.String)
			}
		}
		break
	}
	// Output:
	// 1:10 true
	// 2400 +0/-2
	// 600
	// 2473.9
	// Ø60
}
