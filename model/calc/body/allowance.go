package body

import "slabwright/model/unit"

// Allowance is what to add to a barefoot, motionless body.
type Allowance struct {
	Name      string
	Value     unit.Length
	Low, High unit.Length // usual range
	Source    string
}

const openSource = "open anthropometry course tables after Pheasant (City University of Hong Kong)"

// The allowances. Add Slump (it is negative) to eye, elbow and head height of
// somebody who does not sit up straight.
var (
	ShoeMen      = Allowance{"shoe, men", 25, 20, 30, openSource}
	ShoeWomen    = Allowance{"shoe, women, outdoors", 45, 40, 50, openSource}
	ShoeHome     = Allowance{"socks or slippers at home", 10, 0, 15, "common practice, no source"}
	Slump        = Allowance{"slumped posture", -40, -40, 0, openSource}
	HeavyClothes = Allowance{"heavy clothing over the thigh", 35, 0, 35, openSource}
	OverThigh    = Allowance{"movement over the thigh", 20, 20, 50, "common practice, no source"}
	Beside       = Allowance{"movement to each side of the hips", 50, 50, 50, "common practice, no source"}
	BeforeKnee   = Allowance{"movement before the knee", 30, 30, 30, "common practice, no source"}
	LegStretch   = Allowance{"feet slid forward beyond the upright shank", 160, 80, 200, "derived: popliteal height x sin 20 degrees"}
)

// Shoe is the allowance for shoes: 25 mm for men and where the sex is not
// told, 45 mm for women.
func Shoe(s Sex) Allowance {
	if s == Female {
		return ShoeWomen
	}
	return ShoeMen
}
