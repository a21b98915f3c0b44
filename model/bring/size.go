package bring

import (
	"slabwright/model"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

// Size is the box of a part as it is carried: its longest, its middle and its
// shortest measure.
func Size(p *model.Part) (long, wide, thick unit.Length) {
	box := boxOf(lumpsOf(p), geom.Pose{Turn: turnOf(p)})
	d := box.Max.Sub(box.Min)
	long, wide, thick = d.X, d.Y, d.Z
	if long < wide {
		long, wide = wide, long
	}
	if wide < thick {
		wide, thick = thick, wide
	}
	if long < wide {
		long, wide = wide, long
	}
	return long, wide, thick
}
