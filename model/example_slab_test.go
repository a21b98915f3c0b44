package model_test

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// A slab is told by what it runs up to. The back wall bulges by 2 mm; the gap of
// 4 mm is kept where it bulges most.
func ExampleSlab() {
	room := measured()
	d := model.NewDesign("desk", room)
	top := model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750)
	p := d.Add("worktop", top)
	for _, e := range p.Slab.Edges {
		a, b := p.Slab.Pose.Plan(e.Start), p.Slab.Pose.Plan(e.End)
		fmt.Printf("%s edge, %.0f mm to %s: from (%.0f, %.0f) to (%.0f, %.0f)\n", e.Name, float64(e.Gap), e.To, float64(a.X), float64(a.Y), float64(b.X), float64(b.Y))
	}
	// Output:
	// left edge, 3 mm to left: from (3, -606) to (3, -6)
	// back edge, 4 mm to back: from (3, -6) to (1597, -6)
	// right edge, 3 mm to right: from (1597, -6) to (1597, -606)
	// front edge, 0 mm to front: from (1597, -606) to (3, -606)
}

// A back edge may follow several walls.
func ExampleSlabPiece_Against() {
	room := niched()
	d := model.NewDesign("desk", room)
	p := d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).
		Against(room.Wall("B-C"), room.Wall("cheek left"), room.Wall("niche"), room.Wall("cheek right"), room.Wall("F-G")).
		Gaps(3, 4).Depth(600).SurfaceAt(750))
	fmt.Printf("%d edges, %.3f m2\n", len(p.Slab.Edges), float64(p.Outline().Area())*1e-6)
	// Output:
	// 8 edges, 1.634 m2
}

// The line of a natural edge is measured at stations: how far the wood goes
// beyond its narrowest place, on the top face and on the underside.
func ExampleNaturalEdge() {
	room := measured()
	d := model.NewDesign("desk", room)
	p := d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750).
		Front(model.NaturalEdge(
			model.NaturalStation{Along: 0, Top: 12, Under: 20},
			model.NaturalStation{Along: 700, Top: 0, Under: 8},
			model.NaturalStation{Along: 1600, Top: 25, Under: 33})))
	d.Finish()
	length, width := p.Slab.Blank()
	fmt.Printf("cut from %.0f x %.0f mm\n", float64(length), float64(width))
	// Output:
	// cut from 1594 x 633 mm
}

// NaturalOf takes the line of a natural edge from the widths that a seller gives.
func ExampleNaturalOf() {
	offers := model.Offers{Slabs: []model.SlabOffer{
		{Name: "plain", Species: stock.Ash.Name, Length: 2000, Width: 800},
		{Name: "one natural edge", Species: stock.Ash.Name, Natural: 1, Every: 400, Widths: []unit.Length{640, 655, 631, 620, 633}},
	}}
	offer := offers.OfferOf(stock.Ash.Name, 1)
	room := measured()
	d := model.NewDesign("desk", room)
	p := d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750).Front(model.NaturalOf(offer, 9)))
	for _, s := range p.Slab.Front().Natural {
		fmt.Printf("at %.0f: %.0f beyond the line, %.0f below\n", float64(s.Along), float64(s.Top), float64(s.Under))
	}
	// Output:
	// at 0: 20 beyond the line, 29 below
	// at 400: 35 beyond the line, 44 below
	// at 800: 11 beyond the line, 20 below
	// at 1200: 0 beyond the line, 9 below
	// at 1600: 13 beyond the line, 22 below
}

// An infill runs up to the slab before it.
func ExampleSlabPiece_Meeting() {
	room := niched()
	d := model.NewDesign("desk", room)
	d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Straight("B", "G")).
		Gaps(3, 4).Depth(600).SurfaceAt(750))
	d.Add("infill", model.Slab(stock.Ash, 45).
		Between(room.Wall("cheek left"), room.Wall("cheek right")).Against(room.Wall("niche")).
		Gaps(3, 4).Meeting("worktop", 1).SurfaceAt(750))
	listParts(d)
	// Output:
	// worktop: 2394.0 x 600.0 x 45
	// infill: 794.0 x 249.0 x 45
}

// A second worktop runs up to an edge of the first one: an L.
func ExampleDesign_EdgeOf() {
	room := measured()
	d := model.NewDesign("L", room)
	d.Add("back", model.Slab(stock.Oak, 40).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(500).SurfaceAt(750))
	d.Add("side", model.Slab(stock.Oak, 40).
		Between(room.Wall("left").Mark(200), d.EdgeOf("back", "front").Gap(1)).Against(room.Wall("left")).
		Gaps(3, 4).Depth(450).SurfaceAt(750))
	listParts(d)
	// Output:
	// back: 1594.0 x 500.0 x 40
	// side: 493.0 x 450.0 x 40
}

// Work in a slab is told from its left end along the back edge, and from the
// back edge.
func ExampleSlabPiece_Hole() {
	room := measured()
	d := model.NewDesign("desk", room)
	p := d.Add("worktop", model.Slab(stock.Ash, 45).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 4).Depth(600).SurfaceAt(750).Eased(2).
		Hole("cable hole", model.At{X: 400, Back: 100}, 60).Serving("cables").
		Groove("cable run", model.UnderFace, 20, 18, model.At{X: 400, Back: 100}, model.At{X: 1200, Back: 100}).Serving("cables").
		Pocket("socket box", model.UnderFace, model.At{X: 1160, Back: 60}, 90, 80, 30).
		CutOut("pipe", model.At{X: 0, Back: 0}, 70, 50))
	d.Finish()
	for _, f := range p.Slab.Features {
		fmt.Printf("%s %q for %q\n", f.Kind, f.Name, f.For)
	}
	fmt.Printf("%.2f kg\n", float64(p.Mass()))
	// Output:
	// hole "cable hole" for "cables"
	// groove "cable run" for "cables"
	// pocket "socket box" for ""
	// cut-out "pipe" for ""
	// 29.58 kg
}

// A shelf hangs on hidden rods. They are parts of their own, and the shelf is
// bored for them.
func ExampleShelf() {
	room := measured()
	d := model.NewDesign("shelf", room)
	d.AddShelf("shelf", model.Shelf(stock.Ash, 40).
		Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).
		Gaps(3, 3).Depth(220).UndersideAt(1400).
		OnRods(model.Rods{Dia: 16, InWall: 120, InShelf: 150, Pitch: 500, End: 100}))
	listParts(d)
	// Output:
	// shelf: 1594.0 x 220.0 x 40
	// shelf rod 1: Ø16 x 275
	// shelf rod 2: Ø16 x 275
	// shelf rod 3: Ø16 x 275
	// shelf rod 4: Ø16 x 275
}
