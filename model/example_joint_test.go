package model_test

import (
	"fmt"
	"strings"
	"testing"

	"slabwright/model"
	"slabwright/model/stock"
)

// Two worktops meet in a corner: dowels keep their faces level. Their grain
// crosses, so the dowels are glued into one of them only. The joint is 595 long: the
// dowels stand 60 from its ends, no more than 150 apart.
func ExampleDesign_Join() {
	room := measured()
	d := topped(room)
	d.Add("wing", model.Slab(stock.Ash, 45).
		Between(room.Wall("left").Mark(20), d.EdgeOf("worktop", "front").Gap(1)).Against(room.Wall("left")).Gaps(4, 4).
		Depth(600).SurfaceAt(750))
	d.Join("wing", "worktop", model.DowelJoint)
	j, _ := d.JointOf("worktop", "wing")
	fmt.Printf("%d %s %s, grain crossed: %v\n", len(j.Places), j.Kind, j.Size(), d.Crossed(j))
	// Output:
	// 5 dowels Ø12 x 80, grain crossed: true
}

// A joint of slabs that do not meet is a mistake of the description.
func TestJointMistakes(t *testing.T) {
	for what, names := range map[string][2]string{
		"no edge of \"worktop\" runs up to \"shelf\"": {"worktop", "shelf"},
		"no slab \"wing\"":                            {"wing", "worktop"},
	} {
		room := measured()
		d := topped(room)
		d.Add("shelf", model.Shelf(stock.Ash, 30).Between(room.Wall("left"), room.Wall("right")).Against(room.Wall("back")).Depth(200).UndersideAt(1200))
		d.Join(names[0], names[1], model.DowelJoint)
		d.Finish()
		var all []string
		for _, f := range d.Faults() {
			all = append(all, f.Why)
		}
		if !strings.Contains(strings.Join(all, "\n"), what) {
			t.Errorf("says %q, not %q", all, what)
		}
	}
}
