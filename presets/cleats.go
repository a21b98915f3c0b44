package presets

import (
	"fmt"

	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

// cleats are a set of battens of one section that carry shelves along walls.
type cleats struct {
	wood       stock.Species
	wide, high unit.Length
	gap        unit.Length // in corners
	pitch      unit.Length
	into       unit.Length // screw length in the shelf
}

// boltHole is the hole in the wood for the wall anchors: of bolts of 8 mm.
const boltHole unit.Length = 9

// carry puts one cleat under a slab along each wall, named after the wall and a
// number.
func (c cleats) carry(d *model.Design, slab, number string, walls ...*model.Wall) {
	for _, w := range walls {
		d.Add(fmt.Sprintf("cleat %s %s", w.Name, number), model.Cleat(c.wood, c.wide, c.high).Along(w).Under(slab).ClearOf(c.gap).
			Anchored(model.Anchors{Hole: boltHole, Pitch: c.pitch, End: 60, OffArris: 105}).
			ScrewedUp(model.Screws{Hole: 7, Moving: true, Pitch: c.pitch, End: 35, Pilot: 4, Into: c.into}))
	}
}
