// Command owndesk is a desk of one's own: a design in a dozen lines that gets
// the whole command line.
package main

import (
	"os"

	"slabwright/cmd"
	"slabwright/model"
	"slabwright/model/stock"
	"slabwright/model/unit"
)

type params struct {
	Height unit.Length `is:"720" min:"500" max:"1100" help:"surface above the floor"`
}

func ledge(s model.Site, p params) *model.Design {
	d := model.NewDesign("Hall ledge", s.Room)
	d.Add("ledge", model.Slab(stock.Walnut, 35).
		Between(s.Room.Wall("left"), s.Room.Wall("right")).Against(s.Room.Wall("back")).
		Gaps(5, 5).Depth(300).SurfaceAt(p.Height))
	for _, side := range []string{"back", "left", "right"} {
		d.Add("angle "+side, model.Angle(stock.L40x40x5).Along(s.Room.Wall(side)).Under("ledge").
			Anchored(model.Anchors{Hole: 9, Pitch: 300, End: 40}))
	}
	return d
}

func main() {
	os.Exit(cmd.Main(os.Args[1:], model.NewPreset("ledge", "a ledge between two walls", ledge,
		model.Need{Wall: "left", Help: "left wall"}, model.Need{Wall: "back", Help: "back wall"}, model.Need{Wall: "right", Help: "right wall"})))
}
